//! A fault that is found late.

use rules::{Rules, Score, Shirt, Team};

/// A fault found late.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LateFault {
    /// Whose.
    pub team: Team,
    /// Which.
    pub fault: Fault,
    /// The score when it began; none where nobody knows.
    pub since: Option<Since>,
    /// When it was found.
    pub during: Found,
    /// The right places of that team now, place 1 first.
    pub positions: Option<Vec<Shirt>>,
}

/// Faults that are found late.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    /// Wrong server.
    Rotation,
    /// A substitution against the rules.
    IllegalSubstitution,
    /// A libero replacement against the rules.
    IllegalLibero,
    /// A player on court who is not in the line-up.
    WrongLineUp,
    /// A player who is not on the team list.
    UnregisteredPlayer,
}

rules::codes!(Fault {
    Rotation = "rotation",
    WrongLineUp = "wrong_line_up",
    IllegalSubstitution = "illegal_substitution",
    IllegalLibero = "illegal_libero",
    UnregisteredPlayer = "unregistered_player",
});

impl Fault {
    /// Whether the rules of a match know it. Without line-ups and lists nobody can have been against them,
    /// and without a libero none is replaced.
    #[must_use]
    pub const fn occurs_under(self, rules: &Rules) -> bool {
        match self {
            Fault::Rotation | Fault::IllegalSubstitution => true,
            Fault::WrongLineUp | Fault::UnregisteredPlayer => rules.line_ups,
            Fault::IllegalLibero => rules.liberos > 0,
        }
    }
}

/// A moment of the match by its score.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Since {
    /// The score.
    pub score: Score,
    /// The set; none: the present one.
    pub set: Option<u8>,
}

/// When a fault was found.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Found {
    /// Play was stopped for it.
    Rally,
    /// The rally had ended.
    AfterRally,
}

rules::codes!(Found {
    Rally = "rally",
    AfterRally = "after_rally",
});
