//! The words of the desk where it is a table and several panes.

use crate::desk_work::*;
use app::desk::{Column, Command, Show};
use game::Signer;
use reports::list::{Line, SealState};
use reports::{SheetBox, Weight, Weights};
use rules::Team;

/// In English.
pub static WORDS: DeskWorkWords = DeskWorkWords {
    drop_here: "Drop the files to import them",
    search: "Search",
    filter_and_sort: "Filter and sort",
    pool: "Pool",
    all_pools: "All pools",
    show_which: "Show",
    show,
    sort_by: "Sort by",
    column,
    as_list: "List",
    as_table: "Table",
    keys: "Keys",
    matches: "Matches",
    select: "Select",
    select_one,
    how_many,
    nothing_fits: "No match fits. Change the search or the filter.",
    show_everything: "Show everything",
    reading,
    select_all: "Select all",
    select_none: "Select none",
    more: "More",
    archive: "Archive",
    restore: "Restore",
    delete: "Delete",
    archived,
    restored,
    all_deleted,
    not_deleted,
    delete_question,
    choose_first: "Select at least one match first.",
    previous: "Previous",
    next: "Next",
    previous_is,
    next_is,
    parts_of_record: "Parts of this record",
    sheet: "Sheet",
    log: "Match log",
    open_sheet: "Sign, print, share",
    close: "Close",
    show_entry,
    show_box,
    found,
    weight,
    weight_more,
    weights,
    nobody: "Nobody",
    everybody: "Everybody",
    signer,
    seal,
    sets,
    points,
    arrow,
    match_no,
    grid: "Results grid",
    grid_more: "Sets of the team on the left first.",
    report: "Report of the day",
    print_sheets: "Print sheets",
    sheets: "Sheets",
    print: "Print",
    cannot_print: "This browser cannot print. Open the desk on another device to print it.",
    report_of,
    days,
    match_number: "No.",
    time: "Time",
    set_points: "Points of the sets",
    no_sheets: "None of the selected matches has a record here. Paper sheets are on paper already.",
    sheets_of,
    papers_left_out,
    known_teams: "Teams of the records on this desk",
    take_list,
    keys_title: "Keys of the desk",
    keys_more: "The keys work while you are not typing. Tab, Space and Enter work as everywhere.",
    keys_on: "Use these keys",
    key,
    command,
};

fn show(show: Show) -> &'static str {
    match show {
        Show::All => "All",
        Show::ToCheck => "With something to check",
        Show::Unsealed => "Over, not sealed",
        Show::Paper => "On paper",
        Show::Archived => "Archived",
    }
}

fn column(column: Column) -> &'static str {
    match column {
        Column::Teams => "Teams",
        Column::Result => "Result",
        Column::Day => "Day",
        Column::Pool => "Pool",
        Column::Signed => "Signatures",
        Column::Seal => "Seal",
        Column::Findings => "To check",
    }
}

fn select_one(title: &str) -> String {
    format!("Select {title}")
}

fn how_many(shown: usize, all: usize) -> String {
    match (shown, all) {
        (1, 1) => "1 match".to_owned(),
        (shown, all) if shown == all => format!("{all} matches"),
        (shown, all) => format!("{shown} of {all} matches"),
    }
}

fn reading(read: usize, all: usize) -> String {
    format!("Reading match {} of {all} …", read + 1)
}

fn archived(count: usize) -> String {
    match count {
        1 => "1 match is archived.".to_owned(),
        n => format!("{n} matches are archived."),
    }
}

fn restored(count: usize) -> String {
    match count {
        1 => "1 match is restored.".to_owned(),
        n => format!("{n} matches are restored."),
    }
}

fn all_deleted(count: usize) -> String {
    match count {
        1 => "1 match is deleted.".to_owned(),
        n => format!("{n} matches are deleted."),
    }
}

fn not_deleted(count: usize) -> String {
    match count {
        1 => "1 match was not deleted. If it is open in another tab, close it there and try again.".to_owned(),
        n => format!("{n} matches were not deleted. If they are open in another tab, close them there and try again."),
    }
}

fn delete_question(counts: [usize; 3]) -> String {
    let [records, papers, pools] = counts;
    let some = [
        (records, "match record", "match records"),
        (papers, "paper sheet", "paper sheets"),
        (pools, "pool file", "pool files"),
    ];
    let parts: Vec<String> = some
        .into_iter()
        .filter(|(count, ..)| *count > 0)
        .map(|(count, one, many)| format!("{count} {}", if count == 1 { one } else { many }))
        .collect();
    let what = match &parts[..] {
        [all @ .., last] if !all.is_empty() => format!("{} and {last}", all.join(", ")),
        parts => parts.join(", "),
    };
    format!("Delete {what} from this device? This cannot be undone. Export them first if you need them.")
}

fn previous_is(title: &str) -> String {
    format!("Previous: {title}")
}

fn next_is(title: &str) -> String {
    format!("Next: {title}")
}

fn show_entry(n: u32) -> String {
    format!("Show entry {n}")
}

fn show_box(of: SheetBox) -> String {
    format!("Show on the sheet: {}", sheet_box(of))
}

fn sheet_box(of: SheetBox) -> String {
    match of {
        SheetBox::Set(number) => format!("set {number}"),
        SheetBox::Heading => "heading and result".to_owned(),
        SheetBox::Sanctions => "sanctions".to_owned(),
        SheetBox::Remarks => "remarks".to_owned(),
        SheetBox::Teams => "team lists".to_owned(),
        SheetBox::Signatures => "signatures".to_owned(),
        SheetBox::Seal => "seal".to_owned(),
        SheetBox::Key => "key".to_owned(),
        SheetBox::Liberos => "liberos".to_owned(),
    }
}

fn found(count: usize) -> String {
    match count {
        0 => "Nothing in this record needs a check.".to_owned(),
        1 => "One thing in this record needs a check.".to_owned(),
        n => format!("{n} things in this record need a check. The most important come first."),
    }
}

fn weight(weight: Weight) -> &'static str {
    match weight {
        Weight::Result => "Result",
        Weight::Play => "Play",
        Weight::Form => "Form",
    }
}

fn weight_more(weight: Weight) -> &'static str {
    match weight {
        Weight::Result => "May change the result",
        Weight::Play => "About how the match was played",
        Weight::Form => "About how the record was kept",
    }
}

fn weights(weights: Weights) -> String {
    let parts: Vec<String> = weights
        .counted()
        .map(|(of, count)| format!("{} {count}", weight(of)))
        .collect();
    match parts.is_empty() {
        true => "Nothing to check".to_owned(),
        false => parts.join(", "),
    }
}

fn signer(signer: Signer) -> String {
    match signer {
        Signer::Captain(team) => format!("captain {team}"),
        Signer::Coach(team) => format!("coach {team}"),
        Signer::Scorer => "scorer".to_owned(),
        Signer::SecondReferee => "2nd referee".to_owned(),
        Signer::FirstReferee => "1st referee".to_owned(),
    }
}

fn seal(seal: SealState) -> &'static str {
    match seal {
        SealState::OnPaper => "On paper",
        SealState::None => "Not sealed",
        SealState::Broken => "Broken",
        SealState::GoneOn => "Reopened",
        SealState::Holds => "Sealed",
    }
}

fn sets(line: &Line) -> String {
    let Some(sets) = line.sets else {
        return "–".to_owned();
    };
    let open = if line.is_over { "" } else { " (not over)" };
    format!("{}:{}{open}", sets[Team::A], sets[Team::B])
}

fn points(line: &Line) -> String {
    let points: Vec<String> = line.points.iter().map(ToString::to_string).collect();
    points.join(", ")
}

fn arrow(backwards: bool) -> &'static str {
    if backwards {
        " ↓"
    } else {
        " ↑"
    }
}

fn match_no(number: &str) -> String {
    format!("No. {number}")
}

fn report_of(matches: usize, days: &str) -> String {
    let count = match matches {
        1 => "1 match".to_owned(),
        n => format!("{n} matches"),
    };
    match days {
        "" => count,
        days => format!("{count}, {days}"),
    }
}

fn days(first: &str, last: &str) -> String {
    if first == last {
        first.to_owned()
    } else {
        format!("{first} to {last}")
    }
}

fn sheets_of(count: usize) -> String {
    match count {
        1 => "1 sheet, on pages of its own.".to_owned(),
        n => format!("{n} sheets, each on pages of its own."),
    }
}

fn papers_left_out(count: usize) -> String {
    match count {
        1 => "1 keyed-in sheet is not printed here: you have it on paper.".to_owned(),
        n => format!("{n} keyed-in sheets are not printed here: you have them on paper."),
    }
}

fn take_list(team: &str, numbers: usize) -> String {
    format!("Take the list of {team} from its last record ({numbers} numbers)")
}

fn key(key: &str) -> String {
    match key {
        "ArrowDown" => "↓".to_owned(),
        "ArrowUp" => "↑".to_owned(),
        "Escape" => "Esc".to_owned(),
        "Backspace" => "⌫".to_owned(),
        key if key.len() == 1 => key.to_uppercase(),
        key => key.to_owned(),
    }
}

fn command(command: Command) -> String {
    match command {
        Command::Keys => "Show the keys".to_owned(),
        Command::Search => "Search".to_owned(),
        Command::Next => "Next match".to_owned(),
        Command::Previous => "Previous match".to_owned(),
        Command::Toggle => "Select the match, or not".to_owned(),
        Command::All => "Select all that are shown".to_owned(),
        Command::None => "Select none".to_owned(),
        Command::Pool => "Select its pool".to_owned(),
        Command::Sheet => "Show the sheet".to_owned(),
        Command::Log => "Show the match log".to_owned(),
        Command::Findings => "Go to what needs a check".to_owned(),
        Command::Close => "Close the match".to_owned(),
        Command::View => "List or table".to_owned(),
        Command::Compare => "Compare the two selected".to_owned(),
        Command::Rank => "Rank the selected matches".to_owned(),
        Command::Report => "Report of the day".to_owned(),
        Command::Archive => "Archive or restore the selected".to_owned(),
        Command::Delete => "Delete the selected".to_owned(),
        Command::Sort(Column::Findings) => "Sort by what needs a check".to_owned(),
        Command::Sort(by) => format!("Sort by {}", column(by).to_lowercase()),
    }
}
