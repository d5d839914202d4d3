//! The words of watching a referee: what is tapped, the notes afterwards, and what they say beside the match.

use crate::learn::observer::*;
use app::machine::LocalTime;
use record::{NoteKind, Observation, Standing};
use reports::observed::{At, Beside, By};
use rules::{ByTeam, Score, Team};

/// In English.
pub static WORDS: ObserverWords = ObserverWords {
    observer: "Watch a referee",
    observer_more: "Note moments with one tap. Talk about them after the match.",
    observer_how: [
        "Watch from a place where you see the referee. Do not disturb the team.",
        "Tap what you see. You can add words later.",
        "Tap the team that wins a rally, and each note knows its rally. If that is too much, tap \
         \u{201c}Next set\u{201d} between the sets at least.",
        "After the match show the code to the referee. Only the referee keeps the notes.",
    ],
    observer_teams: "What do you call the teams? (optional)",
    observer_begin: "Begin",
    observer_here: "Notes on this phone",
    observer_go_on: "Continue noting",
    observer_stop: "Look at the notes",
    next_set: "Next set",
    swap_sides: "Swap sides",
    nothing_noted: "Nothing noted yet.",
    no_such_notes: "These notes are not on this phone any more.",
    notes_not_kept:
        "This phone could not store the last tap. Show the code before you close this page.",
    notes_full: "There is no room for more taps in these notes.",
    note_words: "In words (optional)",
    note_remove: "Delete this note",
    note_remove_ask: "Delete this note and its words?",
    notes_hand_over: "Give the notes to the referee",
    notes_hand_over_more:
        "The referee opens the match sheet, then Review, then \u{201c}Scan the notes\u{201d}. Or \
         send a file.",
    notes_file_label: "Share as a file",
    notes_delete: "Delete these notes",
    notes_delete_ask: "Delete these notes from this phone for good?",
    observed: "What an observer noted",
    observed_none:
        "Did somebody watch you with this app? Scan their code, or open their file on the start \
         screen.",
    observed_scan: "Scan the notes",
    observed_other: "There are other notes on this phone. They do not seem to be of this match.",
    observed_anyway: "Show them here anyway",
    observed_open: "Open the notes",
    no_place: "Not found in this match",
    note,
    observed_team,
    team_field,
    wins_rally,
    watched_set,
    last_tap,
    noted_at,
    notes_of,
    note_count,
    notes_file,
    laid_by,
    laid_at,
};

fn note(kind: NoteKind) -> &'static str {
    match kind {
        NoteKind::LateWhistle => "Late whistle",
        NoteKind::TwoSignals => "Two signals at once",
        NoteKind::UnclearSignal => "Signal unclear",
        NoteKind::WrongArm => "Wrong arm",
        NoteKind::MissedFault => "Fault missed",
        NoteKind::GoodDecision => "Good decision",
        NoteKind::GoodHelp => "Good help by the team",
        NoteKind::GoodCalm => "Good calm",
    }
}

fn observed_team(names: &ByTeam<String>, team: Team) -> String {
    match (names[team].as_str(), team) {
        ("", Team::A) => "Team 1".to_owned(),
        ("", Team::B) => "Team 2".to_owned(),
        (name, _) => name.to_owned(),
    }
}

fn team_field(team: Team) -> &'static str {
    match team {
        Team::A => "The team on your left",
        Team::B => "The team on your right",
    }
}

fn wins_rally(name: &str, points: u16) -> String {
    format!("{name} wins the rally. {points} so far.")
}

fn watched_set(set: u8) -> String {
    format!("Set {set}")
}

fn points(score: Score) -> String {
    format!("{}:{}", score.a, score.b)
}

fn last_tap(seen: &Observation, after: Standing, names: &ByTeam<String>) -> String {
    match seen {
        Observation::Rally { won_by } => format!(
            "Point for {}, {}",
            observed_team(names, *won_by),
            points(after.score)
        ),
        Observation::NewSet => format!("Set {} begins", after.set),
        Observation::Note { kind, .. } => note(*kind).to_owned(),
    }
}

fn noted_at(standing: Standing, at: LocalTime) -> String {
    let time = crate::time_of(at);
    if standing.rallies == 0 && standing.set == 1 {
        time
    } else {
        format!("Set {} at {}, {time}", standing.set, points(standing.score))
    }
}

fn notes_of(began: LocalTime, names: &ByTeam<String>, notes: usize) -> String {
    let named = !names.a.is_empty() || !names.b.is_empty();
    let teams = if named {
        format!(
            "{} \u{2013} {}, ",
            observed_team(names, Team::A),
            observed_team(names, Team::B)
        )
    } else {
        String::new()
    };
    format!("{teams}{}, {}", crate::when(Some(began)), note_count(notes))
}

fn note_count(notes: usize) -> String {
    match notes {
        1 => "1 note".to_owned(),
        n => format!("{n} notes"),
    }
}

fn notes_file(day: &str) -> String {
    format!("observer-{day}.json")
}

fn laid_by(beside: &Beside) -> String {
    let clock = match beside.clock {
        Some(seconds) if seconds.abs() >= 60 => {
            let minutes = (seconds.abs() + 30) / 60;
            let unit = if minutes == 1 { "minute" } else { "minutes" };
            let way = if seconds > 0 { "ahead" } else { "behind" };
            format!(" The clock of the observer is {minutes} {unit} {way}. That is allowed for.")
        }
        Some(_) | None => String::new(),
    };
    let by = match (beside.keeps_score(), beside.clock) {
        (true, _) => "Score and time say where each note belongs.",
        (false, Some(_)) => {
            "The observer kept no score. The time says where each note belongs, and the pauses \
             between sets show how the clocks go. It can be a few rallies off."
        }
        (false, None) => {
            "The observer kept no score. The time alone says where each note belongs. Check that \
             both phones show the same time."
        }
    };
    format!("{by}{clock}")
}

fn laid_at(at: At, by: By) -> String {
    let place = format!("Set {}, {}", at.set, at.score.marked());
    match by {
        By::Both => place,
        By::Score => format!("{place} (by the score alone)"),
        By::Time => format!("{place} (by the time alone)"),
    }
}
