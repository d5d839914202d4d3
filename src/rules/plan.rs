//! The plan before a match, counted back from its scheduled start.
//!
//! Sources: the times between toss and warm-up follow the FIVB Refereeing Guidelines 2024, protocol
//! alternative A (toss 21 minutes before the start, warm-up at the net from 18 on); the guidelines'
//! anthems and presentation fall away in a school match, which is common practice, no source. To be
//! courtside at least 15 minutes before the toss, and the order of the checks in that time, is this
//! project's own design.

use super::{Rules, WarmUpStyle};

/// What a step asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Step {
    /// Own kit is complete and the official is at the court.
    Kit,
    /// Court, lines and free zone are safe and free (rules 1.1 and 1.5).
    Floor,
    /// Net height, tension, antennas and padded posts (rules 2.1 to 2.5).
    Net,
    /// Match ball and its pressure (rule 3.1).
    Ball,
    /// First aid, the way out, who calls for help: common practice, no source.
    FirstAid,
    /// The duty team knows its tasks: common practice, no source.
    Briefing,
    /// The team lists are in (rule 4.1.3).
    TeamLists,
    /// A word with both captains (rules 5.1 and 7.1; that it is a step of its own is common practice,
    /// no source).
    Captains,
    /// Toss with both captains (rule 7.1).
    Toss,
    /// Official warm-up at the net (rule 7.2).
    WarmUp,
    /// Line-ups of both teams (rule 7.3.2).
    LineUps,
    /// Last look at court, table and line-ups before the first whistle.
    LastCheck,
}

// In the order of the plan.
crate::codes!(Step {
    Kit = "kit",
    Floor = "floor",
    Net = "net",
    Ball = "ball",
    FirstAid = "first_aid",
    Briefing = "briefing",
    TeamLists = "team_lists",
    Captains = "captains",
    Toss = "toss",
    WarmUp = "warm_up",
    LineUps = "line_ups",
    LastCheck = "last_check",
});

impl Step {
    /// Whether the step is ticked by hand; the others are done when their entry is in the log.
    #[must_use]
    pub const fn is_ticked(self) -> bool {
        matches!(
            self,
            Step::Kit
                | Step::Floor
                | Step::Net
                | Step::Ball
                | Step::FirstAid
                | Step::Briefing
                | Step::Captains
        )
    }

    /// Whether somebody can be hurt if it fails, so that the match is not started (project design).
    #[must_use]
    pub const fn is_safety(self) -> bool {
        matches!(self, Step::Floor | Step::Net | Step::Ball | Step::FirstAid)
    }
}

/// A step with its time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    /// What.
    pub step: Step,
    /// Minutes before the scheduled start at which it begins.
    pub before: u16,
}

/// How a step that is not done stands against the clock.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Timing {
    /// Its time has not come.
    Ahead,
    /// It should be done now.
    Due,
    /// It should have been done.
    Late,
}

/// Minutes after which a step that is due counts as late: project design.
const GRACE: i64 = 3;

/// From the last line-up to the first whistle: common practice, no source.
const AFTER_WARM_UP: u16 = 5;
/// From the toss to the warm-up: Refereeing Guidelines 2024, protocol A (21 and 18 minutes before).
const TOSS_TO_WARM_UP: u16 = 3;
/// From arriving at the court to the toss: project design.
pub const COURTSIDE_MINUTES: u16 = 15;

/// The steps in the order of their times.
#[must_use]
pub fn plan(rules: &Rules) -> Vec<Moment> {
    let minutes = u16::from(rules.warm_up.minutes);
    let warm_up = AFTER_WARM_UP
        + match rules.warm_up.style {
            WarmUpStyle::Shared => minutes,
            WarmUpStyle::Separate => minutes * 2,
        };
    let toss = warm_up + TOSS_TO_WARM_UP;
    let moment = |step, before| Moment { step, before };
    let mut plan = vec![
        moment(Step::Kit, toss + COURTSIDE_MINUTES),
        moment(Step::Floor, toss + 13),
        moment(Step::Net, toss + 11),
        moment(Step::Ball, toss + 9),
        moment(Step::FirstAid, toss + 7),
        moment(Step::Briefing, toss + 5),
        moment(Step::TeamLists, toss + 3),
        moment(Step::Captains, toss + 1),
        moment(Step::Toss, toss),
        moment(Step::WarmUp, warm_up),
        // Collected during the warm-up: Refereeing Guidelines 2024, protocol; due at its end.
        moment(Step::LineUps, AFTER_WARM_UP),
        moment(Step::LastCheck, 2),
    ];
    plan.retain(|m| match m.step {
        Step::TeamLists | Step::LineUps => rules.line_ups,
        Step::WarmUp => rules.warm_up.minutes > 0,
        _ => true,
    });
    plan
}

impl Moment {
    /// How the step stands `minutes_left` whole minutes before the scheduled start.
    #[must_use]
    pub fn timing(&self, minutes_left: i64) -> Timing {
        let overdue = i64::from(self.before) - minutes_left;
        if overdue < 0 {
            Timing::Ahead
        } else if overdue <= GRACE {
            Timing::Due
        } else {
            Timing::Late
        }
    }
}

/// When a team that is not there has been waited for, in milliseconds like its arguments: the minutes
/// of the competition after the scheduled start, or after now where none was given.
///
/// A team that is not on court on time without a good reason is in default (rule 6.4.2), but the
/// international text names no minutes to wait: they are the competition's own, and nothing is
/// assumed here.
#[must_use]
pub fn waited_until(scheduled: Option<i64>, now: i64, minutes: u16) -> i64 {
    scheduled.unwrap_or(now) + i64::from(minutes) * 60_000
}

/// Whether a match of which only the time of day was written starts tomorrow: today's would be more than
/// half a day over. Whoever opens a match shortly before midnight means the night to come (project
/// design).
#[must_use]
pub fn is_tomorrow(today_at: i64, now: i64) -> bool {
    now - today_at > 12 * 3_600_000
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Preset;

    fn before(rules: &Rules, step: Step) -> Option<u16> {
        plan(rules)
            .iter()
            .find(|m| m.step == step)
            .map(|m| m.before)
    }

    #[test]
    fn the_plan_runs_towards_the_start() {
        for preset in Preset::ALL {
            let plan = plan(&preset.rules());
            assert!(plan.windows(2).all(|p| p[0].before >= p[1].before));
            assert_eq!(plan.last().map(|m| m.step), Some(Step::LastCheck));
        }
    }

    #[test]
    fn every_step_is_planned_somewhere_and_found_by_its_name() {
        let full = plan(&Preset::SchoolSenior.rules());
        for step in Step::ALL {
            assert_eq!(Step::from_code(step.code()), Some(step));
            assert!(full.iter().any(|m| m.step == step), "{step:?}");
        }
    }

    #[test]
    fn courtside_is_fifteen_minutes_before_the_toss() {
        let rules = Preset::SchoolSenior.rules();
        let kit = before(&rules, Step::Kit);
        assert_eq!(kit, before(&rules, Step::Toss).map(|m| m + 15));
    }

    #[test]
    fn separate_warm_ups_follow_each_other() {
        // Three minutes a team, then five to the whistle.
        let junior = Preset::SchoolJunior.rules();
        assert_eq!(before(&junior, Step::WarmUp), Some(11));
        let shared = Preset::International.rules();
        assert_eq!(before(&shared, Step::WarmUp), Some(15));
    }

    #[test]
    fn what_a_competition_leaves_out_is_not_planned() {
        let tally = Preset::Tally.rules();
        assert_eq!(before(&tally, Step::TeamLists), None);
        assert_eq!(before(&tally, Step::LineUps), None);
        let mut rules = Preset::SchoolJunior.rules();
        rules.warm_up.minutes = 0;
        assert_eq!(before(&rules, Step::WarmUp), None);
    }

    #[test]
    fn a_step_is_ahead_then_due_then_late() {
        let toss = Moment {
            step: Step::Toss,
            before: 14,
        };
        assert_eq!(toss.timing(15), Timing::Ahead);
        assert_eq!(toss.timing(14), Timing::Due);
        assert_eq!(toss.timing(11), Timing::Due);
        assert_eq!(toss.timing(10), Timing::Late);
        assert_eq!(toss.timing(-5), Timing::Late);
    }

    #[test]
    fn a_time_that_is_long_over_is_meant_for_tomorrow() {
        let hours = |h: i64| h * 3_600_000;
        // At ten to midnight: ten past midnight, and half past eleven.
        assert!(is_tomorrow(hours(0) + 600_000, hours(24) - 600_000));
        assert!(!is_tomorrow(hours(23) + 1_800_000, hours(24) - 600_000));
        // At ten in the morning: seven in the evening, and nine, which is late.
        assert!(!is_tomorrow(hours(19), hours(10)));
        assert!(!is_tomorrow(hours(9), hours(10)));
    }

    #[test]
    fn a_late_team_is_waited_for_from_the_scheduled_start() {
        assert_eq!(waited_until(Some(1_000_000), 1_300_000, 10), 1_600_000);
        assert_eq!(waited_until(None, 1_300_000, 10), 1_900_000);
        assert_eq!(waited_until(Some(1_000_000), 9_000_000, 0), 1_000_000);
    }
}
