//! The entropy coder: an adaptive binary range coder, one trait for both directions so that writer and
//! reader share every line of the model.

/// Bits of precision of a probability.
const BITS: u32 = 12;
/// How fast a probability follows what it sees: slowly once it has seen much.
const SLOWEST: u8 = 5;
/// Below this the range is refilled.
const LOW: u32 = 1 << 24;

/// How likely the next yes-or-no is a "no", learnt as the coding goes on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Chance {
    no: u16,
    seen: u8,
}

impl Chance {
    /// Nothing known yet: even.
    pub const EVEN: Chance = Chance {
        no: 1 << (BITS - 1),
        seen: 0,
    };

    /// Expected to be "yes" about this often, in sixteenths.
    pub const fn yes_in_16(yes: u16) -> Chance {
        Chance {
            no: (16 - yes) << (BITS - 4),
            seen: 1,
        }
    }

    fn learn(&mut self, yes: bool) {
        let rate = (self.seen + 1).min(SLOWEST);
        self.seen = self.seen.saturating_add(1).min(SLOWEST);
        if yes {
            self.no -= self.no >> rate;
        } else {
            self.no += ((1 << BITS) - self.no) >> rate;
        }
        self.no = self.no.clamp(16, (1 << BITS) - 16);
    }

    fn bound(self, range: u32) -> u32 {
        (range >> BITS) * u32::from(self.no)
    }
}

/// Writes or reads; the value given is what a writer writes, a reader gives back what it finds.
pub(super) trait Coder {
    /// One yes-or-no.
    fn bit(&mut self, chance: &mut Chance, value: bool) -> bool;
    /// One of `total` equally likely values, `total` at most 65536.
    fn uniform(&mut self, total: u32, value: u32) -> u32;
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
    fn bit(&mut self, chance: &mut Chance, value: bool) -> bool {
        let bound = chance.bound(self.range);
        if value {
            self.low += u64::from(bound);
            self.range -= bound;
        } else {
            self.range = bound;
        }
        chance.learn(value);
        self.refill();
        value
    }

    fn uniform(&mut self, total: u32, value: u32) -> u32 {
        if total > 1 {
            self.range /= total;
            self.low += u64::from(self.range) * u64::from(value);
            self.refill();
        }
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
    fn bit(&mut self, chance: &mut Chance, _: bool) -> bool {
        let bound = chance.bound(self.range);
        let value = self.code >= bound;
        if value {
            self.code -= bound;
            self.range -= bound;
        } else {
            self.range = bound;
        }
        chance.learn(value);
        self.refill();
        value
    }

    fn uniform(&mut self, total: u32, _: u32) -> u32 {
        if total <= 1 {
            return 0;
        }
        self.range /= total;
        let value = (self.code / self.range).min(total - 1);
        self.code -= value * self.range;
        self.refill();
        value
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The same sequence of decisions in both directions.
    fn talk<C: Coder>(coder: &mut C, values: &[(bool, u32)]) -> Vec<(bool, u32)> {
        let mut chances = [Chance::EVEN; 3];
        values
            .iter()
            .enumerate()
            .map(|(i, &(bit, value))| {
                let total = 1 + u32::try_from(i).unwrap_or(0) % 700;
                (
                    coder.bit(&mut chances[i % 3], bit),
                    coder.uniform(total, value % total),
                )
            })
            .collect()
    }

    proptest::proptest! {
        #[test]
        fn what_was_written_is_read(values in proptest::collection::vec(proptest::prelude::any::<(bool, u32)>(), 0..2000)) {
            let mut writer = Writer::new();
            let written = talk(&mut writer, &values);
            let bytes = writer.finish();
            proptest::prop_assert_eq!(talk(&mut Reader::new(&bytes), &values), written);
        }
    }
}
