//! The open match, and the one way in which it changes.
//!
//! An entry is stamped, checked by the very function that the reducer refuses with, written to the
//! journal, and only then shown. A refusal writes nothing.

use std::sync::Arc;

use leptos::prelude::*;

use crate::device::{
    self, Clock, Focus, Health, Journal, Notice, Standing, Tabs, Ticker, Wake, Watch, WriterLock,
};
use crate::game::entry::Heading;
use crate::game::{Entry, Kind, Refusal, Replay, State};
use crate::record::{self, LineWriter, Log};

/// How often count-downs are looked at.
const TICK_MS: u32 = 250;

/// Milliseconds of a second.
const SECOND: i64 = 1000;

/// The time that an entry gets. Whole seconds, so that a log is small to hand over; a count-down is
/// read to the quarter of a second and keeps its milliseconds. What was made after a count-down in
/// the same second is not stamped before it.
fn time_of(kind: &Kind, now: i64, last: Option<i64>) -> i64 {
    let exact = matches!(kind, Kind::Timer(_));
    let at = if exact {
        now
    } else {
        now - now.rem_euclid(SECOND)
    };
    match last {
        Some(last) if at < last && last - at < SECOND && exact => last,
        Some(last) if at < last && last - at < SECOND => last + (-last).rem_euclid(SECOND),
        _ => at,
    }
}

/// Why an entry was not made.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotEntered {
    /// The rules object.
    Refused(Refusal),
    /// Another tab writes this match.
    ReadOnly,
    /// The tap came from a picture that is gone: the same tap fired twice.
    Stale,
    /// No match is open.
    NoMatch,
}

/// A refused entry, and what it would have been.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Refused {
    /// What was to be entered.
    pub kind: Kind,
    /// Why it was not.
    pub why: Refusal,
}

/// How well the last entry is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It is on disk.
    Safe,
    /// It is in local storage, on its way to the disk.
    Saving,
    /// One of the two copies cannot be made, the other is.
    OneCopy,
    /// It is in memory only.
    MemoryOnly,
}

/// The open match. Copies are the same.
#[derive(Clone, Copy)]
pub struct Session {
    hands: StoredValue<Hands, LocalStorage>,
    id: RwSignal<Option<String>>,
    state: RwSignal<Arc<State>>,
    standing: RwSignal<Standing>,
    safe: RwSignal<u32>,
    health: RwSignal<Health>,
    problems: RwSignal<Vec<String>>,
    refused: RwSignal<Option<Refused>>,
    looking_on: RwSignal<bool>,
    now: RwSignal<i64>,
}

/// What is changed in place and never compared.
struct Hands {
    journal: Journal,
    clock: Clock,
    wake: Wake,
    replay: Replay,
    writer: LineWriter,
    /// The match that was asked for; what is read for another one comes too late.
    wanted: Option<String>,
    lock: Option<WriterLock>,
    tabs: Option<Tabs>,
    _held: (Watch, Ticker),
}

/// The session of this page.
///
/// # Panics
/// Outside of the page's components.
#[must_use]
pub fn use_session() -> Session {
    expect_context::<Session>()
}

impl Session {
    /// Opens the storage and the clock; once a page.
    #[must_use]
    pub fn begin() -> Session {
        let journal = Journal::open();
        let clock = Clock::start();
        let id = RwSignal::new(None::<String>);
        let safe = RwSignal::new(0);
        let health = RwSignal::new(journal.health());
        let now = RwSignal::new(clock.stamp());
        let ticking = clock.clone();
        let ticker = device::every(TICK_MS, move || now.set(ticking.stamp()));
        let session = Session {
            hands: StoredValue::new_local(Hands {
                _held: (journal.watch(|_| {}), ticker),
                wake: Wake::new(|_| {}),
                journal: journal.clone(),
                clock,
                replay: Replay::new(),
                writer: LineWriter::default(),
                wanted: None,
                lock: None,
                tabs: None,
            }),
            id,
            state: RwSignal::new(Arc::new(State::new())),
            standing: RwSignal::new(Standing::Asking),
            safe,
            health,
            problems: RwSignal::new(Vec::new()),
            refused: RwSignal::new(None),
            looking_on: RwSignal::new(false),
            now,
        };
        let watch = journal.watch(move |notice| session.hear(notice));
        session.hands.update_value(|hands| hands._held.0 = watch);
        session
    }

    // ---- What can be read.

    /// The id of the open match.
    #[must_use]
    pub fn id(self) -> Option<String> {
        self.id.get()
    }

    /// The state after the last entry.
    #[must_use]
    pub fn state(self) -> Arc<State> {
        self.state.get()
    }

    /// The same, without listening for the next one.
    #[must_use]
    pub fn state_now(self) -> Arc<State> {
        self.state.get_untracked()
    }

    /// The number that the next entry will get.
    #[must_use]
    pub fn next(self) -> u32 {
        self.with_replay(Replay::next_number)
    }

    /// The same, without listening for it.
    #[must_use]
    pub fn next_now(self) -> u32 {
        self.hands.with_value(|hands| hands.replay.next_number())
    }

    /// Whether this tab is the one that writes.
    #[must_use]
    pub fn may_write(self) -> bool {
        self.standing.get().may_write()
    }

    /// What this tab may do with the match.
    #[must_use]
    pub fn standing(self) -> Standing {
        self.standing.get()
    }

    /// Looks at the log and at what became of its entries.
    pub fn with_replay<T>(self, look: impl FnOnce(&Replay) -> T) -> T {
        self.state.track();
        self.hands.with_value(|hands| look(&hands.replay))
    }

    /// What [`Session::enter`] would say.
    ///
    /// # Errors
    /// Why it would be refused.
    pub fn may(self, kind: &Kind) -> Result<(), Refusal> {
        self.with_replay(|replay| replay.may(&Entry::new(replay.next_number(), kind.clone())))
    }

    /// The log as it would be after one more entry; nothing is written.
    ///
    /// # Errors
    /// Why the entry would be refused.
    pub fn would(self, kind: &Kind) -> Result<Replay, Refusal> {
        let at = Some(self.clock().stamp());
        self.look(|replay| {
            let entry = Entry {
                at,
                ..Entry::new(replay.next_number(), kind.clone())
            };
            replay.may(&entry)?;
            let mut after = replay.clone();
            after.push(entry);
            Ok(after)
        })
    }

    /// How well the last entry is kept.
    #[must_use]
    pub fn saved(self) -> Saved {
        let health = self.health.get();
        if health.memory_only() {
            Saved::MemoryOnly
        } else if !health.is_fine() {
            Saved::OneCopy
        } else if self.safe.get() + 1 >= self.next() {
            Saved::Safe
        } else {
            Saved::Saving
        }
    }

    /// What is wrong with the storage.
    #[must_use]
    pub fn health(self) -> Health {
        self.health.get()
    }

    /// What was found damaged when the match was opened, in words.
    #[must_use]
    pub fn problems(self) -> Vec<String> {
        self.problems.get()
    }

    /// Those words have been read.
    pub fn problems_read(self) {
        self.problems.set(Vec::new());
    }

    /// The last refused entry, while it is talked about.
    #[must_use]
    pub fn refused(self) -> RwSignal<Option<Refused>> {
        self.refused
    }

    /// Something was to be entered in a tab that only looks on; until it has been talked about.
    #[must_use]
    pub fn looking_on(self) -> RwSignal<bool> {
        self.looking_on
    }

    /// The clock that stamps entries.
    #[must_use]
    pub fn clock(self) -> Clock {
        self.hands.with_value(|hands| hands.clock.clone())
    }

    /// The time, moving a few times a second.
    #[must_use]
    pub fn now(self) -> i64 {
        self.now.get()
    }

    /// The storage.
    #[must_use]
    pub fn journal(self) -> Journal {
        self.hands.with_value(|hands| hands.journal.clone())
    }

    /// The whole log, as a file would hold it.
    #[must_use]
    pub fn log(self) -> Log {
        Log {
            id: self.id.get_untracked().unwrap_or_default(),
            entries: self
                .hands
                .with_value(|hands| hands.replay.entries().to_vec()),
        }
    }

    /// The same as [`Session::with_replay`], without listening for the next entry.
    pub fn look<T>(self, look: impl FnOnce(&Replay) -> T) -> T {
        self.hands.with_value(|hands| look(&hands.replay))
    }

    // ---- The one way in which anything changes.

    /// Makes the next entry.
    ///
    /// # Errors
    /// Why it was not made; nothing is written then.
    pub fn enter(self, kind: Kind) -> Result<(), NotEntered> {
        self.make(None, kind, None)
    }

    /// Makes the next entry, if it still is the one that the tapped picture was drawn for.
    ///
    /// # Errors
    /// As [`Session::enter`].
    pub fn enter_as(self, expected: u32, kind: Kind) -> Result<(), NotEntered> {
        self.make(Some(expected), kind, None)
    }

    /// Makes the next entry against the advice of the rules.
    ///
    /// # Errors
    /// As [`Session::enter`].
    pub fn insist(self, kind: Kind, why: &str) -> Result<(), NotEntered> {
        self.make(None, kind, Some(why.to_owned()))
    }

    /// Makes the next entry; a refusal is shown with its way out. Says whether it was made.
    pub fn tell(self, kind: Kind) -> bool {
        let outcome = self.enter(kind.clone());
        self.explain(kind, outcome)
    }

    /// The same for a tap that knows which entry it makes.
    pub fn tell_as(self, expected: u32, kind: Kind) -> bool {
        let outcome = self.enter_as(expected, kind.clone());
        self.explain(kind, outcome)
    }

    fn explain(self, kind: Kind, outcome: Result<(), NotEntered>) -> bool {
        match &outcome {
            Err(NotEntered::Refused(why)) => {
                let why = why.clone();
                self.refused.set(Some(Refused { kind, why }));
            }
            Err(NotEntered::ReadOnly) => self.looking_on.set(true),
            Ok(()) | Err(NotEntered::Stale | NotEntered::NoMatch) => {}
        }
        outcome.is_ok()
    }

    fn make(
        self,
        expected: Option<u32>,
        kind: Kind,
        insist: Option<String>,
    ) -> Result<(), NotEntered> {
        let id = self.id.get_untracked().ok_or(NotEntered::NoMatch)?;
        if !self.standing.get_untracked().may_write() {
            return Err(NotEntered::ReadOnly);
        }
        let next = self.hands.with_value(|h| h.replay.next_number());
        if expected.is_some_and(|expected| expected != next) {
            return Err(NotEntered::Stale);
        }
        let last = self.hands.with_value(|h| h.replay.entries().last()?.at);
        let entry = Entry {
            n: next,
            at: Some(time_of(&kind, self.clock().stamp(), last)),
            insist,
            kind,
        };
        match self.hands.with_value(|h| h.replay.may(&entry)) {
            Err(refusal) if entry.insist.is_none() || refusal.is_final() => {
                return Err(NotEntered::Refused(refusal));
            }
            _ => {}
        }
        self.write(&id, entry);
        Ok(())
    }

    /// First the journal, then the picture. A storage that fails is said by [`Session::health`];
    /// the match goes on in memory.
    fn write(self, id: &str, entry: Entry) {
        let line = self.hands.try_update_value(|h| h.writer.line(&entry));
        if let Some(line) = line {
            // A trouble is told by the journal's health as well, and nothing is undone for it.
            let _ = self.journal().append(id, entry.n, &line);
        }
        self.hands.update_value(|h| {
            h.replay.push(entry);
        });
        self.publish();
    }

    fn publish(self) {
        let state = self.hands.with_value(|h| h.replay.state().clone());
        let under_way = state.phase().is_under_way();
        self.hands.with_value(|h| h.wake.want(under_way));
        Focus::let_go();
        self.state.set(Arc::new(state));
    }

    fn hear(self, notice: &Notice) {
        match notice {
            Notice::Safe { id, upto } => {
                if self.id.get_untracked().as_ref() == Some(id) {
                    self.safe.set(*upto);
                    if self.standing.get_untracked().may_write() {
                        self.hands.with_value(|h| {
                            if let Some(tabs) = &h.tabs {
                                tabs.announce(*upto);
                            }
                        });
                    }
                }
            }
            Notice::Health(health) => self.health.set(health.clone()),
        }
    }

    // ---- Opening and closing.

    /// Begins the record of a new match.
    ///
    /// # Errors
    /// Where the rules of the heading cannot be played by.
    pub fn create(self, heading: Heading) -> Result<String, NotEntered> {
        let kind = Kind::Match(Box::new(heading));
        let first = Entry {
            n: 1,
            at: None,
            insist: None,
            kind,
        };
        Replay::new().may(&first).map_err(NotEntered::Refused)?;
        self.close();
        self.hands.with_value(|h| h.clock.settle());
        let id = device::new_id();
        self.hands.update_value(|h| {
            h.writer = LineWriter::default();
        });
        self.id.set(Some(id.clone()));
        self.write(
            &id,
            Entry {
                at: Some(time_of(&first.kind, self.clock().stamp(), None)),
                ..first
            },
        );
        // The id is new, so nobody else can hold it.
        self.standing.set(Standing::Writer);
        self.claim(&id, true);
        // A calm moment, a tap, and something to keep from now on. The start screen shows the answer.
        device::spawn(async {
            device::ask_to_keep().await;
        });
        Ok(id)
    }

    /// Opens a match from storage. It can be read once [`Session::id`] names it.
    pub fn open(self, id: &str) {
        if self.id.get_untracked().as_deref() == Some(id) {
            return;
        }
        self.close();
        self.claim(id, false);
    }

    /// Lets go of the open match.
    pub fn close(self) {
        self.hands.update_value(|h| {
            h.wanted = None;
            h.lock = None;
            h.tabs = None;
            h.replay = Replay::new();
            h.wake.want(false);
        });
        self.id.set(None);
        self.safe.set(0);
        self.problems.set(Vec::new());
        self.refused.set(None);
        self.standing.set(Standing::Asking);
        self.state.set(Arc::new(State::new()));
    }

    /// Makes this tab the one that writes, by force; the other one is told by its browser.
    pub fn take_over(self) {
        self.hands.with_value(|h| {
            if let Some(lock) = &h.lock {
                lock.take_over();
            }
        });
    }

    /// Asks to be the writer of a match, and listens to the tabs that are. A match that was only
    /// just made is known to be whole; any other is read when the answer has come.
    fn claim(self, id: &str, fresh: bool) {
        self.hands.update_value(|h| h.wanted = Some(id.to_owned()));
        let of = id.to_owned();
        let fresh = std::cell::Cell::new(fresh);
        let lock = WriterLock::request(id, move |standing| {
            if fresh.replace(false) && standing.may_write() {
                self.standing.set(standing);
            } else {
                self.load(of.clone(), standing);
            }
        });
        let of = id.to_owned();
        let tabs = Tabs::join(id, move |_| {
            let standing = self.standing.get_untracked();
            if !standing.may_write() {
                self.load(of.clone(), standing);
            }
        });
        self.hands.update_value(|h| {
            h.lock = Some(lock);
            h.tabs = Some(tabs);
        });
    }

    /// Reads a match; the tab that writes also lets the longer copy repair the other.
    fn load(self, id: String, standing: Standing) {
        let journal = self.journal();
        device::spawn(async move {
            let copies = journal.read_all(&id).await;
            let found = record::recover(&copies.local, &copies.durable);
            let mut writer = LineWriter::default();
            let lines: Vec<(u32, String)> = found
                .entries
                .iter()
                .map(|entry| (entry.n, writer.line(entry)))
                .collect();
            // An empty result would wipe what somebody may still want to look at.
            let apart = copies.local != lines || copies.durable != lines;
            if standing.may_write() && apart && !lines.is_empty() {
                // What stays wrong is told by the journal's health.
                let _ = journal.repair(&id, &lines).await;
            }
            let late = self.hands.with_value(|h| {
                let shorter = found.entries.len() < h.replay.entries().len();
                h.wanted.as_ref() != Some(&id) || (shorter && !standing.may_write())
            });
            if late {
                return;
            }
            self.hands.update_value(|h| {
                h.replay = Replay::of(found.entries);
                h.writer = found.writer;
            });
            self.safe.set(journal.safe_upto(&id));
            self.problems.set(found.problems);
            self.standing.set(standing);
            self.publish();
            self.id.set(Some(id));
        });
    }
}
