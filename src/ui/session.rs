//! The open match, and the one way in which it changes.
//!
//! An entry is stamped, checked by the very function that the reducer refuses with, written to the
//! journal, and only then shown. A refusal writes nothing.

use std::rc::Rc;
use std::sync::Arc;

use leptos::prelude::*;

use app::keeper::{Change, Keeper};
use app::merge::{unread, Damage};
use app::ports::{Health, Standing};
use app::store::Store;
use device::{Clock, Focus, Held, Listeners, Tabs, Ticker, Wake, WriterLock};
use game::entry::Heading;
use game::{Entry, Kind, Phase, Refusal, State, Timeline};
use record::Log;

pub use app::keeper::Saved;

/// How often count-downs are looked at.
const TICK_MS: u32 = 250;

/// How often the open match looks whether its storage is still there. Our own choice: seldom enough to
/// cost nothing, often enough that a cleared storage is noticed between two rallies.
const LOOK_MS: u32 = 5_000;

/// How often an opening looks whether the match is put away by now.
const PUT_AWAY_MS: u32 = 20;

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

/// The open match. Copies are the same.
#[derive(Clone, Copy)]
pub struct Session {
    hands: StoredValue<SessionInner, LocalStorage>,
    id: RwSignal<Option<String>>,
    state: RwSignal<Arc<State>>,
    standing: RwSignal<Standing>,
    saved: RwSignal<Saved>,
    health: RwSignal<Health>,
    problems: RwSignal<Vec<String>>,
    damage: RwSignal<Vec<Damage>>,
    refused: RwSignal<Option<Refused>>,
    looking_on: RwSignal<bool>,
    now: RwSignal<i64>,
}

/// What is changed in place and never compared.
struct SessionInner {
    store: Store,
    clock: Clock,
    wake: Wake,
    timeline: Timeline,
    /// The match that was asked for; what is read for another one comes too late.
    wanted: Option<String>,
    /// The match that is being put away just now, which takes a moment and its lock.
    put_away: Option<String>,
    keeper: Option<Rc<Keeper>>,
    lock: Option<WriterLock>,
    tabs: Option<Tabs>,
    _held: (Option<Listeners>, Vec<Ticker>),
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
        let store = device::open_store();
        let clock = Clock::start();
        let id = RwSignal::new(None::<String>);
        let health = RwSignal::new(store.health());
        let now = RwSignal::new(clock.stamp());
        let ticking = clock.clone();
        let ticker = device::every(TICK_MS, move || now.set(ticking.stamp()));
        let session = Session {
            hands: StoredValue::new_local(SessionInner {
                _held: (None, vec![ticker]),
                wake: Wake::new(|_| {}),
                store,
                clock,
                timeline: Timeline::new(),
                wanted: None,
                put_away: None,
                keeper: None,
                lock: None,
                tabs: None,
            }),
            id,
            state: RwSignal::new(Arc::new(State::new())),
            standing: RwSignal::new(Standing::Asking),
            saved: RwSignal::new(Saved::Saving),
            health,
            problems: RwSignal::new(Vec::new()),
            damage: RwSignal::new(Vec::new()),
            refused: RwSignal::new(None),
            looking_on: RwSignal::new(false),
            now,
        };
        session.store().on_health(move |now| {
            // The page may be gone by now.
            session.health.try_set(now.clone());
            if let Some(keeper) = session.keeper() {
                session.saved.try_set(keeper.saved());
            }
        });
        // Whether somebody emptied the storage is seen when the page comes back, and now and then.
        let look = move || {
            if let Some(keeper) = session.keeper() {
                keeper.look();
            }
        };
        let resumed = device::on_resume(look);
        let looking = device::every(LOOK_MS, look);
        session.hands.update_value(|hands| {
            hands._held.0 = Some(resumed);
            hands._held.1.push(looking);
        });
        session
    }

    fn keeper(self) -> Option<Rc<Keeper>> {
        self.hands.with_value(|hands| hands.keeper.clone())
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
        self.with_timeline(Timeline::next_number)
    }

    /// The same, without listening for it.
    #[must_use]
    pub fn next_now(self) -> u32 {
        self.hands.with_value(|hands| hands.timeline.next_number())
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
    pub fn with_timeline<T>(self, look: impl FnOnce(&Timeline) -> T) -> T {
        self.state.track();
        self.hands.with_value(|hands| look(&hands.timeline))
    }

    /// What [`Session::append`] would say.
    ///
    /// # Errors
    /// Why it would be refused.
    pub fn check(self, kind: &Kind) -> Result<(), Refusal> {
        self.with_timeline(|timeline| {
            timeline.check(&Entry::new(timeline.next_number(), kind.clone()))
        })
    }

    /// The log as it would be after one more entry; nothing is written.
    ///
    /// # Errors
    /// Why the entry would be refused.
    pub fn preview(self, kind: &Kind) -> Result<Timeline, Refusal> {
        let at = Some(self.clock().stamp());
        self.with_untracked(|timeline| {
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

    /// How well the last entry is kept.
    #[must_use]
    pub fn saved(self) -> Saved {
        self.saved.get()
    }

    /// Lines of the open match that cannot be read or proved.
    #[must_use]
    pub fn damage(self) -> Vec<Damage> {
        self.damage.get()
    }

    /// The bytes of those that cannot be read, to be handed over with the rest.
    #[must_use]
    pub fn unread(self) -> Vec<String> {
        self.damage.with_untracked(|damage| unread(damage))
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
    pub fn store(self) -> Store {
        self.hands.with_value(|hands| hands.store.clone())
    }

    /// The whole log, as a file would hold it.
    #[must_use]
    pub fn log(self) -> Log {
        Log {
            id: self.id.get_untracked().unwrap_or_default(),
            entries: self
                .hands
                .with_value(|hands| hands.timeline.entries().to_vec()),
        }
    }

    /// The same as [`Session::with_timeline`], without listening for the next entry.
    pub fn with_untracked<T>(self, look: impl FnOnce(&Timeline) -> T) -> T {
        self.hands.with_value(|hands| look(&hands.timeline))
    }

    // ---- The one way in which anything changes.

    /// Makes the next entry.
    ///
    /// # Errors
    /// Why it was not made; nothing is written then.
    pub fn append(self, kind: Kind) -> Result<(), NotEntered> {
        self.make(None, kind, None)
    }

    /// Makes the next entry, if it still is the one that the tapped picture was drawn for.
    ///
    /// # Errors
    /// As [`Session::append`].
    pub fn append_at(self, expected: u32, kind: Kind) -> Result<(), NotEntered> {
        self.make(Some(expected), kind, None)
    }

    /// Makes the next entry against the advice of the rules.
    ///
    /// # Errors
    /// As [`Session::append`].
    pub fn insist(self, kind: Kind, why: &str) -> Result<(), NotEntered> {
        self.make(None, kind, Some(why.to_owned()))
    }

    /// Makes the next entry; a refusal is shown with its way out. Says whether it was made.
    pub fn submit(self, kind: Kind) -> bool {
        let outcome = self.append(kind.clone());
        self.explain(kind, outcome)
    }

    /// The same for a tap that knows which entry it makes.
    pub fn submit_at(self, expected: u32, kind: Kind) -> bool {
        let outcome = self.append_at(expected, kind.clone());
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

    /// Writes a point down and takes it back in the same breath: it counts once somebody says so. Says whether
    /// it was held.
    pub fn hold_as(self, expected: u32, kind: Kind) -> bool {
        let outcome = self.hold(expected, kind.clone());
        self.explain(kind, outcome)
    }

    fn hold(self, expected: u32, kind: Kind) -> Result<(), NotEntered> {
        let point = self.next_entry(Some(expected), kind, None)?;
        let strike = Entry {
            at: point.at,
            ..Entry::new(
                point.n + 1,
                Kind::Strike {
                    entry: point.n,
                    why: None,
                },
            )
        };
        self.keep(point)?;
        let held = self.keep(strike);
        self.publish();
        held
    }

    fn make(
        self,
        expected: Option<u32>,
        kind: Kind,
        insist: Option<String>,
    ) -> Result<(), NotEntered> {
        let entry = self.next_entry(expected, kind, insist)?;
        self.write(entry)
    }

    /// The next entry, stamped and checked.
    fn next_entry(
        self,
        expected: Option<u32>,
        kind: Kind,
        insist: Option<String>,
    ) -> Result<Entry, NotEntered> {
        if self.id.get_untracked().is_none() {
            return Err(NotEntered::NoMatch);
        }
        if !self.standing.get_untracked().may_write() {
            return Err(NotEntered::ReadOnly);
        }
        let next = self.hands.with_value(|h| h.timeline.next_number());
        if expected.is_some_and(|expected| expected != next) {
            return Err(NotEntered::Stale);
        }
        let last = self.hands.with_value(|h| h.timeline.entries().last()?.at);
        let entry = Entry {
            at: Some(time_of(&kind, self.clock().stamp(), last)),
            insist,
            ..Entry::new(next, kind)
        };
        match self.hands.with_value(|h| h.timeline.check(&entry)) {
            Err(refusal) if entry.insist.is_none() || refusal.is_final() => {
                return Err(NotEntered::Refused(refusal));
            }
            _ => {}
        }
        Ok(entry)
    }

    fn write(self, entry: Entry) -> Result<(), NotEntered> {
        self.keep(entry)?;
        self.publish();
        Ok(())
    }

    /// First the storage, then the log in memory; the picture follows with [`Session::publish`]. A storage that
    /// fails is said by [`Session::health`]; the match goes on in memory. Refused where another tab has taken
    /// the match over meanwhile.
    fn keep(self, entry: Entry) -> Result<(), NotEntered> {
        let keeper = self.keeper().ok_or(NotEntered::ReadOnly)?;
        if !keeper.append(&entry) {
            self.stand(keeper.standing());
            return Err(NotEntered::ReadOnly);
        }
        self.hands.update_value(|h| {
            h.timeline.push(entry);
        });
        Ok(())
    }

    fn publish(self) {
        let state = self.hands.with_value(|h| h.timeline.state().clone());
        let under_way = state.phase().is_under_way();
        self.hands.with_value(|h| h.wake.want(under_way));
        if let Some(keeper) = self.keeper() {
            keeper.runs(state.phase() != Phase::Finished);
        }
        Focus::let_go();
        self.state.set(Arc::new(state));
    }

    /// What this tab may do from now on. Once it may write, the question whether it should is answered.
    fn stand(self, standing: Standing) {
        if standing.may_write() && self.looking_on.get_untracked() {
            self.looking_on.set(false);
        }
        self.standing.set(standing);
    }

    /// What the keeper of the open match says.
    fn on_notice(self, id: &str, change: Change) {
        let keeper = self.keeper().filter(|keeper| keeper.id() == id);
        let Some(keeper) = keeper else {
            return;
        };
        match change {
            Change::Log => {
                let is_first = self.id.with_untracked(Option::is_none);
                let opened = keeper.take_log();
                self.hands.update_value(|h| {
                    h.timeline = Timeline::of(opened.entries);
                    h.timeline.begin_at(opened.next);
                });
                let damage = keeper.damage();
                if self.damage.with_untracked(|known| *known != damage) {
                    let told: Vec<String> = damage.iter().map(text::line_damage).collect();
                    self.problems.update(|problems| problems.extend(told));
                    self.damage.set(damage);
                }
                if is_first && self.is_changed_under_way() {
                    self.problems
                        .update(|problems| problems.push(text::RECORD_CHANGED.to_owned()));
                }
                self.stand(keeper.standing());
                self.publish();
                self.id.set(Some(id.to_owned()));
            }
            Change::Standing => self.stand(keeper.standing()),
            Change::Kept => {}
        }
        let told: Vec<String> = keeper.told().iter().map(text::told).collect();
        if !told.is_empty() {
            self.problems.update(|problems| problems.extend(told));
        }
        let saved = keeper.saved();
        if self.saved.get_untracked() != saved {
            self.saved.set(saved);
        }
        if saved == Saved::Safe && keeper.standing().may_write() {
            self.hands.with_value(|h| {
                if let Some(tabs) = &h.tabs {
                    tabs.announce(h.timeline.next_number().saturating_sub(1));
                }
            });
        }
    }

    /// Whether somebody changed the record of a match that is still played. Once it is over, its list and
    /// its sheet say so.
    fn is_changed_under_way(self) -> bool {
        self.hands.with_value(|h| {
            h.timeline.state().phase().is_under_way()
                && !record::broken(h.timeline.entries()).is_empty()
        })
    }

    // ---- Opening and closing.

    /// Begins the record of a new match.
    ///
    /// # Errors
    /// Where the rules of the heading cannot be played by.
    pub fn create(self, heading: Heading) -> Result<String, NotEntered> {
        let kind = Kind::Match(Box::new(heading));
        let first = Entry::new(1, kind);
        Timeline::new().check(&first).map_err(NotEntered::Refused)?;
        self.close();
        self.hands.with_value(|h| h.clock.settle());
        let id = device::new_id();
        let of = id.clone();
        // The id is new, so nobody else can hold it.
        let keeper = Keeper::create(&self.store(), &id, move |change| {
            self.on_notice(&of, change)
        });
        self.hands
            .update_value(|h| h.keeper = Some(Rc::new(keeper)));
        self.id.set(Some(id.clone()));
        self.stand(Standing::Writer);
        self.write(Entry {
            at: Some(time_of(&first.kind, self.clock().stamp(), None)),
            ..first
        })?;
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
        let of = id.to_owned();
        let keeper = Keeper::open(&self.store(), id, move |change| self.on_notice(&of, change));
        self.hands.update_value(|h| {
            h.keeper = Some(Rc::new(keeper));
            h.wanted = Some(id.to_owned());
        });
        let id = id.to_owned();
        let busy = move |id: &String| self.hands.with_value(|h| h.put_away.as_ref() == Some(id));
        if !busy(&id) {
            return self.claim(&id, false);
        }
        device::spawn(async move {
            while busy(&id) {
                device::pause(PUT_AWAY_MS).await;
            }
            if self.hands.with_value(|h| h.wanted.as_ref() == Some(&id)) {
                self.claim(&id, false);
            }
        });
    }

    /// Lets go of the open match.
    pub fn close(self) {
        self.hands.update_value(|h| {
            h.wanted = None;
            h.keeper = None;
            h.lock = None;
            h.tabs = None;
            h.timeline = Timeline::new();
            h.wake.want(false);
        });
        self.id.set(None);
        self.saved.set(Saved::Saving);
        self.problems.set(Vec::new());
        self.damage.set(Vec::new());
        self.refused.set(None);
        self.looking_on.set(false);
        self.stand(Standing::Asking);
        self.state.set(Arc::new(State::new()));
    }

    /// Makes this tab the one that writes, by force; the other one is told by its browser.
    pub fn take_over(self) {
        let lock = self.hands.with_value(|h| h.lock.clone());
        let Some(lock) = lock else {
            return;
        };
        if lock.held() == Held::Here {
            // The browser says that this tab writes, the match says otherwise: it is claimed again.
            self.lock_says(Held::Here);
        } else {
            lock.take_over();
        }
    }

    /// Goes on although one copy has not been read.
    pub fn go_on(self) {
        if let Some(keeper) = self.keeper() {
            keeper.go_on();
        }
    }

    /// Puts a match away that is over, if nobody has it open.
    pub async fn tidy(self, id: &str) {
        if self
            .hands
            .with_value(|h| h.wanted.as_deref() == Some(id) || h.put_away.is_some())
        {
            return;
        }
        self.hands
            .update_value(|h| h.put_away = Some(id.to_owned()));
        if let Some(lock) = WriterLock::at_once(id).await {
            // A store that does not answer now is asked the next time.
            let _ = self.store().tidy(id).await;
            drop(lock);
        }
        // The page may be gone by now.
        self.hands.try_update_value(|h| h.put_away = None);
    }

    fn lock_says(self, held: Held) {
        let Some(keeper) = self.keeper() else {
            return;
        };
        match held {
            Held::Asking => {}
            Held::Here => keeper.granted(),
            Held::Elsewhere { robbed } => {
                keeper.denied(robbed);
                self.stand(keeper.standing());
            }
        }
    }

    /// Asks to be the writer of a match, and listens to the tabs that are. A match that was only just
    /// made is claimed already.
    fn claim(self, id: &str, fresh: bool) {
        let fresh = std::cell::Cell::new(fresh);
        let of = id.to_owned();
        let is_open = move || self.keeper().is_some_and(|keeper| keeper.id() == of);
        let is_still_open = is_open.clone();
        let lock = WriterLock::request(id, move |held| {
            let known = fresh.replace(false) && held == Held::Here;
            if is_open() && !known {
                self.lock_says(held);
            }
        });
        let tabs = Tabs::join(id, move |_| {
            if let Some(keeper) = self.keeper().filter(|_| is_still_open()) {
                keeper.written_elsewhere();
            }
        });
        self.hands.update_value(|h| {
            h.lock = Some(lock);
            h.tabs = Some(tabs);
        });
    }
}
