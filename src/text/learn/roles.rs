//! What each of the duty team does before, during and after a match, and what the game captain may ask. The
//! lines of the briefings are those that are read aloud before a match (`setup::briefing`).

use crate::setup::Phase;
use learn::Mark;
use rules::{FlagSignal, Rules, Signal};

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

    /// Where somebody with it is, on the drawing of the court; a player may be anywhere on it.
    #[must_use]
    pub const fn mark(self) -> Option<Mark> {
        match self {
            // 23.1, 24.1, 27.1, 28.1, 29.1
            Role::FirstReferee => Some(Mark::Stand),
            Role::SecondReferee => Some(Mark::SecondReferee),
            Role::Scorer | Role::AssistantScorer => Some(Mark::Table),
            Role::LineJudge => Some(Mark::LineJudge),
            Role::GameCaptain => None,
        }
    }

    /// The signals to know first; all are on the page of signals.
    #[must_use]
    pub const fn signals(self) -> &'static [Signal] {
        match self {
            // 22.2.3.1: the service, then the side that serves, and what is called most often.
            Role::FirstReferee => &[
                Signal::AuthoriseService,
                Signal::TeamToServe,
                Signal::BallIn,
                Signal::BallOut,
                Signal::BallTouched,
                Signal::NetTouch,
            ],
            // 24.2.6 and 24.3.2: interruptions, and what is called from beside the net.
            Role::SecondReferee => &[
                Signal::TimeOut,
                Signal::Substitution,
                Signal::Position,
                Signal::NetTouch,
                Signal::LineOrUnder,
            ],
            // 5.1.2.3: what a captain may ask for where no coach is there.
            Role::GameCaptain => &[Signal::TimeOut, Signal::Substitution],
            // 27.2.2: what the table writes down when it is shown.
            Role::Scorer => &[Signal::TeamToServe, Signal::TimeOut, Signal::Substitution],
            Role::AssistantScorer | Role::LineJudge => &[],
        }
    }

    /// Whether its lines are read aloud to it before a match, and so speak of the first referee as "I".
    #[must_use]
    pub const fn is_briefed(self) -> bool {
        match self {
            Role::SecondReferee | Role::Scorer | Role::LineJudge => true,
            Role::FirstReferee | Role::AssistantScorer | Role::GameCaptain => false,
        }
    }

    /// The signals with a flag (29.2).
    #[must_use]
    pub const fn flags(self) -> &'static [FlagSignal] {
        match self {
            Role::LineJudge => &FlagSignal::ALL,
            Role::FirstReferee
            | Role::SecondReferee
            | Role::Scorer
            | Role::AssistantScorer
            | Role::GameCaptain => &[],
        }
    }

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
    /// Heads the drawing of where somebody stands.
    where_it_is -> &'static str;
    /// Who speaks in the lines of a job that is briefed before a match.
    read_aloud -> &'static str;
    /// Heads the signals to know first.
    first_signals -> &'static str;
    /// To the page in large print.
    for_the_table -> &'static str;
    /// What it is.
    for_the_table_more -> &'static str;
    /// Prints it.
    print -> &'static str;
    /// To whoever's rules these are.
    by_which_rules -> &'static str;
}
