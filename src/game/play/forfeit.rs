//! A team that is incomplete, does not appear or refuses to play (6.4).

use std::sync::Arc;

use super::rally;
use crate::model::ending::{DecidedBy, Ending, SetRecord};
use crate::model::entry::Scope;
use crate::model::stage::{NextSet, Stage};
use crate::model::state::State;
use rules::{ByTeam, Score, Team};

/// The opponent gets the points, and sets, that are missing; the incomplete team keeps its own
/// (6.4.3).
pub(crate) fn incomplete(state: &mut State, team: Team, scope: Scope) {
    let number = state.next_number();
    let (opener, left) = (state.opener_to_come(), state.left_to_come());
    let record = match state.stage_beneath_mut() {
        Stage::Playing(play) => SetRecord {
            score: play.score,
            opener: play.opener,
            left: Some(play.left),
            play: Some((**play).clone()),
            ..lost(number, team)
        },
        Stage::NextSet(coming) => SetRecord {
            // Points due to the team for penalties on its opponent stand in the coming set.
            score: ByTeam::new(|t| {
                let penalties = coming.penalties[t.other()].len();
                let taken_over = coming.joined.map_or(0, |j| j.score[t]);
                u16::try_from(penalties)
                    .unwrap_or(u16::MAX)
                    .saturating_add(taken_over)
            }),
            opener,
            left,
            play: coming.ready.take().map(|r| *r),
            ..lost(number, team)
        },
        Stage::Suspended { .. } | Stage::Finished(_) => return,
    };
    let penalties = std::mem::take(&mut state.carried);
    state.stage = Stage::NextSet(NextSet {
        penalties,
        ..NextSet::default()
    });
    lose(state, record);
    while scope == Scope::Match && !rally::is_decided(state) {
        let record = lost(state.next_number(), team);
        lose(state, record);
    }
    rally::finish_if_decided(state, DecidedBy::Incomplete);
    if let (Scope::Match, Stage::Finished(ending)) = (scope, &mut state.stage) {
        ending.lost_by = Some(team);
    }
}

/// A set that a team loses without play.
fn lost(number: u8, team: Team) -> SetRecord {
    SetRecord {
        number,
        score: Score::default(),
        winner: team.other(),
        how: DecidedBy::Incomplete,
        opener: None,
        left: None,
        play: None,
    }
}

fn lose(state: &mut State, mut record: SetRecord) {
    let kept = record.score[record.winner.other()];
    record.score[record.winner] = state
        .rules
        .target_of(record.number)
        .points_to_win_against(kept);
    state.sets.push(Arc::new(record));
}

/// The match is lost in the fewest sets, each to nothing, whatever was played (6.4.1, 6.4.2).
pub(crate) fn default(state: &mut State, team: Team) {
    lose_all(state, team, DecidedBy::Default);
}

/// The same, however it comes.
pub(crate) fn lose_all(state: &mut State, team: Team, how: DecidedBy) {
    let winner = team.other();
    let left_over = state.shown().cloned().map(Box::new);
    let needed = state
        .rules
        .sets_to_win()
        .unwrap_or_else(|| state.rules.sets_at_most());
    let made = (1..=needed)
        .map(|number| {
            let mut record = SetRecord {
                how,
                ..lost(number, team)
            };
            record.score[winner] = state.rules.target_of(number).points_to_win_against(0);
            Arc::new(record)
        })
        .collect();
    let voided = std::mem::replace(&mut state.sets, made);
    // Whatever was asked about them is decided so.
    state.questions.clear();
    state.stage = Stage::Finished(Ending {
        how,
        lost_by: Some(team),
        left_over,
        voided,
        waiting: NextSet::default(),
    });
}
