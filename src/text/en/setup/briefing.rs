//! The briefings of the duty team, to be read aloud as they stand: about a minute each.
//!
//! The duties follow the FIVB Official Volleyball Rules 2025-2028, chapters 22 to 24, 27 and 29, and
//! the Refereeing Guidelines and Instructions 2024 (rules 22 to 28 there); the rule stands beside
//! each sentence. What has none is common practice, no source.

use crate::setup::briefing::*;
use rules::Rules;

/// In English.
pub static WORDS: BriefingWords = BriefingWords {
    whom: "Who is this briefing for?",
    read_aloud: "Read them aloud, about a minute each. Tick as you go.",
    all_briefed: "Everybody is briefed",
    let_it_read: "Let the phone read it",
    stop_reading: "Stop reading",
    brief_next,
    briefed: ["Second referee", "Scorer", "Line judges"],
    briefings,
    briefing_of,
};

fn brief_next(name: &str) -> String {
    format!("Next: {name}")
}

fn briefings(rules: &Rules) -> [Vec<String>; 3] {
    [0, 1, 2].map(|of| {
        let all = lines(of, rules).into_iter();
        all.map(|(_, line)| line).collect()
    })
}

fn briefing_of(of: usize, phase: Phase, rules: &Rules) -> Vec<String> {
    let all = lines(of, rules).into_iter();
    all.filter(|(when, _)| *when == phase)
        .map(|(_, line)| line)
        .collect()
}

/// The sentences for one of them, each with the part of the match that it is about.
fn lines(of: usize, rules: &Rules) -> Vec<(Phase, String)> {
    use Phase::{Before, During};
    let with_liberos = rules.liberos > 0;
    // 7.3.5, 24.3.1, 19.3.2.1
    let compare = if with_liberos {
        "Before each set, check both teams against their line-up sheets. Then a libero may go in."
    } else {
        "Before each set, check both teams against their line-up sheets."
    };
    // 27.2.1.1
    let write_down = if with_liberos {
        "Before the match, write down teams, players and liberos. Make sure that captains and coaches \
         sign."
    } else {
        "Before the match, write down teams and players. Make sure that captains and coaches sign."
    };
    // 27.2.2.4, 27.2.2.5; 18.2.2
    let last = rules.sets_at_most();
    let change_at = rules
        .decider
        .change_courts_at
        .filter(|_| rules.is_decider(last));
    let say_when = match change_at {
        Some(at) => format!(
            "Tell us when a request is not allowed and when a set ends. Tell us when the first team has \
             {at} points in set {last}: then the teams change courts."
        ),
        None => "Tell us when a request is not allowed and when a set ends.".to_owned(),
    };
    let lines: [&[(Phase, &str)]; 3] = [
        &[
            // 22.2.1; eye contact: Guidelines, rule 23.
            (During, "Stand at the net on the table's side. We look at each other after every rally and before \
             every service."),
            (Before, compare),
            // 24.3.2.1 to 24.3.2.5
            (During, "During play, watch the receiving team's positions and the centre line. Watch the blocker's \
             side of the net and the antenna next to you."),
            // 22.2.3.2
            (During, "When you whistle, show the fault first, then the player if needed. Then follow my arm to \
             show who serves."),
            // 24.2.2
            (During, "If you see a fault that is mine to call, you may show it. Do not insist."),
            // 24.2.6, 24.2.7
            (During, "Allow and time the time-outs, and let substitutes in. Tell me and the coach when few are \
             left."),
            // 24.2.4, 24.2.5, 17.1
            (During, "Watch the benches. If somebody is hurt, stop play at once and get the adult in charge."),
        ],
        &[
            (Before, write_down),
            // 27.2.1.2
            (Before, "Before each set, copy the line-ups. If one is missing, tell the second referee at once."),
            // 27.2.2.2, 7.7.1.1
            (During, "Check who serves. If it is the wrong player, stay silent until the ball is hit. Then tell us \
             at once."),
            // 27.2.2.1
            (During, "Write down each point when I show the team to serve. Check the scoreboard."),
            // 27.2.2.3; both hands: Guidelines, rule 25.
            (During, "Write down time-outs and substitutions, and tell the second referee how many there were. \
             Raise both hands when you are ready. I wait for that."),
            (During, &say_when),
            // 27.2.2.6
            (During, "Write down sanctions as we tell you."),
            // common practice, no source
            (During, "If something looks wrong, stop us before the next service."),
        ],
        &[
            // 29.1
            (Before, "If there are two of you, each stands one or two metres from the corner at a referee's right \
             hand. Each watches one end line and one side line."),
            // 29.2.1.1, diagram 12 (1, 2)
            (During, "Ball in: flag down. Ball out: flag straight up."),
            // 29.2.1.2, diagram 12 (3)
            (During, "Ball touched before it went out: flag up, free hand on top of it."),
            // 29.2.1.3 to 29.2.1.6, diagram 12 (4)
            (During, "Wave the flag and point if the ball hits the antenna or crosses outside it. Do the same if \
             the server steps on the line, or another player stands outside the court at the service."),
            // diagram 12 (5)
            (During, "If you could not see it, cross your arms. That is a good answer."),
            // Casebook 2024, 3.9
            (During, "Give no signal while the ball can still be played."),
            // 29.2.2, 30.2
            (During, "Show your signal at once and hold it until I have seen it. I may decide differently. Then \
             just carry on."),
        ],
    ];
    let all = lines[of].iter();
    all.map(|(phase, line)| (*phase, (*line).to_owned()))
        .collect()
}
