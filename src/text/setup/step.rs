//! The words that the steps before a match share.

words! { StepWords in setup::step;
    /// Said to whoever listens.
    is_done -> &'static str;
    /// A line-up with empty places cannot be handed in.
    fill_every_place -> &'static str;
    /// The waiting for a team that is late cannot begin.
    late_needs -> &'static str;
    /// Nobody is named who has put it in order.
    cleared_needs -> &'static str;
    /// A refusal with its rule.
    refusal(say: &str, rule: &str) -> String;
    /// From one team to the other.
    now_team(name: &str) -> String;
}
