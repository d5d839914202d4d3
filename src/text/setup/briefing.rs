//! The briefings of the duty team, to be read aloud as they stand: about a minute each.
//!
//! The duties follow the FIVB Official Volleyball Rules 2025-2028, chapters 22 to 24, 27 and 29, and
//! the Refereeing Guidelines and Instructions 2024 (rules 22 to 28 there); the rule stands beside
//! each sentence. What has none is common practice, no source.

use rules::Rules;

/// A part of a match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Phase {
    /// Before it, and before each set.
    Before,
    /// While it is played.
    During,
    /// When it is over.
    After,
}

impl Phase {
    /// All of them.
    pub const ALL: [Phase; 3] = [Phase::Before, Phase::During, Phase::After];
}

words! { BriefingWords in setup::briefing;
    /// Name of the choice.
    whom -> &'static str;
    /// How to use it.
    read_aloud -> &'static str;
    /// After the last tick.
    all_briefed -> &'static str;
    /// The phone reads instead.
    let_it_read -> &'static str;
    /// It reads.
    stop_reading -> &'static str;
    /// After the last sentence.
    brief_next(name: &str) -> String;
    /// For whom.
    briefed -> [&'static str; 3];
    /// What is said to each of them, in the order of [`BRIEFED`], by the rules of the match.
    briefings(rules: &Rules) -> [Vec<String>; 3];
    /// What one of them is told about a part of the match.
    briefing_of(of: usize, phase: Phase, rules: &Rules) -> Vec<String>;
}
