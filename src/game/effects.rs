//! What is different after an entry, read off two timelines: nothing here knows a rule.

use crate::fold::{Outcome, Timeline};
use crate::model::entry::Entry;
use crate::model::set::{Point, SetPlay};
use crate::model::stage::Phase;
use crate::model::state::State;
use rules::{ByTeam, Shirt, Team};

/// One thing that is different after an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// The match is over.
    MatchOver,
    /// The set that was played is over.
    SetOver,
    /// Play is interrupted.
    Interrupted,
    /// A set that was over is played on.
    SetContinues {
        /// The set.
        set: u8,
    },
    /// A set that had begun, or that nobody waited for, has yet to begin.
    SetAhead {
        /// The set.
        set: u8,
    },
    /// The sets won.
    SetsWon {
        /// Before the entry.
        before: ByTeam<u8>,
        /// After it.
        after: ByTeam<u8>,
    },
    /// The result of a set that was over before.
    SetScore {
        /// The set.
        set: u8,
        /// Its points after the entry.
        score: ByTeam<u16>,
    },
    /// The score of the running set.
    Score {
        /// Before the entry.
        before: ByTeam<u16>,
        /// After it.
        after: ByTeam<u16>,
    },
    /// Points of a team are cancelled that counted.
    PointsCancelled {
        /// Whose points.
        team: Team,
        /// How many, at least one.
        points: usize,
    },
    /// Who serves.
    Serves {
        /// The team that serves after the entry.
        team: Team,
        /// Its server, where line-ups are kept.
        server: Option<Shirt>,
    },
    /// A team stands in an order that rotation alone does not make.
    Places {
        /// The team.
        team: Team,
        /// Who stands at place 1 and the places after it.
        on_court: Vec<Shirt>,
    },
    /// The running set is played to another number of points.
    Target {
        /// The set.
        set: u8,
        /// Its points.
        points: u16,
    },
}

/// What is different after an entry, in the order in which it is said; [`no_longer_count`] says which entries fell.
#[must_use]
pub fn effects(before: &Timeline, after: &Timeline) -> Vec<Effect> {
    let (old, new) = (before.state(), after.state());
    let mut effects: Vec<Effect> = phase(old, new).into_iter().collect();
    results(old, new, &mut effects);
    effects.extend(
        Team::BOTH
            .into_iter()
            .filter_map(|team| cancelled(old, new, team)),
    );
    if let Some((team, server)) = new.serving().filter(|_| old.serving() != new.serving()) {
        effects.push(Effect::Serves { team, server });
    }
    effects.extend(
        Team::BOTH
            .into_iter()
            .filter_map(|team| places(old, new, team)),
    );
    effects.extend(target(old, new));
    effects
}

fn phase(old: &State, new: &State) -> Option<Effect> {
    let (was, is) = (old.phase(), new.phase());
    if was == is {
        return None;
    }
    match is {
        Phase::Finished => Some(Effect::MatchOver),
        Phase::BetweenSets if was == Phase::Playing => Some(Effect::SetOver),
        Phase::Suspended => Some(Effect::Interrupted),
        Phase::Playing if was == Phase::Suspended => None,
        Phase::Playing => Some(Effect::SetContinues {
            set: new.set_number(),
        }),
        Phase::BetweenSets | Phase::Preparation => Some(Effect::SetAhead {
            set: new.set_at_hand(),
        }),
    }
}

fn results(old: &State, new: &State, effects: &mut Vec<Effect>) {
    let (before, after) = (old.sets_won(), new.sets_won());
    if before != after {
        effects.push(Effect::SetsWon { before, after });
    }
    for set in new.sets() {
        let was = old.sets().find(|o| o.number == set.number);
        if was.is_some_and(|was| was.score != set.score) {
            effects.push(Effect::SetScore {
                set: set.number,
                score: set.score,
            });
        }
    }
    let (before, after) = (old.score(), new.score());
    if before != after {
        effects.push(Effect::Score { before, after });
    }
}

fn cancelled(old: &State, new: &State, team: Team) -> Option<Effect> {
    let is_cancelled = |p: &&Point| p.to == team && p.cancelled_by.is_some();
    let in_set = |play: &SetPlay| play.points.iter().filter(is_cancelled).count();
    let in_all = |state: &State| -> usize {
        let over = state.sets().filter_map(|s| s.play.as_ref());
        over.chain(state.play()).map(in_set).sum()
    };
    let points = in_all(new).saturating_sub(in_all(old));
    (points > 0).then_some(Effect::PointsCancelled { team, points })
}

fn places(old: &State, new: &State, team: Team) -> Option<Effect> {
    let order = |state: &State| -> Vec<Shirt> {
        let on_court = |play: &SetPlay| play.sides[team].on_court().collect();
        state.play().map(on_court).unwrap_or_default()
    };
    let (was, on_court) = (order(old), order(new));
    let by_rotation = (0..was.len().max(1)).any(|by| {
        let mut rotated = was.clone();
        rotated.rotate_left(by.min(was.len()));
        rotated == on_court
    });
    (!on_court.is_empty() && !by_rotation).then_some(Effect::Places { team, on_court })
}

fn target(old: &State, new: &State) -> Option<Effect> {
    let of = |state: &State| {
        let set = state.play()?.number;
        Some((set, state.rules().target_of(set).target))
    };
    let (was, is) = (of(old)?, of(new)?);
    let (set, points) = is;
    (was.0 == set && was.1 != points).then_some(Effect::Target { set, points })
}

/// The entries that counted and are refused now, because what they stood on is gone.
#[must_use]
pub fn no_longer_count<'a>(before: &'a Timeline, after: &Timeline) -> Vec<&'a Entry> {
    let is_refused = |e: &Entry| matches!(after.outcome(e.n), Some(Outcome::Refused(_)));
    before
        .outcomes()
        .filter(|(e, outcome)| outcome.counts() && is_refused(e))
        .map(|(e, _)| e)
        .collect()
}
