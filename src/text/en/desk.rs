//! The words of the desk.
//!
//! One table for one topic, read a word at a time beside it: parted, it would only be
//! harder to compare with the other language.

use crate::desk::*;
use crate::score_sheet::roman;
use crate::standings;
use app::machine::LocalTime;
use game::Signer;
use reports::audit::SIGN_AFTER;
use reports::list::{Line, SealState};
use reports::paper::{Cell, Draft, Part};
use reports::standings::Criterion;
use reports::FileKind;
use rules::{ByTeam, Score, Team};

/// In English.
pub static WORDS: DeskWords = DeskWords {
    desk: "Desk",
    findings: "To check",
    compare: "Two records",
    table: "Table",
    paper: "Paper sheet",
    review: "Review",
    from_paper: "From paper",
    key_in: "Key in a paper sheet",
    key_in_more:
        "Type what is on the paper, box by box. A box that cannot be right is marked at once. \
         Open files of keyed-in sheets and pools like match files.",
    pool_file: "Results of a pool, with its ranking rule",
    rule_of_file:
        "Taken from the file. The first line decides. The next one counts only for teams that are \
         level.",
    again: "Another record of the same match",
    give_back: "Undo",
    list_csv: "List for a spreadsheet (CSV)",
    lead_of_both: "How the lead changed in both",
    tour: "Where to look first",
    tour_table: "The table of pool 2, and why",
    tour_compare: "Two records that differ",
    tour_paper: "A paper sheet with an error",
    tour_findings: "What to check in a record",
    tour_review: "The review of a match",
    look_around: "Look around",
    day_bring: "Add the sample tournament",
    day_more: "Eight invented teams, two pools, a paper sheet with an error and two records that \
         differ. One tap removes it again.",
    day_take_away: "Remove the sample tournament",
    day_comes: "Adding the sample tournament …",
    day_is_here: "The sample tournament is here.",
    day_not_kept: "This phone could not store the whole sample tournament.",
    sheet_not_begun:
        "This phone has no room for another sheet. Export and delete older matches, then try again.",
    day_is_gone: "The sample tournament is gone. Your own matches are untouched.",
    nothing_here:
        "The desk is empty. Open match files, many at once if you like. Or key in a paper sheet, \
         or add the sample tournament to look around.",
    no_competition: "Without a competition",
    choose_all_label: "Select for the table",
    chosen: "With the selected ones",
    compare_them: "Compare two",
    table_of_them: "Make a table",
    choose_two:
        "Tick exactly two records of one match, or a record and its paper sheet, to compare them.",
    choose_some: "Tick the matches of a pool first.",
    first: "First",
    second: "Second",
    they_agree: "The two records agree on everything.",
    same_points: "Both records agree on every point. They differ in what is listed below.",
    same_course: "Both records agree on the match itself.",
    rallies_around: "The rallies around it",
    rally: "Rally",
    why: "Why in this order",
    csv: "Table for a spreadsheet (CSV)",
    print: "Print",
    no_results:
        "None of the selected matches is over, so there is no table. Go back and select matches \
         with a result.",
    rule_of_order: "The competition's ranking rule",
    rule_of_order_more:
        "The first line decides. The next one counts only for teams that are level. Teams that \
         are level in all of them share a place.",
    move_up: "Move up",
    remove: "Remove",
    points_for: "Match points",
    meetings: "How often two teams meet",
    match_points: "Match points",
    columns: [
        "Place",
        "Team",
        "Played",
        "Won",
        "Lost",
        "Match points",
        "Sets",
        "Set ratio",
        "Points",
        "Point ratio",
    ],
    parts: "Parts of the sheet",
    check_all: "Check every box",
    export_paper: "Export the keyed sheet",
    not_kept:
        "This phone cannot store what you key in. Export the sheet before you leave this page.",
    keys: "Digits are enough: a full box moves on to the next one. Enter or Space ends a box. In \
         the empty box at the end of a list, it moves on too. Backspace in an empty box moves \
         back. Everything you type is saved at once.",
    findings_of,
    found,
    kind_of,
    in_doubt,
    ranked_by,
    pool_of,
    deleted,
    how_many_chosen,
    choose_all,
    about_entry,
    rule,
    they_part,
    who_won,
    differences,
    entries_of,
    times,
    put_higher,
    put_out,
    add,
    part_of_sheet,
    part,
    letters_of,
    place_of,
    name_of,
    short_column,
    where_is,
    no_first_turn: "X",
    rally_order,
    marks,
    teams_of,
    result_of,
    to_check,
    seal_state,
    file_kind,
};

fn findings_of(count: usize, teams: &str) -> String {
    format!("{}, {teams}", to_check(count))
}

fn found(count: usize) -> String {
    match count {
        0 => "Nothing in this record needs a check.".into(),
        1 => "One thing in this record needs a check.".into(),
        n => format!(
            "{n} things in this record need a check. Those about the whole match come first."
        ),
    }
}

fn kind_of(line: &Line, last: Option<LocalTime>) -> String {
    let what = if line.on_paper { "On paper" } else { "Record" };
    let number = match line.number.as_str() {
        "" => String::new(),
        number => format!(", match {number}"),
    };
    let when = match crate::when(last).as_str() {
        "" => String::new(),
        when => format!(", last entry {when}"),
    };
    format!("{what}{number}{when}")
}

fn in_doubt(line: &Line) -> Option<String> {
    let name = if line.on_paper {
        "this sheet"
    } else {
        "this record"
    };
    Some(format!("In doubt: {}", standings::doubt(name, line.doubt?)))
}

fn ranked_by(criteria: &[Criterion]) -> String {
    let names: Vec<&str> = criteria.iter().map(|c| standings::criterion(*c)).collect();
    format!("Ranked by {}.", names.join(", then "))
}

fn pool_of(results: usize) -> String {
    match results {
        1 => "Pool of one match".into(),
        n => format!("Pool of {n} matches"),
    }
}

fn deleted(title: &str) -> String {
    format!("{title} is deleted.")
}

fn how_many_chosen(count: usize) -> String {
    match count {
        0 => "None selected".into(),
        n => format!("{n} selected"),
    }
}

fn choose_all(group: &str) -> String {
    format!("Select for the table: {group}")
}

fn about_entry(n: u32, words: &str, time: &str) -> String {
    match time {
        "" => format!("Entry {n}: {words}"),
        time => format!("Entry {n} at {time}: {words}"),
    }
}

fn rule(rule: &str) -> String {
    match rule {
        "log" => "How a record is kept".into(),
        "school" => "A limit of this competition".into(),
        rule => format!("Rule {rule}"),
    }
}

fn they_part(set: u8, rally: usize, score: Score) -> String {
    format!(
        "They differ from set {set}, rally {rally} on, at {}.",
        score.marked()
    )
}

fn who_won(names: &ByTeam<String>) -> String {
    format!("Who won each rally: A is {}, B is {}.", names.a, names.b)
}

fn differences(count: usize) -> String {
    match count {
        1 => "One difference".into(),
        n => format!("{n} differences, in the order of the match"),
    }
}

fn entries_of(entries: (Option<u32>, Option<u32>)) -> String {
    match entries {
        (Some(a), Some(b)) => format!("Entry {a} of the first record, entry {b} of the second"),
        (Some(a), None) => format!("Entry {a} of the first record"),
        (None, Some(b)) => format!("Entry {b} of the second record"),
        (None, None) => "The records as a whole".into(),
    }
}

fn times(times: u8) -> String {
    match times {
        1 => "Once".into(),
        2 => "Twice".into(),
        n => format!("{n} times"),
    }
}

fn put_higher(criterion: &str) -> String {
    format!("{}: {criterion}", move_up())
}

fn put_out(criterion: &str) -> String {
    format!("{}: {criterion}", remove())
}

fn add(criterion: &str) -> String {
    format!("Then {criterion}")
}

fn part_of_sheet(set: u8) -> String {
    match set {
        Cell::HEAD => "Teams".into(),
        Cell::RESULT => "Result".into(),
        set => format!("Set {set}"),
    }
}

fn part(part: Part) -> &'static str {
    match part {
        Part::Number => "Match number",
        Part::Day => "Date (20260509)",
        Part::Official => "Officials",
        Part::Signed => "Signatures on the sheet: any key where there is one",
        Part::Name => "Names",
        Part::List => "Numbers on the list",
        Part::Libero => "Liberos, again",
        Part::First => "First service (A or B)",
        Part::LineUp => "Line-up, place I to VI",
        Part::Round => "Service rounds: own total at the end of each turn",
        Part::Final => "Points at the end",
        Part::TimeOut => "Time-outs: own points, the other team's",
        Part::Change => "Substitutions: out, in, own points, the other team's",
        Part::Sanction => "Sanctions: what, who, own points, the other team's",
        Part::Start => "Start (1805)",
        Part::End => "End (1827)",
        Part::Minutes => "Minutes",
        Part::Winner => "Winner (A or B)",
        Part::Sets => "Sets won",
        Part::AllPoints => "Points of all sets",
        Part::AllTimeOuts => "Time-outs of all sets",
        Part::AllChanges => "Substitutions of all sets",
        Part::AllMinutes => "Minutes of all sets",
    }
}

fn letters_of(part: Part) -> Option<&'static str> {
    Some(match part {
        Part::Change => "Write E anywhere in a line if the substitution was exceptional.",
        Part::Sanction => {
            "What: W warning, P penalty, E expulsion, D disqualification, I a first improper request. Who: \
             a number, C coach, AC assistant coach, T therapist, M doctor; D with W or P for a delay."
        }
        Part::AllPoints => "These are optional: few sheets have them all.",
        _ => return None,
    })
}

fn place_of(cell: Cell, draft: &Draft) -> Option<String> {
    let n = cell.row + 1;
    Some(match cell.part {
        Part::LineUp => format!("Place {n}"),
        Part::Round => round_of(cell, draft),
        Part::TimeOut => format!("Time-out {n}"),
        Part::Change => format!("Substitution {n}"),
        Part::Sanction => format!("Sanction {n}"),
        Part::List => "List".into(),
        _ => return None,
    })
}

/// A total of a turn at service as the paper has it: by column and round.
fn round_of(cell: Cell, draft: &Draft) -> String {
    let (column, round) = draft.round_of(cell);
    format!("column {}, round {round}", roman(column.into()))
}

fn name_of(cell: Cell, draft: &Draft) -> String {
    let team = draft.name(cell.team);
    let n = cell.row + 1;
    let column = match (cell.part, cell.column) {
        (Part::TimeOut, 0) | (Part::Change | Part::Sanction, 2) => "own points",
        (Part::TimeOut, _) | (Part::Change | Part::Sanction, 3) => "other points",
        (Part::Change, 0) => "out",
        (Part::Change, 1) => "in",
        (Part::Change, _) => "E where it was exceptional",
        (Part::Sanction, 0) => "what: W, P, E, D or I",
        (Part::Sanction, _) => "who",
        _ => "",
    };
    match cell.part {
        Part::Number => "Match number".into(),
        Part::Day => "Date: year, month, day".into(),
        Part::Official => official(cell.row).into(),
        Part::Signed => signature(cell.row),
        Part::Name => format!("Name of team {}", cell.team),
        Part::List => format!("{team}, number {n} of the list"),
        Part::First => "First service, A or B".into(),
        Part::LineUp => format!("{team}, place {n}"),
        Part::Round => format!("{team}, {}, total", round_of(cell, draft)),
        Part::Final => format!("{team}, points at the end"),
        Part::TimeOut => format!("{team}, time-out {n}, {column}"),
        Part::Change => format!("{team}, substitution {n}, {column}"),
        Part::Libero => format!("{team}, libero {n}"),
        Part::Sanction => format!("{team}, sanction {n}, {column}"),
        Part::Start => "Time the set began".into(),
        Part::End => "Time the set ended".into(),
        Part::Minutes => "Minutes the set lasted".into(),
        Part::Winner => "Winner, A or B".into(),
        Part::Sets => format!("{team}, sets won"),
        Part::AllPoints => format!("{team}, points of all sets"),
        Part::AllTimeOuts => format!("{team}, time-outs of all sets"),
        Part::AllChanges => format!("{team}, substitutions of all sets"),
        Part::AllMinutes => "Minutes of all sets".into(),
    }
}

/// The officials in the order of the heading.
fn official(row: u8) -> &'static str {
    match row {
        0 => "First referee",
        1 => "Second referee",
        _ => "Scorer",
    }
}

/// Whose signature a box is of.
fn signature(row: u8) -> String {
    let signer = SIGN_AFTER.get(usize::from(row)).copied();
    match signer {
        Some(Signer::Captain(team)) => format!("Captain {team} signed"),
        Some(Signer::Scorer) => "Scorer signed".into(),
        Some(Signer::SecondReferee) => "Second referee signed".into(),
        Some(Signer::FirstReferee) => "First referee signed".into(),
        Some(Signer::Coach(_)) | None => String::new(),
    }
}

fn short_column(cell: Cell) -> &'static str {
    match (cell.part, cell.column) {
        (Part::Change, 0) => "out",
        (Part::Change, 1) => "in",
        (Part::Change, 4) => "exc.",
        (Part::Sanction, 0) => "what",
        (Part::Sanction, 1) => "who",
        (Part::Change | Part::Sanction | Part::TimeOut, _) => "pts",
        _ => "",
    }
}

fn where_is(cell: Cell, draft: &Draft) -> String {
    format!(
        "{}: {}",
        part_of_sheet(cell.set),
        name_of(Cell { column: 0, ..cell }, draft)
    )
}

fn rally_order(order: &str) -> String {
    if order.is_empty() {
        "The order of the rallies appears here, as far as the boxes make it clear.".into()
    } else {
        format!("Order of the rallies, as far as the boxes make it clear: {order}")
    }
}

fn marks(count: usize, all: bool) -> String {
    match (count, all) {
        (0, true) => "Every box agrees.".into(),
        (0, false) => "Nothing marked so far.".into(),
        (1, _) => "One box is marked:".into(),
        (n, _) => format!("{n} boxes are marked:"),
    }
}

fn teams_of(line: &Line) -> String {
    let name = |team: Team| match line.teams[team].as_str() {
        "" => format!("Team {team}"),
        name => name.to_owned(),
    };
    let teams = format!("{} – {}", name(Team::A), name(Team::B));
    if line.is_practice {
        format!("{}: {teams}", crate::learn::practice_mark())
    } else {
        teams
    }
}

fn result_of(line: &Line) -> String {
    let points: Vec<String> = line.points.iter().map(ToString::to_string).collect();
    let sets = match line.sets {
        Some(sets) => sets.to_string(),
        None if points.is_empty() => return "Nothing played yet".to_owned(),
        None => "No result".to_owned(),
    };
    let open = if line.is_over { "" } else { ", not over" };
    if points.is_empty() {
        format!("{sets}{open}")
    } else {
        format!("{sets} ({}){open}", points.join(", "))
    }
}

fn to_check(count: usize) -> String {
    match count {
        0 => "Nothing to check".to_owned(),
        n => format!("{n} to check"),
    }
}

fn seal_state(seal: SealState) -> &'static str {
    match seal {
        SealState::OnPaper => "On paper",
        SealState::None => "Not sealed",
        SealState::Broken => "The seal does not fit: something before it was changed",
        SealState::GoneOn => "Sealed, then continued",
        SealState::Holds => "Sealed, and the seal fits",
    }
}

fn file_kind(kind: FileKind) -> &'static str {
    match kind {
        FileKind::Match => "a match record",
        FileKind::Backup => "a backup",
        FileKind::Paper => "a keyed-in paper sheet",
        FileKind::Pool => "the results of a pool",
        FileKind::Observer => "the notes of an observer",
        FileKind::Logbook => "a logbook",
    }
}
