//! How a set or a match ended, and what is kept of it.

use std::sync::Arc;

use super::set::SetPlay;
use super::stage::NextSet;
use rules::{Score, Team};

/// How a set or a match was decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DecidedBy {
    /// By play.
    Played,
    /// One team was incomplete (6.4.3).
    Incomplete,
    /// One team did not appear or refused to play (6.4.1, 6.4.2).
    Default,
    /// Before this record began: entered as it stood.
    Joined,
    /// Lost for an unregistered player (7.3.5.4).
    Unregistered,
}

/// A set that is over.
#[derive(Clone, Debug)]
pub struct SetRecord {
    /// From 1.
    pub number: u8,
    /// Points.
    pub score: Score,
    /// Who won it.
    pub winner: Team,
    /// How.
    pub how: DecidedBy,
    /// Who was due to open it; unknown only without a toss.
    pub opener: Option<Team>,
    /// Who started it on the left, as far as settled; after a change of courts, who ended it there.
    pub left: Option<Team>,
    /// The set as it stood at its end; none where it was never played.
    pub play: Option<SetPlay>,
}

/// How a match ended.
#[derive(Clone, Debug)]
pub(crate) struct Ending {
    pub how: DecidedBy,
    /// The team that loses the match whatever sets it has won: incomplete for the match (6.4.3).
    pub lost_by: Option<Team>,
    /// The set that was on court, where the ending cut it off.
    pub left_over: Option<Box<SetPlay>>,
    /// Sets that were played for nothing: wiped by a default (6.4.1), or after the match was lost
    /// (7.3.5.4). What was said about their rallies can still be put right.
    pub voided: Vec<Arc<SetRecord>>,
    /// What was known of the set that did not come: a fault found late can bring it back.
    pub waiting: NextSet,
}
