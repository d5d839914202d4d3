//! Why an entry of a record cannot be read.

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
        match self {
            EntryProblem::Damaged => f.write_str("the entry is damaged"),
            EntryProblem::EntryNoObject => f.write_str("the entry is not an object"),
            EntryProblem::Missing(field) => write!(f, "the field `{field}` is missing"),
            EntryProblem::Not { field, wanted } => match wanted {
                Wanted::Text => write!(f, "`{field}` is not a text"),
                Wanted::Flag => write!(f, "`{field}` is neither true nor false"),
                Wanted::Whole(most) => {
                    write!(f, "`{field}` is not a whole number from 0 to {most}")
                }
                Wanted::Time => write!(f, "`{field}` is not a time in milliseconds"),
                Wanted::List => write!(f, "`{field}` is not a list"),
                Wanted::Object => write!(f, "`{field}` is not an object"),
            },
            EntryProblem::UnknownWord {
                field,
                given,
                known,
            } => {
                write!(f, "`{field}` says `{given}`; it can say ")?;
                match &known[..] {
                    [before @ .., last] if !before.is_empty() => {
                        write!(f, "`{}` or `{last}`", before.join("`, `"))
                    }
                    _ => f.write_str(&known.concat()),
                }
            }
            EntryProblem::ItemNoObject(field) => {
                write!(f, "an item of `{field}` is not an object")
            }
            EntryProblem::UnknownKind(kind) => write!(f, "the kind `{kind}` is not known"),
            EntryProblem::UnknownCause(code) => write!(f, "the cause `{code}` is not known"),
            EntryProblem::NobodyNamed => {
                f.write_str("`who` names one `player` or one of the `staff`")
            }
            EntryProblem::UnknownPreset(code) => write!(f, "unknown preset `{code}`"),
            EntryProblem::PresetNoName => f.write_str("the preset is not a name"),
            EntryProblem::UnknownRule(rule) => write!(f, "unknown rule `{rule}`"),
            EntryProblem::OneNumber { rule, of: [a, b] } => {
                write!(f, "`{rule}` has one number, `{a}` or `{b}`")
            }
            EntryProblem::InRules(problem) => write!(f, "rules: {problem}"),
        }
    }
}
