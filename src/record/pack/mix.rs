//! One chance out of several: each context that a decision stands in has learnt how often it was a "yes"
//! there, and a mixer learns which of the contexts to believe.
//!
//! Everything is whole numbers, so that every machine reads what any other has written.

use super::coder::Coder;

/// How many contexts a decision stands in.
pub(super) const CONTEXTS: usize = 8;

/// What a decision stands in; the first is the most general.
pub(super) type Contexts = [u32; CONTEXTS];

/// Bits of the number of a slot; two contexts that share one disturb each other a little.
const SLOT_BITS: u32 = 20;
/// So many decisions a slot remembers; older ones fade.
const MEMORY: u16 = 90;
/// Kinds of decisions that weigh their contexts apart.
const WEIGHINGS: usize = 1024;
/// One, as a weight.
const ONE: i64 = 1 << 16;
/// How quickly weights learn.
const RATE: i64 = 30;

/// How often a context has seen a "yes", in 65536ths, and how many decisions it has seen.
#[derive(Clone, Copy)]
struct Slot {
    yes: u16,
    seen: u16,
}

/// All that was learnt so far.
pub(super) struct Mixer {
    slots: Vec<Slot>,
    weights: Vec<[i64; INPUTS]>,
}

/// Each context speaks twice: by its chance, and by its chance as far as it has seen anything.
const INPUTS: usize = CONTEXTS * 2;

impl Mixer {
    pub fn new() -> Mixer {
        let even = Slot {
            yes: 1 << 15,
            seen: 0,
        };
        Mixer {
            slots: vec![even; 1 << SLOT_BITS],
            weights: vec![[ONE / 8; INPUTS]; WEIGHINGS],
        }
    }

    /// One yes-or-no of a kind, in its contexts.
    pub fn bit<C: Coder>(
        &mut self,
        coder: &mut C,
        kind: u32,
        contexts: &Contexts,
        node: u32,
        value: bool,
    ) -> bool {
        let at = contexts.map(|context| slot(context, node));
        let mut inputs = [0i64; INPUTS];
        for (i, &at) in at.iter().enumerate() {
            let Slot { yes, seen } = self.slots[at];
            if seen > 0 {
                let stretched = stretch(yes);
                inputs[2 * i] = stretched;
                inputs[2 * i + 1] = stretched * i64::from(seen.min(16)) / 16;
            }
        }
        let weights = &mut self.weights[kind as usize % WEIGHINGS];
        let sum: i64 = inputs.iter().zip(weights.iter()).map(|(i, w)| i * w).sum();
        let yes = squash(sum / ONE);
        let value = coder.bit(yes, value);
        let target = if value { 65_535 } else { 0 };
        let wrong = target - i64::from(yes);
        for (input, weight) in inputs.iter().zip(weights.iter_mut()) {
            *weight += input * wrong * RATE / (1 << 20);
        }
        for at in at {
            self.slots[at].learn(value);
        }
        value
    }
}

impl Slot {
    /// Takes a decision into account; the more was seen, the less one changes.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Between both ends.
    fn learn(&mut self, value: bool) {
        let target = if value { 65_535 } else { 0 };
        let apart = target - i32::from(self.yes);
        let step = apart * 2 / (2 * i32::from(self.seen) + 3);
        self.yes = (i32::from(self.yes) + step) as u16;
        self.seen = (self.seen + 1).min(MEMORY);
    }
}

/// Joins two numbers to one that looks like neither.
pub(super) fn hash(a: u32, b: u32) -> u32 {
    let mixed = (a ^ b.rotate_left(16)).wrapping_mul(0x9E37_79B1) ^ b.wrapping_mul(0x85EB_CA77);
    mixed ^ mixed >> 15
}

fn slot(context: u32, node: u32) -> usize {
    (hash(context, node).wrapping_mul(0xC2B2_AE3D) >> (32 - SLOT_BITS)) as usize
}

/// The logistic function at steps of an eighth of its unit from -8 to 8, in 65536ths.
const CURVE: [u32; 33] = [
    22, 36, 60, 98, 162, 267, 439, 720, 1179, 1921, 3108, 4971, 7812, 11955, 17625, 24742, 32768,
    40793, 47910, 53580, 57723, 60564, 62427, 63614, 64356, 64815, 65096, 65268, 65373, 65437,
    65475, 65499, 65513,
];
/// What is the unit of the logistic function, and how far from the middle it is known.
const UNIT: i64 = 256;
const END: i64 = 8 * UNIT;

/// From a sum of inputs to a chance in 65536ths.
#[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // Between both ends.
fn squash(x: i64) -> u32 {
    let x = (x.clamp(-END, END - 1) + END) as u32;
    let (at, rest) = ((x >> 7) as usize, x & 127);
    (CURVE[at] * (128 - rest) + CURVE[at + 1] * rest) >> 7
}

/// The way back, to within a step of it.
fn stretch(yes: u16) -> i64 {
    let yes = u32::from(yes);
    let at = CURVE.partition_point(|&c| c <= yes).clamp(1, 32) - 1;
    let (low, high) = (CURVE[at], CURVE[at + 1]);
    let rest = i64::from(yes.clamp(low, high) - low) * 128 / i64::from(high - low);
    at as i64 * 128 + rest - END
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn stretch_and_squash_are_each_others_way_back() {
        for yes in (100..65_400u16).step_by(37) {
            let back = squash(stretch(yes));
            let apart = back.abs_diff(u32::from(yes));
            assert!(apart <= 260, "{yes} {back}");
        }
        assert!(squash(-5000) < 40 && squash(5000) > 65_490);
    }
}
