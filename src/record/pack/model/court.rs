//! Who stands on court: substitutions, liberos, and faults found late.

use super::number::pick;
use super::pattern::Pattern;
use super::{Flag, Model};
use crate::game::entry::{Change, Fault, Forced, Found, LateFault, Since};
use crate::game::{may, Entry, Kind, State};
use crate::record::pack::coder::Coder;
use crate::rules::{Score, Shirt, Team};

/// Faults found late.
pub(super) const FAULTS: [Fault; 5] = [
    Fault::Rotation,
    Fault::IllegalSubstitution,
    Fault::WrongLineUp,
    Fault::IllegalLibero,
    Fault::UnregisteredPlayer,
];

impl Model {
    /// A fault found late whose moment, if it is given, is a score of the set that is on.
    pub(super) fn late_fault<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        given: Option<&Kind>,
    ) -> Kind {
        let given = match given {
            Some(Kind::LateFault(fault)) => Some(fault),
            _ => None,
        };
        let team = self.team(coder, Pattern::LateFault, given.map(|f| f.team));
        let place = given.and_then(|f| FAULTS.iter().position(|k| *k == f.fault));
        let fault = FAULTS[coder.choose(&[8, 3, 2, 2, 1], place.unwrap_or(0))];
        // Counted back from now, as somebody remembers it.
        let stood: Vec<Score> = stood(state);
        let since = given.and_then(|f| f.since);
        let back = since.and_then(|s| stood.iter().position(|score| *score == s.score));
        let since = if self.flag(coder, Flag::SinceKnown, since.is_some()) && !stood.is_empty() {
            let score = stood[pick(coder, stood.len(), back.unwrap_or(0))];
            Some(Since { score, set: None })
        } else {
            None
        };
        let after = given.is_some_and(|f| f.during == Found::AfterRally);
        let during = if self.flag(coder, Flag::FoundAfter, after) {
            Found::AfterRally
        } else {
            Found::Rally
        };
        let put_right = given.is_some_and(|f| f.positions.is_some());
        let positions = self.flag(coder, Flag::PutRight, put_right).then(|| {
            let play = state.play();
            play.map(|p| p.sides[team].on_court().collect())
                .unwrap_or_default()
        });
        Kind::LateFault(LateFault {
            team,
            fault,
            since,
            during,
            positions,
        })
    }

    pub(super) fn substitution<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        given: Option<&Kind>,
    ) -> Result<Kind, String> {
        let parts = match given {
            Some(Kind::Substitution {
                team,
                changes,
                reason,
            }) => Some((*team, changes, *reason)),
            _ => None,
        };
        let team = self.team(coder, Pattern::Substitution, parts.map(|p| p.0));
        let reasons = [
            None,
            Some(Forced::Injury),
            Some(Forced::Expelled),
            Some(Forced::Disqualified),
        ];
        let reason = parts
            .and_then(|p| reasons.iter().position(|r| *r == p.2))
            .unwrap_or(0);
        let forced = self.flag(coder, Flag::Forced, reason > 0);
        let reason = if forced {
            1 + pick(coder, 3, reason.saturating_sub(1))
        } else {
            0
        };
        let reason = reasons[reason];
        let mut changes = Vec::new();
        loop {
            let change = parts.and_then(|p| p.1.get(changes.len())).copied();
            let change = self.change(coder, state, team, &changes, reason, change)?;
            changes.push(change);
            let more = parts.is_some_and(|p| p.1.len() > changes.len());
            let full = changes.len() >= holders(state, team).len().min(bench(state, team).len());
            if full || !self.flag(coder, Flag::MoreChanges, more) {
                break;
            }
        }
        Ok(Kind::Substitution {
            team,
            changes,
            reason,
        })
    }

    /// One more change of a request: as a rule one of those that the reducer would grant.
    pub(super) fn change<C: Coder>(
        &mut self,
        coder: &mut C,
        state: &State,
        team: Team,
        before: &[Change],
        reason: Option<Forced>,
        given: Option<Change>,
    ) -> Result<Change, String> {
        let free = |list: Vec<Shirt>| -> Vec<Shirt> {
            let gone = |s: &Shirt| before.iter().any(|c| c.out == *s || c.into == *s);
            list.into_iter().filter(|s| !gone(s)).collect()
        };
        let (out, into) = (free(holders(state, team)), free(bench(state, team)));
        let pairs = out
            .iter()
            .flat_map(|&out| into.iter().map(move |&into| Change { out, into }));
        let grants = |change: &Change| {
            let changes = before.iter().chain([change]).copied().collect();
            let kind = Kind::Substitution {
                team,
                changes,
                reason,
            };
            may(state, &Entry::new(u32::MAX, kind)).is_ok()
        };
        let legal: Vec<Change> = pairs.filter(grants).collect();
        let place = legal.iter().position(|c| Some(*c) == given);
        if !legal.is_empty() && self.flag(coder, Flag::LegalChange, place.is_some()) {
            return Ok(legal[pick(coder, legal.len(), place.unwrap_or(0))]);
        }
        if out.is_empty() || into.is_empty() {
            return Err("a substitution without players".to_owned());
        }
        let place = |list: &[Shirt], s: Option<Shirt>| {
            s.and_then(|s| list.iter().position(|l| *l == s))
                .unwrap_or(0)
        };
        Ok(Change {
            out: out[pick(coder, out.len(), place(&out, given.map(|c| c.out)))],
            into: into[pick(coder, into.len(), place(&into, given.map(|c| c.into)))],
        })
    }
}

/// The scores that stood in the set that is on, the last one first.
pub(super) fn stood(state: &State) -> Vec<Score> {
    let mut stood: Vec<Score> = state
        .play()
        .map(|p| p.scores().collect())
        .unwrap_or_default();
    stood.reverse();
    stood
}

/// The team and the change of a libero replacement.
pub(super) fn replacement(kind: &Kind) -> Option<(Team, Change)> {
    match kind {
        Kind::LiberoReplacement { team, change } => Some((*team, *change)),
        _ => None,
    }
}

/// Who holds a place on court.
pub(super) fn holders(state: &State, team: Team) -> Vec<Shirt> {
    let play = state.on_floor();
    play.map(|p| p.sides[team].slots.iter().map(|s| s.player).collect())
        .unwrap_or_default()
}

/// Listed players who hold none.
pub(super) fn bench(state: &State, team: Team) -> Vec<Shirt> {
    let Some(play) = state.on_floor() else {
        return Vec::new();
    };
    let list = state.team(team).list.as_deref();
    let players = list
        .into_iter()
        .flat_map(|l| l.players.iter().map(|p| p.number));
    players
        .filter(|&s| !play.sides[team].holds(s) && !state.team(team).is_libero(s))
        .collect()
}

/// Every legal libero replacement, both teams'.
pub(super) fn replacements(state: &State) -> Vec<Kind> {
    let Some(play) = state.on_floor() else {
        return Vec::new();
    };
    let mut ways = Vec::new();
    for team in Team::BOTH {
        let side = &play.sides[team];
        let liberos = state.team(team).liberos.clone();
        for slot in &side.slots {
            let back = slot.libero.map(|_| slot.player);
            for into in liberos.iter().copied().chain(back) {
                let change = Change {
                    out: slot.on_court(),
                    into,
                };
                let kind = Kind::LiberoReplacement { team, change };
                if may(state, &Entry::new(u32::MAX, kind.clone())).is_ok() {
                    ways.push(kind);
                }
            }
        }
    }
    ways
}
