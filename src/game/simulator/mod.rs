//! Rehearsals: plausible invented matches from a seed, for tests, benches and demonstrations.
//!
//! The same seed gives the same match everywhere. How often things happen is common practice, no
//! source.

mod begin;
mod bench;
mod prepare;
mod rally;
mod seldom;

use fastrand::Rng;

use super::{Entry, Kind, Phase, State, Timed, Timeline};
use rules::{Preset, Rules, Team};

/// Invented names of teams.
const NAMES: [&str; 8] = [
    "Otters", "Herons", "Badgers", "Voles", "Newts", "Swifts", "Hares", "Owls",
];

/// A whole invented match by the rules of a preset.
#[must_use]
pub fn simulate(preset: Preset, seed: u64) -> Vec<Entry> {
    simulate_by(preset.rules(), seed)
}

/// The same by any rules.
#[must_use]
pub fn simulate_by(rules: Rules, seed: u64) -> Vec<Entry> {
    let mut table = Table {
        rng: Rng::with_seed(seed),
        timeline: Timeline::new(),
        // A Saturday afternoon in May 2026, a quarter of an hour apart for each seed.
        now: 1_778_335_200_000 + i64::try_from(seed % 1000).unwrap_or(0) * 900_000,
    };
    table.prepare(rules);
    // No simulated match needs more turns; a match of five long sets takes about 600.
    for _ in 0..5000 {
        match table.timeline.state().phase() {
            Phase::Finished => break,
            Phase::Playing => table.rally(),
            Phase::Suspended => table.resume(),
            Phase::Preparation | Phase::BetweenSets => table.begin_set(),
        }
    }
    table.sign();
    table.timeline.entries().to_vec()
}

/// A number below another one. The generator's own `usize` and `shuffle` give other matches on a
/// phone, which has 32 bits, than here.
fn below(rng: &mut Rng, end: usize) -> usize {
    usize::try_from(rng.u64(0..end as u64)).unwrap_or(0)
}

/// The scorer's table of the simulated match.
struct Table {
    rng: Rng,
    timeline: Timeline,
    now: i64,
}

impl Table {
    fn state(&self) -> &State {
        self.timeline.state()
    }

    /// One time in `times`.
    fn now_and_then(&mut self, times: u32) -> bool {
        self.rng.u32(0..times) == 0
    }

    fn pick<T: Clone>(&mut self, list: &[T]) -> Option<T> {
        (!list.is_empty()).then(|| list[below(&mut self.rng, list.len())].clone())
    }

    fn shuffle<T>(&mut self, list: &mut [T]) {
        for i in 1..list.len() {
            list.swap(i, below(&mut self.rng, i + 1));
        }
    }

    fn team(&mut self) -> Team {
        if self.rng.bool() {
            Team::A
        } else {
            Team::B
        }
    }

    /// Enters what is legal; a thing that is not is left out.
    fn enter(&mut self, kind: Kind, seconds: std::ops::Range<i64>) -> bool {
        self.now += self.rng.i64(seconds) * 1000;
        self.push_legal(kind)
    }

    fn push_legal(&mut self, kind: Kind) -> bool {
        let entry = Entry {
            at: Some(self.now),
            ..Entry::new(self.timeline.next_number(), kind)
        };
        let taken = self.timeline.check(&entry).is_ok();
        if taken {
            self.timeline.push(entry);
        }
        taken
    }

    /// The same for what changes nothing in play: it takes so many seconds whatever the chance, so that
    /// play goes on as it would have without it.
    fn enter_aside(&mut self, kind: Kind, seconds: i64) -> bool {
        self.now += seconds * 1000;
        self.push_legal(kind)
    }

    /// A count-down from its start to its end, which somebody may notice so many seconds late.
    fn time(&mut self, what: Timed, team: Team, slack: i64) {
        let Some(start) = what.start(Some(team), self.state().rules()) else {
            return;
        };
        let lasts = i64::from(start.seconds);
        let stop = start.stopped();
        self.enter(Kind::Timer(start), 0..slack);
        self.enter(Kind::Timer(stop), lasts..lasts + slack);
    }

    /// Enters what the rules are against, as the first referee's decision.
    fn insist(&mut self, kind: Kind, why: &str) {
        let insist = Some(why.to_owned());
        let entry = Entry {
            at: Some(self.now),
            insist,
            ..Entry::new(self.timeline.next_number(), kind)
        };
        if self
            .timeline
            .check(&entry)
            .is_err_and(|refusal| !refusal.is_final())
        {
            self.timeline.push(entry);
        }
    }
}
