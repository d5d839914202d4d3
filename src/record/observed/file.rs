//! The notes as a file, and read back with whatever can be read.

use std::borrow::Cow;

use super::{
    clean, Event, NoteKind, Observation, Observed, MAX_EVENTS, NOTE_LETTERS, TEAM_LETTERS,
};
use rules::{ByTeam, Team};
use serde::{Deserialize, Serialize};
use serde_json::Value;

/// What the file says of itself.
pub const OBSERVED_NAME: &str = "volleyball-observer";
/// The version this program writes and reads.
const VERSION: u64 = 1;
/// A longer text is not read: as many events as there may be, each with as many words.
const MAX_BYTES: usize = 1024 * 1024;
/// The most letters of an id.
const ID_LETTERS: usize = 64;

/// What reading such a file gave.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ObservedReading {
    /// The notes, and how many events of them could not be read.
    Notes(Box<Observed>, usize),
    /// It was written by a newer version of the program.
    Newer,
    /// It is no such file, or too long for one.
    Foreign,
}

/// The line before the events.
#[derive(Serialize, Deserialize)]
pub(super) struct Head {
    began: i64,
    #[serde(default, skip_serializing_if = "Names::are_empty")]
    teams: Names,
}

#[derive(Default, Serialize, Deserialize)]
struct Names {
    #[serde(rename = "A", default)]
    a: String,
    #[serde(rename = "B", default)]
    b: String,
}

impl Names {
    fn are_empty(&self) -> bool {
        self.a.is_empty() && self.b.is_empty()
    }
}

/// An event as it stands in a file.
#[derive(Serialize, Deserialize)]
struct WrittenEvent<'a> {
    at: u32,
    kind: Cow<'a, str>,
    #[serde(skip_serializing_if = "Option::is_none")]
    won_by: Option<Cow<'a, str>>,
    #[serde(skip_serializing_if = "Option::is_none")]
    words: Option<Cow<'a, str>>,
}

#[derive(Serialize)]
struct Written<'a> {
    log: &'static str,
    version: u64,
    id: &'a str,
    #[serde(flatten)]
    head: Head,
    events: Vec<WrittenEvent<'a>>,
}

/// The same as it is found: one bad event does not hide the others.
#[derive(Deserialize)]
struct Found {
    log: String,
    version: u64,
    #[serde(default)]
    id: String,
    #[serde(flatten)]
    rest: Value,
}

const RALLY: &str = "rally";
const SET: &str = "set";

impl Observed {
    /// As a file.
    #[must_use]
    pub fn write(&self) -> String {
        let written = Written {
            log: OBSERVED_NAME,
            version: VERSION,
            id: &self.id,
            head: self.head(),
            events: self.events.iter().map(WrittenEvent::of).collect(),
        };
        text(&written)
    }

    /// Reads a file.
    #[must_use]
    pub fn read(given: &str) -> ObservedReading {
        let given = given.trim_start_matches('\u{feff}');
        if given.len() > MAX_BYTES {
            return ObservedReading::Foreign;
        }
        let Ok(found) = serde_json::from_str::<Found>(given) else {
            return ObservedReading::Foreign;
        };
        if found.log != OBSERVED_NAME {
            return ObservedReading::Foreign;
        }
        if found.version > VERSION {
            return ObservedReading::Newer;
        }
        let Ok(head) = Head::deserialize(&found.rest) else {
            return ObservedReading::Foreign;
        };
        let events = found.rest.get("events").and_then(Value::as_array);
        let events = events.map_or(&[][..], Vec::as_slice);
        let mut observed = Observed::of(&found.id, head);
        for event in events.iter().take(MAX_EVENTS) {
            if let Some(event) = WrittenEvent::deserialize(event).ok().and_then(|e| e.read()) {
                observed.events.push(event);
            }
        }
        let left_out = events.len() - observed.events.len();
        // What was tapped later stands later.
        observed.events.sort_by_key(|event| event.at);
        ObservedReading::Notes(Box::new(observed), left_out)
    }

    fn head(&self) -> Head {
        Head {
            began: self.began,
            teams: Names {
                a: self.teams.a.clone(),
                b: self.teams.b.clone(),
            },
        }
    }

    fn of(id: &str, head: Head) -> Observed {
        Observed {
            id: clean(id, ID_LETTERS),
            began: head.began,
            teams: ByTeam {
                a: clean(&head.teams.a, TEAM_LETTERS),
                b: clean(&head.teams.b, TEAM_LETTERS),
            },
            events: Vec::new(),
        }
    }

    /// The head and each event as a line of its own, for the packer.
    pub(super) fn lines(&self) -> Vec<String> {
        let events = self
            .events
            .iter()
            .map(|event| text(&WrittenEvent::of(event)));
        std::iter::once(text(&self.head())).chain(events).collect()
    }

    /// The way back; none where a line is none of ours.
    pub(super) fn of_lines(id: &str, lines: &[String]) -> Option<Observed> {
        let (head, events) = lines.split_first()?;
        if events.len() > MAX_EVENTS {
            return None;
        }
        let mut observed = Observed::of(id, serde_json::from_str(head).ok()?);
        for line in events {
            let event: WrittenEvent = serde_json::from_str(line).ok()?;
            observed.events.push(event.read()?);
        }
        Some(observed)
    }
}

impl<'a> WrittenEvent<'a> {
    fn of(event: &'a Event) -> WrittenEvent<'a> {
        let (kind, won_by, words) = match &event.seen {
            Observation::Rally { won_by } => (RALLY, Some(won_by.letter()), None),
            Observation::NewSet => (SET, None, None),
            Observation::Note { kind, words } => (
                kind.code(),
                None,
                (!words.is_empty()).then_some(words.as_str()),
            ),
        };
        WrittenEvent {
            at: event.at,
            kind: kind.into(),
            won_by: won_by.map(Cow::from),
            words: words.map(Cow::from),
        }
    }

    fn read(&self) -> Option<Event> {
        let seen = match self.kind.as_ref() {
            RALLY => Observation::Rally {
                won_by: Team::BOTH
                    .into_iter()
                    .find(|team| Some(team.letter()) == self.won_by.as_deref())?,
            },
            SET => Observation::NewSet,
            note => Observation::Note {
                kind: NoteKind::from_code(note)?,
                words: clean(self.words.as_deref().unwrap_or_default(), NOTE_LETTERS),
            },
        };
        Some(Event { at: self.at, seen })
    }
}

/// Plain structs with string keys cannot fail to be written.
fn text(value: &impl Serialize) -> String {
    serde_json::to_string(value).unwrap_or_default()
}
