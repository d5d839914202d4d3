//! The words of the screens before a match and between sets: a file for each part of the way.
//!
//! A second language is a second folder like this one.

mod briefing;
mod form;
mod late_team;
pub mod library;
mod lists;
mod measure;
mod plan;
mod set_out;
mod toss;

pub use briefing::*;
pub use form::*;
pub use late_team::*;
pub use lists::*;
pub use measure::*;
pub use plan::*;
pub use set_out::*;
pub use toss::*;

/// Said to whoever listens.
pub const IS_DONE: &str = "done";

/// A line-up with empty places cannot be handed in.
pub const FILL_EVERY_PLACE: &str = "Fill every place first. Then you can confirm the line-up.";
/// The waiting for a team that is late cannot begin.
pub const LATE_NEEDS: &str = "First choose the team and the minutes.";
/// Nobody is named who has put it in order.
pub const CLEARED_NEEDS: &str = "First say which adult has looked at it.";

/// A refusal with its rule.
#[must_use]
pub fn refusal(say: &str, rule: &str) -> String {
    if rule.starts_with(|c: char| c.is_ascii_digit()) {
        format!("{say} (Rule {rule})")
    } else {
        say.to_owned()
    }
}

/// From one team to the other.
#[must_use]
pub fn now_team(name: &str) -> String {
    format!("Now: {name}")
}
