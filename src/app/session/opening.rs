//! Opening, closing and taking over a match: which one is open, and whether this tab writes it.

use std::cell::Cell;
use std::rc::{Rc, Weak};

use super::{Inner, Open, Session};
use crate::keeper::{Change, Keeper};
use crate::ports::Held;
use crate::snapshot::{NotEntered, Snapshot};
use game::entry::Heading;
use game::{Entry, Kind, Timeline};

/// How often an opening looks whether the match is still being put away, in milliseconds. Our own choice: less
/// than anybody notices.
const PUT_AWAY_MS: u32 = 20;

impl Session {
    /// Begins the record of a new match and gives its id.
    ///
    /// # Errors
    /// Where the rules of the heading cannot be played by.
    pub fn create(&self, heading: Heading) -> Result<String, NotEntered> {
        let kind = Kind::Match(Box::new(heading));
        let first = Entry::new(1, kind.clone());
        Timeline::new().check(&first).map_err(NotEntered::Refused)?;
        self.close();
        self.inner.machine.settle_clock();
        let id = self.inner.store.new_id();
        // The id is new, so nobody else can hold it.
        let keeper = Keeper::create(&self.inner.store, &id, self.listener(&id));
        self.opened(keeper);
        // It is shown with its first entry.
        self.inner.is_busy.set(true);
        self.show(|shown| shown.id = Some(id.clone()));
        let entered = self.submit(kind);
        self.inner.is_busy.set(false);
        entered?;
        self.claim(&id, true);
        // A calm moment, a tap, and something to keep from now on.
        self.inner.machine.ask_to_keep();
        Ok(id)
    }

    /// Opens a match from the store. It can be read once the snapshot names its id.
    pub fn open(&self, id: &str) {
        if self.id().as_deref() == Some(id) {
            return;
        }
        self.close();
        let keeper = Keeper::open(&self.inner.store, id, self.listener(id));
        self.opened(keeper);
        *self.inner.wanted.borrow_mut() = Some(id.to_owned());
        if !self.is_put_away_now(id) {
            return self.claim(id, false);
        }
        let (session, id) = (self.clone(), id.to_owned());
        let work = async move {
            while session.is_put_away_now(&id) {
                session.inner.store.pause(PUT_AWAY_MS).await;
            }
            if session.wants(&id) {
                session.claim(&id, false);
            }
        };
        self.inner.store.spawn(Box::pin(work));
    }

    fn listener(&self, id: &str) -> impl Fn(Change) + 'static {
        let (of, id) = (Rc::downgrade(&self.inner), id.to_owned());
        move |change| {
            if let Some(inner) = of.upgrade() {
                Session { inner }.on_change(&id, change);
            }
        }
    }

    fn opened(&self, keeper: Keeper) {
        *self.inner.open.borrow_mut() = Some(Open {
            keeper: Rc::new(keeper),
            lock: None,
            peers: None,
        });
    }

    fn wants(&self, id: &str) -> bool {
        self.inner.wanted.borrow().as_deref() == Some(id)
    }

    fn is_put_away_now(&self, id: &str) -> bool {
        self.inner.put_away.borrow().as_deref() == Some(id)
    }

    /// Lets go of the open match.
    pub fn close(&self) {
        self.inner.wanted.replace(None);
        // Dropping what was open may say something: by then there is nothing to say it of.
        let open = self.inner.open.replace(None);
        drop(open);
        self.inner.timeline.replace(Timeline::new());
        self.inner.machine.keep_awake(false);
        self.show(|shown| *shown = Snapshot::closed());
    }

    /// Makes this tab the one that writes, by force.
    pub fn take_over(&self) {
        let lock = self
            .inner
            .open
            .borrow()
            .as_ref()
            .and_then(|open| open.lock.clone());
        let Some(lock) = lock else {
            return;
        };
        let was_here = lock.held() == Held::Here;
        lock.take_over();
        if was_here {
            // The browser says that this tab writes, the match says otherwise: it is claimed again.
            self.lock_says(Held::Here);
        }
    }

    /// Goes on although the database has not been read.
    pub fn go_on(&self) {
        if let Some(keeper) = self.keeper() {
            keeper.go_on();
        }
    }

    /// Puts a match away that is over, if nobody has it open.
    pub async fn tidy(&self, id: &str) {
        if self.wants(id) || self.inner.put_away.borrow().is_some() {
            return;
        }
        self.inner.put_away.replace(Some(id.to_owned()));
        if let Some(lock) = self.inner.machine.lock_at_once(id).await {
            // A store that does not answer now is asked the next time.
            let _ = self.inner.store.tidy(id).await;
            drop(lock);
        }
        self.inner.put_away.replace(None);
    }

    fn lock_says(&self, held: Held) {
        let Some(keeper) = self.keeper() else {
            return;
        };
        match held {
            Held::Asking => {}
            Held::Here => keeper.granted(),
            Held::Elsewhere { robbed } => keeper.denied(robbed),
        }
    }

    /// Asks to be the writer of a match, and listens to the tabs that are. A match that was only just made is
    /// claimed already.
    fn claim(&self, id: &str, fresh: bool) {
        let fresh = Cell::new(fresh);
        let on_answer = self.of_open(id, move |session, held: Held| {
            let known = fresh.replace(false) && held == Held::Here;
            if !known {
                session.lock_says(held);
            }
        });
        let on_written = self.of_open(id, |session, ()| {
            if let Some(keeper) = session.keeper() {
                keeper.written_elsewhere();
            }
        });
        let lock = self.inner.machine.lock(id, Box::new(on_answer));
        let peers = self
            .inner
            .machine
            .join(id, Box::new(move || on_written(())));
        if let Some(open) = self.inner.open.borrow_mut().as_mut() {
            open.lock = Some(lock);
            open.peers = Some(peers);
        }
    }

    /// What is done only as long as that match is the open one.
    fn of_open<T>(&self, id: &str, work: impl Fn(&Session, T) + 'static) -> impl Fn(T) + 'static {
        let (of, id): (Weak<Inner>, String) = (Rc::downgrade(&self.inner), id.to_owned());
        move |what| {
            let session = of.upgrade().map(|inner| Session { inner });
            if let Some(session) = session.filter(|session| session.keeper_of(&id).is_some()) {
                work(&session, what);
            }
        }
    }
}
