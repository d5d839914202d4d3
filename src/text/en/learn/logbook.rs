//! The words of the logbook.

use crate::learn::logbook::*;
use crate::learn::Role;
use record::{Goal, GoalKind, Officiated, Progress};
use rules::Duty;

/// In English.
pub static WORDS: LogbookWords = LogbookWords {
    logbook: "Logbook",
    logbook_more: "Your matches, your goals, one thing to try next time.",
    logbook_empty:
        "Write down each match in which you were on duty. Nobody else sees it unless you share \
         it.",
    logged_label: "Matches",
    log_match: "Add a match",
    log_from_record: "From this phone",
    log_from_record_more: "Finished matches that are not in your logbook yet.",
    log_this: "Write it in the logbook",
    log_this_again: "Open it in the logbook",
    logbook_full: "Your logbook is full. Share it as a file, then delete old matches.",
    logbook_not_kept:
        "This phone could not store your logbook. Delete what you do not need, then try again.",
    to_try: "To try next time",
    to_try_today: "You wanted to try this today",
    logged_day: "Date",
    logged_day_wrong: "This is no date. The old one stays.",
    logged_duty: "What was your job?",
    logged_level: "Level, such as U14 girls (optional)",
    logged_teams: "Teams (optional)",
    logged_minutes: "Minutes (optional)",
    logged_minutes_wrong: "Use a whole number of minutes.",
    logged_talk: "What did you talk about afterwards?",
    logged_next: "One thing to try next time",
    logged_kept: "What you type is stored at once.",
    logged_delete: "Delete this match from the logbook",
    logged_delete_ask: "Delete this match from your logbook? Its record stays.",
    not_logged: "This match is not in your logbook.",
    to_logbook: "To the logbook",
    goals: "Goals",
    no_goals: "Set yourself a goal, or open a file with goals of your league.",
    set_goal: "Set a goal",
    goal_file: "Open a file",
    goal_what: "What do you want to reach?",
    goal_matches: "A number of matches",
    goal_task: "Something else",
    goal_duty: "In which job?",
    any_duty: "Any job",
    goal_count: "How many matches, from today on?",
    goal_count_wrong: "Use a number from 1 to 500.",
    goal_words: "What is it? Such as: a test of signals",
    goal_words_wrong: "Write what you want to reach.",
    goal_until: "Until (optional)",
    goal_save: "Save the goal",
    goal_not_set: "This goal is in your logbook already.",
    goal_done: "Done",
    goal_drop: "Delete this goal",
    goal_drop_ask: "Delete this goal from your logbook?",
    logbook_share: "For whoever signs it",
    logbook_print: "Print",
    logbook_table: "Table (CSV)",
    logbook_file_label: "File",
    logbook_delete: "Delete the whole logbook",
    logbook_delete_ask:
        "Delete your logbook from this phone for good? Match records and files you have shared \
         stay.",
    signed_off: "Name and signature of whoever signs it off:",
    logbook_columns: [
        "Date",
        "Job",
        "Level",
        "Teams",
        "Minutes",
        "Talk, next time",
    ],
    duty,
    logged,
    next_time,
    by_duty,
    goal,
    progress,
    logbook_file,
    goals_came,
    no_logbook_file: "This is no logbook and no file of goals. Choose another file.",
    newer_logbook_file:
        "A newer version of this app made this file. Update the app, then open it again.",
};

fn duty(duty: Duty) -> &'static str {
    match duty {
        Duty::FirstReferee => crate::learn::role_name(Role::FirstReferee),
        Duty::SecondReferee => crate::learn::role_name(Role::SecondReferee),
        Duty::Scorer => crate::learn::role_name(Role::Scorer),
        Duty::AssistantScorer => crate::learn::role_name(Role::AssistantScorer),
        Duty::LineJudge => crate::learn::role_name(Role::LineJudge),
    }
}

fn logged(one: &Officiated) -> String {
    let mut words = format!("{}, {}", one.day.as_str(), duty(one.duty));
    for more in [&one.level, &one.teams] {
        if !more.is_empty() {
            words += &format!(", {more}");
        }
    }
    words
}

fn next_time(next: &str) -> String {
    format!("Next time: {next}")
}

fn by_duty(all: &[(Duty, usize)]) -> String {
    let all: Vec<String> = all
        .iter()
        .map(|(of, count)| format!("{}: {count}", duty(*of)))
        .collect();
    all.join(", ")
}

fn goal(goal: &Goal) -> String {
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

fn progress(goal: &Goal, progress: Progress) -> String {
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

fn logbook_file(day: &str, ending: &str) -> String {
    format!("logbook-{day}.{ending}")
}

fn goals_came(matches: usize, goals: usize, left_out: usize) -> String {
    let mut words = match (matches, goals) {
        (0, 0) => "Everything in the file is here already.".to_owned(),
        (matches, goals) => format!("New: matches {matches}, goals {goals}."),
    };
    if left_out > 0 {
        words += &format!(" Could not be read: {left_out}.");
    }
    words
}
