//! What is legal now: every entry of a state that can be listed, taken from the reducer's own check.

use crate::model::entry::{
    Change, Court, Entry, Forced, Kind, Level, LiberoWhy, ReplayWhy, Scope, Toss, Who,
};
use crate::model::state::State;
use crate::play::libero::is_front;
use crate::reducer::check;
use rules::{Shirt, Team};

/// All legal entries of a state, but for those that carry words, whole lists or a moment of the past
/// (lists, line-ups, remarks, count-downs, causes, strikes, faults found late): these are asked for one
/// by one with [`may`]. What may be left out (who was hurt, who won the toss) is left out.
#[must_use]
pub fn legal(state: &State) -> Vec<Kind> {
    let mut all = Vec::new();
    candidates(state, &mut all);
    all.retain(|kind| check(state, &Entry::new(u32::MAX, kind.clone())).is_ok());
    all
}

/// All legal entries by which one player leaves the court, has recovery time or is followed by a new
/// libero: what can become of somebody who is hurt or was sent off.
#[must_use]
pub fn legal_for(state: &State, team: Team, number: Shirt) -> Vec<Kind> {
    let mut all = Vec::new();
    let listed: Vec<Shirt> = state.team(team).listed().collect();
    of_player(team, number, &listed, &mut all);
    all.retain(|kind| check(state, &Entry::new(u32::MAX, kind.clone())).is_ok());
    all
}

/// The libero replacements of a team that are legal now (19.3.2).
#[must_use]
pub fn libero_replacements(state: &State, team: Team) -> Vec<Change> {
    let liberos = &state.team(team).liberos;
    let listed: Vec<Shirt> = state.team(team).listed().collect();
    // A libero is on one side of each.
    let pairs = listed.iter().flat_map(|&out| {
        let others = listed.iter().filter(move |&&into| into != out);
        others.map(move |&into| Change { out, into })
    });
    let of_liberos = pairs.filter(|way| liberos.contains(&way.out) || liberos.contains(&way.into));
    of_liberos
        .filter(|&change| {
            let kind = Kind::LiberoReplacement { team, change };
            check(state, &Entry::new(u32::MAX, kind)).is_ok()
        })
        .collect()
}

/// The libero replacement that would come next, whether it is legal or not: the acting libero gives way to the player
/// he or she stands in for, or else a libero comes in for the player in the last place of the back row. None where
/// nobody is followed, and for a team without a libero.
#[must_use]
pub fn libero_at_hand(state: &State, team: Team) -> Option<Change> {
    let side = &state.on_floor()?.sides[team];
    if let Some((place, out)) = side.acting_libero() {
        let into = side.slots[place].player;
        return Some(Change { out, into });
    }
    let mut from_behind = side.slots.iter().enumerate().rev();
    let (_, last) = from_behind.find(|(place, _)| !is_front(*place))?;
    Some(Change {
        out: last.on_court(),
        into: *state.team(team).liberos.first()?,
    })
}

/// Everything that could be legal in some state, with the numbers of this match.
pub(super) fn candidates(state: &State, all: &mut Vec<Kind>) {
    all.extend([Kind::BeginSet, Kind::ChangeCourts]);
    all.extend([Kind::Suspend { why: String::new() }]);
    all.extend([Court::Same, Court::Other].map(|court| Kind::Resume { court }));
    let whys = [
        ReplayWhy::DoubleFault,
        ReplayWhy::Interference,
        ReplayWhy::Injury,
        ReplayWhy::Other,
    ];
    all.extend(whys.map(|why| Kind::Replay {
        why,
        hurt: None,
        rally: None,
    }));
    for first_service in Team::BOTH {
        for left in Team::BOTH {
            all.push(Kind::Toss(Toss::new(first_service, left)));
        }
    }
    for question in state.questions() {
        all.extend(question.ask.choices().iter().map(|choice| Kind::Answer {
            entry: question.entry,
            choice: (*choice).to_owned(),
        }));
    }
    for team in Team::BOTH {
        of_team(state, team, all);
    }
}

fn of_team(state: &State, team: Team, all: &mut Vec<Kind>) {
    all.push(Kind::Rally {
        won_by: team,
        cause: None,
        by: None,
    });
    all.push(Kind::TimeOut { team });
    all.push(Kind::ImproperRequest { team });
    all.extend([false, true].map(|request| Kind::Delay { team, request }));
    all.extend([Scope::Set, Scope::Match].map(|scope| Kind::Incomplete { team, scope }));
    all.push(Kind::Default { team });
    let numbers: Vec<Shirt> = state.team(team).listed().collect();
    for &out in &numbers {
        of_player(team, out, &numbers, all);
    }
    let staff = state
        .team(team)
        .list
        .iter()
        .flat_map(|l| l.staff.iter().map(|s| s.role.clone()));
    let mut people: Vec<Who> = staff.map(Who::Staff).collect();
    let coach = Who::Staff("coach".to_owned());
    if !people.iter().any(|who| who.is_same(&coach)) {
        people.push(coach);
    }
    people.extend(numbers.into_iter().map(Who::Player));
    for who in people {
        for sanction in Level::ALL {
            all.push(Kind::Misconduct {
                team,
                who: who.clone(),
                sanction,
            });
        }
    }
}

/// What could be entered of one player who goes, with each of the others who could come.
fn of_player(team: Team, out: Shirt, numbers: &[Shirt], all: &mut Vec<Kind>) {
    let reasons = [
        None,
        Some(Forced::Injury),
        Some(Forced::Expelled),
        Some(Forced::Disqualified),
    ];
    all.push(Kind::Recovery { team, number: out });
    all.push(Kind::GameCaptain { team, number: out });
    for &into in numbers.iter().filter(|&&n| n != out) {
        let change = Change { out, into };
        for reason in reasons {
            all.push(Kind::Substitution {
                team,
                changes: vec![change],
                reason,
            });
        }
        all.push(Kind::LiberoReplacement { team, change });
        for why in [LiberoWhy::Unable, LiberoWhy::Declared] {
            let replaces = vec![out];
            all.push(Kind::NewLibero {
                team,
                replaces,
                number: into,
                why: Some(why),
            });
        }
    }
}
