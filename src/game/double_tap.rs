//! A second point that came sooner than a rally can be played: it is written down and taken back at once, so
//! that it counts only once somebody has said so, and is lost in no case.

use crate::fold::{Outcome, Timeline};
use crate::model::entry::Kind;
use rules::Team;

/// Within so many milliseconds after a point no further rally can have been played. Our own choice, no source:
/// the ball comes back to the server, the first referee whistles, and from the toss to the floor of the other
/// side even a service that nobody touches flies for most of a second.
pub const NO_RALLY_MS: i64 = 1_000;

/// A tap that is held back.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct HeldPoint {
    /// The rally that it would be.
    pub rally: u32,
    /// The entry that holds it back.
    pub strike: u32,
    /// Who would have won it.
    pub won_by: Team,
    /// The rally before it, where that counts.
    pub before: Option<u32>,
    /// Who won that one.
    pub before_won_by: Team,
}

/// The points that are held back behind the entry `asked_since`, the oldest first. Without that entry it is
/// read from the log alone what a page left behind that died: then only a last tap is asked about.
#[must_use]
pub fn held_points(timeline: &Timeline, asked_since: Option<u32>) -> Vec<HeldPoint> {
    let entries = timeline.entries();
    let mut held = Vec::new();
    let mut last_rally = None;
    for (i, pair) in entries.windows(2).enumerate() {
        let [rally, strike] = pair else { continue };
        let Kind::Rally { won_by, .. } = rally.kind else {
            continue;
        };
        let before = last_rally.replace(rally);
        let is_pair = matches!(strike.kind, Kind::Strike { entry, why: None } if entry == rally.n)
            && matches!(timeline.outcome(rally.n), Some(Outcome::Struck(by)) if *by == strike.n);
        let Some(before) = before.filter(|_| is_pair) else {
            continue;
        };
        let Kind::Rally {
            won_by: before_won_by,
            ..
        } = before.kind
        else {
            continue;
        };
        // Whole seconds are kept, so that two taps within one second may stand in two.
        let at_once = rally.at.zip(before.at).is_some_and(|(at, earlier)| {
            (0..=NO_RALLY_MS).contains(&(at - earlier)) && strike.at == rally.at
        });
        let is_last = i + 2 == entries.len();
        let counts = |n| timeline.outcome(n).is_some_and(Outcome::counts);
        let asked = asked_since.map_or(is_last, |since| rally.n > since);
        if at_once && asked {
            held.push(HeldPoint {
                rally: rally.n,
                strike: strike.n,
                won_by,
                before: Some(before.n).filter(|&n| counts(n)),
                before_won_by,
            });
        }
    }
    held
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entry::{Entry, Heading};
    use rules::{ByTeam, Preset};

    /// A tally with these entries, each with the second of its time.
    fn tally(entries: &[(i64, Kind)]) -> Timeline {
        let heading = Heading::new(ByTeam::default(), Preset::Tally.rules());
        let opening = [(0, Kind::Match(Box::new(heading))), (0, Kind::BeginSet)];
        let all = opening.iter().chain(entries).zip(1..);
        Timeline::of(
            all.map(|((second, kind), n)| Entry {
                at: Some(second * 1000),
                ..Entry::new(n, kind.clone())
            })
            .collect(),
        )
    }

    fn point(won_by: Team) -> Kind {
        Kind::Rally {
            won_by,
            cause: None,
            by: None,
        }
    }

    fn back(entry: u32) -> Kind {
        Kind::Strike { entry, why: None }
    }

    #[test]
    fn a_second_point_at_once_is_held_and_counts_at_its_own_place() {
        let (a, b) = (Team::A, Team::B);
        let held = [(7, point(a)), (8, point(a)), (8, back(4))];
        let mut timeline = tally(&held);
        let points = held_points(&timeline, None);
        assert_eq!(points.len(), 1);
        assert_eq!((points[0].rally, points[0].strike), (4, 5));
        assert_eq!((points[0].before, points[0].won_by), (Some(3), a));
        // Play goes on: what this page has held back is still asked about, what another one has is not.
        timeline.push(Entry {
            at: Some(40_000),
            ..Entry::new(6, point(b))
        });
        assert_eq!(held_points(&timeline, None), []);
        assert_eq!(held_points(&timeline, Some(2)).len(), 1);
        assert_eq!(timeline.state().score().to_string(), "1:1");
        // Taken for a point after all, it is asked about no more.
        timeline.push(Entry::new(7, back(5)));
        assert_eq!(timeline.state().score().to_string(), "2:1");
        assert_eq!(held_points(&timeline, Some(2)), []);
    }

    #[test]
    fn what_somebody_took_back_is_not_held() {
        let a = Team::A;
        let later = [(7, point(a)), (12, point(a)), (12, back(4))];
        assert_eq!(held_points(&tally(&later), Some(2)), []);
        let slowly = [(7, point(a)), (8, point(a)), (10, back(4))];
        assert_eq!(held_points(&tally(&slowly), Some(2)), []);
    }
}
