//! What is missing: fields of the heading, lists, captains, the toss, signatures, answers, checks that
//! nobody cleared, the end of the match.
//!
//! What a sheet contains follows the score-sheet practice as taught to scorers; the rules behind single
//! fields stand at each finding.

use super::signed_result::outdated_signatures;
use super::{Field, Finding, What};
use game::entry::{is_coach, Detail};
use game::{Kind, Phase, SetPlay, Signer, State, Timeline};
use rules::{Score, Team};

/// Who signs under the result (5.1.3, 27.2.3.3), in the order of the sheet.
pub const SIGN_AFTER: [Signer; 5] = [
    Signer::Captain(Team::A),
    Signer::Captain(Team::B),
    Signer::Scorer,
    Signer::SecondReferee,
    Signer::FirstReferee,
];

pub(super) fn findings(timeline: &Timeline) -> Vec<Finding> {
    let state = timeline.state();
    let mut findings = Vec::new();
    let mut missing = |field: Field| {
        findings.push(Finding {
            entry: None,
            what: What::Missing(field),
        });
    };
    // A tally beside the match has no lists, no toss and no signatures.
    if state.rules().line_ups {
        heading(state, &mut missing);
        lists(state, &mut missing);
        tosses(state, &mut missing);
        signatures(timeline, &mut missing);
    }
    findings.extend(checks(timeline));
    findings.extend(state.questions().iter().map(|question| Finding {
        entry: Some(question.entry),
        what: What::OpenQuestion(question.clone()),
    }));
    if state.phase() == Phase::Finished {
        let unwritten = state.protests().iter().filter(|p| p.written.is_none());
        findings.extend(unwritten.map(|protest| Finding {
            entry: Some(protest.entry),
            what: What::ProtestNotWritten { team: protest.team },
        }));
    } else {
        findings.push(Finding {
            entry: None,
            what: What::Unfinished,
        });
    }
    findings
}

fn heading(state: &State, missing: &mut impl FnMut(Field)) {
    let Some(heading) = state.heading() else {
        return; // The entry that should open the match is refused or unreadable, which is said.
    };
    for (team, name) in heading.names.iter() {
        if name.is_empty() {
            missing(Field::Name(team));
        }
    }
    let fields = [
        (Detail::Competition, Field::Competition),
        (Detail::Venue, Field::Venue),
        (Detail::Scheduled, Field::Scheduled),
    ];
    for (detail, field) in fields {
        if heading.details[detail]
            .as_ref()
            .is_none_or(|v| v.trim().is_empty())
        {
            missing(field);
        }
    }
}

fn lists(state: &State, missing: &mut impl FnMut(Field)) {
    for team in Team::BOTH {
        match &state.team(team).list {
            None => missing(Field::List(team)),
            Some(list) => {
                if !list.players.iter().any(|p| p.captain) {
                    missing(Field::Captain(team));
                }
                if !list.staff.iter().any(|s| is_coach(&s.role)) {
                    missing(Field::Coach(team));
                }
            }
        }
    }
}

/// A set that began, or is over, without anybody knowing who was to open it.
fn tosses(state: &State, missing: &mut impl FnMut(Field)) {
    let over = state
        .sets()
        .filter(|s| s.play.as_ref().is_some_and(|p| p.base == Score::default()))
        .map(|s| (s.number, s.opener));
    // Of a set that was taken over while it was played nobody here saw the beginning.
    let seen = |p: &&SetPlay| p.base == Score::default();
    let running = state.play().filter(seen).map(|p| (p.number, p.opener));
    for (set, opener) in over.chain(running) {
        if opener.is_none() {
            missing(Field::Toss(set));
        }
    }
}

/// Who has signed: before the first service of the match, and after its end; whether there was that service.
fn signers(timeline: &Timeline) -> (Vec<Signer>, Vec<Signer>, bool) {
    let (mut before, mut after) = (Vec::new(), Vec::new());
    let outdated = outdated_signatures(timeline);
    let mut begun = false;
    timeline.walk(|was, entry, outcome, _| {
        if !outcome.counts() {
            return;
        }
        match &entry.kind {
            Kind::BeginSet => begun = true,
            // Whoever signed another result has not signed this one.
            Kind::Sign { .. } if outdated.contains(&entry.n) => {}
            Kind::Sign { role, .. } if was.phase() == Phase::Finished => {
                after.extend(Signer::of_role(role))
            }
            Kind::Sign { role, .. } if !begun => before.extend(Signer::of_role(role)),
            _ => {}
        }
    });
    (before, after, begun)
}

/// Who has signed under the result, each once, in the order of the sheet.
#[must_use]
pub fn signed_after(timeline: &Timeline) -> Vec<Signer> {
    let (_, after, _) = signers(timeline);
    let mut signed = SIGN_AFTER.to_vec();
    signed.retain(|signer| after.contains(signer));
    signed
}

fn signatures(timeline: &Timeline, missing: &mut impl FnMut(Field)) {
    let (before, after, begun) = signers(timeline);
    let state = timeline.state();
    if begun {
        for team in Team::BOTH {
            if !before.contains(&Signer::Captain(team)) {
                missing(Field::CaptainBefore(team));
            }
            if !before.contains(&Signer::Coach(team)) {
                missing(Field::CoachBefore(team));
            }
        }
    }
    if state.phase() == Phase::Finished {
        for team in Team::BOTH {
            if !after.contains(&Signer::Captain(team)) {
                missing(Field::CaptainAfter(team));
            }
        }
        let officials = [
            (Signer::Scorer, Field::Scorer),
            (Signer::SecondReferee, Field::SecondReferee),
            (Signer::FirstReferee, Field::FirstReferee),
        ];
        for (signer, field) in officials {
            if !after.contains(&signer) {
                missing(field);
            }
        }
    }
}

/// Checks that failed and were not cleared, each at its last entry.
fn checks(timeline: &Timeline) -> Vec<Finding> {
    let failed = timeline.state().checks().iter().filter(|c| !c.ok);
    failed
        .map(|failed| {
            let of_item = |e: &&game::Entry| match &e.kind {
                Kind::Check(check) => check.item == failed.item && !check.ok,
                _ => false,
            };
            Finding {
                entry: timeline.entries().iter().rev().find(of_item).map(|e| e.n),
                what: What::CheckFailed {
                    item: failed.item.clone(),
                    note: failed.note.clone(),
                },
            }
        })
        .collect()
}
