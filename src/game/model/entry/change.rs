//! Who comes for whom, and what forces it.

use rules::Shirt;

/// Who goes and who comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Change {
    /// Leaves the court.
    pub out: Shirt,
    /// Enters it.
    pub into: Shirt,
}

/// What forces a substitution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Forced {
    /// The player is hurt or ill.
    Injury,
    /// The player was expelled.
    Expelled,
    /// The player was disqualified.
    Disqualified,
}

rules::codes!(Forced {
    Injury = "injury",
    Expelled = "expelled",
    Disqualified = "disqualified",
});

/// Why a new libero is named.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LiberoWhy {
    /// The old one cannot go on.
    Unable,
    /// The coach has declared it.
    Declared,
}

rules::codes!(LiberoWhy {
    Unable = "unable",
    Declared = "declared",
});
