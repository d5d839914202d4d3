//! Line-ups (7.3) and the beginning of a set.

use crate::model::set::SetPlay;
use crate::model::stage::Stage;
use crate::model::state::State;
use crate::Refusal;
use rules::{ByTeam, Shirt, Team};

pub(crate) fn check(state: &State, team: Team, positions: &[Shirt]) -> Result<(), Refusal> {
    if !state.rules.line_ups {
        // Kept in the log; nobody follows it.
        return Ok(());
    }
    let Some(coming) = state.coming() else {
        return Err(Refusal::LineUpPlayed { team });
    };
    check_numbers(state, positions)?;
    if state.teams[team].list.is_none() {
        return Err(Refusal::NoTeamList { team });
    }
    if let Some(&number) = positions.iter().find(|&&s| !state.teams[team].lists(s)) {
        return Err(Refusal::NotListed { team, number });
    }
    if coming.line_ups[team].is_some() {
        return Err(Refusal::LineUpGiven { team });
    }
    positions
        .iter()
        .try_for_each(|&number| may_start(state, team, number))
}

/// Whether one player may stand in the line-up of the set to come.
///
/// # Errors
/// Why not.
pub fn may_start(state: &State, team: Team, number: Shirt) -> Result<(), Refusal> {
    let known = &state.teams[team];
    if !known.lists(number) {
        Err(Refusal::NotListed { team, number })
    } else if known.is_libero(number) {
        Err(Refusal::LiberoInLineUp { number })
    } else if let Some(why) = known.barred(number, state.next_number()) {
        Err(Refusal::PlayerBarred { number, why })
    } else {
        Ok(())
    }
}

/// Six different numbers, or as many as the competition plays with (7.3.1).
pub(crate) fn check_numbers(state: &State, positions: &[Shirt]) -> Result<(), Refusal> {
    let needed = state.rules.players_on_court;
    if positions.len() != usize::from(needed) {
        return Err(Refusal::LineUpSize {
            numbers: positions.len(),
            needed,
        });
    }
    match (1..positions.len()).find(|&i| positions[..i].contains(&positions[i])) {
        Some(i) => Err(Refusal::TwiceInLineUp {
            number: positions[i],
        }),
        None => Ok(()),
    }
}

pub(crate) fn hand_in(state: &mut State, team: Team, positions: &[Shirt]) {
    withdraw(state, team);
    if let Some(coming) = state.coming_mut() {
        coming.line_ups[team] = Some(positions.to_vec());
    }
    make_ready(state);
}

/// Takes a team's line-up back; what the other team has done on its own stands. Where line-ups are not
/// followed nothing hangs on one.
pub(crate) fn withdraw(state: &mut State, team: Team) {
    if !state.rules.line_ups {
        return;
    }
    if let Some(coming) = state.coming_mut() {
        coming.line_ups[team] = None;
        coming.kept[team] = None;
        if let Some(ready) = coming.ready.take() {
            let other = team.other();
            coming.kept[other] = Some(ready.sides[other].clone());
        }
    }
}

/// The set to come as it is counted in where line-ups are not kept: substitutions before its first service
/// count in it.
pub(crate) fn count_ahead(state: &mut State) {
    let number = state.next_number();
    let opener = state.opener_to_come();
    let left = state.left_to_come().unwrap_or(Team::A);
    if let (false, Some(coming)) = (state.rules.line_ups, state.coming_mut()) {
        let barred = coming.barred;
        coming.ready.get_or_insert_with(|| {
            let mut play = SetPlay::start(number, opener, left, &ByTeam::default());
            for team in Team::BOTH {
                play.sides[team].barred = barred[team];
            }
            Box::new(play)
        });
    }
}

/// Puts the players of both line-ups on court once both are in, where line-ups are kept.
pub(crate) fn make_ready(state: &mut State) {
    if !state.rules.line_ups {
        return;
    }
    let number = state.next_number();
    let opener = state.opener_to_come();
    let left = state.left_to_come().unwrap_or(Team::A);
    let courts_change_at = state.rules.courts_change_at(number);
    if let Some(coming) = state.coming_mut() {
        if let (Some(a), Some(b)) = (&coming.line_ups.a, &coming.line_ups.b) {
            let line_ups = ByTeam {
                a: a.clone(),
                b: b.clone(),
            };
            let mut ready = SetPlay::start(number, opener, left, &line_ups);
            if let Some(joined) = coming.joined {
                joined.take_over(&mut ready, courts_change_at);
            }
            for team in Team::BOTH {
                if let Some(side) = coming.kept[team].take() {
                    ready.sides[team] = side;
                }
                ready.sides[team].barred = coming.barred[team];
            }
            coming.ready = Some(Box::new(ready));
        }
    }
}

pub(crate) fn check_begin(state: &State) -> Result<(), Refusal> {
    let Some(coming) = state.coming() else {
        return Err(Refusal::SetRunning);
    };
    if !state.rules.line_ups {
        return Ok(());
    }
    let missing = |team: &Team| coming.line_ups[*team].is_none();
    let line_ups: Vec<Team> = Team::BOTH.into_iter().filter(missing).collect();
    let is_tossed = state.server_to_come().is_some();
    let toss_for = (!is_tossed).then(|| state.next_number());
    match (&line_ups[..], toss_for) {
        ([], None) => Ok(()),
        ([], Some(set)) => Err(Refusal::TossMissing { set }),
        (&[team], None) => Err(Refusal::LineUpMissing { team }),
        _ => Err(Refusal::SeveralMissing { line_ups, toss_for }),
    }
}

pub(crate) fn begin(state: &mut State, entry: u32) {
    let number = state.next_number();
    let opener = state.opener_to_come();
    let left = state.left_to_come().unwrap_or(Team::A);
    let line_ups = state.rules.line_ups;
    super::notes::end_pauses(state);
    if let Stage::NextSet(coming) = &mut state.stage {
        // Without any toss so far nobody knows, whatever is drawn.
        state.left = (coming.toss.is_some() || state.left.is_some()).then_some(left);
        let mut coming = std::mem::take(coming);
        let mut play = coming.ready.take().unwrap_or_else(|| {
            // Begun against the advice: the side whose line-up is in is followed, of the other one its
            // points and its service only, as in a tally. Where no toss was noted nobody is said to serve
            // until the first point.
            let given = |team: Team| coming.line_ups[team].clone().filter(|_| line_ups);
            let given = ByTeam::new(|team| given(team).unwrap_or_default());
            let mut play = SetPlay::start(number, opener, left, &given);
            for team in Team::BOTH {
                if let Some(side) = coming.kept[team].take() {
                    play.sides[team] = side;
                }
            }
            if let Some(joined) = coming.joined {
                joined.take_over(&mut play, state.rules.courts_change_at(number));
            }
            Box::new(play)
        });
        for team in Team::BOTH {
            play.sides[team].barred |= coming.barred[team];
        }
        let left = play.open_with_penalties(&coming.penalties, &state.rules);
        for (team, entries) in left.iter() {
            state.carried[team].extend(entries);
        }
        super::questions::who_opens(&mut state.questions, entry, &play, &coming.penalties);
        state.stage = Stage::Playing(play);
        super::rally::settle(state);
    }
}
