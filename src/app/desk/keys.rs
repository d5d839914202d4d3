//! What each key does at the desk. A key without a letter of its own, such as Tab, Enter or Space, stays the
//! browser's.

use super::Column;
use crate::ports::KeyPress;

/// What a key can do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Command {
    /// Shows the keys.
    Keys,
    /// Goes to the field for words to search for.
    Search,
    /// To the next match: opens it where one is open, else moves to it.
    Next,
    /// To the previous one.
    Previous,
    /// Chooses the match at hand, or no more.
    Toggle,
    /// Chooses all that are shown.
    All,
    /// Chooses nothing.
    None,
    /// Chooses the pool of the match at hand.
    Pool,
    /// Shows the sheet of the open match.
    Sheet,
    /// Shows its log.
    Log,
    /// Goes to its findings.
    Findings,
    /// Closes the open match.
    Close,
    /// Shows the list, or the table of matches.
    View,
    /// Lays two records side by side.
    Compare,
    /// Makes the table of the chosen matches.
    Rank,
    /// Shows the report of the day.
    Report,
    /// Archives the chosen ones, or brings them back.
    Archive,
    /// Deletes the chosen ones, after a question.
    Delete,
    /// Sorts by a column.
    Sort(Column),
}

/// Every key with what it does, in the order in which they are listed. Those of the columns follow.
const KEYS: [(&str, Command); 22] = [
    ("?", Command::Keys),
    ("/", Command::Search),
    ("j", Command::Next),
    ("ArrowDown", Command::Next),
    ("k", Command::Previous),
    ("ArrowUp", Command::Previous),
    ("Escape", Command::Close),
    ("f", Command::Findings),
    ("s", Command::Sheet),
    ("l", Command::Log),
    ("x", Command::Toggle),
    ("a", Command::All),
    ("n", Command::None),
    ("p", Command::Pool),
    ("c", Command::Compare),
    ("t", Command::Rank),
    ("r", Command::Report),
    ("e", Command::Archive),
    ("Delete", Command::Delete),
    ("v", Command::View),
    // What some machines have in the place of Delete.
    ("#", Command::Delete),
    ("Backspace", Command::Delete),
];

impl Command {
    /// What a key does; none where it is not for the desk.
    #[must_use]
    pub fn of(press: &KeyPress) -> Option<Command> {
        if press.modified || press.typing {
            return None;
        }
        let key = press.key.as_str();
        // The arrows scroll, and Backspace goes nowhere, wherever else the keys go.
        if matches!(key, "ArrowDown" | "ArrowUp" | "Backspace") && !press.in_list {
            return None;
        }
        let number = key.parse::<usize>().ok();
        if let Some(column) = number.and_then(|n| Column::ALL.get(n.wrapping_sub(1)).copied()) {
            return Some(Command::Sort(column));
        }
        // A capital of the same letter, as with the caps lock on, does the same.
        let known = KEYS.iter().find(|(of, _)| of.eq_ignore_ascii_case(key));
        known.map(|(_, command)| *command)
    }

    /// All that there are with their keys, for the list of keys.
    #[must_use]
    pub fn listed() -> Vec<(Command, Vec<String>)> {
        let mut listed: Vec<(Command, Vec<String>)> = Vec::new();
        let columns = (1..).zip(Column::ALL);
        let columns =
            columns.map(|(n, column): (usize, Column)| (n.to_string(), Command::Sort(column)));
        let plain = KEYS
            .iter()
            .map(|(key, command)| ((*key).to_owned(), *command));
        for (key, command) in plain.chain(columns) {
            match listed.iter_mut().find(|(of, _)| *of == command) {
                Some((_, keys)) => keys.push(key),
                None => listed.push((command, vec![key])),
            }
        }
        listed
    }
}
