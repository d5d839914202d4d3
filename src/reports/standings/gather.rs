//! Results for a pool from match records and paper sheets.

use super::{Played, Side, Source};
use crate::paper::PaperSheet;
use game::{DecidedBy, Phase, State};
use rules::Team;

/// The result of a match that is over; none while it goes on.
#[must_use]
pub fn of_match(state: &State) -> Option<Played> {
    if state.phase() != Phase::Finished {
        return None;
    }
    let by_default = state.ended() == Some(DecidedBy::Default);
    let loser = state.winner().map(Team::other);
    Some(Played {
        home: state.name(Team::A).to_owned(),
        away: state.name(Team::B).to_owned(),
        sets: state.sets().map(|s| (s.score.a, s.score.b)).collect(),
        default: loser.filter(|_| by_default).map(|team| match team {
            Team::A => Side::Home,
            Team::B => Side::Away,
        }),
        source: Source::default(),
    })
}

/// The result as it stands on a paper sheet; none where the points at the end of a set are missing.
#[must_use]
pub fn of_paper(sheet: &PaperSheet) -> Option<Played> {
    let sets: Option<Vec<_>> = sheet.sets.iter().map(|s| s.points).collect();
    let sets = sets.filter(|sets| !sets.is_empty())?;
    let name = |team: Team| match sheet.teams[team].name.as_str() {
        "" => team.letter().to_owned(),
        name => name.to_owned(),
    };
    Some(Played {
        home: name(Team::A),
        away: name(Team::B),
        sets: sets.into_iter().map(|s| (s.a, s.b)).collect(),
        default: None,
        source: Source::default(),
    })
}
