//! The notes of an observer laid beside the record of the match, by the score and by the time.
//!
//! Two phones have two clocks, and an observer misses a rally now and then or notes something a tap too early. So
//! the rallies are aligned first, which says how far the clocks are apart; a note then belongs to the point that
//! its own time names, and where time says nothing to the point that its score names. Who keeps no score taps at
//! least where a set begins, which shows a clock that is minutes wrong.

use super::compare::align::{align, Step};
use super::review::Review;
use game::{Kind, Timeline};
use record::{Event, NoteKind, Observation, Observed};
use rules::{Score, Team};

/// So much earlier than the point was entered a note may be made that is about it, in seconds: the whistle comes
/// first, then the signals, then the referee's tap. Our own choice.
const BEFORE_ENTRY: i64 = 5;
/// A note so long before the first point or behind the last one is of no point, in seconds. Our own choice.
const AROUND: i64 = 600;
/// Fewer rallies may run like those of any match, and say nothing. Our own choice.
const ENOUGH_RALLIES: usize = 10;
/// One slip in so many rallies is what an observer makes; two matches that have nothing to do with each other
/// differ in about one of three. Our own choice.
const RALLIES_A_SLIP: usize = 6;
/// Within so many seconds of each other half of the differences have to lie, or times say nothing. Our own choice.
const SPREAD: i64 = 20;

/// A point of the record that a note is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct At {
    /// The entry that gave it.
    pub entry: u32,
    /// The set, from 1.
    pub set: u8,
    /// The score with it.
    pub score: Score,
}

/// By what a note was laid beside its point.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum By {
    /// Time and score say the same, or one point apart.
    Both,
    /// The score alone.
    Score,
    /// The time alone.
    Time,
}

/// A note beside the record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Laid {
    /// What it was.
    pub kind: NoteKind,
    /// What was added in words; may be empty.
    pub words: String,
    /// The point it is about, and by what; none where the record has none that fits.
    pub at: Option<(At, By)>,
}

/// Notes beside a record.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Beside {
    /// The notes, the oldest first.
    pub notes: Vec<Laid>,
    /// Rallies that the observer tapped.
    pub rallies: usize,
    /// Rallies that were missed, tapped twice or given to the other team.
    pub slips: usize,
    /// How far the observer's clock is ahead, in seconds; none where nothing says so.
    pub clock: Option<i64>,
}

impl Beside {
    /// Whether the observer tapped rallies enough for the score to say anything.
    #[must_use]
    pub const fn keeps_score(&self) -> bool {
        self.rallies >= ENOUGH_RALLIES
    }

    /// Whether they may well be of this match: the points run alike, or, where the score was not kept, all
    /// notes were made while it was played.
    #[must_use]
    pub fn fits(&self) -> bool {
        if self.keeps_score() {
            self.slips * RALLIES_A_SLIP <= self.rallies
        } else {
            self.notes.iter().all(|note| note.at.is_some())
        }
    }
}

/// Whether the observer kept the score, and whether it runs like the record.
#[derive(Clone, Copy)]
enum ScoreKept {
    Fits,
    DoesNotFit,
    No,
}

impl ScoreKept {
    fn of(rallies: &[(i64, Team)], alignment: &Alignment) -> ScoreKept {
        if rallies.len() < ENOUGH_RALLIES {
            ScoreKept::No
        } else if alignment.slips * RALLIES_A_SLIP <= rallies.len() {
            ScoreKept::Fits
        } else {
            ScoreKept::DoesNotFit
        }
    }
}

/// What the observer's clock says of the record's times.
#[derive(Clone, Copy)]
enum Clocks {
    /// It is so many seconds ahead.
    Ahead(i64),
    /// Nothing says how far they are apart, so they are taken as they are.
    AsTheyAre,
    /// They are not compared.
    NotCompared,
}

impl Clocks {
    /// A moment of the observer's clock as the record's clock has it, in seconds.
    const fn in_record(self, at: i64) -> Option<i64> {
        match self {
            Clocks::Ahead(ahead) => Some(at - ahead),
            Clocks::AsTheyAre => Some(at),
            Clocks::NotCompared => None,
        }
    }
}

/// A point of the record as it is needed here.
struct Point {
    at: At,
    won_by: Team,
    /// Whether a rally was played for it.
    is_rally: bool,
    /// In seconds.
    time: Option<i64>,
}

/// Lays notes beside a record.
#[must_use]
pub fn lay(observed: &Observed, timeline: &Timeline) -> Beside {
    let points = points(timeline);
    let began = observed.began.div_euclid(1000);
    let rallies: Vec<(i64, Team)> = observed
        .rallies()
        .map(|(at, won_by)| (began + i64::from(at), won_by))
        .collect();
    let alignment = Alignment::best(&rallies, &points);
    let score = ScoreKept::of(&rallies, &alignment);
    let clocks = match score {
        ScoreKept::Fits => match alignment.clock(&rallies, &points) {
            Some(ahead) => Clocks::Ahead(ahead),
            None => Clocks::NotCompared,
        },
        // It may be another match: two clocks say nothing of it.
        ScoreKept::DoesNotFit => Clocks::NotCompared,
        ScoreKept::No => match clock_of_sets(observed, &points) {
            Some(ahead) => Clocks::Ahead(ahead),
            None => Clocks::AsTheyAre,
        },
    };
    let notes = observed.notes().map(|(place, kind, words)| {
        let event = &observed.events[place];
        let before = observed.standing(place).rallies;
        let by_score = match score {
            ScoreKept::Fits => alignment.point_of(before),
            ScoreKept::DoesNotFit | ScoreKept::No => None,
        };
        let by_time = clocks
            .in_record(began + i64::from(event.at))
            .and_then(|time| at_time(&points, time));
        Laid {
            kind,
            words: words.to_owned(),
            at: choose(&points, by_score, by_time).map(|(at, by)| (points[at].at, by)),
        }
    });
    Beside {
        notes: notes.collect(),
        rallies: rallies.len(),
        slips: alignment.slips,
        clock: match clocks {
            Clocks::Ahead(ahead) => Some(ahead),
            Clocks::AsTheyAre | Clocks::NotCompared => None,
        },
    }
}

/// Time decides, since the clocks were put right by all rallies together; a tap may have come late. Only a point
/// that no rally was played for time takes for the rally before it.
fn choose(
    points: &[Point],
    by_score: Option<usize>,
    by_time: Option<usize>,
) -> Option<(usize, By)> {
    match (by_score, by_time) {
        (Some(score), Some(time)) if score.abs_diff(time) <= 1 => {
            let after_rally = time < score && !points[score].is_rally;
            Some((if after_rally { score } else { time }, By::Both))
        }
        (_, Some(time)) => Some((time, By::Time)),
        (Some(score), None) => Some((score, By::Score)),
        (None, None) => None,
    }
}

fn points(timeline: &Timeline) -> Vec<Point> {
    let review = Review::of(timeline);
    let of_set = |set: &super::review::SetReview| {
        let number = set.number;
        let points = set.points.iter().map(move |point| {
            let entry = timeline.entry(point.entry);
            Point {
                at: At {
                    entry: point.entry,
                    set: number,
                    score: point.score,
                },
                won_by: point.team,
                is_rally: entry.is_some_and(|entry| matches!(entry.kind, Kind::Rally { .. })),
                time: entry
                    .and_then(|entry| entry.at)
                    .map(|at| at.div_euclid(1000)),
            }
        });
        points.collect::<Vec<_>>()
    };
    review.sets.iter().flat_map(of_set).collect()
}

/// How far the observer's clock is ahead by the taps for a next set, each of which was made between two sets of
/// the record; none where there are no such taps, or where it is open which sets they belong to.
fn clock_of_sets(observed: &Observed, points: &[Point]) -> Option<i64> {
    let began = observed.began.div_euclid(1000);
    let is_next = |event: &&Event| event.seen == Observation::NewSet;
    let taps = observed.events.iter().filter(is_next);
    let taps: Vec<i64> = taps.map(|event| began + i64::from(event.at)).collect();
    // From the last point of a set to the first one of the next.
    let between = points
        .windows(2)
        .filter(|pair| pair[0].at.set != pair[1].at.set);
    let between: Vec<(i64, i64)> = between
        .filter_map(|pair| Some((pair[0].time?, pair[1].time?)))
        .collect();
    // What the clock can be if the first tap belongs to the first of these pairs: all taps have to agree.
    let ahead = |pairs: &[(i64, i64)]| {
        let each = taps
            .iter()
            .zip(pairs)
            .map(|(tap, (end, begin))| (tap - begin, tap - end));
        let both = each.reduce(|a, b| (a.0.max(b.0), a.1.min(b.1)))?;
        (both.0 <= both.1).then_some(both)
    };
    // Whoever sits down later begins with a later set.
    let fits: Vec<(i64, i64)> = between
        .windows(taps.len().max(1))
        .filter_map(ahead)
        .collect();
    if fits
        .iter()
        .any(|(least, most)| (*least..=*most).contains(&0))
    {
        return Some(0);
    }
    match fits[..] {
        [(least, most)] => Some(i64::midpoint(least, most)),
        _ => None,
    }
}

/// The last point that was entered by a moment, or a little later.
fn at_time(points: &[Point], time: i64) -> Option<usize> {
    let rallies = || {
        points
            .iter()
            .enumerate()
            .filter(|(_, point)| point.is_rally)
    };
    let timed = || rallies().filter_map(|(i, point)| Some((i, point.time?)));
    let (first, last) = (timed().next()?, timed().next_back()?);
    if time < first.1 - AROUND || time > last.1 + AROUND {
        return None;
    }
    let before = timed()
        .take_while(|(_, at)| *at <= time + BEFORE_ENTRY)
        .last();
    // What is noted before the first point is about the first rally.
    Some(before.unwrap_or(first).0)
}

/// The observer's rallies beside the points of the record.
struct Alignment {
    /// The point of the record of each rally, where there is the same one.
    pairs: Vec<Option<usize>>,
    /// Rallies that were missed, tapped twice or given to the other team.
    slips: usize,
    /// The point of the record at which the notes begin.
    from: usize,
}

impl Alignment {
    /// With either team as A, and from the beginning of whichever set fits best.
    fn best(rallies: &[(i64, Team)], points: &[Point]) -> Alignment {
        let starts = points.iter().enumerate().filter_map(|(i, point)| {
            let new = i == 0 || points[i - 1].at.set != point.at.set;
            new.then_some(i)
        });
        let starts: Vec<usize> = starts.collect();
        let mut best = Alignment {
            pairs: vec![None; rallies.len()],
            slips: rallies.len(),
            from: 0,
        };
        for swapped in [false, true] {
            let seen: Vec<Team> = rallies
                .iter()
                .map(|(_, team)| if swapped { team.other() } else { *team })
                .collect();
            for &from in &starts {
                let found = Alignment::of(&seen, points, from);
                if found.slips < best.slips {
                    best = found;
                }
            }
        }
        best
    }

    fn of(seen: &[Team], points: &[Point], from: usize) -> Alignment {
        let rest: Vec<Team> = points[from..].iter().map(|point| point.won_by).collect();
        let mut pairs = vec![None; seen.len()];
        let mut slips = 0;
        for Step { at, takes, tail } in align(seen, &rest, [true, false]) {
            // What follows the last tap is no slip: the observer has gone home.
            if tail && takes == (false, true) {
                break;
            }
            if takes == (true, true) && seen[at.0] == rest[at.1] {
                pairs[at.0] = Some(from + at.1);
            } else {
                slips += 1;
            }
        }
        Alignment { pairs, slips, from }
    }

    /// The point that a note is about which has so many rallies before it: the last of them.
    fn point_of(&self, rallies_before: usize) -> Option<usize> {
        let Some(last) = rallies_before.checked_sub(1) else {
            // Before the first tap: about the first rally.
            return self.pairs.iter().flatten().next().map(|_| self.from);
        };
        // A rally that the record does not have stands behind the one before it.
        let known = self.pairs.iter().take(last + 1).rev().flatten().next();
        known.copied().or(Some(self.from))
    }

    /// How far the observer's clock is ahead: the middle one of the differences, where half of them lie close
    /// to it.
    fn clock(&self, rallies: &[(i64, Team)], points: &[Point]) -> Option<i64> {
        let pairs = rallies.iter().zip(&self.pairs);
        let mut apart: Vec<i64> = pairs
            .filter_map(|((seen, _), point)| Some(seen - points[(*point)?].time?))
            .collect();
        if apart.len() < ENOUGH_RALLIES {
            return None;
        }
        apart.sort_unstable();
        let middle = apart[apart.len() / 2];
        let near = apart[apart.len() * 3 / 4] - apart[apart.len() / 4];
        (near <= SPREAD).then_some(middle)
    }
}
