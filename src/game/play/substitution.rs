//! Substitutions: regular, forced and exceptional (15.2, 15.5 to 15.8, 15.10.4).

mod forced;

use super::line_up;
use super::request;
use crate::model::entry::{Change, Forced, Kind};
use crate::model::refusal::{Asked, Refusal};
use crate::model::set::{SetPlay, Side, Slot};
use crate::model::state::State;
use crate::model::team_state::OutFor;
use forced::{check_forced, forced_by};
use rules::{Shirt, SubstitutionPolicy, Team};

pub(crate) use forced::could_come_in;

pub(crate) fn check(
    state: &State,
    team: Team,
    changes: &[Change],
    reason: Option<Forced>,
) -> Result<(), Refusal> {
    if changes.is_empty() {
        return Err(Refusal::NoChange);
    }
    let play = state.on_floor();
    if !state.rules.line_ups || play.is_some_and(|play| !play.follows_places(team)) {
        return check_counted(state, team, changes.len(), reason);
    }
    let play = play.ok_or(Refusal::NobodyOnCourt)?;
    check_named_once(changes)?;
    let object = |change: &Change| check_object(state, play, team, *change);
    let Some(because) = changes.iter().find_map(|c| object(c).err()) else {
        return check_request(state, play, team, changes, reason, false);
    };
    // Beside a change that cannot be carried out the others are judged all the same (15.9.1, 15.10.4).
    let others: Vec<Change> = changes
        .iter()
        .copied()
        .filter(|c| object(c).is_ok())
        .collect();
    let legal = match check_request(state, play, team, &others, reason, true) {
        Ok(()) => others,
        Err(Refusal::PartlyIllegal { legal, .. }) => legal,
        Err(_) => Vec::new(),
    };
    Err(partly(legal, because))
}

/// Judges changes that can all be carried out; `in_part` says that the request held others too.
fn check_request(
    state: &State,
    play: &SetPlay,
    team: Team,
    changes: &[Change],
    reason: Option<Forced>,
    in_part: bool,
) -> Result<(), Refusal> {
    let forced = |change: &Change| forced_by(state, play, team, *change, reason);
    let side = &play.sides[team];
    // The legal part of a request that was rejected for its other part is no new request (15.10.4).
    let is_open = changes.iter().all(|c| side.open_part.contains(c));
    if !is_open && changes.iter().any(|c| forced(c).is_none()) {
        check_may_ask(state, play, team, changes, in_part)?;
    }
    check_all(changes, |change, made| match forced(&change) {
        None => check_change(state, play, team, change, made),
        Some(forced) => check_forced(state, play, team, change, forced, made),
    })
}

/// Where nobody is followed a substitution is only counted, before a set in the one to come. A forced one is
/// no request (15.2.3).
fn check_counted(
    state: &State,
    team: Team,
    wanted: usize,
    reason: Option<Forced>,
) -> Result<(), Refusal> {
    let is_request = reason.is_none();
    match state.on_floor() {
        Some(play) => {
            if is_request {
                request::check_open(play, team)?;
            }
            check_count(state, play.sides[team].substitutions, wanted)
        }
        None if is_request && state.coming().is_some_and(|c| c.barred[team]) => {
            Err(Refusal::RequestBarred { team })
        }
        None => check_count(state, 0, wanted),
    }
}

/// Whether a team may ask for regular changes now. A delay from a rejected request may have been written
/// down before the request it came from, so a barred team's request that is illegal only in part is
/// refused for that part (15.10.4).
fn check_may_ask(
    state: &State,
    play: &SetPlay,
    team: Team,
    changes: &[Change],
    in_part: bool,
) -> Result<(), Refusal> {
    let side = &play.sides[team];
    if side.request_used {
        request::check_open(play, team)?;
        return Err(Refusal::SecondRequest { team });
    }
    match request::check_open(play, team) {
        Err(Refusal::RequestBarred { .. })
            if side.open_part.is_empty() && (in_part || changes.len() > 1) =>
        {
            let judged = check_all(changes, |change, made| {
                check_change(state, play, team, change, made)
            });
            match judged {
                Ok(()) if in_part => Ok(()),
                Err(Refusal::PartlyIllegal { legal, because }) => {
                    Err(Refusal::PartlyIllegal { legal, because })
                }
                Ok(()) | Err(_) => Err(Refusal::RequestBarred { team }),
            }
        }
        open => open,
    }
}

/// Keeps open what is legal in a request that was refused for its other part.
pub(crate) fn keep_open(state: &mut State, kind: &Kind, refusal: &Refusal) {
    if let (Kind::Substitution { team, .. }, Refusal::PartlyIllegal { legal, .. }) = (kind, refusal)
    {
        if let Some(play) = state.on_floor_mut() {
            play.sides[*team].open_part.clone_from(legal);
        }
    }
}

/// Nobody goes or comes twice in one request.
fn check_named_once(changes: &[Change]) -> Result<(), Refusal> {
    for (i, change) in changes.iter().enumerate() {
        let named = |s: Shirt| changes[..i].iter().any(|c| c.out == s || c.into == s);
        if let Some(number) = [change.out, change.into].into_iter().find(|&s| named(s)) {
            return Err(Refusal::NamedTwice { number });
        }
    }
    Ok(())
}

/// What has no object cannot be carried out, whoever insists.
fn check_object(state: &State, play: &SetPlay, team: Team, change: Change) -> Result<(), Refusal> {
    let side = &play.sides[team];
    if side.acting_libero().is_some_and(|(_, l)| l == change.out) {
        return Err(Refusal::LiberoNotSubstituted { number: change.out });
    }
    if side.place_of(change.out).is_none() {
        return Err(Refusal::NotOnCourt {
            number: change.out,
            asked: Asked::Substitution,
        });
    }
    if !state.teams[team].lists(change.into) {
        return Err(Refusal::UnlistedSubstitute {
            team,
            number: change.into,
        });
    }
    if side.holds(change.into) {
        return Err(Refusal::OnCourt {
            number: change.into,
            asked: Asked::Substitution,
        });
    }
    Ok(())
}

/// Who comes in must be somebody who may play, and no libero (15.5.1).
fn check_newcomer(state: &State, play: &SetPlay, team: Team, number: Shirt) -> Result<(), Refusal> {
    if state.teams[team].is_libero(number) {
        return Err(Refusal::LiberoNoSubstitute { number });
    }
    match state.teams[team].barred(number, play.number) {
        Some(why) => Err(Refusal::PlayerBarred { number, why }),
        None => Ok(()),
    }
}

/// A request is granted whole; if part of it is illegal, the refusal names the legal part (15.10.4).
fn check_all(
    changes: &[Change],
    check: impl Fn(Change, usize) -> Result<(), Refusal>,
) -> Result<(), Refusal> {
    let mut legal = Vec::new();
    let mut because = None;
    for &change in changes {
        match check(change, legal.len()) {
            Ok(()) => legal.push(change),
            Err(refusal) => {
                because.get_or_insert(refusal);
            }
        }
    }
    because.map_or(Ok(()), |refusal| Err(partly(legal, refusal)))
}

/// The refusal of a request, with the part of it that is legal, where there is one.
fn partly(legal: Vec<Change>, because: Refusal) -> Refusal {
    if legal.is_empty() {
        return because;
    }
    Refusal::PartlyIllegal {
        legal,
        because: Box::new(because),
    }
}

/// Whether one change is a regular one; `made` others of the same request count before it.
fn check_change(
    state: &State,
    play: &SetPlay,
    team: Team,
    change: Change,
    made: usize,
) -> Result<(), Refusal> {
    let side = &play.sides[team];
    let limits = state.rules.substitutions;
    check_newcomer(state, play, team, change.into)?;
    check_count(state, side.substitutions, made + 1)?;
    let Some(slot) = side.place_of(change.out).map(|place| side.slots[place]) else {
        return Err(Refusal::NotOnCourt {
            number: change.out,
            asked: Asked::Substitution,
        });
    };
    match limits.policy {
        SubstitutionPolicy::Paired => check_paired(side, &slot, change.into)?,
        SubstitutionPolicy::SamePlace => check_same_place(side, &slot, change.into)?,
        SubstitutionPolicy::Free => {}
    }
    match limits.entries_per_player {
        Some(most) if side.entries_of(change.into) >= usize::from(most) => {
            Err(Refusal::EntriesUsed {
                number: change.into,
                most,
            })
        }
        _ => Ok(()),
    }
}

/// Whether so many more fit into the limit of the set (15.1).
fn check_count(state: &State, used: u8, wanted: usize) -> Result<(), Refusal> {
    match state.rules.substitutions.per_set {
        Some(most) if usize::from(used) + wanted > usize::from(most) => {
            Err(Refusal::NoSubstitutionLeft { used, wanted, most })
        }
        _ => Ok(()),
    }
}

/// A starter leaves once and returns once, to the own place (15.6.1); a substitute comes in once, for
/// a starter, and only that starter comes in for him or her (15.6.2).
fn check_paired(side: &Side, slot: &Slot, into: Shirt) -> Result<(), Refusal> {
    if slot.closed {
        return Err(Refusal::ClosedByExceptional {
            number: slot.player,
        });
    }
    let times_in_place = side
        .entered
        .iter()
        .filter(|e| e.starter == slot.starter)
        .count();
    match times_in_place {
        // The starter has not left yet.
        1 => match side.bound_to(into) {
            None => Ok(()),
            Some(starter) if starter == into => Err(Refusal::OtherPlace {
                number: into,
                now_held_by: holder(side, starter),
            }),
            Some(_) => Err(Refusal::SubstituteUsed { number: into }),
        },
        2 if into == slot.starter => Ok(()),
        2 => Err(Refusal::OnlyStarterReturns {
            out: slot.player,
            starter: slot.starter,
        }),
        _ => Err(Refusal::PlaceClosed {
            number: slot.player,
        }),
    }
}

/// Who has been on court in a place stays bound to that place for the set.
fn check_same_place(side: &Side, slot: &Slot, into: Shirt) -> Result<(), Refusal> {
    match side.bound_to(into) {
        Some(starter) if starter != slot.starter => Err(Refusal::OtherPlace {
            number: into,
            now_held_by: holder(side, starter),
        }),
        _ => Ok(()),
    }
}

fn holder(side: &Side, starter: Shirt) -> Shirt {
    side.slots
        .iter()
        .find(|s| s.starter == starter)
        .map_or(starter, |s| s.player)
}

/// Who could come in regularly for a player, if a request were open.
fn legal_for(state: &State, play: &SetPlay, team: Team, out: Shirt, made: usize) -> Vec<Shirt> {
    bench(state, play, team)
        .filter(|&into| check_change(state, play, team, Change { out, into }, made).is_ok())
        .collect()
}

/// Whether whoever has just gone out could come back for the same player, if a request were open.
pub(crate) fn may_come_back(state: &State, play: &SetPlay, team: Team, made: Change) -> bool {
    let back = Change {
        out: made.into,
        into: made.out,
    };
    check_change(state, play, team, back, 0).is_ok()
}

/// Listed players who hold no place on court and are no liberos.
pub(crate) fn bench<'a>(
    state: &'a State,
    play: &'a SetPlay,
    team: Team,
) -> impl Iterator<Item = Shirt> + 'a {
    let side = &play.sides[team];
    state.teams[team]
        .listed()
        .filter(move |&s| !side.holds(s) && !state.teams[team].is_libero(s))
}

pub(crate) fn make(state: &mut State, team: Team, changes: &[Change], reason: Option<Forced>) {
    line_up::count_ahead(state);
    for &change in changes {
        if reason == Some(Forced::Injury) {
            state.teams[team].note_hurt(change.out);
        }
        let Some(play) = state.on_floor() else {
            return;
        };
        let forced = forced_by(state, play, team, change, reason).is_some();
        let exceptional = forced
            && play.follows_places(team)
            && check_change(state, play, team, change, 0).is_err();
        if exceptional {
            let out = &mut state.teams[team].out;
            if !out.iter().any(|(s, _)| *s == change.out) {
                out.push((change.out, OutFor::Exceptional));
            }
        }
        let Some(play) = state.on_floor_mut() else {
            return;
        };
        let side = &mut play.sides[team];
        side.bring_in(change, exceptional);
        // A forced change does not use up the request (15.2.3).
        if !forced {
            side.request_used = true;
            side.open_part.clear();
        }
    }
}
