//! Keying in a paper sheet: which box comes next, when a box is full, what is marked and when.

use game::{simulate, Signer, Timeline, Who};
use proptest::prelude::*;
use reports::list::Line;
use reports::paper::{
    self, BoxProblem, Cell, Draft, Fault, Mark, MarkKind, PaperHead, PaperSheet, Part,
};
use rules::{Preset, Shirt, Team};

fn cell(part: Part, team: Team, row: u8) -> Cell {
    Cell::new(1, part, team, row, 0)
}

/// The paper sheet of a simulated match, its lists in the order in which a form has them.
fn sheet(seed: u64) -> PaperSheet {
    let timeline = Timeline::of(simulate(Preset::SchoolJunior, seed));
    in_the_order_of_the_form(super::paper::on_paper(&timeline))
}

fn in_the_order_of_the_form(mut sheet: PaperSheet) -> PaperSheet {
    sheet.sanctions.sort_by_key(|s| (s.set, s.team));
    for set in &mut sheet.sets {
        set.substitutions.sort_by_key(|s| s.team);
        set.time_outs.sort_by_key(|t| t.team);
    }
    sheet
}

#[test]
fn what_is_keyed_in_is_the_sheet_and_is_kept() {
    let mut seen = [0; 3];
    for preset in [
        Preset::SchoolJunior,
        Preset::SchoolSenior,
        Preset::International,
    ] {
        for seed in 1..40 {
            let timeline = Timeline::of(simulate(preset, seed));
            let sheet = in_the_order_of_the_form(super::paper::on_paper(&timeline));
            let draft = Draft::of(&sheet);
            assert_eq!(draft.check(true).sheet, sheet, "{preset:?} {seed}");
            assert_eq!(Draft::of_written(&draft.written()), draft);
            let exceptional = sheet.sets.iter().flat_map(|s| &s.substitutions);
            seen[0] += exceptional.filter(|s| s.exceptional).count();
            seen[1] += sheet.sanctions.len();
            seen[2] += sheet.teams.a.liberos.len();
        }
    }
    assert!(seen.iter().all(|n| *n > 10), "{seen:?}");
}

/// A match with nothing but what a sheet has boxes for, keyed in from its paper: every box agrees, and the
/// points are in the same order.
#[test]
fn a_simulated_match_keyed_in_from_its_paper_agrees() {
    let mut seen = 0;
    for preset in [
        Preset::International,
        Preset::SchoolSenior,
        Preset::SchoolJunior,
    ] {
        for seed in 0..120 {
            let Some(timeline) = super::paper::simulated(preset.rules(), seed) else {
                continue;
            };
            let draft = Draft::of(&super::paper::on_paper(&timeline));
            let checkup = draft.check(true);
            // A set that was held up for long is rightly asked about.
            let held_up = |mark: &&Mark| {
                mark.cell.part == Part::End
                    && matches!(&mark.kind, MarkKind::Finding(f) if matches!(f.fault, Fault::ImplausibleTime { .. }))
            };
            let marks: Vec<&Mark> = checkup.marks.iter().filter(|m| !held_up(m)).collect();
            assert_eq!(marks, Vec::<&Mark>::new(), "{preset:?} {seed}");
            let rallies = super::paper::rallies(&timeline);
            assert_eq!(checkup.checked.rallies, rallies, "{preset:?} {seed}");
            let rebuilt = Timeline::of(checkup.checked.log.entries);
            let kinds = |timeline: &Timeline| -> Vec<_> {
                let sanctions = timeline.state().sanctions().iter();
                let mut kinds: Vec<_> = sanctions
                    .map(|s| (s.set, s.team, s.kind, s.who.clone(), s.score))
                    .collect();
                // What was given at one score has no order on paper.
                kinds.sort_by_key(|k| (k.0, k.4.a + k.4.b, k.1, k.2.code()));
                kinds
            };
            assert_eq!(kinds(&rebuilt), kinds(&timeline), "{preset:?} {seed}");
            seen += 1;
        }
    }
    assert!(seen > 150, "only {seen} matches had nothing but boxes");
}

#[test]
fn marks_name_the_box_of_the_finding() {
    let mut draft = Draft::of(&sheet(380));
    assert_eq!(draft.check(false).marks, []);
    draft.set(cell(Part::Final, Team::B, 0), "24");
    let marks = draft.check(false).marks;
    assert_eq!(marks.len(), 1);
    assert_eq!(marks[0].cell, cell(Part::Final, Team::B, 0));
    let say = text::paper::mark(&marks[0], (&draft).into());
    assert!(say.contains("24"), "{say}");
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

/// The second 1 may still become a 10, so it is marked once something stands behind the list.
#[test]
fn a_number_that_is_on_a_list_twice_is_marked_with_the_next_line() {
    let mut draft = Draft::new(Preset::SchoolJunior);
    for (row, number) in ["1", "4", "1"].into_iter().enumerate() {
        let row = u8::try_from(row).expect("small");
        draft.set(Cell::new(Cell::HEAD, Part::List, Team::A, row, 0), number);
    }
    assert_eq!(draft.check(false).marks, []);
    draft.set(Cell::new(Cell::HEAD, Part::List, Team::B, 0, 0), "7");
    let marks = draft.check(false).marks;
    let list = Cell::new(Cell::HEAD, Part::List, Team::A, 0, 0);
    assert_eq!(marks.iter().map(|m| m.cell).collect::<Vec<_>>(), [list]);
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
    assert_eq!(draft.next(out), Some(cell(Part::Sanction, Team::A, 0)));
    let what = cell(Part::Sanction, Team::B, 0);
    assert_eq!(draft.next(what), Some(cell(Part::Start, Team::A, 0)));
    assert_eq!(draft.next(cell(Part::Minutes, Team::A, 0)), None);
}

#[test]
fn an_exceptional_substitution_is_marked_from_anywhere_in_its_line() {
    let mut draft = Draft::new(Preset::SchoolSenior);
    let line = |column| Cell::new(1, Part::Change, Team::A, 0, column);
    for (column, typed) in [(0, "4"), (1, "9e"), (2, "10"), (3, "8")] {
        draft.set(line(column), typed);
    }
    assert_eq!((draft.get(line(1)), draft.get(line(4))), ("9", "E"));
    let made = draft.check(true).sheet.sets[0].substitutions[0];
    assert!(made.exceptional);
    // The way leads past the mark, and back to it where there is one.
    let next = Cell::new(1, Part::Change, Team::A, 1, 0);
    assert_eq!(draft.next(line(3)), Some(next));
    assert_eq!(draft.previous(next), Some(line(4)));
    draft.set(line(4), "");
    assert_eq!(draft.previous(next), Some(line(3)));
    assert!(!draft.check(true).sheet.sets[0].substitutions[0].exceptional);
}

#[test]
fn a_line_of_the_sanctions_box_says_what_and_who() {
    let mut draft = Draft::new(Preset::SchoolSenior);
    let lines = [
        ["w", "7", "3", "2"],
        ["P", "c", "3", "2"],
        ["e", "ac", "4", "4"],
        ["D", "Manager", "5", "4"],
        ["W", "d", "5", "5"],
        ["i", "", "", ""],
    ];
    for (row, line) in (0..).zip(lines) {
        for (column, typed) in (0..).zip(line) {
            draft.set(Cell::new(1, Part::Sanction, Team::B, row, column), typed);
        }
    }
    let given = draft.check(true).sheet.sanctions;
    let codes: Vec<&str> = given.iter().map(|s| s.kind.code()).collect();
    assert_eq!(
        codes,
        [
            "warning",
            "penalty",
            "expulsion",
            "disqualification",
            "delay_warning",
            "improper_request",
        ]
    );
    let staff = |role: &str| Some(Who::Staff(role.to_owned()));
    assert_eq!(given[0].who, Some(Who::Player(Shirt(7))));
    assert_eq!(given[1].who, staff("coach"));
    assert_eq!(given[2].who, staff("assistant coach"));
    assert_eq!(given[3].who, staff("Manager"));
    assert_eq!((given[0].score.a, given[0].score.b), (2, 3));
    // A delay is no expulsion, and nobody is warned without a name or a number.
    for (kind, who) in [("E", "D"), ("W", ""), ("I", "7")] {
        draft.set(Cell::new(1, Part::Sanction, Team::A, 0, 0), kind);
        draft.set(Cell::new(1, Part::Sanction, Team::A, 0, 1), who);
        let marks = draft.check(true).marks;
        let line = Cell::new(1, Part::Sanction, Team::A, 0, 0);
        assert!(marks.iter().any(|m| m.cell == line), "{kind} {who}");
    }
}

#[test]
fn a_total_that_the_sets_do_not_add_up_to_is_marked() {
    let draft = Draft::of(&sheet(380));
    assert_eq!(draft.check(true).marks, []);
    let result = |part| Cell::new(Cell::RESULT, part, Team::B, 0, 0);
    let minutes = Cell::new(Cell::RESULT, Part::AllMinutes, Team::A, 0, 0);
    for cell in [
        result(Part::AllPoints),
        result(Part::AllTimeOuts),
        result(Part::AllChanges),
        minutes,
        cell(Part::Minutes, Team::A, 0),
    ] {
        let mut wrong = draft.clone();
        wrong.set(cell, "99");
        let marks = wrong.check(true).marks;
        assert_eq!(marks.len(), 1, "{marks:?}");
        assert_eq!(marks[0].cell, cell);
        // An empty box of these is no fault: few sheets have them all.
        let mut empty = draft.clone();
        empty.set(cell, "");
        let other = Cell {
            team: Team::A,
            ..cell
        };
        empty.set(other, "");
        assert_eq!(empty.check(true).marks, []);
    }
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

/// The heading of the paper: number, day, officials, who has signed. It comes back from a file and from the draft.
#[test]
fn the_heading_of_a_paper_sheet_survives_file_and_draft() {
    let mut sheet = sheet(3);
    sheet.head = PaperHead {
        number: "7".to_owned(),
        day: Some("2026-05-09".to_owned()),
        officials: ["Ada Lark", "", "Bo Finch"].map(str::to_owned),
        signed: vec![Signer::Captain(Team::B), Signer::FirstReferee],
    };
    let read = paper::read(&paper::write(&sheet));
    assert_eq!(read.problems, []);
    assert_eq!(read.read.as_ref(), Some(&sheet));
    let draft = Draft::of(&sheet);
    assert_eq!(Draft::of_written(&draft.written()), draft);
    assert_eq!(draft.check(true).sheet.head, sheet.head);
    // What stands on the paper shows in the list.
    let line = Line::of_paper(&draft);
    assert_eq!(
        (line.number.as_str(), line.day.as_deref()),
        ("7", Some("2026-05-09"))
    );
    assert_eq!(line.signed, sheet.head.signed);
}

/// The thirteenth month is marked at its box, and half a day as well.
#[test]
fn a_day_that_is_none_is_marked() {
    for (typed, is_wrong) in [
        ("20261309", true),
        ("2026", true),
        ("20260509", false),
        ("", false),
    ] {
        let mut draft = Draft::of(&sheet(3));
        let cell = Cell::new(Cell::HEAD, Part::Day, Team::A, 0, 0);
        draft.set(cell, typed);
        let marks = draft.check(true).marks;
        let marked = marks
            .iter()
            .any(|mark| mark.cell == cell && mark.kind == MarkKind::Box(BoxProblem::NoDay));
        assert_eq!(marked, is_wrong, "{typed}");
        assert_eq!(draft.is_full(cell), typed.len() == 8, "{typed}");
    }
}

/// A list that is known from another match takes the place of what was keyed in, liberos too.
#[test]
fn a_known_list_is_taken_over() {
    let mut draft = Draft::new(rules::Preset::International);
    for (row, number) in ["99", "98", "97"].into_iter().enumerate() {
        let row = u8::try_from(row).expect("a row");
        draft.set(Cell::new(Cell::HEAD, Part::List, Team::B, row, 0), number);
    }
    draft.take_list(Team::B, &[Shirt(4), Shirt(12)], &[Shirt(12)]);
    let head = draft.check(false).sheet.teams.b;
    assert_eq!(head.players, Some(vec![Shirt(4), Shirt(12)]));
    assert_eq!(head.liberos, [Shirt(12)]);
}
