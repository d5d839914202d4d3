//! In which order a score is written. Whoever compares it with the court reads it from left to right;
//! where no court is before the eyes it carries the teams' letters.

use std::fmt::Display;

use rules::{ByTeam, Team};

/// The order of a score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ScoreOrder {
    /// As the halves are drawn: this team first.
    Screen {
        /// The team in the left half of the screen.
        left: Team,
    },
    /// Team A first, with both letters.
    Marked,
}

impl ScoreOrder {
    /// A score in this order.
    #[must_use]
    pub fn write<T: Display>(self, score: &ByTeam<T>) -> String {
        match self {
            ScoreOrder::Screen { left } => score.from_left(left),
            ScoreOrder::Marked => score.marked(),
        }
    }
}
