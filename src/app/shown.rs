//! A scene that is shown, with what it was drawn from.

use learn::{draw, Drawn, Kind, Level};

/// So many seeds are tried; of each kind most seeds give a scene.
const MAX_SEEDS: u64 = 8;

/// A scene that is shown.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// What it was to be about.
    pub kind: Kind,
    /// How hard it was to be.
    pub level: Level,
    /// The seed that gave it.
    pub seed: u64,
    /// The scene.
    pub drawn: Drawn,
}

impl Shown {
    /// A scene from the first seed from this one on that gives one.
    #[must_use]
    pub fn from_seed(kind: Kind, level: Level, seed: u64) -> Option<Shown> {
        (seed..seed.saturating_add(MAX_SEEDS)).find_map(|seed| {
            Some(Shown {
                kind,
                level,
                seed,
                drawn: draw(kind, level.band(kind), seed)?,
            })
        })
    }

    /// What it was drawn from, in a few letters, by which anybody can draw it again.
    #[must_use]
    pub fn from(&self) -> String {
        format!("{} {:?} {}", self.kind.code(), self.level, self.seed)
    }
}
