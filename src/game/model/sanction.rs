//! The lines of the sanctions box.

use super::entry::{Level, Who};
use rules::{Score, Team};

/// A line of the sanctions box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sanction {
    /// The entry it came from.
    pub entry: u32,
    /// The set it counts in.
    pub set: u8,
    /// The team at fault.
    pub team: Team,
    /// What.
    pub kind: SanctionKind,
    /// The person, for misconduct.
    pub who: Option<Who>,
    /// The score before it.
    pub score: Score,
    /// Where it came from an improper request: which one of the team in the match that was, from 1.
    pub improper: Option<u8>,
}

/// What a line of the sanctions box says.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SanctionKind {
    /// First improper request of a team in the match.
    ImproperRequest,
    /// Delay warning.
    DelayWarning,
    /// Delay penalty.
    DelayPenalty,
    /// Misconduct.
    Misconduct(Level),
}

impl SanctionKind {
    /// Whether a card or a warning goes with it; a first improper request is only noted (15.11.2).
    #[must_use]
    pub const fn is_card(self) -> bool {
        match self {
            SanctionKind::ImproperRequest => false,
            SanctionKind::DelayWarning
            | SanctionKind::DelayPenalty
            | SanctionKind::Misconduct(_) => true,
        }
    }

    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            SanctionKind::ImproperRequest => "improper_request",
            SanctionKind::DelayWarning => "delay_warning",
            SanctionKind::DelayPenalty => "delay_penalty",
            SanctionKind::Misconduct(level) => level.code(),
        }
    }
}
