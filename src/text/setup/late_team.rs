//! The words about a team that is not there.

/// Heading.
pub const LATE_TEAM: &str = "A team is not here";
/// The rule, and whose the minutes are.
pub const LATE_RULE: &str = "A team that is not on court on time, without a good reason, is in default \
    (Rule 6.4.2). The official rules do not say how long to wait. Your competition's own regulations \
    count. Ask the organiser, and tell the team that is here.";
/// Name of the choice.
pub const WHO_IS_LATE: &str = "Which team is not here?";
/// Label of the minutes.
pub const WAIT_MINUTES: &str = "Minutes your competition waits after the planned start";
/// The same where no start was planned.
pub const WAIT_MINUTES_FROM_NOW: &str =
    "Minutes your competition waits (no start is planned, so they count from now)";
/// Below it.
pub const WAIT_USUAL: &str = "Often 10 or 15: common practice, no source.";
/// Nothing that can be read, or too long.
#[must_use]
pub fn wait_form(most: u16) -> String {
    format!("Write whole minutes, {most} at most.")
}
/// Starts the clock.
pub const START_WAITING: &str = "Start the clock";
/// Ends it.
pub const THEY_ARE_HERE: &str = "They are here";
/// While it runs.
pub const WHILE_WAITING: &str =
    "If they come in time, tap \u{201c}They are here\u{201d} and continue with the plan.";
/// When it has run out.
pub const WAITED_ENOUGH: &str =
    "The time is over. Speak to the organiser; the first referee decides.";
/// Records it.
pub const RECORD_DEFAULT: &str = "Record the default";
/// Asked before.
#[must_use]
pub fn default_question(name: &str) -> String {
    format!(
        "{name} lose the match, with no point in any set. Do the regulations and the organiser say so?"
    )
}

/// For whom the clock runs.
#[must_use]
pub fn waiting_for(name: &str) -> String {
    format!("Waiting for {name}")
}
