//! The list of a team.

use rules::{Shirt, Team};

/// A team's list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TeamList {
    /// Whose.
    pub team: Team,
    /// Players.
    pub players: Vec<Player>,
    /// Coach, assistants and others on the bench.
    pub staff: Vec<Staff>,
}

impl TeamList {
    /// The player of that number.
    #[must_use]
    pub fn player(&self, number: Shirt) -> Option<&Player> {
        self.players.iter().find(|p| p.number == number)
    }
}

/// A player on the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Player {
    /// Shirt number.
    pub number: Shirt,
    /// Name, where it was given.
    pub name: Option<String>,
    /// Whether this is the team captain.
    pub captain: bool,
    /// Whether this is a libero.
    pub libero: bool,
}

/// A member of the staff.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Staff {
    /// Coach, assistant coach, therapist, doctor.
    pub role: String,
    /// Name, where it was given.
    pub name: Option<String>,
}
