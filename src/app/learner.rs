//! What somebody has practised on this phone: kinds of scenes, when each is due again, how hard it is to be.
//!
//! What it holds says nothing of the person: no name, no row of days, no rank. It is written as a small text,
//! read back with whatever can be read, and forgotten with one call.

mod order;
mod written;

pub use order::order;

use std::collections::BTreeMap;

use fsrs::{MemoryState, FSRS};
use learn::{Kind, Level, Marked, Timing};
use rules::Cause;

/// How many reaction times are kept, the newest. Our own choice: about five sessions.
const MAX_TIMES: usize = 100;
/// How surely a kind is still known when it is due again: the value that the scheduler recommends.
const RETENTION: f32 = 0.9;
/// So many right answers in a row make the next scenes of a kind harder. Our own choice.
const HARDER_AFTER: u8 = 2;
/// New kinds in a session, at most. Our own choice.
const NEW_IN_SESSION: usize = 6;
/// So many other scenes lie between two of one kind. Our own choice.
const APART: usize = 3;
/// How long a session is, in seconds.
pub const SESSION_SECONDS: u32 = 300;

/// So long a session waits for whoever reads about a decision in its middle, in milliseconds. Our own choice.
const MAX_AWAY_MS: i64 = 1_800_000;

/// In a day, in milliseconds.
const DAY_MS: f64 = 86_400_000.0;

/// What is known of one kind of scene.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Practised {
    /// In how many days the chance to know it has fallen to nine in ten.
    stability: f32,
    /// How hard it is for this learner, 1 to 10.
    difficulty: f32,
    /// When it was shown last, in milliseconds since 1970.
    last: i64,
    /// When it is due again.
    due: i64,
    /// How hard its scenes are.
    level: Level,
    /// Right answers in a row at this level.
    row: u8,
    /// How often it was shown.
    pub shown: u32,
    /// How often everything was right.
    pub right: u32,
}

/// All that was practised.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Learner {
    kinds: BTreeMap<Kind, Practised>,
    /// From fault to whistle, in milliseconds, the newest last.
    times: Vec<u16>,
}

/// What is to be shown next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Task {
    /// The kind.
    pub kind: Kind,
    /// How hard.
    pub level: Level,
}

/// What came up in one session, the newest last; it is not kept.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Sitting {
    /// Each scene with what the learner made of it.
    pub scenes: Vec<(Kind, Marked)>,
}

impl Sitting {
    /// How many scenes were right in every beat.
    #[must_use]
    pub fn right(&self) -> usize {
        self.scenes.iter().filter(|(_, m)| m.is_right()).count()
    }

    /// The middle one of the times from fault to whistle, in milliseconds.
    #[must_use]
    pub fn median(&self) -> Option<u16> {
        let times = self.scenes.iter().filter_map(|(_, m)| ms(m));
        median(times.collect())
    }

    /// The kinds that went wrong last, each once, the newest first.
    #[must_use]
    pub fn to_try(&self) -> Vec<Kind> {
        let mut last: Vec<(Kind, bool)> = Vec::new();
        for (kind, marked) in self.scenes.iter().rev() {
            if last.iter().all(|(known, _)| known != kind) {
                last.push((*kind, marked.is_right()));
            }
        }
        let wrong = last.into_iter().filter(|(_, right)| !right);
        wrong.map(|(kind, _)| kind).collect()
    }
}

impl Learner {
    /// Whether nothing was practised yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.kinds.is_empty()
    }

    /// Every kind that was shown, with what is known of it, in the order of [`Kind::all`].
    pub fn kinds(&self) -> impl Iterator<Item = (Kind, &Practised)> {
        Kind::all().filter_map(|kind| Some((kind, self.kinds.get(&kind)?)))
    }

    /// The middle one of the kept times from fault to whistle, in milliseconds.
    #[must_use]
    pub fn median(&self) -> Option<u16> {
        median(self.times.clone())
    }

    /// Takes an answer in; `now` in milliseconds since 1970.
    pub fn took(&mut self, kind: Kind, marked: &Marked, now: i64) {
        if let Some(time) = ms(marked) {
            self.times.push(time);
            let over = self.times.len().saturating_sub(MAX_TIMES);
            self.times.drain(..over);
        }
        let before = self.kinds.get(&kind).copied();
        let memory = before.map(|known| MemoryState {
            stability: known.stability,
            difficulty: known.difficulty,
        });
        let days = before.map_or(0, |known| whole_days(now - known.last));
        let right = marked.is_right();
        let Some(next) = after(memory, days, right, marked.timing) else {
            return;
        };
        let mut known = before.unwrap_or(Practised {
            stability: 0.0,
            difficulty: 0.0,
            last: now,
            due: now,
            level: Level::Clear,
            row: 0,
            shown: 0,
            right: 0,
        });
        known.stability = next.memory.stability;
        known.difficulty = next.memory.difficulty;
        known.last = now;
        #[allow(clippy::cast_possible_truncation)]
        let wait = (f64::from(next.interval.clamp(0.0, 3650.0)) * DAY_MS) as i64;
        known.due = now.saturating_add(wait);
        known.shown = known.shown.saturating_add(1);
        if right {
            known.right = known.right.saturating_add(1);
            known.row += 1;
            if known.row >= HARDER_AFTER {
                (known.level, known.row) = (harder(known.level), 0);
            }
        } else {
            (known.level, known.row) = (easier(known.level), 0);
        }
        self.kinds.insert(kind, known);
    }

    /// What to show next. What is due comes first, what has waited longest before the rest; then something
    /// new, in the order of [`order`]; then what will be due soonest. `turn` is any number that changes from
    /// scene to scene.
    #[must_use]
    pub fn next(&self, sitting: &Sitting, now: i64, turn: u64) -> Task {
        let lately: Vec<Kind> = sitting
            .scenes
            .iter()
            .rev()
            .take(APART)
            .map(|s| s.0)
            .collect();
        let free = |kind: &Kind| !lately.contains(kind);
        // What went wrong comes again in the same session.
        let again = sitting.to_try().into_iter().rev().find(free);
        let due = self
            .kinds
            .iter()
            .filter(|(kind, known)| known.due <= now && free(kind))
            .min_by_key(|(_, known)| known.due)
            .map(|(kind, _)| *kind);
        // Begun in this session: never shown outside it.
        let in_sitting = |kind: Kind| sitting.scenes.iter().filter(|s| s.0 == kind).count();
        let begun = self
            .kinds
            .iter()
            .filter(|(kind, known)| known.shown as usize == in_sitting(**kind))
            .count();
        let new = order().find(|kind| !self.kinds.contains_key(kind));
        let new = new.filter(|_| begun < NEW_IN_SESSION);
        let soonest = || {
            let known = self.kinds.iter().filter(|(kind, _)| free(kind));
            known.min_by_key(|(_, k)| k.due).map(|(kind, _)| *kind)
        };
        // Every third scene is something new where there is something due as well.
        let first = if turn % 3 == 2 {
            new.or(again).or(due)
        } else {
            again.or(due).or(new)
        };
        let kind = first.or_else(soonest).unwrap_or(Kind::Ends(Cause::BallIn));
        Task {
            kind,
            level: self.kinds.get(&kind).map_or(Level::Clear, |k| k.level),
        }
    }

    /// Lays what was practised elsewhere beside this: of each kind what was shown more often, or later.
    pub fn merge(&mut self, other: Learner) {
        for (kind, theirs) in other.kinds {
            let ours = self.kinds.get(&kind);
            if ours.is_none_or(|ours| (ours.shown, ours.last) < (theirs.shown, theirs.last)) {
                self.kinds.insert(kind, theirs);
            }
        }
        if self.times.is_empty() {
            self.times = other.times;
        }
    }
}

impl Practised {
    /// How hard its scenes are now.
    #[must_use]
    pub const fn level(&self) -> Level {
        self.level
    }

    /// When it is due again, in milliseconds since 1970.
    #[must_use]
    pub const fn due(&self) -> i64 {
        self.due
    }
}

/// What the scheduler makes of an answer; none only for values that no answer leads to.
fn after(
    memory: Option<MemoryState>,
    days: u32,
    right: bool,
    timing: Timing,
) -> Option<fsrs::ItemState> {
    // With its default weights it cannot fail.
    let scheduler = FSRS::new(&[]).ok()?;
    let next = scheduler.next_states(memory, RETENTION, days).ok()?;
    Some(match timing {
        _ if !right => next.again,
        Timing::Late => next.hard,
        Timing::InTime
        | Timing::RightlyNone
        | Timing::Early
        | Timing::Missed
        | Timing::Needless => next.good,
    })
}

/// Whether a session that was left at one moment goes on at another, both in milliseconds since 1970.
#[must_use]
pub fn goes_on(left: i64, now: i64) -> bool {
    (0..=MAX_AWAY_MS).contains(&(now - left))
}

fn whole_days(ms: i64) -> u32 {
    u32::try_from(ms.max(0) / 86_400_000).unwrap_or(u32::MAX)
}

fn ms(marked: &Marked) -> Option<u16> {
    // Not below 0, and far below what the type holds.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    marked
        .reaction
        .map(|after| (after * 1000.0).round().clamp(0.0, 60_000.0) as u16)
}

fn median(mut times: Vec<u16>) -> Option<u16> {
    times.sort_unstable();
    times.get(times.len() / 2).copied()
}

const fn harder(level: Level) -> Level {
    match level {
        Level::Clear => Level::Close,
        Level::Close | Level::Tight => Level::Tight,
    }
}

const fn easier(level: Level) -> Level {
    match level {
        Level::Tight => Level::Close,
        Level::Close | Level::Clear => Level::Clear,
    }
}
