//! The boxes taken for a sheet: what cannot be taken so is marked.

use std::collections::BTreeMap;

use super::{letters, BoxProblem, Cell, Draft, Mark, MarkKind, Part};
use crate::audit::SIGN_AFTER;
use crate::paper::{
    is_day, Minute, PaperHead, PaperResult, PaperSanction, PaperSet, PaperSheet, PaperSubstitution,
    PaperTeam, PaperTimeOut,
};
use rules::{ByTeam, Score, Shirt, Team};

/// The first box of each line of a list, by the place in the list of the sheet. Sanctions have one list
/// for the whole match, which stands under [`Cell::RESULT`].
pub(super) type Lines = BTreeMap<(u8, Part, usize), Cell>;

/// A line of boxes that are there: the first box, and the text of each.
type Line<'a, const N: usize> = (Cell, [&'a str; N]);

/// What is taken from a draft so far.
pub(super) struct Taken<'a> {
    draft: &'a Draft,
    pub marks: Vec<Mark>,
    pub lines: Lines,
    sanctions: Vec<PaperSanction>,
}

impl<'a> Taken<'a> {
    pub fn from(draft: &'a Draft) -> Taken<'a> {
        Taken {
            draft,
            marks: Vec::new(),
            lines: BTreeMap::new(),
            sanctions: Vec::new(),
        }
    }

    fn mark(&mut self, cell: Cell, problem: BoxProblem) {
        self.marks.push(Mark {
            cell,
            kind: MarkKind::Box(problem),
        });
    }

    pub fn sheet(&mut self) -> PaperSheet {
        let draft = self.draft;
        let teams = ByTeam::new(|team| {
            let players = self.row(Cell::HEAD, Part::List, team);
            let liberos = self.row(Cell::HEAD, Part::Libero, team);
            let name = draft.get(Cell::only(Cell::HEAD, Part::Name, team));
            PaperTeam {
                name: name.trim().to_owned(),
                players: (!players.is_empty()).then(|| shirts(&players)),
                liberos: shirts(&liberos),
            }
        });
        let mut sets: Vec<PaperSet> = Vec::new();
        for number in 1..=draft.sets() {
            let last = sets.last().map(|s| s.first_service);
            let set = self.set(number, last);
            sets.push(set);
        }
        let result = self.result();
        PaperSheet {
            rules: draft.rules,
            head: self.head(),
            teams,
            sets,
            sanctions: std::mem::take(&mut self.sanctions),
            result,
        }
    }

    fn head(&mut self) -> PaperHead {
        let draft = self.draft;
        let text = |part, row| {
            draft
                .get(Cell::new(Cell::HEAD, part, Team::A, row, 0))
                .trim()
        };
        let typed = text(Part::Day, 0);
        let day = (typed.len() == 8)
            .then(|| format!("{}-{}-{}", &typed[..4], &typed[4..6], &typed[6..]))
            .filter(|day| is_day(day));
        if day.is_none() && !typed.is_empty() {
            self.mark(
                Cell::only(Cell::HEAD, Part::Day, Team::A),
                BoxProblem::NoDay,
            );
        }
        let signed = (0..).zip(SIGN_AFTER);
        let signed = signed.filter(|(row, _)| !text(Part::Signed, *row).is_empty());
        PaperHead {
            number: text(Part::Number, 0).to_owned(),
            day,
            officials: [0, 1, 2].map(|row| text(Part::Official, row).to_owned()),
            signed: signed.map(|(_, signer)| signer).collect(),
        }
    }

    fn result(&mut self) -> Option<PaperResult> {
        let begun = self.draft.cells.keys().any(|c| c.set == Cell::RESULT);
        let text = |part, team| self.draft.get(Cell::only(Cell::RESULT, part, team));
        let winner = letter(text(Part::Winner, Team::A));
        let sets = ByTeam::new(|team| text(Part::Sets, team).parse().unwrap_or(0));
        let minutes = text(Part::AllMinutes, Team::A).parse().ok();
        begun.then(|| PaperResult {
            winner,
            sets,
            points: self.in_all(Part::AllPoints),
            time_outs: self.in_all(Part::AllTimeOuts),
            substitutions: self.in_all(Part::AllChanges),
            minutes,
        })
    }

    /// A total of both teams; one of them alone is marked.
    fn in_all(&mut self, part: Part) -> Option<ByTeam<u16>> {
        let cell = |team| Cell::only(Cell::RESULT, part, team);
        let typed = ByTeam::new(|team| self.draft.get(cell(team)).parse::<u16>().ok());
        match (typed.a, typed.b) {
            (Some(a), Some(b)) => return Some(ByTeam { a, b }),
            (None, None) => {}
            (a, _) => {
                let empty = if a.is_none() { Team::A } else { Team::B };
                self.mark(cell(empty), BoxProblem::OtherIsFilled);
            }
        }
        None
    }

    fn set(&mut self, number: u8, last_first: Option<Team>) -> PaperSet {
        let draft = self.draft;
        let cell = |part, team| Cell::only(number, part, team);
        let first = cell(Part::First, Team::A);
        let first_service = letter(draft.get(first)).unwrap_or_else(|| {
            self.mark(first, BoxProblem::NoFirstService);
            last_first.map_or(Team::A, Team::other)
        });
        let line_up = ByTeam::new(|team| self.row(number, Part::LineUp, team));
        let any_line_up = line_up.iter().any(|(_, l)| !l.is_empty());
        let points = ByTeam::new(|team| draft.get(cell(Part::Final, team)).parse::<u16>().ok());
        let mut time_outs = Vec::new();
        let mut substitutions = Vec::new();
        for team in Team::BOTH {
            for (at, line) in self.table(number, Part::TimeOut, team, [true; 2]) {
                let [own, other] = line.map(number_of);
                self.lines
                    .insert((number, Part::TimeOut, time_outs.len()), at);
                let score = score(team, own, other);
                time_outs.push(PaperTimeOut { team, score });
            }
            let needed = [true, true, true, true, false];
            for (at, line) in self.table(number, Part::Change, team, needed) {
                let exceptional = !line[usize::from(Cell::MARK)].is_empty();
                let [out, into, own, other, _] = line.map(number_of);
                self.lines
                    .insert((number, Part::Change, substitutions.len()), at);
                substitutions.push(PaperSubstitution {
                    team,
                    out: Shirt(out),
                    into: Shirt(into),
                    score: score(team, own, other),
                    exceptional,
                });
            }
            self.sanctions(number, team);
        }
        PaperSet {
            first_service,
            line_up: any_line_up.then(|| line_up.map(|_, l| shirts(l))),
            rounds: ByTeam::new(|team| self.row(number, Part::Round, team)),
            points: points.a.zip(points.b).map(|(a, b)| Score { a, b }),
            substitutions,
            time_outs,
            start: self.time(cell(Part::Start, Team::A)),
            end: self.time(cell(Part::End, Team::A)),
            minutes: draft.get(cell(Part::Minutes, Team::A)).parse().ok(),
        }
    }

    fn sanctions(&mut self, set: u8, team: Team) {
        for (at, line) in self.table(set, Part::Sanction, team, [true, false, false, false]) {
            let [kind, person, own, other] = line;
            let Some((kind, who)) = letters::read(kind, person) else {
                self.mark(at, BoxProblem::SanctionUnclear);
                continue;
            };
            // Beside the box of improper requests there is no score.
            let scored = letters::is_improper(line[0]) || !own.is_empty() && !other.is_empty();
            if !scored {
                self.mark(at, BoxProblem::LineIncomplete);
                continue;
            }
            let here = (Cell::RESULT, Part::Sanction, self.sanctions.len());
            self.lines.insert(here, at);
            self.sanctions.push(PaperSanction {
                set,
                team,
                kind,
                who,
                score: score(team, number_of(own), number_of(other)),
            });
        }
    }

    fn time(&mut self, cell: Cell) -> Option<Minute> {
        let text = self.draft.get(cell);
        if text.is_empty() {
            return None;
        }
        let (hour, minute) = text.split_at(text.len().saturating_sub(2));
        let time = Minute::parse(&format!("{hour}:{minute}"));
        if time.is_none() {
            self.mark(cell, BoxProblem::NoTime);
        }
        time
    }

    /// The numbers of a line of boxes up to the first empty one.
    fn row(&mut self, set: u8, part: Part, team: Team) -> Vec<u16> {
        let draft = self.draft;
        let mut numbers = Vec::new();
        let mut empty = None;
        for row in 0..draft.rows(set, part, team) {
            let cell = Cell::new(set, part, team, row, 0);
            match (draft.get(cell).parse::<u16>(), empty) {
                (Ok(n), None) => numbers.push(n),
                (Err(_), _) => empty = empty.or(Some(cell)),
                (Ok(_), Some(gap)) => {
                    self.mark(gap, BoxProblem::Gap);
                    break;
                }
            }
        }
        numbers
    }

    /// The lines of a list in which every box that is needed is filled in.
    fn table<const N: usize>(
        &mut self,
        set: u8,
        part: Part,
        team: Team,
        needed: [bool; N],
    ) -> Vec<Line<'a, N>> {
        let draft = self.draft;
        let mut lines = Vec::new();
        for row in 0..draft.rows(set, part, team) {
            let first = Cell::new(set, part, team, row, 0);
            let mut line = [""; N];
            for (column, text) in (0..).zip(&mut line) {
                *text = draft.get(Cell { column, ..first });
            }
            let lacks = line.iter().zip(needed).any(|(t, n)| n && t.is_empty());
            if !lacks {
                lines.push((first, line));
            } else if line.iter().any(|t| !t.is_empty()) {
                self.mark(first, BoxProblem::LineIncomplete);
            }
        }
        lines
    }
}

fn shirts(numbers: &[u16]) -> Vec<Shirt> {
    numbers.iter().copied().map(Shirt).collect()
}

/// A number that a box holds; there is nothing but digits in it.
fn number_of(text: &str) -> u16 {
    text.parse().unwrap_or(0)
}

fn score(team: Team, own: u16, other: u16) -> Score {
    ByTeam::new(|of| if of == team { own } else { other })
}

/// The team of a letter.
pub(super) fn letter(text: &str) -> Option<Team> {
    Team::BOTH.into_iter().find(|team| team.letter() == text)
}
