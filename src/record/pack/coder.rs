//! The entropy coder: an adaptive binary range coder, one trait for both directions so that writer and
//! reader share every line of the model.

/// Bits of precision of a probability.
const BITS: u32 = 16;
/// No probability is nearer to never and always than this, in 65536ths.
const NEVER: u32 = 24;
/// So many decisions are remembered; older ones fade.
const MEMORY: u8 = 120;
/// How much the general chance counts beside what was seen in special, in decisions.
const GENERAL: u32 = 2;
/// How much more one decision seen in special counts than the general chance, for what repeats itself.
const BELIEF: u32 = 3;
/// Below this the range is refilled.
const LOW: u32 = 1 << 24;

/// How likely the next yes-or-no is a "yes", learnt as the coding goes on.
#[derive(Clone, Copy, Debug)]
pub(super) struct Chance {
    yes: u16,
    seen: u8,
}

impl Chance {
    /// Nothing known yet: even.
    pub const EVEN: Chance = Chance {
        yes: 1 << (BITS - 1),
        seen: 0,
    };

    /// Expected to be "yes" about this often, in sixteenths.
    pub const fn yes_in_16(yes: u16) -> Chance {
        Chance::taught(yes as u32, 16, 4)
    }

    /// Expected to be "yes" `yes` times out of `of`, which is not nought, as if that had been seen `seen` times.
    #[allow(clippy::cast_possible_truncation)] // A quotient below 65536.
    pub const fn taught(yes: u32, of: u32, seen: u8) -> Chance {
        let yes = (yes << (BITS - 1)) / of * 2;
        Chance {
            yes: if yes > 0xFFFF { 0xFFFF } else { yes as u16 },
            seen,
        }
    }

    /// Takes a decision into account; the more was seen, the less one changes.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Between both ends.
    fn learn(&mut self, yes: bool) {
        let target = if yes { 0xFFFF } else { 0 };
        let apart = target - i32::from(self.yes);
        let step = apart * 2 / (2 * i32::from(self.seen) + 3);
        self.yes = (i32::from(self.yes) + step) as u16;
        self.seen = (self.seen + 1).min(MEMORY);
    }
}

/// Writes or reads; the value given is what a writer writes, a reader gives back what it finds.
pub(super) trait Coder {
    /// One yes-or-no that is a yes so many times out of 65536.
    fn raw(&mut self, yes: u32, value: bool) -> bool;
    /// One of some values, each as likely as its weight; the sum is at most 65536 and none is nought.
    fn choose(&mut self, weights: &[u32], value: usize) -> usize;

    /// One yes-or-no.
    fn bit(&mut self, chance: &mut Chance, value: bool) -> bool {
        let value = self.raw(u32::from(chance.yes), value);
        chance.learn(value);
        value
    }

    /// One yes-or-no of which something is known in general, and more in special once it was seen.
    fn both(&mut self, general: &mut Chance, special: &mut Chance, value: bool) -> bool {
        let seen = u32::from(special.seen);
        let yes = u32::from(special.yes) * seen + u32::from(general.yes) * GENERAL;
        let value = self.raw(yes / (seen + GENERAL), value);
        general.learn(value);
        special.learn(value);
        value
    }

    /// One yes-or-no by chances of which each knows more in special than the one before it, where it has
    /// seen anything at all. For what repeats itself: what was seen once is believed.
    fn repeating(&mut self, chances: &mut [&mut Chance], value: bool) -> bool {
        let blend = |yes: u32, chance: &&mut Chance| {
            let seen = u32::from(chance.seen) * BELIEF;
            (u32::from(chance.yes) * seen + yes) / (seen + 1)
        };
        let value = self.raw(chances.iter().fold(1 << (BITS - 1), blend), value);
        for chance in chances {
            chance.learn(value);
        }
        value
    }

    /// One of `total` equally likely values, `total` at most 65536.
    fn uniform(&mut self, total: u32, value: u32) -> u32;
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
    fn raw(&mut self, yes: u32, value: bool) -> bool {
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

    fn choose(&mut self, weights: &[u32], value: usize) -> usize {
        let before: u32 = weights[..value].iter().sum();
        self.range /= weights.iter().sum::<u32>().max(1);
        self.low += u64::from(self.range) * u64::from(before);
        self.range *= weights[value];
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
    fn raw(&mut self, yes: u32, _: bool) -> bool {
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

    fn choose(&mut self, weights: &[u32], _: usize) -> usize {
        self.range /= weights.iter().sum::<u32>().max(1);
        let mut at = self.code / self.range;
        let last = weights.len() - 1;
        let mut found = 0;
        while found < last && at >= weights[found] {
            at -= weights[found];
            found += 1;
        }
        let before: u32 = weights[..found].iter().sum();
        self.code = self.code.wrapping_sub(before * self.range);
        self.range *= weights[found];
        self.refill();
        found
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

/// Writes nothing and counts what it would cost.
#[cfg(test)]
pub(super) struct Counter {
    /// Bits so far.
    pub bits: f64,
}

#[cfg(test)]
impl Coder for Counter {
    fn raw(&mut self, yes: u32, value: bool) -> bool {
        let yes = f64::from(yes.clamp(NEVER, 65536 - NEVER)) / 65536.0;
        self.bits -= if value { yes } else { 1.0 - yes }.log2();
        value
    }

    fn choose(&mut self, weights: &[u32], value: usize) -> usize {
        let sum: u32 = weights.iter().sum();
        self.bits += (f64::from(sum) / f64::from(weights[value])).log2();
        value
    }

    fn uniform(&mut self, total: u32, value: u32) -> u32 {
        self.bits += f64::from(total).log2();
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
                let [a, b, _] = &mut chances;
                let weights = [1, 1 + total, 3];
                let chosen = coder.choose(&weights, value as usize % 3);
                (
                    coder.bit(a, bit) & coder.both(b, &mut a.clone(), bit),
                    coder.uniform(total, value % total) * 3 + u32::try_from(chosen).unwrap_or(0),
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
