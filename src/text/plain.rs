//! What is written the same way in every language.

use app::language::Language;
use app::machine::LocalTime;
use game::State;
use rules::{Shirt, Team};

/// The name of the program.
pub const APP: &str = "Dutystand";

/// A language by its own name, so that whoever speaks it finds it.
#[must_use]
pub const fn language_name(language: Language) -> &'static str {
    match language {
        Language::English => "English",
        Language::Spanish => "Espa\u{f1}ol",
    }
}

/// The title of the window.
#[must_use]
pub fn page_title(heading: &str) -> String {
    if heading == APP {
        APP.into()
    } else {
        format!("{heading} – {APP}")
    }
}

/// A button about one match of a list.
#[must_use]
pub fn of_teams(what: &str, teams: &str) -> String {
    format!("{what} {teams}")
}

/// Who stands where: numbers in the order of the places.
#[must_use]
pub fn by_places(numbers: &[Shirt]) -> String {
    let numbers: Vec<String> = numbers.iter().map(ToString::to_string).collect();
    numbers.join(" ")
}

/// A date and a time.
#[must_use]
pub fn when(at: Option<LocalTime>) -> String {
    at.map_or_else(String::new, |at| format!("{}, {}", day_of(at), time_of(at)))
}

/// The day of a moment; written so, days sort as text.
#[must_use]
pub fn day_of(t: LocalTime) -> String {
    format!("{:04}-{:02}-{:02}", t.year, t.month, t.day)
}

/// The time of the day of a moment.
#[must_use]
pub fn time_of(t: LocalTime) -> String {
    format!("{:02}:{:02}", t.hour, t.minute)
}

/// The time of the day of an entry, to the second.
#[must_use]
pub fn clock_time(at: Option<LocalTime>) -> String {
    at.map_or_else(String::new, |at| {
        format!("{}:{:02}", time_of(at), at.second)
    })
}

/// Minutes and seconds.
#[must_use]
pub fn minutes(seconds: i64) -> String {
    format!("{}:{:02}", seconds / 60, seconds % 60)
}

/// The name of an exported file: the teams, never a person.
#[must_use]
pub fn file_name(state: &State, ending: &str) -> String {
    let plain = |team: Team| -> String {
        let name = state.name(team).to_lowercase();
        let plain: String = name
            .chars()
            .map(|c| if c.is_alphanumeric() { c } else { '-' })
            .take(24)
            .collect();
        plain.trim_matches('-').to_owned()
    };
    format!("match-{}-{}.{ending}", plain(Team::A), plain(Team::B))
}
