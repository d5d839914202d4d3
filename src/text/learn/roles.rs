//! What each of the duty team does before, during and after a match, and what the game captain may ask. The
//! lines of the briefings are those that are read aloud before a match (`setup::briefing`).

use crate::setup::Phase;
use rules::Rules;

/// Somebody with a job, or the game captain.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Role {
    /// On the stand.
    FirstReferee,
    /// At the other end of the net.
    SecondReferee,
    /// At the table, with the sheet.
    Scorer,
    /// Beside the scorer.
    AssistantScorer,
    /// At a corner.
    LineJudge,
    /// The player who speaks for a team.
    GameCaptain,
}

impl Role {
    /// All of them.
    pub const ALL: [Role; 6] = [
        Role::FirstReferee,
        Role::SecondReferee,
        Role::Scorer,
        Role::AssistantScorer,
        Role::LineJudge,
        Role::GameCaptain,
    ];

    /// Those who sit at the table.
    pub const AT_THE_TABLE: [Role; 2] = [Role::Scorer, Role::AssistantScorer];

    /// Its part of an address.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Role::FirstReferee => "first_referee",
            Role::SecondReferee => "second_referee",
            Role::Scorer => "scorer",
            Role::AssistantScorer => "assistant_scorer",
            Role::LineJudge => "line_judge",
            Role::GameCaptain => "game_captain",
        }
    }

    /// The job of that part of an address.
    #[must_use]
    pub fn from_code(code: &str) -> Option<Role> {
        Role::ALL.into_iter().find(|role| role.code() == code)
    }
}

words! { RolesWords in learn::roles;
    /// What somebody is called.
    role_name(role: Role) -> &'static str;
    /// What somebody is, in a line.
    role_more(role: Role) -> &'static str;
    /// What somebody does in a part of a match.
    job(role: Role, phase: Phase, rules: &Rules) -> Vec<String>;
    /// A part of a match.
    phase(phase: Phase) -> &'static str;
    /// To the page in large print.
    for_the_table -> &'static str;
    /// What it is.
    for_the_table_more -> &'static str;
    /// Prints it.
    print -> &'static str;
    /// To whoever's rules these are.
    by_which_rules -> &'static str;
}
