//! The coordinator's desk without a browser: what lies on it, in which order it is shown, what is left out, what is
//! chosen, what comes next, and what each key does.

mod filter;
mod intake;
mod keys;
mod order;
mod row;
mod selection;

pub use filter::{Filter, Show};
pub use intake::take_in;
pub use keys::Command;
pub use order::{Column, Order};
pub use row::{twice, Row, RowKind};
pub use selection::Selection;

use std::sync::Arc;

use reports::DateWords;
use rules::Team;

/// The rows that are shown, in their order; a day is searched for by the words of a language.
#[must_use]
pub fn shown(rows: &[Arc<Row>], filter: &Filter, order: Order, said: &DateWords) -> Vec<Arc<Row>> {
    let fits = |row: &&Arc<Row>| filter.fits(row, said);
    let mut shown: Vec<Arc<Row>> = rows.iter().filter(fits).cloned().collect();
    rules::sort_by(&mut shown, |one, other| order.compare(one, other));
    shown
}

/// The shown rows by their pools, a pool where its first row stands.
#[must_use]
pub fn in_groups(shown: &[Arc<Row>]) -> Vec<Vec<Arc<Row>>> {
    let mut groups: Vec<Vec<Arc<Row>>> = Vec::new();
    for row in shown {
        match groups.iter_mut().find(|g| g[0].group == row.group) {
            Some(group) => group.push(row.clone()),
            None => groups.push(vec![row.clone()]),
        }
    }
    groups
}

/// The matches of a report: those that are chosen, or all that are shown, by their pools and in the order of the day.
#[must_use]
pub fn reported(
    rows: &[Arc<Row>],
    chosen: &Selection,
    filter: &Filter,
    said: &DateWords,
) -> Vec<Vec<Arc<Row>>> {
    let mut matches = match chosen.rows(rows) {
        none if none.is_empty() => shown(rows, filter, Order::default(), said),
        chosen => chosen,
    };
    matches.retain(|row| row.line.is_some());
    rules::sort_by(&mut matches, |one, other| {
        // What has no day comes last.
        let by_time = |row: &Row| {
            let group = row.group.to_lowercase();
            (group, row.day.is_empty(), row.day.clone())
        };
        by_time(one)
            .cmp(&by_time(other))
            .then_with(|| Order::default().compare(one, other))
    });
    in_groups(&matches)
}

/// The latest match record in which a team of this name plays, from which its list can be taken.
#[must_use]
pub fn known_list(rows: &[Arc<Row>], name: &str) -> Option<(String, Team)> {
    let wanted = name.trim().to_lowercase();
    if wanted.is_empty() {
        return None;
    }
    let found = rows.iter().filter_map(|row| {
        let names = &row.line.as_ref()?.teams;
        let is_wanted = |team: &Team| names[*team].trim().to_lowercase() == wanted;
        let team = Team::BOTH.into_iter().find(is_wanted)?;
        (row.kind == RowKind::Record).then_some((row.played_at(), &row.id, team))
    });
    let latest = found.max_by_key(|(at, ..)| *at);
    latest.map(|(_, id, team)| (id.clone(), team))
}

/// What lies before and behind one of the shown rows. Of one that is not shown any more nothing lies before it, and
/// the first of them behind it.
#[must_use]
pub fn neighbours<'a>(shown: &'a [Arc<Row>], id: &str) -> (Option<&'a Row>, Option<&'a Row>) {
    let row = |place: usize| shown.get(place).map(|row| &**row);
    match shown.iter().position(|row| row.id == id) {
        Some(place) => (place.checked_sub(1).and_then(row), row(place + 1)),
        None => (None, row(0)),
    }
}
