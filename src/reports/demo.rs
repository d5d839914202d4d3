//! An invented tournament day to look at: eight teams in two pools, eleven match records, a second record
//! of one of them that differs, and one match on paper with an error in a box. Everything is made from
//! simulated matches when it is asked for, and is the same everywhere.

use super::paper::{self, PaperSheet};
use super::Sheet;
use game::entry::{Amendment, Detail, Protested};
use game::{simulate, Entry, Kind, Timeline};
use record::Log;
use rules::{ByTeam, Cause, Preset, Team};

/// How the ids of the invented day begin, so that it can be taken away again without touching anything
/// else.
const MARK: &str = "invented-day-";
/// The competition, as it stands on every sheet.
pub const COMPETITION: &str = "Sample tournament";
/// Invented names, the first four in pool 1.
const TEAMS: [&str; 8] = [
    "Otters", "Herons", "Badgers", "Voles", "Newts", "Swifts", "Hares", "Owls",
];
/// Who meets in a pool of four, in the order of play.
const PAIRS: [(usize, usize); 6] = [(0, 1), (2, 3), (0, 2), (1, 3), (0, 3), (1, 2)];
/// The simulated matches, one for each match: chosen so that the day shows much and no pool is clear at a glance.
const SEEDS: [u64; 12] = [343, 353, 344, 386, 384, 349, 379, 381, 399, 346, 371, 380];
/// The match of which there are two records.
const TWICE: usize = 10;
/// The match that is on paper.
const ON_PAPER: usize = 11;
/// Saturday, 9 May 2026, 09:00 UTC.
const MORNING: i64 = 1_778_317_200_000;
/// Matches begin so many minutes apart, two at a time.
const SLOT: i64 = 50 * 60_000;

/// The invented day.
#[derive(Clone, Debug)]
pub struct Day {
    /// The match records; the last two are of one match.
    pub logs: Vec<Log>,
    /// The id under which the paper sheet is kept.
    pub paper_id: String,
    /// The match on paper.
    pub paper: PaperSheet,
}

/// Whether something belongs to the invented day.
#[must_use]
pub fn is_invented(id: &str) -> bool {
    id.starts_with(MARK)
}

/// The id of a match of the day by its number from 1, as on its sheet.
#[must_use]
pub fn id_of(number: usize) -> String {
    format!("{MARK}{number}")
}

/// The ids of the two records of one match.
#[must_use]
pub fn id_of_both() -> [String; 2] {
    let first = id_of(TWICE + 1);
    let second = format!("{first}-table");
    [first, second]
}

/// The id of the match on paper.
#[must_use]
pub fn id_on_paper() -> String {
    id_of(ON_PAPER + 1)
}

/// The whole day.
#[must_use]
pub fn day() -> Day {
    let mut logs: Vec<Log> = (0..ON_PAPER).map(record).collect();
    let twice = another(&logs[TWICE]);
    logs.push(twice);
    let on_paper = Timeline::of(record(ON_PAPER).entries);
    let rules = *on_paper.state().rules();
    Day {
        logs,
        paper_id: id_on_paper(),
        paper: with_a_slip(paper::of_sheet(&Sheet::of(&on_paper), rules, 0)),
    }
}

/// One match of the day, from its number from 0.
fn record(number: usize) -> Log {
    let (pool, pair) = (number / PAIRS.len(), PAIRS[number % PAIRS.len()]);
    let names = ByTeam {
        a: TEAMS[pool * 4 + pair.0].to_owned(),
        b: TEAMS[pool * 4 + pair.1].to_owned(),
    };
    let slot = i64::try_from(number % PAIRS.len()).unwrap_or(0);
    let begins = MORNING + slot * SLOT;
    let mut entries = simulate(Preset::SchoolJunior, SEEDS[number]);
    let first = entries.first().and_then(|e| e.at).unwrap_or(begins);
    for entry in &mut entries {
        // Half an hour before the scheduled start the first entry is made.
        entry.at = entry.at.map(|at| at - first + begins - 30 * 60_000);
        match &mut entry.kind {
            Kind::Match(heading) => {
                let details = &mut heading.details;
                details[Detail::Competition] = Some(COMPETITION.to_owned());
                details[Detail::Division] = Some(format!("Pool {}", pool + 1));
                details[Detail::Court] = Some((pool + 1).to_string());
                details[Detail::MatchNo] = Some((number + 1).to_string());
                let minutes = 9 * 60 + slot * SLOT / 60_000;
                let (hour, minute) = (minutes / 60, minutes % 60);
                details[Detail::Scheduled] = Some(format!("2026-05-09T{hour:02}:{minute:02}"));
                heading.names = names.clone();
            }
            Kind::Heading(amendment) => {
                let venue = amendment.details[Detail::Venue].take();
                **amendment = Amendment::default();
                amendment.details[Detail::Venue] = venue;
            }
            _ => {}
        }
    }
    Log {
        id: id_of(number + 1),
        entries,
    }
}

/// The record of somebody else who watched the same match: a rally was missed, a time-out was not noted,
/// and one reason was seen otherwise.
fn another(log: &Log) -> Log {
    let timeline = Timeline::of(log.entries.clone());
    let state = timeline.state();
    let sets: Vec<_> = state.sets().collect();
    // A rally of the team that lost the first set, in its middle: the set still ends with the same rally.
    let missed = sets.first().and_then(|set| {
        let play = set.play.as_ref()?;
        let lost = play
            .points
            .iter()
            .filter(|p| p.to != set.winner && p.cancelled_by.is_none());
        lost.map(|p| p.entry)
            .nth(usize::from(set.score[set.winner.other()]) / 2)
    });
    let time_out = timeline
        .outcomes()
        .find_map(|(e, _)| matches!(e.kind, Kind::TimeOut { .. }).then_some(e.n));
    let mut entries = log.entries.clone();
    if let Some(entry) = entries
        .iter_mut()
        .rev()
        .find(|e| said(&e.kind) == Some(Cause::BallOut))
    {
        *entry = Entry {
            kind: with_cause(&entry.kind, Cause::BallTouched),
            ..entry.clone()
        };
    }
    // The later one first, so that the number of the other still holds.
    for n in [time_out.max(missed), time_out.min(missed)]
        .into_iter()
        .flatten()
    {
        entries = without(entries, n);
    }
    Log {
        id: format!("{}-table", log.id),
        entries,
    }
}

fn said(kind: &Kind) -> Option<Cause> {
    match kind {
        Kind::Rally { cause, .. } => *cause,
        Kind::Explain { cause, .. } => Some(*cause),
        _ => None,
    }
}

fn with_cause(kind: &Kind, other: Cause) -> Kind {
    let mut kind = kind.clone();
    match &mut kind {
        Kind::Rally { cause, .. } => *cause = Some(other),
        Kind::Explain { cause, .. } => *cause = other,
        _ => {}
    }
    kind
}

/// The log as if an entry had never been made: whatever is about it goes too, and the numbers close up.
fn without(entries: Vec<Entry>, gone: u32) -> Vec<Entry> {
    let about = |kind: &Kind| match kind {
        Kind::Explain { entry, .. } | Kind::Strike { entry, .. } | Kind::Answer { entry, .. } => {
            Some(*entry)
        }
        Kind::Replay { rally, .. } => *rally,
        Kind::ProtestStatement {
            about: Protested::Entry(entry),
            ..
        } => Some(*entry),
        _ => None,
    };
    let mut numbers = std::collections::BTreeMap::new();
    let mut left = Vec::new();
    for mut entry in entries {
        if entry.n == gone || about(&entry.kind).is_some_and(|n| !numbers.contains_key(&n)) {
            continue;
        }
        let n = left.last().map_or(1, |last: &Entry| last.n + 1);
        numbers.insert(entry.n, n);
        entry.n = n;
        if let Kind::Explain { entry: of, .. }
        | Kind::Strike { entry: of, .. }
        | Kind::Answer { entry: of, .. }
        | Kind::ProtestStatement {
            about: Protested::Entry(of),
            ..
        }
        | Kind::Replay {
            rally: Some(of), ..
        } = &mut entry.kind
        {
            *of = numbers.get(of).copied().unwrap_or(*of);
        }
        left.push(entry);
    }
    left
}

/// The same sheet with a slip of the pen: in the first set a total of team B is one too small to be.
fn with_a_slip(mut sheet: PaperSheet) -> PaperSheet {
    if let Some(set) = sheet.sets.first_mut() {
        let rounds = &mut set.rounds[Team::B];
        let at = rounds.len() / 2;
        if let (Some(before), Some(total)) =
            (at.checked_sub(1).map(|i| rounds[i]), rounds.get_mut(at))
        {
            *total = before.saturating_sub(1);
        }
    }
    sheet
}
