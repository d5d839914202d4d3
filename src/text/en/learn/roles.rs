//! What each of the duty team does before, during and after a match, and what the game captain may ask. The
//! lines of the briefings are those that are read aloud before a match (`setup::briefing`).

use crate::learn::roles::*;
use crate::setup::{briefing_of, look_at, Phase};
use rules::{Rules, Step};

/// In English.
pub static WORDS: RolesWords = RolesWords {
    role_name,
    role_more,
    job,
    phase,
    where_it_is: "Your place",
    read_aloud:
        "The first referee reads most of this aloud before the match. “I” and “me” are the first referee, “we” are both referees.",
    first_signals: "Signals to know first",
    for_the_table: "Large print for the table",
    for_the_table_more: "Scorer and assistant on one page, to lay beside the sheet.",
    print: "Print this page",
    by_which_rules:
        "A match that is open here sets the numbers. Without one they are the international ones.",
};

fn job(role: Role, phase: Phase, rules: &Rules) -> Vec<String> {
    let mut lines = match role {
        Role::SecondReferee => briefing_of(0, phase, rules),
        Role::Scorer => briefing_of(1, phase, rules),
        Role::LineJudge => briefing_of(2, phase, rules),
        Role::FirstReferee if phase == Phase::Before => look_at(Step::Kit, rules),
        Role::FirstReferee | Role::AssistantScorer | Role::GameCaptain => Vec::new(),
    };
    lines.extend(own_lines(role, phase).iter().map(|line| (*line).to_owned()));
    lines
}

/// What no briefing says.
fn own_lines(role: Role, phase: Phase) -> &'static [&'static str] {
    match (role, phase) {
        // 23.3.1, 7.1
        (Role::FirstReferee, Phase::Before) => &[
            "You check the floor, the net and the ball. You tell the duty team what to do.",
            "You hold the toss with both captains.",
        ],
        // 22.2.1, 22.2.3, 23.2, 23.3.2; the look at the second referee: Guidelines 2024, rule 23
        (Role::FirstReferee, Phase::During) => &[
            "Before each service look at your second referee, the server and both teams. Then whistle.",
            "Whistle only when you are sure that there was a fault, and which.",
            "Then three beats: whistle, show the team to serve, show the fault.",
            "You may change what the others decided. Only you give cards.",
            "Explain to the game captain if asked, in one short sentence.",
            "If somebody may be hurt, stop play at once.",
        ],
        // end of the match: Guidelines 2024; 23.3.3, 27.2.3
        (Role::FirstReferee, Phase::After) => &[
            "Whistle, shake hands, go to the table.",
            "Check the sheet with the scorer. Sign last.",
            "Thank your team. Talk about one thing that went well and one to try.",
        ],
        // 24.2, common practice
        (Role::SecondReferee, Phase::After) => &[
            "Go to the table with the first referee. Check the sheet and sign it.",
        ],
        (Role::SecondReferee, Phase::Before | Phase::During) => &[],
        // 27.2.3; the order of signatures differs between sources
        (Role::Scorer, Phase::After) => &[
            "Write the result. Sign, and ask the captains and the referees to sign.",
            "If a captain wants to protest, ask the first referee before you write it.",
        ],
        (Role::Scorer, Phase::Before | Phase::During) => &[],
        // 28.2.1
        (Role::AssistantScorer, Phase::Before) => &[
            "Make the list for the liberos ready, and a spare sheet.",
        ],
        // 28.2.2; at once and not after the hit: Guidelines 2024, rule 19
        (Role::AssistantScorer, Phase::During) => &[
            "Write down who the libero goes in for, and who comes back.",
            "If that is not allowed, tell the second referee at once. Do not wait for the hit.",
            "Set the scoreboard, and compare it with the sheet.",
            "Take over if the scorer cannot go on.",
        ],
        // 28.2.3
        (Role::AssistantScorer, Phase::After) => &["Sign your list and help to check the sheet."],
        (Role::LineJudge, Phase::Before | Phase::During) => &[],
        // common practice, no source
        (Role::LineJudge, Phase::After) => &["Give the flags back and say thank you."],
        // 5.1.1, 5.1.2
        (Role::GameCaptain, Phase::Before) => &[
            "The team captain comes to the toss and signs the team list.",
            "If the team captain is not on court, the team names a game captain.",
        ],
        // 5.1.2.1 to 5.1.2.3; positions: Casebook 2024, 1.4
        (Role::GameCaptain, Phase::During) => &[
            "Only the game captain speaks to the referees, and only while the ball is out of play.",
            "May ask why something was decided. May ask to check the floor, the net or the ball.",
            "May ask if the own team stands right. Of the other team you only say yes or no.",
            "May ask for a time-out or a substitution only if no coach is there.",
            "May say at once that the team protests. Later is too late.",
        ],
        // 5.1.3
        (Role::GameCaptain, Phase::After) => &[
            "The team captain thanks the referees and signs the sheet.",
            "A protest that was announced may be written on the sheet now.",
        ],
    }
}

fn phase(phase: Phase) -> &'static str {
    match phase {
        Phase::Before => "Before",
        Phase::During => "During",
        Phase::After => "After",
    }
}

fn role_name(role: Role) -> &'static str {
    match role {
        Role::FirstReferee => "First referee",
        Role::SecondReferee => "Second referee",
        Role::Scorer => "Scorer",
        Role::AssistantScorer => "Assistant scorer",
        Role::LineJudge => "Line judge",
        Role::GameCaptain => "Game captain",
    }
}

fn role_more(role: Role) -> &'static str {
    match role {
        Role::FirstReferee => "Leads the match and has the last word.",
        Role::SecondReferee => "Helps, times, lets substitutes in.",
        Role::Scorer => "Keeps the sheet right, point by point.",
        Role::AssistantScorer => "Follows the liberos and checks the score.",
        Role::LineJudge => "Shows in, out and touched with the flag.",
        Role::GameCaptain => "What a captain on court may ask.",
    }
}
