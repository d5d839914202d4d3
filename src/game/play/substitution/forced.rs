//! Changes that are forced: an injury, or a player who was sent off (15.7, 15.8).

use super::{bench, check_change, check_newcomer, legal_for};
use crate::model::entry::{Change, Forced};
use crate::model::refusal::Refusal;
use crate::model::set::SetPlay;
use crate::model::state::State;
use crate::model::team_state::Barred;
use rules::{Shirt, Team};

/// What forces a change: the reason given, or that the player was sent off, which the log knows.
pub(super) fn forced_by(
    state: &State,
    play: &SetPlay,
    team: Team,
    change: Change,
    reason: Option<Forced>,
) -> Option<Forced> {
    reason.or_else(
        || match state.teams[team].barred(change.out, play.number)? {
            Barred::Expelled => Some(Forced::Expelled),
            Barred::Out(_) => Some(Forced::Disqualified),
        },
    )
}

/// A forced change is a regular one where that is legal, else an exceptional one (15.7, 15.8).
pub(super) fn check_forced(
    state: &State,
    play: &SetPlay,
    team: Team,
    change: Change,
    forced: Forced,
    made: usize,
) -> Result<(), Refusal> {
    let sent_off = state.teams[team].barred(change.out, play.number).is_some();
    if forced != Forced::Injury && !sent_off {
        return Err(Refusal::NotSentOff { number: change.out });
    }
    if check_change(state, play, team, change, made).is_ok() {
        return Ok(());
    }
    check_newcomer(state, play, team, change.into)?;
    let into = legal_for(state, play, team, change.out, made);
    if into.is_empty() {
        Ok(())
    } else {
        Err(Refusal::LegalChangeExists {
            out: change.out,
            into,
        })
    }
}

/// Everybody who could come in for a player who must leave: regularly if anybody can, else
/// exceptionally (15.7: anybody not on court but a libero and the player a libero stands in for).
pub(crate) fn could_come_in(state: &State, play: &SetPlay, team: Team, out: Shirt) -> Vec<Shirt> {
    let legal = legal_for(state, play, team, out, 0);
    if legal.is_empty() {
        bench(state, play, team)
            .filter(|&s| state.teams[team].barred(s, play.number).is_none())
            .collect()
    } else {
        legal
    }
}
