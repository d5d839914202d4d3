//! The words of the matches on the phone: finding, putting away, deleting, the backup of everything,
//! the storage.

use crate::setup::library::*;
use app::machine::{StoragePromise, StorageRoom};
use reports::DateWords;

/// In English.
pub static WORDS: LibraryWords = LibraryWords {
find: "Find: team, hall, competition, day such as 9 May",
date_words: &DATE_WORDS,
more_of: "More:",
just_came: "just imported",
review: "Review",
show_archived: "Show archived matches",
nothing_fits: "No match fits these words.",
all_archived: "All matches are archived.",
archive: "Archive",
unarchive: "Restore",
is_archived: "archived",
stop: "Stop",
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
wiped: "Everything on this phone was deleted.",
not_wiped:
        "Not everything was deleted. A match that is open in another tab stays: close that tab \
         and try again. If that does not help, clear this site's data in the browser's settings.",
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
};

static DATE_WORDS: DateWords = DateWords {
    months: [
        &["january"],
        &["february"],
        &["march"],
        &["april"],
        &["may"],
        &["june"],
        &["july"],
        &["august"],
        &["september"],
        &["october"],
        &["november"],
        &["december"],
    ],
    first: "first",
    ordinals: &["st", "nd", "rd", "th"],
    links: &["of", "the"],
};

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
        "Delete everything from this phone for good? This deletes {}drawn signatures, paper sheets and \
         pools on the desk, anything half typed and all settings. Your logbook and notes of observers go too. \
         Files you have shared stay.",
        match count {
            0 => String::new(),
            n => format!("{}, ", matches(n)),
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
