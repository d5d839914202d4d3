//! The words about a team that is not there.

use crate::setup::late_team::*;

/// In English.
pub static WORDS: LateTeamWords = LateTeamWords {
    late_team: "A team is not here",
    late_rule:
        "A team that is not on court on time, without a good reason, is in default (Rule 6.4.2). \
         The official rules do not say how long to wait. Your competition's own regulations \
         count. Ask the organiser, and tell the team that is here.",
    who_is_late: "Which team is not here?",
    wait_minutes: "Minutes your competition waits after the planned start",
    wait_minutes_from_now:
        "Minutes your competition waits (no start is planned, so they count from now)",
    wait_usual: "Often 10 or 15: common practice, no source.",
    wait_form,
    start_waiting: "Start the clock",
    they_are_here: "They are here",
    while_waiting:
        "If they come in time, tap \u{201c}They are here\u{201d} and continue with the plan.",
    waited_enough: "The time is over. Speak to the organiser; the first referee decides.",
    record_default: "Record the default",
    default_question,
    waiting_for,
};

fn wait_form(most: u16) -> String {
    format!("Write whole minutes, {most} at most.")
}

fn default_question(name: &str) -> String {
    format!(
        "{name} lose the match, with no point in any set. Do the regulations and the organiser say so?"
    )
}

fn waiting_for(name: &str) -> String {
    format!("Waiting for {name}")
}
