//! What was practised, as it is kept and read back.

use super::{Learner, Practised, HARDER_AFTER, MAX_TIMES};
use learn::{Kind, Level};
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;

/// The version this program writes and reads.
const VERSION: u32 = 1;
/// A longer text is not read.
const MAX_BYTES: usize = 64 * 1024;

impl Learner {
    /// As it is kept.
    #[must_use]
    pub fn write(&self) -> String {
        let kinds = self.kinds.iter();
        let written = Written {
            learner: VERSION,
            kinds: rules::gather(kinds.map(|(kind, k)| (kind.code(), WrittenKind::of(k)))),
            times: &self.times,
        };
        // A plain struct with text keys cannot fail to be written.
        serde_json::to_string(&written).unwrap_or_default()
    }

    /// Whether a newer version of the program wrote this.
    #[must_use]
    pub fn is_newer(text: &str) -> bool {
        let found: Option<Found> = serde_json::from_str(text).ok();
        found.is_some_and(|found| found.learner > VERSION)
    }

    /// Reads what was kept; what cannot be read of it is left out, and a text of a newer version is not read.
    #[must_use]
    pub fn read(text: &str) -> Option<Learner> {
        if text.len() > MAX_BYTES {
            return None;
        }
        let found: Found = serde_json::from_str(text).ok()?;
        if found.learner != VERSION {
            return None;
        }
        let kind = |(code, value): (String, Value)| {
            let written: WrittenKind = serde_json::from_value(value).ok()?;
            Some((Kind::from_code(&code)?, written.read()?))
        };
        let time = |value: Value| u16::try_from(value.as_u64()?).ok();
        Some(Learner {
            kinds: rules::gather(found.kinds.into_iter().filter_map(kind)),
            times: found
                .times
                .into_iter()
                .filter_map(time)
                .take(MAX_TIMES)
                .collect(),
        })
    }
}

#[derive(Serialize)]
struct Written<'a> {
    learner: u32,
    kinds: BTreeMap<String, WrittenKind>,
    times: &'a [u16],
}

/// The same as it is found: one bad value does not hide the others.
#[derive(Deserialize)]
struct Found {
    learner: u32,
    #[serde(default)]
    kinds: BTreeMap<String, Value>,
    #[serde(default)]
    times: Vec<Value>,
}

#[derive(Serialize, Deserialize)]
struct WrittenKind {
    stability: f32,
    difficulty: f32,
    last: i64,
    due: i64,
    level: u8,
    row: u8,
    shown: u32,
    right: u32,
}

impl WrittenKind {
    fn of(known: &Practised) -> WrittenKind {
        WrittenKind {
            stability: known.stability,
            difficulty: known.difficulty,
            last: known.last,
            due: known.due,
            level: match known.level {
                Level::Clear => 0,
                Level::Close => 1,
                Level::Tight => 2,
            },
            row: known.row,
            shown: known.shown,
            right: known.right,
        }
    }

    /// None where it cannot have been written.
    fn read(&self) -> Option<Practised> {
        let sound = self.stability > 0.0
            && self.stability.is_finite()
            && (1.0..=10.0).contains(&self.difficulty)
            && self.right <= self.shown
            && self.row < HARDER_AFTER;
        sound.then_some(Practised {
            stability: self.stability,
            difficulty: self.difficulty,
            last: self.last,
            due: self.due,
            level: *Level::ALL.get(usize::from(self.level))?,
            row: self.row,
            shown: self.shown,
            right: self.right,
        })
    }
}
