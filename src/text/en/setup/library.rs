//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage.

use crate::setup::library::*;
use app::machine::{StoragePromise, StorageRoom};
use record::MergeDecision;

/// In English.
pub static WORDS: LibraryWords = LibraryWords {
find: "Find: team, hall, competition, day such as 9 May",
more_of: "More:",
just_came: "just imported",
review: "Review",
show_archived: "Show archived matches",
nothing_fits: "No match fits these words.",
all_archived: "All matches are archived.",
archive: "Archive",
unarchive: "Restore",
is_archived: "archived",
came_damaged: "Part of its file was missing or could not be read. Ask for the file again.",
taking_in_label: "Importing \u{2026}",
taking_in,
stop: "Stop",
stopped_at,
backup: "Backup and storage",
backup_is:
        "One file holds every match, its signatures, everything on the desk and your logbook. To \
         restore it, tap \u{201c}Open a file\u{201d} on the start screen. Nothing here is \
         overwritten.",
make_backup: "Back up everything",
backing_up: "Reading the matches \u{2026}",
backup_made: "The backup was shared.",
backup_not_made: "No backup was made.",
ask_to_keep: "Ask the browser to keep the matches",
wipe: "Delete everything",
not_wiped:
        "Not everything was deleted. A match that is open in another tab stays: close that tab \
         and try again. If that does not help, clear this site's data in the browser's settings.",
not_deleted:
        "The match was not deleted. If it is open in another tab, close it there and try again.",
move_title: "From the browser to the installed app",
move_in_tab: &[
    "Put the app on your home screen. It opens faster, and the phone does not clear its records \
         after some days without a visit. Some browsers do that with a tab.",
    "On many phones the installed app starts empty, because it cannot see what this tab has \
         stored. So first tap \u{201c}Back up everything\u{201d} and save the file on this \
         phone.",
    "Then install the app. On an iPhone or iPad, tap Share, then Add to Home Screen. On other \
         devices, open the browser's menu and tap Install or Add to home screen.",
    "Open the installed app once with a network. There, choose the file under \u{201c}Open a \
         file\u{201d}.",
],
move_installed: &[
    "This is the installed app.",
    "Some matches may still be in a browser tab. Open that tab and tap \u{201c}Back up \
         everything\u{201d}. Then choose the file here under \u{201c}Open a file\u{201d}.",
],
show_all,
matches,
delete_question,
wipe_question,
backup_name,
room,
kept,
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
backup_problem,
};

fn taking_in(place: usize, all: usize) -> String {
    format!("Importing match {place} of {all} \u{2026}")
}

fn stopped_at(name: &str, taken: usize, all: usize) -> String {
    format!(
        "{name}: stopped after {taken} of {all} matches. Open the file again to import the rest."
    )
}

fn show_all(count: usize) -> String {
    format!("Show all {count}")
}

fn matches(count: usize) -> String {
    match count {
        1 => "1 match".to_owned(),
        n => format!("{n} matches"),
    }
}

fn delete_question(teams: &str, standing: &str, entries: u32) -> String {
    format!(
        "Delete {teams} ({standing}) from this phone for good? This deletes its {entries} entries, its \
         drawn signatures and anything half typed. Files you have shared stay."
    )
}

fn wipe_question(count: usize) -> String {
    format!(
        "Delete everything from this phone for good? This deletes {}, drawn signatures, paper sheets and \
         pools on the desk, anything half typed and all settings. Your logbook and notes of observers go too. \
         Files you have shared stay.",
        match count {
            0 => "no match".to_owned(),
            n => matches(n),
        }
    )
}

fn backup_name(day: &str) -> String {
    format!("dutystand-backup-{day}.json")
}

/// Bytes in words.
fn bytes(count: u64) -> String {
    // Shown with one decimal, so the last bits do not matter.
    #[allow(clippy::cast_precision_loss)]
    let of = |unit: f64| count as f64 / unit;
    match count {
        0..=999_999 => format!("{} kB", count.div_ceil(1_000)),
        1_000_000..=999_999_999 => format!("{:.1} MB", of(1e6)),
        _ => format!("{:.1} GB", of(1e9)),
    }
}

fn room(room: Option<StorageRoom>) -> String {
    match room {
        Some(StorageRoom { used, quota }) => format!(
            "The app and its records use about {} of {} on this phone.",
            bytes(used),
            bytes(quota)
        ),
        None => "This browser does not say how much space is used.".to_owned(),
    }
}

fn kept(kept: StoragePromise) -> &'static str {
    match kept {
        StoragePromise::Yes => {
            "The browser has promised to keep the records until you delete them."
        }
        StoragePromise::No => {
            "The browser has not promised to keep the records. It may clear them when the phone is full \
             or after some days without a visit. Make a backup of what matters."
        }
        StoragePromise::Unknown => {
            "This browser does not say whether it keeps the records. Make a backup of what matters."
        }
    }
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

fn backup_taken(name: &str, counts: [usize; 4]) -> String {
    let [new, longer, beside, here] = counts;
    format!(
        "{name}: {} new, {longer} longer than here, {beside} kept beside another record, {here} already \
         here. Nothing was lost.",
        matches(new)
    )
}

fn desk_taken(name: &str, counts: [usize; 3]) -> String {
    let [new, here, lost] = counts;
    let mut say =
        format!("{name}, paper sheets and pools of the desk: {new} new, {here} already here.");
    if lost > 0 {
        say += &format!(
            "{lost} could not be stored because the phone is full. Delete what you do not need, then open \
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

fn backup_problem(name: &str, say: &str) -> String {
    format!("{name}: {}.", say.trim_end_matches('.'))
}
