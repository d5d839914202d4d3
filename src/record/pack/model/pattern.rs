//! What an entry may be, told in one word: the patterns, which of them are possible in a state, and which one
//! brings an entry back.

use super::before::{next_line_up, starters, ROLES};
use super::court::{bench, holders, replacements, stood};
use crate::game::entry::{Change, LateFault, Toss};
use crate::game::{legal, may, Entry, Kind, Phase, Replay, State};
use crate::rules::{Shirt, Step, Team};

/// The patterns, in the order in which they are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Pattern {
    Rally,
    ExplainLast,
    Timer,
    Libero,
    TimeOut,
    Substitution,
    StrikeLast,
    LineUp,
    BeginSet,
    Toss,
    ChangeCourts,
    TeamList,
    Check,
    Sign,
    Seal,
    Explain,
    Strike,
    Remark,
    Hurt,
    LateFault,
    /// Anything else of what the reducer lists as legal.
    Listed,
    Words,
}

/// How many there are.
pub(super) const PATTERNS: usize = Pattern::ALL.len();

impl Pattern {
    pub(super) const ALL: [Pattern; 22] = [
        Pattern::Rally,
        Pattern::ExplainLast,
        Pattern::Timer,
        Pattern::Libero,
        Pattern::TimeOut,
        Pattern::Substitution,
        Pattern::StrikeLast,
        Pattern::LineUp,
        Pattern::BeginSet,
        Pattern::Toss,
        Pattern::ChangeCourts,
        Pattern::TeamList,
        Pattern::Check,
        Pattern::Sign,
        Pattern::Seal,
        Pattern::Explain,
        Pattern::Strike,
        Pattern::Remark,
        Pattern::Hurt,
        Pattern::LateFault,
        Pattern::Listed,
        Pattern::Words,
    ];

    pub(super) fn place(self) -> usize {
        self as usize
    }

    /// Its sign in [`custom::ORDINARY`].
    pub(super) const fn letter(self) -> char {
        match self {
            Pattern::Rally => 'r',
            Pattern::ExplainLast => 'e',
            Pattern::Timer => 't',
            Pattern::Libero => 'l',
            Pattern::TimeOut => 'o',
            Pattern::Substitution => 's',
            Pattern::StrikeLast => 'x',
            Pattern::LineUp => 'b',
            Pattern::BeginSet => 'g',
            Pattern::Toss => 'h',
            Pattern::ChangeCourts => 'c',
            Pattern::TeamList => 'u',
            Pattern::Check => 'k',
            Pattern::Sign => 'n',
            Pattern::Seal => 'z',
            Pattern::Explain => '?',
            Pattern::Strike => '!',
            Pattern::Remark => 'm',
            Pattern::Hurt => 'i',
            Pattern::LateFault => 'f',
            Pattern::Listed => 'a',
            Pattern::Words => 'w',
        }
    }

    /// Whether an entry of this pattern can come next.
    pub(super) fn is_possible(self, replay: &Replay) -> bool {
        let state = replay.state();
        let can = |kind: Kind| may(state, &Entry::new(u32::MAX, kind)).is_ok();
        match self {
            Pattern::Rally => state.phase() == Phase::Playing,
            Pattern::ExplainLast => replay.last_rally().is_some(),
            Pattern::Libero => !replacements(state).is_empty(),
            Pattern::TimeOut => Team::BOTH
                .into_iter()
                .any(|team| can(Kind::TimeOut { team })),
            Pattern::Substitution => state.rules().line_ups && state.on_floor().is_some(),
            Pattern::StrikeLast => replay.last_standing().is_some(),
            Pattern::LineUp => next_line_up(state).is_some(),
            Pattern::BeginSet => can(Kind::BeginSet),
            Pattern::Toss => can(Kind::Toss(Toss::new(Team::A, Team::A))),
            Pattern::ChangeCourts => can(Kind::ChangeCourts),
            Pattern::TeamList => state.heading().is_some() && state.phase() == Phase::Preparation,
            Pattern::Check | Pattern::Sign => state.heading().is_some(),
            Pattern::Seal => state.heading().is_some() && state.sealed().is_none(),
            Pattern::Explain | Pattern::Strike => replay.entries().len() > 1,
            Pattern::Listed => state.heading().is_some() && state.sealed().is_none(),
            Pattern::Hurt | Pattern::LateFault => state.play().is_some(),
            Pattern::Timer | Pattern::Remark | Pattern::Words => true,
        }
    }
}

/// What is legal and has no pattern of its own.
pub(super) fn listed(state: &State) -> Vec<Kind> {
    let mut all = legal(state);
    all.retain(|kind| {
        !matches!(
            kind,
            Kind::Rally { .. }
                | Kind::TimeOut { .. }
                | Kind::Substitution { .. }
                | Kind::LiberoReplacement { .. }
                | Kind::Toss(_)
                | Kind::BeginSet
                | Kind::ChangeCourts
        )
    });
    all
}

/// The pattern that brings an entry back exactly.
pub(super) fn pattern_of(replay: &Replay, kind: &Kind) -> Pattern {
    let state = replay.state();
    let wanted = match kind {
        Kind::Rally { .. } if state.phase() == Phase::Playing => Pattern::Rally,
        Kind::Explain { entry, .. } => {
            if replay.last_rally().is_some_and(|e| e.n == *entry) {
                Pattern::ExplainLast
            } else {
                Pattern::Explain
            }
        }
        Kind::Timer(_) => Pattern::Timer,
        Kind::LiberoReplacement { .. } if replacements(state).contains(kind) => Pattern::Libero,
        Kind::TimeOut { .. } => Pattern::TimeOut,
        Kind::Substitution { team, changes, .. } => {
            let (out, into) = (holders(state, *team), bench(state, *team));
            let fits = !changes.is_empty()
                && changes.iter().enumerate().all(|(i, c)| {
                    let again = |d: &Change| d.out == c.out || d.into == c.into;
                    out.contains(&c.out)
                        && into.contains(&c.into)
                        && !changes[..i].iter().any(again)
                });
            if fits {
                Pattern::Substitution
            } else {
                Pattern::Words
            }
        }
        Kind::Strike { entry, why } => {
            if why.is_none() && replay.last_standing().is_some_and(|e| e.n == *entry) {
                Pattern::StrikeLast
            } else {
                Pattern::Strike
            }
        }
        Kind::LineUp { team, positions } => {
            let free = starters(state, *team);
            let size = usize::from(state.rules().players_on_court).min(free.len());
            let fits = next_line_up(state) == Some(*team)
                && positions.len() == size
                && positions
                    .iter()
                    .enumerate()
                    .all(|(i, s)| free.contains(s) && !positions[..i].contains(s));
            if fits {
                Pattern::LineUp
            } else {
                Pattern::Words
            }
        }
        Kind::BeginSet => Pattern::BeginSet,
        Kind::Toss(_) => Pattern::Toss,
        Kind::ChangeCourts => Pattern::ChangeCourts,
        Kind::Check(check) if Step::ALL.iter().any(|s| s.code() == check.item) => Pattern::Check,
        Kind::Sign { role, .. } if ROLES.contains(&role.as_str()) => Pattern::Sign,
        Kind::Seal { .. } => Pattern::Seal,
        Kind::TeamList(list) if list.players.len() <= 400 && list.staff.len() <= 100 => {
            Pattern::TeamList
        }
        Kind::Remark { .. } => Pattern::Remark,
        Kind::Replay { rally: Some(_), .. } => Pattern::Words,
        Kind::Replay { hurt: Some(_), .. } => Pattern::Hurt,
        Kind::LateFault(fault) if is_near(state, fault) => Pattern::LateFault,
        Kind::Replay { .. }
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::Misconduct { .. }
        | Kind::Recovery { .. }
        | Kind::NewLibero { .. }
        | Kind::Incomplete { .. }
        | Kind::Default { .. }
        | Kind::Suspend { .. }
        | Kind::Resume { .. }
        | Kind::Answer { .. }
            if listed(state).contains(kind) =>
        {
            Pattern::Listed
        }
        _ => Pattern::Words,
    };
    if wanted.is_possible(replay) {
        wanted
    } else {
        Pattern::Words
    }
}

/// Whether a fault found late can be written by what is on court.
pub(super) fn is_near(state: &State, fault: &LateFault) -> bool {
    let Some(play) = state.play() else {
        return false;
    };
    let there: Vec<Shirt> = play.sides[fault.team].on_court().collect();
    let since = fault
        .since
        .is_none_or(|s| s.set.is_none() && stood(state).contains(&s.score));
    since && fault.positions.as_ref().is_none_or(|p| *p == there)
}
