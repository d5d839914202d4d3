//! The matches that the owner of a phone has officiated, in which role, what was talked about afterwards, and what
//! there is to reach. Whoever signs it off gets it printed or as a table; it leaves the phone only so.

mod file;

pub(crate) use file::MAX_LOGBOOK_BYTES;
pub use file::{LogbookReading, LOGBOOK_NAME};

use rules::Duty;

/// More matches are not kept: ten years of one a week.
pub const MAX_LOGGED: usize = 500;
/// More goals are not kept.
const MAX_GOALS: usize = 50;
/// The most letters of what was talked about, and of what to try.
pub const TALK_LETTERS: usize = 500;
/// The most letters of every other text.
pub const SHORT_LETTERS: usize = 80;

/// A day of the calendar, such as `2026-11-28`.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Day(String);

impl Day {
    /// The day of a text of this form, which any year from 1 to 9999 has; none for another text.
    #[must_use]
    pub fn read(text: &str) -> Option<Day> {
        let text = text.trim();
        let mut parts = text.split('-');
        let mut part = |digits: usize| -> Option<u16> {
            let part = parts.next()?;
            let plain = part.len() == digits && part.bytes().all(|b| b.is_ascii_digit());
            plain.then(|| part.parse().ok())?
        };
        let (year, month, day) = (part(4)?, part(2)?, part(2)?);
        if parts.next().is_some() || year == 0 {
            return None;
        }
        let leap =
            year.is_multiple_of(4) && (!year.is_multiple_of(100) || year.is_multiple_of(400));
        let days = match month {
            1 | 3 | 5 | 7 | 8 | 10 | 12 => 31,
            4 | 6 | 9 | 11 => 30,
            2 => 28 + u16::from(leap),
            _ => return None,
        };
        (1..=days).contains(&day).then(|| Day(text.to_owned()))
    }

    /// The first day that there is, where nothing says which one it was.
    #[must_use]
    pub fn first() -> Day {
        Day("0001-01-01".to_owned())
    }

    /// As it is written.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

/// One match that somebody officiated.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Officiated {
    /// What no other match of the logbook has: the id of the record where there is one.
    pub id: String,
    /// When.
    pub day: Day,
    /// As what.
    pub duty: Duty,
    /// Age group or league, as somebody calls it; may be empty.
    pub level: String,
    /// Who played; may be empty.
    pub teams: String,
    /// How long it took.
    pub minutes: Option<u16>,
    /// What the talk was about; may be empty.
    pub talk: String,
    /// One thing to try next time; may be empty.
    pub next: String,
}

/// What is to be reached.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum GoalKind {
    /// So many matches, in one role or in any.
    Matches {
        /// Which.
        duty: Option<Duty>,
        /// How many.
        count: u16,
    },
    /// Something that is ticked off.
    Task {
        /// What it is.
        words: String,
        /// When it was done.
        done: Option<Day>,
    },
}

/// Something to reach.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Goal {
    /// What.
    pub kind: GoalKind,
    /// Matches before that day do not count; without one all do.
    pub since: Option<Day>,
    /// By when.
    pub until: Option<Day>,
    /// Who set it; empty where the owner did.
    pub from: String,
}

/// How far a goal is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// So many are done, never more than there are.
    pub done: u16,
    /// Of so many.
    pub of: u16,
}

impl Progress {
    /// Whether it is reached.
    #[must_use]
    pub const fn is_reached(self) -> bool {
        self.done >= self.of
    }
}

/// All of it.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Logbook {
    matches: Vec<Officiated>,
    goals: Vec<Goal>,
}

impl Logbook {
    /// Whether nothing stands in it.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.matches.is_empty() && self.goals.is_empty()
    }

    /// The matches, the latest day first.
    #[must_use]
    pub fn matches(&self) -> &[Officiated] {
        &self.matches
    }

    /// The goals in the order in which they were set.
    #[must_use]
    pub fn goals(&self) -> &[Goal] {
        &self.goals
    }

    /// The match of this id.
    #[must_use]
    pub fn of_id(&self, id: &str) -> Option<&Officiated> {
        self.matches.iter().find(|one| one.id == id)
    }

    /// Writes a match into it, in the place of the one with the same id; false where it is full. Texts are cut to
    /// what is kept of them.
    pub fn put(&mut self, one: Officiated) -> bool {
        let one = one.clean();
        let known = self.matches.iter().position(|here| here.id == one.id);
        match known {
            Some(at) => {
                self.matches.remove(at);
            }
            None if self.matches.len() >= MAX_LOGGED => return false,
            None => {}
        }
        // Of two on one day the one that was written last stands first.
        let at = self.matches.iter().position(|here| here.day <= one.day);
        self.matches.insert(at.unwrap_or(self.matches.len()), one);
        true
    }

    /// Begins a match and says its id; a slip of the thumb leaves no second one, since that of the same day into
    /// which nothing was written is taken up again. None where it is full.
    pub fn begin(&mut self, new: Officiated) -> Option<String> {
        let new = new.clean();
        let id = new.id.clone();
        let says_as_much = |here: &&Officiated| {
            let here = Officiated {
                id: id.clone(),
                ..(*here).clone()
            };
            here == new
        };
        match self.matches.iter().find(says_as_much) {
            Some(untouched) => Some(untouched.id.clone()),
            None => self.put(new).then_some(id),
        }
    }

    /// Changes one thing in a match and nothing else: whatever another page has written into it meanwhile stays.
    /// `mine` is the match as it was read here; it becomes what is kept. False where it is full.
    pub fn change(&mut self, mine: &mut Officiated, change: impl FnOnce(&mut Officiated)) -> bool {
        if let Some(here) = self.of_id(&mine.id) {
            *mine = here.clone();
        }
        change(mine);
        self.put(mine.clone())
    }

    /// Takes a match out.
    pub fn remove(&mut self, id: &str) {
        self.matches.retain(|one| one.id != id);
    }

    /// Sets a goal; false where it is none, is there already, or there are too many.
    pub fn set_goal(&mut self, goal: Goal) -> bool {
        let Some(goal) = goal.clean() else {
            return false;
        };
        let known = self.goals.iter().any(|here| here.is_same(&goal));
        if known || self.goals.len() >= MAX_GOALS {
            return false;
        }
        self.goals.push(goal);
        true
    }

    /// Takes a goal out, by its place.
    pub fn drop_goal(&mut self, place: usize) {
        if place < self.goals.len() {
            self.goals.remove(place);
        }
    }

    /// Ticks a task off, or no more.
    pub fn tick(&mut self, place: usize, on: Option<Day>) {
        if let Some(Goal {
            kind: GoalKind::Task { done, .. },
            ..
        }) = self.goals.get_mut(place)
        {
            *done = on;
        }
    }

    /// How far a goal is.
    #[must_use]
    pub fn progress(&self, goal: &Goal) -> Progress {
        match &goal.kind {
            GoalKind::Task { done, .. } => Progress {
                done: u16::from(done.is_some()),
                of: 1,
            },
            GoalKind::Matches { duty, count } => {
                let counts = |one: &&Officiated| {
                    duty.is_none_or(|duty| duty == one.duty)
                        && goal.since.as_ref().is_none_or(|since| *since <= one.day)
                        && goal.until.as_ref().is_none_or(|until| one.day <= *until)
                };
                let done = self.matches.iter().filter(counts).count();
                Progress {
                    done: u16::try_from(done).unwrap_or(u16::MAX).min(*count),
                    of: *count,
                }
            }
        }
    }

    /// What was to be tried next time, by the latest match that says so.
    #[must_use]
    pub fn to_try(&self) -> Option<&Officiated> {
        // What an older match said is out of date once a later one was talked about.
        let talked = self
            .matches
            .iter()
            .find(|one| !one.talk.is_empty() || !one.next.is_empty());
        talked.filter(|one| !one.next.is_empty())
    }

    /// How many matches in each role, the roles without one left out.
    #[must_use]
    pub fn by_duty(&self) -> Vec<(Duty, usize)> {
        let count = |duty| self.matches.iter().filter(|one| one.duty == duty).count();
        let all = Duty::ALL.into_iter().map(|duty| (duty, count(duty)));
        all.filter(|(_, count)| *count > 0).collect()
    }

    /// Lays another logbook beside this: what is not here yet comes in, what is here stays as it is. Says how many
    /// matches and goals came.
    pub fn merge(&mut self, other: Logbook) -> (usize, usize) {
        // The oldest first, so that those of one day keep their order.
        let new = other.matches.into_iter().rev();
        let matches = new
            .filter(|one| self.of_id(&one.id).is_none())
            .collect::<Vec<_>>();
        let came = matches
            .into_iter()
            .filter(|one| self.put(one.clone()))
            .count();
        let goals = other
            .goals
            .into_iter()
            .filter(|goal| self.set_goal(goal.clone()));
        (came, goals.count())
    }
}

impl Officiated {
    fn clean(self) -> Officiated {
        Officiated {
            level: short(&self.level),
            teams: short(&self.teams),
            talk: long(&self.talk),
            next: long(&self.next),
            ..self
        }
    }
}

impl Goal {
    /// Texts cut to what is kept of them; none where nothing is to be reached.
    fn clean(self) -> Option<Goal> {
        let kind = match self.kind {
            GoalKind::Matches { count: 0, .. } => return None,
            kind @ GoalKind::Matches { .. } => kind,
            GoalKind::Task { words, done } => {
                let words = short(&words);
                if words.is_empty() {
                    return None;
                }
                GoalKind::Task { words, done }
            }
        };
        Some(Goal {
            kind,
            from: short(&self.from),
            ..self
        })
    }

    /// Whether another one wants the same, however far it is.
    fn is_same(&self, other: &Goal) -> bool {
        let wanted = |kind: &GoalKind| match kind {
            GoalKind::Matches { duty, count } => (*duty, *count, None),
            GoalKind::Task { words, .. } => (None, 0, Some(words.clone())),
        };
        wanted(&self.kind) == wanted(&other.kind)
            && (&self.since, &self.until, &self.from) == (&other.since, &other.until, &other.from)
    }
}

fn short(text: &str) -> String {
    super::observed::clean(text, SHORT_LETTERS)
}

/// What was talked about may have lines.
fn long(text: &str) -> String {
    let lines = text
        .trim()
        .lines()
        .map(|line| super::plain(line).trim_end().to_owned());
    let text = lines.collect::<Vec<_>>().join("\n");
    text.chars()
        .take(TALK_LETTERS)
        .collect::<String>()
        .trim()
        .to_owned()
}
