//! Whether the sets of a result can have been played so.

use super::Finding;
use crate::standings::Played;
use rules::{Preset, Rules, Score, SetTarget, Sets, Team};

pub(super) fn check_sets(
    rules: Option<&Rules>,
    result: usize,
    played: &Played,
    findings: &mut Vec<Finding>,
) {
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

/// Sets won by the first and by the second team.
pub(in crate::standings) fn sets_of(played: &Played) -> (u8, u8) {
    let count = |test: fn(&(u16, u16)) -> bool| {
        u8::try_from(played.sets.iter().filter(|s| test(s)).count()).unwrap_or(u8::MAX)
    };
    (count(|s| s.0 > s.1), count(|s| s.1 > s.0))
}
