//! The file of one match: reading gives every good entry and a list of problems, writing is the same
//! for the same log to the byte.

mod links;
mod mending;
mod reading;

use serde::Serialize;
use serde_json::Value;

use super::chain::Link;
use super::entry_problem::EntryProblem;
use super::wire;
use super::Log;
use game::{Entry, Kind};

pub(crate) use mending::first_value;
pub use reading::read;
pub(super) use reading::read_value;

/// What the file says of itself.
pub const NAME: &str = "volleyball-match";
/// The version this program writes; it reads this one and all before it. Version 2 writes every value of
/// the rules, where version 1 wrote what differed from a preset.
const VERSION: u64 = 2;
/// Larger files are not looked into. A five-set match is about 60 KB.
pub const MAX_BYTES: usize = 8 * 1024 * 1024;
/// Longer logs are not read further. A five-set match has about 400 entries.
pub const MAX_ENTRIES: usize = 20_000;

/// The field of an entry's link.
const LINK: &str = "link";

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

/// The text of an entry before its link was put behind it, and the link; none where it was not put there by
/// [`with_link`].
fn without_link(text: &str) -> Option<(String, String)> {
    let (before, link) = text.strip_suffix('}')?.rsplit_once(",\"link\":")?;
    let link: String = serde_json::from_str(link).ok()?;
    Some((format!("{before}}}"), link))
}
