//! Team lists and line-ups. Where one cannot be, another is made up to look further.

use super::Table;
use crate::paper::{BoxKind, Fault, PaperSet};
use game::entry::{Player, TeamList};
use game::{Kind, Refusal};
use rules::{Shirt, Team};

impl Table<'_> {
    pub(super) fn list(&mut self, team: Team) {
        let on_sheet = &self.sheet.teams[team];
        let place = format!("teams.{team}.players");
        let players = match &on_sheet.players {
            Some(players) if !players.is_empty() => {
                let more = on_sheet.liberos.iter().filter(|l| !players.contains(l));
                players.iter().chain(more).copied().collect()
            }
            _ => {
                self.found(None, place.clone(), Fault::Missing);
                self.made_up();
                self.everybody(team)
            }
        };
        let list = |players: &[Shirt]| {
            let player = |&number: &Shirt| Player {
                number,
                name: None,
                captain: false,
                libero: on_sheet.liberos.contains(&number),
            };
            let players = players.iter().map(player).collect();
            Kind::TeamList(TeamList {
                team,
                players,
                staff: Vec::new(),
            })
        };
        if let Err(refusal) = self.enter(list(&players)) {
            self.against(None, place, BoxKind::List, &refusal);
            self.insist(list(&players), &refusal);
        }
        if self.state().team(team).list.is_none() {
            // A number stands twice: to look further, each counts once.
            let mut once = players;
            rules::sort_by(&mut once, Ord::cmp);
            once.dedup();
            let kind = list(&once);
            if let Err(refusal) = self.enter(kind.clone()) {
                self.insist(kind, &refusal);
            }
        }
    }

    /// Every number of a team anywhere on the sheet.
    fn everybody(&self, team: Team) -> Vec<Shirt> {
        let mut all: Vec<Shirt> = self.sheet.teams[team].liberos.clone();
        for set in &self.sheet.sets {
            all.extend(set.line_up.iter().flat_map(|l| &l[team]));
            let own = set.substitutions.iter().filter(|s| s.team == team);
            all.extend(own.flat_map(|s| [s.out, s.into]));
        }
        rules::sort_by(&mut all, Ord::cmp);
        all.dedup();
        all
    }

    /// Hands in a line-up. Where it cannot be one, another is made up to look further, and false says
    /// that the places are doubtful.
    pub(super) fn line_up(&mut self, number: u8, set: &PaperSet, team: Team) -> bool {
        let place = format!("line_up.{team}");
        let mut positions = match &set.line_up {
            Some(line_up) if !line_up[team].is_empty() => line_up[team].clone(),
            _ => {
                self.found(Some(number), place.clone(), Fault::Missing);
                self.made_up();
                Vec::new()
            }
        };
        let mut as_written = !positions.is_empty();
        // Each turn puts one number right; there are few.
        for _ in 0..100 {
            let kind = Kind::LineUp {
                team,
                positions: positions.clone(),
            };
            let Err(refusal) = self.enter(kind.clone()) else {
                return as_written;
            };
            let at = culprit(&positions, &refusal);
            if as_written || at.is_some() {
                let place = match at {
                    Some(i) => format!("{place}[{i}]"),
                    None => place.clone(),
                };
                self.against(Some(number), place, BoxKind::LineUp, &refusal);
            }
            if !refusal.is_final() {
                self.insist(kind, &refusal);
                return as_written;
            }
            as_written = false;
            self.made_up();
            let Some(filled) = self.fill(team, &positions, at) else {
                return false;
            };
            positions = filled;
        }
        false
    }

    /// The line-up with somebody else at one place, or with as many numbers as it needs.
    fn fill(&self, team: Team, positions: &[Shirt], at: Option<usize>) -> Option<Vec<Shirt>> {
        let state = self.state();
        let list = state.team(team).list.as_ref()?;
        let mut free = list
            .players
            .iter()
            .map(|p| p.number)
            .filter(|n| !positions.contains(n) && game::may_start(state, team, *n).is_ok());
        let mut filled = positions.to_vec();
        match at {
            Some(i) => filled[i] = free.next()?,
            None => {
                let size = usize::from(state.rules().players_on_court);
                filled.truncate(size);
                while filled.len() < size {
                    filled.push(free.next()?);
                }
            }
        }
        Some(filled)
    }
}

/// The number in a line-up that a refusal is about.
fn culprit(positions: &[Shirt], refusal: &Refusal) -> Option<usize> {
    match refusal {
        Refusal::TwiceInLineUp { number } => positions.iter().rposition(|n| n == number),
        Refusal::NotListed { number, .. }
        | Refusal::LiberoInLineUp { number }
        | Refusal::PlayerBarred { number, .. } => positions.iter().position(|n| n == number),
        _ => None,
    }
}
