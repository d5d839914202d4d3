//! The words that the steps before a match share.

use crate::setup::step::*;

/// In English.
pub static WORDS: StepWords = StepWords {
    is_done: "done",
    fill_every_place: "Fill every place first. Then you can confirm the line-up.",
    late_needs: "First choose the team and the minutes.",
    cleared_needs: "First say which adult has looked at it.",
    refusal,
    now_team,
};

fn refusal(say: &str, rule: &str) -> String {
    if rule.starts_with(|c: char| c.is_ascii_digit()) {
        format!("{say} (Rule {rule})")
    } else {
        say.to_owned()
    }
}

fn now_team(name: &str) -> String {
    format!("Now: {name}")
}
