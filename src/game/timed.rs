//! Count-downs: what is timed, for how long, and which entries begin and end one.

use super::entry::{Kind, Timer, TimerAction};
use super::fold::Timeline;
use super::stage::Phase;
use super::state::State;
use super::stop::RECOVERY_SECONDS;
use rules::{Rules, Team};

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

/// The start of the interval after the set that is over (18.1).
#[must_use]
pub fn interval(state: &State) -> Timer {
    Timer {
        what: Timed::Interval,
        team: None,
        seconds: u32::from(state.rules().interval_after(state.sets().count())),
        action: TimerAction::Start,
    }
}

/// The count-downs that start and end with an entry, asked after it was carried out. What was taken back and
/// comes back brings the interval with it, where it ends the set again; a time-out of long ago does not run
/// once more.
#[must_use]
pub fn timers_with(timeline: &Timeline, kind: &Kind) -> Vec<Timer> {
    let state = timeline.state();
    let of = |entry: u32| timeline.entry(entry).map(|entry| &entry.kind);
    match kind {
        Kind::Strike { entry, .. } => match of(*entry) {
            Some(Kind::Strike { entry, .. }) => {
                let back = of(*entry).map(|kind| timers_started_by(state, kind));
                let timers = back.into_iter().flatten();
                timers.filter(|t| t.what == Timed::Interval).collect()
            }
            Some(struck) => timers_orphaned_by(state, struck),
            None => Vec::new(),
        },
        // The rally had ended a set, and its interval runs for nothing.
        Kind::Replay { rally: Some(_), .. } => timers_orphaned_by(state, kind),
        _ => timers_started_by(state, kind),
    }
}

/// The count-downs that an entry brings with it, asked after it was carried out: a time-out's, a hurt
/// player's, and the interval's where the entry has ended a set (15.4.1, 17.1.2, 18.1).
#[must_use]
fn timers_started_by(state: &State, kind: &Kind) -> Vec<Timer> {
    let own = match kind {
        Kind::TimeOut { team } => Timed::TimeOut.start(Some(*team), state.rules()),
        Kind::Recovery { team, .. } => Timed::Recovery.start(Some(*team), state.rules()),
        _ => None,
    };
    let resting = state
        .timers()
        .iter()
        .any(|t| t.timer.what == Timed::Interval);
    let over = state.phase() == Phase::BetweenSets && state.ready().is_none();
    let interval = (over && !resting && can_end_a_set(kind)).then(|| interval(state));
    own.into_iter().chain(interval).collect()
}

/// The count-downs that run for nothing once an entry is taken back, with the way to stop them.
#[must_use]
fn timers_orphaned_by(state: &State, struck: &Kind) -> Vec<Timer> {
    let of = |timer: &&Timer| match (&timer.what, struck) {
        (Timed::TimeOut, Kind::TimeOut { team })
        | (Timed::Recovery, Kind::Recovery { team, .. }) => timer.team == Some(*team),
        (Timed::Interval, _) => state.phase() == Phase::Playing,
        _ => false,
    };
    let timers = state.timers().iter().map(|running| &running.timer);
    timers.filter(of).map(Timer::stopped).collect()
}

/// Whether an entry can give a point.
const fn can_end_a_set(kind: &Kind) -> bool {
    matches!(
        kind,
        Kind::Rally { .. }
            | Kind::Delay { .. }
            | Kind::Misconduct { .. }
            | Kind::LateFault(_)
            | Kind::Incomplete { .. }
            | Kind::ScoreCorrection { .. }
            | Kind::LateReplacement { .. }
            | Kind::TimeUp
    )
}
