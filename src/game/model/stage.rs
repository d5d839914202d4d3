//! Where a match stands: before a set, in one, interrupted, over.

use super::ending::Ending;
use super::entry::Toss;
use super::joined::Running;
use super::set::{SetPlay, Side};
use rules::{ByTeam, Shirt, Team};

/// Where the match stands.
#[derive(Clone, Debug)]
pub(crate) enum Stage {
    /// Before a set.
    NextSet(NextSet),
    /// A set is being played.
    Playing(Box<SetPlay>),
    /// Play is interrupted; the stage it left.
    Suspended {
        then: Box<Stage>,
        since: Option<i64>,
    },
    /// The match is over.
    Finished(Ending),
}

/// What is known of the set to come.
#[derive(Clone, Debug, Default)]
pub(crate) struct NextSet {
    pub toss: Option<Toss>,
    pub line_ups: ByTeam<Option<Vec<Shirt>>>,
    /// Entries whose penalty counts when the set begins, by the team at fault (16.2.4, 21.5).
    pub penalties: ByTeam<Vec<u32>>,
    /// Teams that may ask for nothing until a rally is completed (15.2.4).
    pub barred: ByTeam<bool>,
    /// The set as it stands ready, once both line-ups are in.
    pub ready: Option<Box<SetPlay>>,
    /// Sides that stood ready when the other team's line-up was withdrawn.
    pub kept: ByTeam<Option<Side>>,
    /// After an interruption the set starts again here: its number shows, and who opens it.
    pub again: Option<Again>,
    /// The set was running when this record began: it goes on from here.
    pub joined: Option<Running>,
}

/// A set that is played again on another court (17.3.2.2).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Again {
    pub opener: Option<Team>,
    pub left: Team,
}

/// Where a match stands, for whoever reads a state.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Before the first set.
    Preparation,
    /// Between two sets.
    BetweenSets,
    /// A set is being played.
    Playing,
    /// Play is interrupted.
    Suspended,
    /// The match is over.
    Finished,
}

impl Phase {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Phase::Preparation => "preparation",
            Phase::BetweenSets => "between_sets",
            Phase::Playing => "playing",
            Phase::Suspended => "suspended",
            Phase::Finished => "finished",
        }
    }

    /// Whether the match has begun and is not over.
    #[must_use]
    pub const fn is_under_way(self) -> bool {
        match self {
            Phase::BetweenSets | Phase::Playing | Phase::Suspended => true,
            Phase::Preparation | Phase::Finished => false,
        }
    }
}
