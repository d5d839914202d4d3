//! The toss (7.1).

use crate::model::entry::Toss;
use crate::model::stage::Stage;
use crate::model::state::State;
use crate::Refusal;

pub(crate) fn check(state: &State) -> Result<(), Refusal> {
    if state.coming().is_none() {
        return Err(Refusal::TossInSet);
    }
    let set = state.next_number();
    // Without any toss so far nobody is due to open, whatever set it is.
    if state.toss_decides(set) || state.opener_to_come().is_none() {
        Ok(())
    } else {
        Err(Refusal::TossNotDue { set })
    }
}

/// A toss was held.
pub(crate) fn take(state: &mut State, toss: Toss) {
    state.tossed = true;
    if state.sets.is_empty() {
        state.left = Some(toss.left);
    }
    settle(state, toss);
}

/// Who opens the set to come and who stands where.
pub(crate) fn settle(state: &mut State, toss: Toss) {
    if let Stage::NextSet(coming) = &mut state.stage {
        coming.toss = Some(toss);
        if let Some(again) = &mut coming.again {
            again.opener = Some(toss.first_service);
            again.left = toss.left;
        }
        if let Some(ready) = &mut coming.ready {
            ready.opener = Some(toss.first_service);
            let joined = coming.joined.as_ref();
            let serving = joined.and_then(|j| j.serving);
            ready.serving = serving.or(Some(toss.first_service));
            ready.left = joined.and_then(|j| j.left).unwrap_or(toss.left);
        }
    }
}
