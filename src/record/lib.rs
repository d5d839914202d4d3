//! The log: how entries are kept, written down and read again.

mod backup;
mod broken;
mod chain;
mod code;
mod entry_problem;
mod fields;
mod file;
mod frames;
mod handed;
mod line;
mod logbook;
mod observed;
mod pack;
mod plain;
mod problem;
mod seal;
mod strokes;
mod take_in;
mod unread;
mod wire;

pub use backup::{
    open, open_part, write_backup, BackupReading, KeptMatch, OnDesk, Opened, ReadMatch,
    MAX_BACKUP_BYTES, MAX_MATCHES, NAME as BACKUP,
};
pub use broken::{broken, Broken};
pub use chain::Link;
pub use code::Code;
pub use entry_problem::{EntryProblem, Wanted};
pub use file::{read, read_entry, write, write_entry, MAX_BYTES, MAX_ENTRIES, NAME as MATCH};
pub use frames::{frames, note_frames, Gathering, Seen, DIGITS_LARGE, DIGITS_SMALL};
pub use handed::{handed, Foreign, Handed};
pub use line::LineWriter;
pub use logbook::{
    Day, Goal, GoalKind, Logbook, LogbookReading, Officiated, Progress, LOGBOOK_NAME, MAX_LOGGED,
    SHORT_LETTERS, TALK_LETTERS,
};
pub use observed::{
    Event, NoteKind, Observation, Observed, ObservedReading, Standing, MAX_EVENTS, NOTE_LETTERS,
    OBSERVED_NAME, OBSERVED_VERSION, TEAM_LETTERS,
};
pub use pack::{pack, unpack, MAX_PACKED, PACKED_VERSION};
pub use plain::plain;
pub use problem::{Extent, PackProblem, Problem, ProblemKind};
pub use seal::{seal_code, seals, spaced, typed_code, Seal};
pub use strokes::{read_drawn, write_drawn, Strokes, HEIGHT, WIDTH};
pub use take_in::{is_of_record, take_in, MergeDecision};
pub use unread::with_unread;
pub use wire::{read_rules, write_rules};

use game::Entry;

/// A match record: its id and its entries, oldest first.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Log {
    /// Any text that no other match has.
    pub id: String,
    /// The entries.
    pub entries: Vec<Entry>,
}

/// What reading a file gave.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Reading {
    /// Every entry that could be read.
    pub log: Log,
    /// How many entries the file has, good or bad.
    pub entries: usize,
    /// Numbers of the entries that could not be read.
    pub unreadable: Vec<u32>,
    /// Numbers of the entries that are not as they were written, by their links.
    pub changed: Vec<u32>,
    /// Whether the end of the file is missing, so that nobody knows how much of it.
    pub cut_off: bool,
    /// Whether a part of it is missing or could not be read, which nobody sees in the log.
    pub lacks_a_part: bool,
    /// What was wrong.
    pub problems: Vec<Problem>,
}

impl Reading {
    /// Whether nothing could be read at all.
    #[must_use]
    pub fn is_nothing(&self) -> bool {
        self.problems.iter().any(Problem::is_fatal)
    }
}
