//! What is half typed, kept on the phone so that a reload or a wrong tap loses nothing.
use game::{Entry, Kind};
use record::Log;

fn key(id: &str, what: &str) -> String {
    format!("draft/{id}/{what}")
}

/// Keeps a text. Where storage is full the draft lives only as long as the page.
pub(super) fn keep(id: &str, what: &str, text: &str) {
    let _ = device::set_setting(&key(id, what), text);
}

/// The text kept last.
pub(super) fn kept(id: &str, what: &str) -> Option<String> {
    device::setting(&key(id, what))
}

/// The draft was handed in or given up.
pub(super) fn drop(id: &str, what: &str) {
    device::forget_setting(&key(id, what));
}

/// Keeps an entry that was not made yet, in the words of the match file.
pub(super) fn keep_entry(id: &str, what: &str, kind: Kind) {
    keep(id, what, &written(kind));
}

/// The entry kept last.
pub(super) fn kept_entry(id: &str, what: &str) -> Option<Kind> {
    unwritten(&kept(id, what)?)
}

/// One entry as text.
pub(super) fn written(kind: Kind) -> String {
    record::write(&Log {
        id: "draft".to_owned(),
        entries: vec![Entry::new(1, kind)],
    })
}

/// The entry of such a text.
pub(super) fn unwritten(text: &str) -> Option<Kind> {
    let entry = record::read(text).log.entries.into_iter().next()?;
    Some(entry.kind)
}

/// Names of everything that may be half typed about a match, for whoever wipes one.
const ALL: [&str; 8] = [
    "toss",
    "list-A",
    "list-B",
    "line-up-A",
    "line-up-B",
    BRIEFED,
    DRAWN,
    PRACTICE,
];
/// What was read aloud.
pub(super) const BRIEFED: &str = "briefed";
/// Signatures drawn with a finger.
pub(super) const DRAWN: &str = "drawn";

/// How far a practice match was told.
const PRACTICE: &str = "practice";

/// Keeps how far a practice match was told. Where storage is full it holds as long as the page.
pub fn keep_practice_step(id: &str, step: usize) {
    keep(id, PRACTICE, &step.to_string());
}

/// How far a practice match was told.
pub fn practice_step(id: &str) -> usize {
    kept(id, PRACTICE)
        .and_then(|step| step.parse().ok())
        .unwrap_or(0)
}

/// Under this name stays what is remembered from match to match: the unit of the gauge, the height of
/// the net, the minutes to wait.
const LAST: &str = "last";

/// Remembers something for the next match.
pub(super) fn remember(what: &str, text: &str) {
    keep(LAST, what, text);
}

/// What was remembered, or nothing.
pub(super) fn remembered(what: &str) -> String {
    kept(LAST, what).unwrap_or_default()
}

/// Wipes what is half typed about a match, and the signatures drawn for it.
pub fn forget_drafts(id: &str) {
    for what in ALL {
        drop(id, what);
    }
}
