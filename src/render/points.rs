//! The points of matches as one table for a spreadsheet, one line a point: for a club's own statistics.

use std::collections::BTreeMap;

use super::spreadsheet::{number, quoted, Table};
use game::entry::Detail;
use game::{SetPlay, Timeline};
use reports::WallClock;
use rules::{Shirt, Team};

/// The columns of the table.
const COLUMNS: [&str; 21] = [
    "match",
    "match_no",
    "team_A",
    "team_B",
    "entry",
    "at",
    "utc",
    "local",
    "set",
    "point",
    "served_by",
    "server",
    "won_by",
    "won_by_team",
    "A",
    "B",
    "given_for",
    "cause",
    "by_team",
    "by_number",
    "cancelled_by",
];

/// Every point of some records, each with the name that it is told apart by; cancelled points are among
/// them and have no number and no score. `at` is milliseconds since 1970 UTC; beside it stand the time of
/// the world and that of the hall.
#[must_use]
pub fn points_csv(records: &[(&str, &Timeline)], hall: WallClock) -> String {
    let mut table = Table::new(&COLUMNS);
    for (name, timeline) in records {
        of_match(&mut table, name, timeline, hall);
    }
    table.finish()
}

fn of_match(table: &mut Table, name: &str, timeline: &Timeline, hall: WallClock) {
    // Who was to serve when an entry was made.
    let mut servers: BTreeMap<u32, Option<Shirt>> = BTreeMap::new();
    timeline.walk(|before, entry, _, _| {
        if let Some((_, server)) = before.serving() {
            servers.insert(entry.n, server);
        }
    });
    let state = timeline.state();
    let number_of_match = state
        .heading()
        .and_then(|h| h.details[Detail::MatchNo].as_deref());
    let of_match = [
        quoted(name),
        quoted(number_of_match.unwrap_or_default()),
        quoted(state.name(Team::A)),
        quoted(state.name(Team::B)),
    ];
    let over = state.sets().filter_map(|s| s.play.as_ref());
    for play in over.chain(state.play()) {
        of_set(table, &of_match, timeline, play, &servers, hall);
    }
}

fn of_set(
    table: &mut Table,
    of_match: &[String],
    timeline: &Timeline,
    play: &SetPlay,
    servers: &BTreeMap<u32, Option<Shirt>>,
    hall: WallClock,
) {
    let state = timeline.state();
    let mut score = play.base;
    let mut nth = 0;
    for point in &play.points {
        let counts = point.cancelled_by.is_none();
        if counts {
            score = score.plus(point.to);
            nth += 1;
        }
        let at = timeline.entry(point.entry).and_then(|e| e.at);
        let said = state.said(point.entry);
        let by = said.and_then(|s| s.by);
        let server = point
            .served
            .and(servers.get(&point.entry).copied().flatten());
        let mut cells = of_match.to_vec();
        cells.extend([
            number(Some(point.entry)),
            number(at),
            number(at.map(|at| WallClock::default().moment(at))),
            number(at.map(|at| hall.moment(at))),
            number(Some(play.number)),
            number(counts.then_some(nth)),
            number(point.served.map(Team::letter)),
            number(server),
            number(Some(point.to)),
            quoted(state.name(point.to)),
            number(counts.then_some(score.a)),
            number(counts.then_some(score.b)),
            number(Some(point.why.code())),
            number(said.map(|s| s.cause.code())),
            number(by.map(|b| b.team)),
            number(by.and_then(|b| b.number)),
            number(point.cancelled_by),
        ]);
        table.line(&cells);
    }
}
