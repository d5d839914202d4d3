//! What is settled of the set to come: who opens it, who starts it on which side, and what was handed in for
//! it (7.1, 7.3, 12.1, 18.2.1).

use super::entry::Toss;
use super::stage::NextSet;
use super::state::State;
use rules::{Shirt, Team};

impl State {
    /// Whether a toss decides a set: the first one and the deciding one (7.1).
    pub(crate) fn toss_decides(&self, set: u8) -> bool {
        set == 1 || self.rules.is_decider(set)
    }

    /// The toss for the set to come, once it was made (7.1).
    #[must_use]
    pub fn toss_to_come(&self) -> Option<Toss> {
        self.coming()?.toss
    }

    /// Who opens the set to come, as far as that is settled (12.1).
    #[must_use]
    pub fn opener_to_come(&self) -> Option<Team> {
        let coming = self.coming()?;
        coming
            .again
            .map_or_else(|| opener(self, coming), |again| again.opener)
    }

    /// Who serves first when play goes on: the opener, or whoever was to serve in a set that was taken over.
    #[must_use]
    pub fn server_to_come(&self) -> Option<Team> {
        let joined = self.coming()?.joined.and_then(|j| j.serving);
        joined.or_else(|| self.opener_to_come())
    }

    /// Who starts the set to come on the left, as far as that is settled (18.2.1).
    #[must_use]
    pub fn left_to_come(&self) -> Option<Team> {
        let coming = self.coming()?;
        coming
            .again
            .map_or_else(|| left(self, coming), |again| Some(again.left))
    }

    /// The line-up handed in for the set to come.
    #[must_use]
    pub fn line_up_given(&self, team: Team) -> Option<&[Shirt]> {
        self.coming()?.line_ups[team].as_deref()
    }
}

/// Who opens the set to come: by toss in the first and the deciding set (12.1.1), else the team
/// that did not open the last one (12.1.2).
fn opener(state: &State, coming: &NextSet) -> Option<Team> {
    coming.toss.map(|t| t.first_service).or_else(|| {
        let last = state.sets.last()?;
        (!state.toss_decides(state.next_number())).then_some(())?;
        Some(last.opener?.other())
    })
}

/// Who starts the set to come on the left: the teams change courts after each set, but not before the
/// deciding one (18.2.1); there, and in the first, the toss decides.
fn left(state: &State, coming: &NextSet) -> Option<Team> {
    coming.toss.map(|t| t.left).or_else(|| {
        let left = state.sets.last()?.left?;
        let decider = state.rules.is_decider(state.next_number());
        Some(if decider { left } else { left.other() })
    })
}
