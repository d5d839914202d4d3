//! A packed record, or the packed notes of an observer, as the texts of one or more QR codes, and back from
//! whatever a camera saw of them, in any order and as often as it liked.
//!
//! The texts are digits. A code of digits alone holds 99.7 % of what one of raw bytes does (ISO/IEC
//! 18004, numeric mode: 10 bits for three digits), and every reader gives digits back as they are,
//! while many take raw bytes for letters and spoil them.

use super::pack::{unpack, MAX_PACKED};
use super::{Log, Observed, PackProblem};

/// Digits that fit a QR code of version 20 at level L (ISO/IEC 18004, table 7); 97 by 97 squares, which
/// an ordinary phone reads from another one's screen.
pub const DIGITS_LARGE: usize = 2061;
/// Digits that fit version 10 at level L; 57 by 57 squares, for a poor camera or a small screen.
pub const DIGITS_SMALL: usize = 652;

/// First byte of a whole record in one code.
const WHOLE: u8 = 1;
/// First byte of a part. The next two are how many parts there are, and which this is, from 0; then
/// four bytes of the check that the packed record begins with.
const PART: u8 = 2;
/// The same two of the notes of an observer.
const NOTES: u8 = 3;
const NOTES_PART: u8 = 4;
/// Bytes before what a part carries.
const HEAD: usize = 7;
/// Where the check lies in a packed record.
const MARK: std::ops::Range<usize> = 1..5;
/// Nobody holds a phone still for more.
const MAX_PARTS: usize = 64;

/// Bytes that so many digits can carry.
const fn room(digits: usize) -> usize {
    // log 10 / log 256 = 0.41524, a little less to be safe.
    digits * 41_524 / 100_000
}

/// The texts of the codes that hand a packed record over, none longer than `digits`.
///
/// # Errors
/// Where it would be more codes than anybody scans.
pub fn frames(packed: &[u8], digits: usize) -> Result<Vec<String>, PackProblem> {
    of_kinds(WHOLE, PART, packed, digits)
}

/// The same for the packed notes of an observer ([`Observed::pack`]).
///
/// # Errors
/// Where it would be more codes than anybody scans.
pub fn note_frames(packed: &[u8], digits: usize) -> Result<Vec<String>, PackProblem> {
    of_kinds(NOTES, NOTES_PART, packed, digits)
}

fn of_kinds(whole: u8, part: u8, packed: &[u8], digits: usize) -> Result<Vec<String>, PackProblem> {
    if packed.len() < room(digits) {
        return Ok(vec![to_digits(whole, &[], packed)]);
    }
    let most = room(digits).saturating_sub(HEAD).max(1);
    let parts = packed.len().div_ceil(most);
    let count = u8::try_from(parts).unwrap_or(u8::MAX);
    if parts > MAX_PARTS {
        return Err(PackProblem::TooManyCodes(parts));
    }
    // All about the same size, so that none is harder to read than it need be.
    let each = packed.len().div_ceil(parts);
    let mark = &packed[MARK];
    let heads = (0..count).map(|i| [&[count, i], mark].concat());
    let chunks = packed.chunks(each).zip(heads);
    Ok(chunks
        .map(|(chunk, head)| to_digits(part, &head, chunk))
        .collect())
}

/// What one more code brought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Seen {
    /// The record is whole.
    Record(Box<Log>),
    /// The notes of an observer are whole.
    Notes(Box<Observed>),
    /// A part that was missing; how many are there now, and of how many.
    Part {
        /// So many are there.
        have: usize,
        /// So many there are.
        of: usize,
    },
    /// It was there already.
    Again,
    /// A part of another record than those before it; nothing was done with it.
    OtherRecord,
    /// No code of ours, or one that cannot be read.
    Nothing(PackProblem),
}

/// Parts of a record as they come.
#[derive(Clone, Debug, Default)]
pub struct Gathering {
    /// Of which kind the parts are, and the check of what they are parts of.
    mark: Vec<u8>,
    parts: Vec<Option<Vec<u8>>>,
}

impl Gathering {
    /// Takes the text of a code.
    pub fn see(&mut self, text: &str) -> Seen {
        let Some(bytes) = from_digits(text) else {
            return foreign();
        };
        let Some((kind, rest)) = bytes.split_first() else {
            return foreign();
        };
        match *kind {
            WHOLE | NOTES => whole(*kind, rest),
            PART => self.part(WHOLE, rest),
            NOTES_PART => self.part(NOTES, rest),
            5..=9 => Seen::Nothing(PackProblem::NewerCode),
            _ => foreign(),
        }
    }

    /// Numbers of the parts that are missing, from 1.
    #[must_use]
    pub fn missing(&self) -> Vec<usize> {
        let parts = self.parts.iter().enumerate();
        parts
            .filter(|(_, p)| p.is_none())
            .map(|(i, _)| i + 1)
            .collect()
    }

    /// Forgets every part, for another record.
    pub fn clear(&mut self) {
        *self = Gathering::default();
    }

    fn part(&mut self, kind: u8, rest: &[u8]) -> Seen {
        let Some((head, chunk)) = rest.split_at_checked(HEAD - 1) else {
            return foreign();
        };
        let (of, at) = (usize::from(head[0]), usize::from(head[1]));
        if at >= of || of > MAX_PARTS || chunk.is_empty() || chunk.len() > MAX_PACKED / MAX_PARTS {
            return foreign();
        }
        let mark = [&[kind], &head[2..]].concat();
        if self.parts.is_empty() {
            self.mark = mark;
            self.parts = vec![None; of];
        } else if self.mark != mark || self.parts.len() != of {
            return Seen::OtherRecord;
        }
        if self.parts[at].is_some() {
            return Seen::Again;
        }
        self.parts[at] = Some(chunk.to_vec());
        let have = self.parts.iter().flatten().count();
        if have < of {
            return Seen::Part { have, of };
        }
        let packed: Vec<u8> = self.parts.iter().flatten().flatten().copied().collect();
        // Whatever comes of it, the next code begins anew.
        self.clear();
        whole(kind, &packed)
    }
}

/// The record whose codes stand in a text as digits, one code a line: a hand scanner writes them so. None
/// where the text holds anything but digits.
///
/// # Errors
/// Where the codes do not give one record.
pub(super) fn gather(text: &str) -> Option<Result<Log, PackProblem>> {
    let lines: Vec<&str> = text.lines().map(str::trim).collect();
    let mut codes = lines.into_iter().filter(|line| !line.is_empty()).peekable();
    codes.peek()?;
    let mut gathering = Gathering::default();
    let mut record = None;
    let mut outcome = Ok(());
    for code in codes {
        if !code.bytes().all(|b| b.is_ascii_digit()) {
            return None;
        }
        match gathering.see(code) {
            Seen::Record(log) => record = Some(*log),
            Seen::Part { .. } | Seen::Again => {}
            Seen::Notes(_) => outcome = Err(PackProblem::CodesOfNotes),
            Seen::OtherRecord => outcome = Err(PackProblem::MixedCodes),
            Seen::Nothing(why) => outcome = Err(why),
        }
    }
    Some(match (outcome, record) {
        (Ok(()), Some(log)) => Ok(log),
        (Ok(()), None) => Err(PackProblem::MissingCodes(gathering.missing())),
        (Err(why), _) => Err(why),
    })
}

fn whole(kind: u8, packed: &[u8]) -> Seen {
    if kind == NOTES {
        return match Observed::unpack(packed) {
            Some(observed) => Seen::Notes(Box::new(observed)),
            None => Seen::Nothing(PackProblem::NotesUnreadable),
        };
    }
    match unpack(packed) {
        Ok(log) => Seen::Record(Box::new(log)),
        Err(why) => Seen::Nothing(why),
    }
}

fn foreign() -> Seen {
    Seen::Nothing(PackProblem::ForeignCode)
}

/// Bytes as one number in digits; the first byte keeps it from beginning with a zero.
fn to_digits(kind: u8, head: &[u8], bytes: &[u8]) -> String {
    // Nine digits a limb, the lowest first.
    let mut limbs: Vec<u64> = vec![0];
    for &byte in std::iter::once(&kind).chain(head).chain(bytes) {
        let mut carry = u64::from(byte);
        for limb in &mut limbs {
            carry += *limb << 8;
            *limb = carry % LIMB;
            carry /= LIMB;
        }
        if carry > 0 {
            limbs.push(carry);
        }
    }
    let mut limbs = limbs.iter().rev();
    let first = limbs.next().map(u64::to_string).unwrap_or_default();
    limbs.fold(first, |text, limb| text + &format!("{limb:09}"))
}

/// The way back; none for what is no number of a sensible length.
fn from_digits(text: &str) -> Option<Vec<u8>> {
    let text = text.trim();
    let sensible = (1..=DIGITS_LARGE * 4).contains(&text.len());
    if !sensible || !text.bytes().all(|b| b.is_ascii_digit()) {
        return None;
    }
    // The lowest byte first.
    let mut bytes: Vec<u8> = Vec::new();
    for group in text.as_bytes().chunks(9) {
        let digits = std::str::from_utf8(group).ok()?;
        let mut carry: u64 = digits.parse().ok()?;
        let times = 10u64.pow(u32::try_from(group.len()).ok()?);
        for byte in &mut bytes {
            carry += u64::from(*byte) * times;
            *byte = low(carry);
            carry >>= 8;
        }
        while carry > 0 {
            bytes.push(low(carry));
            carry >>= 8;
        }
    }
    bytes.reverse();
    Some(bytes)
}

/// What fits a limb.
const LIMB: u64 = 1_000_000_000;

#[allow(clippy::cast_possible_truncation)] // The lowest byte is wanted.
const fn low(value: u64) -> u8 {
    (value & 0xFF) as u8
}

#[cfg(test)]
mod tests {
    use super::*;

    proptest::proptest! {
        #[test]
        fn digits_bring_the_bytes_back(bytes in proptest::collection::vec(proptest::prelude::any::<u8>(), 0..900)) {
            let text = to_digits(WHOLE, &[], &bytes);
            let back = from_digits(&text).expect("digits");
            proptest::prop_assert_eq!(&back[1..], &bytes[..]);
        }
    }

    /// The fullest bytes there are still fit.
    #[test]
    fn what_has_room_fits() {
        for digits in [DIGITS_LARGE, DIGITS_SMALL] {
            let text = to_digits(PART, &[], &vec![0xFF; room(digits) - 1]);
            assert!(text.len() <= digits, "{} of {digits}", text.len());
        }
    }
}
