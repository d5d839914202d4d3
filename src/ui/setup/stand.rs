//! The plan of the open match against the clock of the phone.

use super::fields::scheduled_ms;
use crate::memo::Memo;
use crate::session::Session;
use game::entry::Detail;
use game::{standing, Standing};
use rules::{plan, Moment, Step};

/// Milliseconds of a minute.
const MINUTE: i64 = 60_000;

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
            scheduled_ms(state.heading()?.details[Detail::Scheduled].as_deref()?)
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

    fn moment(self, step: Step) -> Option<Moment> {
        self.plan
            .with(|p| p.iter().copied().find(|m| m.step == step))
    }

    /// When a step is to begin.
    pub(super) fn time(self, step: Step) -> Option<i64> {
        Some(self.start.get()? - i64::from(self.moment(step)?.before) * MINUTE)
    }

    /// How a step stands now.
    pub(super) fn standing(self, step: Step) -> Option<Standing> {
        let session = self.session;
        let moment = self.moment(step)?;
        let left = self.minutes_left.get();
        Some(standing(&session.state(), moment, left, session.now()))
    }

    /// The steps that stand so now.
    pub(super) fn that_are(self, wanted: Standing) -> Vec<Step> {
        let steps = self.plan.get();
        let steps = steps.iter().map(|m| m.step);
        steps
            .filter(|&s| self.standing(s) == Some(wanted))
            .collect()
    }

    /// The step to go on with from one that is through: the next one in the plan that nobody has dealt
    /// with, or else whatever is left.
    pub(super) fn after(self, step: Step) -> Option<Step> {
        let steps = self.plan.get();
        let mut later = steps.iter().map(|m| m.step).skip_while(|&s| s != step);
        let dealt_with = [Some(Standing::Done), Some(Standing::Failed)];
        later
            .find(|&s| s != step && !dealt_with.contains(&self.standing(s)))
            .or_else(|| self.next())
    }

    /// The first step that is not done, a failed one before all others.
    pub(super) fn next(self) -> Option<Step> {
        let failed = self.that_are(Standing::Failed).first().copied();
        failed.or_else(|| {
            let steps = self.plan.get();
            let mut steps = steps.iter().map(|m| m.step);
            steps.find(|&s| self.standing(s) != Some(Standing::Done))
        })
    }
}
