//! Who speaks for a team on court (5.1.2): the team captain while on court, else the player whom the
//! coach or the captain has named. The role ends when that player leaves the court, when the team captain
//! comes back, and with the set.

use crate::model::entry::{is_assistant_coach, is_coach, is_same_role, Who};
use crate::model::refusal::Asked;
use crate::model::set::SetPlay;
use crate::model::state::State;
use crate::Refusal;
use rules::{Shirt, Team};

/// Who speaks for a team on court.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Speaker {
    /// The team captain, who is on court.
    TeamCaptain(Shirt),
    /// The player named instead.
    GameCaptain(Shirt),
}

impl Speaker {
    /// The shirt.
    #[must_use]
    pub const fn number(self) -> Shirt {
        match self {
            Speaker::TeamCaptain(number) | Speaker::GameCaptain(number) => number,
        }
    }
}

/// Who speaks for a team now; none where nobody has been named, or where nobody follows the places.
#[must_use]
pub fn speaker(state: &State, team: Team) -> Option<Speaker> {
    speaker_in(state, state.play().or_else(|| state.ready())?, team)
}

/// Who speaks for a team, or did when its last set ended: a protest comes after the last point as well.
#[must_use]
pub fn last_speaker(state: &State, team: Team) -> Option<Speaker> {
    speaker_in(state, state.shown()?, team)
}

fn speaker_in(state: &State, play: &SetPlay, team: Team) -> Option<Speaker> {
    match captain(state, team) {
        Some(captain) if can_speak(state, play, team, captain) => {
            Some(Speaker::TeamCaptain(captain))
        }
        _ => play.sides[team].game_captain.map(Speaker::GameCaptain),
    }
}

/// Whether a team has a captain who is not on court and nobody is named instead. Where captains or places
/// are not kept, nobody is missed.
#[must_use]
pub fn is_missing(state: &State, team: Team) -> bool {
    state
        .on_floor()
        .is_some_and(|play| play.follows_places(team))
        && captain(state, team).is_some()
        && speaker(state, team).is_none()
}

/// The players who can be named now, whoever was named last before the others; nobody while the captain
/// is on court.
#[must_use]
pub fn can_be_named(state: &State, team: Team) -> Vec<Shirt> {
    let Some(play) = state.on_floor() else {
        return Vec::new();
    };
    let mut numbers: Vec<Shirt> = play.sides[team].on_court().collect();
    numbers.retain(|&number| check(state, team, number).is_ok());
    let last = state.teams[team].spoke_last;
    rules::sort_by_key(&mut numbers, |&number| (Some(number) != last, number));
    numbers
}

/// Who was named last in this match, if that player can be named again now.
#[must_use]
pub fn named_before(state: &State, team: Team) -> Option<Shirt> {
    let last = state.teams[team].spoke_last?;
    check(state, team, last).is_ok().then_some(last)
}

/// The captain marked on the list.
#[must_use]
pub fn captain(state: &State, team: Team) -> Option<Shirt> {
    let list = state.teams[team].list.as_ref()?;
    list.players.iter().find(|p| p.captain).map(|p| p.number)
}

/// On court, and not about to leave it for a sanction.
fn can_speak(state: &State, play: &SetPlay, team: Team, number: Shirt) -> bool {
    play.sides[team].on_court().any(|s| s == number)
        && state.teams[team].barred(number, play.number).is_none()
}

pub(crate) fn check(state: &State, team: Team, number: Shirt) -> Result<(), Refusal> {
    let Some(play) = state.on_floor() else {
        return Err(Refusal::NoSetForGameCaptain);
    };
    if !play.follows_places(team) {
        // Kept in the log; nobody follows it.
        return Ok(());
    }
    if !play.sides[team].on_court().any(|s| s == number) {
        let asked = Asked::GameCaptain;
        return Err(Refusal::NotOnCourt { number, asked });
    }
    if !can_speak(state, play, team, number) {
        return Err(Refusal::LeavesCourt { number });
    }
    match captain(state, team) {
        Some(captain) if can_speak(state, play, team, captain) => {
            Err(Refusal::CaptainSpeaks { captain })
        }
        _ => Ok(()),
    }
}

pub(crate) fn name(state: &mut State, team: Team, number: Shirt) {
    if let Some(play) = state.on_floor_mut() {
        play.sides[team].game_captain = Some(number);
        state.teams[team].spoke_last = Some(number);
    }
}

/// After every entry: whoever was named and has left the court, or whose captain is back, is game captain
/// no more, also if he or she comes in again later.
pub(crate) fn settle(state: &mut State) {
    for team in Team::BOTH {
        let Some(play) = state.on_floor() else {
            return;
        };
        let Some(named) = play.sides[team].game_captain else {
            continue;
        };
        let is_over = play.follows_places(team)
            && (!can_speak(state, play, team, named)
                || matches!(speaker(state, team), Some(Speaker::TeamCaptain(_))));
        if let Some(play) = state.on_floor_mut().filter(|_| is_over) {
            play.sides[team].game_captain = None;
        }
    }
}

/// Who asks for time-outs and substitutions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Requester {
    /// The coach (5.2.3.3).
    Coach,
    /// The assistant, who has taken over (5.3.1).
    AssistantCoach,
    /// The game captain, where there is neither (5.1.2.3, 15.3.1).
    GameCaptain,
}

/// Who asks for time-outs and substitutions of a team, by its list and the sanctions. Where no list is
/// kept, nobody knows of a coach who is absent.
#[must_use]
pub fn requester(state: &State, team: Team) -> Requester {
    let known = &state.teams[team];
    let Some(list) = &known.list else {
        return Requester::Coach;
    };
    let set = state.set_at_hand();
    let there = |is: fn(&str) -> bool| {
        list.staff
            .iter()
            .filter(|s| is(&s.role))
            .any(|s| !is_sent_off(state, team, &s.role, set))
    };
    if there(is_coach) {
        Requester::Coach
    } else if there(is_assistant_coach) {
        Requester::AssistantCoach
    } else {
        Requester::GameCaptain
    }
}

/// Whether a member of the staff was expelled for this set or disqualified (21.3.2, 21.3.3).
fn is_sent_off(state: &State, team: Team, role: &str, set: u8) -> bool {
    use crate::model::entry::Level;
    use crate::model::sanction::SanctionKind;
    state.sanctions().iter().any(|s| {
        let of = matches!(&s.who, Some(Who::Staff(of)) if is_same_role(of, role));
        let out = match s.kind {
            SanctionKind::Misconduct(Level::Disqualification) => true,
            SanctionKind::Misconduct(Level::Expulsion) => s.set == set,
            _ => false,
        };
        s.team == team && of && out
    })
}
