//! The words that stand for the values of an entry.

use game::entry as mem;
use rules::Team;

/// Values, each with its word.
pub(super) type Words<T> = [(&'static str, T)];

pub(super) const TEAMS: &Words<Team> = &[("A", Team::A), ("B", Team::B)];
pub(super) const CHOSE: &Words<mem::About> =
    &[("service", mem::About::Service), ("side", mem::About::Side)];
pub(super) const STOPS: &Words<mem::ReplayWhy> = &[
    ("double_fault", mem::ReplayWhy::DoubleFault),
    ("interference", mem::ReplayWhy::Interference),
    ("injury", mem::ReplayWhy::Injury),
    ("other", mem::ReplayWhy::Other),
];
pub(super) const SEEN_BY: &Words<mem::SeenBy> = &[
    ("second_referee", mem::SeenBy::SecondReferee),
    ("line_judge", mem::SeenBy::LineJudge),
    ("scorer", mem::SeenBy::Scorer),
];
pub(super) const FORCED: &Words<mem::Forced> = &[
    ("injury", mem::Forced::Injury),
    ("expelled", mem::Forced::Expelled),
    ("disqualified", mem::Forced::Disqualified),
];
pub(super) const LIBERO_WHY: &Words<mem::LiberoWhy> = &[
    ("unable", mem::LiberoWhy::Unable),
    ("declared", mem::LiberoWhy::Declared),
];
pub(super) const LEVELS: &Words<mem::Level> = &[
    ("warning", mem::Level::Warning),
    ("penalty", mem::Level::Penalty),
    ("expulsion", mem::Level::Expulsion),
    ("disqualification", mem::Level::Disqualification),
];
pub(super) const FAULTS: &Words<mem::Fault> = &[
    ("rotation", mem::Fault::Rotation),
    ("illegal_substitution", mem::Fault::IllegalSubstitution),
    ("illegal_libero", mem::Fault::IllegalLibero),
    ("wrong_line_up", mem::Fault::WrongLineUp),
    ("unregistered_player", mem::Fault::UnregisteredPlayer),
];
pub(super) const FOUND: &Words<mem::Found> = &[
    ("rally", mem::Found::Rally),
    ("after_rally", mem::Found::AfterRally),
];
pub(super) const SCOPES: &Words<mem::Scope> =
    &[("set", mem::Scope::Set), ("match", mem::Scope::Match)];
pub(super) const COURTS: &Words<mem::Court> =
    &[("same", mem::Court::Same), ("other", mem::Court::Other)];
pub(super) const ACTIONS: &Words<mem::TimerAction> = &[
    ("start", mem::TimerAction::Start),
    ("stop", mem::TimerAction::Stop),
];

/// The word for a value; every value of these lists has one.
pub(super) fn word<T: Copy + PartialEq>(words: &Words<T>, value: T) -> &'static str {
    let found = words.iter().find(|(_, v)| *v == value);
    found.map_or("", |(word, _)| word)
}
