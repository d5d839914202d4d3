//! Rallies, their causes, replays, and what a point may end (6.1, 6.2, 6.3, 12.2).

use std::sync::Arc;

use crate::model::ending::{DecidedBy, Ending, SetRecord};
use crate::model::entry::By;
use crate::model::refusal::{InSet, Refusal};
use crate::model::set::PointFor;
use crate::model::stage::{NextSet, Stage};
use crate::model::state::{RallyNote, State};
use rules::{Cause, Edition, SetLimit, Sets, Team};

/// A rally that was played is never refused while a set runs: a point must not be lost to
/// bookkeeping.
pub(crate) fn check(state: &State) -> Result<(), Refusal> {
    match state.stage {
        Stage::Playing(_) => Ok(()),
        _ => Err(Refusal::NoSetRunning {
            asked: InSet::Rally,
        }),
    }
}

pub(crate) fn play(state: &mut State, n: u32, won_by: Team, cause: Option<Cause>, by: Option<By>) {
    let serving = state.play().and_then(|play| play.serving);
    let impossible = |&cause: &Cause| stands_free(state, cause, serving, won_by).is_some();
    let dropped = cause.filter(impossible).map(|_| n);
    if let Some(cause) = cause.filter(|_| dropped.is_none()) {
        Arc::make_mut(&mut state.causes).insert(
            n,
            RallyNote {
                cause,
                by,
                seen_by: None,
            },
        );
    }
    super::notes::end_pauses(state);
    point(state, n, won_by, PointFor::Rally);
    // The rally counts, its reason does not.
    state.dropped_cause = dropped;
}

/// The serving team, where it lost a rally for a reason that it cannot have given: under the 2025 text it
/// may stand anywhere in its court (7.4).
fn stands_free(state: &State, cause: Cause, served: Option<Team>, won_by: Team) -> Option<Team> {
    let free = cause == Cause::PositionFault && state.rules.edition == Edition::E2025;
    served.filter(|&team| free && team != won_by)
}

/// Gives a point in the running set and looks what it ends.
pub(crate) fn point(state: &mut State, n: u32, to: Team, why: PointFor) {
    if let Stage::Playing(play) = state.stage_beneath_mut() {
        play.award(to, why, n);
    }
    for team in Team::BOTH {
        // Whoever played on was not unable to.
        state.teams[team].unable_libero = None;
    }
    state.dropped_cause = None;
    super::questions::expire(&mut state.questions);
    settle(state);
}

pub(crate) fn check_explain(state: &State, entry: u32, cause: Cause) -> Result<(), Refusal> {
    let rally = state.rally(entry).ok_or(Refusal::NoSuchRally { entry })?;
    match stands_free(state, cause, rally.served, rally.to) {
        Some(serving) => Err(Refusal::ServingTeamStandsFree { serving }),
        None => Ok(()),
    }
}

pub(crate) fn explain(state: &mut State, entry: u32, said: RallyNote) {
    state.dropped_cause.take_if(|rally| *rally == entry);
    Arc::make_mut(&mut state.causes).insert(entry, said);
}

/// No point, same server (6.1.2.2, 17.1.1, 17.2). A libero leaves at once only where it was said that he or
/// she was hurt.
pub(crate) fn replay(state: &mut State, hurt: Option<By>) {
    if let Some(By {
        team,
        number: Some(number),
    }) = hurt
    {
        state.teams[team].note_hurt(number);
        if state.teams[team].is_libero(number) {
            state.teams[team].unable_libero = Some(number);
        }
    }
    if let Stage::Playing(play) = &mut state.stage {
        play.replay_open = true;
    }
}

/// The organiser's clock ends a set only where the competition plays by time.
pub(crate) fn check_time_up(state: &State) -> Result<(), Refusal> {
    check(state)?;
    match state.rules.set_limit {
        Some(SetLimit::Minutes(_)) => Ok(()),
        Some(SetLimit::Rallies(_)) | None => Err(Refusal::NotByTime),
    }
}

/// Whoever leads has won the set; where the teams are level one more rally decides.
pub(crate) fn time_up(state: &mut State) {
    if let Stage::Playing(play) = &mut state.stage {
        play.time_up = true;
    }
    settle(state);
}

/// Ends the set, and the match, where the score does.
pub(crate) fn settle(state: &mut State) {
    let winner = state.play().and_then(|play| play.winner(&state.rules));
    if let Some(winner) = winner {
        close(state, winner, DecidedBy::Played);
    }
}

/// Closes the running set for `winner`.
pub(crate) fn close(state: &mut State, winner: Team, how: DecidedBy) {
    let next = NextSet {
        penalties: std::mem::take(&mut state.carried),
        ..NextSet::default()
    };
    let stage = state.stage_beneath_mut();
    if let Stage::Playing(play) = std::mem::replace(stage, Stage::NextSet(next)) {
        state.sets.push(Arc::new(SetRecord {
            number: play.number,
            score: play.score,
            winner,
            how,
            opener: play.opener,
            left: Some(play.left),
            play: Some(*play),
        }));
        finish_if_decided(state, how);
    }
}

/// Whether the sets played so far decide the match (6.3.1).
pub(crate) fn is_decided(state: &State) -> bool {
    let won = state.sets_won();
    match state.rules.sets {
        Sets::Fixed(n) => state.sets.len() >= usize::from(n),
        Sets::BestOf(_) => state
            .rules
            .sets_to_win()
            .is_some_and(|needed| won.a.max(won.b) >= needed),
    }
}

/// Ends the match where the sets decide it.
pub(crate) fn finish_if_decided(state: &mut State, how: DecidedBy) {
    if !is_decided(state) || matches!(state.stage, Stage::Finished(_)) {
        return;
    }
    let cut_off = std::mem::replace(&mut state.stage, Stage::NextSet(NextSet::default()));
    let beneath = match cut_off {
        Stage::Suspended { then, .. } => *then,
        stage => stage,
    };
    let (left_over, waiting) = match beneath {
        Stage::Playing(play) => (Some(play), NextSet::default()),
        Stage::NextSet(coming) => (None, coming),
        Stage::Suspended { .. } | Stage::Finished(_) => (None, NextSet::default()),
    };
    state.stage = Stage::Finished(Ending {
        how,
        lost_by: None,
        left_over,
        voided: Vec::new(),
        waiting,
    });
}
