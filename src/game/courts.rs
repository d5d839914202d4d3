//! The change of courts in the deciding set (18.2.2).

use super::refusal::{InSet, Refusal};
use super::stage::Stage;
use super::state::State;
use rules::Team;

pub(super) fn check(state: &State) -> Result<(), Refusal> {
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
pub(super) fn change(state: &mut State) {
    if let Stage::Playing(play) = &mut state.stage {
        play.left = play.left.other();
        play.changed_courts = true;
        state.left = state.left.map(Team::other);
    }
}
