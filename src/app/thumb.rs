//! The thumb of somebody who watches a referee: which of its taps is a slip.

use game::NO_RALLY_MS;
use record::{NoteKind, Observation};

/// What was tapped, as far as two taps of it at once are one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Tapped {
    Rally,
    NewSet,
    Note(NoteKind),
}

/// The taps of a moment ago.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Thumb(Vec<(Tapped, i64)>);

impl Thumb {
    /// Whether a tap counts, `now` in milliseconds since 1970. Nobody plays two rallies in a second, and no second
    /// set begins in it: the thumb slipped, or the screen seemed slow. The same holds of the same note.
    pub fn counts(&mut self, seen: &Observation, now: i64) -> bool {
        let tapped = match seen {
            Observation::Rally { .. } => Tapped::Rally,
            Observation::NewSet => Tapped::NewSet,
            Observation::Note { kind, .. } => Tapped::Note(*kind),
        };
        self.0
            .retain(|(_, at)| (0..NO_RALLY_MS).contains(&(now - at)));
        let counts = self.0.iter().all(|(other, _)| *other != tapped);
        if counts {
            self.0.push((tapped, now));
        }
        counts
    }

    /// What was undone may be tapped again at once.
    pub fn forget(&mut self) {
        self.0.clear();
    }
}
