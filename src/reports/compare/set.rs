//! One set of both records: its points aligned, and what happened between them.

use super::align::{self, align, Step};
use super::story::{self, Happening, SetStory};
use super::{Difference, What, Which};
use game::Kind;
use rules::Cause;

/// One set of both records.
pub(super) struct Set<'a> {
    pub number: u8,
    pub a: &'a SetStory,
    pub b: &'a SetStory,
    /// Whether each record has a later set.
    pub later: [bool; 2],
    pub keep_players: bool,
}

impl Set<'_> {
    /// Every difference of the set.
    pub fn differences(&self) -> Vec<Difference> {
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

/// A point that differs, at its place from 0 in the set.
pub(super) fn point(
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
