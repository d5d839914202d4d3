//! A score that is put right though no team was at fault: it was miscounted, or the officials gave wrong
//! information.

use super::late_fault::{at_hand, reopen};
use super::rally;
use crate::model::refusal::{InSet, Refusal};
use crate::model::stage::Stage;
use crate::model::state::State;
use rules::{Score, Team};

/// Where it is followed who stands where, service and rotation follow from the points: a score alone
/// would leave them to guess, so the wrong rally is undone instead. A tally has neither.
pub(crate) fn check(state: &State, score: Score, serving: Option<Team>) -> Result<(), Refusal> {
    let Stage::Playing(play) = &state.stage else {
        return Err(Refusal::NoSetRunning {
            asked: InSet::Rally,
        });
    };
    if play.score == score && (serving.is_none() || serving == play.serving) {
        Err(Refusal::ScoreStands { score })
    } else if score.a > MOST || score.b > MOST || play.given_by_then(score) > MOST_GIVEN {
        Err(Refusal::ScoreTooHigh { most: MOST })
    } else if play.score_is_followed() {
        Err(Refusal::ScoreFollowsPoints)
    } else {
        Ok(())
    }
}

/// No set has so many points.
const MOST: u16 = 999;
/// Nor gives anybody so many, with those that were cancelled.
const MOST_GIVEN: usize = 4 * MOST as usize;

pub(crate) fn correct(state: &mut State, n: u32, score: Score, serving: Option<Team>) {
    if let Stage::Playing(play) = &mut state.stage {
        play.correct(score, n);
        play.serving = serving.or(play.serving);
    }
    rally::settle(state);
}

/// Back to a score that stood in the set at hand.
pub(crate) fn check_wrong_information(state: &State, score: Score) -> Result<(), Refusal> {
    let play = at_hand(state, None)?;
    match play.moment(score) {
        Some(_) => Ok(()),
        None => Err(Refusal::NoSuchMoment {
            asked: score,
            nearest: play.nearest(score),
        }),
    }
}

/// The points since then are cancelled, both teams turn back to the order of that moment and the team that
/// was to serve then serves; sanctions, substitutions and time-outs stay (FIVB Casebook 2024, case 2.3).
pub(crate) fn go_back(state: &mut State, n: u32, score: Score) {
    // What was handed in for the next set falls away with the set that is not over any more.
    let waiting = reopen(state);
    if let Stage::Playing(play) = state.stage_beneath_mut() {
        play.go_back(score, n);
    }
    super::questions::expire(&mut state.questions);
    rally::settle(state);
    match (state.stage_beneath_mut(), waiting) {
        (Stage::NextSet(coming), Some(waiting)) => *coming = waiting,
        (Stage::Finished(ending), Some(waiting)) => ending.waiting = waiting,
        _ => {}
    }
}
