//! Who is sanctioned, and how heavily.

use rules::Shirt;

/// A person who can be sanctioned.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Who {
    /// A player.
    Player(Shirt),
    /// Somebody of the staff, by role.
    Staff(String),
}

impl Who {
    /// Whether both name one person of a team, so that nobody's ladder begins anew with a capital letter
    /// (21.4.2).
    #[must_use]
    pub fn is_same(&self, other: &Who) -> bool {
        match (self, other) {
            (Who::Player(one), Who::Player(two)) => one == two,
            (Who::Staff(one), Who::Staff(two)) => is_same_role(one, two),
            (Who::Player(_), Who::Staff(_)) | (Who::Staff(_), Who::Player(_)) => false,
        }
    }
}

/// What tells a role of the staff from another one: it is the same whatever the case and spacing it was written
/// in, and with `_` for a space.
fn letters(role: &str) -> String {
    role.chars()
        .filter(|c| !c.is_whitespace() && *c != '_')
        .flat_map(char::to_lowercase)
        .collect()
}

/// Whether both are one role of the staff.
#[must_use]
pub fn is_same_role(one: &str, other: &str) -> bool {
    letters(one) == letters(other)
}

/// Whether a role is that of the coach (5.2).
#[must_use]
pub fn is_coach(role: &str) -> bool {
    matches!(letters(role).as_str(), "coach" | "headcoach")
}

/// Whether a role is that of an assistant coach (5.3).
#[must_use]
pub fn is_assistant_coach(role: &str) -> bool {
    letters(role).starts_with("assistant")
}

/// The levels of a misconduct sanction, the lightest first
/// (Official Volleyball Rules 2025-2028, 21.1 and 21.3).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// Yellow card.
    Warning,
    /// Red card.
    Penalty,
    /// Both in one hand: out for the set.
    Expulsion,
    /// One in each hand: out for the match.
    Disqualification,
}

rules::codes!(Level {
    Warning = "warning",
    Penalty = "penalty",
    Expulsion = "expulsion",
    Disqualification = "disqualification",
});
