//! The form filled in from a sheet.

use super::{letters, Cell, Draft, Part};
use crate::audit::SIGN_AFTER;
use crate::paper::{PaperResult, PaperSet, PaperSheet};
use rules::Team;

impl Draft {
    /// The form filled in from a sheet.
    #[must_use]
    pub fn of(sheet: &PaperSheet) -> Draft {
        let mut draft = Draft::new(sheet.rules.preset);
        draft.rules = sheet.rules;
        let head = &sheet.head;
        let nobodys = |part, row| Cell::new(Cell::HEAD, part, Team::A, row, 0);
        draft.set(nobodys(Part::Number, 0), &head.number);
        draft.set(nobodys(Part::Day, 0), head.day.as_deref().unwrap_or(""));
        for (row, name) in (0..).zip(&head.officials) {
            draft.set(nobodys(Part::Official, row), name);
        }
        for (row, signer) in (0..).zip(SIGN_AFTER) {
            if head.signed.contains(&signer) {
                draft.set(nobodys(Part::Signed, row), super::SIGNED);
            }
        }
        for (team, of) in sheet.teams.iter() {
            draft.set(Cell::only(Cell::HEAD, Part::Name, team), &of.name);
            let players = of.players.iter().flatten();
            draft.fill(Cell::HEAD, Part::List, team, players);
            draft.fill(Cell::HEAD, Part::Libero, team, &of.liberos);
        }
        for (number, set) in (1..).zip(&sheet.sets) {
            draft.fill_set(number, set);
            for team in Team::BOTH {
                draft.fill_sanctions(number, team, sheet);
            }
        }
        if let Some(result) = &sheet.result {
            draft.fill_result(result);
        }
        draft
    }

    /// A column of boxes, one value each.
    fn fill(
        &mut self,
        set: u8,
        part: Part,
        team: Team,
        values: impl IntoIterator<Item = impl ToString>,
    ) {
        for (row, value) in (0..).zip(values) {
            self.set(Cell::new(set, part, team, row, 0), &value.to_string());
        }
    }

    /// A line of boxes.
    fn fill_line(&mut self, first: Cell, values: impl IntoIterator<Item = impl ToString>) {
        for (column, value) in (0..).zip(values) {
            self.set(Cell { column, ..first }, &value.to_string());
        }
    }

    fn fill_set(&mut self, number: u8, set: &PaperSet) {
        let nobodys = |part| Cell::only(number, part, Team::A);
        self.set(nobodys(Part::First), set.first_service.letter());
        for team in Team::BOTH {
            let line_up = set.line_up.iter().flat_map(|l| &l[team]);
            self.fill(number, Part::LineUp, team, line_up);
            self.fill(number, Part::Round, team, &set.rounds[team]);
            self.fill(number, Part::Final, team, set.points.map(|p| p[team]));
            let first = |part, row| Cell::new(number, part, team, row, 0);
            let asked = set.time_outs.iter().filter(|t| t.team == team);
            for (row, t) in (0..).zip(asked) {
                let line = [t.score[team], t.score[team.other()]];
                self.fill_line(first(Part::TimeOut, row), line);
            }
            let changed = set.substitutions.iter().filter(|s| s.team == team);
            for (row, s) in (0..).zip(changed) {
                let line = [s.out.0, s.into.0, s.score[team], s.score[team.other()]];
                let at = first(Part::Change, row);
                self.fill_line(at, line);
                if s.exceptional {
                    let column = Cell::MARK;
                    self.set(Cell { column, ..at }, super::EXCEPTIONAL);
                }
            }
        }
        for (part, time) in [(Part::Start, set.start), (Part::End, set.end)] {
            let time = time.map(|t| t.to_string()).unwrap_or_default();
            self.set(nobodys(part), &time);
        }
        self.fill(number, Part::Minutes, Team::A, set.minutes);
    }

    fn fill_sanctions(&mut self, set: u8, team: Team, sheet: &PaperSheet) {
        let given = sheet.sanctions.iter();
        let given = given.filter(|s| s.set == set && s.team == team);
        for (row, s) in (0..).zip(given) {
            let (kind, person) = letters::write(s.kind, s.who.as_ref());
            let score = [s.score[team], s.score[team.other()]].map(|n| n.to_string());
            let [own, other] = score;
            let first = Cell::new(set, Part::Sanction, team, row, 0);
            self.fill_line(first, [kind.to_owned(), person, own, other]);
        }
    }

    fn fill_result(&mut self, result: &PaperResult) {
        let set = Cell::RESULT;
        self.fill(set, Part::Winner, Team::A, result.winner);
        for team in Team::BOTH {
            self.fill(set, Part::Sets, team, [result.sets[team]]);
            for (part, total) in [
                (Part::AllPoints, result.points),
                (Part::AllTimeOuts, result.time_outs),
                (Part::AllChanges, result.substitutions),
            ] {
                self.fill(set, part, team, total.map(|t| t[team]));
            }
        }
        self.fill(set, Part::AllMinutes, Team::A, result.minutes);
    }
}
