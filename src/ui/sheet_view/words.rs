//! The words of the sheet, in one place; a second language is a second file like this one.

use crate::game::{How, Level, Sanction, SanctionKind, Who};
use crate::rules::{ByTeam, Score, Shirt, Team};

/// Makes a page of paper.
pub const PRINT: &str = "Print";
/// Hands the record over.
pub const EXPORT: &str = "Export the record";
/// Where the browser has no printing.
pub const CANNOT_PRINT: &str =
    "This browser cannot print. Export the record and print it on another device.";
/// Before anything was played.
pub const NOTHING_PLAYED: &str = "Nothing has been played yet. The sheet fills itself.";
/// Heading of the table.
pub const RESULT: &str = "Result";
/// Column.
pub const SET: &str = "Set";
/// Column.
pub const MINUTES: &str = "Min";
/// Column.
pub const TIME_OUTS: &str = "Time-outs";
/// Column, where it is narrow.
pub const SUBSTITUTIONS_SHORT: &str = "Subst.";
/// Row.
pub const SUBSTITUTIONS: &str = "Substitutions";
/// Row.
pub const LIBEROS: &str = "Libero replacements";
/// Row.
pub const LINE_UP: &str = "Line-up";
/// Row.
pub const SERVICE_ROUNDS: &str = "Service rounds";
/// Row.
pub const RUNNING_SCORE: &str = "Running score";
/// Last row of the table.
pub const TOTAL: &str = "Total";
/// Heading.
pub const SANCTIONS: &str = "Sanctions";
/// Heading.
pub const REMARKS: &str = "Remarks";
/// Heading.
pub const SIGNATURES: &str = "Signatures";
/// Heading.
pub const PLAYERS: &str = "Players";
/// Where there is none.
pub const NONE: &str = "None";
/// Under the running score.
pub const RUNNING_KEY: &str = "A box is a penalty point; a struck number was cancelled.";
/// Not over yet.
pub const NOT_OVER: &str = "The match is not over.";
/// Over, and nobody has won.
pub const LEVEL_END: &str = "The match ended level.";

/// Who signs a sheet with a pen after the match: the captains by FIVB Official Volleyball Rules
/// 2025-2028, 5.1.3; the officials from memory.
pub const SIGNERS: [&str; 5] = [
    "Captain A",
    "Captain B",
    "Scorer",
    "Second referee",
    "First referee",
];

/// The winner and the sets.
#[must_use]
pub fn won_by(name: &str, sets: ByTeam<u8>, winner: Team) -> String {
    format!("{name} won {}:{}", sets[winner], sets[winner.other()])
}

/// How a set or match was decided, where not by play.
#[must_use]
pub fn how(how: How) -> Option<&'static str> {
    match how {
        How::Played => None,
        How::Incomplete => Some("incomplete team"),
        How::Default => Some("default"),
        How::Unregistered => Some("player not on the list"),
    }
}

/// Over the block of a set.
#[must_use]
pub fn set_heading(number: u8) -> String {
    format!("Set {number}")
}

/// When a set was played and how long.
#[must_use]
pub fn times(began: Option<&str>, ended: Option<&str>, minutes: Option<i64>) -> String {
    let clock = match (began, ended) {
        (Some(began), Some(ended)) => format!("{began}\u{2013}{ended}"),
        (Some(began), None) => format!("from {began}"),
        (None, _) => String::new(),
    };
    match minutes {
        Some(minutes) => format!("{clock}, {minutes} min"),
        None => clock,
    }
}

/// First service and sides.
#[must_use]
pub fn opening(server: Option<&str>, left: Option<&str>) -> String {
    let mut parts = Vec::new();
    if let Some(server) = server {
        parts.push(format!("First service: {server}"));
    }
    if let Some(left) = left {
        parts.push(format!("left of the stand: {left}"));
    }
    parts.join(", ")
}

/// A score, the own team's points first.
#[must_use]
pub fn own_first(score: Score, team: Team) -> String {
    format!("{}:{}", score[team], score[team.other()])
}

/// A score, team A's points first.
#[must_use]
pub fn score(score: Score) -> String {
    format!("{}:{}", score.a, score.b)
}

/// Who comes for whom.
#[must_use]
pub fn change(out: Shirt, into: Shirt) -> String {
    format!("{into} for {out}")
}

/// Marks an exceptional substitution.
pub const EXCEPTIONAL: &str = "exceptional";

/// A line of the sanctions box.
#[must_use]
pub fn sanction(sanction: &Sanction, name: &str) -> String {
    let kind = match sanction.kind {
        SanctionKind::ImproperRequest => "improper request",
        SanctionKind::DelayWarning => "delay warning",
        SanctionKind::DelayPenalty => "delay penalty",
        SanctionKind::Misconduct(Level::Warning) => "warning",
        SanctionKind::Misconduct(Level::Penalty) => "penalty",
        SanctionKind::Misconduct(Level::Expulsion) => "expulsion",
        SanctionKind::Misconduct(Level::Disqualification) => "disqualification",
    };
    let who = match &sanction.who {
        Some(Who::Player(number)) => format!(", number {number}"),
        Some(Who::Staff(role)) => format!(", {role}"),
        None => String::new(),
    };
    format!(
        "Set {}, {}: {kind}, {name}{who}",
        sanction.set,
        score(sanction.score)
    )
}

/// Where a remark belongs.
#[must_use]
pub fn remark_at(set: u8, at: Score) -> String {
    format!("Set {set}, {}", score(at))
}

/// Name of a service round for whoever listens.
#[must_use]
pub fn round(server: Option<Shirt>, total: u16) -> String {
    match server {
        Some(server) => format!("Number {server} served until {total}"),
        None => format!("final score {total}"),
    }
}

/// Name of the running score for whoever listens.
#[must_use]
pub fn running(name: &str, last: u16) -> String {
    format!("{name}: {last} points")
}
