//! Time-outs (15.1, 15.4).

use super::request;
use crate::model::refusal::{InSet, Refusal};
use crate::model::stage::Stage;
use crate::model::state::State;
use rules::Team;

pub(crate) fn check(state: &State, team: Team) -> Result<(), Refusal> {
    let Stage::Playing(play) = &state.stage else {
        return Err(Refusal::NoSetRunning {
            asked: InSet::TimeOut,
        });
    };
    request::check_open(play, team)?;
    let limits = &state.rules.time_outs;
    match (limits.per_set, limits.per_match) {
        (Some(most), _) if play.sides[team].time_outs >= most => {
            Err(Refusal::NoTimeOutLeft { team, most })
        }
        (_, Some(most)) if state.time_outs_in_match(team) >= most => {
            Err(Refusal::NoTimeOutLeftInMatch { team, most })
        }
        _ => Ok(()),
    }
}

pub(crate) fn take(state: &mut State, team: Team) {
    if let Stage::Playing(play) = &mut state.stage {
        let taken = &mut play.sides[team].time_outs;
        *taken = taken.saturating_add(1);
    }
}
