//! What teams are ranked by.

use std::cmp::Ordering;

use super::Tally;

/// One rule of order. Those of the international order (public regulations of 2017 to 2021): wins,
/// match points, set ratio, point ratio, head to head. The differences and the sets won stand in
/// regulations of school and club tournaments.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Criterion {
    /// Matches won.
    Wins,
    /// Match points.
    MatchPoints,
    /// Sets won to sets lost.
    SetRatio,
    /// Points won to points lost.
    PointRatio,
    /// Sets won less sets lost.
    SetDifference,
    /// Points won less points lost.
    PointDifference,
    /// Sets won.
    SetsWon,
    /// The matches among the level teams.
    HeadToHead,
}

rules::codes!(Criterion {
    Wins = "wins",
    MatchPoints = "match_points",
    SetRatio = "set_ratio",
    PointRatio = "point_ratio",
    SetDifference = "set_difference",
    PointDifference = "point_difference",
    SetsWon = "sets_won",
    HeadToHead = "head_to_head",
});

impl Criterion {
    /// Greater: the first team ranks before the second. Head to head needs the matches and says
    /// nothing here.
    #[must_use]
    pub fn compare(self, a: &Tally, b: &Tally) -> Ordering {
        match self {
            Criterion::Wins => a.wins.cmp(&b.wins),
            Criterion::MatchPoints => a.match_points.cmp(&b.match_points),
            Criterion::SetRatio => a.set_ratio().cmp(&b.set_ratio()),
            Criterion::PointRatio => a.point_ratio().cmp(&b.point_ratio()),
            Criterion::SetDifference => a.set_difference().cmp(&b.set_difference()),
            Criterion::PointDifference => a.point_difference().cmp(&b.point_difference()),
            Criterion::SetsWon => a.sets.0.cmp(&b.sets.0),
            Criterion::HeadToHead => Ordering::Equal,
        }
    }

    /// What a team has in this criterion, as printed.
    #[must_use]
    pub fn value(self, tally: &Tally) -> String {
        match self {
            Criterion::Wins | Criterion::HeadToHead => tally.wins.to_string(),
            Criterion::MatchPoints => tally.match_points.to_string(),
            Criterion::SetRatio => tally.set_ratio().to_string(),
            Criterion::PointRatio => tally.point_ratio().to_string(),
            Criterion::SetDifference => format!("{:+}", tally.set_difference()),
            Criterion::PointDifference => format!("{:+}", tally.point_difference()),
            Criterion::SetsWon => tally.sets.0.to_string(),
        }
    }
}
