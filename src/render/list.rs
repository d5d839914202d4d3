//! What lies on a desk, as JSON, as a table for a spreadsheet and as lines to read.

use serde_json::{json, Value};

use crate::spreadsheet::{number, quoted, Table};
use reports::list::Line;
use reports::standings::Doubt;
use reports::WallClock;
use rules::Team;
use text::desk as words;

/// A line for a reader, behind the name of the file.
#[must_use]
pub fn text(name: &str, line: &Line) -> String {
    let group = match line.group.as_str() {
        "" => String::new(),
        group => format!(" [{group}]"),
    };
    // A seal that does not fit speaks for itself.
    let doubt = words::in_doubt(line).filter(|_| line.doubt != Some(Doubt::Seal));
    let doubt = doubt.map(|doubt| format!(" {doubt}"));
    format!(
        "{name}: {}{group}: {}.{} {}. {}.",
        words::teams_of(line),
        words::result_of(line),
        doubt.unwrap_or_default(),
        words::seal_state(line.seal),
        words::to_check(line.findings.all())
    )
}

/// The lines as JSON, each with the name of its file.
#[must_use]
pub fn json(lines: &[(String, Line)]) -> Value {
    let list = lines.iter().map(|(name, line)| {
        json!({
            "file": name, "group": line.group, "match_no": line.number,
            "teams": { "A": line.teams.a, "B": line.teams.b },
            "sets_won": line.sets.map(|s| json!({ "A": s.a, "B": s.b })),
            "sets": line.points.iter().map(|p| json!({ "A": p.a, "B": p.b })).collect::<Vec<_>>(),
            "over": line.is_over, "paper": line.on_paper, "seal": line.seal.code(),
            "findings": line.findings.all(), "last_at": line.last_at,
            "doubt": line.doubt.map(Doubt::code), "practice": line.is_practice,
        })
    });
    json!({ "list": list.collect::<Vec<_>>() })
}

/// The lines as a table for a spreadsheet; `last_at` is milliseconds since 1970 UTC, beside it stand the
/// time of the world and that of the hall, whose clock may stand otherwise in summer than in winter.
#[must_use]
pub fn csv(lines: &[(String, Line)], hall_at: impl Fn(i64) -> WallClock) -> String {
    let mut table = Table::new(&[
        "file",
        "kind",
        "group",
        "match_no",
        "A",
        "B",
        "sets_A",
        "sets_B",
        "points",
        "over",
        "seal",
        "findings",
        "last_at",
        "last_utc",
        "last_local",
        "doubt",
        "practice",
    ]);
    for (name, line) in lines {
        let points: Vec<String> = line.points.iter().map(ToString::to_string).collect();
        let sets = |team: Team| number(line.sets.map(|s| s[team]));
        table.line(&[
            quoted(name),
            number(Some(if line.on_paper { "paper" } else { "record" })),
            quoted(&line.group),
            quoted(&line.number),
            quoted(&line.teams.a),
            quoted(&line.teams.b),
            sets(Team::A),
            sets(Team::B),
            quoted(&points.join(" ")),
            number(Some(if line.is_over { "yes" } else { "no" })),
            number(Some(line.seal.code())),
            number(Some(line.findings.all())),
            number(line.last_at),
            number(line.last_at.map(|at| WallClock::default().moment(at))),
            number(line.last_at.map(|at| hall_at(at).moment(at))),
            number(line.doubt.map(Doubt::code)),
            number(Some(if line.is_practice { "yes" } else { "no" })),
        ]);
    }
    table.finish()
}
