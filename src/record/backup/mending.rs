//! A backup that is damaged or cut off: every match and every text of the desk that is still whole.
//!
//! A quote within a text is escaped, so the name of a field between quotes, and a quote, a comma and a quote, stand in no
//! text: they show where to go on behind damage.

use serde_json::{Map, Value};

use super::reading::{read_beside, read_desk, BackupReading, ReadMatch, FIELDS, MAX_MATCHES};
use super::VERSION;
use crate::file::{self, first_value};
use crate::{Extent, Problem, ProblemKind};

/// What can be read of a damaged backup: each match begins with a line of its own and ends with another, as
/// [`write_backup`](super::write_backup) makes them.
pub(super) fn mended(text: &str) -> BackupReading {
    let mut backup = BackupReading::default();
    let head = head_of(text.split("\"matches\":").next().unwrap_or(text));
    let version = head.get("version").and_then(Value::as_u64);
    if let Some(newer) = version.filter(|version| *version > VERSION) {
        backup.note(Extent::Whole, ProblemKind::NewerBackup(newer));
        return backup;
    }
    read_desk(&head, &mut backup);
    let begins = format!("\"match\":{{\"log\":\"{}\"", file::NAME);
    let places: Vec<usize> = text
        .match_indices(&begins)
        .map(|(place, _)| place)
        .collect();
    // A file without lines is looked through once, not once for each match.
    let mut before = 0;
    for (at, &place) in places.iter().take(MAX_MATCHES).enumerate() {
        let line = text[before..place]
            .rfind('\n')
            .map_or(before, |line| before + line + 1);
        before = place;
        let next = places.get(at + 1).copied().unwrap_or(text.len());
        let behind = &text[place + "\"match\":".len()..next];
        backup.take(match_of(&text[line..place], behind, at + 1));
    }
    if places.len() > MAX_MATCHES {
        backup.note(Extent::Part, ProblemKind::TooManyMatches(places.len()));
    }
    let problem = if backup.matches.is_empty() && backup.desk.is_empty() {
        Problem::of_file(Extent::Whole, ProblemKind::BackupEmpty)
    } else {
        Problem::of_file(Extent::Part, ProblemKind::BackupDamaged)
    };
    backup.problems.insert(0, problem);
    backup
}

/// One match: what stands beside it in its first line, and the text from its beginning to the next one's.
fn match_of(beside: &str, text: &str, place: usize) -> ReadMatch {
    let whole = first_value(text).map_or(text, |(whole, _)| whole);
    let mut read = ReadMatch::from(file::read(whole));
    if let Ok(beside) = serde_json::from_str(&format!("{beside}\"match\":null}}")) {
        read_beside(&beside, &mut read);
    }
    read.set_place(place);
    read
}

/// The fields of the first line, each with what can be read of it.
fn head_of(text: &str) -> Map<String, Value> {
    let mut head = Map::new();
    for field in FIELDS {
        let key = format!("\"{field}\":");
        let Some(place) = text.find(&key) else {
            continue;
        };
        let behind = &text[place + key.len()..];
        let value = match behind.strip_prefix('[') {
            Some(items) => Some(Value::Array(texts_of(items))),
            None => value_first_in(behind).map(|(value, _)| value),
        };
        if let Some(value) = value {
            head.insert(field.to_owned(), value);
        }
    }
    head
}

/// The texts of a list up to its end, or that of what is there. One that is damaged stands as null, so that it is
/// counted.
fn texts_of(mut rest: &str) -> Vec<Value> {
    let mut texts = Vec::new();
    while rest.starts_with('"') {
        let (value, behind) = match value_first_in(rest) {
            Some((value, behind)) if behind.starts_with([',', ']']) => (value, behind),
            // What is cut off ends here.
            _ => match rest.find("\",\"") {
                Some(end) => (Value::Null, &rest[end + 1..]),
                None => (Value::Null, ""),
            },
        };
        texts.push(value);
        rest = behind.strip_prefix(',').unwrap_or("");
    }
    texts
}

/// The value that a text begins with, and what stands behind it.
fn value_first_in(text: &str) -> Option<(Value, &str)> {
    let (value, behind) = first_value(text)?;
    Some((serde_json::from_str(value).ok()?, behind))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::backup::tests::{backup, kept};
    use crate::backup::{write_backup, OnDesk};
    use crate::Reading;

    #[test]
    fn a_backup_that_is_cut_off_gives_the_matches_before_the_cut() {
        let text = write_backup(&[kept(1), kept(2), kept(3)], &OnDesk::default(), None);
        let third = text.find("\"id\":\"m3\"").expect("the third match");
        let read = backup(&text[..third + 4_000]);
        assert_eq!(read.problems[0].kind, ProblemKind::BackupDamaged);
        let entries: Vec<usize> = read
            .matches
            .iter()
            .map(|m| m.reading.log.entries.len())
            .collect();
        let whole = |seed| kept(seed).log.entries.len();
        assert_eq!(entries[..2], [whole(1), whole(2)]);
        assert!(entries[2] > 5 && entries[2] < whole(3), "{entries:?}");
        assert!(read.matches[2].reading.cut_off);
        // Cut off before the first match there is nothing to read, and it is still said.
        let read = backup(&text[..40]);
        assert!(read.matches.is_empty() && read.problems[0].is_fatal());
    }

    /// Each match is read up to the next, whatever its own end looks like.
    #[test]
    fn no_match_takes_entries_of_the_next_one() {
        let whole = |seed| kept(seed).log.entries.len();
        assert!(whole(1) != whole(2));
        for to in ["\n],\"unread\":[\"a line\"]}", "\n"] {
            let text = write_backup(&[kept(1), kept(2)], &OnDesk::default(), None);
            let text = text.replacen("\n]}", to, 1);
            // The very last bracket is missing.
            let read = backup(text.trim_end().strip_suffix('}').expect("a bracket"));
            assert_eq!(read.problems[0].kind, ProblemKind::BackupDamaged, "{to:?}");
            for (read, seed) in read.matches.iter().zip([1, 2]) {
                let Reading { log, problems, .. } = &read.reading;
                assert!(*log == kept(seed).log, "{to:?}, {seed}: {problems:?}");
            }
            let first = &read.matches[0].reading;
            let is_whole = to.contains("unread");
            let unread = |p: &Problem| p.kind == ProblemKind::UnreadLines(1);
            assert_eq!(first.problems.iter().any(unread), is_whole, "{to:?}");
            assert_eq!(first.cut_off, !is_whole, "{to:?}");
        }
    }

    /// As in a backup that is whole.
    #[test]
    fn what_cannot_be_read_of_a_damaged_backup_is_said() {
        let text = write_backup(&[kept(1), kept(2)], &OnDesk::default(), None);
        let newer = "\"log\":\"volleyball-match\",\"version\":7";
        let text = text.replacen("\"log\":\"volleyball-match\",\"version\":2", newer, 1);
        let read = backup(text.trim_end().strip_suffix('}').expect("a bracket"));
        assert_eq!(read.matches.len(), 1);
        assert_eq!(read.problems[1].kind, ProblemKind::NewerVersion(7));
        assert_eq!(read.problems[1].of_match, Some(1));
    }

    /// Backups are as large as a phone has matches, and the last part of a file is what a full disk or a broken
    /// transfer takes: what stands before it is whole.
    #[test]
    fn a_cut_takes_nothing_that_stands_before_it() {
        let desk = OnDesk {
            papers: vec!["{}\n\"a\",\"b\" Otters".to_owned(), "second".to_owned()],
            pools: vec!["{\"pools\":[\"x\"]}".to_owned()],
            learner: Some("{\"learner\":1}".to_owned()),
            logbook: Some("{\"log\":\"volleyball-logbook\"}".to_owned()),
            observed: vec!["{\"log\":\"volleyball-observer\"}".to_owned()],
        };
        let text = write_backup(&[kept(2), kept(3), kept(4)], &desk, None);
        let last = text.find("\"id\":\"m4\"").expect("the third match");
        let read = backup(&text[..last + 4_000]);
        assert_eq!(read.desk, desk);
        let kinds: Vec<&ProblemKind> = read.problems.iter().map(|p| &p.kind).collect();
        assert_eq!(kinds, [&ProblemKind::BackupDamaged]);
        let beside = |m: &ReadMatch| (m.archived, m.drawn.len());
        let all: Vec<(bool, usize)> = read.matches.iter().map(beside).collect();
        assert_eq!(all, [(true, 0), (false, 1), (true, 0)]);
        assert!(read.matches[2].reading.cut_off);

        // Cut off within a pool, nothing behind it is there, and no match.
        let pool = text.find("{\\\"pools").expect("a pool");
        let read = backup(&text[..pool + 5]);
        assert_eq!(read.desk.papers, desk.papers);
        assert_eq!(read.desk.logbook, None);
        assert!(read.problems.iter().all(|p| !p.is_fatal()), "{read:?}");

        // A damaged paper sheet hides neither the other nor what lies behind it.
        let broken = text.replacen("\\n", "\\q", 1);
        assert_ne!(broken, text);
        let read = backup(&broken);
        assert_eq!(read.desk.papers, ["second"]);
        assert_eq!(read.desk.pools, desk.pools);
        assert_eq!(read.matches.len(), 3);
        let field = "papers";
        let left_out = ProblemKind::OnDesk { field, count: 1 };
        assert!(read.problems.iter().any(|p| p.kind == left_out));
    }
}
