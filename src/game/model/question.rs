//! What the rules leave open, as a question to the first referee.

use rules::Team;

/// A question to the first referee.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Question {
    /// The entry that raised it; the answer names it.
    pub entry: u32,
    /// What is asked.
    pub ask: QuestionKind,
}

/// What is asked.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum QuestionKind {
    /// Both teams were penalised between the sets (FIVB Casebook 2024, case 6.4, has 1-1 and both
    /// rotations, not the service). Until it is answered the team due to open serves; the first point
    /// of the set closes the question.
    WhoOpens {
        /// The team due to open.
        due: Team,
    },
    /// A player not on the list came in during an earlier set (7.3.5.4 speaks of points and sets
    /// gained since, not of a set begun before). Until it is answered the earlier sets stand.
    UnregisteredInside {
        /// Whose player.
        team: Team,
        /// The set.
        set: u8,
    },
    /// A player not on the list was found after the match: the match is lost (FIVB Casebook 2024, case
    /// 4.22), or the points and sets won since he or she came in (7.3.5.4). Until it is answered the
    /// result stands.
    UnregisteredAfter {
        /// Whose player.
        team: Team,
        /// The set in which he or she came in.
        set: u8,
        /// Whether that was inside an earlier set than the last one.
        inside: bool,
    },
}

impl QuestionKind {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            QuestionKind::WhoOpens { .. } => "who_opens",
            QuestionKind::UnregisteredInside { .. } => "unregistered_inside_set",
            QuestionKind::UnregisteredAfter { .. } => "unregistered_after_match",
        }
    }

    /// The codes of the choices.
    #[must_use]
    pub const fn choices(self) -> &'static [&'static str] {
        match self {
            QuestionKind::WhoOpens { .. } => &["A", "B"],
            // That set and all later ones are lost; or it stands and only those are.
            QuestionKind::UnregisteredInside { .. } => &["lose_set", "keep_set"],
            QuestionKind::UnregisteredAfter { inside: true, .. } => {
                &["lose_match", "lose_set", "keep_set"]
            }
            QuestionKind::UnregisteredAfter { inside: false, .. } => &["lose_match", "lose_set"],
        }
    }
}
