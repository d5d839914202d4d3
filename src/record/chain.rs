//! The chain of a log: each entry has a link, made of the link before it and of its own canonical JSON.
//!
//! One chain serves three things. In storage it tells a damaged line; in a file it says which entry was
//! changed, because each link can be checked against the one given before it, whatever is wrong
//! elsewhere; and the last link, shortened, is the code of the seal.

use sha2::{Digest, Sha256};

/// Hexadecimal digits of a link: the first 64 bits of SHA-256.
const DIGITS: usize = 16;

/// A link of the chain.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Link(String);

/// Before the first entry.
impl Default for Link {
    fn default() -> Link {
        Link::of(b"")
    }
}

impl Link {
    /// The link of any bytes on their own.
    #[must_use]
    pub fn of(bytes: &[u8]) -> Link {
        Link::short(&Sha256::digest(bytes))
    }

    /// The link of the next entry.
    #[must_use]
    pub fn next(&self, json: &str) -> Link {
        let mut hash = Sha256::new();
        hash.update(self.0.as_bytes());
        hash.update(json.as_bytes());
        Link::short(&hash.finalize())
    }

    /// A link that somebody wrote down; none if it cannot be one.
    #[must_use]
    pub fn read(text: &str) -> Option<Link> {
        let digit = |b: u8| b.is_ascii_digit() || (b'a'..=b'f').contains(&b);
        (text.len() == DIGITS && text.bytes().all(digit)).then(|| Link(text.to_owned()))
    }

    /// Its digits.
    #[must_use]
    pub fn digits(&self) -> &str {
        &self.0
    }

    /// The same as a number.
    #[must_use]
    pub fn number(&self) -> u64 {
        // Sixteen hexadecimal digits are always a number of 64 bits.
        u64::from_str_radix(&self.0, 16).unwrap_or(0)
    }

    fn short(digest: &[u8]) -> Link {
        let bytes = digest.iter().take(DIGITS / 2);
        Link(bytes.map(|b| format!("{b:02x}")).collect())
    }
}
