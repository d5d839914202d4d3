//! The words about a match that was already being played, and about scores that are put right though no
//! team was at fault.

use crate::corrected::*;
use rules::Shirt;

/// In English.
pub static WORDS: CorrectedWords = CorrectedWords {
    running_already: "The match is already running",
    running_more: "Enter what the scoreboard shows. The sheet will say when this record began.",
    score_now: "Score now",
    score_now_empty: "Leave the score empty between two sets.",
    serves_next: "Who serves next?",
    stands_left: "Who is on the left, seen from the stand?",
    take_it_over: "Continue from here",
    points_of_both: "Enter the points of both teams as whole numbers.",
    points_of,
    set_is_over,
    correct_score: "Correct the score",
    wrong_information: "The officials were wrong",
    wrong_information_more:
        "The officials told a team something wrong, and it lost points because of that. Play goes \
         back to that moment. Sanctions, time-outs and substitutions stay. The first referee \
         decides.",
    back_to_label: "Back to which score?",
    go_back_to_it: "Go back to this score",
    why: "Why?",
    in_own_words: "In your own words",
    miscounted: &[
        "A point was missed.",
        "A point was counted twice.",
        "The scoreboard and the scorer agree on it.",
    ],
    informed: &[
        "The wrong server was named.",
        "The wrong team was told to serve.",
        "The wrong score was shown.",
    ],
    time_is_up: "Time is up: end the set",
    end_set_by_time: "Yes, time is up",
    time_up_question,
    back_to,
    others_on_court: "Other players are on court",
    others_more:
        "Before the set, the players on court must be those in the line-up. Either this is \
         corrected without a sanction, or the coach keeps the other player by a substitution.",
    whose_players: "Which team?",
    who_is_missing: "Who is in the line-up and not on court?",
    who_stands_there: "Who stands there?",
    is_missing,
    stands_there,
    put_right: "Corrected, no sanction",
    places_put_right: "Right players, wrong places: corrected",
    kept: "The coach keeps the player: a substitution",
};

fn points_of(what: &str, team: &str) -> String {
    format!("{what}: {team}")
}

fn set_is_over(set: u8) -> String {
    format!("Set {set} is over")
}

fn time_up_question(score: &str, leader: Option<&str>) -> String {
    match leader {
        Some(name) => format!("Time is up at {score}. {name} win the set."),
        None => {
            format!("Time is up at {score}. The teams are level: one more rally decides the set.")
        }
    }
}

fn back_to(score: &str) -> String {
    format!("Back to {score}")
}

fn is_missing(number: Shirt) -> String {
    format!("{number} is not on court")
}

fn stands_there(number: Shirt) -> String {
    format!("{number} stands there")
}
