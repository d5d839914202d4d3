//! The words about files that are taken in.

use crate::intake::*;
use crate::setup::library::matches;
use app::import_note::{BackupCounts, DeskCounts};
use app::machine::ReadTrouble;
use record::{Foreign, MergeDecision, Problem};
use rules::ByTeam;

/// In English.
pub static WORDS: IntakeWords = IntakeWords {
    unreadable_file,
    foreign_file,
    record_problem,
    more_problems,
    seal_opened,
    import_not_saved,
    reading_files: "Importing \u{2026}",
    taking_in,
    stopped_at,
    files_taken,
    of_the_desk,
    taken,
    open_elsewhere,
    backup_taken,
    desk_taken,
    logbook_taken,
    notes_taken,
    newer_file,
    damaged_file,
    not_kept,
    practised_taken,
    form_taken,
    form_here,
    form_not_kept,
    form_unreadable,
    more_form_problems,
};

fn unreadable_file(name: &str, trouble: &ReadTrouble) -> String {
    match trouble {
        ReadTrouble::TooBig { .. } => {
            format!("{name} is far too large for a match. Choose another file.")
        }
        ReadTrouble::Unreadable(why) => {
            format!(
                "{name} could not be read{}. Choose it again.",
                crate::machine::in_its_words(why)
            )
        }
    }
}

fn foreign_file(name: &str, foreign: &Foreign) -> String {
    format!("{name}: {}", crate::problem::foreign(foreign))
}

fn record_problem(name: &str, problem: &Problem) -> String {
    let say = crate::problem::problem(problem);
    let say = say.trim_end_matches('.');
    match problem.entry {
        Some(entry) => format!("{name}, entry {entry}: {say}."),
        None => format!("{name}: {say}."),
    }
}

fn more_problems(name: &str, count: usize) -> String {
    format!("{name}: {count} more like this.")
}

fn seal_opened(name: &str, before: ByTeam<u8>, now: ByTeam<u8>) -> String {
    format!(
        "{name}: the record here was sealed at {}. Somebody has opened it again since, and it says {} now. Ask \
         who knows about it.",
        before.marked(),
        now.marked()
    )
}

fn import_not_saved(name: &str) -> String {
    format!("Not all of {name} could be saved on this phone. Keep the file.")
}

fn taking_in(place: usize, all: usize) -> String {
    format!("Importing match {place} of {all} \u{2026}")
}

fn stopped_at(name: &str, taken: usize, all: usize) -> String {
    format!(
        "{name}: stopped after {taken} of {all} matches. Open the file again to import the rest."
    )
}

fn files_taken(taken: usize, all: usize) -> String {
    match all - taken {
        0 => format!("{all} files: all of them are on this phone."),
        left => format!("{all} files: {taken} are on this phone, {left} could not be imported."),
    }
}

fn of_the_desk(name: &str, kind: &str) -> String {
    format!("{name} is {kind}. Go to the desk and open it there.")
}

fn taken(name: &str, how: &MergeDecision) -> String {
    match how {
        MergeDecision::New(_) => format!("{name} is on this phone now."),
        MergeDecision::Here(_) => format!("{name} is already here. Nothing was changed."),
        MergeDecision::Longer(_) => format!(
            "{name} continues the record that was here. The longer one is kept. Nothing was lost."
        ),
        MergeDecision::Beside(_) => format!(
            "{name} is another record of a match that is already here. Both are kept. Nothing was \
             overwritten."
        ),
    }
}

fn open_elsewhere(name: &str) -> String {
    format!(
        "{name} was not imported: the match is open in another tab. Close that tab and choose the \
        file again."
    )
}

fn backup_taken(name: &str, counts: BackupCounts) -> String {
    let BackupCounts {
        new,
        longer,
        beside,
        here,
    } = counts;
    format!(
        "{name}: {} new, {longer} longer than here, {beside} kept beside another record, {here} already \
         here. Nothing was lost.",
        matches(new)
    )
}

fn desk_taken(name: &str, counts: DeskCounts) -> String {
    let DeskCounts { new, here, refused } = counts;
    let mut say =
        format!("{name}, paper sheets and pools of the desk: {new} new, {here} already here.");
    if refused > 0 {
        say += &format!(
            "{refused} could not be stored because the phone is full. Delete what you do not need, then open \
             the backup again."
        );
    }
    say
}

fn logbook_taken(name: &str, matches: usize, goals: usize, left_out: usize) -> String {
    let counted = |count: usize, one: &str, many: &str| match count {
        1 => format!("1 {one}"),
        n => format!("{n} {many}"),
    };
    let mut say = match (matches, goals) {
        (0, 0) => format!("{name}: everything in it is in your logbook already."),
        (matches, goals) => format!(
            "{name}: {} and {} are new in your logbook.",
            counted(matches, "match", "matches"),
            counted(goals, "goal", "goals")
        ),
    };
    if left_out > 0 {
        say += &format!(" {left_out} in it could not be read.");
    }
    say
}

fn notes_taken(name: &str, left_out: usize) -> String {
    let mut say = format!(
        "{name}: the notes of an observer are on this phone. Open the match and tap Review to see them beside \
         it."
    );
    if left_out > 0 {
        say += &format!(" {left_out} of them could not be read.");
    }
    say
}

fn newer_file(name: &str) -> String {
    format!(
        "{name} was made by a newer version of this app. Update the app, then open the file again."
    )
}

fn damaged_file(name: &str) -> String {
    format!("{name} is damaged and cannot be read. Ask for it again.")
}

fn not_kept(name: &str) -> String {
    format!("{name} could not be stored because the phone is full. Delete what you do not need and try again.")
}

fn practised_taken(name: &str, taken: bool) -> String {
    if taken {
        format!("{name}: what you practised is on this phone now.")
    } else {
        format!("{name}: what was practised could not be read or stored.")
    }
}

fn form_taken(name: &str) -> String {
    format!("{name} is on the desk now.")
}

fn form_here(name: &str) -> String {
    format!("{name} is already here. Nothing was changed.")
}

fn form_not_kept(name: &str) -> String {
    format!("{name} could not be stored on this phone. Free some space, and keep the file.")
}

fn form_unreadable(name: &str) -> String {
    format!("{name} was not imported.")
}

fn more_form_problems(count: usize) -> String {
    format!("{count} more like this.")
}
