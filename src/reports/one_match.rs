//! Whether two results are of one match: by the names of the teams, the pool, the number of the match, the
//! time of play and the points, in this order. The table, the list and the comparison all ask here.

mod counting;
mod names;

use game::entry::{Detail, Heading};
use game::{Kind, Timeline};
use names::{fit, plain, Fit};
use rules::ByTeam;

pub use counting::{instead, Evidence, Instead};
pub use names::are_alike;

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
        let same = |one: &str, other: &str| {
            let known = !one.is_empty() && !other.is_empty();
            known.then_some(one == other)
        };
        let number = same(&self.number, &other.number);
        let together = self.time.zip(other.time);
        let together = together.map(|(one, other)| one.0 <= other.1 && other.0 <= one.1);
        if fit == Fit::Other {
            // A name that was changed makes no second match of one that a team played at that time.
            let is_same = number == Some(true) || self.same_points(other) == Some(true);
            return match together == Some(true) && is_same && self.shares_a_team(other) {
                true => OneMatch::Perhaps(Part::Names),
                false => OneMatch::No(Part::Names),
            };
        }
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

    /// Whether one of the teams plays in both.
    fn shares_a_team(&self, other: &Known) -> bool {
        let theirs = [&other.names.a, &other.names.b];
        let ours = [&self.names.a, &self.names.b];
        ours.iter()
            .any(|name| !name.is_empty() && theirs.contains(name))
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
        let voles = |told| first.is_one_with(&known(["Otters", "Voles"], told));
        assert_eq!(
            voles(("Pool 1", "3", Some(11), (25, 20))),
            differs(Part::Names)
        );
        assert_eq!(
            voles(("Pool 1", "4", Some(9), (25, 18))),
            differs(Part::Names)
        );
        // Nobody plays two matches at once: somebody has changed the name of the other team.
        assert_eq!(
            voles(("Pool 1", "3", Some(9), (25, 20))),
            perhaps(Part::Names)
        );
        assert_eq!(voles(("", "", Some(9), (25, 20))), perhaps(Part::Names));
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
