//! The file of one match: reading gives every good entry and a list of problems, writing is the same
//! for the same log to the byte.

use serde::Serialize;
use serde_json::{Map, Value};

use super::chain::Link;
use super::seal::{self, Seal};
use super::wire;
use super::{Log, Problem, Reading};
use crate::game::Entry;

/// What the file says of itself.
pub const NAME: &str = "volleyball-match";
/// The version this program writes and reads.
const VERSION: u64 = 1;
/// Larger files are not looked into. A five-set match is about 60 KB.
pub const MOST_BYTES: usize = 8 * 1024 * 1024;
/// Longer logs are not read further. A five-set match has about 400 entries.
pub const MOST_ENTRIES: usize = 20_000;
/// More problems are only counted: nobody reads them, and a hostile file has one an entry.
const MOST_PROBLEMS: usize = 200;

#[derive(Serialize)]
struct File<'a> {
    log: &'a str,
    version: u64,
    id: &'a str,
    /// The link of the id, which is in no entry.
    link: &'a str,
    entries: [(); 0],
}

/// The log as a file, one entry a line, each with its link.
#[must_use]
pub fn write(log: &Log) -> String {
    let of_id = Link::of(log.id.as_bytes());
    let head = File {
        log: NAME,
        version: VERSION,
        id: &log.id,
        link: of_id.digits(),
        entries: [],
    };
    let head = to_json(&head);
    let mut out = head.trim_end_matches("]}").to_owned();
    let mut link = Link::default();
    for (i, entry) in log.entries.iter().enumerate() {
        let json = write_entry(entry);
        link = link.next(&json);
        out.push_str(if i == 0 { "\n" } else { ",\n" });
        // The link stands last inside the braces.
        out.push_str(json.strip_suffix('}').unwrap_or(&json));
        out.push_str(",\"link\":\"");
        out.push_str(link.digits());
        out.push_str("\"}");
    }
    out.push_str("\n]}\n");
    out
}

/// One entry as JSON without line breaks.
#[must_use]
pub fn write_entry(entry: &Entry) -> String {
    wire::write(entry)
}

fn to_json(value: &impl Serialize) -> String {
    // Plain structs with string keys cannot fail to be written.
    serde_json::to_string(value).unwrap_or_default()
}

/// One entry from its JSON.
///
/// # Errors
/// One sentence about what cannot be read.
pub fn read_entry(json: &str) -> Result<Entry, String> {
    let value: Value = serde_json::from_str(json).map_err(|e| e.to_string())?;
    wire::read(&value)
}

/// Reads a file. What can be read is there, what cannot is in the problems.
#[must_use]
pub fn read(text: &str) -> Reading {
    let mut reading = Reading::default();
    if text.len() > MOST_BYTES {
        reading.whole(format!(
            "The file has {} bytes; a match has far less than {MOST_BYTES}. Choose another file.",
            text.len()
        ));
        return reading;
    }
    let value: Value = match serde_json::from_str(text.trim_start_matches('\u{feff}')) {
        Ok(value) => value,
        Err(e) => match by_lines(text) {
            Some(value) => {
                reading.note(
                    None,
                    format!("the file is damaged ({e}); what is whole was read"),
                );
                value
            }
            None => {
                reading.whole(format!(
                    "This is not JSON, or it is cut off: {e}. Ask for the file once more."
                ));
                return reading;
            }
        },
    };
    read_value(&value, &mut reading);
    reading
}

/// A damaged file as it would be without the damage: an entry a line, as [`write`] makes it. What is no
/// entry any more is left empty. None where there is no head, so that nobody knows what it is.
fn by_lines(text: &str) -> Option<Value> {
    // A file that lacks its end is not read: nobody sees how much of it is gone.
    let entries = text.trim_end().strip_suffix("\n]}")?;
    let mut lines = entries.trim_start_matches('\u{feff}').lines();
    let head = format!("{}]}}", lines.next()?);
    let mut file: Value = serde_json::from_str(&head).ok()?;
    let entries = lines.take(MOST_ENTRIES + 1).map(|line| {
        let json = line.strip_suffix(',').unwrap_or(line);
        serde_json::from_str(json).unwrap_or(Value::Null)
    });
    *file.get_mut("entries")? = entries.collect();
    Some(file)
}

/// One match that was read as JSON already.
pub(super) fn read_value(value: &Value, reading: &mut Reading) {
    let Some(file) = value.as_object() else {
        reading.whole("The file is not a match record.".to_owned());
        return;
    };
    if file.get("log").and_then(Value::as_str) != Some(NAME) {
        reading.whole(format!(
            "The file is not a match record: `log` should say {NAME}."
        ));
        return;
    }
    match file.get("version").and_then(Value::as_u64) {
        Some(VERSION) => {}
        Some(newer) if newer > VERSION => {
            reading.whole(format!(
                "The file was written by a newer version ({newer}) of this program. Update and open \
                 it again."
            ));
            return;
        }
        _ => {
            reading.whole("The file does not say which version it has.".to_owned());
            return;
        }
    }
    for key in file.keys() {
        if !["log", "version", "id", "link", "entries"].contains(&key.as_str()) {
            reading.note(None, format!("unknown field `{key}`, left out"));
        }
    }
    match file.get("id").and_then(Value::as_str) {
        Some(id) => id.clone_into(&mut reading.log.id),
        None => reading.note(None, "the record has no id".to_owned()),
    }
    if let Some(given) = file.get("link") {
        if given.as_str() != Some(Link::of(reading.log.id.as_bytes()).digits()) {
            let say = "the id of the record was changed, or the link beside it";
            reading.note(None, say.to_owned());
        }
    }
    match file.get("entries").and_then(Value::as_array) {
        Some(entries) => read_entries(entries, reading),
        None => reading.whole("The record has no list of entries.".to_owned()),
    }
}

fn read_entries(entries: &[Value], reading: &mut Reading) {
    reading.entries = entries.len();
    let mut expected = 1;
    let mut chain = Chain::default();
    for (place, value) in entries.iter().take(MOST_ENTRIES).enumerate() {
        let n = value
            .get("n")
            .and_then(Value::as_u64)
            .and_then(|n| u32::try_from(n).ok());
        let place = u32::try_from(place).unwrap_or(u32::MAX).saturating_add(1);
        let Some(n) = n.filter(|&n| n > 0) else {
            let why = match value {
                Value::Object(_) => "the entry has no number",
                _ => "the entry is damaged",
            };
            reading.unreadable(place, why.to_owned());
            expected = expected.max(place + 1);
            chain.skip(value);
            continue;
        };
        if n != expected {
            if let Some(entry) = chain.under_another_number(value, expected) {
                reading.changed.push(expected);
                let say = format!("the number of the entry was changed to {n}");
                reading.note(Some(expected), say);
                reading.log.entries.push(entry);
                expected += 1;
                continue;
            }
        }
        if n < expected {
            reading.note(
                Some(n),
                format!("number {n} stands again, the later one is left out"),
            );
            continue;
        }
        if n > expected {
            reading.note(
                Some(n),
                format!("entries {expected} to {} are missing", n - 1),
            );
            chain.before = None;
        }
        expected = n.saturating_add(1);
        match wire::read(value) {
            Ok(entry) => {
                let unknown = unknown_fields(value, &entry);
                if chain.parts_at(&entry, value, unknown.is_empty()) {
                    reading.changed.push(n);
                    reading.note(Some(n), CHANGED.to_owned());
                }
                for field in unknown {
                    reading.note(Some(n), format!("unknown field `{field}`, left out"));
                }
                reading.log.entries.push(entry);
            }
            Err(why) => {
                reading.unreadable(n, why);
                chain.skip(value);
            }
        }
    }
    if entries.len() > MOST_ENTRIES {
        reading.note(
            None,
            format!(
                "{} entries; only the first {MOST_ENTRIES} were read",
                entries.len()
            ),
        );
    }
    for seal in seal::seals(&reading.log.entries) {
        if !seal.fits() {
            reading.note(Some(seal.entry), broken_seal(&seal));
        }
    }
}

const CHANGED: &str =
    "the entry is not as it was written: its link does not fit, so it or its link was \
                       changed, or another one before it was taken out";

fn broken_seal(seal: &Seal) -> String {
    format!(
        "what stands before the seal is not what was sealed: the seal says {}, the record gives {}",
        seal::spaced(&seal.code),
        seal::spaced(&seal.found)
    )
}

/// Follows the links of a file. Each is checked against the one given before it, so that what is wrong
/// in one place hides nothing in another.
struct Chain {
    /// The link before; none where it cannot be known.
    before: Option<Link>,
}

impl Default for Chain {
    fn default() -> Chain {
        Chain {
            before: Some(Link::default()),
        }
    }
}

impl Chain {
    /// Whether an entry is not what its link was made of. Nothing is said where the entry has no link,
    /// or fields of a newer version which the link was made with.
    fn parts_at(&mut self, entry: &Entry, value: &Value, all_known: bool) -> bool {
        let made = self.before.as_ref().map(|b| b.next(&write_entry(entry)));
        let Some(given) = value.get(LINK) else {
            self.before = made.filter(|_| all_known);
            return false;
        };
        let given = given.as_str().and_then(Link::read);
        let parts = given.is_none() || (all_known && made.is_some() && made != given);
        self.before = given;
        parts
    }

    /// The entry as it was before its number was changed, if the link says that this is what happened.
    fn under_another_number(&mut self, value: &Value, n: u32) -> Option<Entry> {
        let given = Link::read(value.get(LINK)?.as_str()?)?;
        let entry = Entry {
            n,
            ..wire::read(value).ok()?
        };
        let fits = self.before.as_ref()?.next(&write_entry(&entry)) == given;
        fits.then(|| {
            self.before = Some(given);
            entry
        })
    }

    /// Goes past an entry that cannot be read.
    fn skip(&mut self, value: &Value) {
        self.before = value.get(LINK).and_then(Value::as_str).and_then(Link::read);
    }
}

/// The field of an entry's link.
const LINK: &str = "link";

/// Fields of an entry that writing it again would not bring back.
fn unknown_fields(given: &Value, entry: &Entry) -> Vec<String> {
    let Ok(Value::Object(known)) = serde_json::from_str(&wire::write(entry)) else {
        return Vec::new();
    };
    // Fields that may be given with the value they have when left out.
    let silent = |key: &str, v: &Value| {
        key == LINK
            || v.is_null()
            || v == &Value::Bool(false)
            || (key == "staff" && v == &Value::Array(Vec::new()))
    };
    let empty = Map::new();
    given
        .as_object()
        .unwrap_or(&empty)
        .iter()
        .filter(|(key, v)| !known.contains_key(*key) && !silent(key, v))
        .map(|(key, _)| key.clone())
        .collect()
}

impl Reading {
    fn whole(&mut self, say: String) {
        self.problems.push(Problem {
            entry: None,
            fatal: true,
            say,
        });
    }

    fn note(&mut self, entry: Option<u32>, say: String) {
        match self.problems.len() {
            0..MOST_PROBLEMS => {}
            MOST_PROBLEMS => {
                let say = "there is more wrong than is listed here".to_owned();
                return self.problems.push(Problem {
                    entry: None,
                    fatal: false,
                    say,
                });
            }
            _ => return,
        }
        self.problems.push(Problem {
            entry,
            fatal: false,
            say,
        });
    }

    fn unreadable(&mut self, entry: u32, why: String) {
        self.unreadable.push(entry);
        self.note(Some(entry), why);
    }
}
