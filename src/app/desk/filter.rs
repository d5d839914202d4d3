//! What of the desk is shown.

use super::{Row, RowKind};
use reports::list::SealState;
use reports::{fits, DateWords};

/// Which rows are shown, beside what is searched for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Show {
    /// All of them.
    #[default]
    All,
    /// Those in which something is to be looked at.
    ToCheck,
    /// Records of matches that are over and have no seal that holds.
    Unsealed,
    /// Paper sheets.
    Paper,
    /// Those that were archived, which are hidden otherwise.
    Archived,
}

rules::codes!(Show {
    All = "all",
    ToCheck = "to_check",
    Unsealed = "unsealed",
    Paper = "paper",
    Archived = "archived",
});

/// What is left out.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Filter {
    /// Words and days that are searched for.
    pub words: String,
    /// The one pool that is shown; none for all.
    pub pool: Option<String>,
    /// Which ones.
    pub show: Show,
}

impl Filter {
    /// Whether a row is shown; a day is asked for by the words of a language.
    #[must_use]
    pub fn fits(&self, row: &Row, said: &DateWords) -> bool {
        if row.archived != (self.show == Show::Archived) {
            return false;
        }
        if self.pool.as_ref().is_some_and(|pool| *pool != row.group) {
            return false;
        }
        self.shows(row) && (self.words.trim().is_empty() || self.finds(row, said))
    }

    /// Whether anything is left out by it.
    #[must_use]
    pub fn is_set(&self) -> bool {
        *self != Filter::default()
    }

    fn shows(&self, row: &Row) -> bool {
        match self.show {
            Show::All | Show::Archived => true,
            Show::ToCheck => row.findings() > 0,
            Show::Unsealed => row
                .line
                .as_ref()
                .is_some_and(|line| line.is_over && !line.on_paper && !is_sealed(line.seal)),
            Show::Paper => row.kind == RowKind::Paper,
        }
    }

    fn finds(&self, row: &Row, said: &DateWords) -> bool {
        let names = row.line.iter().flat_map(|line| {
            let names = [&line.teams.a, &line.teams.b, &line.number];
            names.map(String::clone)
        });
        let parts: Vec<String> = row
            .words
            .iter()
            .cloned()
            .chain(names)
            .chain([row.group.clone()])
            .collect();
        fits(
            &parts,
            row.scheduled.as_deref(),
            &row.day,
            &self.words,
            said,
        )
    }
}

const fn is_sealed(seal: SealState) -> bool {
    matches!(seal, SealState::Holds)
}
