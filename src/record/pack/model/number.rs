//! Numbers, choices and ids, however large.

use super::pattern::PATTERNS;
use super::{Flag, Model};
use crate::record::pack::coder::{Chance, Coder};
use crate::rules::Shirt;

/// Chances of a number: how many bits it has, and the first of them.
#[derive(Clone)]
pub(super) struct Size {
    bits: [Chance; 128],
    first: [Chance; 128],
}

impl Size {
    pub(super) const NEW: Size = Size {
        bits: [Chance::EVEN; 128],
        first: [Chance::EVEN; 128],
    };
}

impl Model {
    /// The id of a record; most are sixteen random bytes in the usual writing.
    ///
    /// # Errors
    /// A reader found no text.
    pub fn id<C: Coder>(&mut self, coder: &mut C, given: Option<&str>) -> Result<String, String> {
        let random = given.and_then(random_id);
        if self.flag(coder, Flag::RandomId, random.is_some()) {
            let random = random.unwrap_or_default();
            let bytes: Vec<String> = random
                .map(|byte| coder.uniform(256, u32::from(byte)))
                .iter()
                .map(|byte| format!("{byte:02x}"))
                .collect();
            let part = |from: usize, to: usize| bytes[from..to].concat();
            let parts = [
                part(0, 4),
                part(4, 6),
                part(6, 8),
                part(8, 10),
                part(10, 16),
            ];
            return Ok(parts.join("-"));
        }
        self.words.code(coder, given)
    }

    #[allow(clippy::cast_possible_wrap)] // The way back from the unsigned size.
    pub(super) fn signed<C: Coder>(&mut self, coder: &mut C, place: usize, step: i64) -> i64 {
        let backwards = self.flag(coder, Flag::Backwards, step < 0);
        let size = self.number(coder, place, step.unsigned_abs());
        if backwards {
            (size as i64).wrapping_neg()
        } else {
            size as i64
        }
    }

    /// A number by its length in bits, the highest bits learnt, the others plain.
    pub(super) fn number<C: Coder>(&mut self, coder: &mut C, place: usize, value: u64) -> u64 {
        let general = &mut self.sizes[place];
        let behind = &mut self.sizes_behind[place * PATTERNS + self.last];
        let length = 64 - value.leading_zeros();
        let mut node = 1usize;
        for below in (0..7).rev() {
            let bit = length >> below & 1 == 1;
            let bit = coder.both(&mut general.bits[node], &mut behind.bits[node], bit);
            node = node << 1 | usize::from(bit);
        }
        let length = (node - 128).min(64);
        let mut found = u64::from(length > 0);
        for below in (0..length.saturating_sub(1)).rev() {
            let bit = value >> below & 1 == 1;
            let depth = length - 1 - below;
            let bit = if depth <= 2 && length <= 30 {
                // The first bit by the length alone, the second by the first as well.
                let at = length * 4 + usize::from(depth == 2) * (1 + usize::from(found & 1 == 1));
                coder.both(&mut general.first[at], &mut behind.first[at], bit)
            } else {
                coder.uniform(2, u32::from(bit)) == 1
            };
            found = found << 1 | u64::from(bit);
        }
        found
    }
}

/// The bytes of an id in the usual writing of random ids, eight, four, four, four and twelve digits.
pub(super) fn random_id(id: &str) -> Option<[u8; 16]> {
    let digits: Vec<u8> = id.bytes().filter(|b| *b != b'-').collect();
    let lower = |b: &u8| b.is_ascii_digit() || (b'a'..=b'f').contains(b);
    let dashes: Vec<usize> = id
        .bytes()
        .enumerate()
        .filter(|b| b.1 == b'-')
        .map(|b| b.0)
        .collect();
    if digits.len() != 32 || !digits.iter().all(lower) || dashes != [8, 13, 18, 23] {
        return None;
    }
    let mut bytes = [0; 16];
    for (byte, pair) in bytes.iter_mut().zip(digits.chunks(2)) {
        *byte = u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok()?;
    }
    Some(bytes)
}

/// A small number by a tree of yes-or-no.
pub(super) fn tree<C: Coder>(coder: &mut C, chances: &mut [Chance], bits: u32, value: u32) -> u32 {
    let mut node = 1usize;
    for below in (0..bits).rev() {
        let bit = coder.bit(&mut chances[node], value >> below & 1 == 1);
        node = node << 1 | usize::from(bit);
    }
    u32::try_from(node - (1 << bits)).unwrap_or(0)
}

/// One of a list, all equally likely.
pub(super) fn pick<C: Coder>(coder: &mut C, total: usize, place: usize) -> usize {
    let total = u32::try_from(total).unwrap_or(1);
    coder.uniform(total, u32::try_from(place).unwrap_or(0)) as usize
}

pub(super) fn shirt<C: Coder>(coder: &mut C, given: Option<Shirt>) -> Shirt {
    let given = u32::from(given.map_or(0, |s| s.0));
    let usual = coder.uniform(2, u32::from(given >= 128)) == 0;
    let total = if usual { 128 } else { 65536 };
    Shirt(u16::try_from(coder.uniform(total, given)).unwrap_or(0))
}

pub(super) fn small(value: u64) -> Result<u32, String> {
    u32::try_from(value).map_err(|_| "a number that is too large".to_owned())
}
