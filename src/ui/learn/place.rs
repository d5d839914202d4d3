//! The learning pages and their addresses.

use learn::Topic;
use rules::Signal;
use text::learn::{self as words, Care, Role};

/// A learning page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Place {
    /// What there is.
    Book,
    /// The court.
    Court,
    /// All jobs.
    Roles,
    /// One of them.
    Role(Role),
    /// Two of them, in large print.
    ForTheTable,
    /// Everything to take care of.
    Cares,
    /// One thing of it.
    Care(Care),
    /// All decisions.
    Decisions,
    /// One of them.
    Decision(Topic),
    /// All signals.
    Signals,
    /// One of them.
    Signal(Signal),
    /// The rally trainer.
    Trainer,
    /// Scenes for a class.
    Lesson,
    /// Practice matches.
    Practice,
    /// What happened in one, beside what was entered.
    Compared(String),
    /// Notes of observers.
    Observer,
    /// Somebody watches, and taps.
    Watch(String),
    /// What was tapped.
    Notes(String),
    /// The logbook.
    Logbook,
    /// A match in it.
    Logged(String),
    /// A goal that is set.
    NewGoal,
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
    pub fn code(&self) -> String {
        match self {
            Place::Book => String::new(),
            Place::Court => "court".into(),
            Place::Roles => "jobs".into(),
            Place::Role(role) => format!("jobs/{}", role.code()),
            Place::ForTheTable => "jobs/table".into(),
            Place::Cares => "safety".into(),
            Place::Care(care) => format!("safety/{}", care.code()),
            Place::Decisions => "decisions".into(),
            Place::Decision(topic) => format!("decisions/{}", topic.code()),
            Place::Signals => "signals".into(),
            Place::Signal(signal) => format!("signals/{}", code_of(*signal)),
            Place::Trainer => "trainer".into(),
            Place::Lesson => "trainer/lesson".into(),
            Place::Practice => "practice".into(),
            Place::Compared(id) => format!("practice/{id}"),
            Place::Observer => "observer".into(),
            Place::Watch(id) => format!("observer/watch/{id}"),
            Place::Notes(id) => format!("observer/notes/{id}"),
            Place::Logbook => "logbook".into(),
            Place::Logged(id) => format!("logbook/match/{id}"),
            Place::NewGoal => "logbook/goal".into(),
        }
    }

    /// The page of such a part; what is above it where there is no such page.
    pub fn of_code(code: &str) -> Place {
        let (above, below) = code.split_once('/').unwrap_or((code, ""));
        match above {
            "court" => Place::Court,
            "jobs" if below == "table" => Place::ForTheTable,
            "jobs" => Role::from_code(below).map_or(Place::Roles, Place::Role),
            "safety" => Care::from_code(below).map_or(Place::Cares, Place::Care),
            "decisions" => Topic::from_code(below).map_or(Place::Decisions, Place::Decision),
            "signals" => Signal::ALL
                .into_iter()
                .find(|signal| code_of(*signal) == below)
                .map_or(Place::Signals, Place::Signal),
            "trainer" if below == "lesson" => Place::Lesson,
            "trainer" => Place::Trainer,
            "practice" if !below.is_empty() => Place::Compared(below.to_owned()),
            "practice" => Place::Practice,
            "observer" => match below.split_once('/') {
                Some(("watch", id)) => Place::Watch(id.to_owned()),
                Some(("notes", id)) => Place::Notes(id.to_owned()),
                _ => Place::Observer,
            },
            "logbook" if below == "goal" => Place::NewGoal,
            "logbook" => match below.split_once('/') {
                Some(("match", id)) => Place::Logged(id.to_owned()),
                _ => Place::Logbook,
            },
            _ => Place::Book,
        }
    }

    /// What the bar and the window call it.
    pub fn name(&self) -> &'static str {
        match self {
            Place::Book => text::learn(),
            Place::Court => words::court(),
            Place::Roles => words::roles(),
            Place::Role(role) => words::role_name(*role),
            Place::ForTheTable => words::for_the_table(),
            Place::Cares => words::care(),
            Place::Care(care) => words::care_name(*care),
            Place::Decisions => words::decisions(),
            Place::Decision(topic) => words::topic(*topic),
            Place::Signals => text::signals(),
            Place::Signal(signal) => text::signal(*signal),
            Place::Trainer => words::trainer(),
            Place::Lesson => words::lesson(),
            Place::Practice | Place::Compared(_) => words::practice(),
            Place::Observer | Place::Watch(_) | Place::Notes(_) => words::observer(),
            Place::Logbook | Place::Logged(_) => words::logbook(),
            Place::NewGoal => words::set_goal(),
        }
    }
}
