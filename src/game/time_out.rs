//! Time-outs (15.1, 15.4).

use super::refusal::{InSet, Refusal};
use super::request;
use super::stage::Stage;
use super::state::State;
use crate::rules::Team;

pub(super) fn check(state: &State, team: Team) -> Result<(), Refusal> {
    let Stage::Playing(play) = &state.stage else {
        return Err(Refusal::NoSetRunning {
            asked: InSet::TimeOut,
        });
    };
    request::check_open(play, team)?;
    match state.rules.time_outs.per_set {
        Some(most) if play.sides[team].time_outs >= most => {
            Err(Refusal::NoTimeOutLeft { team, most })
        }
        _ => Ok(()),
    }
}

pub(super) fn take(state: &mut State, team: Team) {
    if let Stage::Playing(play) = &mut state.stage {
        let taken = &mut play.sides[team].time_outs;
        *taken = taken.saturating_add(1);
    }
}
