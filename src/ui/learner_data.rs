//! What belongs to the learner on this phone beside what was practised: the logbook, and notes of observers.

use leptos::prelude::*;
use record::{Logbook, LogbookReading, Observed, ObservedReading};

use crate::desk_store::DeskStore;

/// The logbook stands under this name.
const LOGBOOK: &str = "logbook";

/// The notes of observers, made here or come from another phone, each under its own id.
const OBSERVED: DeskStore = DeskStore {
    all: "observed",
    one: "notes/",
};

/// The logbook; an empty one where there is none, or where it cannot be read.
pub fn logbook() -> Logbook {
    match logbook_text().as_deref().map(Logbook::read) {
        Some(LogbookReading::Logbook(logbook, _)) => logbook,
        Some(LogbookReading::Newer | LogbookReading::Foreign) | None => Logbook::default(),
    }
}

/// The same as the text that is kept.
pub fn logbook_text() -> Option<String> {
    device::setting(LOGBOOK)
}

/// Keeps it; false where the phone did not.
pub fn keep_logbook(logbook: &Logbook) -> bool {
    if logbook.is_empty() {
        device::forget_setting(LOGBOOK);
        return true;
    }
    device::set_setting(LOGBOOK, &logbook.write()).is_ok()
}

/// Calls `f` whenever another tab has changed it, as long as the screen is there that asks for it.
pub fn on_logbook_changed(f: impl Fn() + 'static) {
    StoredValue::new_local(device::on_setting_changed(LOGBOOK, f));
}

/// What became of a logbook or of notes that came.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Came {
    /// So many matches and goals were new, and so many could not be read.
    Logbook {
        /// Matches.
        matches: usize,
        /// Goals.
        goals: usize,
        /// What could not be read.
        left_out: usize,
    },
    /// Notes are here; so many of their events could not be read.
    Notes {
        /// What could not be read.
        left_out: usize,
    },
    /// They were written by a newer version.
    Newer,
    /// They cannot be read.
    Foreign,
    /// The phone did not keep them.
    NotKept,
}

/// Lays a logbook, or goals, beside what is here.
pub fn merge_logbook(text: &str) -> Came {
    match Logbook::read(text) {
        LogbookReading::Newer => Came::Newer,
        LogbookReading::Foreign => Came::Foreign,
        LogbookReading::Logbook(other, left_out) => {
            let mut here = logbook();
            let (matches, goals) = here.merge(other);
            if keep_logbook(&here) {
                Came::Logbook {
                    matches,
                    goals,
                    left_out,
                }
            } else {
                Came::NotKept
            }
        }
    }
}

/// All notes, the latest first.
pub fn all_notes() -> Vec<Observed> {
    let texts = OBSERVED.texts().into_iter();
    let read = texts.filter_map(|text| match Observed::read(&text) {
        ObservedReading::Notes(observed, _) => Some(*observed),
        ObservedReading::Newer | ObservedReading::Foreign => None,
    });
    let mut all: Vec<Observed> = read.collect();
    all.sort_by_key(|observed| std::cmp::Reverse(observed.began));
    all
}

/// All notes as the texts that are kept.
pub fn notes_texts() -> Vec<String> {
    OBSERVED.texts()
}

/// The notes of this id.
pub fn notes(id: &str) -> Option<Observed> {
    match Observed::read(&OBSERVED.get(id)?) {
        ObservedReading::Notes(observed, _) => Some(*observed),
        ObservedReading::Newer | ObservedReading::Foreign => None,
    }
}

/// Keeps notes; false where the phone did not.
pub fn keep_notes(observed: &Observed) -> bool {
    OBSERVED.put(&observed.id, &observed.write())
}

/// With this the name begins under which it stands that the sides of a watched match were swapped by hand.
const SWAPPED: &str = "watch-swapped/";

/// Whether whoever watches a match sees its teams on the other sides than at its beginning.
pub fn sides_are_swapped(id: &str) -> bool {
    device::setting(&format!("{SWAPPED}{id}")).is_some()
}

/// Keeps it. Where storage is full it holds as long as the page.
pub fn keep_sides_swapped(id: &str, swapped: bool) {
    let name = format!("{SWAPPED}{id}");
    if swapped {
        let _ = device::set_setting(&name, "yes");
    } else {
        device::forget_setting(&name);
    }
}

/// Forgets notes.
pub fn forget_notes(id: &str) {
    keep_sides_swapped(id, false);
    OBSERVED.forget(id);
}

/// Takes notes in that came from elsewhere. Of the same ones those stay that say more: words may have been added
/// on either phone.
pub fn take_notes(mut came: Observed, left_out: usize) -> Came {
    if came.id.is_empty() {
        came.id = device::new_id();
    }
    let more_here = notes(&came.id).is_some_and(|here| here.write().len() > came.write().len());
    if more_here || keep_notes(&came) {
        Came::Notes { left_out }
    } else {
        Came::NotKept
    }
}

/// The same for their file.
pub fn take_notes_file(text: &str) -> Came {
    match Observed::read(text) {
        ObservedReading::Notes(observed, left_out) => take_notes(*observed, left_out),
        ObservedReading::Newer => Came::Newer,
        ObservedReading::Foreign => Came::Foreign,
    }
}
