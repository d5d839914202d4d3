//! The file of one match: reading gives every good entry and a list of problems, writing is the same
//! for the same log to the byte.

use std::sync::Arc;

use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use super::broken::{broken, Broken};
use super::chain::Link;
use super::entry_problem::EntryProblem;
use super::handed::Foreign;
use super::unread::UNREAD;
use super::wire;
use super::{Extent, Log, Problem, ProblemKind, Reading};
use game::{Entry, Kind};

/// What the file says of itself.
pub const NAME: &str = "volleyball-match";
/// The version this program writes; it reads this one and all before it. Version 2 writes every value of
/// the rules, where version 1 wrote what differed from a preset.
const VERSION: u64 = 2;
/// Larger files are not looked into. A five-set match is about 60 KB.
pub const MAX_BYTES: usize = 8 * 1024 * 1024;
/// Longer logs are not read further. A five-set match has about 400 entries.
pub const MAX_ENTRIES: usize = 20_000;
/// More problems are only counted: nobody reads them, and a hostile file has one an entry.
const MAX_PROBLEMS: usize = 200;

#[derive(Serialize)]
struct File<'a> {
    log: &'a str,
    version: u64,
    id: &'a str,
    /// The link of the id, which is in no entry.
    link: &'a str,
    entries: [(); 0],
}

/// The version that a log is written in: one whose rules were written as version 1 has them stays one, so
/// that its file, its links and its seals stay what they were.
fn version_of(log: &Log) -> u64 {
    let older = |entry: &Entry| {
        matches!(entry.kind, Kind::Match(_) | Kind::Heading(_))
            && entry
                .written
                .as_deref()
                .is_some_and(wire::rules_lack_values)
    };
    if log.entries.iter().any(older) {
        1
    } else {
        VERSION
    }
}

/// The log as a file, one entry a line, each with its link.
#[must_use]
pub fn write(log: &Log) -> String {
    let of_id = Link::of(log.id.as_bytes());
    let head = File {
        log: NAME,
        version: version_of(log),
        id: &log.id,
        link: of_id.digits(),
        entries: [],
    };
    let head = to_json(&head);
    let mut out = head.trim_end_matches("]}").to_owned();
    let mut link = Link::default();
    for (i, entry) in log.entries.iter().enumerate() {
        let json = write_entry(entry);
        let made = link.next(&json);
        let given = entry.given_link.as_deref();
        out.push_str(if i == 0 { "\n" } else { ",\n" });
        out.push_str(&with_link(json, given.unwrap_or(made.digits())));
        link = given.and_then(Link::read).unwrap_or(made);
    }
    out.push_str("\n]}\n");
    out
}

/// One entry as JSON without line breaks: as it was first written. Seals are made of this.
#[must_use]
pub fn write_entry(entry: &Entry) -> String {
    match &entry.written {
        Some(written) => written.to_string(),
        None => wire::write(entry),
    }
}

/// The same for keeping it by itself: with the link that it was given, where that does not follow from what
/// stands before it.
pub(super) fn write_kept(entry: &Entry) -> String {
    let json = write_entry(entry);
    match &entry.given_link {
        Some(given) => with_link(json, given),
        None => json,
    }
}

/// The text of an entry with a link, which stands last inside the braces.
fn with_link(mut json: String, link: &str) -> String {
    json.truncate(json.strip_suffix('}').map_or(json.len(), str::len));
    format!("{json},\"{LINK}\":{}}}", to_json(&link))
}

fn to_json(value: &impl Serialize) -> String {
    // Plain structs with string keys cannot fail to be written.
    serde_json::to_string(value).unwrap_or_default()
}

/// One entry from its JSON, as it is kept by itself.
///
/// # Errors
/// What cannot be read.
pub fn read_entry(json: &str) -> Result<Entry, EntryProblem> {
    let value: Value = serde_json::from_str(json).map_err(|_| EntryProblem::Damaged)?;
    let entry = wire::read(&value)?;
    Ok(match without_link(json) {
        Some((text, link)) => Entry {
            given_link: Some(link.into()),
            ..as_written(entry, &text)
        },
        None => as_written(entry, json),
    })
}

/// The entry, with the text that it was read from where that is not what this program writes.
fn as_written(mut entry: Entry, json: &str) -> Entry {
    entry.written = (wire::write(&entry) != json).then(|| json.into());
    entry
}

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
    match by_lines(text).or_else(|| up_to_damage(text)) {
        Some(mended) => {
            let kind = if mended.cut_off {
                ProblemKind::CutOff
            } else {
                ProblemKind::Damaged
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

/// A damaged file as it would be without the damage.
struct Mended {
    text: String,
    /// Whether its end is missing.
    cut_off: bool,
}

/// Takes a damaged file line by line: an entry a line, as [`write`] makes it. What is no entry any more is
/// left empty. None where there is no head, so that nobody knows what it is.
fn by_lines(text: &str) -> Option<Mended> {
    let whole = text.trim_end().strip_suffix("\n]}");
    let mut lines = whole.unwrap_or(text).lines();
    let head = lines.next()?;
    serde_json::from_str::<Map<String, Value>>(&format!("{head}]}}")).ok()?;
    let entries: Vec<&str> = lines
        .take(MAX_ENTRIES + 1)
        .map(|line| line.strip_suffix(',').unwrap_or(line))
        .map(|line| match serde_json::from_str::<&RawValue>(line) {
            Ok(_) => line,
            Err(_) => "null",
        })
        .collect();
    // The last line of a file that is cut off is most often a part of one.
    let entries = match (&entries[..], whole) {
        ([rest @ .., "null"], None) => rest,
        (all, _) => all,
    };
    Some(Mended {
        text: format!("{head}{}]}}", entries.join(",")),
        cut_off: whole.is_none(),
    })
}

/// Takes what stands before the damage in a file that is laid out in another way. None where there is no head.
fn up_to_damage(text: &str) -> Option<Mended> {
    // The first of them may belong to something else; a hostile file has any number.
    const MOST_KEYS: usize = 8;
    const KEY: &str = "\"entries\"";
    // Within a string the quotes of the key would be escaped.
    let keys = text.match_indices(KEY).take(MOST_KEYS);
    let (head, mut rest) = keys
        .filter_map(|(place, key)| {
            let behind = text[place + key.len()..].trim_start().strip_prefix(':')?;
            let rest = behind.trim_start().strip_prefix('[')?;
            Some((&text[..text.len() - rest.len()], rest))
        })
        .find(|(head, _)| {
            serde_json::from_str::<Map<String, Value>>(&format!("{head}]}}")).is_ok()
        })?;
    let mut entries = Vec::new();
    while entries.len() <= MAX_ENTRIES {
        rest = rest.trim_start_matches([' ', '\t', '\r', '\n', ',']);
        let mut values = serde_json::Deserializer::from_str(rest).into_iter::<&RawValue>();
        let Some(Ok(entry)) = values.next() else {
            break;
        };
        entries.push(entry.get());
        rest = &rest[values.byte_offset()..];
    }
    Some(Mended {
        text: format!("{head}{}]}}", entries.join(",")),
        cut_off: true,
    })
}

/// The entries of a file as they stand in it.
#[derive(Default, Deserialize)]
struct Texts<'a> {
    #[serde(borrow)]
    entries: Vec<&'a RawValue>,
}

/// One match that was read as JSON already, beside the text that it was read from.
pub(super) fn read_value(value: &Value, text: &str, reading: &mut Reading) {
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
        let Some(n) = n.filter(|&n| n > 0) else {
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
    /// Whether an entry is not what its link was made of. Nothing is said where the entry has no link.
    fn parts_at(&mut self, entry: &Entry, value: &Value) -> bool {
        let made = self.before.as_ref().map(|b| b.next(&write_entry(entry)));
        let Some(given) = value.get(LINK) else {
            self.before = made;
            return false;
        };
        let given = given.as_str().and_then(Link::read);
        let parts = given.is_none() || (made.is_some() && made != given);
        self.before = given;
        parts
    }

    /// An entry that an editor has laid out anew. Where an older program left values of the rules out, the link
    /// says whether it had written them as they stand here.
    fn in_its_layout(&self, entry: Entry, value: &Value) -> Entry {
        let as_given = || {
            let (before, rules) = (self.before.as_ref()?, value.get("rules")?);
            let given = Link::read(value.get(LINK)?.as_str()?)?;
            let text = wire::write_with_rules(&entry, rules);
            (before.next(&text) == given).then(|| as_written(entry.clone(), &text))
        };
        as_given().unwrap_or(entry)
    }

    /// The entry as it was before its number was changed, if the link says that this is what happened.
    fn under_another_number(&mut self, value: &Value, text: Option<&str>, n: u32) -> Option<Entry> {
        let given = Link::read(value.get(LINK)?.as_str()?)?;
        let read = wire::read(value).ok()?;
        let entry = Entry::new(n, read.kind.clone());
        let entry = Entry {
            at: read.at,
            insist: read.insist.clone(),
            ..entry
        };
        // As this program writes it, or as it was written but for the number.
        let number = |n: u32| format!("{{\"n\":{n},");
        let renumbered = text.and_then(|text| text.strip_prefix(&number(read.n)));
        let renumbered = renumbered.map(|rest| as_written(entry.clone(), &(number(n) + rest)));
        let before = self.before.as_ref()?;
        let fits = |entry: &Entry| before.next(&write_entry(entry)) == given;
        let entry = renumbered.into_iter().chain([entry]).find(fits)?;
        self.before = Some(given);
        Some(entry)
    }

    /// Goes past an entry that cannot be read.
    fn skip(&mut self, value: &Value) {
        self.before = value.get(LINK).and_then(Value::as_str).and_then(Link::read);
    }
}

/// The text of an entry before its link was put behind it, and the link; none where it was not put there by
/// [`with_link`].
fn without_link(text: &str) -> Option<(String, String)> {
    let (before, link) = text.strip_suffix('}')?.rsplit_once(",\"link\":")?;
    let link: String = serde_json::from_str(link).ok()?;
    Some((format!("{before}}}"), link))
}

/// The text of an entry that another program wrote, without a link.
fn linkless(value: &Value) -> String {
    let mut value = value.clone();
    if let Some(fields) = value.as_object_mut() {
        fields.remove(LINK);
    }
    to_json(&value)
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
    fn whole(&mut self, kind: ProblemKind) {
        self.problems.push(Problem::of_file(Extent::Whole, kind));
    }

    fn note(&mut self, entry: Option<u32>, kind: ProblemKind) {
        self.note_of(Extent::Part, entry, kind);
    }

    fn note_of(&mut self, extent: Extent, entry: Option<u32>, kind: ProblemKind) {
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
