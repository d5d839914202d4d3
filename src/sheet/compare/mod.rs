//! Two records of one match side by side: the first rally where they part, the score there, and every
//! difference after it, explained by as few causes as suffice.
//!
//! What was taken back and what was refused does not count: compared is what each record says in the
//! end, point for point and interruption for interruption.

mod align;
mod draw;
mod print;
mod say;
mod story;

pub use draw::winners;
pub use print::{json, text};
pub use say::say;

use std::collections::BTreeSet;

use align::{align, Step};
use story::{Happening, SetStory, Story};

use crate::game::{Kind, Phase, Replay};
use crate::rules::{ByTeam, Cause, Score, Team};

/// One of the two records.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Which {
    /// The one named first.
    First,
    /// The one named second.
    Second,
}

impl Which {
    /// The other one.
    #[must_use]
    pub const fn other(self) -> Which {
        match self {
            Which::First => Which::Second,
            Which::Second => Which::First,
        }
    }
}

/// Two records, compared.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comparison {
    /// Names of the teams, for the sentences.
    pub names: ByTeam<String>,
    /// Every difference in the order of the match.
    pub differences: Vec<Difference>,
}

impl Comparison {
    /// The first point that is not the same in both.
    #[must_use]
    pub fn parting(&self) -> Option<&Difference> {
        self.differences
            .iter()
            .find(|d| matches!(d.what, What::Point { .. } | What::Stops { .. }))
    }

    /// Whether A of the first record is B of the second.
    #[must_use]
    pub fn is_exchanged(&self) -> bool {
        let all = self.differences.iter();
        all.into_iter()
            .any(|d| matches!(d.what, What::LettersExchanged))
    }
}

/// One difference.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Difference {
    /// The kind of entry that differs.
    pub code: &'static str,
    /// The set, from 1; none for the heading.
    pub set: Option<u8>,
    /// The rally in its set, from 1: the one that differs, or the one that came next. Penalty points are
    /// completed rallies (FIVB Official Volleyball Rules 2025-2028, 6.1.3) and count.
    pub rally: Option<usize>,
    /// The score at that moment in the first record, or in the only one.
    pub score: Option<Score>,
    /// Numbers of the entries in the first and in the second record.
    pub entries: (Option<u32>, Option<u32>),
    /// What differs.
    pub what: What,
}

/// What differs.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the sentence names.
pub enum What {
    /// Other names of the teams.
    Names {
        first: ByTeam<String>,
        second: ByTeam<String>,
    },
    /// A and B are exchanged; compared with that put right.
    LettersExchanged,
    /// Other rules.
    Rules,
    /// A point: to the other team, given for something else, or only in one record. `longer` says in
    /// which record the set goes on for how many points because of it.
    Point {
        first: Option<(Team, Kind)>,
        second: Option<(Team, Kind)>,
        longer: Option<(Which, usize)>,
    },
    /// One record ends here, the other has so many points more in this set.
    Stops { which: Which, more: usize },
    /// Another cause of the same rally.
    Cause { first: Cause, second: Cause },
    /// Something only one record has.
    OnlyIn { which: Which, kind: Kind },
    /// Something one record never has and the other several times.
    NeverIn { which: Which, times: usize },
    /// The same at another score.
    Moved { kind: Kind, second: Score },
    /// Something else at the same moment.
    Otherwise { first: Kind, second: Kind },
    /// A set only one record has.
    SetOnlyIn { which: Which },
}

/// Compares two records.
#[must_use]
pub fn compare(first: &Replay, second: &Replay) -> Comparison {
    Comparison {
        names: ByTeam::new(|team| first.state().name(team).to_owned()),
        differences: explained(first, second, MOST_CAUSES),
    }
}

/// So many causes are put right one after the other; two records of one match have few.
const MOST_CAUSES: u8 = 8;

/// The differences by as few causes as suffice. A wrong rally can move the end of a set, and with it
/// everything that follows. Whether it is the cause of it all is tried out: it is put right, the records
/// are folded again, and what still differs has another cause.
fn explained(first: &Replay, second: &Replay, most: u8) -> Vec<Difference> {
    let plain = differences(first, second);
    if most == 0 || plain.len() < 2 {
        return plain;
    }
    let tried = put_right(first, second).into_iter().map(|(cause, a, b)| {
        let left = differences(&a, &b).len();
        (left, cause, a, b)
    });
    let Some((left, cause, a, b)) = tried.min_by_key(|t| t.0) else {
        return plain;
    };
    if left >= plain.len() {
        return plain;
    }
    let mut rest = explained(&a, &b, most - 1);
    if rest.len() + 1 >= plain.len() {
        return plain;
    }
    rest.push(cause);
    rest.sort_by_key(|d| (d.set, d.rally));
    rest
}

/// The ways to put the first parting right, each with the records that it leaves: the rally goes to the
/// other team, or the point is not there in the one or in the other.
fn put_right(first: &Replay, second: &Replay) -> Vec<(Difference, Replay, Replay)> {
    let exchanged = headings(first, second).1;
    let (one, two) = (Story::of(first, false), Story::of(second, exchanged));
    let in_both = one
        .sets
        .iter()
        .filter_map(|(key, a)| Some((key.0, a, two.sets.get(key)?)));
    let parting = in_both
        .filter_map(|(set, a, b)| {
            let mut pairs = a.points.iter().zip(&b.points);
            let place = pairs.position(|(p, q)| p.to != q.to || p.code != q.code)?;
            Some((set, place, &a.points[place], &b.points[place]))
        })
        .next();
    let Some((set, i, p, q)) = parting else {
        return Vec::new();
    };
    let changed = |replay: &Replay, n: u32, change: fn(&mut Kind)| {
        let mut entries = replay.entries().to_vec();
        let entry = entries.iter_mut().find(|e| e.n == n);
        entry.into_iter().for_each(|e| change(&mut e.kind));
        Replay::of(entries)
    };
    // A remark in its place keeps the numbers that other entries name.
    let silence = |kind: &mut Kind| {
        *kind = Kind::Remark {
            text: String::new(),
            team: None,
        };
    };
    let turn = |kind: &mut Kind| {
        if let Kind::Rally { won_by, .. } = kind {
            *won_by = won_by.other();
        }
    };
    let mut ways = Vec::new();
    if p.code == "rally" && q.code == "rally" {
        let cause = point(set, i, Some(p), Some(q));
        ways.push((cause, changed(first, p.entry, turn), second.clone()));
    }
    let lacking = point(set, i, Some(p), None);
    ways.push((lacking, changed(first, p.entry, silence), second.clone()));
    let too_many = point(set, i, None, Some(q));
    ways.push((too_many, first.clone(), changed(second, q.entry, silence)));
    ways
}

/// A point that differs, at its place from 0 in the set.
fn point(
    set: u8,
    place: usize,
    first: Option<&story::Point>,
    second: Option<&story::Point>,
) -> Difference {
    let told = |p: &story::Point| (p.to, p.kind.clone());
    let code = match (first, second) {
        // A rally here and a penalty there: the penalty is what differs.
        (Some(p), Some(q)) if p.code == "rally" => q.code,
        (Some(p), _) | (None, Some(p)) => p.code,
        (None, None) => "rally",
    };
    Difference {
        code,
        set: Some(set),
        rally: Some(place + 1),
        score: first.or(second).map(|p| p.score),
        entries: (first.map(|p| p.entry), second.map(|p| p.entry)),
        what: What::Point {
            first: first.map(told),
            second: second.map(told),
            longer: None,
        },
    }
}

/// The differences as they stand, the points of each set aligned.
fn differences(first: &Replay, second: &Replay) -> Vec<Difference> {
    let (mut differences, exchanged) = headings(first, second);
    let stories = [Story::of(first, false), Story::of(second, exchanged)];
    let keep_players = first.state().rules().line_ups && second.state().rules().line_ups;
    let keys: BTreeSet<(u8, u8)> = stories
        .iter()
        .flat_map(|s| s.sets.keys())
        .copied()
        .collect();
    let (mut other_winner, mut stopped) = (false, false);
    for key in keys {
        let (number, _) = key;
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
                what: What::SetOnlyIn { which },
            });
            stopped = true;
        }
    }
    gather(&mut differences, &stories);
    differences.sort_by_key(|d| (d.set, d.rally));
    differences
}

/// Names and rules, and whether the letters of the teams are exchanged.
fn headings(first: &Replay, second: &Replay) -> (Vec<Difference>, bool) {
    let heading = |what| Difference {
        code: "match",
        set: None,
        rally: None,
        score: None,
        entries: (Some(1), Some(1)),
        what,
    };
    let (Some(one), Some(two)) = (first.state().heading(), second.state().heading()) else {
        return (Vec::new(), false);
    };
    let alike = |a: &str, b: &str| {
        a.is_empty() || b.is_empty() || a.trim().to_lowercase() == b.trim().to_lowercase()
    };
    let same = alike(&one.names.a, &two.names.a) && alike(&one.names.b, &two.names.b);
    let exchanged = !same && alike(&one.names.a, &two.names.b) && alike(&one.names.b, &two.names.a);
    let mut found = Vec::new();
    if exchanged {
        found.push(heading(What::LettersExchanged));
    } else if !same {
        found.push(heading(What::Names {
            first: one.names.clone(),
            second: two.names.clone(),
        }));
    }
    // A tally beside the match has rules of its own.
    let both_keep_players = one.rules.line_ups && two.rules.line_ups;
    if both_keep_players && one.rules != two.rules {
        found.push(heading(What::Rules));
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

/// One set of both records.
struct Set<'a> {
    number: u8,
    a: &'a SetStory,
    b: &'a SetStory,
    /// Whether each record has a later set.
    later: [bool; 2],
    keep_players: bool,
}

impl Set<'_> {
    fn differences(&self) -> Vec<Difference> {
        let letters = |s: &SetStory| s.points.iter().map(|p| p.to).collect::<Vec<_>>();
        let over = [self.a.winner.is_some(), self.b.winner.is_some()];
        let steps = align(&letters(self.a), &letters(self.b), over);
        let mut found = self.points(&steps, over);
        found.extend(self.others(&steps));
        found
    }

    /// The differences between the points, one for each step that is not the same in both.
    fn points(&self, steps: &[Step], over: [bool; 2]) -> Vec<Difference> {
        let mut found: Vec<Difference> = Vec::new();
        for step in steps {
            let (i, j) = (step.at.0, step.at.1);
            let first = step.takes.0.then(|| &self.a.points[i]);
            let second = step.takes.1.then(|| &self.b.points[j]);
            if step.tail {
                let which = if first.is_some() {
                    Which::First
                } else {
                    Which::Second
                };
                self.tail(which, (i, j), over, &mut found);
                break;
            }
            if let (Some(p), Some(q)) = (first, second) {
                if p.to == q.to && p.code == q.code {
                    found.extend(cause(self.number, i, p, q));
                    continue;
                }
            }
            let place = if first.is_some() { i } else { j };
            found.push(point(self.number, place, first, second));
        }
        found
    }

    /// Points at the end that only one record has: the set went on because of what differs before, or
    /// the other record stops.
    fn tail(&self, which: Which, at: (usize, usize), over: [bool; 2], found: &mut Vec<Difference>) {
        let (story, place, other_over, other_goes_on) = match which {
            Which::First => (self.a, at.0, over[1], self.later[1]),
            Which::Second => (self.b, at.1, over[0], self.later[0]),
        };
        let more = story.points.len() - place;
        let last = found.iter_mut().rev().find_map(|d| match &mut d.what {
            What::Point { longer, .. } => Some(longer),
            _ => None,
        });
        match last {
            Some(longer) if other_over || other_goes_on => *longer = Some((which, more)),
            _ => {
                let point = &story.points[place];
                let entries = match which {
                    Which::First => (Some(point.entry), None),
                    Which::Second => (None, Some(point.entry)),
                };
                found.push(Difference {
                    code: point.code,
                    set: Some(self.number),
                    rally: Some(place + 1),
                    score: Some(point.score),
                    entries,
                    what: What::Stops {
                        which: which.other(),
                        more,
                    },
                });
            }
        }
    }

    /// Everything but points. Two happenings are at the same moment where the aligned points say so.
    fn others(&self, steps: &[Step]) -> Vec<Difference> {
        let counts = |h: &&Happening| {
            self.keep_players
                || !matches!(
                    h.kind,
                    Kind::Toss(_)
                        | Kind::LineUp { .. }
                        | Kind::Substitution { .. }
                        | Kind::LiberoReplacement { .. }
                        | Kind::NewLibero { .. }
                        | Kind::Recovery { .. }
                )
        };
        let mut first: Vec<&Happening> = self.a.others.iter().filter(counts).collect();
        let mut second: Vec<&Happening> = self.b.others.iter().filter(counts).collect();
        // Where a record stops, nothing after it is missing one by one.
        let stop = steps.iter().find(|s| s.tail).map(|s| s.at);
        if let Some((i, j)) = stop {
            first.retain(|h| h.after <= i);
            second.retain(|h| h.after <= j);
        }
        let together = |a: &Happening, b: &Happening| align::meets(steps, (a.after, b.after));
        pair_off(&mut first, &mut second, |a, b| {
            a.kind == b.kind && together(a, b)
        });
        let mut found = Vec::new();
        let moved = pair_off(&mut first, &mut second, |a, b| a.kind == b.kind);
        for (a, b) in moved {
            let what = What::Moved {
                kind: a.kind.clone(),
                second: b.score,
            };
            found.push(self.difference(Some(a), Some(b), what));
        }
        let otherwise = pair_off(&mut first, &mut second, |a, b| {
            a.code == b.code && a.team == b.team && together(a, b)
        });
        for (a, b) in otherwise {
            let what = What::Otherwise {
                first: a.kind.clone(),
                second: b.kind.clone(),
            };
            found.push(self.difference(Some(a), Some(b), what));
        }
        for (which, rest) in [(Which::First, first), (Which::Second, second)] {
            for h in rest {
                let kind = h.kind.clone();
                let what = What::OnlyIn { which, kind };
                let (a, b) = match which {
                    Which::First => (Some(h), None),
                    Which::Second => (None, Some(h)),
                };
                found.push(self.difference(a, b, what));
            }
        }
        found
    }

    fn difference(&self, a: Option<&Happening>, b: Option<&Happening>, what: What) -> Difference {
        let told = a.or(b);
        Difference {
            code: told.map_or("", |h| h.code),
            set: Some(self.number),
            rally: told.map(|h| h.after + 1),
            score: told.map(|h| h.score),
            entries: (a.map(|h| h.entry), b.map(|h| h.entry)),
            what,
        }
    }
}

/// Another cause of the same rally, where both records gave one.
fn cause(set: u8, place: usize, p: &story::Point, q: &story::Point) -> Option<Difference> {
    let (first, second) = (p.cause?, q.cause?);
    let said = first != Cause::NotSaid && second != Cause::NotSaid;
    (said && first != second).then_some(Difference {
        code: "explain",
        set: Some(set),
        rally: Some(place + 1),
        score: Some(p.score),
        entries: (Some(p.entry), Some(q.entry)),
        what: What::Cause { first, second },
    })
}

/// Takes out of both lists what belongs together, the earliest first.
fn pair_off<'a>(
    first: &mut Vec<&'a Happening>,
    second: &mut Vec<&'a Happening>,
    belongs: impl Fn(&Happening, &Happening) -> bool,
) -> Vec<(&'a Happening, &'a Happening)> {
    let mut pairs = Vec::new();
    first.retain(|a| match second.iter().position(|b| belongs(a, b)) {
        Some(j) => {
            pairs.push((*a, second.remove(j)));
            false
        }
        None => true,
    });
    pairs
}
