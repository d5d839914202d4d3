//! A match in this phone's storage, as far as the start screen shows it.

use std::sync::Arc;

use crate::device::Copies;
use crate::game::{Entry, Phase, Replay, State};
use crate::record::{self, Log};

/// One match.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Its id.
    pub id: String,
    /// Where it stands.
    pub state: Arc<State>,
    /// When the last entry was made.
    pub last_at: Option<i64>,
    /// What of it is damaged, in words.
    pub problems: Vec<String>,
    entries: Arc<Vec<Entry>>,
}

// Two of the same id and length are the same: a log only grows.
impl PartialEq for Kept {
    fn eq(&self, other: &Kept) -> bool {
        self.id == other.id && self.entries.len() == other.entries.len()
    }
}

impl Kept {
    /// From what both stores hold.
    #[must_use]
    pub fn of(id: String, copies: &Copies) -> Kept {
        let found = record::recover(&copies.local, &copies.durable);
        let replay = Replay::of(found.entries);
        Kept {
            id,
            state: Arc::new(replay.state().clone()),
            last_at: replay.entries().iter().rev().find_map(|e| e.at),
            problems: found.problems,
            entries: Arc::new(replay.entries().to_vec()),
        }
    }

    /// Its entries.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// The log, as a file would hold it.
    #[must_use]
    pub fn log(&self) -> Log {
        Log {
            id: self.id.clone(),
            entries: self.entries.to_vec(),
        }
    }

    /// Whether somebody may want to go on with it.
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.state.heading().is_some() && self.state.phase() != Phase::Finished
    }
}
