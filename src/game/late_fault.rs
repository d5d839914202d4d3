//! Faults found late: which points go, which stay, who serves and how the order is put right
//! (7.3.5, 7.7, 15.9.2, 19.3.2.9).

use std::sync::Arc;

use super::ask;
use super::ending::{Ending, How, SetRecord};
use super::entry::{Fault, Found, LateFault};
use super::line_up;
use super::rally;
use super::set::{PointFor, SetPlay};
use super::stage::{Coming, Stage};
use super::state::State;
use super::Refusal;
use crate::rules::{Score, Team};

pub(super) fn check(state: &State, fault: &LateFault) -> Result<(), Refusal> {
    let play = at_hand(state)?;
    let positions = fault
        .positions
        .as_ref()
        .filter(|_| play.follows_places(fault.team));
    if let Some(positions) = positions {
        line_up::check_numbers(state, positions)?;
        let team = fault.team;
        if let Some(&number) = positions.iter().find(|&&s| !state.teams[team].lists(s)) {
            return Err(Refusal::NotListed { team, number });
        }
    }
    check_since(state, play, fault)?;
    let known = &state.teams[fault.team];
    let mut liberos = positions
        .into_iter()
        .flatten()
        .filter(|&&s| known.is_libero(s));
    match (liberos.next(), liberos.next()) {
        (Some(&number), Some(_)) => Err(Refusal::LiberoOnCourt { number }),
        _ => Ok(()),
    }
}

fn check_since(state: &State, play: &SetPlay, fault: &LateFault) -> Result<(), Refusal> {
    let Some(since) = fault.since else {
        return Ok(());
    };
    let set = since.set.unwrap_or(play.number);
    if set == play.number {
        return stood(play, since.score);
    }
    // A line-up ends with its set, and a decision can be put right only until the next one begins
    // (FIVB Casebook 2024, case 7.5); a player who is not on the list is wrong in every set (7.3.5.4).
    if set == 0 || set > play.number {
        return Err(Refusal::SetNotPlayed { set });
    }
    let earlier = state.sets().find(|s| s.number == set);
    match earlier {
        Some(record) if fault.fault == Fault::UnregisteredPlayer => match &record.play {
            // A set that was lost for such a player already is not lost once more.
            Some(play) if record.how != How::Unregistered => stood(play, since.score),
            _ => Err(Refusal::NotByPlay { set }),
        },
        _ => Err(Refusal::EarlierSet {
            set,
            now: play.number,
        }),
    }
}

fn stood(play: &SetPlay, score: Score) -> Result<(), Refusal> {
    match play.moment(score) {
        Some(_) => Ok(()),
        None => Err(Refusal::ScoreNeverStood {
            asked: score,
            nearest: play.nearest(score),
        }),
    }
}

impl State {
    /// The set that a fault found now can put right: the one played, or the last one until the next
    /// begins.
    #[must_use]
    pub fn correctable(&self) -> Option<&SetPlay> {
        at_hand(self).ok()
    }
}

/// The same, or why there is none.
pub(super) fn at_hand(state: &State) -> Result<&SetPlay, Refusal> {
    match &state.stage {
        Stage::Playing(play) => Ok(play),
        Stage::Suspended { .. } => Err(Refusal::Suspended),
        Stage::Coming(Coming { again: Some(_), .. }) => Err(Refusal::NothingPlayed),
        Stage::Coming(_) | Stage::Finished(_) => {
            let last = state.sets.last().ok_or(Refusal::NothingPlayed)?;
            match &last.play {
                Some(play) if last.how == How::Played => Ok(play),
                _ => Err(Refusal::NotByPlay { set: last.number }),
            }
        }
    }
}

pub(super) fn correct(state: &mut State, n: u32, fault: &LateFault) {
    let team = fault.team;
    let Ok(now) = at_hand(state).map(|play| play.number) else {
        return;
    };
    let earlier = fault
        .since
        .and_then(|s| Some((s.set.filter(|&set| set < now)?, s.score)));
    let mut waiting = None;
    // Found between the sets, a fault of an earlier set leaves nothing on court to put right.
    if earlier.is_none() || matches!(state.stage, Stage::Playing(_)) {
        waiting = reopen(state);
        correct_set(state, n, fault, earlier.is_some());
    }
    match earlier {
        Some((set, score)) if score == Score::default() => {
            lose_earlier_sets(state, team, set, Beginning::ThatSet);
        }
        // Since a score inside an earlier set: the text does not say what becomes of that set.
        Some((set, _)) => ask::unregistered_inside(&mut state.questions, n, team, set),
        None => {}
    }
    rally::settle(state);
    // A set that stays won closes again at once, and what was handed in for the next one stands.
    match (&mut state.stage, waiting) {
        (Stage::Coming(coming), Some(waiting)) => *coming = waiting,
        (Stage::Finished(ending), Some(waiting)) => ending.waiting = waiting,
        _ => {}
    }
}

/// Brings the last set back on court; what waits for the next one is given back.
pub(super) fn reopen(state: &mut State) -> Option<Coming> {
    if matches!(state.stage, Stage::Playing(_)) {
        return None;
    }
    let play = state.sets.pop()?.play.clone()?;
    match std::mem::replace(&mut state.stage, Stage::Playing(Box::new(play))) {
        Stage::Coming(coming)
        | Stage::Finished(Ending {
            waiting: coming, ..
        }) => {
            // Penalties given meanwhile count in the set after this one, whenever it comes.
            state.carried = coming.penalties.clone();
            Some(coming)
        }
        _ => None,
    }
}

fn correct_set(state: &mut State, n: u32, fault: &LateFault, whole_set: bool) {
    let team = fault.team;
    let opponent = team.other();
    let liberos = state.teams[team].liberos.clone();
    let rules = state.rules;
    let Stage::Playing(play) = &mut state.stage else {
        return;
    };
    // A set that the opponent has won already has no further point (6.2); in any other the point comes
    // first and the cancelling after it (15.9.2).
    let had_won = play.winner(&rules) == Some(opponent);
    let from = match fault.since {
        _ if whole_set => Some(0),
        Some(since) => play.moment(since.score),
        None => None,
    };
    // A wrong server found after the rally costs exactly one point: a last rally that the opponent
    // won is that point (7.7.1.1); with the moment unknown only the last rally is replaced.
    let last = play
        .last_rally()
        .filter(|&i| from.is_none_or(|from| i >= from));
    let replaces_last = fault.fault == Fault::Rotation && fault.during == Found::AfterRally;
    let opponent_has_it = replaces_last && last.is_some_and(|i| play.points[i].to == opponent);
    match (from, last) {
        (Some(from), _) => play.cancel(team, from, n),
        (None, Some(last)) if replaces_last => play.cancel_one(team, last, n),
        (None, _) => {}
    }
    match (had_won, opponent_has_it) {
        (true, _) => {}
        (false, true) => play.give_service(opponent),
        (false, false) => play.award(opponent, PointFor::LateFault, n),
    }
    play.note_score();
    ask::expire(&mut state.questions);
    if let (Some(positions), Stage::Playing(play)) = (&fault.positions, &mut state.stage) {
        if play.follows_places(fault.team) {
            // For a player who was not on the list a revised line-up is given (7.3.5.4).
            let revised = fault.fault == Fault::UnregisteredPlayer;
            play.sides[team].put_right(positions, revised, |s| liberos.contains(&s));
        }
    }
}

/// Where lost sets begin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Beginning {
    /// With the set named.
    ThatSet,
    /// With the one after it.
    TheNext,
}

/// An unregistered player loses the set in which he or she came in, and every later one that the
/// team won, to nothing (7.3.5.4); if that decides the match, what was played after it is void.
pub(super) fn lose_earlier_sets(state: &mut State, team: Team, since: u8, begin: Beginning) {
    let winner = team.other();
    for record in &mut state.sets {
        let lost = match record.number.cmp(&since) {
            std::cmp::Ordering::Less => false,
            std::cmp::Ordering::Equal => begin == Beginning::ThatSet,
            std::cmp::Ordering::Greater => record.winner == team,
        };
        if lost {
            let record: &mut SetRecord = Arc::make_mut(record);
            record.score[team] = 0;
            record.score[winner] = state
                .rules
                .target_of(record.number)
                .points_to_win_against(0);
            record.winner = winner;
            record.how = How::Unregistered;
        }
    }
    let mut void = Vec::new();
    for record in std::mem::take(&mut state.sets) {
        if rally::is_decided(state) {
            void.push(record);
        } else {
            state.sets.push(record);
        }
    }
    rally::finish_if_decided(state, How::Unregistered);
    let decided = rally::is_decided(state);
    if let Stage::Finished(ending) = &mut state.stage {
        ending.wiped.extend(void);
        if !decided {
            // The match was over and is not any more.
            state.stage = Stage::Coming(std::mem::take(&mut ending.waiting));
        }
    }
}
