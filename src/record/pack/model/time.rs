//! When: the time of an entry, and count-downs, which mostly follow from the rules.

use super::number::{pick, small};
use super::pattern::{Pattern, PATTERNS};
use super::{Flag, Model};
use crate::game::entry::{Timer, TimerAction};
use crate::game::{Kind, RunningTimer, State, Timed};
use crate::record::pack::coder::Coder;

/// Milliseconds of a second.
pub(super) const SECOND: i64 = 1000;

/// The count-downs that have a place of their own.
pub(super) const TIMERS: [Timed; 6] = [
    Timed::TimeOut,
    Timed::Interval,
    Timed::WarmUp,
    Timed::Recovery,
    Timed::Service,
    Timed::LateTeam,
];

impl Model {
    /// Whole seconds since the last entry where they are whole; a count-down that was stopped by its
    /// distance from its end.
    pub(super) fn time<C: Coder>(
        &mut self,
        coder: &mut C,
        pattern: Pattern,
        expected: Option<i64>,
        given: Option<Option<i64>>,
    ) -> Option<i64> {
        let at = given.flatten();
        if !coder.bit(&mut self.timed, at.is_some()) {
            return None;
        }
        let at = at.unwrap_or(0);
        self.now = if let Some(expected) = expected {
            let apart = at.wrapping_sub(expected);
            // By hand and in whole seconds, or by the clock of a screen.
            let whole = self.flag(coder, Flag::WholeSeconds, apart % SECOND == 0);
            let unit = if whole { SECOND } else { 1 };
            let step = self.signed(coder, PATTERNS, apart / unit);
            expected.wrapping_add(step.wrapping_mul(unit))
        } else {
            let second = self.now.div_euclid(SECOND);
            let step = self.signed(coder, pattern.place(), at.div_euclid(SECOND) - second);
            let mut found = second.wrapping_add(step).wrapping_mul(SECOND);
            let rest = at.rem_euclid(SECOND);
            if self.flag(coder, Flag::Exact, rest != 0) {
                let rest = u32::try_from(rest).unwrap_or(0);
                found = found.wrapping_add(i64::from(coder.uniform(1000, rest)));
            }
            found
        };
        Some(self.now)
    }

    pub(super) fn timer<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        if let Some(expected) = self.expected_timer(state) {
            let as_expected = given == Some(&expected);
            if self.flag(coder, Flag::TimerAsExpected, as_expected) {
                return Ok(expected);
            }
        }
        let given = match given {
            Some(Kind::Timer(timer)) => Some(timer),
            _ => None,
        };
        let place = given
            .and_then(|t| TIMERS.iter().position(|w| *w == t.what))
            .unwrap_or(TIMERS.len());
        let place = pick(coder, TIMERS.len() + 1, place);
        let what = match TIMERS.get(place) {
            Some(what) => what.clone(),
            None => Timed::of_code(&self.words.code(coder, given.map(|t| t.what.code()))?),
        };
        let of = given.and_then(|t| t.team);
        let team = if self.flag(coder, Flag::TimerOfTeam, of.is_some()) {
            Some(self.team(coder, Pattern::Timer, of))
        } else {
            None
        };
        let stops = given.is_some_and(|t| t.action == TimerAction::Stop);
        let action = if self.flag(coder, Flag::TimerStops, stops) {
            TimerAction::Stop
        } else {
            TimerAction::Start
        };
        let usual = what.seconds(state.rules());
        let is_usual = given.map(|t| t.seconds) == usual;
        let seconds = match usual {
            Some(usual) if self.flag(coder, Flag::UsualSeconds, is_usual) => usual,
            _ => {
                let seconds = given.map_or(0, |t| u64::from(t.seconds));
                small(self.number(coder, Pattern::Timer.place(), seconds))?
            }
        };
        Ok(Kind::Timer(Timer {
            what,
            team,
            seconds,
            action,
        }))
    }

    /// The count-down that is running is stopped; one for a time-out follows upon it.
    pub(super) fn expected_timer(&self, state: &State) -> Option<Kind> {
        if let Some(running) = state.timers().last() {
            return Some(Kind::Timer(running.timer.stopped()));
        }
        let timed = self.last == Pattern::TimeOut.place();
        let start = || Timed::TimeOut.start(self.time_out_of, state.rules());
        timed.then(start).flatten().map(Kind::Timer)
    }
}

/// When a count-down that is stopped was to end.
pub(super) fn ends_at(state: &State, kind: &Kind) -> Option<i64> {
    let Kind::Timer(timer) = kind else {
        return None;
    };
    let same = |t: &&RunningTimer| t.timer.what == timer.what && t.timer.team == timer.team;
    let running = state.timers().iter().find(same)?;
    let lasts = i64::from(timer.seconds).wrapping_mul(SECOND);
    let stops = timer.action == TimerAction::Stop;
    stops.then_some(running.since?.wrapping_add(lasts))
}
