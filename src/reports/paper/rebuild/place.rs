//! Where in the order of the points each thing stands that has a score.

use super::Table;
use crate::paper::rounds::Order;
use crate::paper::{Fault, PaperSanction, PaperSet, PaperSubstitution};
use game::{Level, SanctionKind};
use rules::{Score, Team};

/// Something asked or sanctioned at a score, by its place in its list.
pub(super) enum Asked<'a> {
    Sanction(usize, &'a PaperSanction),
    TimeOut(usize, Team),
    /// One request: all regular changes of a team at one score, or one exceptional change.
    Request(Team, Vec<(usize, &'a PaperSubstitution)>),
    Penalty(usize, &'a PaperSanction),
}

impl Asked<'_> {
    /// The box in which it stands.
    pub fn place(&self) -> String {
        match self {
            Asked::Sanction(i, _) | Asked::Penalty(i, _) => format!("sanctions[{i}]"),
            Asked::TimeOut(i, _) => format!("time_outs[{i}]"),
            Asked::Request(_, changes) => {
                format!("substitutions[{}]", changes.first().map_or(0, |c| c.0))
            }
        }
    }
}

impl<'a> Table<'a> {
    /// Everything asked in the set, each at the number of points after which its score stood.
    pub(super) fn place_all<'s>(
        &mut self,
        number: u8,
        set: &'s PaperSet,
        order: &Order,
    ) -> Vec<Vec<Asked<'s>>>
    where
        'a: 's,
    {
        let mut stood = vec![Score::default()];
        for &letter in &order.letters {
            stood.push(stood[stood.len() - 1].plus(letter));
        }
        let mut places: Vec<Vec<Asked>> = stood.iter().map(|_| Vec::new()).collect();
        let sheet = self.sheet;
        let of_set = sheet.sanctions.iter().enumerate();
        for (i, s) in of_set.filter(|(_, s)| s.set == number) {
            let place = || format!("sanctions[{i}]");
            let Some(at) = self.moment(None, place, s.score, &stood, order) else {
                continue;
            };
            let asked = match s.kind {
                SanctionKind::DelayPenalty | SanctionKind::Misconduct(Level::Penalty) => {
                    Asked::Penalty(i, s)
                }
                _ => Asked::Sanction(i, s),
            };
            places[at].push(asked);
        }
        let in_set = Some(number);
        for (i, t) in set.time_outs.iter().enumerate() {
            let place = || format!("time_outs[{i}]");
            if let Some(at) = self.moment(in_set, place, t.score, &stood, order) {
                places[at].push(Asked::TimeOut(i, t.team));
            }
        }
        for (i, s) in set.substitutions.iter().enumerate() {
            let place = || format!("substitutions[{i}]");
            let Some(at) = self.moment(in_set, place, s.score, &stood, order) else {
                continue;
            };
            let together = |other: &PaperSubstitution| {
                let regular = !s.exceptional && !other.exceptional;
                regular && other.team == s.team && other.score == s.score
            };
            let regular = places[at].iter_mut().find_map(|asked| match asked {
                Asked::Request(_, changes) if together(changes[0].1) => Some(changes),
                _ => None,
            });
            match regular {
                Some(changes) => changes.push((i, s)),
                None => places[at].push(Asked::Request(s.team, vec![(i, s)])),
            }
        }
        for at in &mut places {
            // Who is sent off must leave after it; a penalty ends the interruption.
            rules::sort_by_key(at, |asked| match asked {
                Asked::Sanction(..) => 0,
                Asked::TimeOut(..) => 1,
                Asked::Request(..) => 2,
                Asked::Penalty(..) => 3,
            });
        }
        places
    }

    /// After how many points a score stood. One that never did is said and put where so many points had
    /// been played, so that it still counts against the limits; none beyond a doubtful box.
    fn moment(
        &mut self,
        set: Option<u8>,
        place: impl Fn() -> String,
        score: Score,
        stood: &[Score],
        order: &Order,
    ) -> Option<usize> {
        let played = usize::from(score.a) + usize::from(score.b);
        if stood.get(played) == Some(&score) {
            return Some(played);
        }
        if !order.whole && played >= order.letters.len() {
            return None;
        }
        let apart = |s: &Score| u32::from(s.a.abs_diff(score.a)) + u32::from(s.b.abs_diff(score.b));
        let nearest = stood.iter().min_by_key(|s| apart(s)).copied();
        let nearest = nearest.unwrap_or_default();
        self.found(set, place(), Fault::ScoreNeverStood { score, nearest });
        Some(played.min(order.letters.len().saturating_sub(1)))
    }
}
