//! Naming a new libero (19.4).

use super::entry::LiberoWhy;
use super::refusal::{Asked, Refusal};
use super::state::State;
use super::team_state::OutFor;
use crate::rules::{Shirt, Team};

pub(super) fn check(
    state: &State,
    team: Team,
    replaces: &[Shirt],
    number: Shirt,
) -> Result<(), Refusal> {
    let known = &state.teams[team];
    if let Some(&number) = replaces.iter().find(|&&s| !known.is_libero(s)) {
        return Err(Refusal::NotALibero { number });
    }
    if replaces.is_empty() {
        return Err(Refusal::NotALibero { number });
    }
    if !known.lists(number) {
        return Err(Refusal::NotListed { team, number });
    }
    if known.is_libero(number) {
        return Err(Refusal::AlreadyLibero { number });
    }
    let set = state.set_at_hand();
    let line_up = state.line_up_given(team).unwrap_or_default();
    if line_up.contains(&number) && state.on_floor().is_none() {
        return Err(Refusal::OnCourt {
            number,
            asked: Asked::NewLibero,
        });
    }
    if let Some(play) = state.on_floor() {
        let side = &play.sides[team];
        if side.on_court().any(|s| s == number) {
            return Err(Refusal::OnCourt {
                number,
                asked: Asked::NewLibero,
            });
        }
        if side
            .acting_libero()
            .is_some_and(|(place, _)| side.slots[place].player == number)
        {
            return Err(Refusal::ReplacedPlayer { number });
        }
    }
    if let Some(why) = known.barred(number, set) {
        return Err(Refusal::PlayerBarred { number, why });
    }
    // As long as one of two liberos can play there is no new one (19.4.3.1).
    let other = known
        .liberos
        .iter()
        .find(|&&s| !replaces.contains(&s) && known.barred(s, set).is_none());
    match other {
        Some(&number) => Err(Refusal::OtherLibero { number }),
        None => Ok(()),
    }
}

pub(super) fn name(
    state: &mut State,
    team: Team,
    replaces: &[Shirt],
    number: Shirt,
    why: Option<LiberoWhy>,
) {
    let set = state.set_at_hand();
    let known = &state.teams[team];
    // Where nobody said why: hurt or sent off is unable, anything else is declared.
    let unable = match why {
        Some(why) => why == LiberoWhy::Unable,
        None => replaces
            .iter()
            .any(|&s| known.hurt_libero == Some(s) || known.barred(s, set).is_some()),
    };
    let known = &mut state.teams[team];
    known.liberos.retain(|s| !replaces.contains(s));
    known.liberos.push(number);
    for &old in replaces {
        if !known.out.iter().any(|(s, _)| *s == old) {
            known.out.push((old, OutFor::Redesignated));
        }
    }
    if let Some(play) = state.on_floor_mut() {
        let completed = play.completed;
        let side = &mut play.sides[team];
        if unable {
            // The new libero may come in at once (19.4.2.2).
            side.libero_moved = None;
            side.libero_waits = None;
        } else {
            side.libero_waits = Some(completed);
        }
    }
}
