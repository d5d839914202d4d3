//! The points of a match as CSV (RFC 4180), one line a point: for a table calculation, or a club's own
//! statistics. Numbers and codes only, no word that somebody typed.

use std::collections::BTreeMap;
use std::fmt::Write;

use crate::game::{PointFor, Replay, SetPlay};
use crate::rules::{Score, Shirt, Team};

/// The head of the table.
const HEAD: &str =
    "entry,at,set,point,served_by,server,won_by,A,B,given_for,cause,by_team,by_number,\
                    cancelled_by\r\n";

/// Every point of a log, cancelled ones among them; those have no number and no score. `at` is
/// milliseconds since 1970 UTC.
#[must_use]
pub fn csv(replay: &Replay) -> String {
    // Who was to serve when an entry was made.
    let mut servers: BTreeMap<u32, Option<Shirt>> = BTreeMap::new();
    replay.walk(|before, entry, _, _| {
        if let Some((_, server)) = before.serving() {
            servers.insert(entry.n, server);
        }
    });
    let state = replay.state();
    let over = state.sets().filter_map(|s| s.play.as_ref());
    let mut out = HEAD.to_owned();
    for play in over.chain(state.play()) {
        of_set(&mut out, replay, play, &servers);
    }
    out
}

fn of_set(
    out: &mut String,
    replay: &Replay,
    play: &SetPlay,
    servers: &BTreeMap<u32, Option<Shirt>>,
) {
    let mut score = Score::default();
    let mut number = 0;
    for point in &play.points {
        let counts = point.cancelled_by.is_none();
        if counts {
            score = score.plus(point.to);
            number += 1;
        }
        let at = replay.entry(point.entry).and_then(|e| e.at);
        let said = replay.state().said(point.entry);
        let by = said.and_then(|s| s.by);
        let server = point
            .served
            .and(servers.get(&point.entry).copied().flatten());
        let given_for = match point.why {
            PointFor::Rally => "rally",
            PointFor::Penalty => "penalty",
            PointFor::LateFault => "late_fault",
        };
        // Writing into a string cannot fail.
        let _ = write!(
            out,
            "{},{},{},{},{},{},{},{},{},{given_for},{},{},{},{}\r\n",
            point.entry,
            text(at),
            play.number,
            text(counts.then_some(number)),
            text(point.served.map(Team::letter)),
            text(server),
            point.to,
            text(counts.then_some(score.a)),
            text(counts.then_some(score.b)),
            said.map(|s| s.cause.code()).unwrap_or_default(),
            text(by.map(|b| b.team)),
            text(by.and_then(|b| b.number)),
            text(point.cancelled_by),
        );
    }
}

fn text(value: Option<impl ToString>) -> String {
    value.map(|v| v.to_string()).unwrap_or_default()
}
