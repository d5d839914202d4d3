//! Two records of one match side by side: the first rally where they part, the score there, and every
//! difference after it, explained by as few causes as suffice.
//!
//! What was taken back and what was refused does not count: compared is what each record says in the
//! end, point for point and interruption for interruption.

pub(crate) mod align;
mod cause;
mod difference;
mod set;
mod story;
mod winners;

pub use difference::{Comparison, Difference, What, Which};
pub use winners::winners;

use std::collections::BTreeSet;

use cause::explained;
use set::Set;
use story::Story;

use crate::one_match::{pool_of, Known, OneMatch, Part};
use game::entry::Detail;
use game::{Phase, Timeline};
use rules::ByTeam;

/// Compares two records.
#[must_use]
pub fn compare(first: &Timeline, second: &Timeline) -> Comparison {
    Comparison {
        names: ByTeam::new(|team| first.state().name_in_words(team)),
        differences: explained(first, second),
    }
}

/// The differences as they stand, the points of each set aligned.
fn differences(first: &Timeline, second: &Timeline) -> Vec<Difference> {
    let (mut differences, exchanged) = headings(first, second);
    let stories = [Story::of(first, false), Story::of(second, exchanged)];
    let keep_players = first.state().rules().line_ups && second.state().rules().line_ups;
    let keys = stories.iter().flat_map(|s| s.sets.keys()).copied();
    let keys: BTreeSet<(u8, u8)> = rules::gather(keys);
    let (mut other_winner, mut stopped) = (false, false);
    for key in keys {
        let (number, attempt) = key;
        let only = match (stories[0].sets.get(&key), stories[1].sets.get(&key)) {
            (Some(a), Some(b)) => {
                let later = [&stories[0], &stories[1]].map(|s| s.goes_on_after(key));
                let set = Set {
                    number,
                    a,
                    b,
                    later,
                    keep_players,
                };
                let found = set.differences();
                stopped |= found.iter().any(|d| matches!(d.what, What::Stops { .. }));
                differences.extend(found);
                other_winner |= a.winner.is_some() && b.winner.is_some() && a.winner != b.winner;
                continue;
            }
            (Some(set), None) => (Which::First, set, second),
            (None, Some(set)) => (Which::Second, set, first),
            (None, None) => continue,
        };
        // A set more, because another one was won by the other team, has its cause already; a record
        // that stops has nothing after it.
        let (which, set, shorter) = only;
        let explained = stopped || other_winner && shorter.state().phase() == Phase::Finished;
        if !explained && (set.begun || !set.others.is_empty()) {
            differences.push(Difference {
                code: "begin_set",
                set: Some(number),
                rally: None,
                score: None,
                entries: (None, None),
                what: What::SetOnlyIn {
                    which,
                    again: attempt > 0,
                },
            });
            stopped = true;
        }
    }
    gather(&mut differences, &stories);
    rules::sort_by_key(&mut differences, |d| (d.set, d.rally));
    differences
}

/// Whether it is one match, and its rules; and whether the letters of the teams are exchanged.
fn headings(first: &Timeline, second: &Timeline) -> (Vec<Difference>, bool) {
    let heading = |code, what| Difference {
        code,
        set: None,
        rally: None,
        score: None,
        entries: (Some(1), Some(1)),
        what,
    };
    let (Some(one), Some(two)) = (first.state().heading(), second.state().heading()) else {
        return (Vec::new(), false);
    };
    let known = [first, second].map(Known::of_record);
    let exchanged = known[0].is_turned(&known[1]);
    let mut found = Vec::new();
    let against = |part: Part, certain: bool| {
        let [first, second] = [one, two].map(|heading| match part {
            Part::Names => format!("{} and {}", heading.names.a, heading.names.b),
            Part::Pool => pool_of(heading),
            Part::Number => heading.details[Detail::MatchNo].clone().unwrap_or_default(),
            Part::Time | Part::Points => String::new(),
        });
        What::OtherMatch {
            part,
            certain,
            first,
            second,
        }
    };
    match known[0].is_one_with(&known[1]) {
        OneMatch::No(part) => found.push(heading("other_match", against(part, true))),
        OneMatch::Perhaps(part) => found.push(heading("match", against(part, false))),
        OneMatch::Yes | OneMatch::Unknown => {}
    }
    if exchanged {
        found.push(heading("match", What::LettersExchanged));
    }
    // A tally beside the match has rules of its own.
    let both_keep_players = one.rules.line_ups && two.rules.line_ups;
    if both_keep_players && one.rules != two.rules {
        found.push(heading("match", What::Rules));
    }
    (found, exchanged)
}

/// Kinds that a whole record leaves out by its nature: a paper sheet has no libero replacements and no
/// change of courts. Many differences of such a kind are one.
fn gather(differences: &mut Vec<Difference>, stories: &[Story; 2]) {
    for code in ["libero_replacement", "change_courts"] {
        let [in_first, in_second] = [0, 1].map(|i: usize| {
            let others = stories[i].sets.values().flat_map(|s| &s.others);
            others.filter(|h| h.code == code).count()
        });
        let which = match (in_first, in_second) {
            (0, 2..) => Which::First,
            (2.., 0) => Which::Second,
            _ => continue,
        };
        let times = in_first.max(in_second);
        let mut first = true;
        differences.retain_mut(|d| {
            if d.code == code && std::mem::take(&mut first) {
                d.what = What::NeverIn { which, times };
                return true;
            }
            d.code != code
        });
    }
}
