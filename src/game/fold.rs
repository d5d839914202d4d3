//! The fold of a whole log, with what was taken back, and what became of each entry.

use crate::model::entry::{Entry, Kind, ReplayWhy};
use crate::model::state::State;
use crate::play::seal;
use crate::play::substitution;
use crate::reducer::{check, step};
use crate::Refusal;

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
        let aside = |e: &Entry| matches!(e.kind, Kind::Strike { .. } | Kind::Timer(_));
        self.last_that(|e| e.n > 1 && !aside(e))
            .filter(|e| seal::check_strike(Some(e)).is_ok())
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
        let counts = |o: &Outcome| matches!(o, Outcome::Accepted | Outcome::Insisted(_));
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
            if matches!(outcome, Outcome::Accepted | Outcome::Insisted(_)) {
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

/// What the strikes of a log do with one of its entries.
#[derive(Clone, Debug, PartialEq, Eq)]
enum StrikeStatus {
    /// Nothing.
    Counts,
    /// It is taken back by that entry.
    Struck(u32),
    /// It is a strike and cannot take its entry back.
    Refused(Refusal),
}

/// The entry that an entry takes back, where it takes one back.
const fn takes_back(kind: &Kind) -> Option<u32> {
    match kind {
        Kind::Strike { entry, .. } => Some(*entry),
        Kind::Replay { rally, .. } => *rally,
        _ => None,
    }
}

/// Whether an entry may stand between a rally and its replay: what begins no rally, gives no point and ends or
/// stops nothing. A time-out or a change may, since the first referee can decide for a replay after it
/// (Casebook 2024, 8.5).
const fn leaves_the_rally_last(kind: &Kind) -> bool {
    match kind {
        Kind::Explain { .. }
        | Kind::Timer(_)
        | Kind::Remark { .. }
        | Kind::Check(_)
        | Kind::Sign { .. }
        | Kind::Seal { .. }
        | Kind::Reopen { .. }
        | Kind::TeamList(_)
        | Kind::Toss(_)
        | Kind::FirstService { .. }
        | Kind::Discrepancy { .. }
        | Kind::LineUp { .. }
        | Kind::TimeOut { .. }
        | Kind::Substitution { .. }
        | Kind::LiberoReplacement { .. }
        | Kind::NewLibero { .. }
        | Kind::Recovery { .. }
        | Kind::GameCaptain { .. }
        | Kind::Protest { .. }
        | Kind::ProtestStatement { .. }
        | Kind::ChangeCourts
        | Kind::Strike { .. } => true,
        Kind::Match(_)
        | Kind::Heading(_)
        | Kind::BeginSet
        | Kind::Joined(_)
        | Kind::ScoreCorrection { .. }
        | Kind::WrongInformation { .. }
        | Kind::LateReplacement { .. }
        | Kind::TimeUp
        | Kind::Rally { .. }
        | Kind::Replay { .. }
        | Kind::ImproperRequest { .. }
        | Kind::Delay { .. }
        | Kind::Misconduct { .. }
        | Kind::LateFault(_)
        | Kind::Incomplete { .. }
        | Kind::Default { .. }
        | Kind::Suspend { .. }
        | Kind::Resume { .. }
        | Kind::Answer { .. } => false,
    }
}

/// Which entries are taken back, by a strike or because the rally is replayed, and which of those that take
/// back are refused: their target is taken back already, is a seal, or lies under one; or it is no rally that
/// can be replayed. A strike of a strike brings the entry back, and so does a strike of a replay.
///
/// Between a rally and its replay nothing stands that could end or stop the set, now and whatever is struck
/// later. So the replay is taken up exactly where the rally would have been, and no rally is lost to a replay
/// that is refused.
fn strikes(entries: &[Entry]) -> Vec<StrikeStatus> {
    let mut statuses = vec![StrikeStatus::Counts; entries.len()];
    // For each entry the one it strikes, and the strikes in force against it, by place in the log.
    let mut targets: Vec<Option<usize>> = vec![None; entries.len()];
    let mut against: Vec<Vec<usize>> = vec![Vec::new(); entries.len()];
    // Each rally with its replay, by place in the log.
    let mut replayed: Vec<(usize, usize)> = Vec::new();
    let mut sealed = None;
    for (place, entry) in entries.iter().enumerate() {
        let target = match &entry.kind {
            Kind::Seal { .. } => {
                sealed = sealed.or(Some(entry.n));
                continue;
            }
            Kind::Reopen { .. } => {
                sealed = None;
                continue;
            }
            kind => match takes_back(kind) {
                Some(target) => target,
                None => continue,
            },
        };
        let earlier = &entries[..place];
        let found = earlier.binary_search_by_key(&target, |e| e.n).ok();
        let is_replay = matches!(entry.kind, Kind::Replay { .. });
        let is_rally = |at: &usize| matches!(earlier[*at].kind, Kind::Rally { .. });
        if let Some(entry) = sealed {
            statuses[place] = StrikeStatus::Refused(Refusal::Sealed { entry });
        } else if is_replay {
            let stands = |at: &usize| {
                against[*at].is_empty() && !matches!(statuses[*at], StrikeStatus::Refused(_))
            };
            let mut acts = (0..place).rev().filter(stands);
            let last = acts.find(|&at| !leaves_the_rally_last(&earlier[at].kind));
            let last = last.filter(is_rally);
            match last.filter(|last| Some(*last) == found) {
                Some(rally) => {
                    targets[place] = Some(rally);
                    replayed.push((rally, place));
                    take_force(&targets, &mut against, place, true);
                }
                None => {
                    statuses[place] = StrikeStatus::Refused(Refusal::NotLastRally { entry: target })
                }
            }
        } else if target <= 1 || target >= entry.n {
            // The reducer refuses it.
        } else if found.is_some_and(|struck| !against[struck].is_empty()) {
            statuses[place] = StrikeStatus::Refused(Refusal::AlreadyStruck { entry: target });
        } else if let Err(why) = seal::check_strike(found.map(|struck| &entries[struck])) {
            statuses[place] = StrikeStatus::Refused(why);
        } else if let Some(struck) = found {
            targets[place] = Some(struck);
            take_force(&targets, &mut against, place, true);
            let twice = matches!(entries[struck].kind, Kind::Strike { .. });
            let in_between = replayed.iter().find(|(rally, replay)| {
                let comes_back = |at: usize| {
                    against[at].is_empty()
                        && !matches!(statuses[at], StrikeStatus::Refused(_))
                        && !leaves_the_rally_last(&entries[at].kind)
                };
                twice && against[*replay].is_empty() && (rally + 1..*replay).any(comes_back)
            });
            if let Some((_, replay)) = in_between {
                let replay = entries[*replay].n;
                statuses[place] = StrikeStatus::Refused(Refusal::BeforeReplay { replay });
                take_force(&targets, &mut against, place, false);
                targets[place] = None;
            }
        }
    }
    for (fate, strikes) in statuses.iter_mut().zip(&against) {
        if let Some(&last) = strikes.iter().max() {
            *fate = StrikeStatus::Struck(entries[last].n);
        }
    }
    // What was said about a rally goes with it.
    let in_force = |replay: usize| against[replay].is_empty();
    for (rally, replay) in replayed.into_iter().filter(|(_, replay)| in_force(*replay)) {
        for place in rally + 1..replay {
            let about = matches!(entries[place].kind, Kind::Explain { entry, .. } if entry == entries[rally].n);
            if about && statuses[place] == StrikeStatus::Counts {
                statuses[place] = StrikeStatus::Struck(entries[replay].n);
            }
        }
    }
    statuses
}

/// A strike or a replay comes into force, or loses it. Where its target is one as well, that one then loses
/// its force, what it had struck is back, and so on.
fn take_force(
    targets: &[Option<usize>],
    against: &mut [Vec<usize>],
    strike: usize,
    in_force: bool,
) {
    let (mut strike, mut in_force) = (strike, in_force);
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
