//! The hand-over: a whole match in a few hundred bytes.
//!
//! An entropy coder driven by the reducer: what cannot happen in a state costs nothing, what is usual
//! costs little. Reading gives the same log back to the byte, so a packed record can only be read by a
//! program with the same rules of play; the first byte says which. The plain file is the archive.

mod coder;
mod custom;
mod model;
mod text;

use sha2::{Digest, Sha256};

use self::coder::{Chance, Coder, Reader, Writer};
use self::model::Model;
use super::{file, Log};
use crate::game::Replay;

/// The first byte of a compact form. It rises whenever the same bytes would be read differently: with
/// the model, and with every rule of play (`tests/pack.rs` notices).
pub const PACKED_VERSION: u8 = 3;
/// Bytes of SHA-256 over the plain file that tell a damaged hand-over.
const CHECK: usize = 4;
/// A hand-over of more bytes is not looked into; a match of five sets has less than a thousand.
pub const MOST_PACKED: usize = 64 * 1024;
/// More entries than any match; a reader of damaged bytes stops there.
const MOST: usize = 5_000;

/// The compact form of a log.
///
/// # Errors
/// One sentence: a log with gaps in its numbers, or a longer one than any match, has no compact form.
pub fn pack(log: &Log) -> Result<Vec<u8>, String> {
    if !model::is_in_order(&log.entries) {
        return Err(
            "Entries are missing in this record, so it cannot be packed. Hand over the file."
                .to_owned(),
        );
    }
    if log.entries.len() > MOST {
        return Err(format!(
            "The record has more than {MOST} entries and cannot be packed. Hand over the file."
        ));
    }
    let mut writer = Writer::new();
    talk(&mut writer, Some(log), |_| false)?;
    let mut out = vec![PACKED_VERSION];
    out.extend_from_slice(&check(log));
    out.extend(writer.finish());
    Ok(out)
}

/// The log of a compact form.
///
/// # Errors
/// One sentence about what cannot be read, with the way out.
pub fn unpack(bytes: &[u8]) -> Result<Log, String> {
    if bytes.len() > MOST_PACKED {
        return Err("This is too long for a packed record. Ask for the file.".to_owned());
    }
    let Some((&version, rest)) = bytes.split_first() else {
        return Err("There is nothing to unpack.".to_owned());
    };
    if version != PACKED_VERSION {
        return Err(format!(
            "This record was packed by another version ({version}, this one is {PACKED_VERSION}). Update, or \
             ask for the file."
        ));
    }
    let damaged = || "The packed record is damaged. Hand it over once more.".to_owned();
    let Some((given, body)) = rest.split_at_checked(CHECK) else {
        return Err(damaged());
    };
    let mut reader = Reader::new(body);
    let log = talk(&mut reader, None, Reader::is_past_end).map_err(|_| damaged())?;
    if check(&log) == *given {
        Ok(log)
    } else {
        Err(damaged())
    }
}

fn check(log: &Log) -> [u8; CHECK] {
    let digest = Sha256::digest(file::write(log).as_bytes());
    let mut check = [0; CHECK];
    check.copy_from_slice(&digest[..CHECK]);
    check
}

/// Both directions: the id, then entry after entry behind the fold of those before it.
fn talk<C: Coder>(
    coder: &mut C,
    given: Option<&Log>,
    is_over: impl Fn(&C) -> bool,
) -> Result<Log, String> {
    let mut model = Model::new();
    let id = model.id(coder, given.map(|l| l.id.as_str()))?;
    let mut replay = Replay::new();
    let mut more = Chance::yes_in_16(15);
    let next = |replay: &Replay| given.and_then(|l| l.entries.get(replay.entries().len()));
    while coder.bit(&mut more, next(&replay).is_some()) {
        if replay.entries().len() >= MOST || is_over(coder) {
            return Err("no end".to_owned());
        }
        let entry = model.entry(coder, &replay, next(&replay))?;
        replay.push(entry);
    }
    Ok(Log {
        id,
        entries: replay.entries().to_vec(),
    })
}

#[cfg(test)]
mod tests {
    use super::coder::Counter;
    use super::*;
    use crate::game::{rehearse, Kind};
    use crate::rules::Preset;

    /// What each kind of entry costs, for whoever works on the model: `cargo test --lib pack -- --show-output`.
    #[test]
    fn the_model_costs_what_it_costs() {
        let entries = rehearse(Preset::International, 4);
        let mut counter = Counter { bits: 0.0 };
        let mut model = Model::new();
        let mut replay = Replay::new();
        let mut by_kind: std::collections::BTreeMap<String, (u32, f64)> = Default::default();
        for entry in &entries {
            let before = counter.bits;
            let same = model
                .entry(&mut counter, &replay, Some(entry))
                .expect("it is coded");
            assert_eq!(&same, entry);
            replay.push(same);
            let words = format!("{:?}", entry.kind);
            let kind = words.split([' ', '(', '{']).next().unwrap_or_default();
            let (count, bits) = by_kind.entry(kind.to_owned()).or_default();
            *count += 1;
            *bits += counter.bits - before;
        }
        for (kind, (count, bits)) in &by_kind {
            println!(
                "{kind:20} {count:4} {:7.1} bytes, {:5.1} bits each",
                bits / 8.0,
                bits / f64::from(*count)
            );
        }
        assert!(matches!(entries[0].kind, Kind::Match(_)));
        let log = Log {
            id: String::new(),
            entries,
        };
        let packed = pack(&log).expect("it packs").len() as f64;
        println!("{packed} bytes in all");
        assert!(
            (packed - counter.bits / 8.0).abs() < 16.0,
            "{packed} {}",
            counter.bits / 8.0
        );
    }
}
