//! Requests that cannot be granted, and delays (15.2, 15.11, chapter 16).

use std::sync::Arc;

use crate::model::entry::Who;
use crate::model::refusal::{InSet, Refusal};
use crate::model::sanction::{Sanction, SanctionKind};
use crate::model::set::{PointFor, SetPlay};
use crate::model::stage::Stage;
use crate::model::state::State;
use rules::{Score, Team};

/// Whether a team may ask for a regular interruption at all just now.
pub(crate) fn check_open(play: &SetPlay, team: Team) -> Result<(), Refusal> {
    if play.replay_open {
        // A replayed rally is not a completed one (6.1.3), so no interruption has begun.
        Err(Refusal::AfterReplay)
    } else if play.sides[team].barred {
        Err(Refusal::RequestBarred { team })
    } else {
        Ok(())
    }
}

/// The first improper request of a team in the match is noted (15.11.2), any further one is a delay
/// (15.11.3).
pub(crate) fn improper(state: &mut State, n: u32, team: Team) {
    let before = state.teams[team].improper_requests;
    let count = before.saturating_add(1);
    state.teams[team].improper_requests = count;
    if before == 0 {
        record(state, n, team, SanctionKind::ImproperRequest);
    } else {
        delay(state, n, team, true);
    }
    if let Some(line) = Arc::make_mut(&mut state.sanctions).last_mut() {
        line.improper = Some(count);
    }
}

/// The first delay of a team in the match is a warning (16.2.2), each further one costs a point and
/// the service (16.2.3); between the sets it counts in the next one (16.2.4).
pub(crate) fn delay(state: &mut State, n: u32, team: Team, request: bool) {
    let before = state.teams[team].delays;
    state.teams[team].delays = before.saturating_add(1);
    if before == 0 {
        record(state, n, team, SanctionKind::DelayWarning);
        if request {
            bar(state, team);
        }
    } else {
        record(state, n, team, SanctionKind::DelayPenalty);
        penalty(state, n, team);
    }
}

/// After a request rejected with a delay warning the team may ask for nothing more until a completed
/// rally (15.2.4).
fn bar(state: &mut State, team: Team) {
    if let Stage::NextSet(coming) = &mut state.stage {
        coming.barred[team] = true;
    }
    if let Some(play) = state.on_floor_mut() {
        play.sides[team].barred = true;
    }
}

/// A point and the service for the opponent, now or when the coming set begins.
pub(crate) fn penalty(state: &mut State, n: u32, team: Team) {
    match state.stage_beneath_mut() {
        Stage::Playing(_) => super::rally::point(state, n, team.other(), PointFor::Penalty),
        Stage::NextSet(coming) => coming.penalties[team].push(n),
        Stage::Suspended { .. } | Stage::Finished(_) => {}
    }
}

/// Writes a line into the sanctions box, with the score before it.
pub(crate) fn record(state: &mut State, entry: u32, team: Team, kind: SanctionKind) {
    record_for(state, entry, team, kind, None);
}

/// The same with a person.
pub(crate) fn record_for(
    state: &mut State,
    entry: u32,
    team: Team,
    kind: SanctionKind,
    who: Option<Who>,
) {
    let set = state.set_at_hand();
    let score = state.play().map_or_else(Score::default, |p| p.score);
    Arc::make_mut(&mut state.sanctions).push(Sanction {
        entry,
        set,
        team,
        kind,
        who,
        score,
        improper: None,
    });
}

/// Only a replacement made in this interruption can have come late.
pub(crate) fn check_late_replacement(state: &State, team: Team) -> Result<(), Refusal> {
    let Stage::Playing(play) = &state.stage else {
        return Err(Refusal::NoSetRunning {
            asked: InSet::Rally,
        });
    };
    let just_made = play.sides[team].libero_moved == Some(play.completed);
    if just_made || !play.follows_places(team) {
        Ok(())
    } else {
        Err(Refusal::NoReplacementNow { team })
    }
}

/// The first late libero replacement of a team in the match is let pass and its captain is told (19.3.2.5);
/// each further one is a delay, and the replacement stands (19.3.2.6).
pub(crate) fn late_replacement(state: &mut State, n: u32, team: Team) {
    if std::mem::replace(&mut state.teams[team].late_replacement_noted, true) {
        delay(state, n, team, false);
    }
}
