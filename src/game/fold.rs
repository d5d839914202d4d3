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
        let fates = strikes(&self.entries);
        self.state = State::new();
        self.outcomes.clear();
        for (entry, fate) in self.entries.iter().zip(fates) {
            self.outcomes.push(match fate {
                Fate::Struck(by) => Outcome::Struck(by),
                Fate::Refused(why) => Outcome::Refused(why),
                Fate::Counts => outcome(step(&mut self.state, entry)),
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

/// What the strikes of a log do with one of its entries.
#[derive(Clone, Debug, PartialEq, Eq)]
enum Fate {
    /// Nothing.
    Counts,
    /// It is taken back by that entry.
    Struck(u32),
    /// It is a strike and cannot take its entry back.
    Refused(Refusal),
}

/// Which entries are struck, and which strikes are refused because their target is struck already, is a
/// seal, or lies under one. A strike of a strike brings the entry back.
fn strikes(entries: &[Entry]) -> Vec<Fate> {
    let mut fates = vec![Fate::Counts; entries.len()];
    // For each entry the one it strikes, and the strikes in force against it, by place in the log.
    let mut targets: Vec<Option<usize>> = vec![None; entries.len()];
    let mut against: Vec<Vec<usize>> = vec![Vec::new(); entries.len()];
    let mut sealed = None;
    for (place, entry) in entries.iter().enumerate() {
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
        let earlier = &entries[..place];
        let found = earlier.binary_search_by_key(&target, |e| e.n).ok();
        if let Some(entry) = sealed {
            fates[place] = Fate::Refused(Refusal::Sealed { entry });
        } else if target <= 1 || target >= entry.n {
            // The reducer refuses it.
        } else if found.is_some_and(|struck| !against[struck].is_empty()) {
            fates[place] = Fate::Refused(Refusal::AlreadyStruck { entry: target });
        } else if let Err(why) = seal::check_strike(found.map(|struck| &entries[struck])) {
            fates[place] = Fate::Refused(why);
        } else if let Some(struck) = found {
            targets[place] = Some(struck);
            take_force(&targets, &mut against, place);
        }
    }
    for (fate, strikes) in fates.iter_mut().zip(&against) {
        if let Some(&last) = strikes.iter().max() {
            *fate = Fate::Struck(entries[last].n);
        }
    }
    fates
}

/// A strike comes into force. Where its target is a strike, that one loses its force, what it had
/// struck is back, and so on.
fn take_force(targets: &[Option<usize>], against: &mut [Vec<usize>], strike: usize) {
    let (mut strike, mut in_force) = (strike, true);
    while let Some(target) = targets[strike] {
        let strikes = &mut against[target];
        let was_struck = !strikes.is_empty();
        if in_force {
            strikes.push(strike);
        } else {
            strikes.retain(|&s| s != strike);
        }
        let is_struck = !strikes.is_empty();
        if was_struck == is_struck {
            return;
        }
        (strike, in_force) = (target, !is_struck);
    }
}
