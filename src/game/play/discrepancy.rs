//! Players on court who differ from the line-up, found before the set begins (7.3.5.1, 7.3.5.2).

use super::substitution;
use crate::model::entry::Change;
use crate::model::stage::Stage;
use crate::model::state::State;
use crate::Refusal;
use rules::Team;

pub(crate) fn check(
    state: &State,
    team: Team,
    changes: &[Change],
    kept: bool,
) -> Result<(), Refusal> {
    match &state.stage {
        Stage::NextSet(coming) if coming.ready.is_some() => {}
        Stage::NextSet(_) => return Err(Refusal::NobodyOnCourt),
        // From now on the opponent gets a point (7.3.5.3).
        _ => return Err(Refusal::FoundTooLate),
    }
    let side = &state.on_floor().ok_or(Refusal::NobodyOnCourt)?.sides[team];
    if let Some(change) = changes.iter().find(|c| side.place_of(c.out).is_none()) {
        return Err(Refusal::NotInLineUp { number: change.out });
    }
    if kept {
        substitution::check(state, team, changes, None)
    } else {
        Ok(())
    }
}

/// Put right without a sanction there is nothing to change: the line-up holds.
pub(crate) fn settle(state: &mut State, team: Team, changes: &[Change], kept: bool) {
    if kept {
        substitution::make(state, team, changes, None);
    }
}
