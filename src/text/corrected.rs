//! The words about a match that was already being played, and about scores that are put right though no
//! team was at fault.

use rules::Shirt;

/// Opens the form, and its title.
pub const RUNNING_ALREADY: &str = "The match is already running";
/// What the form does.
pub const RUNNING_MORE: &str =
    "Enter what the scoreboard shows. The sheet will say when this record began.";
/// The running score.
pub const SCORE_NOW: &str = "Score now";
/// Below it.
pub const SCORE_NOW_EMPTY: &str = "Leave the score empty between two sets.";
/// A question.
pub const SERVES_NEXT: &str = "Who serves next?";
/// A question.
pub const STANDS_LEFT: &str = "Who is on the left, seen from the stand?";
/// The button.
pub const TAKE_IT_OVER: &str = "Continue from here";
/// One field is empty or is no number.
pub const POINTS_OF_BOTH: &str = "Enter the points of both teams as whole numbers.";

/// The label of a number of points.
#[must_use]
pub fn points_of(what: &str, team: &str) -> String {
    format!("{what}: {team}")
}

/// Adds the fields of a set.
#[must_use]
pub fn set_is_over(set: u8) -> String {
    format!("Set {set} is over")
}

/// The panel, and the line that opens it.
pub const CORRECT_SCORE: &str = "Correct the score";
/// The panel, and the line that opens it.
pub const WRONG_INFORMATION: &str = "The officials were wrong";
/// What becomes of it (FIVB Casebook 2024, case 2.3).
pub const WRONG_INFORMATION_MORE: &str =
    "The officials told a team something wrong, and it lost points because of that. Play goes back to \
     that moment. Sanctions, time-outs and substitutions stay. The first referee decides.";
/// A question.
pub const BACK_TO: &str = "Back to which score?";
/// The button.
pub const GO_BACK_TO_IT: &str = "Go back to this score";
/// A question.
pub const WHY: &str = "Why?";
/// The label of a field.
pub const IN_OWN_WORDS: &str = "In your own words";
/// How a score gets wrong.
pub const MISCOUNTED: &[&str] = &[
    "A point was missed.",
    "A point was counted twice.",
    "The scoreboard and the scorer agree on it.",
];
/// What can have been said.
pub const INFORMED: &[&str] = &[
    "The wrong server was named.",
    "The wrong team was told to serve.",
    "The wrong score was shown.",
];
/// The organiser's clock.
pub const TIME_IS_UP: &str = "Time is up: end the set";
/// Records it.
pub const END_SET_BY_TIME: &str = "Yes, time is up";

/// Asked before; nobody leads where the teams are level.
#[must_use]
pub fn time_up_question(score: &str, leader: Option<&str>) -> String {
    match leader {
        Some(name) => format!("Time is up at {score}. {name} win the set."),
        None => {
            format!("Time is up at {score}. The teams are level: one more rally decides the set.")
        }
    }
}

/// The label of a score.
#[must_use]
pub fn back_to(score: &str) -> String {
    format!("Back to {score}")
}

/// Opens the form, and its title.
pub const OTHERS_ON_COURT: &str = "Other players are on court";
/// What it is for (7.3.5.1, 7.3.5.2).
pub const OTHERS_MORE: &str =
    "Before the set, the players on court must be those in the line-up. Either this is corrected without \
     a sanction, or the coach keeps the other player by a substitution.";
/// A question.
pub const WHOSE_PLAYERS: &str = "Which team?";
/// A question.
pub const WHO_IS_MISSING: &str = "Who is in the line-up and not on court?";
/// A question.
pub const WHO_STANDS_THERE: &str = "Who stands there?";
/// A number in the line-up.
#[must_use]
pub fn is_missing(number: Shirt) -> String {
    format!("{number} is not on court")
}

/// A number that is not in the line-up.
#[must_use]
pub fn stands_there(number: Shirt) -> String {
    format!("{number} stands there")
}

/// The line-up holds.
pub const PUT_RIGHT: &str = "Corrected, no sanction";
/// No other player, only other places (7.3.5.1).
pub const PLACES_PUT_RIGHT: &str = "Right players, wrong places: corrected";
/// It counts as a substitution.
pub const KEPT: &str = "The coach keeps the player: a substitution";
