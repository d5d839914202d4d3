//! Reading a backup: every match of which something can be read, and what was wrong around them.

use std::collections::BTreeMap;

use serde::Deserialize;
use serde_json::value::RawValue;
use serde_json::{Map, Value};

use super::mending::mended;
use super::{OnDesk, NAME, VERSION};
use crate::file;
use crate::logbook::MAX_LOGBOOK_BYTES;
use crate::{Extent, Problem, ProblemKind, Reading, Strokes};

/// Larger files are not looked into: five hundred long matches. Browsers give a page more room.
pub const MAX_BACKUP_BYTES: usize = 64 * 1024 * 1024;
/// More matches are not read.
pub const MAX_MATCHES: usize = 1_000;
/// More texts of one kind from the desk are not read.
const MAX_ON_DESK: usize = 1_000;
/// A longer text from the desk is not read: a paper sheet of five sets takes some 3 KB.
pub(super) const MAX_DESK_BYTES: usize = 256 * 1024;
/// The fields of a backup.
pub(super) const FIELDS: [&str; 9] = [
    "log", "version", "made", "papers", "pools", "learner", "logbook", "observed", "matches",
];

/// What reading a backup gave.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct BackupReading {
    /// Every match of which something could be read.
    pub matches: Vec<ReadMatch>,
    /// What lay on the desk.
    pub desk: OnDesk,
    /// What was wrong with the file around them.
    pub problems: Vec<Problem>,
}

impl BackupReading {
    /// Notes what was wrong with the file around the matches.
    pub(super) fn note(&mut self, extent: Extent, kind: ProblemKind) {
        self.problems.push(Problem::of_file(extent, kind));
    }

    /// Takes a match, or what was wrong with it where nothing of it could be read.
    pub(super) fn take(&mut self, read: ReadMatch) {
        if read.reading.is_nothing() {
            self.problems.extend(read.reading.problems);
        } else {
            self.matches.push(read);
        }
    }
}

/// One match of a backup.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ReadMatch {
    /// Its log, with what was wrong in it.
    pub reading: Reading,
    /// Whether it was put away.
    pub archived: bool,
    /// Signatures drawn with a finger.
    pub drawn: BTreeMap<u32, Strokes>,
    /// Whether the file that it came from at first lacked a part.
    pub lacks_a_part: bool,
}

impl ReadMatch {
    /// Says of all its problems which match of the file is meant; `place` counts from 1.
    pub(super) fn set_place(&mut self, place: usize) {
        for problem in &mut self.reading.problems {
            problem.of_match = Some(place);
        }
    }
}

impl From<Reading> for ReadMatch {
    fn from(reading: Reading) -> ReadMatch {
        ReadMatch {
            reading,
            ..ReadMatch::default()
        }
    }
}

/// A file that somebody chose.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Opened {
    /// One match.
    Match(Reading),
    /// Everything of a phone.
    Backup(BackupReading),
}

/// Reads a file that may be either.
#[must_use]
pub fn open(text: &str) -> Opened {
    let trimmed = text.trim_start_matches('\u{feff}');
    if text.len() > MAX_BACKUP_BYTES {
        return Opened::Match(file::read(text));
    }
    let Ok(value) = serde_json::from_str::<Value>(trimmed) else {
        return if trimmed.starts_with(&format!("{{\"log\":\"{NAME}\"")) {
            Opened::Backup(mended(trimmed))
        } else {
            Opened::Match(file::read(text))
        };
    };
    match value.as_object() {
        Some(object) if object.get("log").and_then(Value::as_str) == Some(NAME) => {
            Opened::Backup(read_object(object, trimmed))
        }
        // Its own limit on size holds there.
        _ => Opened::Match(file::read(text)),
    }
}

/// Reads one match of a backup that was taken apart; `place` counts from 1.
#[must_use]
pub fn open_part(text: &str, place: usize) -> ReadMatch {
    match serde_json::from_str::<Value>(text) {
        Ok(value) => read_match(&value, text, place),
        Err(_) => read_match(&Value::Null, text, place),
    }
}

/// The matches of a backup as they stand in it.
#[derive(Default, Deserialize)]
struct Texts<'a> {
    #[serde(borrow)]
    matches: Vec<&'a RawValue>,
}

/// A match of a backup as it stands in it.
#[derive(Deserialize)]
struct Text<'a> {
    #[serde(borrow)]
    r#match: &'a RawValue,
}

fn read_object(object: &Map<String, Value>, text: &str) -> BackupReading {
    let mut backup = BackupReading::default();
    match object.get("version").and_then(Value::as_u64) {
        Some(VERSION) => {}
        Some(newer) if newer > VERSION => {
            backup.note(Extent::Whole, ProblemKind::NewerBackup(newer));
            return backup;
        }
        _ => {
            backup.note(Extent::Whole, ProblemKind::BackupNoVersion);
            return backup;
        }
    }
    read_desk(object, &mut backup);
    let Some(matches) = object.get("matches").and_then(Value::as_array) else {
        backup.note(Extent::Whole, ProblemKind::NoMatches);
        return backup;
    };
    if matches.len() > MAX_MATCHES {
        backup.note(Extent::Part, ProblemKind::TooManyMatches(matches.len()));
    }
    let texts: Texts = serde_json::from_str(text).unwrap_or_default();
    for (place, value) in matches.iter().take(MAX_MATCHES).enumerate() {
        let text = texts.matches.get(place).map_or("", |raw| raw.get());
        backup.take(read_match(value, text, place + 1));
    }
    backup
}

/// What lies on the desk and belongs to a learner, and the fields of the file that are none.
pub(super) fn read_desk(object: &Map<String, Value>, backup: &mut BackupReading) {
    let BackupReading { desk, problems, .. } = backup;
    let mut note = |kind: ProblemKind| problems.push(Problem::of_file(Extent::Part, kind));
    for key in object.keys() {
        if !FIELDS.contains(&key.as_str()) {
            note(ProblemKind::UnknownField(key.clone()));
        }
    }
    for (field, kept) in [
        ("papers", &mut desk.papers),
        ("pools", &mut desk.pools),
        ("observed", &mut desk.observed),
    ] {
        let (texts, left_out) = read_texts(object.get(field), MAX_DESK_BYTES);
        *kept = texts;
        if left_out > 0 {
            note(ProblemKind::OnDesk {
                field,
                count: left_out,
            });
        }
    }
    let (mut learner, left_out) = read_texts(object.get("learner"), MAX_DESK_BYTES);
    desk.learner = learner.pop();
    if left_out > 0 {
        note(ProblemKind::Learner);
    }
    let (mut logbook, left_out) = read_texts(object.get("logbook"), MAX_LOGBOOK_BYTES);
    desk.logbook = logbook.pop();
    if left_out > 0 {
        note(ProblemKind::Logbook);
    }
}

/// Texts of the desk, and how many there were beside them that are none or too long.
fn read_texts(value: Option<&Value>, longest: usize) -> (Vec<String>, usize) {
    let given = match value {
        None => return (Vec::new(), 0),
        Some(Value::Array(given)) => given.as_slice(),
        Some(other) => std::slice::from_ref(other),
    };
    let fits = |text: &&str| text.len() <= longest;
    let texts: Vec<String> = given
        .iter()
        .filter_map(Value::as_str)
        .filter(fits)
        .take(MAX_ON_DESK)
        .map(str::to_owned)
        .collect();
    let left_out = given.len() - texts.len();
    (texts, left_out)
}

fn read_match(value: &Value, text: &str, place: usize) -> ReadMatch {
    let mut read = ReadMatch::default();
    let reading = &mut read.reading;
    match value.get("match") {
        Some(log) => {
            let text = serde_json::from_str::<Text>(text).map_or("", |text| text.r#match.get());
            file::read_value(log, text, reading);
        }
        None => reading
            .problems
            .push(Problem::of_file(Extent::Whole, ProblemKind::MatchMissing)),
    }
    read_beside(value, &mut read);
    read.set_place(place);
    read
}

/// What stands beside a match: whether it was put away, and the signatures drawn for it.
pub(super) fn read_beside(value: &Value, read: &mut ReadMatch) {
    let flag = |field: &str| value.get(field).and_then(Value::as_bool) == Some(true);
    read.archived = flag("archived");
    read.lacks_a_part = flag("lacks_a_part");
    let mut note = |kind: ProblemKind| read.reading.note(None, kind);
    for key in value.as_object().into_iter().flat_map(Map::keys) {
        if !["match", "archived", "drawn", "lacks_a_part"].contains(&key.as_str()) {
            note(ProblemKind::UnknownField(key.clone()));
        }
    }
    let drawn = value.get("drawn").and_then(Value::as_object);
    for (entry, drawn) in drawn.into_iter().flatten() {
        let strokes = drawn.as_str().and_then(Strokes::read);
        match (entry.parse::<u32>(), strokes) {
            (Ok(n), Some(strokes)) if (1..=file::MAX_ENTRIES).contains(&(n as usize)) => {
                read.drawn.insert(n, strokes);
            }
            _ => note(ProblemKind::Drawn),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::backup::tests::{backup, kept};
    use crate::backup::write_backup;
    use proptest::prelude::*;

    #[test]
    fn one_bad_match_does_not_hide_the_others() {
        let text = write_backup(&[kept(1), kept(2), kept(3)], &OnDesk::default(), None);
        let bad = text
            .replacen("\"id\":\"m2\"", "\"id\":\"m2\",\"odd\":1", 1)
            .replacen(
                "\"log\":\"volleyball-match\",\"version\":2,\"id\":\"m1\"",
                "\"log\":\"volleyball-match\",\"version\":7,\"id\":\"m1\"",
                1,
            );
        let bad = bad.replacen("1,2 30,40;5,6", "1,2 30,40;5", 1);
        assert_ne!(bad, text);
        let read = backup(&bad);
        let ids: Vec<&str> = read
            .matches
            .iter()
            .map(|m| m.reading.log.id.as_str())
            .collect();
        assert_eq!(ids, ["m2", "m3"]);
        assert_eq!(read.problems[0].of_match, Some(1));
        let first = |m: usize| {
            let problem = &read.matches[m].reading.problems[0];
            (problem.of_match, problem.kind.clone())
        };
        let odd = ProblemKind::UnknownField("odd".to_owned());
        assert_eq!(first(0), (Some(2), odd));
        assert_eq!(first(1), (Some(3), ProblemKind::Drawn));
        assert!(read.matches[1].drawn.is_empty());
    }

    #[test]
    fn versions_and_odd_shapes_are_told() {
        let kinds = |text: &str| {
            let read = backup(text);
            assert!(read.matches.is_empty());
            let problems = read.problems.into_iter();
            problems.map(|p| (p.of_match, p.kind)).collect::<Vec<_>>()
        };
        let head = "{\"log\":\"volleyball-backup\"";
        assert_eq!(
            kinds(&format!("{head},\"version\":2,\"matches\":[]}}")),
            [(None, ProblemKind::NewerBackup(2))]
        );
        assert_eq!(
            kinds(&format!("{head},\"matches\":[]}}")),
            [(None, ProblemKind::BackupNoVersion)]
        );
        assert_eq!(
            kinds(&format!("{head},\"version\":1}}")),
            [(None, ProblemKind::NoMatches)]
        );
        let odd = kinds(&format!(
            "{head},\"version\":1,\"x\":0,\"matches\":[1,null,{{}}]}}"
        ));
        assert!(odd.contains(&(None, ProblemKind::UnknownField("x".to_owned()))));
        assert!(odd.contains(&(Some(3), ProblemKind::MatchMissing)));
    }

    #[test]
    fn deep_nesting_is_no_backup() {
        let deep = "[".repeat(100_000);
        let text = format!("{{\"log\":\"volleyball-backup\",\"version\":1,\"matches\":{deep}");
        assert!(
            matches!(open(&text), Opened::Backup(b) if b.matches.is_empty() && b.problems[0].is_fatal())
        );
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn a_torn_or_changed_backup_breaks_nothing(seed in 1u64..6, at in 0.0f64..1.0, byte in any::<u8>(), cut in any::<bool>()) {
            let mut bytes = write_backup(&[kept(seed), kept(seed + 1)], &OnDesk::default(), Some(1)).into_bytes();
            let place = ((bytes.len() - 1) as f64 * at) as usize;
            if cut { bytes.truncate(place) } else { bytes[place] = byte }
            let text = String::from_utf8_lossy(&bytes);
            if let Opened::Backup(read) = open(&text) {
                for m in read.matches {
                    prop_assert!(m.reading.log.entries.len() <= file::MAX_ENTRIES);
                }
            }
        }
    }
}
