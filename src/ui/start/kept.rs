//! A match in this phone's storage, as far as the start screen shows it.

use std::sync::Arc;

use crate::device::{self, Copies};
use crate::game::{Entry, Phase, Replay, State};
use crate::record::{self, KeptMatch, Log};
use crate::ui::before::drawn;

/// A match that has begun counts as being played for so long after its last entry, in milliseconds:
/// half a day, because one that somebody forgot to finish must not keep an old version of the program
/// for ever. Our own choice.
pub const RUNS_MS: i64 = 12 * 3_600_000;

/// One match.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Its id.
    pub id: String,
    /// When the last entry was made.
    pub last_at: Option<i64>,
    /// What of it is damaged, in words.
    pub problems: Vec<String>,
    /// Whether it was put away.
    pub archived: bool,
    replay: Arc<Replay>,
}

/// Under this name stays that a match was put away.
fn archived_key(id: &str) -> String {
    format!("archived/{id}")
}

/// Puts a match away, or brings it back. Where storage is full it stays as it was.
pub fn put_away(id: &str, away: bool) {
    if away {
        let _ = device::set_setting(&archived_key(id), "");
    } else {
        device::forget_setting(&archived_key(id));
    }
}

// Two of the same id and length are the same: a log only grows.
impl PartialEq for Kept {
    fn eq(&self, other: &Kept) -> bool {
        let same = self.id == other.id && self.entries().len() == other.entries().len();
        same && self.archived == other.archived
    }
}

impl Kept {
    /// From what both stores hold.
    #[must_use]
    pub fn of(id: String, copies: &Copies) -> Kept {
        let found = record::recover(&copies.local, &copies.durable);
        Kept {
            problems: found.problems,
            ..Kept::of_entries(id, found.entries)
        }
    }

    /// Of entries that are in order.
    #[must_use]
    pub fn of_entries(id: String, entries: Vec<Entry>) -> Kept {
        let replay = Replay::of(entries);
        let archived = device::setting(&archived_key(&id)).is_some();
        Kept {
            id,
            last_at: replay.entries().iter().rev().find_map(|e| e.at),
            problems: Vec::new(),
            archived,
            replay: Arc::new(replay),
        }
    }

    /// The log, folded.
    #[must_use]
    pub fn replay(&self) -> &Replay {
        &self.replay
    }

    /// Where it stands.
    #[must_use]
    pub fn state(&self) -> &State {
        self.replay.state()
    }

    /// Its entries.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        self.replay.entries()
    }

    /// The log, as a file would hold it.
    #[must_use]
    pub fn log(&self) -> Log {
        Log {
            id: self.id.clone(),
            entries: self.entries().to_vec(),
        }
    }

    /// The same with everything that is kept beside it, for a backup.
    #[must_use]
    pub fn whole(&self) -> KeptMatch {
        KeptMatch {
            log: self.log(),
            archived: self.archived,
            drawn: drawn(&self.id),
        }
    }

    /// Whether it is being played at this moment, as far as the phone can tell.
    #[must_use]
    pub fn is_under_way(&self, now: i64) -> bool {
        let until = self.last_at.map(|last| last.saturating_add(RUNS_MS));
        self.state().phase().is_under_way() && until.is_some_and(|until| until > now)
    }

    /// Whether somebody may want to go on with it.
    #[must_use]
    pub fn is_running(&self) -> bool {
        let open = self.state().heading().is_some() && self.state().phase() != Phase::Finished;
        open && !self.archived
    }
}
