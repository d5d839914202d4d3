//! The words of watching a referee: what is tapped, the notes afterwards, and what they say beside the match.

use app::machine::LocalTime;
use record::{NoteKind, Observation, Standing};
use reports::observed::{At, Beside, By};
use rules::{ByTeam, Score, Team};

/// Title of the page.
pub const OBSERVER: &str = "Watch a referee";
/// What is on it.
pub const OBSERVER_MORE: &str = "Note moments with one tap. Talk about them after the match.";
/// How it goes.
pub const OBSERVER_HOW: [&str; 4] = [
    "Watch from a place where you see the referee. Do not disturb the team.",
    "Tap what you see. You can add words later.",
    "Tap the team that wins a rally, and each note knows its rally. You may leave that out.",
    "After the match show the code to the referee. Only the referee keeps the notes.",
];
/// Names for the teams.
pub const OBSERVER_TEAMS: &str = "What do you call the teams? (optional)";
/// Begins.
pub const OBSERVER_BEGIN: &str = "Begin";
/// Notes that are here.
pub const OBSERVER_HERE: &str = "Notes on this phone";
/// Back to tapping.
pub const OBSERVER_GO_ON: &str = "Continue noting";
/// From tapping to the list.
pub const OBSERVER_STOP: &str = "Look at the notes";
/// A set is over.
pub const NEXT_SET: &str = "Next set";
/// The teams stand the other way round.
pub const SWAP_SIDES: &str = "Swap sides";
/// Before the first tap.
pub const NOTHING_NOTED: &str = "Nothing noted yet.";
/// There are no notes of this address.
pub const NO_SUCH_NOTES: &str = "These notes are not on this phone any more.";
/// The phone was full.
pub const NOTES_NOT_KEPT: &str =
    "This phone could not store the last tap. Show the code before you close this page.";
/// There are too many.
pub const NOTES_FULL: &str = "There is no room for more taps in these notes.";
/// The field of a note.
pub const NOTE_WORDS: &str = "In words (optional)";
/// Takes a note away.
pub const NOTE_REMOVE: &str = "Delete this note";
/// Asked before.
pub const NOTE_REMOVE_ASK: &str = "Delete this note and its words?";
/// Heading of the hand-over.
pub const NOTES_HAND_OVER: &str = "Give the notes to the referee";
/// How.
pub const NOTES_HAND_OVER_MORE: &str =
    "The referee opens the match sheet, then Review, then \u{201c}Scan the notes\u{201d}. Or send a file.";
/// As a file.
pub const NOTES_FILE: &str = "Share as a file";
/// Forgets them.
pub const NOTES_DELETE: &str = "Delete these notes";
/// Asked before.
pub const NOTES_DELETE_ASK: &str = "Delete these notes from this phone for good?";

/// Heading in the review.
pub const OBSERVED: &str = "What an observer noted";
/// Nothing came.
pub const OBSERVED_NONE: &str =
    "Did somebody watch you with this app? Scan their code, or open their file on the start screen.";
/// By camera.
pub const OBSERVED_SCAN: &str = "Scan the notes";
/// Other ones.
pub const OBSERVED_OTHER: &str =
    "There are other notes on this phone. They do not seem to be of this match.";
/// Shows them all the same.
pub const OBSERVED_ANYWAY: &str = "Show them here anyway";
/// To the notes themselves.
pub const OBSERVED_OPEN: &str = "Open the notes";
/// Where a note has no place.
pub const NO_PLACE: &str = "Not found in this match";

/// What a note is called, on its button too.
#[must_use]
pub const fn note(kind: NoteKind) -> &'static str {
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

/// What a team is called where the observer gave it no name.
#[must_use]
pub fn observed_team(names: &ByTeam<String>, team: Team) -> String {
    match (names[team].as_str(), team) {
        ("", Team::A) => "Team 1".to_owned(),
        ("", Team::B) => "Team 2".to_owned(),
        (name, _) => name.to_owned(),
    }
}

/// The label of a field for such a name.
#[must_use]
pub const fn team_field(team: Team) -> &'static str {
    match team {
        Team::A => "The team on your left",
        Team::B => "The team on your right",
    }
}

/// What a tap on a half does.
#[must_use]
pub fn wins_rally(name: &str, points: u16) -> String {
    format!("{name} wins the rally. {points} so far.")
}

/// The set that is watched.
#[must_use]
pub fn watched_set(set: u8) -> String {
    format!("Set {set}")
}

fn points(score: Score) -> String {
    format!("{}:{}", score.a, score.b)
}

/// The last tap; `after` is how it stands with it.
#[must_use]
pub fn last_tap(seen: &Observation, after: Standing, names: &ByTeam<String>) -> String {
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

/// Where a note stands.
#[must_use]
pub fn noted_at(standing: Standing, at: LocalTime) -> String {
    let time = crate::time_of(at);
    if standing.rallies == 0 && standing.set == 1 {
        time
    } else {
        format!("Set {} at {}, {time}", standing.set, points(standing.score))
    }
}

/// Notes in a list.
#[must_use]
pub fn notes_of(began: LocalTime, names: &ByTeam<String>, notes: usize) -> String {
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

/// How many notes.
#[must_use]
pub fn note_count(notes: usize) -> String {
    match notes {
        1 => "1 note".to_owned(),
        n => format!("{n} notes"),
    }
}

/// The name of their file.
#[must_use]
pub fn notes_file(day: &str) -> String {
    format!("observer-{day}.json")
}

/// How notes were laid beside a match.
#[must_use]
pub fn laid_by(beside: &Beside) -> String {
    let clock = match beside.clock {
        Some(seconds) if seconds.abs() >= 60 => {
            let minutes = (seconds.abs() + 30) / 60;
            let unit = if minutes == 1 { "minute" } else { "minutes" };
            let way = if seconds > 0 { "ahead" } else { "behind" };
            format!(" The clock of the observer is {minutes} {unit} {way}. That is allowed for.")
        }
        Some(_) | None => String::new(),
    };
    let by = if beside.rallies == 0 {
        "The observer kept no score, so the time alone says where each note belongs."
    } else {
        "Score and time say where each note belongs."
    };
    format!("{by}{clock}")
}

/// The point of a note.
#[must_use]
pub fn laid_at(at: At, by: By) -> String {
    let place = format!("Set {}, {}", at.set, at.score.marked());
    match by {
        By::Both => place,
        By::Score => format!("{place} (by the score alone)"),
        By::Time => format!("{place} (by the time alone)"),
    }
}
