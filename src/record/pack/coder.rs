//! The entropy coder: a binary range coder, one trait for both directions so that writer and reader share
//! every line of the model.

/// Bits of precision of a probability.
const BITS: u32 = 16;
/// No probability is nearer to never and always than this, in 65536ths.
const NEVER: u32 = 16;
/// Below this the range is refilled.
const LOW: u32 = 1 << 24;

/// Writes or reads; the value given is what a writer writes, a reader gives back what it finds.
pub(super) trait Coder {
    /// One yes-or-no that is a yes so many times out of 65536.
    fn bit(&mut self, yes: u32, value: bool) -> bool;
}

fn bound(range: u32, yes: u32) -> u32 {
    (range >> BITS) * yes.clamp(NEVER, (1 << BITS) - NEVER)
}

/// Writes.
pub(super) struct Writer {
    low: u64,
    range: u32,
    held: u8,
    waiting: u64,
    out: Vec<u8>,
}

impl Writer {
    pub fn new() -> Writer {
        Writer {
            low: 0,
            range: u32::MAX,
            held: 0,
            waiting: 0,
            out: Vec::new(),
        }
    }

    /// The bytes; zeros at the end are left away, a reader takes them for granted.
    pub fn finish(mut self) -> Vec<u8> {
        for _ in 0..5 {
            self.shift();
        }
        // The first byte out is always the empty one that was held at the beginning.
        let mut out = self.out.split_off(1.min(self.out.len()));
        while out.last() == Some(&0) {
            out.pop();
        }
        out
    }

    fn refill(&mut self) {
        while self.range < LOW {
            self.range <<= 8;
            self.shift();
        }
    }

    #[allow(clippy::cast_possible_truncation)] // Bytes are cut out on purpose.
    fn shift(&mut self) {
        if self.low < 0xFF00_0000 || self.low > 0xFFFF_FFFF {
            let carry = (self.low >> 32) as u8;
            self.out.push(self.held.wrapping_add(carry));
            for _ in 0..self.waiting {
                self.out.push(0xFFu8.wrapping_add(carry));
            }
            self.waiting = 0;
            self.held = (self.low >> 24) as u8;
        } else {
            self.waiting += 1;
        }
        self.low = (self.low & 0x00FF_FFFF) << 8;
    }
}

impl Coder for Writer {
    fn bit(&mut self, yes: u32, value: bool) -> bool {
        let bound = bound(self.range, yes);
        if value {
            self.range = bound;
        } else {
            self.low += u64::from(bound);
            self.range -= bound;
        }
        self.refill();
        value
    }
}

/// Reads.
pub(super) struct Reader<'a> {
    bytes: &'a [u8],
    next: usize,
    range: u32,
    code: u32,
}

impl<'a> Reader<'a> {
    pub fn new(bytes: &'a [u8]) -> Reader<'a> {
        let mut reader = Reader {
            bytes,
            next: 0,
            range: u32::MAX,
            code: 0,
        };
        for _ in 0..4 {
            reader.code = reader.code << 8 | reader.byte();
        }
        reader
    }

    /// Whether far more was read than is there: what comes now is invented.
    pub fn is_past_end(&self) -> bool {
        self.next > self.bytes.len() + 16
    }

    fn byte(&mut self) -> u32 {
        let byte = self.bytes.get(self.next).copied().unwrap_or(0);
        self.next += 1;
        u32::from(byte)
    }

    fn refill(&mut self) {
        while self.range < LOW {
            self.range <<= 8;
            self.code = self.code << 8 | self.byte();
        }
    }
}

impl Coder for Reader<'_> {
    fn bit(&mut self, yes: u32, _: bool) -> bool {
        let bound = bound(self.range, yes);
        let value = self.code < bound;
        if value {
            self.range = bound;
        } else {
            self.code -= bound;
            self.range -= bound;
        }
        self.refill();
        value
    }
}

/// Learns and forgets what it is given: what the model is taught before the first entry.
pub(super) struct Nowhere;

impl Coder for Nowhere {
    fn bit(&mut self, _: u32, value: bool) -> bool {
        value
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn what_was_written_is_read(
            values in prop::collection::vec((any::<bool>(), 0u32..=65536), 0..2000)
        ) {
            let mut writer = Writer::new();
            for &(value, yes) in &values {
                writer.bit(yes, value);
            }
            let bytes = writer.finish();
            let mut reader = Reader::new(&bytes);
            for &(value, yes) in &values {
                prop_assert_eq!(reader.bit(yes, false), value);
            }
        }
    }
}
