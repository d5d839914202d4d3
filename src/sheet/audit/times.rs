//! What the clock says: missing times, a clock that ran backwards, sets that overlap or can hardly have
//! taken so long.

use super::{Finding, What};
use crate::game::{How, Outcome, Replay};
use crate::sheet::{plausible, Sheet};

pub(super) fn findings(replay: &Replay) -> Vec<Finding> {
    let mut findings = Vec::new();
    let entries = replay.entries().iter().filter(|e| e.at.is_none()).count();
    if entries > 0 {
        findings.push(Finding {
            entry: None,
            what: What::NoTimes { entries },
        });
    }
    findings.extend(backwards(replay));
    let sheet = Sheet::of(replay);
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
        let played = matches!(set.won, Some((_, How::Played)));
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

/// Entries with an earlier time than one before them. What was taken back was entered too.
fn backwards(replay: &Replay) -> Vec<Finding> {
    let mut latest: Option<i64> = None;
    let mut findings = Vec::new();
    for (entry, outcome) in replay.outcomes() {
        let Some(at) = entry.at else { continue };
        if matches!(outcome, Outcome::Refused(_)) {
            continue;
        }
        match latest {
            // One finding for each time the clock jumps back, not for all entries after it.
            Some(before) if at < before => findings.push(Finding {
                entry: Some(entry.n),
                what: What::TimeBackwards {
                    seconds: before.saturating_sub(at).saturating_add(999) / 1000,
                },
            }),
            _ => {}
        }
        latest = Some(at);
    }
    findings
}
