//! Faults found late: which points go, which stay, who serves and how the order is put right
//! (7.3.5, 7.7, 15.9.2, 19.3.2.9).

use std::sync::Arc;

use super::forfeit;
use super::line_up;
use super::questions;
use super::rally;
use crate::model::ending::{DecidedBy, Ending, SetRecord};
use crate::model::entry::{Fault, Found, LateFault};
use crate::model::set::{PointFor, SetPlay};
use crate::model::stage::{NextSet, Stage};
use crate::model::state::State;
use crate::model::team_state::OutFor;
use crate::Refusal;
use rules::{Score, Team};

pub(crate) fn check(state: &State, fault: &LateFault) -> Result<(), Refusal> {
    let play = at_hand(state, Some(fault.fault))?;
    check_positions(state, play, fault)?;
    check_since(state, play, fault)?;
    if fault.fault == Fault::Rotation {
        check_server(play, fault)?;
    }
    Ok(())
}

/// The right places are whole, and of players who may stand there.
fn check_positions(state: &State, play: &SetPlay, fault: &LateFault) -> Result<(), Refusal> {
    let Some(positions) = fault
        .positions
        .as_ref()
        .filter(|_| play.follows_places(fault.team))
    else {
        return Ok(());
    };
    let team = fault.team;
    let known = &state.teams[team];
    line_up::check_numbers(state, positions)?;
    if let Some(&number) = positions.iter().find(|&&s| !known.lists(s)) {
        return Err(Refusal::NotListed { team, number });
    }
    if revises_next(state, fault) {
        return positions
            .iter()
            .try_for_each(|&number| line_up::may_start(state, team, number));
    }
    let mut liberos = positions.iter().filter(|&&s| known.is_libero(s));
    match (liberos.next(), liberos.next()) {
        (Some(&number), Some(_)) => Err(Refusal::LiberoOnCourt { number }),
        _ => Ok(()),
    }
}

/// Whether the right places are a revised line-up for the set to come: for a player who was not on the
/// list, found between the sets, where that team's line-up is in already (7.3.5.4).
fn revises_next(state: &State, fault: &LateFault) -> bool {
    fault.fault == Fault::UnregisteredPlayer
        && state
            .coming()
            .is_some_and(|coming| coming.line_ups[fault.team].is_some())
}

fn check_since(state: &State, play: &SetPlay, fault: &LateFault) -> Result<(), Refusal> {
    let Some(since) = fault.since else {
        return Ok(());
    };
    let kind = fault.fault;
    let set = since.set.unwrap_or(play.number);
    if set == play.number {
        return stood(play, kind, since.score);
    }
    // A line-up ends with its set, and a decision can be put right only until the next one begins
    // (FIVB Casebook 2024, case 7.5); a player who is not on the list is wrong in every set (7.3.5.4).
    if set == 0 || set > play.number {
        return Err(Refusal::SetNotPlayed { set, fault: kind });
    }
    let earlier = state.sets().find(|s| s.number == set);
    match earlier {
        Some(record) if kind == Fault::UnregisteredPlayer => match &record.play {
            // A set that was lost for such a player already is not lost once more.
            Some(play) if record.how != DecidedBy::Unregistered => stood(play, kind, since.score),
            _ => Err(Refusal::NotByPlay { set }),
        },
        _ => Err(Refusal::EarlierSet {
            set,
            now: play.number,
            fault: kind,
        }),
    }
}

fn stood(play: &SetPlay, fault: Fault, score: Score) -> Result<(), Refusal> {
    match play.moment(score) {
        Some(_) => Ok(()),
        None => Err(Refusal::ScoreNeverStood {
            asked: score,
            nearest: play.nearest(score),
            fault,
        }),
    }
}

/// A wrong server has served: since the moment named, or, where nobody knows it, the rally that was
/// stopped or has just ended (7.7.1). A fault found after a rally began before that rally, so that it
/// costs one point and never two (7.7.1.1).
fn check_server(play: &SetPlay, fault: &LateFault) -> Result<(), Refusal> {
    let from = fault.since.and_then(|since| play.moment(since.score));
    let stopped = (fault.during == Found::Rally).then_some(play.serving);
    let mut servers: Vec<Option<Team>> = match from {
        Some(from) => play.servers_from(from).collect(),
        None if stopped.is_some() => Vec::new(),
        None => play.servers_from(0).last().into_iter().collect(),
    };
    servers.extend(stopped);
    let asked = fault.since.map(|since| since.score);
    match (servers.is_empty(), play.before_last_rally()) {
        (true, None) => Err(Refusal::NoRallyYet),
        (true, Some(before)) => Err(Refusal::RallyBeganBefore {
            asked: asked.unwrap_or(before),
            before,
        }),
        // Without a toss nobody knows who served.
        (false, _) if servers.iter().all(|s| s.is_some_and(|s| s != fault.team)) => {
            Err(Refusal::DidNotServe { team: fault.team })
        }
        (false, _) => Ok(()),
    }
}

impl State {
    /// The set that a fault found now can put right: the one played, or the last one until the next
    /// begins.
    #[must_use]
    pub fn correctable(&self) -> Option<&SetPlay> {
        at_hand(self, None).ok()
    }
}

/// The same, or why there is none.
pub(crate) fn at_hand(state: &State, fault: Option<Fault>) -> Result<&SetPlay, Refusal> {
    match state.stage_beneath() {
        Stage::Playing(play) => Ok(play),
        Stage::NextSet(NextSet { again: Some(_), .. }) => Err(Refusal::NothingPlayed { fault }),
        Stage::NextSet(_) | Stage::Finished(_) | Stage::Suspended { .. } => {
            let last = state.sets.last().ok_or(Refusal::NothingPlayed { fault })?;
            match &last.play {
                Some(play) if last.how == DecidedBy::Played => Ok(play),
                _ => Err(Refusal::NotByPlay { set: last.number }),
            }
        }
    }
}

pub(crate) fn correct(state: &mut State, n: u32, fault: &LateFault) {
    let Ok(now) = at_hand(state, Some(fault.fault)).map(|play| play.number) else {
        return;
    };
    let plays = matches!(state.stage_beneath(), Stage::Playing(_));
    if fault.fault == Fault::UnregisteredPlayer {
        unregistered(state, n, fault, now, plays);
        if plays {
            rally::settle(state);
        }
        return;
    }
    let waiting = reopen(state);
    correct_set(state, n, fault, false);
    rally::settle(state);
    // A set that stays won closes again at once, and what was handed in for the next one stands.
    match (state.stage_beneath_mut(), waiting) {
        (Stage::NextSet(coming), Some(waiting)) => *coming = waiting,
        (Stage::Finished(ending), Some(waiting)) => ending.waiting = waiting,
        _ => {}
    }
}

/// A player who is not on the list takes points and sets with him or her, back to the moment of coming in
/// (7.3.5.4). While a set is played that one is put right on court. Found after a set, that set is lost
/// and not played on (FIVB Casebook 2024, case 4.22); after the match the first referee is asked.
fn unregistered(state: &mut State, n: u32, fault: &LateFault, now: u8, plays: bool) {
    let team = fault.team;
    let (set, score) = match fault.since {
        Some(since) => (since.set.unwrap_or(now), Some(since.score)),
        None => (now, None),
    };
    // Within the last set it makes no difference when: that set is lost.
    let inside = set < now && score != Some(Score::default());
    if plays {
        correct_set(state, n, fault, set < now);
    }
    if matches!(state.stage_beneath(), Stage::Finished(_)) {
        questions::unregistered_after(&mut state.questions, n, team, set, inside);
    } else if inside {
        // Since a score inside an earlier set: the text does not say what becomes of that set.
        questions::unregistered_inside(&mut state.questions, n, team, set);
    } else if set < now || !plays {
        lose_earlier_sets(state, team, set, Beginning::ThatSet);
    }
    if let (true, Some(positions)) = (revises_next(state, fault), &fault.positions) {
        line_up::hand_in(state, team, positions);
    }
}

/// Brings the last set back on court; what waits for the next one is given back.
pub(crate) fn reopen(state: &mut State) -> Option<NextSet> {
    if matches!(state.stage_beneath(), Stage::Playing(_)) {
        return None;
    }
    let play = state.sets.pop()?.play.clone()?;
    match std::mem::replace(state.stage_beneath_mut(), Stage::Playing(Box::new(play))) {
        Stage::NextSet(coming)
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
    let Stage::Playing(play) = state.stage_beneath_mut() else {
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
    if let Some(positions) = fault
        .positions
        .as_ref()
        .filter(|_| play.follows_places(fault.team))
    {
        // For a player who was not on the list a revised line-up is given (7.3.5.4).
        let revised = fault.fault == Fault::UnregisteredPlayer;
        let side = &mut play.sides[team];
        let freed = side.put_right(positions, revised, |s| liberos.contains(&s));
        let out = &mut state.teams[team].out;
        out.retain(|(s, why)| *why != OutFor::Exceptional || !freed.contains(s));
    }
    questions::expire(&mut state.questions);
}

/// Where lost sets begin.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Beginning {
    /// With the set named.
    ThatSet,
    /// With the one after it.
    TheNext,
}

/// An unregistered player loses the set in which he or she came in, every later one that the team won, and
/// the team's points in the others; the opponent keeps its points beyond the target (7.3.5.4; FIVB
/// Casebook 2024, case 4.22). If that decides the match, what was played after it is void.
pub(crate) fn lose_earlier_sets(state: &mut State, team: Team, since: u8, begin: Beginning) {
    let winner = team.other();
    for record in &mut state.sets {
        let lost = match record.number.cmp(&since) {
            std::cmp::Ordering::Less => false,
            std::cmp::Ordering::Equal => begin == Beginning::ThatSet,
            std::cmp::Ordering::Greater => true,
        };
        if lost {
            let to_nothing = state
                .rules
                .target_of(record.number)
                .points_to_win_against(0);
            let mut score = Score::default();
            score[winner] = record.score[winner].max(to_nothing);
            // A set that was lost to nothing anyway stays as it was played.
            if (record.score, record.winner) != (score, winner) {
                let record: &mut SetRecord = Arc::make_mut(record);
                record.score = score;
                record.winner = winner;
                record.how = DecidedBy::Unregistered;
            }
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
    rally::finish_if_decided(state, DecidedBy::Unregistered);
    let decided = rally::is_decided(state);
    if let Stage::Finished(ending) = &mut state.stage {
        ending.voided.extend(void);
        if !decided {
            // The match was over and is not any more.
            state.stage = Stage::NextSet(std::mem::take(&mut ending.waiting));
        }
    }
}

/// The whole match is lost for an unregistered player (FIVB Casebook 2024, case 4.22).
pub(crate) fn lose_match(state: &mut State, team: Team) {
    forfeit::lose_all(state, team, DecidedBy::Unregistered);
}
