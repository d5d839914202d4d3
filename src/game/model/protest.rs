//! A protest as it stands in the record.

use rules::{Score, Shirt, Team};

/// A protest that was announced.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Protest {
    /// The entry that announced it.
    pub entry: u32,
    /// Whose.
    pub team: Team,
    /// Who announced it, where known.
    pub number: Option<Shirt>,
    /// What was announced; may be empty.
    pub text: String,
    /// The set at that moment, or the last one.
    pub set: u8,
    /// Its score then.
    pub score: Score,
    /// The entry and the words that were written after the match.
    pub written: Option<(u32, String)>,
}
