//! Why an entry of a record cannot be read. The words for it stand in `text`.

use std::fmt;

/// What is wrong with an entry, with the field that it is wrong in (FORMAT.md names the fields).
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum EntryProblem {
    /// Its text is no JSON.
    Damaged,
    /// It is JSON and no object.
    EntryNoObject,
    /// A field that every such entry has.
    Missing(String),
    /// A field that holds something else than it should.
    Not {
        /// The field.
        field: String,
        /// What it should hold.
        wanted: Wanted,
    },
    /// A field with a word that is none of those it can hold.
    UnknownWord {
        /// The field.
        field: String,
        /// What stands there.
        given: String,
        /// What can stand there.
        known: Vec<String>,
    },
    /// A list with something else than objects in it.
    ItemNoObject(String),
    /// A kind of entry that this program does not know.
    UnknownKind(String),
    /// A cause of a rally that this program does not know.
    UnknownCause(String),
    /// A person who is neither a player nor of the staff.
    NobodyNamed,
    /// Rules of a preset that this program does not know.
    UnknownPreset(String),
    /// A preset that is no name.
    PresetNoName,
    /// A rule that this program does not know.
    UnknownRule(String),
    /// A rule that takes one number of two, and has none or both.
    OneNumber {
        /// The rule.
        rule: &'static str,
        /// The two.
        of: [&'static str; 2],
    },
    /// One of the above within the rules.
    InRules(Box<EntryProblem>),
}

/// What a field should hold.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wanted {
    /// Words.
    Text,
    /// True or false.
    Flag,
    /// A whole number from 0 to this.
    Whole(u32),
    /// Milliseconds since 1970.
    Time,
    /// A list.
    List,
    /// An object.
    Object,
}

impl std::error::Error for EntryProblem {}

impl fmt::Display for EntryProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self, f)
    }
}
