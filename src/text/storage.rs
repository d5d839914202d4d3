//! The words about what is kept on the phone, and how well.

use app::keeper::Saved;
use app::machine::Offline;
use app::merge::Damage;
use app::ports::{Health, Standing};
use app::snapshot::SessionNotice;
use app::stored_match::RecordProblem;
use reports::ClockDoubt;

words! { StorageWords in storage;
    /// A newer version waits.
    new_version -> &'static str;
    /// Takes it.
    new_version_take -> &'static str;
    /// It waits for a match that is being played.
    new_version_later -> &'static str;
    /// Another tab has taken it.
    new_version_elsewhere -> &'static str;
    /// Loads this page again.
    load_again -> &'static str;
    /// Makes this tab the writer.
    take_over -> &'static str;
    /// How well the last entry is kept.
    saved(saved: Saved) -> &'static str;
    /// What is wrong with the storage, and the way out.
    storage_trouble(health: &Health) -> Option<String>;
    /// Why nothing can be entered here, where that is so.
    stands_still(standing: Standing) -> Option<&'static str>;
    /// What makes entries possible there.
    go_on(standing: Standing) -> &'static str;
    /// What has to be said of the open match, one after the other.
    session_notices(notices: &[SessionNotice]) -> String;
    /// What has to be said of the open match.
    session_notice(notice: &SessionNotice) -> String;
    /// A line that cannot be read or proved.
    line_damage(damage: &Damage) -> String;
    /// Of a record in a list: a link or a seal does not fit.
    record_changed -> &'static str;
    /// Of a record whose file lacked a part.
    lacks_a_part -> &'static str;
    /// Of a record in a list: so many lines cannot be read or proved.
    unreadable_lines(count: usize) -> String;
    /// What is doubtful about the phone's clock when a match is opened again.
    clock_doubt_on_opening(doubt: ClockDoubt) -> String;
    /// Whether the program opens without a network.
    offline(offline: &Offline) -> String;
}

/// What is wrong with a record.
pub fn stored_problem(problem: &RecordProblem) -> String {
    match problem {
        RecordProblem::Changed => record_changed().to_owned(),
        RecordProblem::LacksAPart => lacks_a_part().to_owned(),
        RecordProblem::Unreadable(count) => unreadable_lines(*count),
        RecordProblem::Line(damage) => line_damage(damage),
    }
}
