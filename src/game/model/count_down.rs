//! Count-downs: what is timed, and for how long.

use rules::{Rules, Team};

/// Seconds for a hurt player to recover (17.1.2).
pub const RECOVERY_SECONDS: u16 = 180;

/// What a count-down is for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Timed {
    /// A time-out (15.4.1).
    TimeOut,
    /// The interval between two sets (18.1).
    Interval,
    /// The warm-up of one team or of both (7.2).
    WarmUp,
    /// The recovery of a player who was hurt and cannot be replaced (17.1.2).
    Recovery,
    /// The time to serve after the whistle (12.4.4).
    Service,
    /// A team that is not there yet.
    LateTeam,
    /// Anything else somebody timed.
    Other(String),
}

impl Timed {
    /// What it is called in the log.
    #[must_use]
    pub fn code(&self) -> &str {
        match self {
            Timed::TimeOut => "time_out",
            Timed::Interval => "interval",
            Timed::WarmUp => "warm_up",
            Timed::Recovery => "recovery",
            Timed::Service => "service",
            Timed::LateTeam => "late_team",
            Timed::Other(what) => what,
        }
    }

    /// What the log means by a name.
    #[must_use]
    pub fn of_code(code: &str) -> Timed {
        [
            Timed::TimeOut,
            Timed::Interval,
            Timed::WarmUp,
            Timed::Recovery,
            Timed::Service,
            Timed::LateTeam,
        ]
        .into_iter()
        .find(|timed| timed.code() == code)
        .unwrap_or_else(|| Timed::Other(code.to_owned()))
    }

    /// How many seconds it lasts by the rules of a match; none where nobody has settled it.
    #[must_use]
    pub fn seconds(&self, rules: &Rules) -> Option<u32> {
        Some(match self {
            Timed::TimeOut => u32::from(rules.time_outs.seconds),
            Timed::Interval => u32::from(rules.interval_seconds),
            Timed::WarmUp => u32::from(rules.warm_up.minutes) * 60,
            Timed::Recovery => u32::from(RECOVERY_SECONDS),
            Timed::Service => u32::from(rules.service_seconds),
            Timed::LateTeam | Timed::Other(_) => return None,
        })
    }

    /// The start of one that the rules give a length, for a team or for both.
    #[must_use]
    pub fn start(self, team: Option<Team>, rules: &Rules) -> Option<Timer> {
        Some(Timer {
            seconds: self.seconds(rules)?,
            what: self,
            team,
            action: TimerAction::Start,
        })
    }
}

/// A count-down.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Timer {
    /// What is timed.
    pub what: Timed,
    /// For whom.
    pub team: Option<Team>,
    /// How long.
    pub seconds: u32,
    /// Started or stopped.
    pub action: TimerAction,
}

impl Timer {
    /// The end of this one.
    #[must_use]
    pub fn stopped(&self) -> Timer {
        Timer {
            action: TimerAction::Stop,
            ..self.clone()
        }
    }
}

/// What happened to a count-down.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TimerAction {
    /// It starts.
    Start,
    /// It stops.
    Stop,
}

rules::codes!(TimerAction {
    Start = "start",
    Stop = "stop",
});
