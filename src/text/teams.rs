//! What a sentence has to know of the match that it is about.

use game::{isolated, State};
use reports::paper::{Draft, PaperSheet};
use reports::Sheet;
use rules::{ByTeam, Team};

/// What the teams of a match are called, and how many players each has on court.
#[derive(Clone, Copy, Debug)]
pub struct Teams<'a> {
    names: ByTeam<&'a str>,
    /// Players of a team on court.
    pub on_court: u8,
}

impl Teams<'_> {
    /// The name of a team as it stands in a sentence; its letter where it has none.
    #[must_use]
    pub fn name(&self, team: Team) -> String {
        match self.names[team] {
            "" => team.letter().to_owned(),
            name => isolated(name),
        }
    }
}

impl<'a> From<&'a State> for Teams<'a> {
    fn from(state: &'a State) -> Teams<'a> {
        Teams {
            names: ByTeam::new(|team| state.name(team)),
            on_court: state.rules().players_on_court,
        }
    }
}

impl<'a> From<&'a Sheet> for Teams<'a> {
    fn from(sheet: &'a Sheet) -> Teams<'a> {
        Teams {
            names: ByTeam::new(|team| sheet.teams[team].name.as_str()),
            on_court: sheet.rules.players_on_court,
        }
    }
}

impl<'a> From<&'a PaperSheet> for Teams<'a> {
    fn from(sheet: &'a PaperSheet) -> Teams<'a> {
        Teams {
            names: ByTeam::new(|team| sheet.teams[team].name.as_str()),
            on_court: sheet.rules.players_on_court,
        }
    }
}

impl<'a> From<&'a Draft> for Teams<'a> {
    fn from(draft: &'a Draft) -> Teams<'a> {
        Teams {
            names: ByTeam::new(|team| draft.name(team)),
            on_court: draft.rules.players_on_court,
        }
    }
}
