//! The seal of a record: after it nothing is taken up but a reopening, which stands on the sheet. Neither
//! can be taken back. (Our own choice; the rules know signatures only: 5.1.3.)

use crate::model::entry::{Entry, Kind};
use crate::model::state::State;
use crate::Refusal;

/// What a seal is against; `Ok` where it has nothing to say.
pub(crate) fn check(state: &State, kind: &Kind) -> Result<(), Refusal> {
    match (state.sealed, kind) {
        (Some(_), Kind::Reopen { .. }) => Ok(()),
        (Some(entry), _) => Err(Refusal::Sealed { entry }),
        (None, Kind::Reopen { .. }) => Err(Refusal::NotSealed),
        (None, _) => Ok(()),
    }
}

/// Seals and reopenings stand; what was wrong about one is put right by the next.
pub(crate) fn check_strike(target: Option<&Entry>) -> Result<(), Refusal> {
    match target.map(|e| (e.n, &e.kind)) {
        Some((entry, Kind::Seal { .. } | Kind::Reopen { .. })) => {
            Err(Refusal::SealStands { entry })
        }
        _ => Ok(()),
    }
}

pub(crate) fn close(state: &mut State, entry: u32) {
    state.sealed = Some(entry);
}

pub(crate) fn reopen(state: &mut State) {
    state.sealed = None;
}
