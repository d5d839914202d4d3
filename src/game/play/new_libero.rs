//! Naming a new libero (19.4).

use crate::model::entry::LiberoWhy;
use crate::model::refusal::{Asked, Refusal};
use crate::model::state::State;
use crate::model::team_state::OutFor;
use rules::{Shirt, Team};

pub(crate) fn check(
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

pub(crate) fn name(
    state: &mut State,
    team: Team,
    replaces: &[Shirt],
    number: Shirt,
    why: Option<LiberoWhy>,
) {
    let set = state.set_at_hand();
    let acting = state
        .on_floor()
        .and_then(|play| play.sides[team].acting_libero())
        .map(|(_, libero)| libero)
        .filter(|libero| replaces.contains(libero));
    let known = &mut state.teams[team];
    if why == Some(LiberoWhy::Unable) {
        replaces.iter().for_each(|&number| known.note_hurt(number));
    }
    if let Some(acting) = acting {
        // Who was hurt or sent off has become unable, whatever was said; where nothing was said too.
        let became_unable = why != Some(LiberoWhy::Declared)
            || known.unable_libero == Some(acting)
            || known.is_sent_off(acting, set);
        // For one who has become unable the new one may come in at once, for one who was only declared
        // so the regular player returns first (19.4.1, 19.4.2.2; FIVB Casebook 2024, case 5.23).
        if became_unable {
            known.unable_libero = Some(acting);
        } else {
            known.declared_libero = Some(acting);
        }
    }
    known.liberos.retain(|s| !replaces.contains(s));
    known.liberos.push(number);
    for &old in replaces {
        if !known.out.iter().any(|(s, _)| *s == old) {
            known.out.push((old, OutFor::Redesignated));
        }
    }
}
