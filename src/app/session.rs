//! The open match, and the one way in which it changes.
//!
//! [`Session::submit`] is the only door: an entry is stamped, checked by the very function that the reducer
//! refuses with, kept by the store, taken up by the timeline, followed by the count-downs that it starts or
//! ends, and only then published, once. A refusal keeps nothing and publishes nothing.

mod opening;

use std::cell::{Cell, RefCell};
use std::rc::Rc;
use std::sync::Arc;

use super::keeper::{Change, Keeper, Saved};
use super::ports::{Lock, Machine, Peers};
use super::snapshot::{NotEntered, SessionNotice, Snapshot, Wish};
use super::stamp::stamp;
use super::store::Store;
use game::{timers_with, Entry, Kind, Phase, Refusal, Timeline};
use record::Log;

/// What belongs to one open match and goes with it.
struct Open {
    keeper: Rc<Keeper>,
    lock: Option<Rc<dyn Lock>>,
    peers: Option<Box<dyn Peers>>,
}

type Publish = dyn Fn(&Snapshot);

struct Inner {
    store: Store,
    machine: Rc<dyn Machine>,
    timeline: RefCell<Timeline>,
    shown: RefCell<Snapshot>,
    open: RefCell<Option<Open>>,
    // The match that was asked for: what is read for another one comes too late.
    wanted: RefCell<Option<String>>,
    // The match that is being put away just now, which takes a moment and its lock.
    put_away: RefCell<Option<String>>,
    // Whether several changes are to be published as one.
    is_busy: Cell<bool>,
    publish: Box<Publish>,
}

/// The open match of this page. Clones are the same.
#[derive(Clone)]
pub struct Session {
    inner: Rc<Inner>,
}

impl Session {
    /// No match is open yet. `publish` gets what is to be shown, whenever that has changed.
    #[must_use]
    pub fn new(
        store: Store,
        machine: Rc<dyn Machine>,
        publish: impl Fn(&Snapshot) + 'static,
    ) -> Session {
        let session = Session {
            inner: Rc::new(Inner {
                store,
                machine,
                timeline: RefCell::new(Timeline::new()),
                shown: RefCell::new(Snapshot::closed()),
                open: RefCell::default(),
                wanted: RefCell::default(),
                put_away: RefCell::default(),
                is_busy: Cell::new(false),
                publish: Box::new(publish),
            }),
        };
        let of = Rc::downgrade(&session.inner);
        session.inner.store.on_health(move |_| {
            if let Some(inner) = of.upgrade() {
                Session { inner }.look_how_it_is_kept();
            }
        });
        session
    }

    // ---- What can be read.

    /// The store that the match stands in.
    #[must_use]
    pub fn store(&self) -> &Store {
        &self.inner.store
    }

    /// The machine that it runs on.
    #[must_use]
    pub fn machine(&self) -> &dyn Machine {
        &*self.inner.machine
    }

    /// The time that an entry would get now, in milliseconds since 1970.
    #[must_use]
    pub fn now(&self) -> i64 {
        self.inner.machine.now()
    }

    /// The id of the open match.
    #[must_use]
    pub fn id(&self) -> Option<String> {
        self.inner.shown.borrow().id.clone()
    }

    /// Looks at the log and at what became of its entries.
    pub fn with_timeline<T>(&self, look: impl FnOnce(&Timeline) -> T) -> T {
        look(&self.inner.timeline.borrow())
    }

    /// The whole log, as a file holds it.
    #[must_use]
    pub fn log(&self) -> Log {
        Log {
            id: self.id().unwrap_or_default(),
            entries: self.with_timeline(|timeline| timeline.entries().to_vec()),
        }
    }

    /// Whether [`Session::submit`] would take the entry.
    ///
    /// # Errors
    /// Why the rules refuse it.
    pub fn check(&self, kind: &Kind) -> Result<(), Refusal> {
        self.with_timeline(|timeline| {
            timeline.check(&Entry::new(timeline.next_number(), kind.clone()))
        })
    }

    /// The log as it would be after one more entry. Nothing is kept.
    ///
    /// # Errors
    /// Why the rules refuse the entry.
    pub fn preview(&self, kind: &Kind) -> Result<Timeline, Refusal> {
        let at = Some(self.now());
        self.with_timeline(|timeline| {
            let entry = Entry {
                at,
                ..Entry::new(timeline.next_number(), kind.clone())
            };
            timeline.check(&entry)?;
            let mut after = timeline.clone();
            after.push(entry);
            Ok(after)
        })
    }

    // ---- The one way in which anything changes.

    /// Makes the next entry and what follows from it.
    ///
    /// # Errors
    /// Why it was not made.
    pub fn submit(&self, wish: impl Into<Wish>) -> Result<(), NotEntered> {
        let wish = wish.into();
        let entry = self.next_entry(&wish)?;
        self.at_once(|| {
            self.keep(entry)?;
            let timers = self.with_timeline(|timeline| timers_with(timeline, &wish.kind));
            for timer in timers {
                // The entry stands, whatever becomes of its count-downs: another tab may take over in between.
                let timer = self.next_entry(&Wish::from(Kind::Timer(timer)));
                let _ = timer.and_then(|timer| self.keep(timer));
            }
            Ok(())
        })
    }

    /// Writes a point down and takes it back in the same breath: it counts once somebody says so.
    ///
    /// # Errors
    /// As [`Session::submit`].
    pub fn hold(&self, expected: u32, point: Kind) -> Result<(), NotEntered> {
        let point = self.next_entry(&Wish {
            expected: Some(expected),
            ..point.into()
        })?;
        let strike = Kind::Strike {
            entry: point.n,
            why: None,
        };
        let strike = Entry {
            at: point.at,
            ..Entry::new(point.n + 1, strike)
        };
        self.at_once(|| {
            self.keep(point)?;
            self.keep(strike)
        })
    }

    /// What had to be said has been read.
    pub fn notices_read(&self) {
        self.show(|shown| shown.notices.clear());
    }

    /// The next entry, stamped and checked.
    fn next_entry(&self, wish: &Wish) -> Result<Entry, NotEntered> {
        if self.id().is_none() {
            return Err(NotEntered::NoMatch);
        }
        if !self.inner.shown.borrow().standing.may_write() {
            return Err(NotEntered::ReadOnly);
        }
        let now = self.now();
        let timeline = self.inner.timeline.borrow();
        let next = timeline.next_number();
        if wish.expected.is_some_and(|expected| expected != next) {
            return Err(NotEntered::Stale);
        }
        let last = timeline.entries().last().and_then(|entry| entry.at);
        let entry = Entry {
            at: Some(stamp(&wish.kind, now, last)),
            insist: wish.insist.clone(),
            ..Entry::new(next, wish.kind.clone())
        };
        match timeline.check(&entry) {
            Err(refusal) if entry.insist.is_none() || refusal.is_final() => {
                Err(NotEntered::Refused(refusal))
            }
            _ => Ok(entry),
        }
    }

    /// First the store, then the timeline in memory. A store that fails is said by its health; the match goes
    /// on in memory. Refused where another tab has taken the match over meanwhile.
    fn keep(&self, entry: Entry) -> Result<(), NotEntered> {
        let keeper = self.keeper().ok_or(NotEntered::ReadOnly)?;
        if !keeper.append(&entry) {
            return Err(NotEntered::ReadOnly);
        }
        self.inner.timeline.borrow_mut().push(entry);
        Ok(())
    }

    /// Does several things and publishes what came of them once, with the state after the last.
    fn at_once<T>(&self, work: impl FnOnce() -> T) -> T {
        self.inner.is_busy.set(true);
        let outcome = work();
        self.publish_state();
        outcome
    }

    /// Publishes the state after the last entry, with what the store says while it hears whether the match runs.
    fn publish_state(&self) {
        self.inner.is_busy.set(true);
        let state = Arc::new(self.with_timeline(|timeline| timeline.state().clone()));
        self.inner.machine.keep_awake(state.is_under_way());
        if let Some(keeper) = self.keeper() {
            keeper.runs(state.phase() != Phase::Finished);
        }
        self.inner.is_busy.set(false);
        self.show(|shown| shown.state = state);
    }

    /// Changes what is shown, and publishes it. What this tab may do and how well the last entry is kept its keeper
    /// alone knows, so that is asked here and nowhere else.
    fn show(&self, change: impl FnOnce(&mut Snapshot)) {
        {
            let mut shown = self.inner.shown.borrow_mut();
            change(&mut shown);
            if let Some(keeper) = self.keeper() {
                shown.standing = keeper.standing();
                shown.saved = keeper.saved();
            }
        }
        if !self.inner.is_busy.get() {
            let shown = self.inner.shown.borrow().clone();
            (self.inner.publish)(&shown);
        }
    }

    // ---- What the keeper of the open match says.

    fn keeper(&self) -> Option<Rc<Keeper>> {
        let open = self.inner.open.borrow();
        open.as_ref().map(|open| Rc::clone(&open.keeper))
    }

    /// The keeper, as long as that match is the open one.
    fn keeper_of(&self, id: &str) -> Option<Rc<Keeper>> {
        self.keeper().filter(|keeper| keeper.id() == id)
    }

    fn on_change(&self, id: &str, change: Change) {
        let Some(keeper) = self.keeper_of(id) else {
            return;
        };
        match change {
            Change::Log => self.read_anew(&keeper),
            Change::Kept => {}
        }
        let told = keeper.told();
        if !told.is_empty() {
            let told = told.into_iter().map(SessionNotice::Storage);
            self.show(|shown| shown.notices.extend(told));
        }
        self.look_how_it_is_kept();
        if keeper.saved() == Saved::Safe && keeper.standing().may_write() {
            let last = self.with_timeline(Timeline::next_number).saturating_sub(1);
            if let Some(peers) = self
                .inner
                .open
                .borrow()
                .as_ref()
                .and_then(|o| o.peers.as_ref())
            {
                peers.announce(last);
            }
        }
    }

    /// Takes up the log as it was read.
    fn read_anew(&self, keeper: &Keeper) {
        let opened = keeper.take_log();
        let mut timeline = Timeline::of(opened.entries);
        timeline.begin_at(opened.next);
        let is_under_way = timeline.state().phase().is_under_way();
        let is_changed = is_under_way && !record::broken(timeline.entries()).is_empty();
        *self.inner.timeline.borrow_mut() = timeline;
        let damage = keeper.damage();
        {
            let mut shown = self.inner.shown.borrow_mut();
            if shown.damage != damage {
                let told = damage.iter().cloned().map(SessionNotice::Damaged);
                shown.notices.extend(told);
                shown.damage = damage;
            }
            if shown.id.is_none() && is_changed {
                shown.notices.push(SessionNotice::RecordChanged);
            }
            shown.id = Some(keeper.id().to_owned());
        }
        self.publish_state();
    }

    fn look_how_it_is_kept(&self) {
        if let Some(keeper) = self.keeper() {
            let now = (keeper.standing(), keeper.saved());
            let shown = {
                let shown = self.inner.shown.borrow();
                (shown.standing, shown.saved)
            };
            if shown != now {
                self.show(|_| {});
            }
        }
    }

    /// Looks whether the storage was emptied, and offers again what a store has not taken.
    pub fn look_at_storage(&self) {
        if let Some(keeper) = self.keeper() {
            keeper.look();
        }
    }
}
