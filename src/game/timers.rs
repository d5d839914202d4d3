//! Which entries begin and end a count-down.

use crate::fold::Timeline;
use crate::model::count_down::Timed;
use crate::model::entry::{Kind, Timer, TimerAction};
use crate::model::stage::Phase;
use crate::model::state::State;

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
