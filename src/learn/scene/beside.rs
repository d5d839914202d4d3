//! What is told of a scene beside what decides it.

use super::{Drawn, Judged};
use crate::ruling::Margin;

/// What was no fault and farther from one than this is not worth a word, in metres and in seconds. Our own
/// choice.
const NEAR_METRES: f64 = 0.35;
const NEAR_SECONDS: f64 = 1.0;

impl Drawn {
    /// Every other fault: the second of two, or what came too late to matter.
    pub fn other_faults(&self) -> impl Iterator<Item = &Judged> {
        let about = self.about().copied();
        let others = self.verdict.all.iter();
        others.filter(move |one| Some(**one) != about && one.ruling.is_fault())
    }

    /// What came near to a fault and was none. Where the scene is about what the same player did in the same way,
    /// as with a foot that is over the line before it is in somebody's way, that says it all.
    pub fn near_misses(&self) -> impl Iterator<Item = &Judged> {
        let about = self.about().copied();
        let is_same = move |one: &Judged| {
            about.is_some_and(|about| (about.about, about.player) == (one.about, one.player))
        };
        self.verdict.all.iter().filter(move |one| {
            let is_near = match one.ruling.margin {
                Margin::Metres(by) => by < NEAR_METRES,
                Margin::Seconds(by) => by < NEAR_SECONDS,
                Margin::Seen => true,
            };
            is_near && !one.ruling.is_fault() && !is_same(one)
        })
    }
}
