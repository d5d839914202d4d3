//! What a log shows by itself of having been changed after it was written: links and seals that do not fit.

use super::seal::{seals, Seal};
use game::Entry;

/// A link or a seal that does not fit.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Broken {
    /// The entry is not what its link was made of.
    Link {
        /// The entry.
        entry: u32,
    },
    /// What stands before a seal is not what was sealed.
    Seal(Seal),
}

impl Broken {
    /// The entry where it shows.
    #[must_use]
    pub const fn entry(&self) -> u32 {
        match self {
            Broken::Link { entry } => *entry,
            Broken::Seal(seal) => seal.entry,
        }
    }
}

/// Everything of a log that does not fit, in the order of its entries.
#[must_use]
pub fn broken(entries: &[Entry]) -> Vec<Broken> {
    let links = entries.iter().filter(|entry| entry.given_link.is_some());
    let links = links.map(|entry| Broken::Link { entry: entry.n });
    let seals = seals(entries).into_iter().filter(|seal| !seal.fits());
    let mut broken: Vec<Broken> = links.chain(seals.map(Broken::Seal)).collect();
    rules::sort_by_key(&mut broken, Broken::entry);
    broken
}
