//! Libero replacements (19.3).

use super::substitution;
use crate::model::entry::Change;
use crate::model::refusal::{Asked, Refusal};
use crate::model::set::{SetPlay, Side};
use crate::model::state::State;
use rules::{Shirt, Team};

pub(crate) fn check(state: &State, team: Team, change: Change) -> Result<(), Refusal> {
    let play = state.on_floor();
    if !state.rules.line_ups || play.is_some_and(|play| !play.follows_places(team)) {
        // Nobody knows who stands on court: only written down.
        return Ok(());
    }
    let play = play.ok_or(Refusal::LiberoBeforeLineUps)?;
    let side = &play.sides[team];
    let known = &state.teams[team];
    match side.slots.iter().position(|s| s.libero == Some(change.out)) {
        Some(place) => check_leaves(state, play, team, place, change.into),
        None => {
            // A libero comes in for a player on court.
            let Some(place) = side.slots.iter().position(|s| s.on_court() == change.out) else {
                return Err(Refusal::NotOnCourt {
                    number: change.out,
                    asked: Asked::LiberoReplacement,
                });
            };
            if !known.is_libero(change.into) {
                return Err(Refusal::NotALibero {
                    number: change.into,
                });
            }
            if side.holds(change.into) {
                return Err(Refusal::OnCourt {
                    number: change.into,
                    asked: Asked::LiberoReplacement,
                });
            }
            if let Some((_, number)) = side.acting_libero() {
                return Err(Refusal::LiberoOnCourt { number });
            }
            check_comes(state, play, team, change.into)?;
            // A libero who stands in before the sanction stays; he or she cannot come for it.
            if known.barred(change.out, play.number).is_some() {
                return Err(Refusal::LeavesBySubstitution { number: change.out });
            }
            check_place(play, team, place, change.out, change.into)?;
            check_rally_between(side, play)
        }
    }
}

/// Whether a place is in the front row: places 2, 3 and 4 (7.4.1).
pub(crate) fn is_front(place: usize) -> bool {
    (1..=3).contains(&place)
}

/// The acting libero gives way to the player he or she stands in for, or to the other libero
/// (19.3.2.2).
fn check_leaves(
    state: &State,
    play: &SetPlay,
    team: Team,
    place: usize,
    into: Shirt,
) -> Result<(), Refusal> {
    let slot = play.sides[team].slots[place];
    let (libero, replaced) = (slot.on_court(), slot.player);
    let known = &state.teams[team];
    if !known.lists(into) {
        return Err(Refusal::NotListed { team, number: into });
    }
    let side = &play.sides[team];
    if into != replaced && side.holds(into) {
        return Err(Refusal::OnCourt {
            number: into,
            asked: Asked::LiberoReplacement,
        });
    }
    let to_libero = known.is_libero(into);
    if into != replaced && !to_libero {
        return Err(Refusal::NotForLibero { libero, replaced });
    }
    let only_declared = known.declared_libero == Some(libero);
    if to_libero {
        check_comes(state, play, team, into)?;
        if only_declared {
            return Err(Refusal::RegularReturnsFirst { libero, replaced });
        }
        check_place(play, team, place, libero, into)?;
    } else if let Some(why) = known.barred(into, play.number) {
        return Err(Refusal::PlayerBarred { number: into, why });
    }
    // One who has become unable to play leaves at once, and so does one whom a new list has no longer
    // as a libero; one who was only declared unable waits for a completed rally like any other
    // (19.3.2.1, 19.4.1).
    let at_once = known.is_sent_off(libero, play.number)
        || known.unable_libero == Some(libero)
        || (!known.is_libero(libero) && !only_declared);
    if at_once {
        Ok(())
    } else {
        check_rally_between(&play.sides[team], play)
    }
}

/// A libero comes only into the back row, and not to serve (19.3.1.1, 19.3.1.3).
fn check_place(
    play: &SetPlay,
    team: Team,
    place: usize,
    out: Shirt,
    libero: Shirt,
) -> Result<(), Refusal> {
    if is_front(place) {
        Err(Refusal::BackRowOnly { number: out })
    } else if place == 0 && play.serving == Some(team) {
        Err(Refusal::LiberoServes { number: libero })
    } else {
        Ok(())
    }
}

/// Whether a libero may come in at all now.
fn check_comes(state: &State, play: &SetPlay, team: Team, libero: Shirt) -> Result<(), Refusal> {
    match state.teams[team].barred(libero, play.number) {
        Some(why) => Err(Refusal::PlayerBarred {
            number: libero,
            why,
        }),
        None => Ok(()),
    }
}

/// One completed rally between two replacements (19.3.2.1). A penalty is a completed rally, so the
/// libero whom it brings to place 4 may leave at once.
fn check_rally_between(side: &Side, play: &SetPlay) -> Result<(), Refusal> {
    match side.libero_moved {
        Some(at) if at >= play.completed => Err(Refusal::RallyBetween),
        _ => Ok(()),
    }
}

/// Who could come in where the acting libero of a place cannot go on: the player he or she stands in for,
/// in the back row the other libero too; where that player was sent off, whoever could be substituted
/// for him or her. Somebody sent off comes in for nobody (21.3.2.1, 21.3.3.1).
pub(crate) fn could_come_in(state: &State, play: &SetPlay, team: Team, place: usize) -> Vec<Shirt> {
    let side = &play.sides[team];
    let known = &state.teams[team];
    let slot = side.slots[place];
    let can_play = |s: Shirt| known.barred(s, play.number).is_none();
    let mut all = if can_play(slot.player) {
        vec![slot.player]
    } else {
        substitution::could_come_in(state, play, team, slot.player)
    };
    if !is_front(place) {
        let others = known.liberos.iter().copied();
        all.extend(others.filter(|&s| !side.holds(s) && can_play(s)));
    }
    all
}

pub(crate) fn make(state: &mut State, team: Team, change: Change) {
    let comes = state.teams[team].is_libero(change.into);
    let known = &mut state.teams[team];
    for left in [&mut known.unable_libero, &mut known.declared_libero] {
        left.take_if(|libero| *libero == change.out);
    }
    let Some(play) = state.on_floor_mut() else {
        return;
    };
    let completed = play.completed;
    let side = &mut play.sides[team];
    if let Some(slot) = side.slots.iter_mut().find(|s| s.on_court() == change.out) {
        if comes && slot.player != change.into {
            slot.libero = Some(change.into);
        } else {
            slot.libero = None;
            slot.player = change.into;
        }
        side.libero_moved = Some(completed);
    }
}
