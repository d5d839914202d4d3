//! Protests: announced at once by the game captain after the explanation (5.1.2.1), written on the sheet
//! after the match (5.1.3, 23.2.4). What was not announced is not written.

use std::sync::Arc;

use super::game_captain;
use crate::model::entry::Protested;
use crate::model::protest::Protest;
use crate::model::stage::Phase;
use crate::model::state::State;
use crate::Refusal;
use rules::{Shirt, Team};

pub(crate) fn check(state: &State, team: Team, number: Option<Shirt>) -> Result<(), Refusal> {
    let speaker = game_captain::last_speaker(state, team).map(game_captain::Speaker::number);
    match (number, speaker) {
        (Some(number), Some(speaker)) if number != speaker => {
            Err(Refusal::NotGameCaptain { number, speaker })
        }
        _ => Ok(()),
    }
}

pub(crate) fn announce(
    state: &mut State,
    entry: u32,
    team: Team,
    number: Option<Shirt>,
    text: &str,
) {
    let speaker = game_captain::last_speaker(state, team).map(game_captain::Speaker::number);
    let protest = Protest {
        entry,
        team,
        number: number.or(speaker),
        text: text.to_owned(),
        set: state.set_number(),
        score: state.score(),
        written: None,
    };
    Arc::make_mut(&mut state.protests).push(protest);
}

pub(crate) fn check_statement(state: &State, about: Protested) -> Result<(), Refusal> {
    let entry = match about {
        Protested::Entry(entry) => entry,
        Protested::Unannounced(team) => return Err(Refusal::NotAnnounced { team }),
    };
    let protest = state.protests.iter().find(|p| p.entry == entry);
    let protest = protest.ok_or(Refusal::NoSuchProtest { entry })?;
    if let Some((entry, _)) = protest.written {
        return Err(Refusal::ProtestWritten { entry });
    }
    if state.phase() != Phase::Finished {
        return Err(Refusal::ProtestAfterMatch);
    }
    Ok(())
}

pub(crate) fn write(state: &mut State, n: u32, about: Protested, text: &str) {
    // What was never announced stands in the log and among the remarks alone.
    if let Protested::Entry(entry) = about {
        let protests = Arc::make_mut(&mut state.protests);
        if let Some(protest) = protests.iter_mut().find(|p| p.entry == entry) {
            protest.written = Some((n, text.to_owned()));
        }
    }
}
