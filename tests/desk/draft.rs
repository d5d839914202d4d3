//! Keying in a paper sheet: which box comes next, when a box is full, what is marked and when.

use dutystand::game::{rehearse, Replay};
use dutystand::rules::{Preset, Team};
use dutystand::sheet::paper::{self, Cell, Draft, PaperSheet, Part};
use dutystand::sheet::Sheet;
use proptest::prelude::*;

fn cell(part: Part, team: Team, row: u8) -> Cell {
    Cell::new(1, part, team, row, 0)
}

/// The paper sheet of a rehearsal, as far as a form can hold it.
fn sheet(seed: u64) -> PaperSheet {
    let replay = Replay::of(rehearse(Preset::SchoolJunior, seed));
    let rules = *replay.state().rules();
    let mut sheet = paper::of_sheet(&Sheet::of(&replay), rules, 0);
    sheet.sanctions.clear();
    for set in &mut sheet.sets {
        set.substitutions.sort_by_key(|s| s.team);
        set.time_outs.sort_by_key(|t| t.team);
        set.substitutions
            .iter_mut()
            .for_each(|s| s.exceptional = false);
    }
    sheet
}

#[test]
fn what_is_keyed_in_is_the_sheet_and_is_kept() {
    for seed in 1..40 {
        let sheet = sheet(seed);
        let draft = Draft::of(&sheet);
        assert_eq!(draft.check(true).sheet, sheet, "seed {seed}");
        assert_eq!(Draft::of_written(&draft.written()), draft);
    }
}

#[test]
fn marks_name_the_box_of_the_finding() {
    let mut draft = Draft::of(&sheet(380));
    assert_eq!(draft.check(false).marks, []);
    draft.set(cell(Part::Final, Team::B, 0), "24");
    let marks = draft.check(false).marks;
    assert_eq!(marks.len(), 1);
    assert_eq!(marks[0].cell, cell(Part::Final, Team::B, 0));
    assert!(marks[0].say.contains("24"), "{}", marks[0].say);
    // Times, a player nobody knows, the winner.
    let mut draft = Draft::of(&sheet(380));
    draft.set(cell(Part::Start, Team::A, 0), "2561");
    draft.set(cell(Part::LineUp, Team::B, 3), "77");
    draft.set(Cell::new(Cell::RESULT, Part::Winner, Team::A, 0, 0), "B");
    let marked: Vec<Cell> = draft.check(false).marks.iter().map(|m| m.cell).collect();
    for wrong in [
        cell(Part::Start, Team::A, 0),
        cell(Part::LineUp, Team::B, 3),
        Cell::new(Cell::RESULT, Part::Winner, Team::A, 0, 0),
    ] {
        assert!(marked.contains(&wrong), "{wrong:?} is not in {marked:?}");
    }
}

#[test]
fn a_half_keyed_set_is_not_scolded_but_for_what_cannot_be() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    draft.set(cell(Part::First, Team::A, 0), "a");
    for (row, total) in ["2", "5", "9"].into_iter().enumerate() {
        draft.set(cell(Part::Round, Team::A, row as u8), total);
    }
    assert_eq!(draft.check(false).marks, []);
    assert!(!draft.check(true).marks.is_empty());
    draft.set(cell(Part::Round, Team::A, 3), "7");
    // Whether the other team's turns are there or not, totals only grow.
    for (row, total) in ["1", "2", "3"].into_iter().enumerate() {
        draft.set(cell(Part::Round, Team::B, row as u8), total);
    }
    let marks = draft.check(false).marks;
    assert_eq!(marks.len(), 1, "{marks:?}");
    assert_eq!(marks[0].cell, cell(Part::Round, Team::A, 3));
}

#[test]
fn an_empty_box_between_full_ones_is_marked() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    draft.set(cell(Part::Round, Team::B, 0), "2");
    draft.set(cell(Part::Round, Team::B, 2), "5");
    let marks = draft.check(false).marks;
    assert_eq!(marks[0].cell, cell(Part::Round, Team::B, 1));
}

#[test]
fn a_box_is_full_when_nothing_more_can_come() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    let mut full = |cell: Cell, text: &str| {
        draft.set(cell, text);
        draft.is_full(cell)
    };
    let round = |row| cell(Part::Round, Team::A, row);
    assert!(!full(round(0), "1"), "it could be 12");
    assert!(
        full(round(0), "3"),
        "nobody serves 30 points in the first turn"
    );
    assert!(full(round(0), "4"));
    assert!(!full(round(1), "1"), "totals grow, so it is 1x");
    assert!(full(round(1), "12"));
    assert!(!full(round(2), "2"));
    assert!(full(cell(Part::First, Team::A, 0), "b"));
    assert!(
        !full(cell(Part::First, Team::A, 0), "x"),
        "no team is called so"
    );
    assert!(full(cell(Part::End, Team::A, 0), "1805"));
    assert!(!full(cell(Part::End, Team::A, 0), "180"));
    assert!(!full(cell(Part::LineUp, Team::A, 0), "4"));
    // With the list known, 4 is nobody else's beginning.
    for (row, number) in ["4", "7", "12"].into_iter().enumerate() {
        draft.set(
            Cell::new(Cell::HEAD, Part::List, Team::A, row as u8, 0),
            number,
        );
    }
    let mut full = |cell: Cell, text: &str| {
        draft.set(cell, text);
        draft.is_full(cell)
    };
    assert!(full(cell(Part::LineUp, Team::A, 0), "4"));
    assert!(!full(cell(Part::LineUp, Team::A, 0), "1"), "12 begins so");
}

#[test]
fn the_empty_box_at_the_end_of_a_list_leads_on() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    let first = cell(Part::Round, Team::A, 0);
    assert_eq!(draft.next(first), Some(cell(Part::Round, Team::B, 0)));
    draft.set(first, "3");
    let second = cell(Part::Round, Team::A, 1);
    assert_eq!(draft.next(first), Some(second));
    assert_eq!(draft.next(second), Some(cell(Part::Round, Team::B, 0)));
    assert_eq!(draft.previous(second), Some(first));
    let out = cell(Part::Change, Team::B, 0);
    assert_eq!(draft.next(out), Some(cell(Part::Start, Team::A, 0)));
    assert_eq!(draft.next(cell(Part::End, Team::A, 0)), None);
}

#[test]
fn what_does_not_belong_into_a_box_is_left_out() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    let mut put = |cell: Cell, text: &str| {
        draft.set(cell, text);
        draft.get(cell).to_owned()
    };
    assert_eq!(put(cell(Part::Round, Team::A, 0), "1x2"), "12");
    assert_eq!(put(cell(Part::Round, Team::A, 0), "-"), "");
    assert_eq!(put(cell(Part::First, Team::A, 0), "ab"), "B");
    assert_eq!(put(cell(Part::Start, Team::A, 0), "18:05"), "1805");
}

proptest! {
    #![proptest_config(super::config(200))]

    /// Whatever is kept, reading it ends with a form, and checking it never fails.
    #[test]
    fn any_text_is_a_draft(lines in "[ -~\n]{0,400}") {
        let _ = Draft::of_written(&lines).check(true);
    }

    /// Whatever is keyed in, every mark is at a box of the form, and the way through it ends.
    #[test]
    fn any_keys_are_a_sheet(keys in proptest::collection::vec((0usize..60, 0u16..40), 0..120)) {
        let mut draft = Draft::new(Preset::SchoolJunior);
        for (at, number) in keys {
            let set = if at % 7 == 0 { 2 } else { 1 };
            let cells = draft.cells(set);
            draft.set(cells[at % cells.len()], &number.to_string());
        }
        for set in [Cell::HEAD, 1, 2, Cell::RESULT] {
            let cells = draft.cells(set);
            let mut at = cells.first().copied();
            let mut steps = 0;
            while let Some(cell) = at {
                at = draft.next(cell);
                steps += 1;
                prop_assert!(steps <= cells.len());
            }
        }
        for mark in draft.check(true).marks {
            prop_assert!(draft.cells(mark.cell.set).contains(&mark.cell), "{:?}", mark);
        }
    }
}
