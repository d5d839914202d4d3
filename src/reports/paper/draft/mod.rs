//! A paper sheet while it is being keyed in: the text of every box, the order in which the eye reads them,
//! when a box is full, and which box is marked.

mod cell;
mod fill;
mod letters;
mod mark;
mod path;
mod take;

pub use cell::{Cell, Part};
pub use mark::{BoxProblem, Checkup, Mark, MarkKind};

use rules::{ByTeam, Preset, Rules, Score, Shirt, Team};
use std::collections::BTreeMap;
use std::fmt::Write;

/// What the box of an exceptional substitution holds.
const EXCEPTIONAL: &str = "E";

/// What the box of a signature holds that is there.
const SIGNED: &str = "X";

/// A paper sheet while it is being keyed in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Draft {
    /// What was played by.
    pub rules: Rules,
    cells: BTreeMap<Cell, String>,
}

impl Draft {
    /// An empty sheet.
    #[must_use]
    pub fn new(preset: Preset) -> Draft {
        Draft {
            rules: preset.rules(),
            cells: BTreeMap::new(),
        }
    }

    /// What stands in a box.
    #[must_use]
    pub fn get(&self, cell: Cell) -> &str {
        self.cells.get(&cell).map_or("", String::as_str)
    }

    /// Puts into a box what of a text belongs there: digits, or the letters that it knows. The letter of an
    /// exceptional substitution may be typed anywhere in its line.
    pub fn set(&mut self, cell: Cell, typed: &str) {
        let is_mark = |c: char| c.eq_ignore_ascii_case(&'e');
        let text = match (cell.part, cell.column) {
            (Part::Name | Part::Official, _) => plain(typed, 40),
            (Part::Number, _) => plain(typed, 12),
            (Part::Day, _) => digits(typed, 8),
            (Part::Signed, _) if typed.trim().is_empty() => String::new(),
            (Part::Signed, _) => SIGNED.to_owned(),
            (Part::First | Part::Winner, _) => {
                let letter = typed.chars().rev().map(|c| c.to_ascii_uppercase());
                letter.filter(|c| matches!(c, 'A' | 'B')).take(1).collect()
            }
            (Part::Change, Cell::MARK) if typed.contains(is_mark) => EXCEPTIONAL.to_owned(),
            (Part::Change, Cell::MARK) => String::new(),
            (Part::Sanction, 0) => letters::kind(typed),
            (Part::Sanction, 1) => letters::person(typed),
            (Part::Start | Part::End, _) => digits(typed, 4),
            (Part::Sets, _) => digits(typed, 1),
            _ => digits(typed, 3),
        };
        if cell.part == Part::Change && cell.column < Cell::MARK && typed.contains(is_mark) {
            let column = Cell::MARK;
            self.set(Cell { column, ..cell }, EXCEPTIONAL);
        }
        if text.is_empty() {
            self.cells.remove(&cell);
        } else {
            self.cells.insert(cell, text);
        }
    }

    /// Whether nothing was keyed in.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.cells.is_empty()
    }

    /// The last set of which anything was keyed in.
    #[must_use]
    pub fn sets(&self) -> u8 {
        let sets = self.cells.keys().map(|c| c.set);
        sets.filter(|s| (1..Cell::RESULT).contains(s))
            .max()
            .unwrap_or(0)
    }

    /// The name of a team, or its letter.
    #[must_use]
    pub fn name(&self, team: Team) -> &str {
        match self.get(Cell::only(Cell::HEAD, Part::Name, team)).trim() {
            "" => team.letter(),
            name => name,
        }
    }

    /// Takes the list of a team as it is known from another match, in the place of what was keyed in.
    pub fn take_list(&mut self, team: Team, players: &[Shirt], liberos: &[Shirt]) {
        let is_listed = |c: &Cell| {
            c.set == Cell::HEAD && c.team == team && matches!(c.part, Part::List | Part::Libero)
        };
        self.cells.retain(|cell, _| !is_listed(cell));
        let of = |part: Part, shirts: &[Shirt], draft: &mut Draft| {
            for (row, shirt) in (0..draft.most_listed(part)).zip(shirts) {
                draft.set(
                    Cell::new(Cell::HEAD, part, team, row, 0),
                    &shirt.to_string(),
                );
            }
        };
        of(Part::List, players, self);
        of(Part::Libero, liberos, self);
    }

    fn points(&self, set: u8) -> ByTeam<Option<u16>> {
        ByTeam::new(|team| self.get(Cell::only(set, Part::Final, team)).parse().ok())
    }

    /// Whether the sets up to this one decide the match by the points at their end, so that no further one
    /// is to be keyed in.
    #[must_use]
    pub fn is_decided_after(&self, set: u8) -> bool {
        let mut won: ByTeam<u8> = ByTeam::default();
        for set in 1..=set {
            let score: Score = self.points(set).map(|_, points| points.unwrap_or(0));
            if let Some(winner) = score.leader() {
                won[winner] += 1;
            }
        }
        match self.rules.sets_to_win() {
            Some(needed) => won.a.max(won.b) >= needed,
            None => set >= self.rules.sets_at_most(),
        }
    }

    // ---- Kept between one visit and the next.

    /// The draft as lines of text.
    #[must_use]
    pub fn written(&self) -> String {
        let mut out = record::write_rules(&self.rules).to_string();
        for (cell, text) in &self.cells {
            // Writing into a string cannot fail.
            let _ = write!(out, "\n{} {text}", cell.key());
        }
        out
    }

    /// A draft from such lines; what nobody understands is left out.
    #[must_use]
    pub fn of_written(lines: &str) -> Draft {
        let mut lines = lines.lines();
        let given = serde_json::from_str(lines.next().unwrap_or_default()).ok();
        let rules = given.and_then(|given| record::read_rules(&given).ok());
        let mut draft = Draft::new(Preset::SchoolJunior);
        if let Some(rules) = rules.filter(|rules| rules.check().is_ok()) {
            draft.rules = rules;
        }
        for (key, text) in lines.filter_map(|line| line.split_once(' ')) {
            if let Some(cell) = Cell::of_key(key) {
                draft.set(cell, text);
            }
        }
        draft
    }
}

fn plain(typed: &str, most: usize) -> String {
    let letters = typed.chars().filter(|c| !c.is_control());
    letters.take(most).collect()
}

fn digits(typed: &str, most: usize) -> String {
    typed
        .chars()
        .filter(char::is_ascii_digit)
        .take(most)
        .collect()
}
