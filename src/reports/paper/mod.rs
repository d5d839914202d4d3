//! A score sheet written by hand, keyed in and checked: the rally order is rebuilt from the first
//! service and the service rounds, and every other box has to agree with it.
//!
//! Whatever the rules of play have to say is asked of the reducer: the rebuilt order is entered into a
//! log, box by box, and what the reducer refuses is a finding.

mod check;
mod draft;
mod finding;
mod read;
mod rebuild;
mod rounds;
mod write;

pub use check::{check, Checked};
pub use draft::{BoxProblem, Cell, Checkup, Draft, Mark, MarkKind, Part};
pub use finding::{BoxKind, Fault, Finding, InAll};
pub use read::read;
pub(super) use read::NAME;
pub use write::{of_sheet, write};

use std::fmt;

use game::{SanctionKind, Signer, Who};
use rules::{ByTeam, Rules, Score, Shirt, Team};

/// A score sheet as it was keyed in. Boxes that were empty on the paper are none.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperSheet {
    /// What was played by.
    pub rules: Rules,
    /// What stands above the sets beside the teams.
    pub head: PaperHead,
    /// The teams.
    pub teams: ByTeam<PaperTeam>,
    /// The sets in their order.
    pub sets: Vec<PaperSet>,
    /// The sanctions box.
    pub sanctions: Vec<PaperSanction>,
    /// The result.
    pub result: Option<PaperResult>,
}

/// The heading of the sheet, and who has signed it. What was empty on the paper is empty.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PaperHead {
    /// Number of the match.
    pub number: String,
    /// The day, as `2026-05-09`.
    pub day: Option<String>,
    /// Names of first referee, second referee and scorer.
    pub officials: [String; 3],
    /// Whose signature stands under the result, in the order of the sheet.
    pub signed: Vec<Signer>,
}

/// A team on the sheet.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PaperTeam {
    /// Its name.
    pub name: String,
    /// The numbers on its list.
    pub players: Option<Vec<Shirt>>,
    /// Those of them who are liberos.
    pub liberos: Vec<Shirt>,
}

/// One set.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperSet {
    /// Who served first.
    pub first_service: Team,
    /// Line-ups, place 1 first.
    pub line_up: Option<ByTeam<Vec<Shirt>>>,
    /// For each service turn of a team its own total when the turn ended.
    pub rounds: ByTeam<Vec<u16>>,
    /// Points at the end.
    pub points: Option<Score>,
    /// Substitutions.
    pub substitutions: Vec<PaperSubstitution>,
    /// Time-outs.
    pub time_outs: Vec<PaperTimeOut>,
    /// When it began.
    pub start: Option<Minute>,
    /// When it ended.
    pub end: Option<Minute>,
    /// How many minutes it lasted.
    pub minutes: Option<u16>,
}

/// One substitution.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaperSubstitution {
    /// Whose.
    pub team: Team,
    /// Who left.
    pub out: Shirt,
    /// Who came.
    pub into: Shirt,
    /// The score.
    pub score: Score,
    /// Whether it is marked, or remarked, as an exceptional one.
    pub exceptional: bool,
}

/// One time-out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaperTimeOut {
    /// Whose.
    pub team: Team,
    /// The score.
    pub score: Score,
}

/// One line of the sanctions box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperSanction {
    /// The set, from 1.
    pub set: u8,
    /// The team at fault.
    pub team: Team,
    /// What.
    pub kind: SanctionKind,
    /// The person, for misconduct.
    pub who: Option<Who>,
    /// The score before it.
    pub score: Score,
}

/// The result as written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct PaperResult {
    /// Who won; none where the match ended level.
    pub winner: Option<Team>,
    /// Sets won.
    pub sets: ByTeam<u8>,
    /// Points of all sets.
    pub points: Option<ByTeam<u16>>,
    /// Time-outs of all sets.
    pub time_outs: Option<ByTeam<u16>>,
    /// Substitutions of all sets, exceptional ones included (FIVB Official Volleyball Rules 2025-2028, 15.7).
    pub substitutions: Option<ByTeam<u16>>,
    /// Minutes of all sets.
    pub minutes: Option<u16>,
}

/// A time of the day, in minutes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Minute(u16);

/// Whether a text is a day such as `2026-05-09`.
fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let number = |part: &str, digits: usize| {
        let plain = part.len() == digits && part.bytes().all(|b| b.is_ascii_digit());
        part.parse::<u32>().ok().filter(|_| plain)
    };
    let [year, month, day] = parts[..] else {
        return false;
    };
    number(year, 4).is_some()
        && number(month, 2).is_some_and(|month| (1..=12).contains(&month))
        && number(day, 2).is_some_and(|day| (1..=31).contains(&day))
}

impl Minute {
    /// From a text such as `18:05`.
    #[must_use]
    pub fn parse(text: &str) -> Option<Minute> {
        let (hour, minute) = text.split_once(':')?;
        let digits = |s: &str, most: u16| {
            let plain = (1..=2).contains(&s.len()) && s.bytes().all(|b| b.is_ascii_digit());
            s.parse::<u16>().ok().filter(|n| plain && *n <= most)
        };
        Some(Minute(digits(hour, 23)? * 60 + digits(minute, 59)?))
    }

    /// Of a moment in milliseconds since 1970, where clocks are so many minutes ahead of UTC.
    #[must_use]
    pub fn of_moment(at: i64, ahead: i32) -> Minute {
        let minutes = at.div_euclid(60_000).saturating_add(i64::from(ahead));
        Minute(u16::try_from(minutes.rem_euclid(24 * 60)).unwrap_or_default())
    }

    /// Minutes from this to another time; an evening that goes on after midnight is one evening.
    #[must_use]
    pub fn until(self, other: Minute) -> i64 {
        let plain = i64::from(other.0) - i64::from(self.0);
        let over_midnight = self.0 >= 18 * 60 && other.0 < 6 * 60;
        if over_midnight {
            plain + 24 * 60
        } else {
            plain
        }
    }
}

impl fmt::Display for Minute {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:02}:{:02}", self.0 / 60, self.0 % 60)
    }
}
