//! The two teams, a pair of things one for each, shirt numbers and a score.

use std::fmt;
use std::ops::{Index, IndexMut};

use super::Coded;

/// One of the two teams. The letters stay for the whole match, whatever side a team plays on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Team {
    /// Team A.
    A,
    /// Team B.
    B,
}

impl Team {
    /// Both, A first.
    pub const BOTH: [Team; 2] = [Team::A, Team::B];

    /// The opponent.
    #[must_use]
    pub const fn other(self) -> Team {
        match self {
            Team::A => Team::B,
            Team::B => Team::A,
        }
    }

    /// The letter, as in the log.
    #[must_use]
    pub const fn letter(self) -> &'static str {
        match self {
            Team::A => "A",
            Team::B => "B",
        }
    }
}

impl Coded for Team {
    const EVERY: &'static [Team] = &Team::BOTH;

    fn code(self) -> &'static str {
        self.letter()
    }
}

impl fmt::Display for Team {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.letter())
    }
}

/// The same thing once for each team.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub struct ByTeam<T> {
    /// Team A's.
    pub a: T,
    /// Team B's.
    pub b: T,
}

impl<T> ByTeam<T> {
    /// Makes both from the team.
    pub fn new(mut make: impl FnMut(Team) -> T) -> Self {
        let a = make(Team::A);
        ByTeam {
            a,
            b: make(Team::B),
        }
    }

    /// Both with their team, A first.
    pub fn iter(&self) -> impl Iterator<Item = (Team, &T)> {
        [(Team::A, &self.a), (Team::B, &self.b)].into_iter()
    }

    /// The same pair, changed one by one.
    pub fn map<U>(&self, mut change: impl FnMut(Team, &T) -> U) -> ByTeam<U> {
        ByTeam::new(|team| change(team, &self[team]))
    }
}

impl<T> Index<Team> for ByTeam<T> {
    type Output = T;
    fn index(&self, team: Team) -> &T {
        match team {
            Team::A => &self.a,
            Team::B => &self.b,
        }
    }
}

impl<T> IndexMut<Team> for ByTeam<T> {
    fn index_mut(&mut self, team: Team) -> &mut T {
        match team {
            Team::A => &mut self.a,
            Team::B => &mut self.b,
        }
    }
}

/// As a score is written and called, A's first: "25:23".
impl<T: fmt::Display> fmt::Display for ByTeam<T> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}:{}", self.a, self.b)
    }
}

impl<T: fmt::Display> ByTeam<T> {
    /// For whoever compares it with the court: the team on the left first, "23:25".
    #[must_use]
    pub fn from_left(&self, left: Team) -> String {
        format!("{}:{}", self[left], self[left.other()])
    }

    /// For whoever has no court before the eyes: with the teams' letters, "A 25:23 B".
    #[must_use]
    pub fn marked(&self) -> String {
        format!("A {self} B")
    }
}

/// Points of one set.
pub type Score = ByTeam<u16>;

impl Score {
    /// The team with more points, if one has.
    #[must_use]
    pub fn leader(&self) -> Option<Team> {
        match self.a.cmp(&self.b) {
            std::cmp::Ordering::Greater => Some(Team::A),
            std::cmp::Ordering::Less => Some(Team::B),
            std::cmp::Ordering::Equal => None,
        }
    }

    /// The same with one point more for `team`.
    #[must_use]
    pub fn plus(mut self, team: Team) -> Score {
        self[team] = self[team].saturating_add(1);
        self
    }
}

/// A shirt number. A player is known by it; names are optional.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Shirt(pub u16);

impl fmt::Display for Shirt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
