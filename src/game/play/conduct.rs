//! Misconduct: the levels and the ladder (chapter 21).

use super::request;
use crate::model::entry::{Level, Who};
use crate::model::sanction::SanctionKind;
use crate::model::state::State;
use crate::model::team_state::OutFor;
use crate::Refusal;
use rules::Team;

pub(crate) fn check(state: &State, team: Team, who: &Who, level: Level) -> Result<(), Refusal> {
    let side = &state.teams[team];
    if let Who::Player(number) = who {
        if !side.lists(*number) {
            return Err(Refusal::NotListed {
                team,
                number: *number,
            });
        }
    }
    // Repeated misconduct of one person is sanctioned more heavily each time (21.4.2).
    if let Some(had) = side
        .heaviest(who)
        .filter(|&had| had >= level && had > Level::Warning)
    {
        return Err(Refusal::NotHeavier {
            who: who.clone(),
            had,
        });
    }
    // The warning is given once to a team, to whoever it is (21.1).
    let warned = side.conduct.iter().any(|(_, l)| *l == Level::Warning);
    if level == Level::Warning && warned {
        return Err(Refusal::TeamWarned { team });
    }
    Ok(())
}

pub(crate) fn sanction(state: &mut State, n: u32, team: Team, who: &Who, level: Level) {
    let set = state.set_at_hand();
    request::record_for(
        state,
        n,
        team,
        SanctionKind::Misconduct(level),
        Some(who.clone()),
    );
    let side = &mut state.teams[team];
    side.conduct.push((who.clone(), level));
    match (who, level) {
        (Who::Player(number), Level::Expulsion) => side.expelled.push((*number, set)),
        (Who::Player(number), Level::Disqualification) => {
            side.out.push((*number, OutFor::Disqualified));
        }
        _ => {}
    }
    // Only a penalty changes the score (21.3.1); the two heavier ones do not (21.3.2, 21.3.3).
    if level == Level::Penalty {
        request::penalty(state, n, team);
    }
}
