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

crate::codes!(Duty {
    FirstReferee = "first_referee",
    SecondReferee = "second_referee",
    Scorer = "scorer",
    AssistantScorer = "assistant_scorer",
    LineJudge = "line_judge",
});
