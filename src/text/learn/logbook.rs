//! The words of the logbook.

use record::{Goal, GoalKind, Officiated, Progress};
use rules::Duty;

use super::Role;

/// Title of the page.
pub const LOGBOOK: &str = "Logbook";
/// What is on it.
pub const LOGBOOK_MORE: &str = "Your matches, your goals, one thing to try next time.";
/// Nothing is in it.
pub const LOGBOOK_EMPTY: &str =
    "Write down each match in which you were on duty. Nobody else sees it unless you share it.";
/// The matches.
pub const LOGGED: &str = "Matches";
/// Writes one down.
pub const LOG_MATCH: &str = "Add a match";
/// From a record.
pub const LOG_FROM_RECORD: &str = "From this phone";
/// What those are.
pub const LOG_FROM_RECORD_MORE: &str = "Finished matches that are not in your logbook yet.";
/// In the review.
pub const LOG_THIS: &str = "Write it in the logbook";
/// The same where it is there.
pub const LOG_THIS_AGAIN: &str = "Open it in the logbook";
/// The logbook is full.
pub const LOGBOOK_FULL: &str = "Your logbook is full. Share it as a file, then delete old matches.";
/// The phone was full.
pub const LOGBOOK_NOT_KEPT: &str =
    "This phone could not store your logbook. Delete what you do not need, then try again.";
/// What was to be tried.
pub const TO_TRY: &str = "To try next time";
/// The same before a match.
pub const TO_TRY_TODAY: &str = "You wanted to try this today";

/// The day.
pub const LOGGED_DAY: &str = "Date";
/// The day is missing.
pub const LOGGED_DAY_WRONG: &str = "This is no date. The old one stays.";
/// The role.
pub const LOGGED_DUTY: &str = "What was your job?";
/// The level.
pub const LOGGED_LEVEL: &str = "Level, such as U14 girls (optional)";
/// The teams.
pub const LOGGED_TEAMS: &str = "Teams (optional)";
/// How long.
pub const LOGGED_MINUTES: &str = "Minutes (optional)";
/// It is no number.
pub const LOGGED_MINUTES_WRONG: &str = "Use a whole number of minutes.";
/// What the talk was about.
pub const LOGGED_TALK: &str = "What did you talk about afterwards?";
/// One thing.
pub const LOGGED_NEXT: &str = "One thing to try next time";
/// Everything is kept as it is typed.
pub const LOGGED_KEPT: &str = "What you type is stored at once.";
/// Takes it out.
pub const LOGGED_DELETE: &str = "Delete this match from the logbook";
/// Asked before.
pub const LOGGED_DELETE_ASK: &str = "Delete this match from your logbook? Its record stays.";
/// There is none.
pub const NOT_LOGGED: &str = "This match is not in your logbook.";
/// Back to all of them.
pub const TO_LOGBOOK: &str = "To the logbook";

/// Goals.
pub const GOALS: &str = "Goals";
/// There are none.
pub const NO_GOALS: &str = "Set yourself a goal, or open a file with goals of your league.";
/// Sets one.
pub const SET_GOAL: &str = "Set a goal";
/// Opens a file.
pub const GOAL_FILE: &str = "Open a file";
/// Which kind.
pub const GOAL_WHAT: &str = "What do you want to reach?";
/// Matches in a role.
pub const GOAL_MATCHES: &str = "A number of matches";
/// Something else.
pub const GOAL_TASK: &str = "Something else";
/// Which role.
pub const GOAL_DUTY: &str = "In which job?";
/// Any of them.
pub const ANY_DUTY: &str = "Any job";
/// How many.
pub const GOAL_COUNT: &str = "How many matches, from today on?";
/// It is no number.
pub const GOAL_COUNT_WRONG: &str = "Use a number from 1 to 500.";
/// What it is.
pub const GOAL_WORDS: &str = "What is it? Such as: a test of signals";
/// It is empty.
pub const GOAL_WORDS_WRONG: &str = "Write what you want to reach.";
/// By when.
pub const GOAL_UNTIL: &str = "Until (optional)";
/// Sets it.
pub const GOAL_SAVE: &str = "Save the goal";
/// It is there already, or there are too many.
pub const GOAL_NOT_SET: &str = "This goal is in your logbook already.";
/// Ticks it off.
pub const GOAL_DONE: &str = "Done";
/// Takes it out.
pub const GOAL_DROP: &str = "Delete this goal";
/// Asked before.
pub const GOAL_DROP_ASK: &str = "Delete this goal from your logbook?";

/// Sharing.
pub const LOGBOOK_SHARE: &str = "For whoever signs it";
/// Prints it.
pub const LOGBOOK_PRINT: &str = "Print";
/// As a table.
pub const LOGBOOK_TABLE: &str = "Table (CSV)";
/// As a file.
pub const LOGBOOK_FILE: &str = "File";
/// Forgets it.
pub const LOGBOOK_DELETE: &str = "Delete the whole logbook";
/// Asked before.
pub const LOGBOOK_DELETE_ASK: &str =
    "Delete your logbook from this phone for good? Match records and files you have shared stay.";
/// Under what is printed.
pub const SIGNED_OFF: &str = "Name and signature of whoever signs it off:";

/// The columns of what is printed.
pub const LOGBOOK_COLUMNS: [&str; 6] = [
    "Date",
    "Job",
    "Level",
    "Teams",
    "Minutes",
    "Talk, next time",
];

/// A role.
#[must_use]
pub const fn duty(duty: Duty) -> &'static str {
    match duty {
        Duty::FirstReferee => Role::FirstReferee.name(),
        Duty::SecondReferee => Role::SecondReferee.name(),
        Duty::Scorer => Role::Scorer.name(),
        Duty::AssistantScorer => Role::AssistantScorer.name(),
        Duty::LineJudge => Role::LineJudge.name(),
    }
}

/// A match in the list.
#[must_use]
pub fn logged(one: &Officiated) -> String {
    let mut words = format!("{}, {}", one.day.as_str(), duty(one.duty));
    for more in [&one.level, &one.teams] {
        if !more.is_empty() {
            words += &format!(", {more}");
        }
    }
    words
}

/// What a talk said, in the list.
#[must_use]
pub fn next_time(next: &str) -> String {
    format!("Next time: {next}")
}

/// How often in each role.
#[must_use]
pub fn by_duty(all: &[(Duty, usize)]) -> String {
    let all: Vec<String> = all
        .iter()
        .map(|(of, count)| format!("{} {count} ×", duty(*of)))
        .collect();
    all.join(", ")
}

/// A goal.
#[must_use]
pub fn goal(goal: &Goal) -> String {
    let mut words = match &goal.kind {
        GoalKind::Matches { duty: of, count } => {
            let matches = if *count == 1 { "match" } else { "matches" };
            match of {
                Some(of) => format!("{count} {matches} as {}", duty(*of).to_lowercase()),
                None => format!("{count} {matches}"),
            }
        }
        GoalKind::Task { words, .. } => words.clone(),
    };
    if let Some(until) = &goal.until {
        words += &format!(", until {}", until.as_str());
    }
    if !goal.from.is_empty() {
        words += &format!(" ({})", goal.from);
    }
    words
}

/// How far it is.
#[must_use]
pub fn progress(goal: &Goal, progress: Progress) -> String {
    match (&goal.kind, progress.is_reached()) {
        (
            GoalKind::Task {
                done: Some(day), ..
            },
            _,
        ) => format!("Done on {}", day.as_str()),
        (GoalKind::Task { done: None, .. }, _) => "Not yet".to_owned(),
        (GoalKind::Matches { .. }, true) => {
            format!("Reached: {} of {}", progress.done, progress.of)
        }
        (GoalKind::Matches { .. }, false) => format!("{} of {}", progress.done, progress.of),
    }
}

/// The names of its files.
#[must_use]
pub fn logbook_file(day: &str, ending: &str) -> String {
    format!("logbook-{day}.{ending}")
}

/// What a file of goals brought.
#[must_use]
pub fn goals_came(matches: usize, goals: usize, left_out: usize) -> String {
    let mut words = match (matches, goals) {
        (0, 0) => "Everything in the file is here already.".to_owned(),
        (matches, goals) => format!("New: matches {matches}, goals {goals}."),
    };
    if left_out > 0 {
        words += &format!(" Could not be read: {left_out}.");
    }
    words
}

/// A file that is none.
pub const NO_LOGBOOK_FILE: &str = "This is no logbook and no file of goals. Choose another file.";
/// A file of a newer version.
pub const NEWER_LOGBOOK_FILE: &str =
    "A newer version of this app made this file. Update the app, then open it again.";
