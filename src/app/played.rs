//! When a recorded match was played, and how long it took: for the logbook of whoever officiated it.

use game::{Kind, Timeline};

/// In a minute, in milliseconds.
const MINUTE_MS: i64 = 60_000;

/// When a match was played.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Played {
    /// Its beginning, in milliseconds since 1970; of a match that nobody timed none. A sheet that was mended a day
    /// later does not change the day.
    pub at: Option<i64>,
    /// From the first set to the last rally, in minutes.
    pub minutes: Option<u16>,
}

impl Played {
    /// As a record has it.
    #[must_use]
    pub fn of(timeline: &Timeline) -> Played {
        let begins = |kind: &Kind| matches!(kind, Kind::BeginSet | Kind::Rally { .. });
        let first = timeline.entries().iter().find(|entry| begins(&entry.kind));
        let began = first.and_then(|entry| entry.at);
        let ended = timeline.last_rally().and_then(|rally| rally.at);
        let took = began.zip(ended).map(|(began, ended)| ended - began);
        let minutes = took.filter(|took| *took >= 0);
        let any = || timeline.entries().iter().find_map(|entry| entry.at);
        Played {
            at: began.or_else(any),
            minutes: minutes
                .and_then(|took| u16::try_from((took + MINUTE_MS / 2) / MINUTE_MS).ok()),
        }
    }
}
