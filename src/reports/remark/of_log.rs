//! Which remarks a log gives, in its order.

use game::entry::{Change, Entry, Protested};
use game::{Kind, Outcome, Phase, State, Timeline};
use rules::Score;

use super::{Corrected, Remark, RemarkLine};
use crate::clock_doubts;

/// The remarks of a log in its order.
#[must_use]
pub fn lines(timeline: &Timeline) -> Vec<RemarkLine> {
    let mut lines = Vec::new();
    let mut doubts = clock_doubts(timeline).into_iter().peekable();
    timeline.walk(|before, entry, outcome, after| {
        let doubt = doubts.next_if(|(of, _)| *of == entry.n);
        let remarks = match outcome {
            Outcome::Struck(by) => taken_back(timeline, entry, *by).into_iter().collect(),
            _ => remarks(before, entry, outcome, after, timeline.state()),
        };
        let doubt = doubt.map(|(_, doubt)| Remark::Clock(doubt));
        for remark in doubt.into_iter().chain(remarks) {
            // A protest comes after the point that it is about, which may have ended the set. What is noted after the
            // match stands with its last score.
            let is_protest = matches!(entry.kind, Kind::Protest { .. });
            let (set, score) = if is_protest || before.phase() == Phase::Finished {
                (before.set_number(), before.score())
            } else {
                let score = before.play().map_or_else(Score::default, |p| p.score);
                (before.set_at_hand(), score)
            };
            lines.push(RemarkLine {
                entry: entry.n,
                set,
                score,
                remark,
            });
        }
    });
    lines
}

/// What is to be noted of one entry.
fn remarks(
    before: &State,
    entry: &Entry,
    outcome: &Outcome,
    after: &State,
    end: &State,
) -> Vec<Remark> {
    let mut remarks = Vec::new();
    match outcome {
        Outcome::Accepted | Outcome::Insisted(_) => {
            let protest = end.protests().iter().find(|p| p.entry == entry.n);
            remarks.extend(match protest {
                Some(protest) => Some(Remark::Protest {
                    protest: protest.clone(),
                    unwritten: protest.written.is_none() && end.phase() == Phase::Finished,
                }),
                None => noted(before, &entry.kind, after),
            });
        }
        Outcome::Struck(_) => {}
        Outcome::Refused(refusal) => remarks.push(Remark::Refused {
            entry: entry.n,
            refusal: refusal.clone(),
        }),
    }
    if let (Outcome::Insisted(advice), Some(why)) = (outcome, &entry.insist) {
        remarks.push(Remark::Insisted {
            advice: advice.clone(),
            why: why.clone(),
        });
    }
    remarks
}

/// A slip of the finger taken back at once is no remark; one taken back with a reason, or after play
/// went on, is.
fn taken_back(timeline: &Timeline, entry: &Entry, by: u32) -> Option<Remark> {
    let aside = |e: &Entry| {
        matches!(
            e.kind,
            Kind::Explain { .. } | Kind::Timer(_) | Kind::Strike { .. }
        )
    };
    let went_on = timeline
        .entries()
        .iter()
        .any(|e| e.n > entry.n && e.n < by && !aside(e));
    let why = match &timeline.entry(by)?.kind {
        // The replay stands on the sheet for itself.
        Kind::Replay { .. } => return None,
        Kind::Strike { why, .. } => why.as_deref(),
        _ => None,
    };
    if aside(entry) || (!went_on && why.is_none()) {
        return None;
    }
    Some(Remark::TakenBack {
        entry: entry.n,
        by,
        why: why.map(str::to_owned),
    })
}

/// What the rules, or the official, want noted of an entry that counts.
fn noted(before: &State, kind: &Kind, after: &State) -> Option<Remark> {
    Some(match kind {
        Kind::Remark { text, team } => Remark::Written {
            team: *team,
            text: text.clone(),
        },
        Kind::Check(check) if !check.ok => Remark::CheckFailed(check.clone()),
        Kind::Check(check) => {
            let failed = before
                .checks()
                .iter()
                .any(|c| c.item == check.item && !c.ok);
            failed.then(|| Remark::CheckCleared(check.clone()))?
        }
        Kind::Substitution {
            team,
            changes,
            reason: Some(reason),
        } => {
            let side = after.shown().map(|play| &play.sides[*team]);
            let is_exceptional =
                |change: &&Change| side.is_some_and(|side| side.came_exceptionally(change.into));
            let exceptional: Vec<Change> = changes.iter().filter(is_exceptional).copied().collect();
            Remark::Forced {
                team: *team,
                exceptional: !exceptional.is_empty(),
                // A request may have replaced others as well.
                changes: match exceptional {
                    none if none.is_empty() => changes.clone(),
                    exceptional => exceptional,
                },
                reason: *reason,
            }
        }
        Kind::Recovery { team, number } => Remark::Recovery {
            team: *team,
            number: *number,
        },
        Kind::NewLibero {
            team,
            number,
            replaces,
            ..
        } => Remark::NewLibero {
            team: *team,
            number: *number,
            replaces: replaces.clone(),
        },
        Kind::LateFault(fault) => Remark::LateFault {
            team: fault.team,
            corrected: corrected(before, after),
        },
        Kind::Rally { cause: Some(_), .. } => {
            after.dropped_cause()?;
            Remark::CauseDropped
        }
        Kind::ProtestStatement { about, text } => Remark::ProtestWritten {
            team: match about {
                Protested::Unannounced(team) => *team,
                Protested::Entry(entry) => {
                    before.protests().iter().find(|p| p.entry == *entry)?.team
                }
            },
            text: text.clone(),
        },
        Kind::FirstService { team, left } => Remark::FirstService {
            set: before.set_at_hand(),
            team: *team,
            left: *left,
        },
        Kind::Joined(joined) => Remark::Joined(joined.clone()),
        Kind::ScoreCorrection { score, why, .. } => Remark::ScoreCorrected {
            from: before.score(),
            to: *score,
            why: why.clone(),
        },
        Kind::WrongInformation { score, why } => Remark::WrongInformation {
            from: before.score(),
            to: *score,
            why: why.clone(),
        },
        Kind::Discrepancy {
            team,
            changes,
            kept,
        } => Remark::Discrepancy {
            team: *team,
            changes: changes.clone(),
            kept: *kept,
        },
        Kind::LateReplacement { team } => Remark::LateReplacement {
            team: *team,
            again: before.team(*team).late_replacement_noted,
        },
        Kind::TimeUp => Remark::TimeUp {
            level: after.play().is_some(),
        },
        Kind::Suspend { why } => Remark::Suspended { why: why.clone() },
        Kind::Resume { .. } => Remark::Resumed,
        Kind::Incomplete { team, .. } => Remark::Incomplete(*team),
        Kind::Default { team } => Remark::Default(*team),
        Kind::Reopen { why } => Remark::Reopened { why: why.clone() },
        Kind::Answer { entry, choice } => {
            let question = before.questions().iter().find(|q| q.entry == *entry)?;
            Remark::Answered {
                question: question.clone(),
                choice: question.ask.choices().iter().position(|c| c == choice)?,
            }
        }
        // What stands on the sheet in a place of its own, or is no part of it.
        Kind::Match(_)
        | Kind::Heading(_)
        | Kind::TeamList(_)
        | Kind::Toss(_)
        | Kind::LineUp { .. }
        | Kind::BeginSet
        | Kind::Rally { cause: None, .. }
        | Kind::Explain { .. }
        | Kind::Replay { .. }
        | Kind::TimeOut { .. }
        | Kind::Substitution { reason: None, .. }
        | Kind::LiberoReplacement { .. }
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::Misconduct { .. }
        | Kind::GameCaptain { .. }
        | Kind::Protest { .. }
        | Kind::ChangeCourts
        | Kind::Timer(_)
        | Kind::Sign { .. }
        | Kind::Seal { .. }
        | Kind::Strike { .. } => return None,
    })
}

/// What a fault found late has done to the score of each set so far.
fn corrected(before: &State, after: &State) -> Vec<Corrected> {
    let score = |state: &State, number: u8| {
        let play = state.play().filter(|play| play.number == number);
        let set = state.sets().find(|set| set.number == number);
        play.map(|play| play.score).or(set.map(|set| set.score))
    };
    let now = before.set_number();
    let one = |set: u8| {
        let (was, is) = (score(before, set)?, score(after, set));
        (Some(was) != is).then_some(Corrected {
            set,
            earlier: set != now,
            was,
            is,
        })
    };
    (1..=now).filter_map(one).collect()
}
