//! A practice match: an invented one whose first set is told to a learner, who keeps it on the court as a real one.
//! What was told is laid beside what was kept.
//!
//! It is marked in its heading, wherever it goes, and no table of results takes it in.

use std::sync::Arc;

use game::entry::{By, Change};
use game::{can_be_named, is_missing, simulate, Entry, Kind, Timeline};
use reports::compare::{compare, Comparison};
use rules::{Cause, Preset, Team};

/// What is told at once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Told {
    /// How a rally ended; who wins it the learner decides.
    Rally {
        /// Who serves.
        serves: Option<Team>,
        /// Who wins it, for the answer.
        won_by: Team,
        /// Why it ended.
        cause: Cause,
        /// Who did it.
        by: Option<By>,
    },
    /// A team asks for a time-out.
    TimeOut {
        /// Whose.
        team: Team,
    },
    /// A team asks for a substitution.
    Substitution {
        /// Whose.
        team: Team,
        /// Who goes and who comes.
        changes: Vec<Change>,
    },
}

/// A practice match.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Practice {
    /// All before the first service, as it is given to the learner.
    pub opening: Vec<Entry>,
    /// The first set, told step by step.
    pub steps: Vec<Told>,
    /// The entries of the truth; of each step so many belong to it and to what went before.
    truth: Vec<Entry>,
    ends: Vec<usize>,
}

/// What the id of a match leads to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Found {
    /// The practice match as it was begun.
    Practice(Arc<Practice>),
    /// A practice match that this version of the program would tell otherwise.
    OtherVersion,
    /// No practice match.
    Foreign,
}

/// What was looked for last, so that a screen which is drawn anew does not have the match played again.
#[derive(Debug, Default)]
pub struct LastFound(Option<(String, Found)>);

impl LastFound {
    /// What an id leads to.
    pub fn of_id(&mut self, id: &str) -> Found {
        if let Some((last, found)) = &self.0 {
            if last == id {
                return found.clone();
            }
        }
        let found = Practice::of_id(id);
        self.0 = Some((id.to_owned(), found.clone()));
        found
    }
}

/// With this the id of a practice match begins; the seed and the code of what is told follow.
const ID: &str = "practice-";

/// The rules that it is played by: short, and without a libero.
const RULES: Preset = Preset::SchoolJunior;
/// More seeds are not tried; 452 of the first 500 give a match at once (measured).
const MAX_SEEDS: u64 = 20;
/// A set of fewer rallies teaches little. Our own choice.
const MIN_RALLIES: usize = 30;

impl Practice {
    /// The first one from a seed on whose first set holds nothing but what can be told; none where so many seeds
    /// give none.
    #[must_use]
    pub fn from_seed(seed: u64) -> Option<Practice> {
        (seed..seed.saturating_add(MAX_SEEDS)).find_map(Practice::of)
    }

    fn of(seed: u64) -> Option<Practice> {
        let mut all = simulate(RULES, seed);
        if let Some(Kind::Match(heading)) = all.first_mut().map(|entry| &mut entry.kind) {
            heading.practice = true;
        }
        let begins = all
            .iter()
            .position(|entry| matches!(entry.kind, Kind::BeginSet))?;
        let opening = opening(&all[..=begins])?;
        let mut practice = Practice {
            truth: opening.clone(),
            opening,
            ..Practice::default()
        };
        let mut timeline = Timeline::of(practice.opening.clone());
        let mut rest = all[begins + 1..].iter().peekable();
        // What cannot be told in a sentence is left out; whatever comes after it is told where it is legal then.
        while let Some(entry) = rest.next() {
            if timeline.state().sets().next().is_some() {
                break;
            }
            let serves = timeline.state().serving().map(|(team, _)| team);
            let mut explained = None;
            let mut told = match &entry.kind {
                Kind::Rally { won_by, .. } => {
                    let (cause, by) = match rest.peek().map(|next| &next.kind) {
                        Some(Kind::Explain { cause, by, .. }) => (*cause, *by),
                        // Nothing was said of it: the ball came down somewhere.
                        Some(_) | None if entry.n.is_multiple_of(2) => (Cause::BallIn, None),
                        Some(_) | None => (Cause::BallOut, None),
                    };
                    explained = Some((cause, by));
                    Told::Rally {
                        serves,
                        won_by: *won_by,
                        cause,
                        by,
                    }
                }
                Kind::TimeOut { team } => Told::TimeOut { team: *team },
                Kind::Substitution {
                    team,
                    changes,
                    reason: None,
                } => Told::Substitution {
                    team: *team,
                    changes: changes.clone(),
                },
                _ => continue,
            };
            let mut push = |kind: Kind| {
                let entry = Entry {
                    at: entry.at,
                    ..Entry::new(timeline.next_number(), kind)
                };
                timeline.check(&entry).ok()?;
                // No sentence tells of a captain who has to be named.
                if matches!(entry.kind, Kind::Substitution { .. }) {
                    let mut with = timeline.clone();
                    with.push(entry.clone());
                    if asks_for_captain(&with) {
                        return None;
                    }
                }
                timeline.push(entry.clone());
                practice.truth.push(entry);
                practice.truth.last().map(|entry| entry.n)
            };
            let Some(n) = push(entry.kind.clone()) else {
                continue;
            };
            if let Some((cause, by)) = explained {
                let explain = |cause, by| Kind::Explain {
                    entry: n,
                    cause,
                    by,
                    seen_by: None,
                };
                // A reason that no longer fits is told as a ball that came down.
                if push(explain(cause, by)).is_none() {
                    push(explain(Cause::BallIn, None));
                    if let Told::Rally { cause, by, .. } = &mut told {
                        (*cause, *by) = (Cause::BallIn, None);
                    }
                }
            }
            practice.steps.push(told);
            practice.ends.push(practice.truth.len());
        }
        let rallies = practice.steps.iter();
        let rallies = rallies
            .filter(|told| matches!(told, Told::Rally { .. }))
            .count();
        (rallies >= MIN_RALLIES && timeline.state().sets().next().is_some()).then_some(practice)
    }

    /// The id under which it is kept, with some text that no other match has. A seed may give another match after
    /// an update, so what is told has a code beside it.
    #[must_use]
    pub fn id(&self, seed: u64, own: &str) -> String {
        format!("{ID}{seed}-{}-{own}", self.code())
    }

    /// The practice match of an id.
    #[must_use]
    pub fn of_id(id: &str) -> Found {
        let Some(rest) = id.strip_prefix(ID) else {
            return Found::Foreign;
        };
        let mut parts = rest.split('-');
        let Some(seed) = parts.next().and_then(|seed| seed.parse().ok()) else {
            return Found::Foreign;
        };
        match Practice::from_seed(seed) {
            Some(practice) if parts.next() == Some(practice.code().as_str()) => {
                Found::Practice(Arc::new(practice))
            }
            Some(_) | None => Found::OtherVersion,
        }
    }

    /// A code of all that is told.
    fn code(&self) -> String {
        record::seal_code(&self.truth)
    }

    /// What is true once so many steps have been told; of more than there are, all of it.
    #[must_use]
    pub fn truth(&self, told: usize) -> Timeline {
        let last = told.min(self.ends.len()).checked_sub(1);
        let end = last.map_or(self.opening.len(), |last| self.ends[last]);
        Timeline::of(self.truth[..end.min(self.truth.len())].to_vec())
    }

    /// What differs between what happened up to the step that is told and what was kept, the truth first. Whether
    /// that step was entered already is seen in the record: the truth that differs by less counts.
    #[must_use]
    pub fn compared(&self, step: usize, kept: &Timeline) -> Comparison {
        let [before, with] = [step, step + 1].map(|told| compare(&self.truth(told), kept));
        if with.within().count() <= before.within().count() {
            with
        } else {
            before
        }
    }
}

/// All before the first service, with a game captain named where the captain does not begin; none where more
/// has happened by then than a learner is told of.
fn opening(all: &[Entry]) -> Option<Vec<Entry>> {
    let is_change = |entry: &Entry| matches!(entry.kind, Kind::Substitution { .. });
    if all.iter().any(is_change) {
        return None;
    }
    let at = all.last().and_then(|entry| entry.at);
    let mut timeline = Timeline::of(all.to_vec());
    for team in Team::BOTH {
        if is_missing(timeline.state(), team) {
            let number = *can_be_named(timeline.state(), team).first()?;
            let kind = Kind::GameCaptain { team, number };
            let n = timeline.next_number();
            timeline.push(Entry {
                at,
                ..Entry::new(n, kind)
            });
        }
    }
    (!asks_for_captain(&timeline)).then(|| timeline.entries().to_vec())
}

fn asks_for_captain(timeline: &Timeline) -> bool {
    let mut teams = Team::BOTH.into_iter();
    teams.any(|team| is_missing(timeline.state(), team))
}
