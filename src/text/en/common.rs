//! The words of the whole program: its screens by name, and how a match stands in a line.

use crate::common::*;
use crate::language_name;
use app::language::Language;
use app::summary::{Stage, Summary};
use app::theme::Theme;
use game::{isolated, Refusal, State};
use rules::{ByTeam, Team};

/// In English.
pub static WORDS: CommonWords = CommonWords {
    back: "Back",
    close: "Close",
    leave_it: "Cancel",
    understood: "Understood",
    opening: "Opening the match …",
    loading: "Loading …",
    part_not_loaded:
        "This part of Dutystand could not be loaded. Check the connection, then try again. Your \
         matches are safe.",
    try_again: "Try again",
    not_here: "This match is not on this phone",
    not_here_more:
        "It may have been deleted here, or recorded on another phone. If you have its file, open \
         it from the start screen.",
    to_start: "To the start screen",
    lead: "School and junior volleyball: on the stand, at the table, without a network.",
    new_match: "New match",
    referee_a_match: "Referee a match",
    new_match_more: "Lists, toss, score and sheet",
    quick_tally: "Keep a tally",
    quick_tally_more: "Only the points",
    continue_match: "Continue",
    desk: "Desk",
    learn: "Learn",
    learn_more: "Signals, decisions, court, jobs",
    signals_are: "All hand signals",
    sheets: "Matches on this phone",
    reading: "Reading …",
    no_sheets: "None yet. Every match you record stays here until you delete it.",
    open: "Open",
    export: "Export",
    delete: "Delete",
    import: "Import",
    import_choose: "Open a file",
    receive: "Scan a match",
    hand_over: "Share",
    the_record: "The record",
    this_phone: "This phone",
    language_label: "Language",
    same_as_the_phone: "Same as the phone",
    language_missing,
    theme_label: "Colours",
    before: "Before the match",
    log: "Match log",
    whole_log: "Show all",
    sheet: "Sheet",
    refused_title: "Not allowed by the rules",
    insist: "Record it anyway",
    insist_why: "Your reason (it goes on the sheet)",
    insist_needs_why: "Write a short reason first. It goes on the sheet.",
    time_over: "time is over",
    team_name,
    teams,
    listed_teams,
    standing,
    listed_standing,
    theme,
    rule_of,
};

fn team_name(state: &State, team: Team) -> String {
    name_or_letter(state.heading().map_or("", |h| h.names[team].as_str()), team)
}

fn name_or_letter(name: &str, team: Team) -> String {
    if name.trim().is_empty() {
        format!("Team {team}")
    } else {
        isolated(name)
    }
}

fn teams(state: &State) -> String {
    if state.heading().is_none() {
        return UNREADABLE.into();
    }
    format!(
        "{} – {}",
        team_name(state, Team::A),
        team_name(state, Team::B)
    )
}

const UNREADABLE: &str = "Unreadable record";

fn listed_teams(summary: &Summary) -> String {
    if !summary.is_readable {
        return UNREADABLE.into();
    }
    let name = |team| name_or_letter(summary.name(team), team);
    let teams = format!("{} – {}", name(Team::A), name(Team::B));
    if summary.is_practice {
        format!("{}: {teams}", crate::learn::practice_mark())
    } else {
        teams
    }
}

fn standing(state: &State) -> String {
    listed_standing(&Summary::of_state(state))
}

fn listed_standing(summary: &Summary) -> String {
    let (won, set) = (summary.sets_won().marked(), summary.set);
    match summary.stage {
        Stage::Preparation => "Not started".into(),
        Stage::Playing => {
            let ByTeam { a, b } = summary.sets_won();
            format!("Set {set}: {}, sets {a}:{b}", summary.score().marked())
        }
        Stage::BetweenSets => format!("{won} after set {set}"),
        Stage::Finished => {
            let sets: Vec<String> = summary.sets().map(|score| score.to_string()).collect();
            format!("{won} ({})", sets.join(", "))
        }
    }
}

fn theme(theme: Theme) -> &'static str {
    match theme {
        Theme::System => same_as_the_phone(),
        Theme::Light => "Light",
        Theme::Dark => "Dark",
        Theme::Sunlight => "Sunlight",
    }
}

fn rule_of(refusal: &Refusal) -> String {
    match refusal.rule() {
        "log" => "How a record is kept".into(),
        "school" => "A limit of this competition".into(),
        rule => format!("Official Volleyball Rules, {rule}"),
    }
}

fn language_missing(language: Language) -> String {
    format!(
        "{} could not be loaded. Check the connection, then choose it again.",
        language_name(language)
    )
}
