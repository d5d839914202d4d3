//! The change of courts in the deciding set (18.2.2).

use crate::model::refusal::{InSet, Refusal};
use crate::model::stage::Stage;
use crate::model::state::State;
use rules::Team;

pub(crate) fn check(state: &State) -> Result<(), Refusal> {
    let Stage::Playing(play) = &state.stage else {
        return Err(Refusal::NoSetRunning {
            asked: InSet::ChangeOfCourts,
        });
    };
    match state.rules.courts_change_at(play.number) {
        Some(at) => {
            if play.changed_courts {
                Err(Refusal::CourtsChanged)
            } else if play.change_of_courts_due(&state.rules) {
                Ok(())
            } else {
                Err(Refusal::CourtsNotDue { at })
            }
        }
        None => Err(Refusal::NotDecider),
    }
}

/// The sides swap; score, server and positions stay.
pub(crate) fn change(state: &mut State) {
    if let Stage::Playing(play) = &mut state.stage {
        play.left = play.left.other();
        play.changed_courts = true;
        state.left = state.left.map(Team::other);
    }
}
