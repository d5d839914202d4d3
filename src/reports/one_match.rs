//! Whether two results are of one match: by the names of the teams, the pool, the number of the match, the
//! time of play and the points, in this order. The table, the list and the comparison all ask here.

use std::cmp::Reverse;

use game::entry::{Detail, Heading};
use game::{Kind, Timeline};
use rules::ByTeam;

/// What tells a match from another one, as far as it is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Known {
    names: ByTeam<String>,
    pool: String,
    number: String,
    time: Option<Time>,
    points: Option<Vec<(u16, u16)>>,
    by_default: bool,
}

/// When a match was played: its first and its last moment, milliseconds since 1970.
pub type Time = (i64, i64);

/// What two results are told apart by.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// The names of the teams.
    Names,
    /// The pool.
    Pool,
    /// The number of the match.
    Number,
    /// The time of play.
    Time,
    /// The points.
    Points,
}

/// Whether two results are of one match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OneMatch {
    /// They are.
    Yes,
    /// They seem to be, although they differ in this.
    Perhaps(Part),
    /// They are not: they differ in this.
    No(Part),
    /// Nothing speaks for it, nothing against it.
    Unknown,
}

/// How well two names, or two pairs of names, fit. The later one is the worse one.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Fit {
    Same,
    /// Somebody left a name out.
    Unknown,
    Alike,
    Other,
}

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

impl Known {
    /// How many points were counted.
    fn rallies(&self) -> u32 {
        let sets = self.points.iter().flatten();
        sets.map(|&(a, b)| u32::from(a) + u32::from(b)).sum()
    }

    /// All that is known, in some order that is always the same.
    fn content(&self) -> impl Ord + '_ {
        let Known {
            names,
            pool,
            number,
            time,
            points,
            by_default: _,
        } = self;
        (points, &names.a, &names.b, pool, number, time)
    }

    /// From the names as they are written; what is not known is empty.
    #[must_use]
    pub fn new(names: [&str; 2], pool: &str, number: &str, time: Option<Time>) -> Known {
        let [a, b] = names.map(plain);
        Known {
            names: ByTeam { a, b },
            pool: plain(pool),
            number: plain(number),
            time,
            points: None,
            by_default: false,
        }
    }

    /// Of a record, without its points.
    #[must_use]
    pub fn of_record(timeline: &Timeline) -> Known {
        let heading = timeline.state().heading();
        let names = heading.map_or(["", ""], |h| [&h.names.a, &h.names.b]);
        let number = heading.and_then(|h| h.details[Detail::MatchNo].as_deref());
        Known::new(
            names,
            &heading.map(pool_of).unwrap_or_default(),
            number.unwrap_or_default(),
            time_of(timeline),
        )
    }

    /// The same with the points of each set of a match that is over, the first team's first.
    #[must_use]
    pub fn with_points(self, points: &[(u16, u16)]) -> Known {
        let points = Some(points.to_vec());
        Known { points, ..self }
    }

    /// The same of a match that a team lost by default.
    #[must_use]
    pub fn by_default(self) -> Known {
        let by_default = true;
        Known { by_default, ..self }
    }

    /// Whether this is the same match as another one.
    #[must_use]
    pub fn is_one_with(&self, other: &Known) -> OneMatch {
        let (fit, _) = self.fit(other);
        if fit == Fit::Other {
            return OneMatch::No(Part::Names);
        }
        let same = |one: &str, other: &str| {
            let known = !one.is_empty() && !other.is_empty();
            known.then_some(one == other)
        };
        let number = same(&self.number, &other.number);
        let together = self.time.zip(other.time);
        let together = together.map(|(one, other)| one.0 <= other.1 && other.0 <= one.1);
        // A division that one of them left out is no other pool.
        let other_pool = same(&self.pool, &other.pool) == Some(false)
            && !self.pool.contains(&other.pool)
            && !other.pool.contains(&self.pool);
        // Nobody plays two matches at once; but two courts may have teams without a name.
        let at_once = together == Some(true) && fit != Fit::Unknown;
        let differs = |part| match at_once {
            true => OneMatch::Perhaps(part),
            false => OneMatch::No(part),
        };
        // A team that has withdrawn loses both of its matches at home and away by the same points.
        let in_turn = self.by_default && other.by_default && self.is_turned(other);
        let points = self.same_points(other).map(|same| same && !in_turn);
        if other_pool {
            return differs(Part::Pool);
        }
        match (number, together) {
            (Some(false), _) => differs(Part::Number),
            (Some(true), Some(false)) => OneMatch::Perhaps(Part::Time),
            (None, Some(false)) => OneMatch::No(Part::Time),
            _ if fit == Fit::Unknown && points == Some(true) => OneMatch::Yes,
            _ if fit == Fit::Unknown => OneMatch::Unknown,
            _ if number == Some(true) || at_once || points == Some(true) => match fit {
                Fit::Alike => OneMatch::Perhaps(Part::Names),
                _ => OneMatch::Yes,
            },
            _ => match (points, fit) {
                (Some(_), Fit::Alike) => OneMatch::No(Part::Names),
                (Some(_), _) => OneMatch::Perhaps(Part::Points),
                (None, Fit::Alike) => OneMatch::Perhaps(Part::Names),
                (None, _) => OneMatch::Unknown,
            },
        }
    }

    /// Whether the team that is named first here is named second there.
    #[must_use]
    pub fn is_turned(&self, other: &Known) -> bool {
        self.fit(other).1
    }

    /// How well the names fit, and whether they do the other way round.
    fn fit(&self, other: &Known) -> (Fit, bool) {
        let pair = |a: &str, b: &str| fit(&self.names.a, a).max(fit(&self.names.b, b));
        let straight = pair(&other.names.a, &other.names.b);
        let turned = pair(&other.names.b, &other.names.a);
        (straight.min(turned), turned < straight)
    }

    /// Whether the points are the same, where both are known.
    fn same_points(&self, other: &Known) -> Option<bool> {
        let (one, two) = (self.points.as_ref()?, other.points.as_ref()?);
        let turned = self.is_turned(other);
        let two = two
            .iter()
            .map(|&(a, b)| if turned { (b, a) } else { (a, b) });
        Some(one.iter().copied().eq(two))
    }
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

/// The pool in which both teams play, for a result that does not say its own; `others` are the pools and
/// the names of results that do.
#[must_use]
pub fn pool_of_both<'a>(
    names: [&str; 2],
    others: impl Iterator<Item = (&'a str, [&'a str; 2])> + Clone,
) -> Option<&'a str> {
    let [home, away] = names.map(|name| {
        let plays = |other: &(&str, [&str; 2])| !other.0.is_empty() && other.1.contains(&name);
        others.clone().find(plays).map(|other| other.0)
    });
    home.filter(|_| home == away)
}

/// Competition and division of a record.
#[must_use]
pub fn pool_of(heading: &Heading) -> String {
    let parts = [Detail::Competition, Detail::Division];
    let parts = parts.map(|part| heading.details[part].as_deref().unwrap_or_default());
    let known: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    known.join(", ")
}

/// When a record was played, by its sets and rallies: it may have been prepared a day before, and sealed
/// a day after.
#[must_use]
pub fn time_of(timeline: &Timeline) -> Option<Time> {
    let is_play = |kind: &Kind| matches!(kind, Kind::BeginSet | Kind::Rally { .. });
    let entries = timeline.entries().iter().filter(|e| is_play(&e.kind));
    let moments = entries.filter_map(|e| e.at);
    moments.fold(None, |time, at| {
        let (first, last) = time.unwrap_or((at, at));
        Some((at.min(first), at.max(last)))
    })
}

/// Whether two names are those of one team, perhaps written in two ways: other capitals, signs or spaces, or
/// one letter wrong in one word. A word of fewer than five letters, or with a digit, is a name of its own:
/// so are Otters A and Otters B, and teams under 14 and under 16.
#[must_use]
pub fn are_alike(one: &str, other: &str) -> bool {
    matches!(fit(&plain(one), &plain(other)), Fit::Same | Fit::Alike)
}

/// A text without capitals and signs, with one space between its words.
fn plain(text: &str) -> String {
    let words = text.split(|c: char| !c.is_alphanumeric());
    let words: Vec<String> = words
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect();
    if words.is_empty() {
        // A name of signs alone is one all the same.
        return text.trim().to_owned();
    }
    words.join(" ")
}

/// How well two plain names fit.
fn fit(one: &str, other: &str) -> Fit {
    if one.is_empty() || other.is_empty() {
        return Fit::Unknown;
    }
    if one == other {
        return Fit::Same;
    }
    let letters = |name: &str| name.split(' ').flat_map(str::chars).collect::<String>();
    if letters(one) == letters(other) {
        return Fit::Alike;
    }
    if one.split(' ').count() != other.split(' ').count() {
        return Fit::Other;
    }
    let mut differ = one.split(' ').zip(other.split(' ')).filter(|w| w.0 != w.1);
    match (differ.next(), differ.next()) {
        (Some((one, other)), None) if is_slip(one, other) => Fit::Alike,
        _ => Fit::Other,
    }
}

/// Whether one word is the other with a letter more, fewer, changed, or two exchanged.
fn is_slip(one: &str, other: &str) -> bool {
    let [one, other] = [one, other].map(|word| word.chars().collect::<Vec<char>>());
    let digit = one.iter().chain(&other).any(|c| c.is_numeric());
    if digit || one.len().max(other.len()) < 5 {
        return false;
    }
    let same = one.iter().zip(&other).take_while(|(a, b)| a == b).count();
    let (one, other) = (&one[same..], &other[same..]);
    let ends = one.iter().rev().zip(other.iter().rev());
    let same = ends.take_while(|(a, b)| a == b).count();
    match (&one[..one.len() - same], &other[..other.len() - same]) {
        ([_], [] | [_]) | ([], [_]) => true,
        ([a, b], [c, d]) => a == d && b == c,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Pool, number, hour of play and points of the first set.
    type Told = (&'static str, &'static str, Option<i64>, (u16, u16));

    fn known(names: [&str; 2], (pool, number, hour, points): Told) -> Known {
        let time = hour.map(|hour| (hour * 3_600_000, hour * 3_600_000 + 2_400_000));
        Known::new(names, pool, number, time).with_points(&[points])
    }

    fn otters(told: Told) -> Known {
        known(["Otters", "Herons"], told)
    }

    #[test]
    fn each_part_decides_where_the_ones_before_it_do_not() {
        let first = otters(("Pool 1", "3", Some(9), (25, 20)));
        let other = |told: Told| first.is_one_with(&otters(told));
        let points = (25, 18);
        assert_eq!(other(("Pool 1", "3", Some(9), points)), OneMatch::Yes);
        assert_eq!(other(("Pool 1", "", Some(9), points)), OneMatch::Yes);
        assert_eq!(other(("", "", None, (25, 20))), OneMatch::Yes);
        let differs = OneMatch::No;
        assert_eq!(other(("Pool 2", "3", None, points)), differs(Part::Pool));
        assert_eq!(other(("Pool 1", "4", None, points)), differs(Part::Number));
        assert_eq!(other(("Pool 1", "", Some(11), points)), differs(Part::Time));
        let perhaps = OneMatch::Perhaps;
        assert_eq!(other(("", "", None, points)), perhaps(Part::Points));
        assert_eq!(other(("", "3", Some(11), points)), perhaps(Part::Time));
        // The same teams at the same time: somebody typed the number, or the pool, wrong.
        assert_eq!(other(("", "8", Some(9), points)), perhaps(Part::Number));
        assert_eq!(other(("Pool 2", "3", Some(9), points)), perhaps(Part::Pool));
        let voles = known(["Otters", "Voles"], ("Pool 1", "3", Some(9), (25, 20)));
        assert_eq!(first.is_one_with(&voles), differs(Part::Names));
    }

    #[test]
    fn teams_may_change_places_and_be_spelt_wrongly() {
        let told = |points| ("", "", None, points);
        let first = otters(told((25, 20)));
        let turned = known(["HERONS", " otters"], told((20, 25)));
        assert!(first.is_turned(&turned));
        assert_eq!(first.is_one_with(&turned), OneMatch::Yes);
        let spelt = known(["Oters", "Herons"], told((25, 20)));
        let perhaps = OneMatch::Perhaps(Part::Names);
        assert_eq!(first.is_one_with(&spelt), perhaps);
        let spelt = known(["Oters", "Herons"], told((25, 21)));
        assert_eq!(first.is_one_with(&spelt), OneMatch::No(Part::Names));
    }

    #[test]
    fn a_match_without_names_is_known_by_its_points_alone() {
        let first = known(["", ""], ("", "", Some(9), (25, 20)));
        let same = known(["", ""], ("", "", Some(9), (25, 20)));
        let other = known(["", ""], ("", "", Some(9), (25, 19)));
        assert_eq!(first.is_one_with(&same), OneMatch::Yes);
        assert_eq!(first.is_one_with(&other), OneMatch::Unknown);
    }

    #[test]
    fn names_are_alike_by_one_slip_and_no_more() {
        let alike = [
            ("Otters", "Oters"),
            ("Otters", "Ottres"),
            ("Otters", "OTTERS "),
            ("Red Otters", "Red-Otters"),
            ("Blue Jays", "Bluejays"),
            ("Herons", "Heron"),
        ];
        for (one, other) in alike {
            assert!(are_alike(one, other), "{one}, {other}");
        }
        let others = [
            ("Otters", "Herons"),
            ("Otters A", "Otters B"),
            ("Otters 1", "Otters 2"),
            ("Otters", "Otters 2"),
            ("Otters U14", "Otters U16"),
            ("East Otters", "West Otters"),
            ("Newts", "Swifts"),
            ("Otters", ""),
        ];
        for (one, other) in others {
            assert!(!are_alike(one, other), "{one}, {other}");
        }
    }

    #[test]
    fn the_strongest_counts_and_a_return_match_too() {
        let at = |hour, points| otters(("", "", hour, points));
        // A paper sheet without a time goes to the match with its points.
        let results = [
            (at(None, (25, 19)), Evidence::Paper),
            (at(Some(9), (25, 20)), Evidence::Record),
            (at(Some(9), (25, 18)), Evidence::Sealed),
            (at(Some(13), (25, 19)), Evidence::Record),
        ];
        let with = |result, other_points| {
            Some(Instead {
                result,
                other_points,
            })
        };
        let whole = [with(3, false), with(2, true), None, None];
        assert_eq!(instead(&results, Some(1)), whole);
        assert_eq!(instead(&results, None), whole);
        // Other points are another match only where teams may meet again.
        let other = [results[1].clone(), (at(None, (25, 3)), Evidence::Paper)];
        assert_eq!(instead(&other, Some(1)), [None, with(0, true)]);
        assert_eq!(instead(&other, Some(2)), [None, None]);
        assert_eq!(instead(&other, None), [None, None]);
    }

    #[test]
    fn a_team_that_has_withdrawn_loses_at_home_and_away() {
        let home = otters(("", "", None, (25, 0))).by_default();
        let away = known(["Herons", "Otters"], ("", "", None, (0, 25))).by_default();
        assert_eq!(home.is_one_with(&home), OneMatch::Yes);
        assert_eq!(home.is_one_with(&away), OneMatch::Perhaps(Part::Points));
    }

    #[test]
    fn a_match_that_is_not_over_gives_way_to_its_result() {
        let open = Known::new(["Otters", "Herons"], "", "3", None);
        let over = otters(("", "3", None, (25, 20)));
        let results = [(open, Evidence::Sealed), (over, Evidence::Paper)];
        let first = instead(&results, Some(1))[0].expect("the sheet counts");
        assert_eq!((first.result, first.other_points), (1, false));
    }
}
