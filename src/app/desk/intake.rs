//! Files that only the desk takes in: paper sheets that somebody keyed in, and the results of pools.

use crate::desk_store::{DeskStore, InsertOutcome};
use crate::import_note::FileNote;
use crate::settings::Settings;
use reports::paper::{self, Draft};
use reports::{standings, FileKind, FormProblem};

/// Takes in such a file under a new id: what became of it, and whether it is here now; none for any other file.
#[must_use]
pub fn take_in(settings: &Settings, new_id: &str, text: &str) -> Option<(FileNote, bool)> {
    match FileKind::of(text)? {
        FileKind::Paper => {
            let form = paper::read(text);
            let draft = form.read.map(|sheet| Draft::of(&sheet).written());
            Some(keep(&settings.papers(), new_id, draft, form.problems))
        }
        FileKind::Pool => {
            let form = standings::read(text);
            let whole = form.read.map(|_| text.to_owned());
            Some(keep(&settings.pools(), new_id, whole, form.problems))
        }
        FileKind::Match | FileKind::Backup | FileKind::Observer | FileKind::Logbook => None,
    }
}

fn keep(
    store: &DeskStore,
    new_id: &str,
    read: Option<String>,
    problems: Vec<FormProblem>,
) -> (FileNote, bool) {
    let Some(text) = read else {
        return (FileNote::FormUnreadable(problems), false);
    };
    match store.insert(new_id, &text) {
        InsertOutcome::Here => (FileNote::FormHere, true),
        InsertOutcome::New => (FileNote::FormTaken(problems), true),
        InsertOutcome::Refused => (FileNote::FormNotKept, false),
    }
}
