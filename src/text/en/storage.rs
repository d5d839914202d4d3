//! The words about what is kept on the phone, and how well.

use crate::score_sheet::span;
use crate::storage::*;
use app::keeper::{Saved, StorageNotice};
use app::machine::Offline;
use app::merge::{Damage, What};
use app::ports::{Health, Standing};
use app::snapshot::SessionNotice;
use reports::ClockDoubt;

/// In English.
pub static WORDS: StorageWords = StorageWords {
    new_version: "A newer version of Dutystand is on this phone.",
    new_version_take: "Use it now",
    new_version_later:
        "A newer version of Dutystand is on this phone. You can use it when the match is over. \
         Until then this version stays.",
    new_version_elsewhere:
        "A newer version of Dutystand is open in another tab. Load this page again before the \
         next match.",
    load_again: "Load again",
    take_over: "Take over here",
    saved,
    storage_trouble,
    stands_still,
    go_on,
    session_notices,
    session_notice,
    line_damage,
    record_changed: "This record was changed after it was written. The sheet shows where.",
    lacks_a_part: "Part of its file was missing or could not be read. Ask for the file again.",
    unreadable_lines,
    clock_doubt_on_opening,
    offline,
};

fn saved(saved: Saved) -> &'static str {
    match saved {
        Saved::Safe => "saved",
        Saved::Saving => "saving",
        Saved::OneCopy => "one copy",
        Saved::MemoryOnly => "not saved",
    }
}

fn storage_trouble(health: &Health) -> Option<String> {
    if health.memory_only() {
        let trouble = health.local.as_ref().err()?;
        return Some(format!(
            "{} You can continue: the match is kept while this page stays open. Export it before \
             you close the page.",
            crate::machine::storage(trouble)
        ));
    }
    match (&health.local, &health.durable) {
        (Ok(()), Ok(())) => None,
        (Err(trouble), _) | (_, Err(trouble)) => Some(format!(
            "{} Only one of the two copies on this phone can be written. Export the match when you \
             can.",
            crate::machine::storage(trouble)
        )),
    }
}

fn stands_still(standing: Standing) -> Option<&'static str> {
    match standing {
        Standing::ReadOnly { robbed: true } => {
            Some("Another tab has taken over this match. Here you can only look.")
        }
        Standing::ReadOnly { robbed: false } => {
            Some("This match is open in another tab. Here you can only look.")
        }
        Standing::Waiting => Some(
            "One of the two copies of this match has not been read yet. It may hold newer entries. The \
             app is trying again, so wait a moment.",
        ),
        Standing::Asking | Standing::Writer => None,
    }
}

fn go_on(standing: Standing) -> &'static str {
    match standing {
        Standing::Waiting => "Continue without it",
        Standing::ReadOnly { .. } | Standing::Asking | Standing::Writer => take_over(),
    }
}

fn session_notices(notices: &[SessionNotice]) -> String {
    notices
        .iter()
        .map(session_notice)
        .collect::<Vec<_>>()
        .join(" ")
}

fn session_notice(notice: &SessionNotice) -> String {
    match notice {
        SessionNotice::Damaged(damage) => line_damage(damage),
        SessionNotice::RecordChanged => record_changed().to_owned(),
        SessionNotice::Storage(notice) => storage_notice(notice),
    }
}

/// Something that happened to the storage of the open match.
fn storage_notice(notice: &StorageNotice) -> String {
    match notice {
        StorageNotice::Emptied => "The storage of this browser was emptied while this match was open. The match \
            was saved again from memory."
            .into(),
        StorageNotice::CameLate(1) => "One copy was read late and had 1 entry more. It is here now.".into(),
        StorageNotice::CameLate(more) => {
            format!("One copy was read late and had {more} entries more. They are here now.")
        }
        StorageNotice::Beside { entries, .. } => format!(
            "Another version of this match was found, with {entries} of its own. Both are kept. Look for \
             the other one in the list of matches.",
            entries = match entries {
                1 => "1 entry".to_owned(),
                n => format!("{n} entries"),
            }
        ),
        StorageNotice::Mended(all) => match all[..] {
            [n] => format!(
                "Entry {n} is damaged in one of the two copies on this phone. It was repaired from the \
                 other."
            ),
            _ => format!(
                "Entries {} are damaged in one of the two copies on this phone. They were repaired from \
                 the other.",
                all.iter().map(u32::to_string).collect::<Vec<_>>().join(", ")
            ),
        },
    }
}

fn line_damage(damage: &Damage) -> String {
    let n = damage.n;
    match damage.what {
        What::Missing => format!("Entry {n} is missing in both copies on this phone."),
        What::Damaged => format!(
            "Entry {n} is damaged in both copies on this phone and does not count. It stays as it is."
        ),
        What::Newer => format!(
            "Entry {n} was written by a newer version of this app. It does not count here and stays as it \
             is. The newer version can read it."
        ),
        What::Unproved => format!(
            "Entry {n} counts, but an entry before it is damaged, so nothing proves it. Check it."
        ),
    }
}

fn unreadable_lines(count: usize) -> String {
    match count {
        1 => "1 entry cannot be read or proved.".into(),
        n => format!("{n} entries cannot be read or proved."),
    }
}

fn clock_doubt_on_opening(doubt: ClockDoubt) -> String {
    match doubt {
        ClockDoubt::Back { seconds } => format!(
            "This phone's clock is {} behind the last entry. Score and order are safe. The sheet marks the \
             times.",
            span(seconds)
        ),
        ClockDoubt::Forward { seconds } => format!(
            "By this phone's clock, {} have passed in this set. Score and order are safe. The sheet marks \
             the times.",
            span(seconds)
        ),
    }
}

fn offline(offline: &Offline) -> String {
    match offline {
        Offline::ReadyOffline | Offline::NewVersionWaiting | Offline::NewVersionElsewhere => {
            "Works offline.".into()
        }
        Offline::Insecure => "This address is not secure (it begins with http, not https). The app works \
            while this page stays open. It cannot open without a network or keep the screen on. Open the \
            address that begins with https."
            .into(),
        Offline::Installing => "Getting ready to work offline …".into(),
        Offline::NotSupported => {
            "This browser or private window cannot keep the app for use without a network.".into()
        }
        Offline::Incomplete => {
            "The app could not be kept for use without a network: not all of its files came. Open it again \
             with a network."
                .into()
        }
        Offline::Failed(why) => format!(
            "The app could not be kept for use without a network{}. Open it again with a network.",
            crate::machine::in_its_words(why)
        ),
    }
}
