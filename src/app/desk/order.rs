//! In which order the desk shows what lies on it.

use std::cmp::Ordering;

use super::Row;
use reports::list::{Line, SealState};

/// A column of the table of matches.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// Both teams.
    Teams,
    /// Sets won.
    Result,
    /// When it was played.
    Day,
    /// Competition and division, and the number of the match.
    Pool,
    /// Who has signed under the result.
    Signed,
    /// The seal.
    Seal,
    /// What is to be looked at.
    Findings,
}

rules::codes!(Column {
    Teams = "teams",
    Result = "result",
    Day = "day",
    Pool = "pool",
    Signed = "signed",
    Seal = "seal",
    Findings = "findings",
});

/// By which column, and whether from its end.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Order {
    /// The column.
    pub by: Column,
    /// Whether from its end.
    pub backwards: bool,
}

impl Default for Order {
    fn default() -> Order {
        Order::by(Column::Pool)
    }
}

impl Order {
    /// By a column, from where most people begin: the latest day, the heaviest findings, else the beginning.
    #[must_use]
    pub const fn by(column: Column) -> Order {
        Order {
            by: column,
            backwards: matches!(column, Column::Day | Column::Findings),
        }
    }

    /// The order after a column was pressed: by it, or the other way round where it was by it already.
    #[must_use]
    pub fn pressed(self, column: Column) -> Order {
        if self.by == column {
            Order {
                backwards: !self.backwards,
                ..self
            }
        } else {
            Order::by(column)
        }
    }

    /// As a setting holds it.
    #[must_use]
    pub fn written(self) -> String {
        let sign = if self.backwards { "-" } else { "" };
        format!("{sign}{}", self.by.code())
    }

    /// From such a setting; the usual order where it is none.
    #[must_use]
    pub fn of_written(written: &str) -> Order {
        let (backwards, code) = match written.strip_prefix('-') {
            Some(code) => (true, code),
            None => (false, written),
        };
        let order = |by| Order { by, backwards };
        Column::from_code(code).map_or_else(Order::default, order)
    }

    /// Which of two rows comes first. What is not known comes last either way; what is equal, by pool, day and
    /// teams.
    #[must_use]
    pub fn compare(self, one: &Row, other: &Row) -> Ordering {
        let found = by_column(self.by, one, other, self.backwards);
        found
            .then_with(|| by_column(Column::Pool, one, other, false))
            .then_with(|| by_column(Column::Day, one, other, true))
            .then_with(|| by_column(Column::Teams, one, other, false))
            .then_with(|| one.id.cmp(&other.id))
    }
}

fn by_column(column: Column, one: &Row, other: &Row, backwards: bool) -> Ordering {
    fn of<K: Ord>(key: impl Fn(&Row) -> Option<K>, rows: [&Row; 2], backwards: bool) -> Ordering {
        match rows.map(key) {
            [Some(one), Some(other)] if backwards => other.cmp(&one),
            [Some(one), Some(other)] => one.cmp(&other),
            [one, other] => other.is_some().cmp(&one.is_some()),
        }
    }
    let rows = [one, other];
    match column {
        Column::Teams => of(teams, rows, backwards),
        Column::Result => of(|row| result(row.line.as_ref()?), rows, backwards),
        Column::Day => of(day, rows, backwards),
        Column::Pool => of(pool, rows, backwards)
            .then_with(|| of(|row| number(row.line.as_ref()?), rows, backwards)),
        Column::Signed => of(signed, rows, backwards),
        Column::Seal => of(|row| Some(seal(row.line.as_ref()?.seal)), rows, backwards),
        Column::Findings => of(
            |row| Some(row.line.as_ref()?.findings.heaviness()),
            rows,
            backwards,
        ),
    }
}

fn teams(row: &Row) -> Option<[String; 2]> {
    let line = row.line.as_ref()?;
    let names = [&line.teams.a, &line.teams.b].map(|name| name.trim().to_lowercase());
    names.iter().any(|name| !name.is_empty()).then_some(names)
}

/// Days and times as they are written sort as text; a paper sheet has a day alone.
fn day(row: &Row) -> Option<String> {
    (!row.day.is_empty()).then(|| row.day.clone())
}

/// Matches that are not over come first, then those that were clearest.
fn result(line: &Line) -> Option<(bool, u8, u8)> {
    let sets = line.sets?;
    let (most, least) = (sets.a.max(sets.b), sets.a.min(sets.b));
    Some((line.is_over, least, most))
}

/// What belongs to no pool comes first, where somebody looks who has only a few matches.
fn pool(row: &Row) -> Option<String> {
    Some(row.group.to_lowercase())
}

/// A number as people count, so that 9 comes before 10.
fn number(line: &Line) -> Option<(u64, String)> {
    let written = line.number.as_str();
    let digits: String = written.chars().filter(char::is_ascii_digit).collect();
    (!written.is_empty()).then(|| (digits.parse().unwrap_or(u64::MAX), written.to_owned()))
}

/// Of a paper sheet nobody may have keyed in who has signed it.
fn signed(row: &Row) -> Option<usize> {
    let line = row.line.as_ref()?;
    (!line.on_paper || !line.signed.is_empty()).then_some(line.signed.len())
}

/// What wants somebody's attention first.
const fn seal(seal: SealState) -> u8 {
    match seal {
        SealState::Broken => 0,
        SealState::None => 1,
        SealState::GoneOn => 2,
        SealState::Holds => 3,
        SealState::OnPaper => 4,
    }
}
