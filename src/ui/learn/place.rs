//! The learning pages and their addresses.

use learn::Topic;
use rules::Signal;
use text::learn as words;

/// A learning page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// What there is.
    Book,
    /// All decisions.
    Decisions,
    /// One of them.
    Decision(Topic),
    /// All signals.
    Signals,
    /// One of them.
    Signal(Signal),
}

/// The number of a signal, which two of them share.
const fn code_of(signal: Signal) -> &'static str {
    match signal {
        Signal::DelayPenalty => "25-red",
        _ => signal.number(),
    }
}

impl Place {
    /// The part of the address behind `#/learn/`.
    pub fn code(self) -> String {
        match self {
            Place::Book => String::new(),
            Place::Decisions => "decisions".into(),
            Place::Decision(topic) => format!("decisions/{}", topic.code()),
            Place::Signals => "signals".into(),
            Place::Signal(signal) => format!("signals/{}", code_of(signal)),
        }
    }

    /// The page of such a part; what is above it where there is no such page.
    pub fn of_code(code: &str) -> Place {
        let (above, below) = code.split_once('/').unwrap_or((code, ""));
        match above {
            "decisions" => Topic::from_code(below).map_or(Place::Decisions, Place::Decision),
            "signals" => Signal::ALL
                .into_iter()
                .find(|signal| code_of(*signal) == below)
                .map_or(Place::Signals, Place::Signal),
            _ => Place::Book,
        }
    }

    /// What the bar and the window call it.
    pub fn name(self) -> &'static str {
        match self {
            Place::Book => text::LEARN,
            Place::Decisions => words::DECISIONS,
            Place::Decision(topic) => words::topic(topic),
            Place::Signals => text::SIGNALS,
            Place::Signal(signal) => text::signal(signal),
        }
    }
}
