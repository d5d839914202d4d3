//! What is wrong with results that can be read, and what is missing among them.

mod sets;

use std::collections::{BTreeMap, BTreeSet};

use super::{Played, Pool, Side};
use crate::one_match::{self, are_alike, pool_of_both, Evidence, Instead, Known};
use rules::Rules;
use sets::check_sets;

pub(super) use sets::sets_of;

/// Something in a pool that cannot be, or that makes the table less than sure.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the sentence names.
pub enum Finding {
    /// A team against itself; left out of the table.
    AgainstItself { result: usize },
    /// A match without sets; left out of the table.
    NoSets { result: usize },
    /// Results of several pools in one table.
    PoolsMixed { pools: Vec<String> },
    /// A match that is not over; it does not count yet.
    NotOver { result: usize },
    /// The same match a second time; the other one counts.
    MatchTwice {
        result: usize,
        counts: usize,
        other_points: bool,
    },
    /// Two teams have met more often than they should; all of it counts.
    MetAgain { results: Vec<usize> },
    /// Matches of a pool that nobody has handed in: the teams of each, and how many are missing.
    NotPlayed {
        pool: String,
        pairs: Vec<(String, String, usize)>,
    },
    /// The result may not be what was played; it counts.
    ResultInDoubt { result: usize, doubt: Doubt },
    /// Points that do not end a set; they count.
    SetCannotBe { result: usize, set: usize },
    /// More or fewer sets than the match has; they count.
    SetsCannotBe { result: usize },
    /// A result for which no match points are laid down; both teams get none.
    NoMatchPoints { result: usize, won: u8, lost: u8 },
    /// The team in default has won; the result counts as written.
    DefaultWon { result: usize },
    /// Two names that may be those of one team; they count as two teams.
    NamesAlike { one: String, other: String },
}

/// Why a result may not be what was played.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Doubt {
    /// The seal of the record does not fit.
    Seal,
    /// Part of the record cannot be read, or is not as it was written.
    Damaged,
    /// The boxes of the paper sheet do not agree on the result.
    Paper,
}

impl Doubt {
    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            Doubt::Seal => "seal",
            Doubt::Damaged => "damaged",
            Doubt::Paper => "paper",
        }
    }
}

impl Finding {
    /// Whether a result that counts may not be what was played. This is read before the table.
    #[must_use]
    pub const fn is_doubt(&self) -> bool {
        match self {
            Finding::ResultInDoubt { .. }
            | Finding::SetCannotBe { .. }
            | Finding::SetsCannotBe { .. }
            | Finding::DefaultWon { .. } => true,
            Finding::MatchTwice { other_points, .. } => *other_points,
            Finding::AgainstItself { .. }
            | Finding::NoSets { .. }
            | Finding::PoolsMixed { .. }
            | Finding::NotOver { .. }
            | Finding::MetAgain { .. }
            | Finding::NotPlayed { .. }
            | Finding::NoMatchPoints { .. }
            | Finding::NamesAlike { .. } => false,
        }
    }

    /// The name in an output.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Finding::AgainstItself { .. } => "against_itself",
            Finding::NoSets { .. } => "no_sets",
            Finding::PoolsMixed { .. } => "pools_mixed",
            Finding::NotOver { .. } => "not_over",
            Finding::MatchTwice { .. } => "match_twice",
            Finding::MetAgain { .. } => "met_again",
            Finding::NotPlayed { .. } => "not_played",
            Finding::ResultInDoubt { .. } => "result_in_doubt",
            Finding::SetCannotBe { .. } => "set_cannot_be",
            Finding::SetsCannotBe { .. } => "sets_cannot_be",
            Finding::NoMatchPoints { .. } => "no_match_points",
            Finding::DefaultWon { .. } => "default_won",
            Finding::NamesAlike { .. } => "names_alike",
        }
    }

    /// The place in the file of the pool, counted from 0, or the file that the result comes from.
    #[must_use]
    pub fn place(&self, pool: &Pool) -> String {
        let place = |result: usize| match pool.results[result].source.name.as_str() {
            "" => format!("results[{result}]"),
            name => name.to_owned(),
        };
        match self {
            Finding::SetCannotBe { result, set } => format!("{}.sets[{set}]", place(*result)),
            Finding::NamesAlike { .. } | Finding::PoolsMixed { .. } | Finding::NotPlayed { .. } => {
                "results".to_owned()
            }
            Finding::MetAgain { results } => {
                let last = results.last();
                last.map_or_else(|| "results".to_owned(), |&result| place(result))
            }
            Finding::AgainstItself { result }
            | Finding::NoSets { result }
            | Finding::NotOver { result }
            | Finding::MatchTwice { result, .. }
            | Finding::ResultInDoubt { result, .. }
            | Finding::SetsCannotBe { result }
            | Finding::NoMatchPoints { result, .. }
            | Finding::DefaultWon { result } => place(*result),
        }
    }
}

/// For each result the one of the same match that counts in its place.
pub(super) fn instead(pool: &Pool) -> Vec<Option<Instead>> {
    let matches = pool.results.iter().enumerate().filter(|(_, p)| is_match(p));
    let (places, results): (Vec<usize>, Vec<(Known, Evidence)>) = matches
        .map(|(place, played)| (place, (played.known(), played.source.evidence)))
        .unzip();
    let mut instead = vec![None; pool.results.len()];
    for (found, &place) in one_match::instead(&results, pool.meetings)
        .into_iter()
        .zip(&places)
    {
        instead[place] = found.map(|found| Instead {
            result: places[found.result],
            ..found
        });
    }
    instead
}

/// Whether this can be a match at all.
fn is_match(played: &Played) -> bool {
    played.home != played.away && (played.source.is_open || !played.sets.is_empty())
}

/// Whether this counts where no other result counts in its place.
pub(super) fn has_result(played: &Played) -> bool {
    is_match(played) && !played.source.is_open
}

/// Everything that is wrong with the results, in their order, and what is missing among them. Match points
/// are looked at where the table is counted.
pub(super) fn check(pool: &Pool, instead: &[Option<Instead>]) -> Vec<Finding> {
    let pools: Vec<&str> = pool
        .results
        .iter()
        .map(|p| p.pool_among(&pool.results))
        .collect();
    let mut findings: Vec<Finding> = pools_mixed(&pools).into_iter().collect();
    let counted = || pool.results.iter().zip(instead).filter(|r| r.1.is_none());
    findings.extend(names_alike(&super::rank::names(
        pool,
        counted().map(|(played, _)| played),
    )));
    for (result, (played, instead)) in pool.results.iter().zip(instead).enumerate() {
        if let Some(Instead {
            result: counts,
            other_points,
        }) = *instead
        {
            findings.push(Finding::MatchTwice {
                result,
                counts,
                other_points,
            });
        } else if played.home == played.away {
            findings.push(Finding::AgainstItself { result });
        } else if played.source.is_open {
            findings.push(Finding::NotOver { result });
        } else if played.sets.is_empty() {
            findings.push(Finding::NoSets { result });
        } else {
            check_result(pool.rules.as_ref(), result, played, &mut findings);
        }
    }
    findings.extend(met_again(pool, instead, &pools));
    findings.extend(not_played(pool, instead, &pools));
    findings
}

/// What is wrong with a result that counts.
fn check_result(
    rules: Option<&Rules>,
    result: usize,
    played: &Played,
    findings: &mut Vec<Finding>,
) {
    if let Some(doubt) = played.source.doubt {
        findings.push(Finding::ResultInDoubt { result, doubt });
    }
    match played.default {
        None => check_sets(rules, result, played, findings),
        Some(side) => {
            let (home, away) = sets_of(played);
            let won = match side {
                Side::Home => home > away,
                Side::Away => away > home,
            };
            if won {
                findings.push(Finding::DefaultWon { result });
            }
        }
    }
}

impl Played {
    /// The pool of a result: its own, or that in which both teams play by these results; empty where
    /// neither is known.
    #[must_use]
    pub fn pool_among<'a>(&'a self, results: &'a [Played]) -> &'a str {
        if !self.source.pool.is_empty() {
            return &self.source.pool;
        }
        let named = |p: &'a Played| (p.source.pool.as_str(), [p.home.as_str(), p.away.as_str()]);
        let others = results.iter().map(named);
        pool_of_both([&self.home, &self.away], others).unwrap_or_default()
    }
}

fn pools_mixed(pools: &[&str]) -> Option<Finding> {
    let mut known: Vec<&str> = Vec::new();
    for pool in pools.iter().filter(|pool| !pool.is_empty()) {
        if !known.contains(pool) {
            known.push(pool);
        }
    }
    (known.len() > 1).then(|| Finding::PoolsMixed {
        pools: known.into_iter().map(str::to_owned).collect(),
    })
}

/// The places of the results that count, or will, for each pool and each two teams.
type Meetings<'a> = BTreeMap<(&'a str, [&'a str; 2]), Vec<usize>>;

/// `open` says whether matches that are not over are among them; `name` gives a team its name.
fn meetings<'a>(
    pool: &'a Pool,
    instead: &[Option<Instead>],
    pools: &[&'a str],
    open: bool,
    name: impl Fn(&'a str) -> &'a str,
) -> Meetings<'a> {
    let mut met = Meetings::new();
    for (result, played) in pool.results.iter().enumerate() {
        let counts = has_result(played) || open && played.source.is_open;
        if counts && instead[result].is_none() {
            let mut pair = [name(&played.home), name(&played.away)];
            pair.sort_unstable();
            met.entry((pools[result], pair)).or_default().push(result);
        }
    }
    met
}

/// Two teams that met more often than they should. Where nobody has said how often they meet, a return
/// match has the teams the other way round.
fn met_again(pool: &Pool, instead: &[Option<Instead>], pools: &[&str]) -> Vec<Finding> {
    let met = meetings(pool, instead, pools, false, |name| name);
    let again = met.into_values().filter(|results| match pool.meetings {
        Some(most) => results.len() > usize::from(most),
        None => {
            let at_home = results.iter().map(|&r| pool.results[r].home.as_str());
            let at_home: BTreeSet<&str> = rules::gather(at_home);
            results.len() > at_home.len()
        }
    });
    let mut again: Vec<Vec<usize>> = again.collect();
    again.sort_unstable();
    let finding = |results| Finding::MetAgain { results };
    again.into_iter().map(finding).collect()
}

/// The matches that are missing from each pool: all teams of a pool meet all others. A match that is not
/// over is not missing; a team that is spelt in two ways is one team here.
fn not_played(pool: &Pool, instead: &[Option<Instead>], pools: &[&str]) -> Vec<Finding> {
    let mut of_pool: Vec<(&str, Vec<&str>)> = Vec::new();
    let played = pool.results.iter().zip(pools).zip(instead);
    let played = played.filter(|((p, _), instead)| instead.is_none() && is_match(p));
    let played = played.flat_map(|((p, in_pool), _)| [(*in_pool, &p.home), (*in_pool, &p.away)]);
    // The teams that a file names are those of its only pool.
    let named = pool.teams.iter().map(|team| ("", team));
    for (in_pool, team) in played.chain(named) {
        match of_pool.iter_mut().find(|known| known.0 == in_pool) {
            Some((_, teams)) if teams.iter().any(|known| are_alike(known, team)) => {}
            Some((_, teams)) => teams.push(team),
            None => of_pool.push((in_pool, vec![team])),
        }
    }
    let all: Vec<&str> = of_pool.iter().flat_map(|of| of.1.iter().copied()).collect();
    let first = |name| {
        let alike = all.iter().find(|known| are_alike(known, name));
        alike.copied().unwrap_or(name)
    };
    let met = meetings(pool, instead, pools, true, first);
    let due = pool.meetings.map_or(1, usize::from);
    let missing = of_pool.into_iter().map(|(in_pool, teams)| {
        let mut pairs = Vec::new();
        for (i, home) in teams.iter().enumerate() {
            for away in &teams[i + 1..] {
                let mut pair = [first(home), first(away)];
                pair.sort_unstable();
                let met = met.get(&(in_pool, pair)).map_or(0, Vec::len);
                if met < due {
                    pairs.push(((*home).to_owned(), (*away).to_owned(), due - met));
                }
            }
        }
        Finding::NotPlayed {
            pool: in_pool.to_owned(),
            pairs,
        }
    });
    missing
        .filter(|finding| !matches!(finding, Finding::NotPlayed { pairs, .. } if pairs.is_empty()))
        .collect()
}

fn names_alike(names: &[String]) -> Vec<Finding> {
    let mut found = Vec::new();
    for (i, one) in names.iter().enumerate() {
        let alike = names[i + 1..].iter().filter(|other| are_alike(one, other));
        found.extend(alike.map(|other| Finding::NamesAlike {
            one: one.clone(),
            other: other.clone(),
        }));
    }
    found
}
