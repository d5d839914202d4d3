//! What somebody hands over as a file: its bytes, before anybody knows what they are.
//!
//! A record is UTF-8, but files pass through mail programs and editors that write them anew. What is
//! certain is read, whatever its encoding; the rest is told apart, so that there is a way out.

use std::fmt;

use serde::de::IgnoredAny;

use super::frames::gather;
use super::pack::unpack;
use super::problem::PackProblem;
use super::Log;

/// What the bytes of a file hold.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Handed {
    /// A text, of whichever kind it says that it is.
    Text(String),
    /// A record that was packed, as bytes or as the digits of its codes.
    Record(Box<Log>),
}

/// Why bytes hold nothing that can be read here.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Foreign {
    /// Nothing at all.
    Empty,
    /// Files packed into one.
    Archive,
    /// A picture.
    Picture,
    /// A PDF.
    Pdf,
    /// A text whose letters cannot be told with certainty.
    Letters,
    /// No text.
    Binary,
    /// A packed record, or codes of one, that is damaged, incomplete or of another version.
    Packed(PackProblem),
}

impl fmt::Display for Foreign {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self, f)
    }
}

impl std::error::Error for Foreign {}

/// Packed records begin with their version. No text begins with such a byte.
const VERSIONS: std::ops::Range<u8> = 1..9;

/// How a foreign file begins, and at which byte.
const BEGINNINGS: [(usize, &[u8], Foreign); 12] = [
    // The application note of PKWARE: a local file, and the end of an archive without files.
    (0, b"PK\x03\x04", Foreign::Archive),
    (0, b"PK\x05\x06", Foreign::Archive),
    // RFC 1952, 2.3.1.
    (0, b"\x1f\x8b", Foreign::Archive),
    (0, b"7z\xbc\xaf\x27\x1c", Foreign::Archive),
    (0, b"Rar!\x1a\x07", Foreign::Archive),
    // ISO 32000-1, 7.5.2.
    (0, b"%PDF-", Foreign::Pdf),
    // ISO/IEC 15948, 5.2.
    (0, b"\x89PNG", Foreign::Picture),
    // ISO/IEC 10918-1, B.1.1.3: the start of an image, and of the next marker.
    (0, b"\xff\xd8\xff", Foreign::Picture),
    (0, b"GIF8", Foreign::Picture),
    // RFC 9649, 2.4: the name stands behind the size.
    (8, b"WEBP", Foreign::Picture),
    // ISO/IEC 14496-12, 4.3: photos of phones have this box first, behind its size.
    (4, b"ftyp", Foreign::Picture),
    (0, b"BM", Foreign::Picture),
];

/// What the bytes of a file hold.
///
/// # Errors
/// Where that cannot be told, or is nothing that is read here.
pub fn handed(bytes: &[u8]) -> Result<Handed, Foreign> {
    let is_text = |byte: u8| !VERSIONS.contains(&byte) && byte != 0;
    let text = match bytes {
        [0xef, 0xbb, 0xbf, rest @ ..] => utf_8(rest)?,
        [0xff, 0xfe, rest @ ..] => utf_16(rest, u16::from_le_bytes)?,
        [0xfe, 0xff, rest @ ..] => utf_16(rest, u16::from_be_bytes)?,
        // Every file of ours begins with two signs of ASCII, and no text of one byte a sign has zeros.
        [a, 0, b, 0, ..] if is_text(*a) && is_text(*b) => utf_16(bytes, u16::from_le_bytes)?,
        [0, a, 0, b, ..] if is_text(*a) && is_text(*b) => utf_16(bytes, u16::from_be_bytes)?,
        [first, ..] if VERSIONS.contains(first) => {
            let log = unpack(bytes).map_err(Foreign::Packed)?;
            return Ok(Handed::Record(Box::new(log)));
        }
        _ => match foreign(bytes) {
            Some(foreign) => return Err(foreign),
            None => utf_8(bytes)?,
        },
    };
    if text.trim().is_empty() {
        return Err(Foreign::Empty);
    }
    match gather(&text) {
        Some(Ok(log)) => Ok(Handed::Record(Box::new(log))),
        Some(Err(why)) => Err(Foreign::Packed(why)),
        None => Ok(Handed::Text(text)),
    }
}

fn foreign(bytes: &[u8]) -> Option<Foreign> {
    let begins = |&&(at, sign, _): &&(usize, &[u8], Foreign)| {
        bytes.get(at..).is_some_and(|rest| rest.starts_with(sign))
    };
    let (_, sign, foreign) = BEGINNINGS.iter().find(begins)?;
    // Two letters may begin a text as well.
    let is_text = sign.len() == 2 && std::str::from_utf8(bytes).is_ok();
    (!is_text).then(|| foreign.clone())
}

fn utf_16(bytes: &[u8], unit: fn([u8; 2]) -> u16) -> Result<String, Foreign> {
    // A file that is cut off may end within a sign; what reads it says that its end is missing.
    let (pairs, _half) = bytes.as_chunks::<2>();
    let units = pairs.iter().map(|pair| unit(*pair));
    let mut signs: Vec<Result<char, _>> = char::decode_utf16(units).collect();
    if matches!(signs.last(), Some(Err(_))) {
        signs.pop();
    }
    let text: Result<String, _> = signs.into_iter().collect();
    text.map_err(|_| Foreign::Letters)
}

fn utf_8(bytes: &[u8]) -> Result<String, Foreign> {
    let (whole, damage) = match std::str::from_utf8(bytes) {
        Ok(text) => return Ok(text.to_owned()),
        Err(damage) => (&bytes[..damage.valid_up_to()], damage),
    };
    // A file that is cut off may end within a sign; what reads it says that its end is missing.
    if damage.error_len().is_none() {
        if let Ok(text) = std::str::from_utf8(whole) {
            if !text.is_empty() {
                return Ok(text.to_owned());
            }
        }
    }
    if bytes.iter().any(|b| *b < 9) {
        return Err(Foreign::Binary);
    }
    windows_1252(bytes).ok_or(Foreign::Letters)
}

/// The bytes as Windows-1252, which holds all of Latin-1 that is a letter; none where that is not
/// certain. It is where everything outside ASCII is a letter or a mark of writing, nothing of it would be
/// a sign in UTF-8, and the whole is what it should be: an object of JSON.
fn windows_1252(bytes: &[u8]) -> Option<String> {
    let is_utf_8 = bytes
        .chunk_by(|a, b| !a.is_ascii() && !b.is_ascii())
        .any(|run| !run[0].is_ascii() && std::str::from_utf8(run).is_ok());
    if is_utf_8 {
        return None;
    }
    let text: Option<String> = bytes.iter().map(|b| letter(*b)).collect();
    let text = text.filter(|text| text.trim_start().starts_with('{'))?;
    serde_json::from_str::<IgnoredAny>(&text).ok()?;
    Some(text)
}

/// A byte of Windows-1252, where it is ASCII, a letter or a mark of writing (the mapping that Unicode
/// publishes as CP1252.TXT).
fn letter(byte: u8) -> Option<char> {
    Some(match byte {
        0..=0x7f => char::from(byte),
        0x8a => 'Š',
        0x8c => 'Œ',
        0x8e => 'Ž',
        0x91 => '‘',
        0x92 => '’',
        0x93 => '“',
        0x94 => '”',
        0x96 => '–',
        0x97 => '—',
        0x9a => 'š',
        0x9c => 'œ',
        0x9e => 'ž',
        0x9f => 'Ÿ',
        0xd7 | 0xf7 => return None,
        // From here on Latin-1 is the beginning of Unicode.
        0xc0.. => char::from(byte),
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{frames, pack, read, write, Log};
    use game::{simulate, Kind};
    use rules::Preset;

    fn log() -> Log {
        let mut entries = simulate(Preset::SchoolJunior, 1);
        entries.truncate(40);
        if let Kind::Match(heading) = &mut entries[0].kind {
            heading.names.a = "Éclair Šumava".to_owned();
        }
        Log {
            id: "handed".to_owned(),
            entries,
        }
    }

    fn wide(text: &str, bytes: fn(u16) -> [u8; 2]) -> Vec<u8> {
        text.encode_utf16().flat_map(bytes).collect()
    }

    fn text(bytes: &[u8]) -> String {
        match handed(bytes) {
            Ok(Handed::Text(text)) => text,
            other => panic!("{other:?}"),
        }
    }

    #[test]
    fn digits_of_codes_are_a_record_where_none_is_missing() {
        let log = log();
        let codes = frames(&pack(&log).expect("it packs"), 150).expect("few codes");
        assert!(codes.len() > 2);
        let file = |codes: &[String]| codes.join("\r\n");
        let whole = Handed::Record(Box::new(log));
        assert_eq!(handed(file(&codes).as_bytes()), Ok(whole.clone()));
        // In any order, and as often as somebody pulled the trigger.
        let mut twice = codes.clone();
        twice.reverse();
        twice.push(codes[0].clone());
        let again = twice
            .iter()
            .map(String::as_str)
            .chain(["", " "])
            .collect::<Vec<_>>()
            .join("\n");
        assert_eq!(handed(again.as_bytes()), Ok(whole));
        let packed = |why| Err(Foreign::Packed(why));
        let missing = PackProblem::MissingCodes(vec![1]);
        assert_eq!(handed(file(&codes[1..]).as_bytes()), packed(missing));
        assert_eq!(handed(b"281474976710655"), packed(PackProblem::ForeignCode));
        assert_eq!(text(b"12 Otters"), "12 Otters");
    }

    #[test]
    fn every_certain_encoding_gives_the_same_record() {
        let file = write(&log());
        let narrow: Vec<u8> = file
            .chars()
            .map(|c| match c {
                'Š' => 0x8a,
                c => u8::try_from(u32::from(c)).expect("a sign of one byte"),
            })
            .collect();
        let files: [(&str, Vec<u8>); 8] = [
            ("UTF-8", file.clone().into_bytes()),
            ("with a mark", [b"\xef\xbb\xbf", file.as_bytes()].concat()),
            ("CRLF", file.replace('\n', "\r\n").into_bytes()),
            ("UTF-16 LE", wide(&file, u16::to_le_bytes)),
            ("UTF-16 BE", wide(&file, u16::to_be_bytes)),
            (
                "with a mark, LE",
                wide(&format!("\u{feff}{file}"), u16::to_le_bytes),
            ),
            (
                "with a mark, BE",
                wide(&format!("\u{feff}{file}"), u16::to_be_bytes),
            ),
            ("Windows-1252", narrow),
        ];
        for (name, bytes) in files {
            let reading = read(&text(&bytes));
            assert_eq!(reading.problems, [], "{name}");
            assert_eq!(reading.log, log(), "{name}");
        }
    }

    #[test]
    fn a_sign_that_is_cut_in_half_is_a_missing_end() {
        let file = write(&log());
        let at = file.find('É').expect("it is there");
        for bytes in [
            file.as_bytes()[..=at].to_vec(),
            wide(&file[..at], u16::to_le_bytes)[..at * 2 - 1].to_vec(),
        ] {
            assert!(file.starts_with(&text(&bytes)), "{bytes:?}");
        }
    }

    #[test]
    fn an_uncertain_letter_is_not_guessed() {
        // One byte of a sign is lost while others are whole; and a sign that no name has.
        let half = "{\"a\":\"É\",\"b\":\"É\"}".as_bytes();
        let half: Vec<u8> = half
            .iter()
            .copied()
            .enumerate()
            .filter(|(i, _)| *i != 7)
            .map(|(_, b)| b)
            .collect();
        for bytes in [
            half,
            b"{\"a\":\"\xd7\"}".to_vec(),
            b"{\"a\":\"\x81\"}".to_vec(),
            b"{\"a\":\"\xc9\"".to_vec(),
            b"Otters \xc9 25".to_vec(),
            [wide("{\"a\":1", u16::to_le_bytes), vec![0, 0xd8, 0, 0]].concat(),
        ] {
            assert_eq!(handed(&bytes), Err(Foreign::Letters), "{bytes:x?}");
        }
    }

    #[test]
    fn what_is_none_of_ours_is_told_apart() {
        let files: [(&[u8], Foreign); 13] = [
            (b"", Foreign::Empty),
            (b"\xef\xbb\xbf \r\n\t", Foreign::Empty),
            (b"\xff\xfe", Foreign::Empty),
            (b"PK\x03\x04\x14\0\0\0", Foreign::Archive),
            (b"\x1f\x8b\x08\0\0\0\0\0", Foreign::Archive),
            (b"\x89PNG\r\n\x1a\n\0\0", Foreign::Picture),
            (b"\xff\xd8\xff\xe0\0\x10JFIF", Foreign::Picture),
            (b"GIF89a\x01\0", Foreign::Picture),
            (b"RIFF\x24\0\0\0WEBPVP8 ", Foreign::Picture),
            (b"\0\0\0\x18ftypheic\0\0", Foreign::Picture),
            (b"BM\x36\xff\0\0\0\0", Foreign::Picture),
            (b"%PDF-1.7\n%\xe2\xe3", Foreign::Pdf),
            (b"\x7fELF\x02\x01\x01\0\xff", Foreign::Binary),
        ];
        for (bytes, foreign) in files {
            assert_eq!(handed(bytes), Err(foreign), "{bytes:x?}");
        }
        // A text may begin with the two letters of a bitmap.
        assert_eq!(text(b"BM"), "BM");
    }

    #[test]
    fn a_packed_record_is_one() {
        let mut packed = pack(&log()).expect("it packs");
        assert_eq!(handed(&packed), Ok(Handed::Record(Box::new(log()))));
        packed.truncate(20);
        assert_eq!(handed(&packed), Err(Foreign::Packed(PackProblem::Damaged)));
    }
}
