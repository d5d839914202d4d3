//! What is wrong with results that can be read.

use super::{Played, Pool, Side};
use crate::rules::{Preset, Rules, Score, SetTarget, Sets, Team};

/// Something in a pool that cannot be, or that makes the table less than sure.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the sentence names.
pub enum Finding {
    /// A team against itself; left out of the table.
    AgainstItself { result: usize },
    /// A match without sets; left out of the table.
    NoSets { result: usize },
    /// The same match a second time; both count.
    MatchTwice { result: usize, first: usize },
    /// Points that do not end a set; they count.
    SetCannotBe { result: usize, set: usize },
    /// More or fewer sets than the match has; they count.
    SetsCannotBe { result: usize },
    /// A result for which no match points are laid down; both teams get none.
    NoMatchPoints { result: usize, won: u8, lost: u8 },
    /// The team in default has won; the result counts as written.
    DefaultWon { result: usize },
    /// Two names that differ by capitals or spaces alone; they count as two teams.
    NamesAlike { one: String, other: String },
}

impl Finding {
    /// The name in an output.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Finding::AgainstItself { .. } => "against_itself",
            Finding::NoSets { .. } => "no_sets",
            Finding::MatchTwice { .. } => "match_twice",
            Finding::SetCannotBe { .. } => "set_cannot_be",
            Finding::SetsCannotBe { .. } => "sets_cannot_be",
            Finding::NoMatchPoints { .. } => "no_match_points",
            Finding::DefaultWon { .. } => "default_won",
            Finding::NamesAlike { .. } => "names_alike",
        }
    }

    /// The place in the file, counted from 0.
    #[must_use]
    pub fn place(&self) -> String {
        match self {
            Finding::SetCannotBe { result, set } => format!("results[{result}].sets[{set}]"),
            Finding::NamesAlike { .. } => "results".to_owned(),
            Finding::AgainstItself { result }
            | Finding::NoSets { result }
            | Finding::MatchTwice { result, .. }
            | Finding::SetsCannotBe { result }
            | Finding::NoMatchPoints { result, .. }
            | Finding::DefaultWon { result } => format!("results[{result}]"),
        }
    }
}

/// Everything that is wrong with the results, in their order. Match points are looked at where the
/// table is counted.
pub(super) fn check(pool: &Pool) -> Vec<Finding> {
    let mut findings = names_alike(pool);
    for (result, played) in pool.results.iter().enumerate() {
        if played.home == played.away {
            findings.push(Finding::AgainstItself { result });
            continue;
        }
        if played.sets.is_empty() {
            findings.push(Finding::NoSets { result });
            continue;
        }
        let same = |other: &Played| is_same(other, played);
        if let Some(first) = pool.results[..result].iter().position(same) {
            findings.push(Finding::MatchTwice { result, first });
        }
        match played.default {
            None => check_sets(pool.rules.as_ref(), result, played, &mut findings),
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
    findings
}

/// Sets won by the first and by the second team.
pub(super) fn sets_of(played: &Played) -> (u8, u8) {
    let count = |test: fn(&(u16, u16)) -> bool| {
        u8::try_from(played.sets.iter().filter(|s| test(s)).count()).unwrap_or(u8::MAX)
    };
    (count(|s| s.0 > s.1), count(|s| s.1 > s.0))
}

/// The same pairing in the same order, or the same points the other way round. A return match has
/// home and away changed and other points.
fn is_same(one: &Played, other: &Played) -> bool {
    let turned = || {
        one.sets
            .iter()
            .map(|&(h, a)| (a, h))
            .eq(other.sets.iter().copied())
    };
    (one.home == other.home && one.away == other.away)
        || (one.home == other.away && one.away == other.home && turned())
}

fn names_alike(pool: &Pool) -> Vec<Finding> {
    let plain = |name: &str| name.split_whitespace().collect::<String>().to_lowercase();
    let names = super::rank::names(pool);
    let mut plain: Vec<(String, &String)> = names.iter().map(|n| (plain(n), n)).collect();
    plain.sort();
    let alike = plain.windows(2).filter(|w| w[0].0 == w[1].0);
    alike
        .map(|w| Finding::NamesAlike {
            one: w[0].1.clone(),
            other: w[1].1.clone(),
        })
        .collect()
}

fn check_sets(rules: Option<&Rules>, result: usize, played: &Played, findings: &mut Vec<Finding>) {
    for (set, &(home, away)) in played.sets.iter().enumerate() {
        let score = Score { a: home, b: away };
        let number = u8::try_from(set + 1).unwrap_or(u8::MAX);
        let can_be = match rules {
            Some(rules) => ends(rules.target_of(number), score),
            // Nobody has said what was played by: an ordinary set or a deciding one of the
            // international text.
            None => {
                let rules = Preset::International.rules();
                ends(rules.set, score) || ends(rules.decider.to, score)
            }
        };
        if !can_be {
            findings.push(Finding::SetCannotBe { result, set });
        }
    }
    if rules.is_some_and(|rules| !is_whole(rules.sets, played)) {
        findings.push(Finding::SetsCannotBe { result });
    }
}

/// Whether a set can end so: won with this point and not before it.
fn ends(target: SetTarget, score: Score) -> bool {
    let Some(winner) = target.winner(score) else {
        return false;
    };
    let mut before = score;
    before[winner] -= 1;
    target.winner(before).is_none()
}

/// Whether the sets are a whole match and no more: decided by the last one.
fn is_whole(sets: Sets, played: &Played) -> bool {
    match sets {
        Sets::Fixed(n) => played.sets.len() == usize::from(n),
        Sets::BestOf(n) => {
            let needed = n / 2 + 1;
            let (home, away) = sets_of(played);
            let winner = if home > away { Team::A } else { Team::B };
            let last_to_winner = played.sets.last().is_some_and(|s| match winner {
                Team::A => s.0 > s.1,
                Team::B => s.1 > s.0,
            });
            home.max(away) == needed && home.min(away) < needed && last_to_winner
        }
    }
}
