//! The words of the desk where it is a table and several panes: how matches are found, sorted and chosen, what the
//! keys do, and what goes on paper.

use app::desk::{Column, Command, Show};
use game::Signer;
use reports::list::{Line, SealState, Signed};
use reports::{SheetBox, Weight, Weights};

words! { DeskWorkWords in desk_work;
    drop_here -> &'static str;
    search -> &'static str;
    filter_and_sort -> &'static str;
    pool -> &'static str;
    all_pools -> &'static str;
    show_which -> &'static str;
    show(show: Show) -> &'static str;
    sort_by -> &'static str;
    column(column: Column) -> &'static str;
    as_list -> &'static str;
    as_table -> &'static str;
    keys -> &'static str;
    matches -> &'static str;
    select -> &'static str;
    select_one(title: &str) -> String;
    how_many(shown: usize, all: usize) -> String;
    nothing_fits -> &'static str;
    show_everything -> &'static str;
    reading(read: usize, all: usize) -> String;
    select_all -> &'static str;
    select_none -> &'static str;
    more -> &'static str;
    archive -> &'static str;
    restore -> &'static str;
    delete -> &'static str;
    archived(count: usize) -> String;
    restored(count: usize) -> String;
    all_deleted(count: usize) -> String;
    /// So many of those that were to be deleted are still here.
    not_deleted(count: usize) -> String;
    /// What is lost, before it is: records, paper sheets, files of pools.
    delete_question(counts: [usize; 3]) -> String;
    choose_first -> &'static str;
    previous -> &'static str;
    next -> &'static str;
    previous_is(title: &str) -> String;
    next_is(title: &str) -> String;
    parts_of_record -> &'static str;
    sheet -> &'static str;
    log -> &'static str;
    open_sheet -> &'static str;
    close -> &'static str;
    show_entry(n: u32) -> String;
    show_box(of: SheetBox) -> String;
    /// How many things are to be looked at.
    found(count: usize) -> String;
    /// What a finding may touch.
    weight(weight: Weight) -> &'static str;
    weight_more(weight: Weight) -> &'static str;
    /// How many there are of each weight, for whoever listens.
    weights(weights: Weights) -> String;
    /// Nobody has signed under the result.
    nobody -> &'static str;
    /// Everybody has.
    everybody -> &'static str;
    signer(signer: Signer) -> String;
    /// The state of a seal in a word or two.
    seal(seal: SealState) -> &'static str;
    /// The sets of a match, short.
    sets(line: &Line) -> String;
    /// The points of each set.
    points(line: &Line) -> String;
    /// Which way a column is sorted.
    arrow(backwards: bool) -> &'static str;
    match_no(number: &str) -> String;
    grid -> &'static str;
    grid_more -> &'static str;
    report -> &'static str;
    print_sheets -> &'static str;
    sheets -> &'static str;
    print -> &'static str;
    cannot_print -> &'static str;
    /// Which matches a report is of.
    report_of(matches: usize, days: &str) -> String;
    /// The first and the last day of several.
    days(first: &str, last: &str) -> String;
    match_number -> &'static str;
    time -> &'static str;
    set_points -> &'static str;
    no_sheets -> &'static str;
    sheets_of(count: usize) -> String;
    /// So many of the chosen ones are paper sheets, which are printed from here no second time.
    papers_left_out(count: usize) -> String;
    known_teams -> &'static str;
    take_list(team: &str, numbers: usize) -> String;
    keys_title -> &'static str;
    keys_more -> &'static str;
    keys_on -> &'static str;
    key(key: &str) -> String;
    /// What a key does.
    command(command: Command) -> String;
}

/// Who has signed under the result.
#[must_use]
pub fn signed(line: &Line) -> String {
    match line.signed() {
        Signed::Unknown => String::new(),
        Signed::Nobody => nobody().to_owned(),
        Signed::Everybody => everybody().to_owned(),
        Signed::Some(signers) => {
            let names: Vec<String> = signers.iter().map(|of| signer(*of)).collect();
            names.join(", ")
        }
    }
}
