//! What is written down and changes no score: checks, count-downs, signatures.

use std::sync::Arc;

use crate::model::count_down::Timed;
use crate::model::entry::{Check, Entry, Timer, TimerAction};
use crate::model::state::{RunningTimer, Signature, State};

/// The last check of an item counts.
pub(crate) fn check(state: &mut State, check: &Check) {
    let checks = Arc::make_mut(&mut state.checks);
    checks.retain(|c| c.item != check.item);
    checks.push(check.clone());
}

/// One count-down of a kind for a team at a time.
pub(crate) fn timer(state: &mut State, entry: &Entry, timer: &Timer) {
    state
        .timers
        .retain(|t| t.timer.what != timer.what || t.timer.team != timer.team);
    match timer.action {
        TimerAction::Start => state.timers.push(RunningTimer {
            entry: entry.n,
            since: entry.at,
            timer: timer.clone(),
        }),
        TimerAction::Stop if timer.what == Timed::WarmUp => state.warmed_up.push(timer.team),
        TimerAction::Stop => {}
    }
}

/// Play goes on: whatever a count-down of a pause says, the pause is over, and the next one is counted anew.
pub(crate) fn end_pauses(state: &mut State) {
    state.timers.retain(|running| match running.timer.what {
        Timed::TimeOut | Timed::Interval | Timed::Recovery | Timed::Service => false,
        Timed::WarmUp | Timed::LateTeam | Timed::Other(_) => true,
    });
}

pub(crate) fn sign(state: &mut State, entry: u32, role: &str, name: Option<&String>) {
    Arc::make_mut(&mut state.signatures).push(Signature {
        entry,
        role: role.to_owned(),
        name: name.cloned(),
    });
}
