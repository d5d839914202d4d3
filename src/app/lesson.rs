//! A lesson: which scenes a class sees, one after the other, and what it can vote for.

use learn::{Call, End, Kind, Level};
use rules::Group;

use crate::learner::order;
use crate::shown::Shown;

/// What a class can vote for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Vote {
    /// A fault of the left team.
    Left,
    /// A fault of the right team.
    Right,
    /// No whistle.
    PlayOn,
    /// The rally is played again.
    Replay,
}

impl Vote {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Vote; 4] = [Vote::Left, Vote::Right, Vote::PlayOn, Vote::Replay];

    /// The one that is right.
    #[must_use]
    pub const fn of(call: Call) -> Vote {
        match call {
            Call::PlayOn => Vote::PlayOn,
            Call::Replay => Vote::Replay,
            Call::Fault { by: End::Left, .. } => Vote::Left,
            Call::Fault { by: End::Right, .. } => Vote::Right,
        }
    }
}

/// What a lesson is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Lesson {
    /// A group of reasons; everything where none is chosen.
    pub about: Option<Group>,
    /// How hard its scenes are.
    pub level: Level,
    /// Another one gives other scenes in another order.
    pub seed: u64,
}

impl Lesson {
    /// The kinds of its scenes.
    #[must_use]
    pub fn kinds(&self) -> Vec<Kind> {
        let group = |kind: &Kind| kind.cause().and_then(rules::Cause::group);
        let fits = |kind: &Kind| self.about.is_none() || group(kind) == self.about;
        order().filter(fits).collect()
    }

    /// The scene of this turn, counted from 0: every kind comes once before one comes again. None only where no
    /// kind gives a scene.
    #[must_use]
    pub fn scene(&self, turn: u64) -> Option<Shown> {
        let kinds = self.kinds();
        let count = kinds.len().max(1);
        // Neighbours in the order show the same thing from both sides, so the next scene lies about three eighths
        // farther on (our own choice), by a step that leads through all of them.
        let step = (count * 3 / 8..).find(|step| greatest_divisor(*step, count) == 1)?;
        let first = usize::try_from(self.seed % count as u64).ok()?;
        let gone = usize::try_from(turn % count as u64).ok()?;
        (gone..gone + count).find_map(|gone| {
            let kind = *kinds.get((first + gone * step) % count)?;
            Shown::from_seed(kind, self.level, self.seed.wrapping_add(turn))
        })
    }
}

/// The greatest number that divides both.
const fn greatest_divisor(a: usize, b: usize) -> usize {
    if b == 0 {
        a
    } else {
        greatest_divisor(b, a % b)
    }
}
