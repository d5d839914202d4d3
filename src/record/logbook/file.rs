//! The logbook as a file, whole or goals alone, and read back with whatever can be read.

use std::borrow::Cow;

use super::{Day, Goal, GoalKind, Logbook, Officiated, MAX_GOALS, MAX_LOGGED};
use rules::Duty;
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What the file says of itself.
pub const LOGBOOK_NAME: &str = "volleyball-logbook";
/// The version this program writes and reads.
const VERSION: u64 = 1;
/// A longer text is not read: as many matches as there may be, each with a long talk.
pub const MAX_LOGBOOK_BYTES: usize = 4 * 1024 * 1024;
/// A longer id is not read.
const ID_LETTERS: usize = 200;
const MATCHES: &str = "matches";
const TASK: &str = "task";

/// What reading such a file gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum LogbookReading {
    /// The logbook, and how many matches and goals of it could not be read.
    Logbook(Logbook, usize),
    /// It was written by a newer version of the program.
    Newer,
    /// It is no such file, or too long for one.
    Foreign,
}

#[derive(Serialize)]
struct Written<'a> {
    log: &'static str,
    version: u64,
    matches: Vec<WrittenMatch<'a>>,
    goals: Vec<WrittenGoal<'a>>,
}

/// The same as it is found: one bad match does not hide the others.
#[derive(Deserialize)]
struct Found {
    log: String,
    version: u64,
    #[serde(default)]
    matches: Vec<Value>,
    #[serde(default)]
    goals: Vec<Value>,
}

#[derive(Serialize, Deserialize)]
struct WrittenMatch<'a> {
    id: Cow<'a, str>,
    date: Cow<'a, str>,
    role: Cow<'a, str>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    level: Cow<'a, str>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    teams: Cow<'a, str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    minutes: Option<u16>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    talk: Cow<'a, str>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    next: Cow<'a, str>,
}

#[derive(Serialize, Deserialize)]
struct WrittenGoal<'a> {
    what: Cow<'a, str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    role: Option<Cow<'a, str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    count: Option<u16>,
    #[serde(skip_serializing_if = "Option::is_none")]
    words: Option<Cow<'a, str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    done: Option<Cow<'a, str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    since: Option<Cow<'a, str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    until: Option<Cow<'a, str>>,
    #[serde(default, skip_serializing_if = "str::is_empty")]
    from: Cow<'a, str>,
}

impl Logbook {
    /// As a file.
    #[must_use]
    pub fn write(&self) -> String {
        let written = Written {
            log: LOGBOOK_NAME,
            version: VERSION,
            matches: self.matches.iter().map(WrittenMatch::of).collect(),
            goals: self.goals.iter().map(WrittenGoal::of).collect(),
        };
        // Plain structs with string keys cannot fail to be written.
        serde_json::to_string(&written).unwrap_or_default()
    }

    /// Reads a file.
    #[must_use]
    pub fn read(text: &str) -> LogbookReading {
        let text = text.trim_start_matches('\u{feff}');
        if text.len() > MAX_LOGBOOK_BYTES {
            return LogbookReading::Foreign;
        }
        let Ok(found) = serde_json::from_str::<Found>(text) else {
            return LogbookReading::Foreign;
        };
        if found.log != LOGBOOK_NAME {
            return LogbookReading::Foreign;
        }
        if found.version > VERSION {
            return LogbookReading::Newer;
        }
        let mut logbook = Logbook::default();
        let all = found.matches.len() + found.goals.len();
        // The latest stands first in a file, and what is written later goes before it.
        for value in found.matches.iter().take(MAX_LOGGED).rev() {
            let one = WrittenMatch::deserialize(value)
                .ok()
                .and_then(|one| one.read());
            if let Some(one) = one {
                logbook.put(one);
            }
        }
        for value in found.goals.iter().take(MAX_GOALS) {
            let goal = WrittenGoal::deserialize(value)
                .ok()
                .and_then(|goal| goal.read());
            if let Some(goal) = goal {
                logbook.set_goal(goal);
            }
        }
        let left_out = all - logbook.matches.len() - logbook.goals.len();
        LogbookReading::Logbook(logbook, left_out)
    }
}

impl<'a> WrittenMatch<'a> {
    fn of(one: &'a Officiated) -> WrittenMatch<'a> {
        WrittenMatch {
            id: Cow::from(&one.id),
            date: Cow::from(one.day.as_str()),
            role: Cow::from(one.duty.code()),
            level: Cow::from(&one.level),
            teams: Cow::from(&one.teams),
            minutes: one.minutes,
            talk: Cow::from(&one.talk),
            next: Cow::from(&one.next),
        }
    }

    fn read(self) -> Option<Officiated> {
        if self.id.is_empty() || self.id.len() > ID_LETTERS {
            return None;
        }
        Some(Officiated {
            id: self.id.into_owned(),
            day: Day::read(&self.date)?,
            duty: Duty::from_code(&self.role)?,
            level: self.level.into_owned(),
            teams: self.teams.into_owned(),
            minutes: self.minutes,
            talk: self.talk.into_owned(),
            next: self.next.into_owned(),
        })
    }
}

impl<'a> WrittenGoal<'a> {
    fn of(goal: &'a Goal) -> WrittenGoal<'a> {
        let day = |day: &'a Option<Day>| day.as_ref().map(|day| Cow::from(day.as_str()));
        let (what, role, count, words, done) = match &goal.kind {
            GoalKind::Matches { duty, count } => {
                let role = duty.map(|duty| Cow::from(duty.code()));
                (MATCHES, role, Some(*count), None, None)
            }
            GoalKind::Task { words, done } => (TASK, None, None, Some(Cow::from(words)), day(done)),
        };
        WrittenGoal {
            what: what.into(),
            role,
            count,
            words,
            done,
            since: day(&goal.since),
            until: day(&goal.until),
            from: Cow::from(&goal.from),
        }
    }

    /// None where something of it cannot be read: a goal without its role would be another one.
    fn read(self) -> Option<Goal> {
        fn day(text: Option<Cow<'_, str>>) -> Option<Option<Day>> {
            match text {
                None => Some(None),
                Some(text) => Day::read(&text).map(Some),
            }
        }
        let kind = match self.what.as_ref() {
            MATCHES => GoalKind::Matches {
                duty: match self.role {
                    None => None,
                    Some(role) => Some(Duty::from_code(&role)?),
                },
                count: self.count?,
            },
            TASK => GoalKind::Task {
                words: self.words?.into_owned(),
                done: day(self.done)?,
            },
            _ => return None,
        };
        Some(Goal {
            kind,
            since: day(self.since)?,
            until: day(self.until)?,
            from: self.from.into_owned(),
        })
    }
}
