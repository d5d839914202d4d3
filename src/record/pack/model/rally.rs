//! A rally: why it ended, by whom, and who saw it.

use super::number::{pick, shirt, tree};
use super::Model;
use crate::game::entry::{By, ReplayWhy, SeenBy};
use crate::game::State;
use crate::record::pack::coder::Coder;
use crate::rules::{Cause, Shirt, Team};

/// Why a rally is replayed after which somebody is named.
pub(super) const REPLAYS: [ReplayWhy; 4] = [
    ReplayWhy::Injury,
    ReplayWhy::Interference,
    ReplayWhy::DoubleFault,
    ReplayWhy::Other,
];

impl Model {
    pub(super) fn cause<C: Coder>(
        &mut self,
        coder: &mut C,
        stays: bool,
        given: Option<Cause>,
    ) -> Result<Cause, String> {
        let place = given
            .and_then(|g| Cause::ALL.iter().position(|c| *c == g))
            .unwrap_or(0);
        let place = u32::try_from(place).unwrap_or(0);
        let place = tree(coder, &mut self.cause[usize::from(stays)], 5, place);
        let cause = usize::try_from(place).ok().and_then(|p| Cause::ALL.get(p));
        cause
            .copied()
            .ok_or_else(|| "a cause that does not exist".to_owned())
    }

    /// Who did it: as a rule the side at fault, for a winner the other one; for a service the server.
    pub(super) fn by<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        cause: Option<Cause>,
        won_by: Team,
        server: Option<(Team, Option<Shirt>)>,
        given: Option<Option<By>>,
    ) -> Option<By> {
        let by = given.flatten();
        let place = cause
            .and_then(|c| Cause::ALL.iter().position(|a| *a == c))
            .unwrap_or(25);
        let has_by = &mut self.has_by_with[place];
        if !coder.both(&mut self.has_by, has_by, by.is_some()) {
            return None;
        }
        let by_loser = coder.bit(
            &mut self.by_loser[place],
            by.is_some_and(|b| b.team != won_by),
        );
        let team = if by_loser { won_by.other() } else { won_by };
        let number = by.and_then(|b| b.number);
        if !coder.bit(&mut self.has_number, number.is_some()) {
            return Some(By { team, number: None });
        }
        let number = self.player(coder, state, team, place, server, number);
        Some(By {
            team,
            number: Some(number),
        })
    }

    /// Who of the other officials showed it; seldom said.
    pub(super) fn seen_by<C: Coder>(
        &mut self,
        coder: &mut C,
        cause: Cause,
        given: Option<SeenBy>,
    ) -> Option<SeenBy> {
        let place = Cause::ALL.iter().position(|c| *c == cause).unwrap_or(25);
        if !coder.bit(&mut self.has_seen_by[place], given.is_some()) {
            return None;
        }
        let place = SeenBy::ALL.iter().position(|s| Some(*s) == given);
        Some(SeenBy::ALL[pick(coder, SeenBy::ALL.len(), place.unwrap_or(0))])
    }

    /// A player of a team: the server, somebody on court, or any number.
    pub(super) fn player<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        team: Team,
        cause: usize,
        server: Option<(Team, Option<Shirt>)>,
        number: Option<Shirt>,
    ) -> Shirt {
        let server = server.filter(|s| s.0 == team).and_then(|s| s.1);
        if let Some(server) = server {
            if coder.bit(&mut self.by_server[cause], number == Some(server)) {
                return server;
            }
        }
        let on_court: Vec<Shirt> = state
            .shown()
            .map(|p| {
                p.sides[team]
                    .on_court()
                    .filter(|s| Some(*s) != server)
                    .collect()
            })
            .unwrap_or_default();
        let place = number.and_then(|n| on_court.iter().position(|s| *s == n));
        let number = if !on_court.is_empty() && coder.bit(&mut self.on_court, place.is_some()) {
            let often = |s: &Shirt| self.named.get(&(team, *s)).copied().unwrap_or(0);
            let weights: Vec<u32> = on_court.iter().map(|s| 2 + often(s).min(500)).collect();
            on_court[coder.choose(&weights, place.unwrap_or(0))]
        } else {
            shirt(coder, number)
        };
        *self.named.entry((team, number)).or_default() += 1;
        number
    }
}
