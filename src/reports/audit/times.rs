//! What the clock says: missing times, a clock that ran backwards, sets that overlap or can hardly have
//! taken so long.

use super::{Finding, What};
use crate::{clock_doubts, plausible, ClockDoubt, Sheet};
use game::{DecidedBy, Timeline};

pub(super) fn findings(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = Vec::new();
    let entries = timeline.entries().iter().filter(|e| e.at.is_none()).count();
    if entries > 0 {
        findings.push(Finding {
            entry: None,
            what: What::NoTimes { entries },
        });
    }
    findings.extend(
        clock_doubts(timeline)
            .into_iter()
            .map(|(entry, doubt)| Finding {
                entry: Some(entry),
                what: match doubt {
                    ClockDoubt::Back { seconds } => What::TimeBackwards { seconds },
                    ClockDoubt::Forward { seconds } => What::TimeForward { seconds },
                },
            }),
    );
    let sheet = Sheet::of(timeline);
    let mut last_end = None;
    for set in &sheet.sets {
        if let (Some(began), Some(end)) = (set.began, last_end) {
            if began < end {
                findings.push(Finding {
                    entry: None,
                    what: What::SetsOverlap { set: set.number },
                });
            }
        }
        last_end = set.ended.or(last_end);
        let points = u32::from(set.score.a) + u32::from(set.score.b);
        // A set that was not played out has points nobody played.
        let played = matches!(set.won, Some((_, DecidedBy::Played)));
        if let (true, Some(minutes)) = (played, set.minutes()) {
            if !plausible::set_minutes(points).contains(&minutes) {
                findings.push(Finding {
                    entry: None,
                    what: What::ImplausibleTime {
                        set: set.number,
                        minutes,
                        points,
                    },
                });
            }
        }
    }
    findings
}
