//! What somebody noted who watched a referee: moments of a match, and the rallies where the score was kept.
//!
//! Everything is an event in the order in which it was tapped, so that the last tap can be undone and a note
//! knows how many rallies went before it. Nothing in it names a person.

mod file;
mod packed;

pub use file::{ObservedReading, OBSERVED_NAME};
pub use packed::OBSERVED_VERSION;

use rules::{ByTeam, Score, Team};

/// More events are not kept: five sets have some 250 rallies.
pub const MAX_EVENTS: usize = 1_000;
/// The most letters of the words of a note.
pub const NOTE_LETTERS: usize = 200;
/// The most letters of what a team is called.
pub const TEAM_LETTERS: usize = 30;

/// What an observer can note with one tap.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum NoteKind {
    /// The whistle came late.
    LateWhistle,
    /// Two signals were given at once.
    TwoSignals,
    /// A signal could not be made out.
    UnclearSignal,
    /// The arm was that of the wrong side.
    WrongArm,
    /// A fault was not called.
    MissedFault,
    /// A hard decision was right.
    GoodDecision,
    /// The duty team helped well.
    GoodHelp,
    /// Calm where it was needed.
    GoodCalm,
}

// What can get better first.
rules::codes!(NoteKind {
    LateWhistle = "late_whistle",
    TwoSignals = "two_signals",
    UnclearSignal = "unclear_signal",
    WrongArm = "wrong_arm",
    MissedFault = "missed_fault",
    GoodDecision = "good_decision",
    GoodHelp = "good_help",
    GoodCalm = "good_calm",
});

impl NoteKind {
    /// Whether it says what went well.
    #[must_use]
    pub const fn is_good(self) -> bool {
        match self {
            NoteKind::GoodDecision | NoteKind::GoodHelp | NoteKind::GoodCalm => true,
            NoteKind::LateWhistle
            | NoteKind::TwoSignals
            | NoteKind::UnclearSignal
            | NoteKind::WrongArm
            | NoteKind::MissedFault => false,
        }
    }
}

/// What was tapped.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Observation {
    /// A rally is over.
    Rally {
        /// Who won it.
        won_by: Team,
    },
    /// A set is over, and the next one counts from 0.
    NewSet,
    /// A moment to talk about.
    Note {
        /// What it was.
        kind: NoteKind,
        /// What was added in words; may be empty.
        words: String,
    },
}

/// One tap.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Event {
    /// Seconds since the notes were begun.
    pub at: u32,
    /// What it was.
    pub seen: Observation,
}

/// The notes on one match.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Observed {
    /// Any text that no other notes have.
    pub id: String,
    /// When they were begun, in milliseconds since 1970 by the observer's clock.
    pub began: i64,
    /// What the observer calls the teams; may be empty. Nobody knows yet which of them is A in the record.
    pub teams: ByTeam<String>,
    /// What was tapped, in its order.
    pub events: Vec<Event>,
}

/// Where a note stands by the score that the observer kept.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Standing {
    /// The set, from 1.
    pub set: u8,
    /// The score in it.
    pub score: Score,
    /// How many rallies were tapped before, in all sets.
    pub rallies: usize,
}

impl Observed {
    /// Empty notes that begin now.
    #[must_use]
    pub fn begin(id: &str, now: i64) -> Observed {
        Observed {
            id: id.to_owned(),
            began: now,
            ..Observed::default()
        }
    }

    /// Adds a tap, `now` in milliseconds since 1970; false where there are more than anybody taps. A clock that
    /// was set back does not turn the order round.
    pub fn add(&mut self, seen: Observation, now: i64) -> bool {
        if self.events.len() >= MAX_EVENTS {
            return false;
        }
        let last = self.events.last().map_or(0, |event| event.at);
        let gone = (now - self.began).div_euclid(1000);
        let at = u32::try_from(gone.max(0)).unwrap_or(u32::MAX).max(last);
        self.events.push(Event { at, seen });
        true
    }

    /// Takes the last tap back.
    pub fn undo(&mut self) -> Option<Event> {
        self.events.pop()
    }

    /// The notes with the places of their events, the oldest first.
    pub fn notes(&self) -> impl DoubleEndedIterator<Item = (usize, NoteKind, &str)> {
        let events = self.events.iter().enumerate();
        events.filter_map(|(place, event)| match &event.seen {
            Observation::Note { kind, words } => Some((place, *kind, words.as_str())),
            Observation::Rally { .. } | Observation::NewSet => None,
        })
    }

    /// Puts words to a note.
    pub fn say(&mut self, place: usize, said: &str) {
        if let Some(Event {
            seen: Observation::Note { words, .. },
            ..
        }) = self.events.get_mut(place)
        {
            *words = clean(said, NOTE_LETTERS);
        }
    }

    /// Takes a note away.
    pub fn remove(&mut self, place: usize) {
        let is_note = |event: &Event| matches!(event.seen, Observation::Note { .. });
        if self.events.get(place).is_some_and(is_note) {
            self.events.remove(place);
        }
    }

    /// Calls the teams something.
    pub fn call(&mut self, team: Team, name: &str) {
        self.teams[team] = clean(name, TEAM_LETTERS);
    }

    /// The score before an event; of all events for the number of them.
    #[must_use]
    pub fn standing(&self, place: usize) -> Standing {
        let mut standing = Standing {
            set: 1,
            ..Standing::default()
        };
        for event in self.events.iter().take(place) {
            match event.seen {
                Observation::Rally { won_by } => {
                    standing.score = standing.score.plus(won_by);
                    standing.rallies += 1;
                }
                Observation::NewSet => {
                    standing.set = standing.set.saturating_add(1);
                    standing.score = Score::default();
                }
                Observation::Note { .. } => {}
            }
        }
        standing
    }

    /// The rallies with their moments.
    pub fn rallies(&self) -> impl Iterator<Item = (u32, Team)> + '_ {
        self.events.iter().filter_map(|event| match event.seen {
            Observation::Rally { won_by } => Some((event.at, won_by)),
            Observation::NewSet | Observation::Note { .. } => None,
        })
    }

    /// How far the score was kept: seconds since the notes were begun.
    fn last_of_score(&self) -> Option<u32> {
        self.rallies().map(|(at, _)| at).last()
    }

    /// Puts the same notes beside these as another phone keeps them: either may have got notes and words since they
    /// parted. No note goes, and of two wordings of one the longer stays. The score is that of whoever tapped it
    /// longer, as a whole: rallies that were taken back on one phone would come again from the other.
    pub fn merge(&mut self, other: Observed) {
        let (mut merged, beside) = if other.last_of_score() > self.last_of_score() {
            (other, std::mem::take(self))
        } else {
            (std::mem::take(self), other)
        };
        for team in Team::BOTH {
            if merged.teams[team].is_empty() {
                merged.teams[team].clone_from(&beside.teams[team]);
            }
        }
        for event in beside.events {
            let Observation::Note { kind, words } = &event.seen else {
                continue;
            };
            let same = merged
                .notes()
                .find(|(place, of, _)| (merged.events[*place].at, of) == (event.at, kind));
            match same {
                Some((place, _, here)) if here.len() < words.len() => merged.say(place, words),
                Some(_) => {}
                None if merged.events.len() < MAX_EVENTS => {
                    let place = merged.events.partition_point(|here| here.at <= event.at);
                    merged.events.insert(place, event);
                }
                None => {}
            }
        }
        *self = merged;
    }

    /// Whether anything was tapped.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.events.is_empty()
    }
}

/// A text as it is kept: one line, nothing in it that writes nothing, and no more than so many letters.
pub(super) fn clean(text: &str, letters: usize) -> String {
    let text = super::plain(text);
    let text: String = text.trim().chars().take(letters).collect();
    text.trim_end().to_owned()
}
