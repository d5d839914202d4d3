//! What of a sheet is marked while it is being keyed in, and at which box.

use super::take::{letter, Lines, Taken};
use super::{Cell, Draft, Part};
use crate::paper::{check, Checked, Fault, Finding, PaperSheet};
use crate::Weight;
use rules::Team;

/// A box that does not agree.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// The box; for what concerns several, the first of them.
    pub cell: Cell,
    /// What is wrong with it.
    pub kind: MarkKind,
}

/// What is wrong with a box.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum MarkKind {
    /// It cannot be taken as it stands.
    Box(BoxProblem),
    /// It does not agree with the others or with the rules.
    Finding(Finding),
}

/// Why a box cannot be taken as it stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoxProblem {
    /// Of a pair of boxes only the other one is filled in.
    OtherIsFilled,
    /// Who served first in the set is missing.
    NoFirstService,
    /// A sanction without its person, or no sanction.
    SanctionUnclear,
    /// No time of day.
    NoTime,
    /// No day of the calendar.
    NoDay,
    /// It is empty, and one after it is not.
    Gap,
    /// Boxes of its line are missing.
    LineIncomplete,
}

impl Mark {
    /// The number of the rule (FIVB Official Volleyball Rules 2025-2028), where one is met.
    #[must_use]
    pub fn rule(&self) -> Option<&'static str> {
        match &self.kind {
            MarkKind::Box(_) => None,
            MarkKind::Finding(finding) => finding.fault.rule(),
        }
    }
}

/// What was keyed in so far, checked.
#[derive(Clone, Debug)]
pub struct Checkup {
    /// The sheet.
    pub sheet: PaperSheet,
    /// What the checking of a whole sheet says.
    pub checked: Checked,
    /// The marks, in the order of the sheet.
    pub marks: Vec<Mark>,
}

impl Mark {
    /// What it may touch: result, play or form.
    #[must_use]
    pub fn weight(&self) -> Weight {
        match &self.kind {
            MarkKind::Box(_) => Weight::Form,
            MarkKind::Finding(finding) => finding.fault.weight(),
        }
    }
}

impl Draft {
    /// Whether the points at the end of a set are there: then everything above them is.
    fn is_keyed(&self, set: u8) -> bool {
        self.points(set).iter().all(|(_, points)| points.is_some())
    }

    /// Whether anything was keyed in behind the line that begins with a box.
    fn goes_on_after(&self, line: Cell) -> bool {
        let end = Cell {
            row: u8::MAX,
            column: u8::MAX,
            ..line
        };
        self.cells.keys().any(|cell| *cell > end)
    }

    /// The sheet as far as it was keyed in, and every box that does not agree. While a set is being keyed
    /// in, only what can already be said of it is; `all` says everything.
    #[must_use]
    pub fn check(&self, all: bool) -> Checkup {
        let mut taken = Taken::from(self);
        let sheet = taken.sheet();
        let Taken {
            mut marks, lines, ..
        } = taken;
        let checked = check(&sheet);
        let result_begun = self.cells.keys().any(|c| c.set == Cell::RESULT);
        let any_keyed = (1..=self.sets()).any(|set| self.is_keyed(set));
        let undecided = |f: &Fault| matches!(f, Fault::MatchNotFinished);
        let decided = !checked.findings.iter().any(|f| undecided(&f.fault));
        for finding in &checked.findings {
            let cell = cell_of(finding.set, &finding.place, &lines);
            let ripe = match (finding.set, &finding.fault) {
                (_, Fault::RoundsDecrease { .. }) => true,
                (Some(set), _) => self.is_keyed(set),
                (None, Fault::MatchNotFinished) => result_begun,
                // A 1 may still become a 10.
                (None, Fault::Against { .. }) if cell.set == Cell::HEAD => self.goes_on_after(cell),
                (None, _) if cell.set == Cell::RESULT => result_begun || decided,
                (None, _) => any_keyed,
            };
            if all || ripe {
                marks.push(Mark {
                    cell,
                    kind: MarkKind::Finding(finding.clone()),
                });
            }
        }
        marks.retain(|m| {
            all || m.cell.set == Cell::HEAD
                || m.cell.set == Cell::RESULT
                || self.is_keyed(m.cell.set)
                || m.cell.part == Part::Round
        });
        rules::sort_by_key(&mut marks, |m| m.cell);
        Checkup {
            sheet,
            checked,
            marks,
        }
    }
}

/// The box that a finding is about.
fn cell_of(set: Option<u8>, place: &str, lines: &Lines) -> Cell {
    let words: Vec<&str> = place
        .split(['.', '[', ']'])
        .filter(|w| !w.is_empty())
        .collect();
    let team = words.iter().find_map(|w| letter(w)).unwrap_or(Team::A);
    let index = words.iter().find_map(|w| w.parse::<usize>().ok());
    let row = index.and_then(|i| u8::try_from(i).ok()).unwrap_or(0);
    let in_set = set.unwrap_or(Cell::RESULT);
    let line = |part| {
        let at = (in_set, part, index.unwrap_or(0));
        lines
            .get(&at)
            .copied()
            .unwrap_or(Cell::new(in_set, part, team, row, 0))
    };
    match (
        words.first().copied().unwrap_or_default(),
        words.get(1).copied(),
    ) {
        ("rounds", _) => Cell::new(in_set, Part::Round, team, row, 0),
        ("final", _) => Cell::only(in_set, Part::Final, team),
        ("line_up", _) => Cell::new(in_set, Part::LineUp, team, row, 0),
        ("first_service", _) => Cell::only(in_set, Part::First, Team::A),
        ("start", _) => Cell::only(in_set, Part::Start, Team::A),
        ("end", _) => Cell::only(in_set, Part::End, Team::A),
        ("minutes", _) => Cell::only(in_set, Part::Minutes, Team::A),
        ("time_outs", _) => line(Part::TimeOut),
        ("substitutions", _) => line(Part::Change),
        ("sanctions", _) => line(Part::Sanction),
        ("teams", _) => Cell::only(Cell::HEAD, Part::List, team),
        ("sets", _) if index.is_some() => Cell::only(row + 1, Part::First, Team::A),
        ("result", Some("sets")) => Cell::only(Cell::RESULT, Part::Sets, team),
        ("result", Some("points")) => Cell::only(Cell::RESULT, Part::AllPoints, team),
        ("result", Some("time_outs")) => Cell::only(Cell::RESULT, Part::AllTimeOuts, team),
        ("result", Some("substitutions")) => Cell::only(Cell::RESULT, Part::AllChanges, team),
        ("result", Some("minutes")) => Cell::only(Cell::RESULT, Part::AllMinutes, Team::A),
        _ => Cell::only(Cell::RESULT, Part::Winner, Team::A),
    }
}
