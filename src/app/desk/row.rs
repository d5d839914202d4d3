//! What lies on the desk: match records of this phone, paper sheets, and the results of pools.

use std::collections::BTreeSet;
use std::sync::Arc;

use reports::list::Line;
use reports::one_match::instead;

/// What a row is made from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RowKind {
    /// A match record.
    Record,
    /// A paper sheet.
    Paper,
    /// The results of a pool, so many of them.
    Pool(usize),
}

/// One record, paper sheet or pool.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Row {
    /// Its id.
    pub id: String,
    /// What it is made from.
    pub kind: RowKind,
    /// What is said of a match; none of a pool.
    pub line: Option<Line>,
    /// Competition and division.
    pub group: String,
    /// What it is found by beside names and pool.
    pub words: Vec<String>,
    /// The day it was to be played, as given.
    pub scheduled: Option<String>,
    /// The day it was played, as a calendar on the wall shows it: `2026-05-09`, and the time behind it.
    pub day: String,
    /// Whether it was archived.
    pub archived: bool,
    /// Whether another record of the same match counts in its place.
    pub again: bool,
}

impl Row {
    /// When it was played: its first moment, or its last entry.
    #[must_use]
    pub fn played_at(&self) -> Option<i64> {
        let line = self.line.as_ref()?;
        line.time.map(|(first, _)| first).or(line.last_at)
    }

    /// Whether it counts in the table of its pool.
    #[must_use]
    pub fn counts(&self) -> bool {
        !self.again && self.line.as_ref().is_some_and(|line| line.played.is_some())
    }

    /// How many things are to be looked at.
    #[must_use]
    pub fn findings(&self) -> usize {
        self.line.as_ref().map_or(0, |line| line.findings.all())
    }
}

/// The ids of rows in whose place another record of the same match counts; `meetings` says how often two teams
/// meet in a pool.
#[must_use]
pub fn twice(rows: &[Arc<Row>], meetings: u8) -> BTreeSet<String> {
    let mut groups: Vec<&str> = rows.iter().map(|row| row.group.as_str()).collect();
    groups.sort_unstable();
    groups.dedup();
    let mut twice = BTreeSet::new();
    for group in groups {
        let matches = rows.iter().filter(|row| row.group == group);
        let matches = matches.filter_map(|row| {
            let played = row.line.as_ref()?.result(String::new())?;
            Some((&row.id, (played.known(), played.source.evidence)))
        });
        let (ids, known): (Vec<&String>, Vec<_>) = matches.unzip();
        let of = ids.into_iter().zip(instead(&known, Some(meetings)));
        twice.extend(
            of.filter(|(_, instead)| instead.is_some())
                .map(|(id, _)| id.clone()),
        );
    }
    twice
}
