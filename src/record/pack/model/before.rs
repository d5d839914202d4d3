//! What is entered before a set: checks, signatures, lists, the toss, line-ups.

use super::number::{pick, shirt, small};
use super::pattern::Pattern;
use super::{Flag, Model, ABOUT};
use crate::game::entry::{Check, Player, Staff, TeamList, Toss, Won};
use crate::game::{may_start, Kind, Phase, State};
use crate::record::pack::coder::Coder;
use crate::rules::{Shirt, Step, Team};

/// Who signs, in a usual order.
pub(super) const ROLES: [&str; 9] = [
    "captain A",
    "captain B",
    "coach A",
    "coach B",
    "scorer",
    "captain A",
    "captain B",
    "second referee",
    "first referee",
];

impl Model {
    /// Nobody is more likely to win it, or to choose one thing, than the other.
    pub(super) fn toss<C: Coder>(&mut self, coder: &mut C, given: Option<Toss>) -> Toss {
        let team = |coder: &mut C, given: Option<Team>| {
            Team::BOTH[pick(coder, 2, usize::from(given == Some(Team::B)))]
        };
        let first_service = team(coder, given.map(|t| t.first_service));
        let left = team(coder, given.map(|t| t.left));
        let won = given.and_then(|t| t.won);
        let noted = self.flag(coder, Flag::TossNoted, won.is_some());
        let won = noted.then(|| Won {
            by: team(coder, won.map(|w| w.by)),
            chose: ABOUT[pick(coder, 2, won.map_or(0, |w| w.chose as usize))],
        });
        Toss {
            first_service,
            left,
            won,
        }
    }

    pub(super) fn check<C: Coder>(
        &mut self,
        coder: &mut C,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::Check(check)) => Some(check),
            _ => None,
        };
        let place = |c: &Check| Step::ALL.iter().position(|s| s.code() == c.item);
        let place = given.and_then(place).unwrap_or(0);
        let place = self.next_in_list(coder, self.checked, Step::ALL.len(), place);
        self.checked = place;
        let failed = self.flag(coder, Flag::CheckFailed, given.is_some_and(|c| !c.ok));
        let note = given.and_then(|c| c.note.as_deref());
        let note = if self.flag(coder, Flag::Noted, note.is_some()) {
            Some(self.words.code(coder, note)?)
        } else {
            None
        };
        Ok(Kind::Check(Check {
            item: Step::ALL[place].code().to_owned(),
            ok: !failed,
            note,
        }))
    }

    pub(super) fn sign<C: Coder>(
        &mut self,
        coder: &mut C,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::Sign { role, name }) => Some((role, name.as_deref())),
            _ => None,
        };
        // Captains sign twice: of two equal ones the one that comes next.
        let from = self.signed + 1;
        let order = (0..ROLES.len()).map(|i| (from + i) % ROLES.len());
        let place = given.and_then(|(role, _)| order.into_iter().find(|&i| ROLES[i] == role));
        let place = place.unwrap_or(0);
        let place = self.next_in_list(coder, self.signed, ROLES.len(), place);
        self.signed = place;
        let name = given.and_then(|g| g.1);
        let name = if self.flag(coder, Flag::Named, name.is_some()) {
            Some(self.words.code(coder, name)?)
        } else {
            None
        };
        Ok(Kind::Sign {
            role: ROLES[place].to_owned(),
            name,
        })
    }

    /// A place in a list that is mostly gone through in its order.
    pub(super) fn next_in_list<C: Coder>(
        &mut self,
        coder: &mut C,
        last: usize,
        length: usize,
        place: usize,
    ) -> usize {
        let next = if last >= length {
            0
        } else {
            (last + 1) % length
        };
        if self.flag(coder, Flag::NextInList, place == next) {
            next
        } else {
            pick(coder, length, place)
        }
    }

    pub(super) fn team_list<C: Coder>(
        &mut self,
        coder: &mut C,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let given = match given {
            Some(Kind::TeamList(list)) => Some(list),
            _ => None,
        };
        let team = self.team(coder, Pattern::TeamList, given.map(|l| l.team));
        let count = given.map_or(0, |l| l.players.len() as u64);
        let count: u32 = small(self.number(coder, Pattern::TeamList.place(), count))?;
        let named = self.flag(
            coder,
            Flag::NamedList,
            given.is_some_and(|l| l.players.iter().any(|p| p.name.is_some())),
        );
        let mut players = Vec::new();
        let mut last = Shirt(0);
        for i in 0..count.min(400) {
            let player = given.and_then(|l| l.players.get(i as usize));
            // By custom numbers rise, by one more often than not.
            let number = player.map_or(0, |p| p.number.0);
            let next = self.flag(coder, Flag::NextNumber, number == last.0.wrapping_add(1));
            let number = if next {
                Shirt(last.0.wrapping_add(1))
            } else {
                shirt(coder, player.map(|p| p.number))
            };
            let captain = self.flag(coder, Flag::Captain, player.is_some_and(|p| p.captain));
            let libero = self.flag(coder, Flag::Libero, player.is_some_and(|p| p.libero));
            let name = if named {
                let name = player.and_then(|p| p.name.as_deref());
                let has = self.flag(coder, Flag::Named, name.is_some());
                if has {
                    Some(self.words.code(coder, name)?)
                } else {
                    None
                }
            } else {
                None
            };
            last = number;
            players.push(Player {
                number,
                name,
                captain,
                libero,
            });
        }
        let count = given.map_or(0, |l| l.staff.len() as u64);
        let count: u32 = small(self.number(coder, Pattern::TeamList.place(), count))?;
        let mut staff = Vec::new();
        for i in 0..count.min(100) {
            let person = given.and_then(|l| l.staff.get(i as usize));
            let role = self.words.code(coder, person.map(|p| p.role.as_str()))?;
            let name = person.and_then(|p| p.name.as_deref());
            let has = self.flag(coder, Flag::Named, name.is_some());
            let name = if has {
                Some(self.words.code(coder, name)?)
            } else {
                None
            };
            staff.push(Staff { role, name });
        }
        Ok(Kind::TeamList(TeamList {
            team,
            players,
            staff,
        }))
    }
}

/// The next team whose line-up is due.
pub(super) fn next_line_up(state: &State) -> Option<Team> {
    let waits = matches!(state.phase(), Phase::Preparation | Phase::BetweenSets);
    let missing = |team: &Team| state.line_up_given(*team).is_none();
    Team::BOTH
        .into_iter()
        .filter(|_| waits && state.rules().line_ups)
        .find(missing)
}

/// Who may stand in a line-up, in the order of the list.
pub(super) fn starters(state: &State, team: Team) -> Vec<Shirt> {
    let list = state.team(team).list.as_deref();
    let players = list
        .into_iter()
        .flat_map(|l| l.players.iter().map(|p| p.number));
    players
        .filter(|&s| may_start(state, team, s).is_ok())
        .collect()
}
