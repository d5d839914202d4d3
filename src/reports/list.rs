//! What lies on a desk, one line each: both teams, where the match stands, whether it is sealed, and how
//! much of it is to be looked at.

use serde_json::{json, Value};

use super::one_match::{self, Evidence, Time};
use super::paper::{Checkup, Draft, Fault};
use super::spreadsheet::{number, quoted, Table};
use super::standings::{self, Doubt, Played, Source};
use super::{audit, paper, WallClock};
use game::entry::Detail;
use game::{Phase, Timeline};
use record::{broken, seals, Reading};
use rules::{ByTeam, Score, Team};

/// One line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Line {
    /// Names of the teams, as far as they have any.
    pub teams: ByTeam<String>,
    /// Competition and division.
    pub group: String,
    /// Number of the match.
    pub number: String,
    /// Sets won; none before the first service and where a paper sheet has no result.
    pub sets: Option<ByTeam<u8>>,
    /// Points of each set.
    pub points: Vec<Score>,
    /// Whether the match is over.
    pub is_over: bool,
    /// Whether it was keyed in from paper.
    pub on_paper: bool,
    /// The last seal.
    pub seal: SealState,
    /// How many things are to be looked at.
    pub findings: usize,
    /// When the last entry was made, milliseconds since 1970.
    pub last_at: Option<i64>,
    /// When the match was played.
    pub time: Option<Time>,
    /// Why the result may not be what was played.
    pub doubt: Option<Doubt>,
    /// The result as a pool counts it; none where the match is not over.
    pub played: Option<Played>,
}

/// The state of a seal.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum SealState {
    /// A paper sheet has none.
    OnPaper,
    /// There is none.
    None,
    /// Something before it was changed.
    Broken,
    /// It fits, and the record was reopened after it.
    GoneOn,
    /// It fits, and nothing came after it.
    Holds,
}

impl SealState {
    /// Of a record.
    #[must_use]
    pub fn of(timeline: &Timeline) -> SealState {
        let entries = timeline.entries();
        let Some(last) = seals(entries).pop() else {
            return SealState::None;
        };
        let later = entries.last().is_some_and(|e| e.n > last.entry);
        match (last.fits(), later) {
            (false, _) => SealState::Broken,
            (true, true) => SealState::GoneOn,
            (true, false) => SealState::Holds,
        }
    }

    /// The name in an output.
    #[must_use]
    pub const fn code(self) -> &'static str {
        match self {
            SealState::OnPaper => "paper",
            SealState::None => "none",
            SealState::Broken => "broken",
            SealState::GoneOn => "gone_on",
            SealState::Holds => "holds",
        }
    }

    /// In words.
    #[must_use]
    pub const fn say(self) -> &'static str {
        match self {
            SealState::OnPaper => "On paper",
            SealState::None => "Not sealed",
            SealState::Broken => "The seal does not fit: something before it was changed",
            SealState::GoneOn => "Sealed, then continued",
            SealState::Holds => "Sealed, and the seal fits",
        }
    }
}

impl Line {
    /// The line of a record; `timeline` is the fold of the reading's entries.
    #[must_use]
    pub fn of_record(reading: &Reading, timeline: &Timeline) -> Line {
        let state = timeline.state();
        let heading = state.heading();
        let number = heading.and_then(|h| h.details[Detail::MatchNo].clone());
        let seal = SealState::of(timeline);
        let is_changed = !reading.changed.is_empty() || !broken(timeline.entries()).is_empty();
        let running = state.play().map(|play| play.score);
        Line {
            teams: ByTeam::new(|team| {
                heading.map_or_else(String::new, |h| h.names[team].trim().to_owned())
            }),
            group: heading.map(one_match::pool_of).unwrap_or_default(),
            number: number.unwrap_or_default(),
            sets: (state.phase() != Phase::Preparation).then(|| state.sets_won()),
            points: state.sets().map(|s| s.score).chain(running).collect(),
            is_over: state.phase() == Phase::Finished,
            on_paper: false,
            seal,
            findings: audit::audit(reading, timeline).len(),
            last_at: timeline.entries().iter().rev().find_map(|e| e.at),
            time: one_match::time_of(timeline),
            doubt: match seal {
                SealState::Broken => Some(Doubt::Seal),
                _ => (is_changed || reading.lacks_a_part()).then_some(Doubt::Damaged),
            },
            played: standings::of_match(state),
        }
    }

    /// The line of a paper sheet.
    #[must_use]
    pub fn of_paper(draft: &Draft) -> Line {
        let Checkup {
            sheet,
            checked,
            marks,
        } = draft.check(true);
        let undecided = |f: &paper::Finding| matches!(f.fault, Fault::MatchNotFinished);
        let is_over = !checked.findings.iter().any(undecided);
        let in_doubt = checked.findings.iter().any(|f| f.fault.is_of_result());
        Line {
            teams: ByTeam::new(|team| sheet.teams[team].name.clone()),
            group: String::new(),
            number: String::new(),
            sets: sheet.result.map(|r| r.sets),
            points: sheet.sets.iter().filter_map(|s| s.points).collect(),
            is_over,
            on_paper: true,
            seal: SealState::OnPaper,
            findings: marks.len(),
            last_at: None,
            time: None,
            doubt: in_doubt.then_some(Doubt::Paper),
            played: standings::of_paper(&sheet).filter(|_| is_over),
        }
    }

    /// The result under the name of its file; of a match that is not over what is known of it.
    #[must_use]
    pub fn result(&self, name: String) -> Played {
        let evidence = match self.seal {
            SealState::OnPaper => Evidence::Paper,
            SealState::Broken => Evidence::Changed,
            SealState::None | SealState::GoneOn => Evidence::Record,
            SealState::Holds => Evidence::Sealed,
        };
        let source = Source {
            name,
            evidence,
            pool: self.group.clone(),
            number: self.number.clone(),
            time: self.time,
            is_open: self.played.is_none(),
            doubt: self.doubt,
        };
        match &self.played {
            Some(played) => Played {
                source,
                ..played.clone()
            },
            None => Played {
                home: self.name(Team::A).to_owned(),
                away: self.name(Team::B).to_owned(),
                sets: Vec::new(),
                default: None,
                source,
            },
        }
    }

    /// The name of a team, or its letter.
    fn name(&self, team: Team) -> &str {
        match self.teams[team].as_str() {
            "" => team.letter(),
            name => name,
        }
    }

    /// Both teams.
    #[must_use]
    pub fn say_teams(&self) -> String {
        let name = |team: Team| match self.teams[team].as_str() {
            "" => format!("Team {team}"),
            name => name.to_owned(),
        };
        format!("{} – {}", name(Team::A), name(Team::B))
    }

    /// Where it stands: sets, and in brackets the points of each.
    #[must_use]
    pub fn say_result(&self) -> String {
        let points: Vec<String> = self.points.iter().map(ToString::to_string).collect();
        let sets = match self.sets {
            Some(sets) => sets.to_string(),
            None if points.is_empty() => return "Nothing played yet".to_owned(),
            None => "No result".to_owned(),
        };
        let open = if self.is_over { "" } else { ", not over" };
        if points.is_empty() {
            format!("{sets}{open}")
        } else {
            format!("{sets} ({}){open}", points.join(", "))
        }
    }
}

/// How many things are to be looked at, in words.
#[must_use]
pub fn say_findings(count: usize) -> String {
    match count {
        0 => "Nothing to check".to_owned(),
        n => format!("{n} to check"),
    }
}

/// A line for a reader, behind the name of the file.
#[must_use]
pub fn text(name: &str, line: &Line) -> String {
    let group = match line.group.as_str() {
        "" => String::new(),
        group => format!(" [{group}]"),
    };
    // A seal that does not fit speaks for itself.
    let doubt = line.doubt.filter(|doubt| *doubt != Doubt::Seal);
    let doubt = doubt.map(|doubt| {
        let this = if line.on_paper {
            "this sheet"
        } else {
            "this record"
        };
        format!(" In doubt: {}", standings::say_doubt(this, doubt))
    });
    format!(
        "{name}: {}{group}: {}.{} {}. {}.",
        line.say_teams(),
        line.say_result(),
        doubt.unwrap_or_default(),
        line.seal.say(),
        say_findings(line.findings)
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
            "findings": line.findings, "last_at": line.last_at,
            "doubt": line.doubt.map(Doubt::code),
        })
    });
    json!({ "list": list.collect::<Vec<_>>() })
}

/// The lines as a table for a spreadsheet; `last_at` is milliseconds since 1970 UTC, beside it stand the
/// time of the world and that of the hall.
#[must_use]
pub fn csv(lines: &[(String, Line)], hall: WallClock) -> String {
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
            number(Some(line.findings)),
            number(line.last_at),
            number(line.last_at.map(|at| WallClock::default().moment(at))),
            number(line.last_at.map(|at| hall.moment(at))),
            number(line.doubt.map(Doubt::code)),
        ]);
    }
    table.finish()
}
