//! Opening the match, and the team lists (chapter 4).

use std::sync::Arc;

use super::line_up::{may_start, withdraw};
use super::rally;
use crate::model::entry::{Amendment, Detail, Heading, TeamList};
use crate::model::stage::{Phase, Stage};
use crate::model::state::State;
use crate::model::team_state::OutFor;
use crate::Refusal;
use rules::{ByTeam, Shirt};

pub(crate) fn check_match(state: &State, heading: &Heading) -> Result<(), Refusal> {
    if state.heading.is_some() {
        return Err(Refusal::MatchOpen);
    }
    heading.rules.check().map_err(Refusal::BadRules)
}

pub(crate) fn open(state: &mut State, heading: &Heading) {
    state.rules = heading.rules;
    state.heading = Some(Arc::new(heading.clone()));
}

/// Rules change only before the match, and where line-ups were not kept so far: a tally that grows
/// into a match. What was played must not be over by the new ones.
pub(crate) fn check_amendment(state: &State, given: &Amendment) -> Result<(), Refusal> {
    let Some(rules) = &given.rules else {
        return Ok(());
    };
    rules.check().map_err(Refusal::BadRules)?;
    if !state.begun() {
        return Ok(());
    }
    if state.rules.line_ups || state.phase() == Phase::Finished {
        return Err(Refusal::RulesSettled);
    }
    let mut grown = state.clone();
    grown.rules = *rules;
    let set_over = state.play().is_some_and(|p| p.winner(rules).is_some());
    if set_over || rally::is_decided(&grown) {
        return Err(Refusal::RulesSettled);
    }
    Ok(())
}

/// The heading with what was left for later.
pub(crate) fn amend(state: &mut State, given: &Amendment) {
    let Some(heading) = &mut state.heading else {
        return;
    };
    let heading = Arc::make_mut(heading);
    if let Some(rules) = given.rules {
        heading.rules = rules;
        state.rules = rules;
        // Line-ups for the set to come were made for other rules.
        if let Stage::NextSet(coming) = &mut state.stage {
            coming.line_ups = ByTeam::default();
            coming.kept = ByTeam::default();
            coming.ready = None;
        }
    }
    for detail in Detail::ALL {
        let given = &given.details[detail];
        if given.is_some() {
            heading.details[detail].clone_from(given);
        }
    }
    for (team, name) in given.names.iter() {
        if let Some(name) = name {
            heading.names[team].clone_from(name);
        }
    }
}

pub(crate) fn check_list(state: &State, list: &TeamList) -> Result<(), Refusal> {
    let numbers: Vec<Shirt> = list.players.iter().map(|p| p.number).collect();
    if let Some(i) = (1..numbers.len()).find(|&i| numbers[..i].contains(&numbers[i])) {
        return Err(Refusal::NumberTwice { number: numbers[i] });
    }
    let captains: Vec<Shirt> = list
        .players
        .iter()
        .filter(|p| p.captain)
        .map(|p| p.number)
        .collect();
    if let [first, second, ..] = captains[..] {
        return Err(Refusal::TwoCaptains { first, second });
    }
    // A list that was never handed in, as in a tally, can still come.
    let closed = state.begun() && state.teams[list.team].list.is_some();
    if closed || state.phase() == Phase::Finished {
        return Err(Refusal::ListClosed);
    }
    let rules = state.rules();
    if numbers.len() > usize::from(rules.roster.max) {
        return Err(Refusal::TooManyPlayers {
            players: numbers.len(),
            most: rules.roster.max,
        });
    }
    let (lowest, highest) = (rules.roster.min_number, rules.roster.max_number);
    if let Some(&number) = numbers.iter().find(|n| n.0 < lowest || n.0 > highest) {
        return Err(Refusal::NumberOutOfRange {
            number,
            lowest,
            highest,
        });
    }
    let liberos = list.players.iter().filter(|p| p.libero).count();
    if liberos > usize::from(rules.liberos) {
        return Err(Refusal::TooManyLiberos {
            liberos,
            most: rules.liberos,
        });
    }
    Ok(())
}

/// The last list handed in counts; a line-up that it does not bear any more has to be handed in anew.
pub(crate) fn take_list(state: &mut State, list: &TeamList) {
    let begun = state.begun();
    let team = &mut state.teams[list.team];
    if !begun {
        // Before the match a new list names the liberos anew.
        team.out.retain(|(_, why)| *why != OutFor::Redesignated);
    }
    team.liberos = list
        .players
        .iter()
        .filter(|p| p.libero)
        .map(|p| p.number)
        .collect();
    team.list = Some(Arc::new(list.clone()));
    let given = state.line_up_given(list.team).unwrap_or_default();
    let borne = given
        .iter()
        .all(|&s| may_start(state, list.team, s).is_ok());
    if !borne {
        withdraw(state, list.team);
    }
}
