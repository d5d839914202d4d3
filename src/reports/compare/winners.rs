//! The order of the points of a set.

use game::{SetPlay, State};
use rules::Team;

/// The winners of the points of a set that stand, in their order.
#[must_use]
pub fn winners(state: &State, set: u8) -> Vec<Team> {
    let over = state.sets().find(|s| s.number == set);
    let over = over.and_then(|s| s.play.as_ref());
    let play: Option<&SetPlay> = over.or_else(|| state.play().filter(|p| p.number == set));
    let points = play.map(|p| p.points.as_slice()).unwrap_or_default();
    let standing = points.iter().filter(|p| p.cancelled_by.is_none());
    standing.map(|p| p.to).collect()
}
