//! What is likely in a log, learnt from the log itself: which entry follows which, which value stands
//! where. It knows no rule of play and no kind of entry, so that neither a mended rule nor a new kind
//! changes how a record is read.

use std::collections::BTreeMap;

use super::coder::Coder;
use super::mix::{hash, Contexts, Mixer, CONTEXTS};
use super::shape::{join, places, split, Parts, Place, Value};

/// What was coded is no text.
pub(super) struct Broken;

/// Kinds of decisions, each with weights of its own.
mod kind {
    pub const MORE: u32 = 0;
    pub const SHAPE: u32 = 1;
    pub const SPELLING: u32 = 2;
    pub const TEXT: u32 = 100;
    pub const NUMBER: u32 = 400;
    pub const DIGITS: u32 = 700;
}

/// Bits of the number of a shape, and of a text in one place; 0 stands for a new one.
const SHAPE_BITS: u32 = 10;
const TEXT_BITS: u32 = 8;
/// A text or a shape that is new is not longer, in bytes.
const LONGEST: usize = 20_000;
/// Bytes around a text.
const QUOTES: usize = 2;

/// What was coded in one place of the entries so far.
#[derive(Default)]
struct History {
    /// Texts, in the order in which they came.
    texts: Vec<String>,
    /// The last two values, as numbers that stand for them.
    last: [u32; 2],
    /// The last whole number.
    number: i64,
    /// How many bits a number took in each way of telling it, averaged, in 256ths.
    bits: [u32; WAYS],
}

/// A number is told by itself, by how much it is more than the last one in its place, or by how far it is
/// below the number of the entry.
const WAYS: usize = 3;

/// The model.
pub(super) struct Model {
    mixer: Mixer,
    shapes: Vec<String>,
    places: BTreeMap<u32, History>,
    /// What was told last in a place after a certain value before it in the entry.
    after: BTreeMap<u32, u32>,
    /// Numbers of the last shapes, the latest first.
    recent: [u32; 4],
    /// What stands for the texts of the last entry.
    last_texts: u32,
    /// How many bytes of entries may still be told. A few bits can stand for any number of bytes that were told
    /// before, so the length of what is read bounds nothing.
    left: usize,
}

impl Model {
    /// One that tells so many bytes of entries at most.
    pub fn new(left: usize) -> Model {
        Model {
            mixer: Mixer::new(),
            shapes: Vec::new(),
            places: BTreeMap::new(),
            after: BTreeMap::new(),
            recent: [0; 4],
            last_texts: 0,
            left,
        }
    }

    /// Whether one more entry follows.
    pub fn more<C: Coder>(&mut self, coder: &mut C, value: bool) -> bool {
        self.mixer
            .bit(coder, kind::MORE, &[0; CONTEXTS], kind::MORE, value)
    }

    /// The id of a log.
    pub fn id<C: Coder>(&mut self, coder: &mut C, given: Option<&str>) -> Result<String, Broken> {
        self.spelled(coder, 0x1D, given)
    }

    /// The text of an entry.
    pub fn entry<C: Coder>(
        &mut self,
        coder: &mut C,
        given: Option<&str>,
    ) -> Result<String, Broken> {
        let given = given.map(split);
        let shape = self.shape(coder, given.as_ref())?;
        let mut entry = Entry {
            shape: self.recent[0],
            before: self.recent[1],
            number: 0,
            last: 0,
            all: 0,
            texts: 0,
        };
        self.take(shape.len())?;
        let mut values = Vec::new();
        for (at, (place, path)) in places(&shape).into_iter().enumerate() {
            let given = given.as_ref().and_then(|parts| parts.values.get(at));
            values.push(match place {
                Place::Text => {
                    let given = match given {
                        Some(Value::Text(text)) => Some(text.as_str()),
                        Some(Value::Number(_)) | None => None,
                    };
                    let text = self.text(coder, path, &mut entry, given)?;
                    self.take(text.len() + QUOTES)?;
                    Value::Text(text)
                }
                Place::Number => {
                    let given = match given {
                        Some(Value::Number(number)) => Some(*number),
                        Some(Value::Text(_)) | None => None,
                    };
                    Value::Number(self.number(coder, path, &mut entry, at, given))
                }
            });
        }
        self.last_texts = entry.texts;
        join(&shape, &values).ok_or(Broken)
    }

    fn take(&mut self, bytes: usize) -> Result<(), Broken> {
        self.left = self.left.checked_sub(bytes).ok_or(Broken)?;
        Ok(())
    }

    fn shape<C: Coder>(&mut self, coder: &mut C, given: Option<&Parts>) -> Result<String, Broken> {
        let known = given.and_then(|parts| self.shapes.iter().position(|s| *s == parts.shape));
        let number = known.map_or(0, |at| at as u32 + 1);
        let [one, two, three, four] = self.recent;
        let contexts = [
            1,
            hash(2, one),
            hash(hash(3, one), two),
            hash(hash(hash(4, one), two), three),
            hash(hash(5, one), self.last_texts),
            hash(hash(hash(6, one), two), self.last_texts),
            hash(hash(hash(hash(7, one), two), three), four),
            hash(8, two),
        ];
        let number = self.tree(coder, kind::SHAPE, &contexts, SHAPE_BITS, number);
        let shape = match number.checked_sub(1) {
            Some(at) => self.shapes.get(at as usize).cloned().ok_or(Broken)?,
            None => {
                let shape = given.map(|parts| parts.shape.as_str());
                let shape = self.spelled(coder, 0x5A, shape)?;
                if self.shapes.len() + 1 < 1 << SHAPE_BITS {
                    self.shapes.push(shape.clone());
                }
                shape
            }
        };
        let number = self.shapes.iter().position(|s| *s == shape);
        let number = number.map_or(0, |at| at as u32 + 1);
        self.recent = [number, one, two, three];
        Ok(shape)
    }

    fn text<C: Coder>(
        &mut self,
        coder: &mut C,
        path: u32,
        entry: &mut Entry,
        given: Option<&str>,
    ) -> Result<String, Broken> {
        let contexts = self.contexts(path, entry);
        let texts = &self.places.entry(path).or_default().texts;
        let known = given.and_then(|given| texts.iter().position(|text| text == given));
        let number = known.map_or(0, |at| at as u32 + 1);
        let kind = kind::TEXT + path % 256;
        let number = self.tree(coder, kind, &contexts, TEXT_BITS, number);
        let text = match number.checked_sub(1) {
            Some(at) => {
                let texts = &self.places.entry(path).or_default().texts;
                texts.get(at as usize).cloned().ok_or(Broken)?
            }
            None => {
                let text = self.spelled(coder, path, given)?;
                let texts = &mut self.places.entry(path).or_default().texts;
                if texts.len() + 1 < 1 << TEXT_BITS {
                    texts.push(text.clone());
                }
                text
            }
        };
        let stands_for = text.bytes().fold(3, |all, b| hash(all, b.into()));
        self.learn(path, entry, stands_for);
        entry.texts = hash(entry.texts, stands_for);
        Ok(text)
    }

    fn number<C: Coder>(
        &mut self,
        coder: &mut C,
        path: u32,
        entry: &mut Entry,
        at: usize,
        given: Option<i64>,
    ) -> i64 {
        let contexts = self.contexts(path, entry);
        let history = self.places.entry(path).or_default();
        let way = (0..WAYS).min_by_key(|way| history.bits[*way]).unwrap_or(0);
        let from = [0, history.number, entry.number];
        let told = self.whole(
            coder,
            path,
            &contexts,
            given.map(|v| v.wrapping_sub(from[way])),
        );
        let value = told.wrapping_add(from[way]);
        let history = self.places.entry(path).or_default();
        for (bits, from) in history.bits.iter_mut().zip(from) {
            let length = 64 - value.wrapping_sub(from).unsigned_abs().leading_zeros();
            *bits = (*bits * 7 + length * 256) / 8;
        }
        history.number = value;
        if at == 0 {
            entry.number = value;
        }
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // What stands for it.
        self.learn(path, entry, hash(5, told as u32));
        value
    }

    /// A whole number: its sign, whether it is of whole thousands, how many bits it has, and those.
    fn whole<C: Coder>(
        &mut self,
        coder: &mut C,
        path: u32,
        contexts: &Contexts,
        given: Option<i64>,
    ) -> i64 {
        let kind = kind::NUMBER + path % 256;
        let given = given.unwrap_or(0);
        let negative = self.mixer.bit(coder, kind, contexts, 1, given < 0);
        let size = given.unsigned_abs();
        // Times are told in milliseconds and mostly fall on whole seconds.
        let thousands = size >= 1000 && size.is_multiple_of(1000);
        let thousands = self.mixer.bit(coder, kind, contexts, 2, thousands);
        let size = if thousands { size / 1000 } else { size };
        let node = 4 + u32::from(thousands);
        let contexts = contexts.map(|context| hash(context, node));
        let length = self.tree(coder, kind, &contexts, 7, 64 - size.leading_zeros());
        let length = length.min(64);
        let mut found: u64 = u64::from(length > 0);
        for place in (0..length.saturating_sub(1)).rev() {
            // The higher bits each know all bits before them; the lower ones are as good as random.
            let known = length - 1 - place;
            let above = if known <= 6 { found as u32 } else { 0 };
            let node = hash(1000 + length * 64 + place, above);
            let bit = self.mixer.bit(
                coder,
                kind::DIGITS + path % 256,
                &contexts,
                node,
                size >> place & 1 == 1,
            );
            found = found << 1 | u64::from(bit);
        }
        let size = if thousands {
            found.wrapping_mul(1000)
        } else {
            found
        };
        let value = size as i64;
        if negative {
            value.wrapping_neg()
        } else {
            value
        }
    }

    /// A new text, byte by byte, with a nought at its end.
    fn spelled<C: Coder>(
        &mut self,
        coder: &mut C,
        path: u32,
        given: Option<&str>,
    ) -> Result<String, Broken> {
        let given = given.unwrap_or_default().as_bytes();
        let mut out: Vec<u8> = Vec::new();
        loop {
            let back = |n: usize| {
                out.iter()
                    .rev()
                    .take(n)
                    .fold(9, |all, b| hash(all, (*b).into()))
            };
            let contexts = [
                10,
                hash(11, back(1)),
                hash(12, back(2)),
                hash(13, back(3)),
                hash(14, back(4)),
                hash(15, back(6)),
                hash(hash(16, path), back(1)),
                hash(hash(17, path), out.len() as u32),
            ];
            let byte = given.get(out.len()).copied().unwrap_or(0);
            let byte = self.tree(coder, kind::SPELLING, &contexts, 8, byte.into());
            if byte == 0 {
                break;
            }
            if out.len() >= LONGEST {
                return Err(Broken);
            }
            out.push(u8::try_from(byte).map_err(|_| Broken)?);
        }
        String::from_utf8(out).map_err(|_| Broken)
    }

    /// A number of so many bits, the highest first; each bit knows those before it.
    fn tree<C: Coder>(
        &mut self,
        coder: &mut C,
        kind: u32,
        contexts: &Contexts,
        bits: u32,
        value: u32,
    ) -> u32 {
        let mut node = 1;
        for place in (0..bits).rev() {
            let bit = self
                .mixer
                .bit(coder, kind, contexts, node, value >> place & 1 == 1);
            node = node << 1 | u32::from(bit);
        }
        node - (1 << bits)
    }

    fn contexts(&mut self, path: u32, entry: &Entry) -> Contexts {
        let after = hash(path, entry.last);
        let told_after = self.after.get(&after).copied().unwrap_or(0);
        let [one, two] = self.places.entry(path).or_default().last;
        [
            hash(20, path),
            hash(hash(21, path), one),
            hash(hash(hash(22, path), one), two),
            hash(hash(23, path), entry.last),
            hash(hash(24, path), entry.all),
            hash(hash(hash(25, path), entry.shape), entry.before),
            hash(hash(hash(26, path), entry.last), told_after),
            hash(hash(27, path), self.last_texts),
        ]
    }

    fn learn(&mut self, path: u32, entry: &mut Entry, value: u32) {
        let history = self.places.entry(path).or_default();
        history.last = [value, history.last[0]];
        self.after.insert(hash(path, entry.last), value);
        entry.last = value;
        entry.all = hash(entry.all, value);
    }
}

/// What is known of an entry while its values are told.
struct Entry {
    shape: u32,
    before: u32,
    /// Its first value, which is its number.
    number: i64,
    /// What stands for the value before.
    last: u32,
    /// What stands for all values before.
    all: u32,
    /// What stands for all texts before.
    texts: u32,
}
