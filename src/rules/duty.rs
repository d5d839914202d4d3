//! The officials of a match (Official Volleyball Rules 2025-2028, 22.1).

/// What somebody of the duty team does in a match.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Duty {
    /// On the stand.
    FirstReferee,
    /// At the other end of the net.
    SecondReferee,
    /// At the table, with the sheet.
    Scorer,
    /// Beside the scorer.
    AssistantScorer,
    /// At a corner.
    LineJudge,
}

impl Duty {
    /// All of them.
    pub const ALL: [Duty; 5] = [
        Duty::FirstReferee,
        Duty::SecondReferee,
        Duty::Scorer,
        Duty::AssistantScorer,
        Duty::LineJudge,
    ];

    /// Its name in a file.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Duty::FirstReferee => "first_referee",
            Duty::SecondReferee => "second_referee",
            Duty::Scorer => "scorer",
            Duty::AssistantScorer => "assistant_scorer",
            Duty::LineJudge => "line_judge",
        }
    }

    /// The one of this name.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Duty> {
        Duty::ALL.into_iter().find(|duty| duty.code() == code)
    }
}
