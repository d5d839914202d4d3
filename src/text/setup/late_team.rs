//! The words about a team that is not there.

words! { LateTeamWords in setup::late_team;
    /// Heading.
    late_team -> &'static str;
    /// The rule, and whose the minutes are.
    late_rule -> &'static str;
    /// Name of the choice.
    who_is_late -> &'static str;
    /// Label of the minutes.
    wait_minutes -> &'static str;
    /// The same where no start was planned.
    wait_minutes_from_now -> &'static str;
    /// Below it.
    wait_usual -> &'static str;
    /// Nothing that can be read, or too long.
    wait_form(most: u16) -> String;
    /// Starts the clock.
    start_waiting -> &'static str;
    /// Ends it.
    they_are_here -> &'static str;
    /// While it runs.
    while_waiting -> &'static str;
    /// When it has run out.
    waited_enough -> &'static str;
    /// Records it.
    record_default -> &'static str;
    /// Asked before.
    default_question(name: &str) -> String;
    /// For whom the clock runs.
    waiting_for(name: &str) -> String;
}
