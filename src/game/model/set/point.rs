//! A point of a set.

use rules::Team;

/// What a point was given for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PointFor {
    /// A rally.
    Rally,
    /// A misconduct or delay penalty.
    Penalty,
    /// A fault found late.
    LateFault,
    /// A score that had been miscounted.
    Correction,
}

rules::codes!(PointFor {
    Rally = "rally",
    Penalty = "penalty",
    LateFault = "late_fault",
    Correction = "correction",
});

/// One point of a set, in the order given; a cancelled one stays and says what cancelled it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Point {
    /// The entry that gave it.
    pub entry: u32,
    /// Whose.
    pub to: Team,
    /// What for.
    pub why: PointFor,
    /// Who served, where known.
    pub served: Option<Team>,
    /// The entry that cancelled it.
    pub cancelled_by: Option<u32>,
}
