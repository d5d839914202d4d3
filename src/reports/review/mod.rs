//! Looking back on a match with those who led it: what was called and when, the time between rallies, what
//! was taken back, how the points ran by rotation, what followed a time-out, and three questions to
//! oneself. Players are not counted here, let alone ranked.

mod question;

pub use question::Question;

use std::collections::BTreeMap;

use super::{PointMark, Sheet};
use game::entry::SeenBy;
use game::{Kind, Outcome, PointFor, RallyNote, SetPlay, Timeline};
use rules::{ByTeam, Cause, Score, Team};

/// So many rallies after a time-out are shown. Our own choice.
pub const AFTER_TIME_OUT: usize = 5;

/// A match, looked back on.
#[derive(Clone, Debug, Default)]
pub struct Review {
    /// The sets.
    pub sets: Vec<SetReview>,
    /// What was called, the commonest first.
    pub calls: Vec<Calls>,
    /// Entries that were taken back and stayed so.
    pub taken_back: Vec<TakenBack>,
    /// Entries made against the advice of the rules.
    pub insisted: usize,
    /// Sanctions of any kind.
    pub sanctions: usize,
}

/// One set.
#[derive(Clone, Debug, Default)]
pub struct SetReview {
    /// From 1.
    pub number: u8,
    /// Points at the end, or so far.
    pub score: Score,
    /// Every point that stands.
    pub points: Vec<Moment>,
    /// Time-outs.
    pub time_outs: Vec<TimeOut>,
    /// Points won and lost by the place in the order of service from which each team played them, the
    /// opening order first; empty where line-ups are not kept.
    pub rotations: ByTeam<Vec<(u16, u16)>>,
}

/// One point that stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Moment {
    /// The entry that gave it.
    pub entry: u32,
    /// Whose.
    pub team: Team,
    /// The score with it.
    pub score: Score,
    /// Why the rally ended, where it was said; none for a penalty.
    pub cause: Option<Cause>,
    /// Who of the other officials showed it, where that was noted.
    pub seen_by: Option<SeenBy>,
    /// Seconds since the rally before it, where both have a time and nothing but play was between.
    pub pause: Option<i64>,
    /// Whether something was entered between the rallies: a request, a sanction, an interruption.
    pub held_up: bool,
}

/// How often something was called.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Calls {
    /// What.
    pub cause: Cause,
    /// When: the set, and the point in it from 0.
    pub when: Vec<(u8, usize)>,
    /// Those of them that another official showed to the first referee.
    pub shown: Vec<(u8, usize)>,
}

/// A time-out and what followed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TimeOut {
    /// Whose.
    pub team: Team,
    /// The score then.
    pub score: Score,
    /// Points that the other team had won in a row before it.
    pub run_before: u16,
    /// Who won the next points, at most [`AFTER_TIME_OUT`].
    pub after: Vec<Team>,
}

/// An entry that was taken back.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TakenBack {
    /// The entry.
    pub entry: u32,
    /// What it was.
    pub kind: Kind,
    /// Seconds until it was taken back.
    pub after: Option<i64>,
    /// Why, where it was said.
    pub why: Option<String>,
}

/// What was known when a point was given.
#[derive(Clone, Copy, Default)]
struct Context {
    pause: Option<i64>,
    held_up: bool,
    places: ByTeam<Option<usize>>,
}

impl Review {
    /// Looks back on a log.
    #[must_use]
    pub fn of(timeline: &Timeline) -> Review {
        let contexts = contexts(timeline);
        let sheet = Sheet::of(timeline);
        let state = timeline.state();
        let sets: Vec<SetReview> = sheet
            .sets
            .iter()
            .filter(|set| set.began.is_some() || !set.running.is_empty())
            .map(|set| {
                let said = |entry| state.said(entry);
                let standing = set.running.iter().filter(|p| p.cancelled_by.is_none());
                let points = moments(standing, &contexts, said);
                let time_outs = set
                    .time_outs
                    .iter()
                    .map(|t| time_out(t.team, t.score, &points));
                SetReview {
                    number: set.number,
                    score: set.score,
                    time_outs: time_outs.collect(),
                    rotations: ByTeam::new(|team| rotations(team, &points, &contexts)),
                    points,
                }
            })
            .collect();
        Review {
            calls: calls(&sets),
            taken_back: taken_back(timeline),
            insisted: timeline
                .outcomes()
                .filter(|(_, o)| matches!(o, Outcome::Insisted(_)))
                .count(),
            sanctions: state
                .sanctions()
                .iter()
                .filter(|s| s.kind.is_card())
                .count(),
            sets,
        }
    }

    /// Rallies of which nobody said why they ended.
    #[must_use]
    pub fn unsaid(&self) -> usize {
        let points = self.sets.iter().flat_map(|s| &s.points);
        points
            .filter(|p| matches!(p.cause, None | Some(Cause::NotSaid)))
            .count()
    }

    /// How many reasons each of the other officials showed; those who showed none are left out.
    #[must_use]
    pub fn shown_by(&self) -> Vec<(SeenBy, usize)> {
        let of = |by: SeenBy| {
            let points = self.sets.iter().flat_map(|s| &s.points);
            points.filter(|p| p.seen_by == Some(by)).count()
        };
        let all = SeenBy::ALL.map(|by| (by, of(by)));
        all.into_iter().filter(|(_, times)| *times > 0).collect()
    }

    /// All points that stand.
    #[must_use]
    pub fn points(&self) -> usize {
        self.sets.iter().map(|s| s.points.len()).sum()
    }

    /// The usual time between two rallies when nothing held play up, in seconds: half of them were shorter.
    #[must_use]
    pub fn usual_pause(&self) -> Option<i64> {
        let points = self.sets.iter().flat_map(|s| &s.points);
        let mut pauses: Vec<i64> = points
            .filter_map(|p| p.pause.filter(|_| !p.held_up))
            .collect();
        pauses.sort_unstable();
        pauses.get(pauses.len() / 2).copied()
    }

    /// The longest such time, with its set and the score after it.
    #[must_use]
    pub fn longest_pause(&self) -> Option<(i64, u8, Score)> {
        let points = self
            .sets
            .iter()
            .flat_map(|s| s.points.iter().map(|p| (s.number, p)));
        points
            .filter(|(_, p)| !p.held_up)
            .filter_map(|(set, p)| Some((p.pause?, set, p.score)))
            .max_by_key(|(pause, _, _)| *pause)
    }
}

/// Goes through the log once and notes what was so when each point was given.
fn contexts(timeline: &Timeline) -> BTreeMap<u32, Context> {
    let mut contexts = BTreeMap::new();
    let mut last: Option<i64> = None;
    let mut held_up = false;
    timeline.walk(|before, entry, outcome, after| {
        if !outcome.counts() {
            return;
        }
        match entry.kind {
            Kind::Rally { .. } => {
                let pause = entry.at.zip(last).map(|(at, last)| (at - last) / 1000);
                contexts.insert(
                    entry.n,
                    Context {
                        pause: pause.filter(|p| *p >= 0),
                        held_up,
                        places: ByTeam::new(|team| place(before.play()?, team)),
                    },
                );
                last = entry.at;
                held_up = false;
            }
            Kind::BeginSet => {
                last = entry.at;
                held_up = false;
            }
            Kind::Explain { .. }
            | Kind::Strike { .. }
            | Kind::LiberoReplacement { .. }
            | Kind::Remark { .. }
            | Kind::Timer(_) => {}
            _ => held_up = true,
        }
        if before.play().is_some() && after.play().is_none() {
            last = None;
        }
    });
    contexts
}

/// How often a team has rotated since the set began, as a place in its order of service.
fn place(play: &SetPlay, team: Team) -> Option<usize> {
    let side = &play.sides[team];
    let first = side.slots.first()?.starter;
    side.line_up().iter().position(|s| *s == first)
}

fn moments<'a>(
    standing: impl Iterator<Item = &'a PointMark>,
    contexts: &BTreeMap<u32, Context>,
    said: impl Fn(u32) -> Option<RallyNote>,
) -> Vec<Moment> {
    let mut score = Score::default();
    standing
        .map(|p| {
            score = score.plus(p.team);
            let context = contexts.get(&p.entry).copied().unwrap_or_default();
            let said = said(p.entry).filter(|_| p.given_for == PointFor::Rally);
            Moment {
                entry: p.entry,
                team: p.team,
                score,
                cause: said.map(|s| s.cause),
                seen_by: said.and_then(|s| s.seen_by),
                pause: context.pause,
                held_up: context.held_up,
            }
        })
        .collect()
}

fn time_out(team: Team, score: Score, points: &[Moment]) -> TimeOut {
    let at = points
        .iter()
        .position(|p| p.score == score)
        .map_or(0, |i| i + 1);
    let run = points[..at].iter().rev().take_while(|p| p.team != team);
    TimeOut {
        team,
        score,
        run_before: u16::try_from(run.count()).unwrap_or(u16::MAX),
        after: points[at..]
            .iter()
            .take(AFTER_TIME_OUT)
            .map(|p| p.team)
            .collect(),
    }
}

fn rotations(team: Team, points: &[Moment], contexts: &BTreeMap<u32, Context>) -> Vec<(u16, u16)> {
    let mut all = Vec::new();
    for point in points {
        let Some(place) = contexts.get(&point.entry).and_then(|c| c.places[team]) else {
            continue;
        };
        if all.len() <= place {
            all.resize(place + 1, (0, 0));
        }
        if point.team == team {
            all[place].0 += 1;
        } else {
            all[place].1 += 1;
        }
    }
    all
}

fn calls(sets: &[SetReview]) -> Vec<Calls> {
    let mut calls: BTreeMap<Cause, Calls> = BTreeMap::new();
    for set in sets {
        for (i, point) in set.points.iter().enumerate() {
            if let Some(cause) = point.cause.filter(|c| *c != Cause::NotSaid) {
                let calls = calls.entry(cause).or_insert_with(|| Calls {
                    cause,
                    when: Vec::new(),
                    shown: Vec::new(),
                });
                calls.when.push((set.number, i));
                if point.seen_by.is_some() {
                    calls.shown.push((set.number, i));
                }
            }
        }
    }
    let mut calls: Vec<Calls> = calls.into_values().collect();
    rules::sort_by_key(&mut calls, |c| std::cmp::Reverse(c.when.len()));
    calls
}

fn taken_back(timeline: &Timeline) -> Vec<TakenBack> {
    let struck = timeline
        .outcomes()
        .filter_map(|(entry, outcome)| match outcome {
            Outcome::Struck(by) => Some((entry, timeline.entry(*by)?)),
            _ => None,
        });
    struck
        .filter(|(entry, _)| !matches!(entry.kind, Kind::Strike { .. }))
        // A rally that was replayed was no slip.
        .filter(|(_, by)| matches!(by.kind, Kind::Strike { .. }))
        .map(|(entry, by)| TakenBack {
            entry: entry.n,
            kind: entry.kind.clone(),
            after: entry.at.zip(by.at).map(|(at, by)| (by - at) / 1000),
            why: match &by.kind {
                Kind::Strike { why, .. } => why.clone(),
                _ => None,
            },
        })
        .collect()
}
