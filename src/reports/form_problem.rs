//! What can be wrong with a form that somebody keyed in as JSON. The words for it stand in `text`.

use record::EntryProblem;

/// Something wrong in a form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FormProblem {
    /// The place, such as `sets[0].rounds.A[2]`; empty for the whole file. Places count from 0.
    pub place: String,
    /// What is wrong there.
    pub kind: FormProblemKind,
}

/// What is wrong at a place of a form.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FormProblemKind {
    /// The file has so many bytes, far more than a form.
    TooLong(usize),
    /// It is no JSON from this line on, counted from 1.
    Damaged(usize),
    /// It should say that it is this.
    OtherLog(&'static str),
    /// It is of a newer version.
    NewerVersion(u64),
    /// It does not say its version.
    NoVersion,
    /// It cannot be read, and nothing closer is known.
    Unreadable,
    /// The field is missing.
    Missing,
    /// The field is not known and was left out.
    UnknownField,
    /// It should be an object with these fields.
    NotObject(Vec<String>),
    /// It should be a list.
    NotList,
    /// The list has more items than it may have.
    TooManyItems {
        /// So many it has.
        items: usize,
        /// So many it may have.
        most: usize,
    },
    /// It should be a text that is not empty.
    NotText,
    /// It should be true or false.
    NotFlag,
    /// It should be a whole number between these.
    NotWhole {
        /// The least.
        least: i64,
        /// The most.
        most: i64,
    },
    /// It should be one of these words.
    NotWord(Vec<String>),
    /// The rules cannot be read; why, where they are an object.
    RulesUnreadable(Option<EntryProblem>),
    /// Nobody can play by the rules.
    RulesUnplayable,
    /// No time of day.
    NotTime,
    /// Misconduct without its person.
    NobodyNamed,
    /// Somebody who is both a player and of the staff, or neither.
    NotOnePerson,
    /// Nothing to rank by.
    NoCriterion,
    /// More teams than a pool has.
    TooManyTeams {
        /// So many there are.
        teams: usize,
        /// So many a pool may have.
        most: usize,
    },
    /// Match points that do not name results.
    NotMatchPoints,
    /// Match points of a result that are not two numbers.
    NotTwoPoints,
    /// A result that is not named by its sets.
    NotResult,
    /// A set that is not two numbers.
    NotSet,
}
