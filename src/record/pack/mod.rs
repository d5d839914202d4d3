//! The hand-over: a whole match in few bytes.
//!
//! The text of each entry goes through an entropy coder whose model learns from the log itself. It knows
//! neither the rules of play nor the kinds of entries, so what one release packs every later one unpacks,
//! byte for byte, whatever became of the rules. What it is taught before the first entry ([`LESSON`]) and
//! how it learns stay as they are under one version; another way of coding is another version, beside this
//! one.

mod coder;
mod mix;
mod model;
mod shape;

use sha2::{Digest, Sha256};

use self::coder::{Coder, Nowhere, Reader, Writer};
use self::model::{Broken, Model};
use super::{file, Log, PackProblem};

/// The first byte of a compact form. Versions up to 3 hung on the rules of play of their day and cannot be
/// read any more.
pub const PACKED_VERSION: u8 = 4;
/// What the model is taught before the first entry: an invented match as version 4 has it. Never changed;
/// it is a part of the version.
const LESSON: &str = include_str!("lesson_4.txt");
/// Bytes of SHA-256 over the entries that tell a damaged hand-over.
const CHECK: usize = 4;
/// A hand-over of more bytes is not looked into; a match of five sets has less than two thousand.
pub const MAX_PACKED: usize = 64 * 1024;
/// More entries than any match; a reader of damaged bytes stops there.
const MOST: usize = 5_000;
/// More bytes of entries than any match: one of five sets has about 60 KB.
const MOST_BYTES: usize = 1024 * 1024;

/// The compact form of a log.
///
/// # Errors
/// A log with gaps in its numbers, or a longer one than any match, has no compact form.
pub fn pack(log: &Log) -> Result<Vec<u8>, PackProblem> {
    let in_order = (1..).zip(&log.entries).all(|(n, entry)| entry.n == n);
    if !in_order {
        return Err(PackProblem::Gaps);
    }
    if log.entries.len() > MOST {
        return Err(PackProblem::TooManyEntries(MOST));
    }
    let texts: Vec<String> = log.entries.iter().map(file::write_kept).collect();
    match pack_texts(PACKED_VERSION, LESSON, &log.id, &texts) {
        Some(packed) => Ok(packed),
        None => Err(PackProblem::TextTooLong),
    }
}

/// The compact form of an id and of texts behind it, each a line of JSON, by a model that was taught those of a
/// lesson: its version, a check, an arithmetic code. None where they cannot be told, such as a text of thousands
/// of letters.
pub(super) fn pack_texts(version: u8, lesson: &str, id: &str, texts: &[String]) -> Option<Vec<u8>> {
    let mut writer = Writer::new();
    let told = tell(&mut writer, lesson, MOST_BYTES, Some((id, texts)), |_| {
        false
    });
    let is_same = told.is_ok_and(|(told_id, again)| told_id == id && again == texts);
    if !is_same {
        return None;
    }
    let mut out = vec![version];
    out.extend_from_slice(&check(id, texts));
    out.extend(writer.finish());
    Some(out)
}

/// The way back from what stands behind the version; none where that is damaged.
pub(super) fn unpack_texts(lesson: &str, rest: &[u8]) -> Option<(String, Vec<String>)> {
    let (given, body) = rest.split_at_checked(CHECK)?;
    let mut reader = Reader::new(body);
    let (id, texts) = tell(&mut reader, lesson, MOST_BYTES, None, Reader::is_past_end).ok()?;
    (check(&id, &texts) == *given).then_some((id, texts))
}

/// The log of a compact form.
///
/// # Errors
/// What cannot be read.
pub fn unpack(bytes: &[u8]) -> Result<Log, PackProblem> {
    if bytes.len() > MAX_PACKED {
        return Err(PackProblem::TooLong);
    }
    let Some((&version, rest)) = bytes.split_first() else {
        return Err(PackProblem::Empty);
    };
    if version > PACKED_VERSION {
        return Err(PackProblem::Newer);
    }
    if version < PACKED_VERSION {
        return Err(PackProblem::Older);
    }
    let Some((id, texts)) = unpack_texts(LESSON, rest) else {
        return Err(PackProblem::Damaged);
    };
    let entries: Result<Vec<_>, _> = texts.iter().map(|text| file::read_entry(text)).collect();
    match entries {
        Ok(entries) if (1..).zip(&entries).all(|(n, entry)| entry.n == n) => {
            Ok(Log { id, entries })
        }
        // Nothing was damaged on the way: this program does not know an entry.
        _ => Err(PackProblem::UnknownEntries),
    }
}

fn check(id: &str, texts: &[String]) -> [u8; CHECK] {
    let mut digest = Sha256::new();
    for text in std::iter::once(id).chain(texts.iter().map(String::as_str)) {
        digest.update(text.as_bytes());
        // No text holds this, so that none can give a part to the next.
        digest.update([0]);
    }
    let digest = digest.finalize();
    let mut check = [0; CHECK];
    check.copy_from_slice(&digest[..CHECK]);
    check
}

/// Both directions: what the model is taught, the id, then the text of entry after entry.
fn tell<C: Coder>(
    coder: &mut C,
    lesson: &str,
    most_bytes: usize,
    given: Option<(&str, &[String])>,
    is_over: impl Fn(&C) -> bool,
) -> Result<(String, Vec<String>), Broken> {
    let mut model = Model::new(most_bytes);
    let mut lesson = lesson.lines();
    model.id(&mut Nowhere, lesson.next())?;
    for text in lesson {
        model.more(&mut Nowhere, true);
        model.entry(&mut Nowhere, Some(text))?;
    }
    let id = model.id(coder, given.map(|(id, _)| id))?;
    let mut texts = Vec::new();
    let next = |texts: &[String]| given.and_then(|(_, all)| all.get(texts.len()));
    while model.more(coder, next(&texts).is_some()) {
        if texts.len() >= MOST || is_over(coder) {
            return Err(Broken);
        }
        let text = model.entry(coder, next(&texts).map(String::as_str))?;
        texts.push(text);
    }
    Ok((id, texts))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Few bits stand for a text that was told before, so that a small code could ask for any amount of memory.
    #[test]
    fn a_code_that_grows_without_bound_is_refused() {
        let long = format!("\"{}\"", "a".repeat(10_000));
        let texts = vec![format!("[{}]", vec![long; 1_000].join(",")); 3];
        let mut writer = Writer::new();
        let told = tell(&mut writer, LESSON, usize::MAX, Some(("m", &texts)), |_| {
            false
        });
        assert!(told.is_ok_and(|(_, again)| again == texts));
        let mut rest = check("m", &texts).to_vec();
        rest.extend(writer.finish());
        assert!(rest.len() < MAX_PACKED, "{} bytes", rest.len());
        assert_eq!(unpack_texts(LESSON, &rest), None);
        assert_eq!(pack_texts(PACKED_VERSION, LESSON, "m", &texts), None);
        // What a match may be long is read.
        let texts = &texts[..1];
        let few = vec![texts[0][..10_004].to_owned() + "]"; 50];
        let packed = pack_texts(PACKED_VERSION, LESSON, "m", &few).expect("it fits");
        assert_eq!(unpack_texts(LESSON, &packed[1..]), Some(("m".into(), few)));
    }
}
