//! The open match as the screens see it: `app::session` in signals.

use std::rc::Rc;
use std::sync::Arc;

use leptos::prelude::*;

use app::library::{Library, List};
use app::merge::{unread, Damage};
use app::ports::{Health, Standing};
use app::snapshot::{SessionNotice, Snapshot, Wish};
use app::store::Store;
use device::{Focus, Listeners, Ticker};
use game::entry::Heading;
use game::{Kind, Refusal, State, Timeline};
use record::Log;

pub use app::keeper::Saved;
pub use app::snapshot::NotEntered;

/// How often count-downs are looked at.
const TICK_MS: u32 = 250;

/// How often the open match looks whether its storage is still there. Our own choice: seldom enough to
/// cost nothing, often enough that a cleared storage is noticed between two rallies.
const LOOK_MS: u32 = 5_000;

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
    inner: StoredValue<Inner, LocalStorage>,
    id: RwSignal<Option<String>>,
    state: RwSignal<Arc<State>>,
    standing: RwSignal<Standing>,
    saved: RwSignal<Saved>,
    health: RwSignal<Health>,
    notices: RwSignal<Vec<SessionNotice>>,
    damage: RwSignal<Vec<Damage>>,
    refused: RwSignal<Option<Refused>>,
    looking_on: RwSignal<bool>,
    now: RwSignal<i64>,
}

struct Inner {
    session: app::session::Session,
    // Held for their drops alone.
    _listening: (Listeners, [Ticker; 2]),
}

/// The session of this page.
///
/// # Panics
/// Outside of the page's components.
#[must_use]
pub fn use_session() -> Session {
    expect_context::<Session>()
}

/// Sets a signal where its value is another one, so that nothing is drawn anew for nothing.
fn set_if_other<T: PartialEq + Clone + Send + Sync + 'static>(signal: RwSignal<T>, value: &T) {
    // The page may be gone by now.
    if signal.try_with_untracked(|now| now != value) == Some(true) {
        signal.set(value.clone());
    }
}

impl Session {
    /// Opens the storage and the clock; once a page.
    #[must_use]
    pub fn begin() -> Session {
        let store = device::open_store();
        let machine = device::open_machine();
        let closed = Snapshot::closed();
        let id = RwSignal::new(closed.id);
        let state = RwSignal::new(closed.state);
        let standing = RwSignal::new(closed.standing);
        let saved = RwSignal::new(closed.saved);
        let notices = RwSignal::new(closed.notices);
        let damage = RwSignal::new(closed.damage);
        let health = RwSignal::new(store.health());
        let now = RwSignal::new(machine.now());
        let looking_on = RwSignal::new(false);
        let refused = RwSignal::new(None);
        store.on_health(move |now| set_if_other(health, now));
        let publish = move |shown: &Snapshot| {
            // What was asked about the match that was open is asked no more.
            if shown.id.is_none() {
                set_if_other(refused, &None);
                set_if_other(looking_on, &false);
            }
            // Once this tab may write, the question whether it should is answered.
            if shown.standing.may_write() {
                set_if_other(looking_on, &false);
            }
            set_if_other(standing, &shown.standing);
            set_if_other(damage, &shown.damage);
            set_if_other(notices, &shown.notices);
            set_if_other(saved, &shown.saved);
            let known = state.try_with_untracked(|now| Arc::ptr_eq(now, &shown.state));
            if known == Some(false) {
                Focus::let_go();
                state.set(Arc::clone(&shown.state));
            }
            set_if_other(id, &shown.id);
        };
        let session = app::session::Session::new(store, Rc::clone(&machine), publish);
        let ticking = Rc::clone(&machine);
        let ticker = device::every(TICK_MS, move || now.set(ticking.now()));
        // Whether somebody emptied the storage is seen when the page comes back, and now and then.
        let (resumed, again) = (session.clone(), session.clone());
        let on_resume = device::on_resume(move || resumed.look_at_storage());
        let looking = device::every(LOOK_MS, move || again.look_at_storage());
        Session {
            inner: StoredValue::new_local(Inner {
                session,
                _listening: (on_resume, [ticker, looking]),
            }),
            id,
            state,
            standing,
            saved,
            health,
            notices,
            damage,
            refused,
            looking_on,
            now,
        }
    }

    fn app(self) -> app::session::Session {
        self.inner.with_value(|inner| inner.session.clone())
    }

    // ---- What can be read.

    /// The id of the open match.
    #[must_use]
    pub fn id(self) -> Option<String> {
        self.id.get()
    }

    /// The same, without listening for another one.
    #[must_use]
    pub fn id_now(self) -> Option<String> {
        self.id.get_untracked()
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
        self.with_untracked(Timeline::next_number)
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
        self.with_untracked(look)
    }

    /// The same, without listening for the next entry.
    pub fn with_untracked<T>(self, look: impl FnOnce(&Timeline) -> T) -> T {
        self.inner
            .with_value(|inner| inner.session.with_timeline(look))
    }

    /// Whether [`Session::submit`] would take the entry.
    ///
    /// # Errors
    /// Why the rules refuse it.
    pub fn check(self, kind: &Kind) -> Result<(), Refusal> {
        self.state.track();
        self.app().check(kind)
    }

    /// The log as it would be after one more entry; nothing is written.
    ///
    /// # Errors
    /// Why the entry would be refused.
    pub fn preview(self, kind: &Kind) -> Result<Timeline, Refusal> {
        self.app().preview(kind)
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

    /// What has to be said of the open match.
    #[must_use]
    pub fn notices(self) -> Vec<SessionNotice> {
        self.notices.get()
    }

    /// It has been read.
    pub fn notices_read(self) {
        self.app().notices_read();
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

    /// The time, moving a few times a second, in milliseconds since 1970.
    #[must_use]
    pub fn now(self) -> i64 {
        self.now.get()
    }

    /// The time at this moment, as it stamps entries.
    #[must_use]
    pub fn time_now(self) -> i64 {
        self.app().now()
    }

    /// The storage.
    #[must_use]
    pub fn store(self) -> Store {
        self.app().store().clone()
    }

    /// Keeps the screen on, or no more.
    pub fn keep_awake(self, wanted: bool) {
        self.app().machine().keep_awake(wanted);
    }

    /// The matches on this phone; `publish` gets the list whenever more of it is known.
    #[must_use]
    pub fn library(self, publish: impl Fn(&List) + 'static) -> Library {
        Library::new(self.app(), device::settings(), publish)
    }

    /// The whole log, as a file would hold it.
    #[must_use]
    pub fn log(self) -> Log {
        self.app().log()
    }

    // ---- The one way in which anything changes.

    /// Makes the next entry and what follows from it; a refusal is shown with its way out. Says whether it was
    /// made.
    pub fn submit(self, kind: Kind) -> bool {
        self.submit_wish(Wish::from(kind))
    }

    /// The same for a tap that knows which entry it makes.
    pub fn submit_at(self, expected: u32, kind: Kind) -> bool {
        self.submit_wish(Wish {
            expected: Some(expected),
            ..kind.into()
        })
    }

    /// The same against the advice of the rules.
    pub fn insist(self, kind: Kind, why: &str) -> bool {
        self.submit_wish(Wish {
            insist: Some(why.to_owned()),
            ..kind.into()
        })
    }

    fn submit_wish(self, wish: Wish) -> bool {
        let kind = wish.kind.clone();
        let outcome = self.app().submit(wish);
        self.explain(kind, outcome)
    }

    /// Writes a point down and takes it back in the same breath: it counts once somebody says so. Says whether
    /// it was held.
    pub fn hold_at(self, expected: u32, kind: Kind) -> bool {
        let outcome = self.app().hold(expected, kind.clone());
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

    // ---- Opening and closing.

    /// Begins the record of a new match.
    ///
    /// # Errors
    /// Where the rules of the heading cannot be played by.
    pub fn create(self, heading: Heading) -> Result<String, NotEntered> {
        self.app().create(heading)
    }

    /// Opens a match from storage. It can be read once [`Session::id`] names it.
    pub fn open(self, id: &str) {
        self.app().open(id);
    }

    /// Makes this tab the one that writes, by force; the other one is told by its browser.
    pub fn take_over(self) {
        self.app().take_over();
    }

    /// Goes on although one copy has not been read.
    pub fn go_on(self) {
        self.app().go_on();
    }
}
