//! A match that was already being played when somebody began to keep this record: sets and score are
//! entered as they stand. What was played before is not known rally by rally, and the sheet says so.

use std::sync::Arc;

use super::line_up;
use super::rally;
use crate::model::ending::{DecidedBy, SetRecord};
use crate::model::joined::{Joined, Running};
use crate::model::stage::{Phase, Stage};
use crate::model::state::State;
use crate::Refusal;
use rules::{ByTeam, Score, Team};

pub(crate) fn check(state: &State, joined: &Joined) -> Result<(), Refusal> {
    if state.begun() || state.phase() != Phase::Preparation || state.joined.is_some() {
        return Err(Refusal::PlayedHere);
    }
    if joined.sets.is_empty() && joined.score.is_none_or(|s| s == Score::default()) {
        return Err(Refusal::NothingToTakeOver);
    }
    let mut after = state.clone();
    let mut doubt = None;
    for &score in &joined.sets {
        let set = after.next_number();
        if rally::is_decided(&after) {
            return Err(Refusal::MatchOver);
        }
        let winner = score.leader().ok_or(Refusal::SetLevel { set, score })?;
        if !ended(state, set, score, winner) {
            doubt = doubt.or(Some(Refusal::SetNotOver { set, score }));
        }
        after.sets.push(record(set, score, winner));
    }
    if rally::is_decided(&after) {
        return Err(Refusal::MatchOver);
    }
    let set = after.next_number();
    match joined.score {
        Some(score) if state.rules.winner_of(set, score, false).is_some() => {
            Err(Refusal::SetOver { set, score })
        }
        _ => doubt.map_or(Ok(()), Err),
    }
}

/// Whether a set can have ended so: the last point was the one that won it, or a clock ended it.
fn ended(state: &State, set: u8, score: Score, winner: Team) -> bool {
    let by_clock = matches!(state.rules.set_limit, Some(rules::SetLimit::Minutes(_)));
    if by_clock {
        return true;
    }
    let mut before = score;
    before[winner] -= 1;
    let won = |score| state.rules.winner_of(set, score, false);
    won(score) == Some(winner) && won(before).is_none()
}

fn record(number: u8, score: Score, winner: Team) -> Arc<SetRecord> {
    Arc::new(SetRecord {
        number,
        score,
        winner,
        how: DecidedBy::Joined,
        opener: None,
        left: None,
        play: None,
    })
}

/// A tally goes on at once; where line-ups are kept they come first, as the players stand now.
pub(crate) fn take(state: &mut State, n: u32, joined: &Joined) {
    state.joined = Some(n);
    for &score in &joined.sets {
        if let Some(winner) = score.leader() {
            let record = record(state.next_number(), score, winner);
            state.sets.push(record);
        }
    }
    if let Stage::NextSet(coming) = &mut state.stage {
        // Line-ups that were handed in before were those of a beginning.
        coming.line_ups = ByTeam::default();
        coming.kept = ByTeam::default();
        coming.ready = None;
        coming.joined = joined.score.map(|score| Running {
            score,
            serving: joined.serving,
            left: joined.left,
        });
    }
    if joined.score.is_some() && !state.rules.line_ups {
        line_up::begin(state, n);
    }
}

/// Who serves first in a set before which no toss is in this record.
pub(crate) fn check_first_service(state: &State) -> Result<(), Refusal> {
    super::toss::check(state)?;
    let seen = !state.rules.line_ups || state.joined.is_some() || state.begun();
    if seen && !state.tossed {
        Ok(())
    } else {
        Err(Refusal::TossDecides {
            set: state.next_number(),
        })
    }
}
