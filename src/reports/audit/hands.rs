//! What was changed by hand afterwards: decisions taken back, and anything after the signatures.

use super::{Finding, What};
use crate::remark;
use game::{Entry, Kind, Outcome, Phase, Timeline};

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
    let counted = timeline
        .outcomes()
        .filter(|(_, outcome)| matches!(outcome, Outcome::Accepted | Outcome::Insisted(_)));
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
    let signed = signed(timeline)?;
    let is_note = |kind: &Kind| {
        matches!(
            kind,
            Kind::Remark { .. }
                | Kind::Protest { .. }
                | Kind::ProtestStatement { .. }
                | Kind::Timer(_)
                | Kind::Sign { .. }
                | Kind::Seal { .. }
                | Kind::Reopen { .. }
        )
    };
    let changes = |entry: &Entry| match &entry.kind {
        Kind::Strike { entry: target, .. } => {
            timeline.entry(*target).is_some_and(|e| !is_note(&e.kind))
        }
        kind => !is_note(kind),
    };
    let counts = |outcome: &Outcome| matches!(outcome, Outcome::Accepted | Outcome::Insisted(_));
    let mut later = timeline.outcomes().filter(|(entry, _)| entry.n > signed);
    let (entry, _) = later.find(|(entry, outcome)| counts(outcome) && changes(entry))?;
    Some(Finding {
        entry: Some(entry.n),
        what: What::ChangedAfterSigning,
    })
}

/// The first signature under the result: given when the match was over, by what the log said at that
/// moment. A later strike leaves the fold as if what it took back had never been, so the log is folded
/// up to each signature.
fn signed(timeline: &Timeline) -> Option<u32> {
    let entries = timeline.entries();
    let first_rally = entries
        .iter()
        .position(|e| matches!(e.kind, Kind::Rally { .. } | Kind::Default { .. }))?;
    let signatures = (first_rally..entries.len())
        .filter(|&i| matches!(entries[i].kind, Kind::Sign { .. }))
        // A match has eleven; nobody folds a log of nothing but signatures so often.
        .take(50);
    signatures
        .map(|i| (entries[i].n, Timeline::of(entries[..i].to_vec())))
        .find(|(_, then)| then.state().phase() == Phase::Finished)
        .map(|(n, _)| n)
}
