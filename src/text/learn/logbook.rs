//! The words of the logbook.

use record::{Goal, Officiated, Progress};
use rules::Duty;

words! { LogbookWords in learn::logbook;
    /// Title of the page.
    logbook -> &'static str;
    /// What is on it.
    logbook_more -> &'static str;
    /// Nothing is in it.
    logbook_empty -> &'static str;
    /// The matches.
    logged_label -> &'static str;
    /// Writes one down.
    log_match -> &'static str;
    /// From a record.
    log_from_record -> &'static str;
    /// What those are.
    log_from_record_more -> &'static str;
    /// In the review.
    log_this -> &'static str;
    /// The same where it is there.
    log_this_again -> &'static str;
    /// The logbook is full.
    logbook_full -> &'static str;
    /// The phone was full.
    logbook_not_kept -> &'static str;
    /// What was to be tried.
    to_try -> &'static str;
    /// The same before a match.
    to_try_today -> &'static str;
    /// The day.
    logged_day -> &'static str;
    /// The day is missing.
    logged_day_wrong -> &'static str;
    /// The role.
    logged_duty -> &'static str;
    /// The level.
    logged_level -> &'static str;
    /// The teams.
    logged_teams -> &'static str;
    /// How long.
    logged_minutes -> &'static str;
    /// It is no number.
    logged_minutes_wrong -> &'static str;
    /// What the talk was about.
    logged_talk -> &'static str;
    /// One thing.
    logged_next -> &'static str;
    /// Everything is kept as it is typed.
    logged_kept -> &'static str;
    /// Takes it out.
    logged_delete -> &'static str;
    /// Asked before.
    logged_delete_ask -> &'static str;
    /// There is none.
    not_logged -> &'static str;
    /// Back to all of them.
    to_logbook -> &'static str;
    /// Goals.
    goals -> &'static str;
    /// There are none.
    no_goals -> &'static str;
    /// Sets one.
    set_goal -> &'static str;
    /// Opens a file.
    goal_file -> &'static str;
    /// Which kind.
    goal_what -> &'static str;
    /// Matches in a role.
    goal_matches -> &'static str;
    /// Something else.
    goal_task -> &'static str;
    /// Which role.
    goal_duty -> &'static str;
    /// Any of them.
    any_duty -> &'static str;
    /// How many.
    goal_count -> &'static str;
    /// It is no number.
    goal_count_wrong -> &'static str;
    /// What it is.
    goal_words -> &'static str;
    /// It is empty.
    goal_words_wrong -> &'static str;
    /// By when.
    goal_until -> &'static str;
    /// Sets it.
    goal_save -> &'static str;
    /// It is there already, or there are too many.
    goal_not_set -> &'static str;
    /// Ticks it off.
    goal_done -> &'static str;
    /// Takes it out.
    goal_drop -> &'static str;
    /// Asked before.
    goal_drop_ask -> &'static str;
    /// Sharing.
    logbook_share -> &'static str;
    /// Prints it.
    logbook_print -> &'static str;
    /// As a table.
    logbook_table -> &'static str;
    /// As a file.
    logbook_file_label -> &'static str;
    /// Forgets it.
    logbook_delete -> &'static str;
    /// Asked before.
    logbook_delete_ask -> &'static str;
    /// Under what is printed.
    signed_off -> &'static str;
    /// The columns of what is printed.
    logbook_columns -> [&'static str; 6];
    /// A role.
    duty(duty: Duty) -> &'static str;
    /// A match in the list.
    logged(one: &Officiated) -> String;
    /// What a talk said, in the list.
    next_time(next: &str) -> String;
    /// How often in each role.
    by_duty(all: &[(Duty, usize)]) -> String;
    /// A goal.
    goal(goal: &Goal) -> String;
    /// How far it is.
    progress(goal: &Goal, progress: Progress) -> String;
    /// The names of its files.
    logbook_file(day: &str, ending: &str) -> String;
    /// What a file of goals brought.
    goals_came(matches: usize, goals: usize, left_out: usize) -> String;
    /// A file that is none.
    no_logbook_file -> &'static str;
    /// A file of a newer version.
    newer_logbook_file -> &'static str;
}
