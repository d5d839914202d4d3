//! The notes in few bytes, for a code: by the coder of records, taught a few invented notes first.

use super::Observed;
use crate::pack::{pack_texts, unpack_texts, MAX_PACKED};

/// The first byte.
pub const OBSERVED_VERSION: u8 = 1;
/// What the model is taught. Never changed; it is a part of the version.
const LESSON: &str = include_str!("lesson_1.txt");

impl Observed {
    /// In few bytes; none only for notes whose words no phone gives.
    #[must_use]
    pub fn pack(&self) -> Option<Vec<u8>> {
        pack_texts(OBSERVED_VERSION, LESSON, &self.id, &self.lines())
    }

    /// The way back; none where they are damaged, or of a newer version.
    #[must_use]
    pub fn unpack(packed: &[u8]) -> Option<Observed> {
        let (version, rest) = packed.split_first()?;
        if *version != OBSERVED_VERSION || packed.len() > MAX_PACKED {
            return None;
        }
        let (id, lines) = unpack_texts(LESSON, rest)?;
        Observed::of_lines(&id, &lines)
    }
}
