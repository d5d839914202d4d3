//! The seal: a short code of everything that stands before it, to read aloud or to write on paper.
//!
//! What it shows: a record with this code is, as far as 45 bits go, the record that was sealed; whoever
//! changes an entry afterwards gets another code. What it does not show: who sealed it, when, or that
//! what was entered is true. It holds no secret, so whoever changes a record can seal it anew; only the
//! code that was written down elsewhere tells. And somebody who prepares two records *before* the
//! sealing can find two with one code in a few seconds: it guards what was signed, not against the
//! hand that wrote it.

use super::chain::Link;
use super::file::write_entry;
use game::{Entry, Kind};

/// The signs of a code. Of each pair that looks alike on paper only one is there: 5 and not S, 2 and
/// not Z, 8 and not B, 6 and not G, V and not U; no 0, O, Q, D, 1, I, L. (Our own choice.)
const SIGNS: &[u8; 24] = b"23456789ACEFHJKMNPRTVWXY";
/// How many of them: 24 to the 10th are 45.8 bits.
const LENGTH: usize = 10;

/// A seal in a log.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Seal {
    /// Its entry.
    pub entry: u32,
    /// When it was set.
    pub at: Option<i64>,
    /// The code that it was set with.
    pub code: String,
    /// The code of what stands before it now.
    pub found: String,
}

impl Seal {
    /// Whether what stands before it is what was sealed.
    #[must_use]
    pub fn fits(&self) -> bool {
        self.code == self.found
    }
}

/// The code of everything in a log, for an entry that seals it.
#[must_use]
pub fn seal_code(entries: &[Entry]) -> String {
    code_of(&entries.iter().fold(Link::default(), after))
}

/// Every seal of a log, in its order.
#[must_use]
pub fn seals(entries: &[Entry]) -> Vec<Seal> {
    let is_seal = |e: &Entry| matches!(e.kind, Kind::Seal { .. });
    let Some(last) = entries.iter().rposition(is_seal) else {
        return Vec::new();
    };
    let mut link = Link::default();
    let mut seals = Vec::new();
    for entry in &entries[..=last] {
        if let Kind::Seal { code } = &entry.kind {
            seals.push(Seal {
                entry: entry.n,
                at: entry.at,
                code: code.clone(),
                found: code_of(&link),
            });
        }
        link = after(link, entry);
    }
    seals
}

/// A code in two halves, as one reads it aloud.
#[must_use]
pub fn spaced(code: &str) -> String {
    match code.split_at_checked(LENGTH / 2) {
        Some((first, second)) => format!("{first} {second}"),
        None => code.to_owned(),
    }
}

/// A code as somebody typed or heard it: small letters, gaps and the twins of signs are forgiven. None
/// if it can be none.
#[must_use]
pub fn typed_code(typed: &str) -> Option<String> {
    let code: String = typed
        .chars()
        .filter(|c| !c.is_whitespace() && !matches!(c, '-' | '.'))
        .map(|c| match c.to_ascii_uppercase() {
            'S' => '5',
            'Z' => '2',
            'B' => '8',
            'G' => '6',
            'U' => 'V',
            c => c,
        })
        .take(LENGTH + 1)
        .collect();
    let known = |b: u8| SIGNS.contains(&b);
    (code.len() == LENGTH && code.bytes().all(known)).then_some(code)
}

fn after(link: Link, entry: &Entry) -> Link {
    link.next(&write_entry(entry))
}

fn code_of(link: &Link) -> String {
    let mut rest = link.number();
    let base = SIGNS.len() as u64;
    (0..LENGTH)
        .map(|_| {
            // The remainder of a division by 24.
            let sign = SIGNS[usize::try_from(rest % base).unwrap_or(0)];
            rest /= base;
            char::from(sign)
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_that_was_heard_is_forgiven_its_twins() {
        assert_eq!(typed_code("suzbg 23456").as_deref(), Some("5V28623456"));
        assert_eq!(typed_code("5V286-23456").as_deref(), Some("5V28623456"));
        assert_eq!(typed_code("5V286"), None);
        assert_eq!(typed_code("5V286 234561"), None);
        assert_eq!(typed_code("0V286 23456"), None);
    }

    #[test]
    fn no_sign_stands_twice_and_none_has_its_twin() {
        for (i, sign) in SIGNS.iter().enumerate() {
            assert!(!SIGNS[..i].contains(sign));
            assert!(!b"01ILOQDSZBGU".contains(sign));
        }
    }
}
