//! The words of the desk, in one place; a second language is a second file like this one.

use app::machine::LocalTime;
use reports::list::{Line, SealState};
use reports::paper::{Cell, Draft, Part};
use reports::standings::Criterion;
use reports::FileKind;
use rules::{ByTeam, Score};

pub fn pair((won, lost): (u64, u64)) -> String {
    format!("{won}:{lost}")
}

words! { DeskWords in desk;

    desk -> &'static str;

    findings -> &'static str;

    compare -> &'static str;

    table -> &'static str;

    paper -> &'static str;

    review -> &'static str;

    from_paper -> &'static str;

    key_in -> &'static str;

    key_in_more -> &'static str;

    pool_file -> &'static str;

    rule_of_file -> &'static str;

    again -> &'static str;

    give_back -> &'static str;

    list_csv -> &'static str;

    lead_of_both -> &'static str;

    tour -> &'static str;

    tour_table -> &'static str;

    tour_compare -> &'static str;

    tour_paper -> &'static str;

    tour_findings -> &'static str;

    tour_review -> &'static str;

    look_around -> &'static str;

    day_bring -> &'static str;

    day_more -> &'static str;

    day_take_away -> &'static str;

    day_comes -> &'static str;

    day_is_here -> &'static str;

    day_not_kept -> &'static str;
    /// There is no room for another paper sheet.
    sheet_not_begun -> &'static str;

    day_is_gone -> &'static str;

    nothing_here -> &'static str;

    no_competition -> &'static str;

    choose_all_label -> &'static str;

    chosen -> &'static str;

    compare_them -> &'static str;

    table_of_them -> &'static str;

    choose_two -> &'static str;

    choose_some -> &'static str;

    first -> &'static str;

    second -> &'static str;

    they_agree -> &'static str;

    same_points -> &'static str;

    same_course -> &'static str;

    rallies_around -> &'static str;

    rally -> &'static str;

    why -> &'static str;

    csv -> &'static str;

    print -> &'static str;

    no_results -> &'static str;

    rule_of_order -> &'static str;

    rule_of_order_more -> &'static str;

    move_up -> &'static str;

    remove -> &'static str;

    points_for -> &'static str;

    meetings -> &'static str;

    match_points -> &'static str;

    columns -> [&'static str; 10];

    parts -> &'static str;

    check_all -> &'static str;

    export_paper -> &'static str;

    not_kept -> &'static str;

    keys -> &'static str;

    findings_of(count: usize, teams: &str) -> String;

    found(count: usize) -> String;
    /// What an item is, and when its last entry was made.
    kind_of(line: &Line, last: Option<LocalTime>) -> String;
    /// Why the result of a match may not be what was played.
    in_doubt(line: &Line) -> Option<String>;
    /// The rule of order in a line.
    ranked_by(criteria: &[Criterion]) -> String;

    pool_of(results: usize) -> String;

    deleted(title: &str) -> String;
    how_many_chosen(count: usize) -> String;

    choose_all(group: &str) -> String;

    about_entry(n: u32, words: &str, time: &str) -> String;

    rule(rule: &str) -> String;

    they_part(set: u8, rally: usize, score: Score) -> String;

    who_won(names: &ByTeam<String>) -> String;

    differences(count: usize) -> String;

    entries_of(entries: (Option<u32>, Option<u32>)) -> String;

    times(times: u8) -> String;

    put_higher(criterion: &str) -> String;

    put_out(criterion: &str) -> String;

    add(criterion: &str) -> String;

    part_of_sheet(set: u8) -> String;

    part(part: Part) -> &'static str;
    /// The letters that the boxes of a part know.
    letters_of(part: Part) -> Option<&'static str>;
    /// A box among several of its part, in words; none where it has only one.
    place_of(cell: Cell, draft: &Draft) -> Option<String>;
    /// The full name of a box, for whoever listens.
    name_of(cell: Cell, draft: &Draft) -> String;
    /// What stands in an empty box of a list, so that its columns can be told apart.
    short_column(cell: Cell) -> &'static str;
    /// A box on the whole sheet.
    where_is(cell: Cell, draft: &Draft) -> String;
    /// In the place of the first total of a team that receives first: the paper has a cross there.
    no_first_turn -> &'static str;

    rally_order(order: &str) -> String;

    marks(count: usize, all: bool) -> String;
    /// Both teams of a line.
    teams_of(line: &Line) -> String;
    /// Where a match stands: sets, and in brackets the points of each.
    result_of(line: &Line) -> String;
    /// How many things are to be looked at.
    to_check(count: usize) -> String;
    /// The state of a seal.
    seal_state(seal: SealState) -> &'static str;
    /// A kind of file, in words that fit behind *This is*.
    file_kind(kind: FileKind) -> &'static str;
}
