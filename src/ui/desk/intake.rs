//! Files that only the desk takes in: paper sheets that somebody keyed in, and the results of pools.

use crate::desk_store::{DeskStore, InsertOutcome, PAPERS, POOLS};
use reports::paper::{self, Draft};
use reports::{standings, FileKind, FormProblem};
use text::desk as words;

/// Takes in such a file: what became of it, and whether it is here now; none for any other file.
pub fn take_in(name: &str, text: &str) -> Option<(String, bool)> {
    match FileKind::of(text)? {
        FileKind::Paper => {
            let form = paper::read(text);
            let draft = form.read.map(|sheet| Draft::of(&sheet).written());
            Some(keep(&PAPERS, name, draft, &form.problems))
        }
        FileKind::Pool => {
            let form = standings::read(text);
            let whole = form.read.map(|_| text.to_owned());
            Some(keep(&POOLS, name, whole, &form.problems))
        }
        FileKind::Match | FileKind::Backup | FileKind::Observer | FileKind::Logbook => None,
    }
}

fn keep(
    store: &DeskStore,
    name: &str,
    read: Option<String>,
    problems: &[FormProblem],
) -> (String, bool) {
    let Some(text) = read else {
        return (words::form_unreadable(name, problems), false);
    };
    match store.insert(&text) {
        InsertOutcome::Here => (words::form_here(name), true),
        InsertOutcome::New => (words::form_taken(name, problems), true),
        InsertOutcome::Refused => (words::form_not_kept(name), false),
    }
}
