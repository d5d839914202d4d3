//! Which of several results of one match counts.

use std::cmp::Reverse;

use super::{Known, OneMatch, Part};

/// What stands behind a result, the weaker first: of a match that stands several times the strongest counts.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Evidence {
    /// A line in a list of results.
    #[default]
    Listed,
    /// A paper sheet that somebody keyed in.
    Paper,
    /// A record whose seal does not fit.
    Changed,
    /// A record without a seal at its end.
    Record,
    /// A record with a seal that fits.
    Sealed,
}

/// The result that counts in the place of another one of the same match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Instead {
    /// Its place among the results.
    pub result: usize,
    /// Whether it has other points.
    pub other_points: bool,
}

/// For each result the one that counts in its place, none where it counts itself. Of several records of one
/// match the strongest counts, of equally strong ones one that was played before a default, then the one with
/// more points: a rally is missed more easily than made up (our own choice, no source). What is level in that
/// goes by its content, so that the order in which results are given decides nothing.
///
/// Points alone do not tell two matches apart where teams meet once; where nobody has said how often they
/// meet, or they meet more often, they do.
#[must_use]
pub fn instead(results: &[(Known, Evidence)], meetings: Option<u8>) -> Vec<Option<Instead>> {
    let mut order: Vec<usize> = (0..results.len()).collect();
    rules::sort_by_key(&mut order, |&i| {
        let (known, evidence) = &results[i];
        (
            Reverse((known.points.is_some(), *evidence)),
            known.by_default,
            Reverse(known.rallies()),
            known.content(),
        )
    });
    let counts_for = |verdict: &OneMatch| match verdict {
        OneMatch::Perhaps(Part::Points) => meetings == Some(1),
        OneMatch::Yes | OneMatch::Perhaps(_) => true,
        OneMatch::No(_) | OneMatch::Unknown => false,
    };
    let mut instead: Vec<Option<Instead>> = vec![None; results.len()];
    for (place, &i) in order.iter().enumerate() {
        let known = &results[i].0;
        let verdicts = order[..place]
            .iter()
            .map(|&j| (known.is_one_with(&results[j].0), j));
        let found = verdicts.filter(|v| counts_for(&v.0));
        // A certain one goes before one that differs.
        let found = found.min_by_key(|v| v.0 != OneMatch::Yes);
        instead[i] = found.map(|(_, j)| {
            let result = instead[j].map_or(j, |known| known.result);
            let other_points = known.same_points(&results[result].0) == Some(false);
            Instead {
                result,
                other_points,
            }
        });
    }
    instead
}
