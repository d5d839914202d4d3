//! A damaged file as it would be without the damage.

use serde_json::value::RawValue;
use serde_json::{Map, Value};

use super::MAX_ENTRIES;

/// A damaged file as it would be without the damage.
pub(super) struct Mended {
    pub(super) text: String,
    /// Whether its end is missing.
    pub(super) cut_off: bool,
}

/// Takes a damaged file line by line: an entry a line, as [`write`](super::write) makes it. What is no entry
/// any more is left empty. None where there is no head, so that nobody knows what it is.
pub(super) fn by_lines(text: &str) -> Option<Mended> {
    let mut lines = text.lines();
    let head = lines.next()?;
    serde_json::from_str::<Map<String, Value>>(&format!("{head}]}}")).ok()?;
    let mut entries = Vec::new();
    let mut end = None;
    for line in lines.take(MAX_ENTRIES + 1) {
        end = end_of(line);
        if end.is_some() {
            break;
        }
        let line = line.strip_suffix(',').unwrap_or(line);
        let is_whole = serde_json::from_str::<&RawValue>(line).is_ok();
        entries.push(if is_whole { line } else { "null" });
    }
    // The last line of a file that is cut off is most often a part of one.
    if end.is_none() && entries.last() == Some(&"null") {
        entries.pop();
    }
    Some(Mended {
        text: format!("{head}{}{}", entries.join(","), end.unwrap_or("]}")),
        cut_off: end.is_none(),
    })
}

/// The end of a file, if a line begins with one: it closes the list, and may hold lines that could not be read.
fn end_of(line: &str) -> Option<&str> {
    const OPEN: &str = "{\"entries\":[";
    if !line.starts_with(']') {
        return None;
    }
    let closed = format!("{OPEN}{line}");
    let (value, _) = first_value(&closed)?;
    Some(&line[..value.len() - OPEN.len()])
}

/// Takes what stands before the damage in a file that is laid out in another way. None where there is no head.
pub(super) fn up_to_damage(text: &str) -> Option<Mended> {
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
        let Some((entry, behind)) = first_value(rest) else {
            break;
        };
        entries.push(entry);
        rest = behind;
    }
    Some(Mended {
        text: format!("{head}{}]}}", entries.join(",")),
        cut_off: true,
    })
}

/// The text of the value that a text begins with, and what stands behind it. None where it is no whole value.
pub(crate) fn first_value(text: &str) -> Option<(&str, &str)> {
    let mut values = serde_json::Deserializer::from_str(text).into_iter::<&RawValue>();
    let value = values.next()?.ok()?.get();
    Some((value, &text[values.byte_offset()..]))
}
