//! How each step of the plan stands: read from the state, compared with the clock.

use leptos::prelude::*;

use super::fields::scheduled_ms;
use crate::game::{Phase, RunningTimer, State};
use crate::rules::{plan, Moment, Step, Team, Timing, WarmUpStyle};
use crate::ui::session::Session;

/// Milliseconds of a minute.
const MINUTE: i64 = 60_000;
/// What the warm-up count-downs are called in the log.
pub(super) const WARM_UP: &str = "warm_up";

/// How a step stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// It is done.
    Done,
    /// It is under way.
    Running,
    /// It was found wrong and not cleared.
    Failed,
    /// It is still to come.
    Open(Timing),
}

/// The plan of the open match.
#[derive(Clone, Copy)]
pub(super) struct Steps {
    /// The steps with their times.
    pub(super) plan: Memo<Vec<Moment>>,
    /// Whole minutes to the scheduled start, where one was given.
    pub(super) minutes_left: Memo<Option<i64>>,
    /// When the match is to start.
    pub(super) start: Memo<Option<i64>>,
    session: Session,
}

impl Steps {
    pub(super) fn of(session: Session) -> Steps {
        let start = Memo::new(move |_| {
            let state = session.state();
            scheduled_ms(state.heading()?.scheduled.as_deref()?)
        });
        Steps {
            plan: Memo::new(move |_| plan(session.state().rules())),
            minutes_left: Memo::new(move |_| {
                // Rounded up, so that a step is due on its minute and not before.
                Some(-(session.now() - start.get()?).div_euclid(MINUTE))
            }),
            start,
            session,
        }
    }

    /// When a step is to begin.
    pub(super) fn time(self, step: Step) -> Option<i64> {
        let moment = self
            .plan
            .with(|p| p.iter().copied().find(|m| m.step == step))?;
        Some(self.start.get()? - i64::from(moment.before) * MINUTE)
    }

    /// How a step stands now.
    pub(super) fn standing(self, step: Step) -> Standing {
        let state = self.session.state();
        if let Some(settled) = settled(&state, self.session, step) {
            return settled;
        }
        let timing = self.minutes_left.get().and_then(|left| {
            let moment = self
                .plan
                .with(|p| p.iter().copied().find(|m| m.step == step))?;
            Some(moment.timing(left))
        });
        Standing::Open(timing.unwrap_or(Timing::Ahead))
    }

    /// The first step that is not done, a failed one before all others.
    pub(super) fn next(self) -> Option<Step> {
        let steps: Vec<Step> = self.plan.with(|p| p.iter().map(|m| m.step).collect());
        let at = |wanted: fn(Standing) -> bool| {
            steps.iter().copied().find(|&s| wanted(self.standing(s)))
        };
        at(|s| s == Standing::Failed).or_else(|| at(|s| s != Standing::Done))
    }
}

/// What the log says of a step, if it says anything.
fn settled(state: &State, session: Session, step: Step) -> Option<Standing> {
    let done = |yes: bool| yes.then_some(Standing::Done);
    match step {
        Step::TeamLists => done(Team::BOTH.iter().all(|&t| state.team(t).list.is_some())),
        Step::Toss => done(state.opener_to_come().is_some() || state.phase() != Phase::Preparation),
        Step::WarmUp => warm_up(state, session),
        Step::LineUps => done(
            Team::BOTH.iter().all(|&t| state.line_up_given(t).is_some())
                || state.phase() != Phase::Preparation,
        ),
        Step::LastCheck => done(state.phase() != Phase::Preparation),
        _ => state
            .checks()
            .iter()
            .find(|c| c.item == step.code())
            .map(|c| {
                if c.ok {
                    Standing::Done
                } else {
                    Standing::Failed
                }
            }),
    }
}

/// Whose warm-ups there are: one for both, or one for each team, the first server's first (7.2.3).
pub(super) fn warm_ups(state: &State) -> Vec<Option<Team>> {
    match state.rules().warm_up.style {
        WarmUpStyle::Shared => vec![None],
        WarmUpStyle::Separate => {
            let first = state.opener_to_come().unwrap_or(Team::A);
            vec![Some(first), Some(first.other())]
        }
    }
}

fn warm_up(state: &State, session: Session) -> Option<Standing> {
    let all = warm_ups(state);
    let over = |team: &Option<Team>| warmed_up(state, *team, session.now());
    if all.iter().all(over) {
        Some(Standing::Done)
    } else if all
        .iter()
        .any(|team| over(team) || running(state, *team).is_some())
    {
        Some(Standing::Running)
    } else {
        None
    }
}

/// The warm-up count-down that was started for a team, or for both together.
pub(super) fn running(state: &State, team: Option<Team>) -> Option<&RunningTimer> {
    state
        .timers()
        .iter()
        .find(|t| t.timer.what == WARM_UP && t.timer.team == team)
}

/// Whether a team (or both together) has had its warm-up: the count-down ran out or was ended.
pub(super) fn warmed_up(state: &State, team: Option<Team>, now: i64) -> bool {
    match running(state, team) {
        Some(timer) => timer
            .since
            .is_some_and(|since| now - since >= i64::from(timer.timer.seconds) * 1000),
        None => state.warmed_up(team),
    }
}
