//! The way through the boxes: which a part of the sheet shows, which comes next, and when one is full.

use super::{letters, Cell, Draft, Part};
use rules::Team;

/// Points of one turn at service beyond which a single digit is taken for the whole number; whoever keys
/// a longer one goes back to the box and writes both digits. Longer turns are played, but hardly ever
/// (common practice, no source).
const LONGEST_TURN: u16 = 12;
/// More turns than any set has had.
const MAX_TURNS: u8 = 60;
/// More sanctions than any team has had in a set.
const MAX_SANCTIONS: u8 = 20;
/// More points, or minutes, than a match of five sets has had, but for the rarest.
const MAX_IN_ALL: u16 = 300;

impl Draft {
    /// The boxes of a part of the sheet, in the order in which it is read; where a list grows, one empty
    /// line stands at its end.
    #[must_use]
    pub fn cells(&self, set: u8) -> Vec<Cell> {
        let parts: &[Part] = match set {
            Cell::HEAD => &[
                Part::Number,
                Part::Day,
                Part::Name,
                Part::List,
                Part::Libero,
                Part::Official,
                Part::Signed,
            ],
            Cell::RESULT => &[
                Part::Winner,
                Part::Sets,
                Part::AllPoints,
                Part::AllTimeOuts,
                Part::AllChanges,
                Part::AllMinutes,
            ],
            _ => &[
                Part::First,
                Part::LineUp,
                Part::Round,
                Part::Final,
                Part::TimeOut,
                Part::Change,
                Part::Sanction,
                Part::Start,
                Part::End,
                Part::Minutes,
            ],
        };
        let mut cells = Vec::new();
        for &part in parts {
            let teams: &[Team] = if part.is_nobodys() {
                &[Team::A]
            } else {
                &Team::BOTH
            };
            for &team in teams {
                for row in 0..self.rows(set, part, team) {
                    let line = 0..part.columns();
                    cells.extend(line.map(|column| Cell::new(set, part, team, row, column)));
                }
            }
        }
        cells
    }

    /// How many lines a part shows.
    pub(super) fn rows(&self, set: u8, part: Part, team: Team) -> u8 {
        let most = match part {
            Part::List | Part::Libero => self.most_listed(part),
            Part::Official => 3,
            Part::Signed => 5,
            Part::LineUp if self.rules.line_ups => self.rules.players_on_court,
            Part::LineUp => 0,
            Part::Round => MAX_TURNS,
            // One more than allowed, so that one too many can be keyed in and is marked.
            Part::TimeOut => self.rules.time_outs.per_set.unwrap_or(8).saturating_add(1),
            Part::Change => self
                .rules
                .substitutions
                .per_set
                .unwrap_or(24)
                .saturating_add(6),
            Part::Sanction => MAX_SANCTIONS,
            _ => 1,
        };
        if part.grows() {
            let of = |c: &&Cell| c.set == set && c.part == part && c.team == team;
            let last = self.cells.keys().filter(of).map(|c| c.row).max();
            most.min(last.map_or(1, |row| row.saturating_add(2)))
        } else {
            most
        }
    }

    /// So many numbers the list of a team has, or liberos.
    pub(super) fn most_listed(&self, part: Part) -> u8 {
        match part {
            Part::Libero => self.rules.liberos,
            _ => self.rules.roster.max.saturating_add(2),
        }
    }

    /// The box after this one. From the empty line at the end of a list it is the one after the list. The
    /// mark of an exceptional substitution is passed over: hardly any has it.
    #[must_use]
    pub fn next(&self, cell: Cell) -> Option<Cell> {
        let cells = self.cells(cell.set);
        let at = cells.iter().position(|c| *c == cell)?;
        let leaves = cell.part.grows() && cell.column == 0 && self.get(cell).is_empty();
        let list = |c: &Cell| c.part != cell.part || c.team != cell.team;
        let mut after = cells[at + 1..].iter().filter(|c| !is_mark(**c));
        after.find(|c| !leaves || list(c)).copied()
    }

    /// The box before this one.
    #[must_use]
    pub fn previous(&self, cell: Cell) -> Option<Cell> {
        let cells = self.cells(cell.set);
        let at = cells.iter().position(|c| *c == cell)?;
        let passed = |c: &Cell| is_mark(*c) && self.get(*c).is_empty();
        cells[..at].iter().rev().find(|c| !passed(c)).copied()
    }

    /// Whether what stands in a box is all that can, so that the next one may come by itself. A digit that
    /// could be the first of two waits for the second one, or for a key that ends the box.
    #[must_use]
    pub fn is_full(&self, cell: Cell) -> bool {
        let text = self.get(cell);
        let Ok(number) = text.parse::<u16>() else {
            return match cell.part {
                Part::Name | Part::Official | Part::Number => false,
                Part::Day => text.len() == 8,
                Part::Sanction if cell.column == 1 => letters::is_letters(text),
                _ => !text.is_empty(),
            };
        };
        let in_all = |a_set: u8| u16::from(a_set) * u16::from(self.rules.sets_at_most());
        let most = match cell.part {
            Part::Name | Part::Official | Part::Number => return false,
            Part::Day => return text.len() == 8,
            Part::Sets => return true,
            Part::Start | Part::End => return text.len() == 4,
            // No list says yet which numbers there are.
            Part::List => return text.len() >= self.longest_shirt(),
            Part::Libero | Part::LineUp => return self.is_whole_shirt(cell, text),
            Part::Change | Part::Sanction if cell.column < 2 => {
                return self.is_whole_shirt(cell, text);
            }
            Part::Round => {
                let before = cell.row.checked_sub(1).map(|row| Cell { row, ..cell });
                let before = before.and_then(|c| self.get(c).parse().ok()).unwrap_or(0);
                let next = Cell {
                    row: cell.row + 1,
                    ..cell
                };
                // A box that is put right later waits for the key that ends it.
                let likely = self.get(next).is_empty()
                    && number >= before
                    && number * 10 > before + LONGEST_TURN;
                if likely || text.len() >= 2 {
                    return true;
                }
                self.most_points(cell.set)
            }
            Part::Minutes => 99,
            Part::AllPoints | Part::AllMinutes => MAX_IN_ALL,
            Part::AllTimeOuts => in_all(self.rules.time_outs.per_set.unwrap_or(8)),
            Part::AllChanges => in_all(self.rules.substitutions.per_set.unwrap_or(24)),
            _ if text.len() >= 2 => return true,
            _ => self.most_points(cell.set),
        };
        number.saturating_mul(10) > most
    }

    /// More points than a set of this format reaches, but for the rarest.
    fn most_points(&self, set: u8) -> u16 {
        let target = self.rules.target_of(set);
        target.cap.unwrap_or(target.target.saturating_add(14))
    }

    /// Whether this is a number of the list and no other one begins with it. What stands in the box itself
    /// says nothing about that.
    fn is_whole_shirt(&self, cell: Cell, text: &str) -> bool {
        let listed = |c: &&Cell| {
            let listed = matches!(c.part, Part::List | Part::Libero);
            c.set == Cell::HEAD && listed && c.team == cell.team && **c != cell
        };
        let list: Vec<&str> = self
            .cells
            .keys()
            .filter(listed)
            .map(|c| self.get(*c))
            .collect();
        let longer = |s: &&str| s.len() > text.len() && s.starts_with(text);
        text.len() >= self.longest_shirt() || (list.contains(&text) && !list.iter().any(longer))
    }

    /// How many digits a shirt number has at most.
    fn longest_shirt(&self) -> usize {
        self.rules.roster.max_number.to_string().len()
    }

    /// Where a total of a turn at service stands on paper: the column of a place of the rotation, and the
    /// round, both from 1. The team that receives first has no first turn, so that its totals begin in the
    /// second column.
    #[must_use]
    pub fn round_of(&self, cell: Cell) -> (u8, u8) {
        let turn = cell.row + self.turns_left_out(cell.set, cell.team);
        let places = self.rules.players_on_court.max(1);
        (turn % places + 1, turn / places + 1)
    }

    /// 1 for a team that receives first, as far as that was keyed in.
    #[must_use]
    pub fn turns_left_out(&self, set: u8, team: Team) -> u8 {
        let first = self.get(Cell::only(set, Part::First, Team::A));
        u8::from(!first.is_empty() && first != team.letter())
    }
}

fn is_mark(cell: Cell) -> bool {
    cell.part == Part::Change && cell.column == Cell::MARK
}
