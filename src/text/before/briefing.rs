//! The briefings of the duty team, to be read aloud as they stand: about a minute each.
//!
//! The duties follow the FIVB Official Volleyball Rules 2025-2028, chapters 22 to 24, 27 and 29, and
//! the Refereeing Guidelines and Instructions 2024 (rules 22 to 28 there); the rule stands beside
//! each sentence. What has none is common practice, no source.

use rules::Rules;

/// Name of the choice.
pub const WHOM: &str = "Who is briefed";
/// How to use it.
pub const READ_ALOUD: &str = "Read it aloud, about a minute each, and tick as you go.";
/// After the last tick.
pub const ALL_BRIEFED: &str = "All are briefed";
/// The phone reads instead.
pub const LET_IT_READ: &str = "Let the phone read it";
/// It reads.
pub const STOP_READING: &str = "Stop reading";

/// After the last sentence.
#[must_use]
pub fn brief_next(name: &str) -> String {
    format!("Next: {name}")
}

/// For whom.
pub const BRIEFED: [&str; 3] = ["Second referee", "Scorer", "Line judges"];

/// What is said to each of them, in the order of [`BRIEFED`], by the rules of the match.
#[must_use]
pub fn briefings(rules: &Rules) -> [Vec<String>; 3] {
    let with_liberos = rules.liberos > 0;
    // 7.3.5, 24.3.1, 19.3.2.1
    let compare = if with_liberos {
        "Before each set you compare both teams with their line-up sheets. Then a libero may go in."
    } else {
        "Before each set you compare both teams with their line-up sheets."
    };
    // 27.2.1.1
    let write_down = if with_liberos {
        "Before the match you write down teams, players and liberos, and see that captains and \
         coaches sign."
    } else {
        "Before the match you write down teams and players, and see that captains and coaches sign."
    };
    // 27.2.2.4, 27.2.2.5; 18.2.2
    let last = rules.sets_at_most();
    let change_at = rules
        .decider
        .change_courts_at
        .filter(|_| rules.is_decider(last));
    let say_when = match change_at {
        Some(at) => format!(
            "Say when a request is not allowed, when a set ends, and when the first team has {at} points \
             in set {last}: then the teams change courts."
        ),
        None => "Say when a request is not allowed, and when a set ends.".to_owned(),
    };
    let lines: [&[&str]; 3] = [
        &[
            // 22.2.1; eye contact: Guidelines, rule 23.
            "You stand at the net on the table's side. After every rally and before every service \
             we look at each other.",
            compare,
            // 24.3.2.1 to 24.3.2.5
            "During play you watch the receiving team's positions, the centre line, the blocker's \
             side of the net and the antenna next to you.",
            // 22.2.3.2
            "When you whistle, show the fault first, then the player if needed, then follow my arm.",
            // 24.2.2
            "What is mine you may show, but do not insist.",
            // 24.2.6, 24.2.7
            "You grant and time the time-outs, let substitutes in, and tell me and the coach when \
             few are left.",
            // 24.2.4, 24.2.5, 17.1
            "Keep an eye on the benches. When somebody is hurt, stop play at once and get the adult in \
             charge.",
        ],
        &[
            write_down,
            // 27.2.1.2
            "Before each set you copy the line-ups. If one is missing, tell the second referee at \
             once.",
            // 27.2.2.2, 7.7.1.1
            "Look who serves. If it is the wrong player, stay silent until the ball is hit, then \
             call at once.",
            // 27.2.2.1
            "Write each point when I show the serving team, and check the scoreboard.",
            // 27.2.2.3; both hands: Guidelines, rule 25.
            "Write time-outs and substitutions, tell the second referee how many there were, and \
             raise both hands when you are ready. I wait for that.",
            &say_when,
            // 27.2.2.6
            "Sanctions you write as you are told.",
            // common practice, no source
            "If anything does not fit, stop us before the next service.",
        ],
        &[
            // 29.1
            "With two of you, each stands one or two metres off the corner at a referee's right \
             hand, and has one end line and one side line.",
            // 29.2.1.1, diagram 12 (1, 2)
            "Ball in: flag down. Ball out: flag straight up.",
            // 29.2.1.2, diagram 12 (3)
            "Touched before it went out: flag upright, the free hand on top.",
            // 29.2.1.3 to 29.2.1.6, diagram 12 (4)
            "Wave the flag and point when the ball hits the antenna or crosses outside it, when \
             the server steps on the line, or when another player stands outside the court at the \
             service.",
            // diagram 12 (5)
            "If you could not see it, cross your arms. That is a good answer.",
            // Casebook 2024, 3.9
            "No signal while the ball can still be played.",
            // 29.2.2, 30.2
            "Show it at once and hold it until you see that I have seen it. I may decide otherwise; \
             then simply go on.",
        ],
    ];
    lines.map(|lines| lines.iter().map(|line| (*line).to_owned()).collect())
}
