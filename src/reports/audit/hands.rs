//! What was changed by hand afterwards: decisions taken back, and anything after the signatures.

use super::signed_result::{changes, first_signed};
use super::{Finding, What};
use crate::remark;
use game::{Entry, Kind, Outcome, Timeline};

/// Decisions taken back, and the first change after the match was signed.
pub(super) fn changed(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = taken_back(timeline);
    findings.extend(not_by_play(timeline));
    findings.extend(after_signing(timeline));
    findings
}

/// A slip of the finger is no finding: only what is a remark on the sheet, and decisions about people
/// whenever they were taken back.
fn taken_back(timeline: &Timeline) -> Vec<Finding> {
    let remarks: Vec<u32> = remark::lines(timeline).iter().map(|r| r.entry).collect();
    let struck = timeline
        .outcomes()
        .filter_map(|(entry, outcome)| match outcome {
            Outcome::Struck(by) if is_decision(entry) || remarks.contains(&entry.n) => {
                Some((entry.n, *by))
            }
            _ => None,
        });
    struck
        .map(|(n, by)| {
            let why = match timeline.entry(by).map(|e| &e.kind) {
                Some(Kind::Strike { why, .. }) => why.clone(),
                _ => None,
            };
            Finding {
                entry: Some(n),
                what: What::TakenBack { by, why },
            }
        })
        .collect()
}

/// Where the score does not follow from what was played in this record.
fn not_by_play(timeline: &Timeline) -> Vec<Finding> {
    let counted = timeline.outcomes().filter(|(_, outcome)| outcome.counts());
    counted
        .filter_map(|(entry, _)| {
            let what = match &entry.kind {
                Kind::Joined(joined) => What::TakenOver {
                    set: u8::try_from(joined.sets.len() + 1).unwrap_or(u8::MAX),
                    score: joined.score,
                },
                Kind::ScoreCorrection { score, why, .. } => What::ScoreCorrected {
                    score: *score,
                    why: why.clone(),
                },
                Kind::WrongInformation { score, why } => What::WrongInformation {
                    score: *score,
                    why: why.clone(),
                },
                _ => return None,
            };
            Some(Finding {
                entry: Some(entry.n),
                what,
            })
        })
        .collect()
}

fn is_decision(entry: &Entry) -> bool {
    match &entry.kind {
        Kind::Misconduct { .. }
        | Kind::Delay { .. }
        | Kind::ImproperRequest { .. }
        | Kind::LateFault(_)
        | Kind::Incomplete { .. }
        | Kind::Default { .. }
        | Kind::Protest { .. }
        | Kind::ScoreCorrection { .. }
        | Kind::WrongInformation { .. }
        | Kind::LateReplacement { .. }
        | Kind::Answer { .. } => true,
        Kind::Check(check) => !check.ok,
        _ => false,
    }
}

/// The first entry after the first signature under the result that changes more than notes.
fn after_signing(timeline: &Timeline) -> Option<Finding> {
    let signed = first_signed(timeline)?;
    let entry = changes(timeline).find(|n| *n > signed)?;
    Some(Finding {
        entry: Some(entry),
        what: What::ChangedAfterSigning,
    })
}
