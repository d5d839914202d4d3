//! What lies on a desk, one line each: both teams, where the match stands, whether it is sealed, and how
//! much of it is to be looked at.

use super::audit::{self, SIGN_AFTER};
use super::one_match::{self, Evidence, Time};
use super::paper::{self, Checkup, Draft, Fault};
use super::standings::{self, Doubt, Played, Source};
use super::Weights;
use game::entry::Detail;
use game::{Phase, Signer, Timeline};
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
    /// How many things are to be looked at, by what they may touch.
    pub findings: Weights,
    /// Who has signed under the result.
    pub signed: Vec<Signer>,
    /// When the last entry was made, milliseconds since 1970.
    pub last_at: Option<i64>,
    /// The day that stands on a paper sheet.
    pub day: Option<String>,
    /// When the match was played.
    pub time: Option<Time>,
    /// Why the result may not be what was played.
    pub doubt: Option<Doubt>,
    /// The result as a pool counts it; none where the match is not over.
    pub played: Option<Played>,
    /// Whether it is a practice match, which no pool counts.
    pub is_practice: bool,
}

/// Who has signed under the result, as a list says it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Signed<'a> {
    /// A paper sheet that does not say.
    Unknown,
    /// Nobody.
    Nobody,
    /// Everybody who signs after a match.
    Everybody,
    /// Some of them.
    Some(&'a [Signer]),
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
}

impl Line {
    /// Who has signed under the result.
    #[must_use]
    pub fn signed(&self) -> Signed<'_> {
        match self.signed.len() {
            0 if self.on_paper => Signed::Unknown,
            0 => Signed::Nobody,
            all if all == SIGN_AFTER.len() => Signed::Everybody,
            _ => Signed::Some(&self.signed),
        }
    }

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
            findings: audit::audit(reading, timeline)
                .iter()
                .map(audit::Finding::weight)
                .collect(),
            signed: audit::signed_after(timeline),
            day: None,
            last_at: timeline.entries().iter().rev().find_map(|e| e.at),
            time: one_match::time_of(timeline),
            doubt: match seal {
                SealState::Broken => Some(Doubt::Seal),
                _ => (is_changed || reading.lacks_a_part).then_some(Doubt::Damaged),
            },
            played: standings::of_match(state),
            is_practice: heading.is_some_and(|h| h.practice),
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
            number: sheet.head.number.clone(),
            sets: sheet.result.map(|r| r.sets),
            points: sheet.sets.iter().filter_map(|s| s.points).collect(),
            is_over,
            on_paper: true,
            seal: SealState::OnPaper,
            findings: marks.iter().map(paper::Mark::weight).collect(),
            signed: sheet.head.signed.clone(),
            day: sheet.head.day.clone(),
            last_at: None,
            time: None,
            doubt: in_doubt.then_some(Doubt::Paper),
            played: standings::of_paper(&sheet).filter(|_| is_over),
            is_practice: false,
        }
    }

    /// The result under the name of its file; of a match that is not over what is known of it. None for a practice
    /// match.
    #[must_use]
    pub fn result(&self, name: String) -> Option<Played> {
        if self.is_practice {
            return None;
        }
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
        Some(match &self.played {
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
        })
    }

    /// The name of a team, or its letter.
    fn name(&self, team: Team) -> &str {
        match self.teams[team].as_str() {
            "" => team.letter(),
            name => name,
        }
    }
}
