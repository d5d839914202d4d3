//! The toss, who opens a set and who starts it on which side (7.1, 12.1, 18.2.1).

use super::entry::Toss;
use super::state::{Coming, Stage, State};
use super::Refusal;
use crate::rules::Team;

/// Whether a toss decides the set to come: the first set and the deciding one (7.1).
pub(super) fn decides(state: &State, set: u8) -> bool {
    set == 1 || state.rules.is_decider(set)
}

pub(super) fn check(state: &State) -> Result<(), Refusal> {
    if state.coming().is_none() {
        return Err(Refusal::SetRunning);
    }
    let set = state.next_number();
    // Without any toss so far nobody is due to open, whatever set it is.
    if decides(state, set) || state.opener_to_come().is_none() {
        Ok(())
    } else {
        Err(Refusal::TossNotDue { set })
    }
}

pub(super) fn take(state: &mut State, toss: Toss) {
    if let Stage::Coming(coming) = &mut state.stage {
        coming.toss = Some(toss);
        if let Some(again) = &mut coming.again {
            again.opener = Some(toss.first_service);
            again.left = toss.left;
        }
        if let Some(ready) = &mut coming.ready {
            ready.opener = Some(toss.first_service);
            ready.serving = Some(toss.first_service);
            ready.left = toss.left;
        }
    }
}

/// Who opens the set to come: by toss in the first and the deciding set (12.1.1), else the team
/// that did not open the last one (12.1.2).
pub(super) fn opener(state: &State, coming: &Coming) -> Option<Team> {
    coming.toss.map(|t| t.first_service).or_else(|| {
        let last = state.sets.last()?;
        (!decides(state, state.next_number())).then_some(())?;
        Some(last.opener?.other())
    })
}

/// Who starts the set to come on the left: the teams change courts after each set, but not before the
/// deciding one (18.2.1); there, and in the first, the toss decides.
pub(super) fn left(state: &State, coming: &Coming) -> Option<Team> {
    coming.toss.map(|t| t.left).or_else(|| {
        let left = state.sets.last()?.left?;
        let decider = state.rules.is_decider(state.next_number());
        Some(if decider { left } else { left.other() })
    })
}
