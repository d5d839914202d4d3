//! The fold of a whole log, with what was taken back, and what became of each entry.

use super::entry::{Entry, Kind};
use super::reducer::{may, step};
use super::seal;
use super::state::State;
use super::Refusal;

/// What became of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It counts.
    Taken,
    /// It counts because the official insisted against this advice.
    Insisted(Refusal),
    /// It is refused and changes nothing.
    Refused(Refusal),
    /// It was taken back by that entry.
    Struck(u32),
}

/// A log and what follows from it.
///
/// The state is always the fold of the entries; pushing one entry more gives the same as folding all
/// of them anew.
#[derive(Clone, Debug)]
pub struct Replay {
    entries: Vec<Entry>,
    outcomes: Vec<Outcome>,
    state: State,
}

impl Default for Replay {
    fn default() -> Self {
        Replay::new()
    }
}

impl Replay {
    /// Before the first entry.
    #[must_use]
    pub fn new() -> Replay {
        Replay {
            entries: Vec::new(),
            outcomes: Vec::new(),
            state: State::new(),
        }
    }

    /// The fold of a log. Entries are taken in their order; numbers must rise.
    #[must_use]
    pub fn of(entries: Vec<Entry>) -> Replay {
        let mut replay = Replay {
            entries,
            outcomes: Vec::new(),
            state: State::new(),
        };
        replay.fold();
        replay
    }

    /// Takes up the next entry and says what became of it.
    pub fn push(&mut self, entry: Entry) -> &Outcome {
        let strikes = matches!(entry.kind, Kind::Strike { .. });
        self.entries.push(entry);
        if strikes {
            self.fold();
        } else {
            let last = &self.entries[self.entries.len() - 1];
            self.outcomes.push(outcome(step(&mut self.state, last)));
        }
        &self.outcomes[self.outcomes.len() - 1]
    }

    /// Whether an entry would be taken up next.
    ///
    /// # Errors
    /// Why not.
    pub fn may(&self, entry: &Entry) -> Result<(), Refusal> {
        may(&self.state, entry)?;
        match entry.kind {
            Kind::Strike { entry: target, .. } => match self.outcome(target) {
                Some(Outcome::Struck(_)) => Err(Refusal::AlreadyStruck { entry: target }),
                _ => seal::check_strike(self.entry(target)),
            },
            _ => Ok(()),
        }
    }

    /// The number of the next entry.
    #[must_use]
    pub fn next_number(&self) -> u32 {
        self.entries.last().map_or(1, |e| e.n + 1)
    }

    /// The state after all entries.
    #[must_use]
    pub fn state(&self) -> &State {
        &self.state
    }

    /// The log.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        &self.entries
    }

    /// What became of each entry, in the order of the log.
    pub fn outcomes(&self) -> impl Iterator<Item = (&Entry, &Outcome)> {
        self.entries.iter().zip(&self.outcomes)
    }

    /// The entry of that number.
    #[must_use]
    pub fn entry(&self, n: u32) -> Option<&Entry> {
        self.entries
            .binary_search_by_key(&n, |e| e.n)
            .ok()
            .map(|i| &self.entries[i])
    }

    /// What became of the entry of that number.
    #[must_use]
    pub fn outcome(&self, n: u32) -> Option<&Outcome> {
        self.entries
            .binary_search_by_key(&n, |e| e.n)
            .ok()
            .map(|i| &self.outcomes[i])
    }

    /// The entry that a single step back would take back: the last that counts, is no strike and no
    /// count-down; none under a seal, nor behind a reopening.
    #[must_use]
    pub fn last_standing(&self) -> Option<&Entry> {
        let aside = |e: &Entry| matches!(e.kind, Kind::Strike { .. } | Kind::Timer(_));
        self.last_that(|e| e.n > 1 && !aside(e))
            .filter(|e| seal::check_strike(Some(e)).is_ok())
    }

    /// The last rally that counts.
    #[must_use]
    pub fn last_rally(&self) -> Option<&Entry> {
        self.last_that(|e| matches!(e.kind, Kind::Rally { .. }))
    }

    /// The last entry that counts and is of the kind asked for.
    fn last_that(&self, test: impl Fn(&Entry) -> bool) -> Option<&Entry> {
        let counts = |o: &Outcome| matches!(o, Outcome::Taken | Outcome::Insisted(_));
        let all = self.entries.iter().zip(&self.outcomes).rev();
        all.map(|(e, o)| (e, counts(o)))
            .find(|(e, counts)| *counts && test(e))
            .map(|(e, _)| e)
    }

    /// Goes through the log once more and shows every entry that was not taken back, with the state
    /// before and after it.
    pub fn walk(&self, mut see: impl FnMut(&State, &Entry, &Outcome, &State)) {
        let mut before = State::new();
        for (entry, outcome) in self.outcomes() {
            if matches!(outcome, Outcome::Taken | Outcome::Insisted(_)) {
                let mut after = before.clone();
                // It was taken up in the fold, so it is here.
                let _ = step(&mut after, entry);
                see(&before, entry, outcome, &after);
                before = after;
            } else {
                see(&before, entry, outcome, &before);
            }
        }
    }

    fn fold(&mut self) {
        let (struck, mut refused) = strikes(&self.entries);
        self.state = State::new();
        self.outcomes.clear();
        for entry in &self.entries {
            let struck_by = struck.iter().find(|(n, _)| *n == entry.n).map(|p| p.1);
            let refused = refused
                .iter()
                .position(|(n, _)| *n == entry.n)
                .map(|i| refused.swap_remove(i).1);
            self.outcomes.push(if let Some(by) = struck_by {
                Outcome::Struck(by)
            } else if let Some(why) = refused {
                Outcome::Refused(why)
            } else {
                outcome(step(&mut self.state, entry))
            });
        }
    }
}

fn outcome(result: Result<super::reducer::Taken, Refusal>) -> Outcome {
    match result {
        Ok(super::reducer::Taken { against: None }) => Outcome::Taken,
        Ok(super::reducer::Taken {
            against: Some(advice),
        }) => Outcome::Insisted(advice),
        Err(refusal) => Outcome::Refused(refusal),
    }
}

/// Pairs of numbers: an entry and the one that strikes it, or the one it wanted to strike.
type Pairs = Vec<(u32, u32)>;

/// Which entries are struck, and which strikes are refused because their target is struck already, is a
/// seal, or lies under one. A strike of a strike brings the entry back.
fn strikes(entries: &[Entry]) -> (Pairs, Vec<(u32, Refusal)>) {
    let mut made: Pairs = Vec::new();
    let mut refused = Vec::new();
    let mut sealed = None;
    for entry in entries {
        let target = match entry.kind {
            Kind::Seal { .. } => {
                sealed = sealed.or(Some(entry.n));
                continue;
            }
            Kind::Reopen { .. } => {
                sealed = None;
                continue;
            }
            Kind::Strike { entry: target, .. } => target,
            _ => continue,
        };
        let kind_of = || {
            let place = entries.binary_search_by_key(&target, |e| e.n).ok()?;
            Some(&entries[place])
        };
        if let Some(entry_of_seal) = sealed {
            let why = Refusal::Sealed {
                entry: entry_of_seal,
            };
            refused.push((entry.n, why));
        } else if target <= 1 || target >= entry.n {
            // The reducer refuses it.
        } else if in_force(&made).iter().any(|(n, _)| *n == target) {
            refused.push((entry.n, Refusal::AlreadyStruck { entry: target }));
        } else if let Err(why) = seal::check_strike(kind_of()) {
            refused.push((entry.n, why));
        } else {
            made.push((entry.n, target));
        }
    }
    (in_force(&made), refused)
}

/// The strikes that hold, as (struck entry, strike): from the last one back, each that is not struck
/// itself.
fn in_force(made: &[(u32, u32)]) -> Pairs {
    let mut struck: Pairs = Vec::new();
    for &(strike, target) in made.iter().rev() {
        if !struck.iter().any(|(n, _)| *n == strike) {
            struck.push((target, strike));
        }
    }
    struck
}
