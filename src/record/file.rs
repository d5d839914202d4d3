//! The file of one match: reading gives every good entry and a list of problems, writing is the same
//! for the same log to the byte.

use serde::Serialize;
use serde_json::{Map, Value};

use super::wire;
use super::{Log, Problem, Reading};
use crate::game::Entry;

/// What the file says of itself.
const NAME: &str = "volleyball-match";
/// The version this program writes and reads.
const VERSION: u64 = 1;
/// Larger files are not looked into. A five-set match is about 60 KB.
pub const MOST_BYTES: usize = 8 * 1024 * 1024;
/// Longer logs are not read further. A five-set match has about 400 entries.
pub const MOST_ENTRIES: usize = 20_000;

#[derive(Serialize)]
struct File<'a> {
    log: &'a str,
    version: u64,
    id: &'a str,
    entries: Vec<wire::WEntry>,
}

/// The log as a file, one entry a line.
#[must_use]
pub fn write(log: &Log) -> String {
    let head = File {
        log: NAME,
        version: VERSION,
        id: &log.id,
        entries: Vec::new(),
    };
    let head = to_json(&head);
    let mut out = head.trim_end_matches("]}").to_owned();
    for (i, entry) in log.entries.iter().enumerate() {
        out.push_str(if i == 0 { "\n" } else { ",\n" });
        out.push_str(&write_entry(entry));
    }
    out.push_str("\n]}\n");
    out
}

/// One entry as JSON without line breaks.
#[must_use]
pub fn write_entry(entry: &Entry) -> String {
    to_json(&wire::write(entry))
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
        Err(e) => {
            reading.whole(format!(
                "This is not JSON, or it is cut off: {e}. Ask for the file once more."
            ));
            return reading;
        }
    };
    read_value(&value, &mut reading);
    reading
}

fn read_value(value: &Value, reading: &mut Reading) {
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
        if !["log", "version", "id", "entries"].contains(&key.as_str()) {
            reading.note(None, format!("unknown field `{key}`, left out"));
        }
    }
    match file.get("id").and_then(Value::as_str) {
        Some(id) => id.clone_into(&mut reading.log.id),
        None => reading.note(None, "the record has no id".to_owned()),
    }
    match file.get("entries").and_then(Value::as_array) {
        Some(entries) => read_entries(entries, reading),
        None => reading.whole("The record has no list of entries.".to_owned()),
    }
}

fn read_entries(entries: &[Value], reading: &mut Reading) {
    reading.entries = entries.len();
    let mut expected = 1;
    for (place, value) in entries.iter().take(MOST_ENTRIES).enumerate() {
        let n = value
            .get("n")
            .and_then(Value::as_u64)
            .and_then(|n| u32::try_from(n).ok());
        let place = u32::try_from(place).unwrap_or(u32::MAX).saturating_add(1);
        let Some(n) = n.filter(|&n| n > 0) else {
            reading.unreadable(place, "the entry has no number".to_owned());
            expected = expected.max(place + 1);
            continue;
        };
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
        }
        expected = n.saturating_add(1);
        match wire::read(value) {
            Ok(entry) => {
                for field in unknown_fields(value, &entry) {
                    reading.note(Some(n), format!("unknown field `{field}`, left out"));
                }
                reading.log.entries.push(entry);
            }
            Err(why) => reading.unreadable(n, why),
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
}

/// Fields of an entry that writing it again would not bring back.
fn unknown_fields(given: &Value, entry: &Entry) -> Vec<String> {
    let Ok(Value::Object(known)) = serde_json::to_value(wire::write(entry)) else {
        return Vec::new();
    };
    // Fields that may be given with the value they have when left out.
    let silent = |key: &str, v: &Value| {
        v.is_null()
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
