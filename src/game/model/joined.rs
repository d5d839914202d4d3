//! A match that was already being played when somebody began to keep this record.

use super::set::SetPlay;
use rules::{Score, Team};

/// Sets and score as they stood.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Joined {
    /// The sets that were over.
    pub sets: Vec<Score>,
    /// The score of the set that was being played; none between two sets.
    pub score: Option<Score>,
    /// Who was to serve next in it.
    pub serving: Option<Team>,
    /// Who stood on the left, seen from the stand.
    pub left: Option<Team>,
}

/// A set that this record takes over while it is played, until it goes on here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Running {
    pub score: Score,
    pub serving: Option<Team>,
    pub left: Option<Team>,
}

impl Running {
    /// The set as it goes on here.
    pub fn take_over(&self, play: &mut SetPlay, change_courts_at: Option<u16>) {
        play.take_over(self.score, self.serving.or(play.serving));
        if let Some(left) = self.left {
            play.left = left;
        }
        // Whoever says how the teams stand says so after the change of courts.
        let most = self.score.a.max(self.score.b);
        play.changed_courts = change_courts_at.is_some_and(|at| most >= at);
    }
}
