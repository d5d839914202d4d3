//! What a list says of a match, kept beside it so that a list need not fold every match.

use serde::{Deserialize, Serialize};

use game::entry::Detail;
use game::{Phase, State, Timeline};
use record::broken;
use rules::{ByTeam, Score, Team};

/// Grows whenever a field is added that a list cannot do without; an older summary is made anew.
const VERSION: u32 = 3;

/// Where a match stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Stage {
    /// Before the first service.
    #[default]
    Preparation,
    /// A set runs, or is suspended.
    Playing,
    /// Between two sets.
    BetweenSets,
    /// Over.
    Finished,
}

/// What a list shows of a match and finds it by.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Summary {
    version: u32,
    /// The number of the last line.
    pub last: u32,
    /// Its link, which stands for the whole log.
    pub link: String,
    /// Whether the heading could be read.
    pub is_readable: bool,
    /// Names of the teams.
    names: [String; 2],
    /// Everything else that the match is found by.
    pub words: Vec<String>,
    /// The day it was to be played, as given.
    pub scheduled: Option<String>,
    /// Whether positions are followed.
    pub line_ups: bool,
    /// Where it stands.
    pub stage: Stage,
    /// The set that is played, or was last.
    pub set: u8,
    sets_won: [u8; 2],
    score: [u16; 2],
    sets: Vec<[u16; 2]>,
    /// When the last entry was made.
    pub last_at: Option<i64>,
    /// How many lines could not be read.
    pub unreadable: usize,
    /// Whether a link or a seal does not fit.
    pub is_changed: bool,
    /// Whether it is sealed: nothing is entered until it is opened again.
    pub is_sealed: bool,
    /// Whether it is a practice match.
    pub is_practice: bool,
}

fn pair<T>(of: ByTeam<T>) -> [T; 2] {
    [of.a, of.b]
}

impl Summary {
    /// Of a log whose last line has this number and link.
    #[must_use]
    pub fn of(timeline: &Timeline, last: u32, link: &str, unreadable: usize) -> Summary {
        Summary {
            last,
            link: link.to_owned(),
            last_at: timeline.entries().iter().rev().find_map(|e| e.at),
            unreadable,
            is_changed: !broken(timeline.entries()).is_empty(),
            ..Summary::of_state(timeline.state())
        }
    }

    /// What a state alone says.
    #[must_use]
    pub fn of_state(state: &State) -> Summary {
        let heading = state.heading();
        let words = heading.map_or_else(Vec::new, |h| {
            let details = Detail::ALL.iter().filter_map(|&d| h.details[d].clone());
            details
                .chain(Team::BOTH.map(|t| h.names[t].clone()))
                .collect()
        });
        Summary {
            version: VERSION,
            is_readable: heading.is_some(),
            is_practice: heading.is_some_and(|h| h.practice),
            names: pair(ByTeam::new(|team| {
                heading.map_or_else(String::new, |h| h.names[team].clone())
            })),
            words,
            scheduled: heading.and_then(|h| h.details[Detail::Scheduled].clone()),
            line_ups: heading.is_some() && state.rules().line_ups,
            stage: match state.phase() {
                Phase::Preparation => Stage::Preparation,
                Phase::Playing | Phase::Suspended => Stage::Playing,
                Phase::BetweenSets => Stage::BetweenSets,
                Phase::Finished => Stage::Finished,
            },
            is_sealed: state.sealed().is_some(),
            set: state.set_number(),
            sets_won: pair(state.sets_won()),
            score: [state.score().a, state.score().b],
            sets: state.sets().map(|s| [s.score.a, s.score.b]).collect(),
            ..Summary::default()
        }
    }

    /// Reads one; none where it is of another version or no summary.
    #[must_use]
    pub fn read(text: &str) -> Option<Summary> {
        let summary: Summary = serde_json::from_str(text).ok()?;
        (summary.version == VERSION).then_some(summary)
    }

    /// Writes it down.
    #[must_use]
    pub fn write(&self) -> String {
        // A plain struct cannot fail to be written.
        serde_json::to_string(self).unwrap_or_default()
    }

    /// The name of a team.
    #[must_use]
    pub fn name(&self, team: Team) -> &str {
        let [a, b] = &self.names;
        match team {
            Team::A => a,
            Team::B => b,
        }
    }

    /// Sets won.
    #[must_use]
    pub fn sets_won(&self) -> ByTeam<u8> {
        let [a, b] = self.sets_won;
        ByTeam { a, b }
    }

    /// The score of the set that is played.
    #[must_use]
    pub fn score(&self) -> Score {
        score(self.score)
    }

    /// The scores of the sets that are over.
    pub fn sets(&self) -> impl Iterator<Item = Score> + '_ {
        self.sets.iter().copied().map(score)
    }

    /// Whether it is over.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.stage == Stage::Finished
    }

    /// Whether somebody may want to go on with it; not with one that was broken off and sealed.
    #[must_use]
    pub fn may_go_on(&self) -> bool {
        self.is_readable && !self.is_over() && !self.is_sealed
    }

    /// Whether it has begun and may go on.
    #[must_use]
    pub fn is_under_way(&self) -> bool {
        match self.stage {
            Stage::Playing | Stage::BetweenSets => !self.is_sealed,
            Stage::Preparation | Stage::Finished => false,
        }
    }
}

fn score([a, b]: [u16; 2]) -> Score {
    Score { a, b }
}

#[cfg(test)]
mod tests {
    use super::*;
    use game::{simulate, Entry, Kind};
    use rules::Preset;

    #[test]
    fn it_says_what_the_fold_says_and_comes_back() {
        for (preset, seed) in [(Preset::SchoolJunior, 1), (Preset::International, 2)] {
            let timeline = Timeline::of(simulate(preset, seed));
            let state = timeline.state();
            let summary = Summary::of(&timeline, 7, "abc", 0);
            assert_eq!(Summary::read(&summary.write()), Some(summary.clone()));
            assert!(summary.is_over() && summary.is_readable);
            assert_eq!(summary.sets_won(), state.sets_won());
            let sets: Vec<Score> = state.sets().map(|s| s.score).collect();
            assert_eq!(summary.sets().collect::<Vec<_>>(), sets);
            assert_eq!(
                Some(summary.name(Team::B)),
                state.heading().map(|h| h.names.b.as_str())
            );
        }
        // Broken off, then sealed.
        let mut timeline = Timeline::of(simulate(Preset::SchoolJunior, 1)[..60].to_vec());
        let summary = Summary::of(&timeline, 7, "abc", 0);
        assert!(summary.may_go_on() && summary.is_under_way());
        let code = record::seal_code(timeline.entries());
        timeline.push(Entry::new(timeline.next_number(), Kind::Seal { code }));
        let summary = Summary::of(&timeline, 8, "abd", 0);
        assert!(summary.is_sealed && !summary.is_over());
        assert!(!summary.may_go_on() && !summary.is_under_way());
        assert!(!timeline.state().is_under_way());
        assert_eq!(Summary::read("{}"), None);
        assert_eq!(Summary::read("no"), None);
    }
}
