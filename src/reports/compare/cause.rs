//! One cause where one suffices.

use super::set::point;
use super::story::Story;
use super::{differences, headings, Difference};
use game::{Kind, Timeline};

/// So many causes are put right one after the other; two records of one match have few.
const MAX_CAUSES: u8 = 8;

/// The differences by as few causes as suffice.
pub(super) fn explained(first: &Timeline, second: &Timeline) -> Vec<Difference> {
    by_causes(first, second, MAX_CAUSES)
}

/// The same, with at most so many causes to come. A wrong rally can move the end of a set, and with it
/// everything that follows. Whether it is the cause of it all is tried out: it is put right, the records
/// are folded again, and what still differs has another cause.
fn by_causes(first: &Timeline, second: &Timeline, most: u8) -> Vec<Difference> {
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
    let mut rest = by_causes(&a, &b, most - 1);
    if rest.len() + 1 >= plain.len() {
        return plain;
    }
    rest.push(cause);
    rules::sort_by_key(&mut rest, |d| (d.set, d.rally));
    rest
}

/// The ways to put the first parting right, each with the records that it leaves: the rally goes to the
/// other team, or the point is not there in the one or in the other.
fn put_right(first: &Timeline, second: &Timeline) -> Vec<(Difference, Timeline, Timeline)> {
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
    let changed = |timeline: &Timeline, n: u32, change: fn(&mut Kind)| {
        let mut entries = timeline.entries().to_vec();
        let entry = entries.iter_mut().find(|e| e.n == n);
        entry.into_iter().for_each(|e| change(&mut e.kind));
        Timeline::of(entries)
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
