//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage.

use app::machine::{StoragePromise, StorageRoom};
use record::MergeDecision;

/// Label of the field.
pub const FIND: &str = "Find: team, hall, competition, day such as 9 May";
/// Opens what else can be done with a match.
pub const MORE_OF: &str = "More:";
/// Mark of a match that came from a file or by codes just now.
pub const JUST_CAME: &str = "just imported";
/// To the look back on a match.
pub const REVIEW: &str = "Review";
/// Shows what was put away.
pub const SHOW_ARCHIVED: &str = "Show archived matches";
/// Where nothing fits.
pub const NOTHING_FITS: &str = "No match fits these words.";
/// Where all are put away.
pub const ALL_ARCHIVED: &str = "All matches are archived.";
/// Puts a match away.
pub const ARCHIVE: &str = "Archive";
/// Brings it back.
pub const UNARCHIVE: &str = "Restore";
/// Mark of a match that was put away.
pub const IS_ARCHIVED: &str = "archived";

/// What is wrong with a match that came from a damaged file.
pub const CAME_DAMAGED: &str =
    "Part of its file was missing or could not be read. Ask for the file again.";

/// While files are read.
pub const TAKING_IN: &str = "Importing \u{2026}";

/// How far it is.
#[must_use]
pub fn taking_in(place: usize, all: usize) -> String {
    format!("Importing match {place} of {all} \u{2026}")
}

/// Ends it.
pub const STOP: &str = "Stop";

/// Where it was ended.
#[must_use]
pub fn stopped_at(name: &str, taken: usize, all: usize) -> String {
    format!(
        "{name}: stopped after {taken} of {all} matches. Open the file again to import the rest."
    )
}

/// Heading.
pub const BACKUP: &str = "Backup and storage";
/// What a backup is.
pub const BACKUP_IS: &str =
    "One file holds every match, its signatures, everything on the desk and your logbook. To restore it, tap \
     \u{201c}Open a file\u{201d} on the start screen. Nothing here is overwritten.";
/// Makes it.
pub const MAKE_BACKUP: &str = "Back up everything";
/// While it is made.
pub const BACKING_UP: &str = "Reading the matches \u{2026}";
/// After it.
pub const BACKUP_MADE: &str = "The backup was shared.";
/// While the phone's list was closed.
pub const BACKUP_NOT_MADE: &str = "No backup was made.";
/// Asks the browser.
pub const ASK_TO_KEEP: &str = "Ask the browser to keep the matches";
/// Wipes.
pub const WIPE: &str = "Delete everything";
/// Where the storage would not be wiped.
pub const NOT_WIPED: &str =
    "Not everything was deleted. A match that is open in another tab stays: close that tab and try again. \
     If that does not help, clear this site's data in the browser's settings.";
/// Where a match would not go.
pub const NOT_DELETED: &str =
    "The match was not deleted. If it is open in another tab, close it there and try again.";

/// Heading.
pub const MOVE: &str = "From the browser to the installed app";
/// In a browser's tab.
pub const MOVE_IN_TAB: [&str; 4] = [
    "Put the app on your home screen. It opens faster, and the phone does not clear its records after \
     some days without a visit. Some browsers do that with a tab.",
    "On many phones the installed app starts empty, because it cannot see what this tab has stored. So \
     first tap \u{201c}Back up everything\u{201d} and save the file on this phone.",
    "Then install the app. On an iPhone or iPad, tap Share, then Add to Home Screen. On other devices, \
     open the browser's menu and tap Install or Add to home screen.",
    "Open the installed app once with a network. There, choose the file under \u{201c}Open a file\u{201d}.",
];
/// In the installed app.
pub const MOVE_INSTALLED: [&str; 2] = [
    "This is the installed app.",
    "Some matches may still be in a browser tab. Open that tab and tap \u{201c}Back up \
     everything\u{201d}. Then choose the file here under \u{201c}Open a file\u{201d}.",
];

/// Shows the rest of a long list.
#[must_use]
pub fn show_all(count: usize) -> String {
    format!("Show all {count}")
}

/// So many matches.
#[must_use]
pub fn matches(count: usize) -> String {
    match count {
        1 => "1 match".to_owned(),
        n => format!("{n} matches"),
    }
}

/// Before one is deleted: what goes.
#[must_use]
pub fn delete_question(teams: &str, standing: &str, entries: u32) -> String {
    format!(
        "Delete {teams} ({standing}) from this phone for good? This deletes its {entries} entries, its \
         drawn signatures and anything half typed. Files you have shared stay."
    )
}

/// Before everything is deleted: what goes.
#[must_use]
pub fn wipe_question(count: usize) -> String {
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

/// The name of the backup's file.
#[must_use]
pub fn backup_name(day: &str) -> String {
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

/// How much room is used.
#[must_use]
pub fn room(room: Option<StorageRoom>) -> String {
    match room {
        Some(StorageRoom { used, quota }) => format!(
            "The app and its records use about {} of {} on this phone.",
            bytes(used),
            bytes(quota)
        ),
        None => "This browser does not say how much space is used.".to_owned(),
    }
}

/// Whether the browser keeps it.
#[must_use]
pub fn kept(kept: StoragePromise) -> &'static str {
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

/// What became of many files, before each is named.
#[must_use]
pub fn files_taken(taken: usize, all: usize) -> String {
    match all - taken {
        0 => format!("{all} files: all of them are on this phone."),
        left => format!("{all} files: {taken} are on this phone, {left} could not be imported."),
    }
}

/// A file that only the desk takes in.
#[must_use]
pub fn of_the_desk(name: &str, kind: &str) -> String {
    format!("{name} is {kind}. Go to the desk and open it there.")
}

/// What became of a record that came.
#[must_use]
pub fn taken(name: &str, how: &MergeDecision) -> String {
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

/// A longer record of a match that another tab has open.
#[must_use]
pub fn open_elsewhere(name: &str) -> String {
    format!(
        "{name} was not imported: the match is open in another tab. Close that tab and choose the \
        file again."
    )
}

/// What became of a backup: new, longer, beside, already here.
#[must_use]
pub fn backup_taken(name: &str, counts: [usize; 4]) -> String {
    let [new, longer, beside, here] = counts;
    format!(
        "{name}: {} new, {longer} longer than here, {beside} kept beside another record, {here} already \
         here. Nothing was lost.",
        matches(new)
    )
}

/// What of the desk came with a backup: new, here already, and refused by the phone.
#[must_use]
pub fn desk_taken(name: &str, [new, here, lost]: [usize; 3]) -> String {
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

/// What a logbook, or goals for one, brought.
#[must_use]
pub fn logbook_taken(name: &str, matches: usize, goals: usize, left_out: usize) -> String {
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

/// Notes of an observer came.
#[must_use]
pub fn notes_taken(name: &str, left_out: usize) -> String {
    let mut say = format!(
        "{name}: the notes of an observer are on this phone. Open the match and tap Review to see them beside \
         it."
    );
    if left_out > 0 {
        say += &format!(" {left_out} of them could not be read.");
    }
    say
}

/// A file of a newer version.
#[must_use]
pub fn newer_file(name: &str) -> String {
    format!(
        "{name} was made by a newer version of this app. Update the app, then open the file again."
    )
}

/// A file that cannot be read.
#[must_use]
pub fn damaged_file(name: &str) -> String {
    format!("{name} is damaged and cannot be read. Ask for it again.")
}

/// A file for which there is no room.
#[must_use]
pub fn not_kept(name: &str) -> String {
    format!("{name} could not be stored because the phone is full. Delete what you do not need and try again.")
}

/// Whether what was practised came with a backup.
#[must_use]
pub fn practised_taken(name: &str, taken: bool) -> String {
    if taken {
        format!("{name}: what you practised is on this phone now.")
    } else {
        format!("{name}: what was practised could not be read or stored.")
    }
}

/// What was wrong with the file around the matches.
#[must_use]
pub fn backup_problem(name: &str, say: &str) -> String {
    format!("{name}: {}.", say.trim_end_matches('.'))
}
