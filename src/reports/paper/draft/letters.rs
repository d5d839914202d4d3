//! The letters of the sanctions box: what was given stands in the column of a warning, a penalty, an
//! expulsion or a disqualification; in it the number of a player, the letters of one of the staff, or D for a
//! delay (printed text of the international score sheet; score-sheet practice as taught to scorers).

use game::{Level, SanctionKind, Who};
use rules::Shirt;

/// A first improper request is crossed off beside the box; the letter for it is our own.
const IMPROPER: &str = "I";
const DELAY: &str = "D";

const LEVELS: [(&str, Level); 4] = [
    ("W", Level::Warning),
    ("P", Level::Penalty),
    ("E", Level::Expulsion),
    ("D", Level::Disqualification),
];

/// Roles as the team list of the app names them.
const STAFF: [(&str, &str); 4] = [
    ("C", "coach"),
    ("AC", "assistant coach"),
    ("T", "therapist"),
    ("M", "doctor"),
];

/// The letter of a sanction in what was typed last.
pub(super) fn kind(typed: &str) -> String {
    let mut letters = typed.chars().rev().map(|c| c.to_ascii_uppercase());
    let known = letters.find(|c| matches!(c, 'I' | 'W' | 'P' | 'E' | 'D'));
    known.into_iter().collect()
}

/// A person in what was typed: a number, known letters as capitals, or any other role.
pub(super) fn person(typed: &str) -> String {
    let plain = |c: &char| c.is_alphanumeric() || *c == ' ';
    let text: String = typed.trim_start().chars().filter(plain).take(20).collect();
    let letters = text.to_uppercase();
    if is_letters(&letters) {
        letters
    } else {
        text
    }
}

/// Whether a person is named by letters that the box knows.
pub(super) fn is_letters(text: &str) -> bool {
    text == DELAY || STAFF.iter().any(|s| s.0 == text)
}

/// Whether a line with this letter has neither person nor score on paper.
pub(super) fn is_improper(kind: &str) -> bool {
    kind == IMPROPER
}

/// What the letter and the person of a line say together; none where they do not fit.
pub(super) fn read(kind: &str, person: &str) -> Option<(SanctionKind, Option<Who>)> {
    let level = LEVELS.iter().find(|l| l.0 == kind).map(|l| l.1);
    Some(match (level, person.trim()) {
        (None, "") if is_improper(kind) => (SanctionKind::ImproperRequest, None),
        (None, _) | (Some(_), "") => return None,
        (Some(Level::Warning), DELAY) => (SanctionKind::DelayWarning, None),
        (Some(Level::Penalty), DELAY) => (SanctionKind::DelayPenalty, None),
        (Some(_), DELAY) => return None,
        (Some(level), person) => {
            let role = STAFF.iter().find(|s| s.0 == person).map(|s| s.1);
            let who = match person.parse() {
                Ok(number) => Who::Player(Shirt(number)),
                Err(_) => Who::Staff(role.unwrap_or(person).to_owned()),
            };
            (SanctionKind::Misconduct(level), Some(who))
        }
    })
}

/// The letter and the person of a sanction.
pub(super) fn write(kind: SanctionKind, who: Option<&Who>) -> (&'static str, String) {
    let letter = |level: Level| LEVELS.iter().find(|l| l.1 == level).map_or("", |l| l.0);
    match kind {
        SanctionKind::ImproperRequest => (IMPROPER, String::new()),
        SanctionKind::DelayWarning => (letter(Level::Warning), DELAY.to_owned()),
        SanctionKind::DelayPenalty => (letter(Level::Penalty), DELAY.to_owned()),
        SanctionKind::Misconduct(level) => {
            let person = match who {
                Some(Who::Player(number)) => number.to_string(),
                Some(Who::Staff(role)) => {
                    let known = STAFF.iter().find(|s| s.1 == role);
                    known.map_or_else(|| role.clone(), |s| s.0.to_owned())
                }
                None => String::new(),
            };
            (letter(level), person)
        }
    }
}
