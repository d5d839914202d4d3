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
    /// Whether both name one person of a team: a role is the same whatever the case and spacing it was
    /// written in, so that nobody's ladder begins anew with a capital letter (21.4.2).
    #[must_use]
    pub fn is_same(&self, other: &Who) -> bool {
        let letters = |role: &str| {
            role.chars()
                .filter(|c| !c.is_whitespace())
                .flat_map(char::to_lowercase)
                .collect::<String>()
        };
        match (self, other) {
            (Who::Player(one), Who::Player(two)) => one == two,
            (Who::Staff(one), Who::Staff(two)) => letters(one) == letters(two),
            (Who::Player(_), Who::Staff(_)) | (Who::Staff(_), Who::Player(_)) => false,
        }
    }
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
