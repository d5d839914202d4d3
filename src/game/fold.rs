//! The fold of a whole log, with what was taken back, and what became of each entry.

mod strikes;

use crate::model::entry::{Entry, Kind, ReplayWhy};
use crate::model::state::State;
use crate::play::seal;
use crate::play::substitution;
use crate::reducer::{check, step};
use crate::Refusal;
use strikes::{strikes, takes_back, StrikeStatus};

/// What became of an entry.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// It counts.
    Accepted,
    /// It counts because the official insisted against this advice.
    Insisted(Refusal),
    /// It is refused and changes nothing.
    Refused(Refusal),
    /// It was taken back by that entry.
    Struck(u32),
}

impl Outcome {
    /// Whether the entry is a part of what happened: neither refused nor taken back.
    #[must_use]
    pub const fn counts(&self) -> bool {
        match self {
            Outcome::Accepted | Outcome::Insisted(_) => true,
            Outcome::Refused(_) | Outcome::Struck(_) => false,
        }
    }
}

/// A log and what follows from it.
///
/// The state is always the fold of the entries; pushing one entry more gives the same as folding all
/// of them anew.
#[derive(Clone, Debug)]
pub struct Timeline {
    entries: Vec<Entry>,
    outcomes: Vec<Outcome>,
    state: State,
    /// Numbers below this one are taken.
    next: u32,
}

impl Default for Timeline {
    fn default() -> Self {
        Timeline::new()
    }
}

impl Timeline {
    /// Before the first entry.
    #[must_use]
    pub fn new() -> Timeline {
        Timeline {
            entries: Vec::new(),
            outcomes: Vec::new(),
            state: State::new(),
            next: 1,
        }
    }

    /// The fold of a log. Entries are taken in their order; numbers must rise.
    #[must_use]
    pub fn of(entries: Vec<Entry>) -> Timeline {
        let mut timeline = Timeline {
            entries,
            outcomes: Vec::new(),
            state: State::new(),
            next: 1,
        };
        timeline.fold();
        timeline
    }

    /// Takes up the next entry and says what became of it.
    pub fn push(&mut self, entry: Entry) -> &Outcome {
        let reaches_back = takes_back(&entry.kind).is_some();
        self.entries.push(entry);
        if reaches_back {
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
    pub fn check(&self, entry: &Entry) -> Result<(), Refusal> {
        match entry.kind {
            // It is carried out where the rally had not been played.
            Kind::Replay {
                rally: Some(rally), ..
            } => {
                self.check_reach_back(entry)?;
                match self.outcome(rally) {
                    Some(Outcome::Accepted | Outcome::Insisted(_)) => Ok(()),
                    _ => Err(Refusal::NotLastRally { entry: rally }),
                }
            }
            Kind::Strike { entry: target, .. } => {
                check(&self.state, entry)?;
                let place = self.entries.binary_search_by_key(&target, |e| e.n);
                let twice = place
                    .is_ok_and(|place| matches!(self.entries[place].kind, Kind::Strike { .. }));
                match self.outcome(target) {
                    Some(Outcome::Struck(_)) => Err(Refusal::AlreadyStruck { entry: target }),
                    // What a strike of a strike brings back depends on the whole log.
                    _ if twice => self.check_reach_back(entry),
                    _ => seal::check_strike(self.entry(target)),
                }
            }
            _ => check(&self.state, entry),
        }
    }

    /// Whether an entry can take back what it names, by the whole log.
    fn check_reach_back(&self, entry: &Entry) -> Result<(), Refusal> {
        let mut longer = self.entries.clone();
        longer.push(entry.clone());
        match strikes(&longer).pop() {
            Some(StrikeStatus::Refused(why)) => Err(why),
            _ => Ok(()),
        }
    }

    /// The rally that can be replayed now though it was entered as a point: the last one.
    #[must_use]
    pub fn replayable(&self) -> Option<u32> {
        let rally = self.last_rally()?.n;
        let replay = Kind::Replay {
            why: ReplayWhy::Other,
            hurt: None,
            rally: Some(rally),
        };
        let entry = Entry::new(self.next_number(), replay);
        self.check(&entry).is_ok().then_some(rally)
    }

    /// The number of the next entry.
    #[must_use]
    pub fn next_number(&self) -> u32 {
        let behind = self.entries.last().map_or(1, |e| e.n + 1);
        behind.max(self.next)
    }

    /// The next entry gets no number below this one: they are taken by entries that could not be read.
    pub fn begin_at(&mut self, next: u32) {
        self.next = next;
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
        self.last_counted()
            .filter(|e| seal::check_strike(Some(e)).is_ok())
    }

    /// Whether a single step back takes nothing back because a seal, or its reopening, stands last.
    #[must_use]
    pub fn ends_with_a_seal(&self) -> bool {
        self.last_counted()
            .is_some_and(|e| seal::check_strike(Some(e)).is_err())
    }

    fn last_counted(&self) -> Option<&Entry> {
        let aside = |e: &Entry| matches!(e.kind, Kind::Strike { .. } | Kind::Timer(_));
        self.last_that(|e| e.n > 1 && !aside(e))
    }

    /// The last rally that counts.
    #[must_use]
    pub fn last_rally(&self) -> Option<&Entry> {
        self.last_that(|e| matches!(e.kind, Kind::Rally { .. }))
    }

    /// The last rally, where none was cancelled and no other point was given after it: whatever is said of it
    /// then would be taken for the one that counts no more, or for that point.
    #[must_use]
    pub fn last_played(&self) -> Option<&Entry> {
        let rally = |e: &Entry| matches!(e.kind, Kind::Rally { .. });
        let given_since = |n: u32| {
            let set = self.state().correctable();
            set.is_some_and(|set| set.points.iter().any(|point| point.entry > n))
        };
        self.last_that(|e| rally(e) || matches!(e.kind, Kind::Replay { .. }))
            .filter(|e| rally(e) && !given_since(e.n))
    }

    /// The last entry that counts and is of the kind asked for.
    fn last_that(&self, test: impl Fn(&Entry) -> bool) -> Option<&Entry> {
        let all = self.entries.iter().zip(&self.outcomes).rev();
        all.map(|(e, o)| (e, o.counts()))
            .find(|(e, counts)| *counts && test(e))
            .map(|(e, _)| e)
    }

    /// Goes through the log once more and shows every entry that was not taken back, with the state
    /// before and after it.
    pub fn walk(&self, mut see: impl FnMut(&State, &Entry, &Outcome, &State)) {
        let mut before = State::new();
        for (entry, outcome) in self.outcomes() {
            if outcome.counts() {
                let mut after = before.clone();
                // It was taken up in the fold, so it is here.
                let _ = step(&mut after, entry);
                see(&before, entry, outcome, &after);
                before = after;
            } else {
                let was = before.clone();
                if let Outcome::Refused(refusal) = outcome {
                    substitution::keep_open(&mut before, &entry.kind, refusal);
                }
                see(&was, entry, outcome, &before);
            }
        }
    }

    fn fold(&mut self) {
        let statuses = strikes(&self.entries);
        self.state = State::new();
        self.outcomes.clear();
        for (entry, status) in self.entries.iter().zip(statuses) {
            self.outcomes.push(match status {
                StrikeStatus::Struck(by) => Outcome::Struck(by),
                StrikeStatus::Refused(why) => Outcome::Refused(why),
                StrikeStatus::Counts => outcome(step(&mut self.state, entry)),
            });
        }
    }
}

fn outcome(result: Result<super::reducer::Accepted, Refusal>) -> Outcome {
    match result {
        Ok(super::reducer::Accepted { against: None }) => Outcome::Accepted,
        Ok(super::reducer::Accepted {
            against: Some(advice),
        }) => Outcome::Insisted(advice),
        Err(refusal) => Outcome::Refused(refusal),
    }
}
