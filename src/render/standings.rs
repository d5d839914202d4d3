//! The table as JSON, as CSV and as text.

use std::fmt::Write;

use serde_json::{json, Value};

use crate::spreadsheet::{number, quoted, Table};
use reports::standings::{Finding, Pool, Standings};
use text::standings as words;

/// The table and the findings as one JSON object.
#[must_use]
pub fn json(pool: &Pool, standings: &Standings) -> Value {
    let rows = standings.rows.iter().map(|row| {
        let t = &row.tally;
        json!({
            "place": row.place, "team": row.team, "played": t.played, "wins": t.wins,
            "losses": t.losses, "draws": t.draws, "match_points": t.match_points,
            "sets": [t.sets.0, t.sets.1], "set_ratio": t.set_ratio().to_string(),
            "points": [t.points.0, t.points.1], "point_ratio": t.point_ratio().to_string(),
            "decided_by": row.decided_by(), "say": words::reason(row),
        })
    });
    let findings = standings.findings.iter().map(
        |f| json!({ "where": f.place(pool), "code": f.code(), "say": words::finding(f, pool) }),
    );
    json!({ "table": rows.collect::<Vec<_>>(), "findings": findings.collect::<Vec<_>>() })
}

/// The table for a spreadsheet, one line a team.
#[must_use]
pub fn csv(standings: &Standings) -> String {
    let mut table = Table::new(&[
        "place",
        "team",
        "played",
        "wins",
        "losses",
        "draws",
        "match_points",
        "sets_won",
        "sets_lost",
        "set_ratio",
        "points_won",
        "points_lost",
        "point_ratio",
        "decided_by",
        "reason",
    ]);
    for row in &standings.rows {
        let t = &row.tally;
        table.line(&[
            number(Some(row.place)),
            quoted(&row.team),
            number(Some(t.played)),
            number(Some(t.wins)),
            number(Some(t.losses)),
            number(Some(t.draws)),
            number(Some(t.match_points)),
            number(Some(t.sets.0)),
            number(Some(t.sets.1)),
            number(Some(t.set_ratio())),
            number(Some(t.points.0)),
            number(Some(t.points.1)),
            number(Some(t.point_ratio())),
            number(row.decided_by()),
            quoted(&words::reason(row)),
        ]);
    }
    table.finish()
}

/// The table as lines to read; before it what makes a result in it doubtful.
#[must_use]
pub fn text(pool: &Pool, standings: &Standings) -> String {
    let wide = standings.rows.iter().map(|r| r.team.chars().count());
    let wide = wide.max().unwrap_or(4).max(4);
    let mut out = String::new();
    let (doubts, others): (Vec<&Finding>, Vec<&Finding>) =
        standings.findings.iter().partition(|f| f.is_doubt());
    let say = |out: &mut String, findings: &[&Finding]| {
        for f in findings {
            // Writing into a string cannot fail.
            let _ = writeln!(
                out,
                "{}: {}: {}",
                f.place(pool),
                f.code(),
                words::finding(f, pool)
            );
        }
    };
    say(&mut out, &doubts);
    let _ = writeln!(
        out,
        "   {:wide$}  matches  points  sets          points",
        "team"
    );
    for row in &standings.rows {
        let t = &row.tally;
        let sets = format!("{}:{} ({})", t.sets.0, t.sets.1, t.set_ratio());
        let points = format!("{}:{} ({})", t.points.0, t.points.1, t.point_ratio());
        let _ = writeln!(
            out,
            "{:>2} {:wide$}  {:>2} – {:<2}  {:>6}  {sets:<13} {points}",
            row.place, row.team, t.wins, t.losses, t.match_points
        );
    }
    for row in &standings.rows {
        let _ = writeln!(out, "{}", words::reason(row));
    }
    say(&mut out, &others);
    out
}
