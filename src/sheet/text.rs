//! The sheet as plain text, for the command line.

use std::fmt::Write;

use super::{words, SetSheet, Sheet};
use crate::game::entry::Detail;
use crate::game::{How, PointFor, Who};
use crate::rules::Team;

/// The whole sheet as lines of text.
#[must_use]
pub fn text(sheet: &Sheet) -> String {
    let mut out = String::new();
    // Writing into a string cannot fail.
    let _ = write_all(&mut out, sheet);
    out
}

fn write_all(out: &mut String, sheet: &Sheet) -> std::fmt::Result {
    let [a, b] = Team::BOTH.map(|team| sheet.teams[team].name.as_str());
    writeln!(out, "{a} (A) – {b} (B)")?;
    if let Some(h) = &sheet.heading {
        let parts = Detail::ALL.iter().filter_map(|&d| h.details[d].as_deref());
        let parts: Vec<&str> = parts.collect();
        if !parts.is_empty() {
            writeln!(out, "{}", parts.join(" · "))?;
        }
    }
    for set in &sheet.sets {
        write_set(out, set)?;
    }
    for s in &sheet.sanctions {
        let who = match &s.who {
            Some(Who::Player(n)) => format!(" number {n}"),
            Some(Who::Staff(role)) => format!(" {role}"),
            None => String::new(),
        };
        writeln!(
            out,
            "{}: {}{who}, set {} at {}:{}",
            s.kind.code(),
            s.team,
            s.set,
            s.score.a,
            s.score.b
        )?;
    }
    for r in &sheet.remarks {
        writeln!(
            out,
            "Remark (set {}, {}:{}): {}",
            r.set, r.score.a, r.score.b, r.text
        )?;
    }
    for s in &sheet.signatures {
        writeln!(
            out,
            "Signed: {} {}",
            s.role,
            s.name.as_deref().unwrap_or("")
        )?;
    }
    if let Some(last) = sheet.seal.seals.last() {
        writeln!(out, "{}", words::seal(&sheet.seal, last, None))?;
        if sheet.seal.holds && last.fits() {
            writeln!(out, "Check code: {}", crate::record::spaced(&last.code))?;
        }
        writeln!(out, "{}", words::SEAL_SHOWS)?;
    }
    let result = &sheet.result;
    writeln!(
        out,
        "Sets {}:{}, points {}:{}{}",
        result.sets.a,
        result.sets.b,
        result.points.a,
        result.points.b,
        result
            .minutes
            .map(|m| format!(", {m} min"))
            .unwrap_or_default()
    )?;
    match (result.ended, result.winner) {
        (Some(_), Some(team)) => writeln!(out, "Winner: {}", sheet.teams[team].name),
        (Some(_), None) => writeln!(out, "Ended level"),
        (None, _) => writeln!(out, "Not finished"),
    }
}

fn write_set(out: &mut String, set: &SetSheet) -> std::fmt::Result {
    let how = match set.won {
        None => " (not finished)",
        Some((_, How::Played)) => "",
        Some((_, How::Incomplete)) => " (incomplete)",
        Some((_, How::Default)) => " (default)",
        Some((_, How::Unregistered)) => " (unregistered player)",
    };
    let minutes = set
        .minutes()
        .map(|m| format!(", {m} min"))
        .unwrap_or_default();
    writeln!(
        out,
        "\nSet {}  {}:{}{how}{minutes}",
        set.number, set.score.a, set.score.b
    )?;
    for team in Team::BOTH {
        let join = |list: Vec<String>| list.join(" ");
        let opens = if set.first_service == Some(team) {
            "S"
        } else {
            "R"
        };
        let line_up = join(set.line_ups[team].iter().map(ToString::to_string).collect());
        let rounds = join(
            set.rounds[team]
                .iter()
                .map(|r| r.total.to_string())
                .collect(),
        );
        writeln!(out, "  {team} {opens}  line-up {line_up}  rounds {rounds}")?;
    }
    for s in &set.substitutions {
        let sort = if s.exceptional {
            "exceptional substitution"
        } else {
            "substitution"
        };
        let (own, other) = (s.score[s.team], s.score[s.team.other()]);
        writeln!(
            out,
            "  {sort} {}: {} for {} at {own}:{other}",
            s.team, s.change.into, s.change.out
        )?;
    }
    for t in &set.time_outs {
        writeln!(
            out,
            "  time-out {} at {}:{}",
            t.team,
            t.score[t.team],
            t.score[t.team.other()]
        )?;
    }
    let penalties = set
        .running
        .iter()
        .filter(|p| p.given_for == PointFor::Penalty)
        .count();
    if penalties > 0 {
        writeln!(out, "  points for penalties: {penalties}")?;
    }
    for p in set.running.iter().filter(|p| p.cancelled_by.is_some()) {
        writeln!(
            out,
            "  point of {} from entry {} cancelled",
            p.team, p.entry
        )?;
    }
    Ok(())
}
