//! A paper sheet while it is being keyed in: the text of every box, the order in which the eye reads them,
//! when a box is full, and which box is marked.
//!
//! Totals of one turn at service are taken to grow by at most [`LONGEST_TURN`]; whoever keys a longer one
//! goes back to the box and writes both digits.

use std::collections::BTreeMap;
use std::fmt::Write;

use super::{
    check, read, say, Checked, Fault, Minute, PaperResult, PaperSet, PaperSheet, PaperSubstitution,
    PaperTeam, PaperTimeOut,
};
use crate::rules::{ByTeam, Preset, Rules, Score, Shirt, Team};
use crate::sheet::form;

/// Points of one turn at service beyond which a single digit is taken for the whole number. Longer turns
/// are played, but hardly ever (common practice, no source).
const LONGEST_TURN: u16 = 12;
/// More turns than any set has had.
const MOST_TURNS: u8 = 60;

/// What a box holds, in the order in which a sheet is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Name of a team.
    Name,
    /// A number of its list.
    List,
    /// Which team serves first.
    First,
    /// A place of the line-up.
    LineUp,
    /// A total at the end of a turn at service.
    Round,
    /// Points at the end of the set.
    Final,
    /// A time-out: own points, the other team's.
    TimeOut,
    /// A substitution: who left, who came, own points, the other team's.
    Change,
    /// When the set began.
    Start,
    /// When it ended.
    End,
    /// Who won the match.
    Winner,
    /// Sets won.
    Sets,
}

const PARTS: [(Part, &str); 12] = [
    (Part::Name, "name"),
    (Part::List, "list"),
    (Part::First, "first"),
    (Part::LineUp, "line_up"),
    (Part::Round, "round"),
    (Part::Final, "final"),
    (Part::TimeOut, "time_out"),
    (Part::Change, "change"),
    (Part::Start, "start"),
    (Part::End, "end"),
    (Part::Winner, "winner"),
    (Part::Sets, "sets"),
];

impl Part {
    /// The name in a draft and in the page.
    #[must_use]
    pub fn code(self) -> &'static str {
        PARTS.iter().find(|p| p.0 == self).map_or("", |p| p.1)
    }

    /// How many boxes one line of it has.
    const fn columns(self) -> u8 {
        match self {
            Part::TimeOut => 2,
            Part::Change => 4,
            _ => 1,
        }
    }

    /// Whether another line comes when the last one is filled.
    #[must_use]
    pub const fn grows(self) -> bool {
        matches!(
            self,
            Part::List | Part::Round | Part::TimeOut | Part::Change
        )
    }
}

/// One box.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Cell {
    /// The set from 1; [`Cell::HEAD`] and [`Cell::RESULT`] for the rest of the sheet.
    pub set: u8,
    /// What it holds.
    pub part: Part,
    /// Whose; A where it is nobody's.
    pub team: Team,
    /// The line or the place, from 0.
    pub row: u8,
    /// The box in its line, from 0.
    pub column: u8,
}

impl Cell {
    /// The part of the sheet above the sets.
    pub const HEAD: u8 = 0;
    /// The result below them.
    pub const RESULT: u8 = 99;

    /// A box.
    #[must_use]
    pub const fn new(set: u8, part: Part, team: Team, row: u8, column: u8) -> Cell {
        Cell {
            set,
            part,
            team,
            row,
            column,
        }
    }

    /// Its name, no other box's.
    #[must_use]
    pub fn key(self) -> String {
        let Cell {
            set,
            part,
            team,
            row,
            column,
        } = self;
        format!("{set}-{}-{team}-{row}-{column}", part.code())
    }

    /// The box of that name.
    #[must_use]
    pub fn of_key(key: &str) -> Option<Cell> {
        let mut words = key.split('-');
        let mut word = || words.next();
        let set = word()?.parse().ok()?;
        let code = word()?;
        let part = PARTS.iter().find(|p| p.1 == code)?.0;
        let team = match word()? {
            "A" => Team::A,
            "B" => Team::B,
            _ => return None,
        };
        let (row, column) = (word()?.parse().ok()?, word()?.parse().ok()?);
        word()
            .is_none()
            .then_some(Cell::new(set, part, team, row, column))
    }

    /// Whether it takes letters: a team's name, or the letter of a team.
    #[must_use]
    pub const fn takes_letters(self) -> bool {
        matches!(self.part, Part::Name | Part::First | Part::Winner)
    }
}

/// A box that does not agree, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Mark {
    /// The box; for what concerns several, the first of them.
    pub cell: Cell,
    /// One sentence or two.
    pub say: String,
    /// The number of the rule, where one is met.
    pub rule: Option<&'static str>,
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

    /// Puts into a box what of a text belongs there: digits, or the letter of a team.
    pub fn set(&mut self, cell: Cell, typed: &str) {
        let text = match cell.part {
            Part::Name => typed.chars().filter(|c| !c.is_control()).take(40).collect(),
            Part::First | Part::Winner => {
                let letter = typed.chars().rev().map(|c| c.to_ascii_uppercase());
                letter.filter(|c| matches!(c, 'A' | 'B')).take(1).collect()
            }
            Part::Start | Part::End => digits(typed, 4),
            Part::List | Part::LineUp => digits(typed, 3),
            Part::Change if cell.column < 2 => digits(typed, 3),
            Part::Sets => digits(typed, 1),
            _ => digits(typed, 3),
        };
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
        match self
            .get(Cell::new(Cell::HEAD, Part::Name, team, 0, 0))
            .trim()
        {
            "" => team.letter(),
            name => name,
        }
    }

    /// The boxes of a part of the sheet, in the order in which it is read; where a list grows, one empty
    /// line stands at its end.
    #[must_use]
    pub fn cells(&self, set: u8) -> Vec<Cell> {
        let parts: &[Part] = match set {
            Cell::HEAD => &[Part::Name, Part::List],
            Cell::RESULT => &[Part::Winner, Part::Sets],
            _ => &[
                Part::First,
                Part::LineUp,
                Part::Round,
                Part::Final,
                Part::TimeOut,
                Part::Change,
                Part::Start,
                Part::End,
            ],
        };
        let mut cells = Vec::new();
        for &part in parts {
            let teams: &[Team] = match part {
                Part::First | Part::Start | Part::End | Part::Winner => &[Team::A],
                _ => &Team::BOTH,
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
    fn rows(&self, set: u8, part: Part, team: Team) -> u8 {
        let most = match part {
            Part::List => self.rules.roster.max.saturating_add(2),
            Part::LineUp if self.rules.line_ups => self.rules.players_on_court,
            Part::LineUp => 0,
            Part::Round => MOST_TURNS,
            // One more than allowed, so that one too many can be keyed in and is marked.
            Part::TimeOut => self.rules.time_outs.per_set.unwrap_or(8).saturating_add(1),
            Part::Change => self
                .rules
                .substitutions
                .per_set
                .unwrap_or(24)
                .saturating_add(6),
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

    /// The box after this one. From the empty line at the end of a list it is the one after the list.
    #[must_use]
    pub fn next(&self, cell: Cell) -> Option<Cell> {
        let cells = self.cells(cell.set);
        let at = cells.iter().position(|c| *c == cell)?;
        let leaves = cell.part.grows() && cell.column == 0 && self.get(cell).is_empty();
        let list = |c: &&Cell| c.part != cell.part || c.team != cell.team;
        let mut after = cells[at + 1..].iter();
        if leaves {
            after.find(list).copied()
        } else {
            after.next().copied()
        }
    }

    /// The box before this one.
    #[must_use]
    pub fn previous(&self, cell: Cell) -> Option<Cell> {
        let cells = self.cells(cell.set);
        let at = cells.iter().position(|c| *c == cell)?;
        at.checked_sub(1).map(|at| cells[at])
    }

    /// Whether what stands in a box is all that can, so that the next one may come by itself. A digit that
    /// could be the first of two waits for the second one, or for a key that ends the box.
    #[must_use]
    pub fn is_full(&self, cell: Cell) -> bool {
        let text = self.get(cell);
        let Ok(number) = text.parse::<u16>() else {
            return matches!(cell.part, Part::First | Part::Winner) && !text.is_empty();
        };
        match cell.part {
            Part::Name => false,
            Part::Sets => true,
            Part::Start | Part::End => text.len() == 4,
            Part::List | Part::LineUp => self.is_whole_shirt(cell.team, text),
            Part::Change if cell.column < 2 => self.is_whole_shirt(cell.team, text),
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
                text.len() >= 2 || likely || number * 10 > self.most_points(cell.set)
            }
            _ => text.len() >= 2 || number * 10 > self.most_points(cell.set),
        }
    }

    /// More points than a set of this format reaches, but for the rarest.
    fn most_points(&self, set: u8) -> u16 {
        let target = self.rules.target_of(set);
        target.cap.unwrap_or(target.target.saturating_add(14))
    }

    /// Whether no other number of the list, or of the rules, begins with this one.
    fn is_whole_shirt(&self, team: Team, text: &str) -> bool {
        let most = self.rules.roster.max_number.to_string().len();
        let list: Vec<&str> = self.list(team).collect();
        let longer = |s: &&str| s.len() > text.len() && s.starts_with(text);
        text.len() >= most || (list.contains(&text) && !list.iter().any(longer))
    }

    fn list(&self, team: Team) -> impl Iterator<Item = &str> {
        let of = move |c: &&Cell| c.set == Cell::HEAD && c.part == Part::List && c.team == team;
        self.cells.keys().filter(of).map(|c| self.get(*c))
    }

    /// Whether the points at the end of a set are there: then everything above them is.
    fn is_keyed(&self, set: u8) -> bool {
        let points = |team| !self.get(Cell::new(set, Part::Final, team, 0, 0)).is_empty();
        Team::BOTH.into_iter().all(points)
    }

    /// Whether the sets up to this one decide the match by the points at their end, so that no further one
    /// is to be keyed in.
    #[must_use]
    pub fn is_decided_after(&self, set: u8) -> bool {
        let points = |set, team| {
            self.get(Cell::new(set, Part::Final, team, 0, 0))
                .parse::<u16>()
        };
        let mut won: ByTeam<u8> = ByTeam::default();
        for set in 1..=set {
            let score = ByTeam::new(|team| points(set, team).unwrap_or(0));
            if let Some(winner) = score.leader() {
                won[winner] += 1;
            }
        }
        match self.rules.sets_to_win() {
            Some(needed) => won.a.max(won.b) >= needed,
            None => set >= self.rules.sets_at_most(),
        }
    }

    /// The sheet as far as it was keyed in, and every box that does not agree. While a set is being keyed
    /// in, only what can already be said of it is; `all` says everything.
    #[must_use]
    pub fn check(&self, all: bool) -> Checkup {
        let mut taken = Taken {
            draft: self,
            marks: Vec::new(),
            lines: BTreeMap::new(),
        };
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
            let ripe = match (finding.set, &finding.fault) {
                (_, Fault::RoundsDecrease { .. }) => true,
                (Some(set), _) => self.is_keyed(set),
                (None, Fault::MatchNotFinished) => result_begun,
                (None, _) if finding.place.starts_with("result") => result_begun || decided,
                (None, _) => any_keyed,
            };
            if all || ripe {
                marks.push(Mark {
                    cell: cell_of(finding.set, &finding.place, &lines),
                    say: say(finding, &sheet),
                    rule: finding.fault.rule(),
                });
            }
        }
        marks.retain(|m| {
            all || m.cell.set == Cell::HEAD
                || m.cell.set == Cell::RESULT
                || self.is_keyed(m.cell.set)
                || m.cell.part == Part::Round
        });
        marks.sort_by_key(|m| m.cell);
        Checkup {
            sheet,
            checked,
            marks,
        }
    }

    // ---- Kept between one visit and the next.

    /// The draft as lines of text.
    #[must_use]
    pub fn written(&self) -> String {
        let mut out = form::write_rules(self.rules).to_string();
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
        let rules = lines.next().unwrap_or_default();
        let file = format!(
            "{{\"log\":\"{}\",\"version\":1,\"rules\":{rules},\"teams\":{{\"A\":{{}},\"B\":{{}}}},\"sets\":[]}}",
            super::read::NAME
        );
        let mut draft = Draft::new(Preset::SchoolJunior);
        if let Some(sheet) = read(&file).read {
            draft.rules = sheet.rules;
        }
        for (key, text) in lines.filter_map(|line| line.split_once(' ')) {
            if let Some(cell) = Cell::of_key(key) {
                draft.set(cell, text);
            }
        }
        draft
    }

    /// The form filled in from a sheet.
    #[must_use]
    pub fn of(sheet: &PaperSheet) -> Draft {
        let mut draft = Draft {
            rules: sheet.rules,
            cells: BTreeMap::new(),
        };
        let mut put = |cell: Cell, text: String| draft.set(cell, &text);
        for (team, of) in sheet.teams.iter() {
            put(
                Cell::new(Cell::HEAD, Part::Name, team, 0, 0),
                of.name.clone(),
            );
            for (row, shirt) in (0..).zip(of.players.iter().flatten()) {
                put(
                    Cell::new(Cell::HEAD, Part::List, team, row, 0),
                    shirt.to_string(),
                );
            }
        }
        for (number, set) in (1..).zip(&sheet.sets) {
            let cell = |part, team, row, column| Cell::new(number, part, team, row, column);
            put(
                cell(Part::First, Team::A, 0, 0),
                set.first_service.to_string(),
            );
            for team in Team::BOTH {
                let line_up = set.line_up.iter().flat_map(|l| &l[team]);
                for (row, shirt) in (0..).zip(line_up) {
                    put(cell(Part::LineUp, team, row, 0), shirt.to_string());
                }
                for (row, total) in (0..).zip(&set.rounds[team]) {
                    put(cell(Part::Round, team, row, 0), total.to_string());
                }
                if let Some(points) = set.points {
                    put(cell(Part::Final, team, 0, 0), points[team].to_string());
                }
                let asked = set.time_outs.iter().filter(|t| t.team == team);
                for (row, t) in (0..).zip(asked) {
                    for (column, points) in [(0, t.score[team]), (1, t.score[team.other()])] {
                        put(cell(Part::TimeOut, team, row, column), points.to_string());
                    }
                }
                let changed = set.substitutions.iter().filter(|s| s.team == team);
                for (row, s) in (0..).zip(changed) {
                    let line = [s.out.0, s.into.0, s.score[team], s.score[team.other()]];
                    for (column, n) in (0..).zip(line) {
                        put(cell(Part::Change, team, row, column), n.to_string());
                    }
                }
            }
            for (part, time) in [(Part::Start, set.start), (Part::End, set.end)] {
                let time = time.map(|t| t.to_string()).unwrap_or_default();
                put(cell(part, Team::A, 0, 0), time);
            }
        }
        if let Some(result) = &sheet.result {
            let cell = |part, team| Cell::new(Cell::RESULT, part, team, 0, 0);
            let winner = result.winner.map(|w| w.to_string()).unwrap_or_default();
            put(cell(Part::Winner, Team::A), winner);
            for (team, sets) in result.sets.iter() {
                put(cell(Part::Sets, team), sets.to_string());
            }
        }
        draft
    }
}

fn digits(typed: &str, most: usize) -> String {
    typed
        .chars()
        .filter(char::is_ascii_digit)
        .take(most)
        .collect()
}

/// The boxes taken for a sheet.
struct Taken<'a> {
    draft: &'a Draft,
    marks: Vec<Mark>,
    /// The first box of each time-out and substitution: the set, which list, the place in it.
    lines: BTreeMap<(u8, Part, usize), Cell>,
}

impl Taken<'_> {
    fn mark(&mut self, cell: Cell, say: &str) {
        let say = say.to_owned();
        self.marks.push(Mark {
            cell,
            say,
            rule: None,
        });
    }

    fn sheet(&mut self) -> PaperSheet {
        let draft = self.draft;
        let teams = ByTeam::new(|team| {
            let players = self.row(Cell::HEAD, Part::List, team);
            PaperTeam {
                name: draft
                    .get(Cell::new(Cell::HEAD, Part::Name, team, 0, 0))
                    .trim()
                    .to_owned(),
                players: (!players.is_empty()).then(|| players.into_iter().map(Shirt).collect()),
                liberos: Vec::new(),
            }
        });
        let mut sets: Vec<PaperSet> = Vec::new();
        for number in 1..=draft.sets() {
            let last = sets.last().map(|s| s.first_service);
            let set = self.set(number, last);
            sets.push(set);
        }
        PaperSheet {
            rules: draft.rules,
            teams,
            sets,
            sanctions: Vec::new(),
            result: self.result(),
        }
    }

    fn result(&self) -> Option<PaperResult> {
        let cell = |part, team| self.draft.get(Cell::new(Cell::RESULT, part, team, 0, 0));
        let winner = cell(Part::Winner, Team::A);
        let sets = ByTeam::new(|team| cell(Part::Sets, team));
        let begun = !winner.is_empty() || sets.iter().any(|(_, s)| !s.is_empty());
        begun.then(|| PaperResult {
            winner: letter(winner),
            sets: sets.map(|_, s| s.parse().unwrap_or(0)),
        })
    }

    fn set(&mut self, number: u8, last_first: Option<Team>) -> PaperSet {
        let draft = self.draft;
        let cell = |part, team| Cell::new(number, part, team, 0, 0);
        let first = cell(Part::First, Team::A);
        let first_service = letter(draft.get(first)).unwrap_or_else(|| {
            self.mark(first, "Who served first is missing: key in A or B.");
            last_first.map_or(Team::A, Team::other)
        });
        let line_up = ByTeam::new(|team| self.row(number, Part::LineUp, team));
        let any_line_up = line_up.iter().any(|(_, l)| !l.is_empty());
        let points = ByTeam::new(|team| draft.get(cell(Part::Final, team)).parse::<u16>().ok());
        let mut time_outs = Vec::new();
        let mut substitutions = Vec::new();
        for team in Team::BOTH {
            for (at, [own, other]) in self.table(number, Part::TimeOut, team) {
                self.lines
                    .insert((number, Part::TimeOut, time_outs.len()), at);
                let score = score(team, own, other);
                time_outs.push(PaperTimeOut { team, score });
            }
            for (at, [out, into, own, other]) in self.table(number, Part::Change, team) {
                self.lines
                    .insert((number, Part::Change, substitutions.len()), at);
                substitutions.push(PaperSubstitution {
                    team,
                    out: Shirt(out),
                    into: Shirt(into),
                    score: score(team, own, other),
                    exceptional: false,
                });
            }
        }
        PaperSet {
            first_service,
            line_up: any_line_up
                .then(|| line_up.map(|_, l| l.iter().copied().map(Shirt).collect())),
            rounds: ByTeam::new(|team| self.row(number, Part::Round, team)),
            points: points.a.zip(points.b).map(|(a, b)| Score { a, b }),
            substitutions,
            time_outs,
            start: self.time(cell(Part::Start, Team::A)),
            end: self.time(cell(Part::End, Team::A)),
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
            self.mark(
                cell,
                "This is no time of the day. Key in hour and minute, such as 1805.",
            );
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
                    self.mark(
                        gap,
                        "This box is empty and one after it is not. Fill it in.",
                    );
                    break;
                }
            }
        }
        numbers
    }

    /// The lines of a list that are filled in, each with its first box.
    fn table<const N: usize>(&mut self, set: u8, part: Part, team: Team) -> Vec<(Cell, [u16; N])> {
        let draft = self.draft;
        let mut lines = Vec::new();
        for row in 0..draft.rows(set, part, team) {
            let first = Cell::new(set, part, team, row, 0);
            let mut line = [0; N];
            let mut filled = 0;
            for (column, number) in (0..).zip(&mut line) {
                if let Ok(typed) = draft.get(Cell { column, ..first }).parse() {
                    *number = typed;
                    filled += 1;
                }
            }
            if filled == N {
                lines.push((first, line));
            } else if filled > 0 {
                self.mark(
                    first,
                    "This line is not complete. Fill in its boxes, or empty them.",
                );
            }
        }
        lines
    }
}

fn score(team: Team, own: u16, other: u16) -> Score {
    ByTeam::new(|of| if of == team { own } else { other })
}

fn letter(text: &str) -> Option<Team> {
    Team::BOTH.into_iter().find(|team| team.letter() == text)
}

/// The box that a finding is about.
fn cell_of(set: Option<u8>, place: &str, lines: &BTreeMap<(u8, Part, usize), Cell>) -> Cell {
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
    match words.first().copied().unwrap_or_default() {
        "rounds" => Cell::new(in_set, Part::Round, team, row, 0),
        "final" => Cell::new(in_set, Part::Final, team, 0, 0),
        "line_up" => Cell::new(in_set, Part::LineUp, team, row, 0),
        "first_service" => Cell::new(in_set, Part::First, Team::A, 0, 0),
        "start" => Cell::new(in_set, Part::Start, Team::A, 0, 0),
        "end" => Cell::new(in_set, Part::End, Team::A, 0, 0),
        "time_outs" => line(Part::TimeOut),
        "substitutions" => line(Part::Change),
        "teams" => Cell::new(Cell::HEAD, Part::List, team, 0, 0),
        "sets" if index.is_some() => Cell::new(row + 1, Part::First, Team::A, 0, 0),
        "result" if words.contains(&"sets") => Cell::new(Cell::RESULT, Part::Sets, team, 0, 0),
        _ => Cell::new(Cell::RESULT, Part::Winner, Team::A, 0, 0),
    }
}
