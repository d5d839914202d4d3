//! Standings of a pool: the table under the rules of order that the competition has chosen, with the
//! reason for every place.
//!
//! The rules of play are silent on ranking (FIVB Official Volleyball Rules 2025-2028); the criteria and
//! their order are those of public competition regulations, named where they are used.

mod check;
mod criterion;
mod gather;
mod rank;
mod read;
mod scheme;
mod tally;

pub use check::{Doubt, Finding};
pub use criterion::Criterion;
pub use gather::{of_match, of_paper};
pub use rank::{rank, Cut, Row, Standings};
pub(super) use read::NAME;
pub use read::{read, MAX_MEETINGS};
pub use scheme::Scheme;
pub use tally::{Ratio, Tally};

use std::collections::BTreeMap;

use super::one_match::{Evidence, Known, Time};
use rules::{Rules, Team};

/// The results of a pool and how it is ranked.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Pool {
    /// Criteria, the first one first.
    pub rank_by: Vec<Criterion>,
    /// Whether the order starts again from the top for teams that stay level when others have been
    /// separated from them. International regulations of 2017 to 2021 do; some school tournaments do
    /// not, so it is a setting.
    pub restart: bool,
    /// Match points of winner and loser by the result in sets, the higher number first.
    pub match_points: BTreeMap<(u8, u8), (i32, i32)>,
    /// Match points of the winner and of the team in default, where they differ.
    pub default_points: Option<(i32, i32)>,
    /// What the matches were played by, where it was said.
    pub rules: Option<Rules>,
    /// Teams of the pool that may not have played yet.
    pub teams: Vec<String>,
    /// How often two teams meet; none where nobody has said it.
    pub meetings: Option<u8>,
    /// The matches, those that are not over too; a match may stand here several times.
    pub results: Vec<Played>,
}

/// One match.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Played {
    /// The team named first.
    pub home: String,
    /// The team named second.
    pub away: String,
    /// Points of each set, the first team's first.
    pub sets: Vec<(u16, u16)>,
    /// Who did not appear or refused to play.
    pub default: Option<Side>,
    /// Where the result comes from.
    pub source: Source,
}

/// Where a result comes from, and what tells its match from others beside names and points.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Source {
    /// The name of the file, or what else it is called; empty in a list of results.
    pub name: String,
    /// What stands behind it.
    pub evidence: Evidence,
    /// The pool, as far as it is said.
    pub pool: String,
    /// The number of the match, likewise.
    pub number: String,
    /// When it was played.
    pub time: Option<Time>,
    /// Whether the match is still going on: then it does not count.
    pub is_open: bool,
    /// Why the result may not be what was played.
    pub doubt: Option<Doubt>,
}

impl Played {
    /// What tells the match from others.
    #[must_use]
    pub fn known(&self) -> Known {
        let Source {
            pool, number, time, ..
        } = &self.source;
        // Who has no name in a record or on a sheet stands here by the letter.
        let is_letter = |name: &str, team: Team| {
            self.source.evidence != Evidence::Listed && name == team.letter()
        };
        let name = |name, team| if is_letter(name, team) { "" } else { name };
        let names = [name(&*self.home, Team::A), name(&*self.away, Team::B)];
        let known = Known::new(names, pool, number, *time);
        match (self.source.is_open, self.default) {
            (true, _) => known,
            (false, None) => known.with_points(&self.sets),
            (false, Some(_)) => known.with_points(&self.sets).by_default(),
        }
    }
}

/// One of the two teams of a match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Side {
    /// The team named first.
    Home,
    /// The team named second.
    Away,
}
