//! Injured players who cannot be replaced, and interruptions of the match (17.1.2, 17.3).

use std::sync::Arc;

use super::libero;
use super::line_up::may_start;
use super::substitution;
use crate::model::entry::Court;
use crate::model::refusal::{Asked, InSet, Refusal};
use crate::model::stage::{Again, NextSet, Stage};
use crate::model::state::State;
use rules::{ByTeam, Shirt, Team};

/// Interruptions may last four hours in all (17.3.2, 17.3.3).
const FOUR_HOURS: i64 = 4 * 60 * 60 * 1000;

pub(crate) fn check_recovery(state: &State, team: Team, number: Shirt) -> Result<(), Refusal> {
    let play = state.on_floor().ok_or(Refusal::NoSetRunning {
        asked: InSet::Recovery,
    })?;
    if play.follows_places(team) && !play.sides[team].on_court().any(|s| s == number) {
        return Err(Refusal::NotOnCourt {
            number,
            asked: Asked::Recovery,
        });
    }
    if state.teams[team].recovered.contains(&number) {
        return Err(Refusal::RecoveryUsed { number });
    }
    if !play.follows_places(team) {
        // Nobody knows who could come in.
        return Ok(());
    }
    let side = &play.sides[team];
    let into = match side.slots.iter().position(|s| s.libero == Some(number)) {
        Some(place) => libero::could_come_in(state, play, team, place),
        None => substitution::could_come_in(state, play, team, number),
    };
    if into.is_empty() {
        Ok(())
    } else {
        Err(Refusal::SomebodyCanComeIn { number, into })
    }
}

pub(crate) fn recover(state: &mut State, team: Team, number: Shirt) {
    state.teams[team].recovered.push(number);
    state.teams[team].note_hurt(number);
}

pub(crate) fn suspend(state: &mut State, at: Option<i64>) {
    let then = std::mem::replace(&mut state.stage, Stage::NextSet(NextSet::default()));
    state.stage = Stage::Suspended {
        then: Box::new(then),
        since: at,
    };
}

pub(crate) fn check_resume(state: &State, at: Option<i64>) -> Result<(), Refusal> {
    if state.interrupted.saturating_add(lasted(state, at)) > FOUR_HOURS {
        Err(Refusal::OverFourHours)
    } else {
        Ok(())
    }
}

/// How long this interruption has lasted, milliseconds; nothing where a time is missing.
fn lasted(state: &State, at: Option<i64>) -> i64 {
    match (&state.stage, at) {
        (
            Stage::Suspended {
                since: Some(since), ..
            },
            Some(at),
        ) => at.saturating_sub(*since).max(0),
        _ => 0,
    }
}

/// On the same court everything goes on as it was (17.3.2.1); on another one the interrupted set is
/// cancelled and played again with the same starting line-ups (17.3.2.2).
pub(crate) fn resume(state: &mut State, court: Court, at: Option<i64>) {
    state.interrupted = state.interrupted.saturating_add(lasted(state, at));
    let stage = std::mem::replace(&mut state.stage, Stage::NextSet(NextSet::default()));
    let Stage::Suspended { then, .. } = stage else {
        state.stage = stage;
        return;
    };
    match (*then, court) {
        (Stage::Playing(play), Court::Other) => {
            state.cancelled.push(Arc::new((*play).clone()));
            let line_ups = ByTeam::new(|team| {
                let starters = play.sides[team].line_up();
                // Whoever was sent off, or is a libero now, is missing: that team hands in a new
                // line-up.
                let all_there = starters.iter().all(|&s| may_start(state, team, s).is_ok());
                (all_there && !starters.is_empty()).then_some(starters)
            });
            let left = if play.changed_courts {
                play.left.other()
            } else {
                play.left
            };
            state.stage = Stage::NextSet(NextSet {
                line_ups,
                again: Some(Again {
                    opener: play.opener,
                    left,
                }),
                ..NextSet::default()
            });
            super::line_up::make_ready(state);
        }
        (then, _) => state.stage = then,
    }
}
