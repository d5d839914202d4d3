//! Auditing a match record: everything in it that somebody who was not there should look at.
//!
//! The fold has judged every entry already; the audit gathers what it refused, what was insisted on and
//! taken back, what is missing, what stood as a notice while play went on, and what the clock says.

mod conduct_of_play;
mod finding;
mod hands;
mod missing;
mod remedy;
mod signed_result;
mod spot;
mod times;
mod weight;

pub use finding::{Field, Finding, What};
pub use missing::{signed_after, SIGN_AFTER};
pub use remedy::Remedy;
pub use signed_result::outdated_signatures;
pub use spot::Spot;

use game::{Outcome, Timeline};
use record::{broken, Extent, Reading};

/// Everything to look at in a record, in the order of its entries; what concerns the whole comes first.
/// `timeline` is the fold of the reading's entries.
#[must_use]
pub fn audit(reading: &Reading, timeline: &Timeline) -> Vec<Finding> {
    let mut findings = form(reading);
    findings.extend(of_log(timeline));
    in_order(findings)
}

/// The same of a log that is being written and was read without a problem.
#[must_use]
pub fn of_log(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = broken_links_and_seals(timeline);
    findings.extend(judged(timeline));
    findings.extend(hands::changed(timeline));
    findings.extend(conduct_of_play::findings(timeline));
    findings.extend(missing::findings(timeline));
    findings.extend(times::findings(timeline));
    in_order(findings)
}

/// What was changed after it was written comes before everything else: it puts all of that in doubt.
fn in_order(mut findings: Vec<Finding>) -> Vec<Finding> {
    rules::sort_by_key(&mut findings, |f| {
        (!matches!(f.what, What::Broken(_)), f.entry)
    });
    findings
}

/// What was left undone in a record: see [`Finding::is_left_open`].
#[must_use]
pub fn left_open(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = missing::findings(timeline);
    findings.retain(Finding::is_left_open);
    findings
}

/// What could not be read, or stands in the file and nobody knows what for.
fn form(reading: &Reading) -> Vec<Finding> {
    let unreadable = |entry: Option<u32>| entry.is_some_and(|n| reading.unreadable.contains(&n));
    // What the log shows by itself is found there.
    let problems = reading.problems.iter();
    problems
        .filter(|p| p.extent != Extent::Traced)
        .map(|p| Finding {
            entry: p.entry,
            what: What::Form {
                unreadable: unreadable(p.entry),
                problem: p.kind.clone(),
            },
        })
        .collect()
}

/// Links and seals that do not fit.
fn broken_links_and_seals(timeline: &Timeline) -> Vec<Finding> {
    let broken = broken(timeline.entries()).into_iter();
    broken
        .map(|broken| Finding {
            entry: Some(broken.entry()),
            what: What::Broken(broken),
        })
        .collect()
}

/// What the fold refused, and what was entered against its advice.
fn judged(timeline: &Timeline) -> Vec<Finding> {
    let mut findings = Vec::new();
    for (entry, outcome) in timeline.outcomes() {
        let what = match (outcome, &entry.insist) {
            (Outcome::Refused(refusal), _) => What::Refused(refusal.clone()),
            (Outcome::Insisted(refusal), Some(why)) => What::Insisted {
                refusal: refusal.clone(),
                why: why.clone(),
            },
            _ => continue,
        };
        findings.push(Finding {
            entry: Some(entry.n),
            what,
        });
    }
    findings
}
