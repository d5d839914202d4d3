//! Reading a file: every good entry, and a list of what was wrong.

use std::sync::Arc;

use serde::Deserialize;
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use super::links::Chain;
use super::mending::{by_lines, first_value, up_to_damage};
use super::{as_written, to_json, without_link, LINK, MAX_BYTES, MAX_ENTRIES, NAME, VERSION};
use crate::broken::{broken, Broken};
use crate::chain::Link;
use crate::handed::Foreign;
use crate::unread::UNREAD;
use crate::wire;
use crate::{Extent, Problem, ProblemKind, Reading};
use game::Entry;

/// More problems are only counted: nobody reads them, and a hostile file has one an entry.
const MAX_PROBLEMS: usize = 200;

/// Reads a file. What can be read is there, what cannot is in the problems.
#[must_use]
pub fn read(text: &str) -> Reading {
    let mut reading = Reading::default();
    if text.len() > MAX_BYTES {
        reading.whole(ProblemKind::TooLong { bytes: text.len() });
        return reading;
    }
    let text = text.trim_start_matches('\u{feff}');
    if text.trim().is_empty() {
        reading.whole(ProblemKind::Foreign(Foreign::Empty));
        return reading;
    }
    let damage = match serde_json::from_str(text) {
        Ok(value) => {
            read_value(&value, text, &mut reading);
            return reading;
        }
        Err(damage) => damage,
    };
    if let Some((first, value)) = first_of_several(text) {
        read_value(&value, first, &mut reading);
        if !reading.is_nothing() {
            reading.note(None, ProblemKind::MoreBehind);
        }
        return reading;
    }
    match by_lines(text).or_else(|| up_to_damage(text)) {
        Some(mended) => {
            let kind = match mended.cut_off {
                true if damage.is_eof() => ProblemKind::CutOff,
                true => ProblemKind::EndUnreadable,
                false => ProblemKind::Damaged,
            };
            reading.note(None, kind);
            reading.cut_off = mended.cut_off;
            if let Ok(value) = serde_json::from_str(&mended.text) {
                read_value(&value, &mended.text, &mut reading);
            }
        }
        None => reading.whole(ProblemKind::NoRecord {
            line: damage.line(),
        }),
    }
    reading
}

/// The first object of a text that goes on behind it: two files in one, or something that was added.
fn first_of_several(text: &str) -> Option<(&str, Value)> {
    let (first, _) = first_value(text)?;
    let value: Value = serde_json::from_str(first).ok()?;
    value.is_object().then_some((first, value))
}

/// The entries of a file as they stand in it.
#[derive(Default, Deserialize)]
struct Texts<'a> {
    #[serde(borrow)]
    entries: Vec<&'a RawValue>,
}

/// One match that was read as JSON already, beside the text that it was read from.
pub(crate) fn read_value(value: &Value, text: &str, reading: &mut Reading) {
    let Some(file) = value.as_object() else {
        reading.whole(ProblemKind::NoMatch);
        return;
    };
    if file.get("log").and_then(Value::as_str) != Some(NAME) {
        reading.whole(ProblemKind::OtherLog);
        return;
    }
    match file.get("version").and_then(Value::as_u64) {
        Some(1..=VERSION) => {}
        Some(newer) if newer > VERSION => {
            reading.whole(ProblemKind::NewerVersion(newer));
            return;
        }
        _ => {
            reading.whole(ProblemKind::NoVersion);
            return;
        }
    }
    for key in file.keys() {
        if !["log", "version", "id", "link", "entries", UNREAD].contains(&key.as_str()) {
            reading.note(None, ProblemKind::UnknownField(key.clone()));
        }
    }
    if let Some(lines) = file.get(UNREAD).and_then(Value::as_array) {
        reading.note(None, ProblemKind::UnreadLines(lines.len()));
    }
    match file.get("id").and_then(Value::as_str) {
        Some(id) => id.clone_into(&mut reading.log.id),
        None => reading.note(None, ProblemKind::NoId),
    }
    if let Some(given) = file.get("link") {
        if given.as_str() != Some(Link::of(reading.log.id.as_bytes()).digits()) {
            reading.note(None, ProblemKind::IdChanged);
        }
    }
    match file.get("entries").and_then(Value::as_array) {
        Some(entries) => {
            let texts: Texts = serde_json::from_str(text).unwrap_or_default();
            let texts: Vec<&str> = texts.entries.iter().map(|raw| raw.get()).collect();
            read_entries(entries, &texts, reading);
        }
        None => reading.whole(ProblemKind::NoEntries),
    }
}

fn read_entries(entries: &[Value], texts: &[&str], reading: &mut Reading) {
    reading.entries = entries.len();
    let mut expected = 1;
    let mut chain = Chain::default();
    for (place, value) in entries.iter().take(MAX_ENTRIES).enumerate() {
        let n = value
            .get("n")
            .and_then(Value::as_u64)
            .and_then(|n| u32::try_from(n).ok());
        let text = texts.get(place).copied().and_then(without_link);
        let text = text.map(|(text, _link)| text);
        let place = u32::try_from(place).unwrap_or(u32::MAX).saturating_add(1);
        // A number from nowhere must not be reached by counting.
        let Some(n) = n.filter(|&n| (1..=MAX_ENTRIES).contains(&(n as usize))) else {
            let why = match value {
                Value::Object(_) => ProblemKind::NoNumber,
                _ => ProblemKind::EntryDamaged,
            };
            reading.unreadable(place, why);
            expected = expected.max(place + 1);
            chain.skip(value);
            continue;
        };
        if n != expected {
            if let Some(entry) = chain.under_another_number(value, text.as_deref(), expected) {
                reading.changed.push(expected);
                reading.note(Some(expected), ProblemKind::Renumbered(n));
                reading.log.entries.push(entry);
                expected += 1;
                continue;
            }
        }
        if n < expected {
            reading.note(Some(n), ProblemKind::NumberTwice(n));
            chain.skip(value);
            continue;
        }
        if n > expected {
            let (first, last) = (expected, n - 1);
            reading.note(Some(n), ProblemKind::Gap { first, last });
            chain.before = None;
        }
        expected = n.saturating_add(1);
        match wire::read(value) {
            Ok(entry) => {
                let unknown = unknown_fields(value, &entry);
                let mut entry = match text {
                    Some(text) => as_written(entry, &text),
                    // Somebody else's file: only what would be lost is kept as it was.
                    None if unknown.is_empty() => chain.in_its_layout(entry, value),
                    None => as_written(entry, &linkless(value)),
                };
                if chain.parts_at(&entry, value) {
                    entry.given_link = value.get(LINK).map(given_link);
                }
                for field in unknown {
                    reading.note(Some(n), ProblemKind::UnknownEntryField(field));
                }
                reading.log.entries.push(entry);
            }
            Err(why) => {
                reading.unreadable(n, ProblemKind::Entry(why));
                chain.skip(value);
            }
        }
    }
    if entries.len() > MAX_ENTRIES {
        reading.note(None, ProblemKind::TooManyEntries(entries.len()));
    }
    for broken in broken(&reading.log.entries) {
        if let Broken::Link { entry } = broken {
            reading.changed.push(entry);
        }
        let entry = Some(broken.entry());
        reading.note_of(Extent::Traced, entry, ProblemKind::Broken(broken));
    }
}

/// A link as it stands in a file, whatever it is.
fn given_link(value: &Value) -> Arc<str> {
    match value.as_str() {
        Some(text) => text.into(),
        None => value.to_string().into(),
    }
}

/// The text of an entry that another program wrote, without a link.
fn linkless(value: &Value) -> String {
    let mut value = value.clone();
    if let Some(fields) = value.as_object_mut() {
        fields.remove(LINK);
    }
    to_json(&value)
}

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
    fn whole(&mut self, kind: ProblemKind) {
        self.problems.push(Problem::of_file(Extent::Whole, kind));
    }

    pub(crate) fn note(&mut self, entry: Option<u32>, kind: ProblemKind) {
        self.note_of(Extent::Part, entry, kind);
    }

    fn note_of(&mut self, extent: Extent, entry: Option<u32>, kind: ProblemKind) {
        self.lacks_a_part |= kind.lacks_a_part();
        let problem = match self.problems.len() {
            0..MAX_PROBLEMS => Problem {
                of_match: None,
                entry,
                extent,
                kind,
            },
            MAX_PROBLEMS => Problem::of_file(Extent::Part, ProblemKind::More),
            _ => return,
        };
        self.problems.push(problem);
    }

    fn unreadable(&mut self, entry: u32, why: ProblemKind) {
        self.unreadable.push(entry);
        self.note(Some(entry), why);
    }
}
