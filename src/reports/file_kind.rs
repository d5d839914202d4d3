//! What kind of file something is, by what it says of itself.

use serde::Deserialize;

use super::{paper, standings};

/// A file of ours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FileKind {
    /// The record of one match.
    Match,
    /// Many of them in one.
    Backup,
    /// A paper sheet that was keyed in.
    Paper,
    /// The results of a pool.
    Pool,
    /// The notes of an observer.
    Observer,
    /// A logbook, or goals for one.
    Logbook,
}

/// The one field that is looked at.
#[derive(Deserialize)]
struct Head {
    log: String,
}

impl FileKind {
    const ALL: [(FileKind, &'static str); 6] = [
        (FileKind::Match, record::MATCH),
        (FileKind::Backup, record::BACKUP),
        (FileKind::Paper, paper::NAME),
        (FileKind::Pool, standings::NAME),
        (FileKind::Observer, record::OBSERVED_NAME),
        (FileKind::Logbook, record::LOGBOOK_NAME),
    ];

    /// What a text says that it is; none where it says nothing, or cannot be read so far.
    #[must_use]
    pub fn of(text: &str) -> Option<FileKind> {
        let head: Head = serde_json::from_str(text.trim_start_matches('\u{feff}')).ok()?;
        let known = FileKind::ALL.iter().find(|k| k.1 == head.log);
        known.map(|k| k.0)
    }
}
