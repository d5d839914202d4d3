//! The open match in one tab: what of it is in memory, what each store is known to hold, and who may
//! write.
//!
//! The promise is: what was shown as *saved* is never lost. It rests on four rules.
//!
//! * A store that was not read is unknown, never empty: nothing is repaired from it and nothing in it is
//!   replaced. Until the database has been read once, this tab writes nothing there.
//! * The database takes a line only under the mark of the tab that claimed the match last
//!   ([`Robbed`](super::ports::Written::Robbed) otherwise), in the same transaction. A robbed tab reads only, before anything
//!   else happens.
//! * Nothing is written over that is not what was found there ([`Differs`](super::ports::Written::Differs) otherwise). Two good
//!   lines of one number are two logs: the one of the database keeps its name, the other is kept as a
//!   match beside it, and that is said.
//! * A mark that is gone means that the storage was emptied: the open match writes itself again.

mod durable;
mod local;
mod reading;

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use super::merge::Damage;
use super::ports::{Lines, Put, Standing, Storage};
use super::store::Store;
use game::Entry;
use record::LineWriter;

/// After a failure that may pass by itself, the database is tried again after this long. Our own
/// choice: often enough to catch up between two rallies, rare enough not to tire a phone.
pub const RETRY_MS: u32 = 2_000;

/// How well the last entry is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Saved {
    /// It is on disk, and wherever else it belongs.
    Safe,
    /// It is on its way to the disk.
    Saving,
    /// One of the two copies cannot be made or read, the other is there.
    OneCopy,
    /// It is in memory only.
    MemoryOnly,
}

/// Something that happened to the storage and has to be said.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageNotice {
    /// Somebody emptied the storage while the match was open; it was written again from memory.
    Emptied,
    /// The database answered late and had so many entries more.
    CameLate(u32),
    /// Another log of this match was found and is kept under this id.
    Beside {
        /// The id.
        id: String,
        /// How many of its entries are not in this match.
        entries: usize,
    },
    /// These entries were damaged in one copy and whole in the other.
    Mended(Vec<u32>),
}

/// What has changed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Change {
    /// What was read: the log is to be read anew. What may be done may be something else as well.
    Log,
    /// What may be done, or how well the last entry is kept.
    Kept,
}

/// The log as it was read.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Opened {
    /// The entries that can be read.
    pub entries: Vec<Entry>,
    /// The number of the next one.
    pub next: u32,
}

struct State {
    standing: Standing,
    // Whether the browser, or the lease, says that this tab writes.
    has_lock: bool,
    robbed: bool,
    // Every line of the log, as it stands in storage.
    lines: Lines,
    entries: Vec<Entry>,
    next: u32,
    writer: LineWriter,
    damage: Vec<Damage>,
    told: Vec<StorageNotice>,
    // Whether the database was read since this tab claimed the match.
    is_read: bool,
    // Whether somebody chose to go on without the database, or the match is new.
    goes_on: bool,
    // A match that is over and stands in the database alone is not copied to local storage again.
    local_wanted: bool,
    // Whether this tab's mark was put into local storage, and into the database.
    marked: bool,
    marked_there: bool,
    to_local: BTreeMap<u32, Put>,
    // Whether local storage holds another log that is kept nowhere else yet: nothing there gives way before.
    local_held: bool,
    to_durable: BTreeMap<u32, Put>,
    // Logs that are kept beside this one already, and such that were, until storage was emptied.
    beside: Vec<Lines>,
    beside_again: Vec<Lines>,
}

struct Inner {
    store: Store,
    id: String,
    // This tab's mark.
    me: String,
    state: RefCell<State>,
    // Grows with each change of who writes: what was asked before is answered too late.
    turn: Cell<u32>,
    closed: Cell<bool>,
    pumping: Cell<bool>,
    reading: Cell<bool>,
    read_again: Cell<bool>,
    retrying: Cell<bool>,
    on_change: Box<dyn Fn(Change)>,
}

/// The open match. Dropping it closes it; what is on its way to the disk still goes there.
pub struct Keeper {
    inner: Rc<Inner>,
}

impl Drop for Keeper {
    fn drop(&mut self) {
        self.inner.closed.set(true);
        let state = self.inner.state.borrow();
        if !state.to_durable.is_empty() && state.standing.may_write() {
            // Whoever opens the match again in this tab goes on from here.
            self.inner.store.leave(&self.inner.id, state.lines.clone());
        }
    }
}

impl Keeper {
    /// A match that stands in storage. Nothing can be read of it until the lock has answered.
    pub fn open(store: &Store, id: &str, on_change: impl Fn(Change) + 'static) -> Keeper {
        Keeper::new(store, id, false, on_change)
    }

    /// A match that nobody has ever written: this tab is its writer.
    pub fn create(store: &Store, id: &str, on_change: impl Fn(Change) + 'static) -> Keeper {
        let keeper = Keeper::new(store, id, true, on_change);
        {
            let mut state = keeper.inner.state.borrow_mut();
            state.standing = Standing::Writer;
            state.has_lock = true;
        }
        keeper.inner.mark();
        keeper.inner.read();
        keeper
    }

    fn new(store: &Store, id: &str, fresh: bool, on_change: impl Fn(Change) + 'static) -> Keeper {
        let left = store.left(id);
        let state = State {
            standing: Standing::Asking,
            has_lock: false,
            robbed: false,
            lines: left,
            entries: Vec::new(),
            next: 1,
            writer: LineWriter::default(),
            damage: Vec::new(),
            told: Vec::new(),
            is_read: false,
            goes_on: fresh,
            local_wanted: true,
            marked: false,
            marked_there: false,
            to_local: BTreeMap::new(),
            local_held: false,
            to_durable: BTreeMap::new(),
            beside: Vec::new(),
            beside_again: Vec::new(),
        };
        Keeper {
            inner: Rc::new(Inner {
                store: store.clone(),
                id: id.to_owned(),
                me: store.storage().unique(),
                state: RefCell::new(state),
                turn: Cell::new(0),
                closed: Cell::new(false),
                pumping: Cell::new(false),
                reading: Cell::new(false),
                read_again: Cell::new(false),
                retrying: Cell::new(false),
                on_change: Box::new(on_change),
            }),
        }
    }

    // ---- What the lock says.

    /// This tab is the writer. It may write once the match has been read.
    pub fn granted(&self) {
        let inner = &self.inner;
        inner.turn.set(inner.turn.get() + 1);
        {
            let mut state = inner.state.borrow_mut();
            state.has_lock = true;
            state.robbed = false;
            state.is_read = false;
        }
        inner.mark();
        inner.read();
    }

    /// Another tab is.
    pub fn denied(&self, robbed: bool) {
        if robbed {
            self.inner.lose();
        } else {
            self.inner.state.borrow_mut().standing = Standing::ReadOnly { robbed: false };
            (self.inner.on_change)(Change::Kept);
            self.inner.read();
        }
    }

    /// Another tab has written, or storage has changed.
    pub fn written_elsewhere(&self) {
        if !self.inner.state.borrow().has_lock {
            self.inner.read();
        }
    }

    /// Somebody decided to go on although the database has not been read.
    pub fn go_on(&self) {
        let mut state = self.inner.state.borrow_mut();
        state.goes_on = true;
        if state.standing == Standing::Waiting {
            state.standing = Standing::Writer;
        }
        drop(state);
        (self.inner.on_change)(Change::Kept);
    }

    // ---- What can be read.

    /// The id.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.inner.id
    }

    /// What this tab may do.
    #[must_use]
    pub fn standing(&self) -> Standing {
        self.inner.state.borrow().standing
    }

    /// The log as it was read last. The entries are handed over: they are not kept twice.
    #[must_use]
    pub fn take_log(&self) -> Opened {
        let mut state = self.inner.state.borrow_mut();
        Opened {
            entries: std::mem::take(&mut state.entries),
            next: state.next,
        }
    }

    /// Every line of the log as it stands in storage.
    #[must_use]
    pub fn lines(&self) -> Lines {
        self.inner.state.borrow().lines.clone()
    }

    /// Lines that could not be read or proved.
    #[must_use]
    pub fn damage(&self) -> Vec<Damage> {
        self.inner.state.borrow().damage.clone()
    }

    /// What has to be said, since it was said last.
    #[must_use]
    pub fn told(&self) -> Vec<StorageNotice> {
        std::mem::take(&mut self.inner.state.borrow_mut().told)
    }

    /// Whether the database was read.
    #[must_use]
    pub fn is_read(&self) -> bool {
        self.inner.state.borrow().is_read
    }

    /// How well the last entry is kept.
    #[must_use]
    pub fn saved(&self) -> Saved {
        self.inner.saved()
    }

    // ---- The one way in which anything changes.

    /// Keeps the next entry. The local copy is written when this returns, the database is under way.
    /// False where this tab may not write; nothing is kept then.
    pub fn append(&self, entry: &Entry) -> bool {
        let inner = &self.inner;
        if !inner.state.borrow().standing.may_write() || !inner.still_marked() {
            return false;
        }
        {
            let mut state = inner.state.borrow_mut();
            let line = state.writer.line(entry);
            let put = Put {
                n: entry.n,
                found: None,
                line: Some(line.clone()),
            };
            state.lines.insert(entry.n, line);
            state.next = entry.n + 1;
            if state.local_wanted {
                state.to_local.insert(entry.n, put.clone());
            }
            state.to_durable.insert(entry.n, put);
        }
        inner.write_local();
        inner.pump();
        true
    }

    /// Whether the match runs, and so belongs into local storage as well.
    pub fn runs(&self, running: bool) {
        let inner = &self.inner;
        let wanted = {
            let mut state = inner.state.borrow_mut();
            let empty = state.lines.keys().all(|n| state.to_local.contains_key(n));
            let before = state.local_wanted;
            // What stands there already stays until the match is put away.
            state.local_wanted = running || (before && !empty);
            if running && !before {
                let puts: Vec<Put> = state.lines.iter().map(|(n, line)| put(*n, line)).collect();
                state.to_local = rules::gather(puts.into_iter().map(|put| (put.n, put)));
            }
            if !state.local_wanted {
                state.to_local.clear();
            }
            state.local_wanted
        };
        if wanted {
            inner.write_local();
        }
    }

    /// Looks whether the storage was emptied or another tab has put its mark on the match, and offers
    /// again what a store has not taken.
    pub fn look(&self) {
        let inner = &self.inner;
        if inner.state.borrow().standing.may_write() && inner.still_marked() {
            inner.write_local();
            inner.write_durable();
        }
    }
}

fn put(n: u32, line: &str) -> Put {
    Put {
        n,
        found: None,
        line: Some(line.to_owned()),
    }
}

impl Inner {
    fn storage(&self) -> &dyn Storage {
        self.store.storage()
    }

    fn saved(&self) -> Saved {
        let state = self.state.borrow();
        let health = self.store.health();
        let durable = state.is_read && health.durable.is_ok();
        let local = !state.local_wanted || (health.local.is_ok() && state.to_local.is_empty());
        let fresh = state.goes_on && health.durable.is_ok();
        match (durable || fresh, local) {
            (true, true) if state.to_durable.is_empty() && state.is_read => Saved::Safe,
            (true, true) => Saved::Saving,
            (false, false) => Saved::MemoryOnly,
            // A copy that is looked at no more, and one that was not read, are none.
            (false, true) if !state.local_wanted => Saved::MemoryOnly,
            (true, false) | (false, true) => Saved::OneCopy,
        }
    }
}
