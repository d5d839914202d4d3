//! The boxes of a paper sheet: what each holds, and a name for each that no other has.

use rules::Team;

/// What a box holds, in the order in which a sheet is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Part {
    /// Number of the match.
    Number,
    /// The day.
    Day,
    /// Name of a team.
    Name,
    /// A number of its list.
    List,
    /// A libero of it.
    Libero,
    /// Name of an official: first referee, second referee, scorer.
    Official,
    /// Whether somebody has signed under the result: both captains, scorer, second and first referee.
    Signed,
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
    /// A substitution: who left, who came, own points, the other team's, and whether it is marked as an
    /// exceptional one.
    Change,
    /// A line of the sanctions box: what, who, own points, the other team's.
    Sanction,
    /// When the set began.
    Start,
    /// When it ended.
    End,
    /// How many minutes it lasted.
    Minutes,
    /// Who won the match.
    Winner,
    /// Sets won.
    Sets,
    /// Points of all sets.
    AllPoints,
    /// Time-outs of all sets.
    AllTimeOuts,
    /// Substitutions of all sets.
    AllChanges,
    /// Minutes of all sets.
    AllMinutes,
}

const PARTS: [(Part, &str); 23] = [
    (Part::Number, "number"),
    (Part::Day, "day"),
    (Part::Name, "name"),
    (Part::List, "list"),
    (Part::Libero, "libero"),
    (Part::Official, "official"),
    (Part::Signed, "signed"),
    (Part::First, "first"),
    (Part::LineUp, "line_up"),
    (Part::Round, "round"),
    (Part::Final, "final"),
    (Part::TimeOut, "time_out"),
    (Part::Change, "change"),
    (Part::Sanction, "sanction"),
    (Part::Start, "start"),
    (Part::End, "end"),
    (Part::Minutes, "minutes"),
    (Part::Winner, "winner"),
    (Part::Sets, "sets"),
    (Part::AllPoints, "all_points"),
    (Part::AllTimeOuts, "all_time_outs"),
    (Part::AllChanges, "all_changes"),
    (Part::AllMinutes, "all_minutes"),
];

impl Part {
    /// The name in a draft and in the page.
    #[must_use]
    pub fn code(self) -> &'static str {
        PARTS.iter().find(|p| p.0 == self).map_or("", |p| p.1)
    }

    /// How many boxes one line of it has.
    pub(super) const fn columns(self) -> u8 {
        match self {
            Part::TimeOut => 2,
            Part::Sanction => 4,
            Part::Change => 5,
            _ => 1,
        }
    }

    /// Whether another line comes when the last one is filled.
    #[must_use]
    pub const fn grows(self) -> bool {
        matches!(
            self,
            Part::List | Part::Round | Part::TimeOut | Part::Change | Part::Sanction
        )
    }

    /// Whether it belongs to the set or the match and to neither team.
    #[must_use]
    pub const fn is_nobodys(self) -> bool {
        matches!(
            self,
            Part::Number
                | Part::Day
                | Part::Official
                | Part::Signed
                | Part::First
                | Part::Start
                | Part::End
                | Part::Minutes
                | Part::Winner
                | Part::AllMinutes
        )
    }

    /// Whether a box of it takes words, in which a space stands.
    #[must_use]
    pub const fn is_words(self) -> bool {
        matches!(self, Part::Name | Part::Official)
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
    /// The box of a substitution that says whether it is marked as an exceptional one.
    pub(super) const MARK: u8 = 4;

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

    /// The first box of a part, for what has only one a team.
    pub(super) const fn only(set: u8, part: Part, team: Team) -> Cell {
        Cell::new(set, part, team, 0, 0)
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

    /// Whether it takes letters: a name, the letter of a team, of a sanction or of one of the staff.
    #[must_use]
    pub const fn takes_letters(self) -> bool {
        match self.part {
            Part::Number
            | Part::Name
            | Part::Official
            | Part::Signed
            | Part::First
            | Part::Winner => true,
            Part::Change => self.column == Cell::MARK,
            Part::Sanction => self.column < 2,
            _ => false,
        }
    }
}
