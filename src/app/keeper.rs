//! The open match in one tab: what of it is in memory, what each store is known to hold, and who may
//! write.
//!
//! The promise is: what was shown as *saved* is never lost. It rests on four rules.
//!
//! * A store that was not read is unknown, never empty: nothing is repaired from it and nothing in it is
//!   replaced. Until the database has been read once, this tab writes nothing there.
//! * The database takes a line only under the mark of the tab that claimed the match last
//!   ([`Written::Robbed`] otherwise), in the same transaction. A robbed tab reads only, before anything
//!   else happens.
//! * Nothing is written over that is not what was found there ([`Written::Differs`] otherwise). Two good
//!   lines of one number are two logs: the one of the database keeps its name, the other is kept as a
//!   match beside it, and that is said.
//! * A mark that is gone means that the storage was emptied: the open match writes itself again.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use super::merge::{merge, Damage, Merged};
use super::ports::{
    line_key, mark_key, split_line_key, Claimed, Lines, Put, Standing, Storage, StorageTrouble,
    Written, LINES,
};
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

    // ---- Local storage.

    /// Puts this tab's mark into local storage.
    fn mark(&self) {
        let outcome = self.storage().set(&mark_key(&self.id), &self.me);
        self.state.borrow_mut().marked = outcome.is_ok();
    }

    /// Whether the mark there is still this tab's. A strange one makes it read only; one that is gone
    /// means that local storage was emptied.
    fn still_marked(self: &Rc<Self>) -> bool {
        match self.storage().get(&mark_key(&self.id)) {
            Ok(Some(mark)) if mark == self.me => true,
            Ok(Some(_)) if self.state.borrow().marked => {
                self.lose();
                false
            }
            Ok(None) if self.state.borrow().marked => {
                self.emptied();
                {
                    let mut state = self.state.borrow_mut();
                    // The database may be empty as well: nothing is called saved before it was read again.
                    state.is_read = false;
                    state.marked_there = false;
                    if state.local_wanted {
                        let all: Vec<Put> = state.lines.iter().map(|(n, l)| put(*n, l)).collect();
                        state.to_local = rules::gather(all.into_iter().map(|put| (put.n, put)));
                    }
                }
                self.mark();
                self.read();
                true
            }
            // It could not be put there, or storage cannot be read now.
            Ok(_) => {
                self.mark();
                true
            }
            Err(_) => true,
        }
    }

    /// The storage was emptied under this tab: what was kept beside the match is gone as well.
    fn emptied(&self) {
        let mut state = self.state.borrow_mut();
        let gone = std::mem::take(&mut state.beside);
        state.beside_again.extend(gone);
        if !state.told.contains(&StorageNotice::Emptied) {
            state.told.push(StorageNotice::Emptied);
        }
    }

    fn local_lines(&self) -> Result<Lines, StorageTrouble> {
        let mut lines = Lines::new();
        for key in self.storage().keys(&format!("{LINES}{}/", self.id))? {
            if let Some((of, n)) = split_line_key(&key) {
                if of == self.id {
                    if let Some(line) = self.storage().get(&key)? {
                        lines.insert(n, line);
                    }
                }
            }
        }
        Ok(lines)
    }

    /// Writes what local storage has not taken yet, up to the first that it refuses. What gives way goes from
    /// the last line back, and what is new comes in order: wherever this is cut off, the copy has no holes,
    /// and what is left of another log begins where that log parts.
    fn write_local(self: &Rc<Self>) {
        if self.state.borrow().local_held {
            (self.on_change)(Change::Kept);
            return;
        }
        let mut outcome = Ok(());
        let mut strange = false;
        loop {
            let next = {
                let state = self.state.borrow();
                let mut puts = state.to_local.values();
                let gives_way = puts.clone().rev().find(|put| put.found.is_some());
                gives_way.or_else(|| puts.next()).cloned()
            };
            let Some(put) = next else {
                break;
            };
            let key = line_key(&self.id, put.n);
            outcome = self.storage().get(&key).and_then(|there| {
                if there == put.line {
                    Ok(())
                } else if there == put.found {
                    match &put.line {
                        Some(line) => self.storage().set(&key, line),
                        None => self.storage().remove(&key),
                    }
                } else {
                    strange = true;
                    Ok(())
                }
            });
            if outcome.is_err() || strange {
                break;
            }
            self.state.borrow_mut().to_local.remove(&put.n);
        }
        self.store.local_went(outcome);
        if strange {
            self.read();
        }
        (self.on_change)(Change::Kept);
    }

    // ---- The database.

    /// Writes what the database has not taken yet, unless that is under way.
    fn pump(self: &Rc<Self>) {
        let idle = self.state.borrow().to_durable.is_empty();
        if !idle {
            self.write_durable();
        }
    }

    /// The same even where there is nothing to write: the answer says whose mark is there.
    fn write_durable(self: &Rc<Self>) {
        let puts: Vec<Put> = {
            let state = self.state.borrow();
            if !state.is_read || !state.standing.may_write() {
                return;
            }
            state.to_durable.values().cloned().collect()
        };
        if self.reading.get() || self.pumping.replace(true) {
            return;
        }
        let (this, turn) = (Rc::clone(self), self.turn.get());
        let asked = self.storage().write(&self.id, &self.me, puts.clone());
        self.storage().spawn(Box::pin(async move {
            let outcome = asked.await;
            this.pumping.set(false);
            this.written(turn, puts, outcome);
        }));
    }

    fn written(
        self: &Rc<Self>,
        turn: u32,
        puts: Vec<Put>,
        outcome: Result<Written, StorageTrouble>,
    ) {
        let failed = outcome.as_ref().err().cloned();
        self.store.durable_went(failed.clone().map_or(Ok(()), Err));
        match outcome {
            Ok(Written::Done) => {
                {
                    let mut state = self.state.borrow_mut();
                    for put in puts {
                        if state.to_durable.get(&put.n) == Some(&put) {
                            state.to_durable.remove(&put.n);
                        }
                    }
                }
                (self.on_change)(Change::Kept);
                self.pump();
            }
            _ if turn != self.turn.get() => self.pump(),
            // A closed match leaves what it could not write to whoever opens it next.
            Ok(Written::Robbed | Written::Differs) if self.closed.get() => {}
            Ok(Written::Robbed) => self.lose(),
            Ok(Written::Differs) => self.read(),
            Ok(Written::Gone) => {
                self.state.borrow_mut().is_read = false;
                self.read();
            }
            Err(_) => {
                (self.on_change)(Change::Kept);
                self.try_later(failed.as_ref());
            }
        }
    }

    /// Tries again after a while; storage that is full or forbidden is tried with the next line.
    fn try_later(self: &Rc<Self>, trouble: Option<&StorageTrouble>) {
        let may_pass = matches!(
            trouble,
            Some(StorageTrouble::Lost | StorageTrouble::Unknown(_))
        );
        if !may_pass || self.retrying.replace(true) {
            return;
        }
        let this = Rc::clone(self);
        let wait = self.storage().wait(RETRY_MS);
        self.storage().spawn(Box::pin(async move {
            wait.await;
            this.retrying.set(false);
            this.pump();
        }));
    }

    /// Another tab writes now. Reading only comes first; what of this tab's lines the other one does not
    /// have is looked for afterwards.
    fn lose(self: &Rc<Self>) {
        self.turn.set(self.turn.get() + 1);
        {
            let mut state = self.state.borrow_mut();
            state.has_lock = false;
            state.robbed = true;
            state.standing = Standing::ReadOnly { robbed: true };
            state.to_local.clear();
            state.to_durable.clear();
        }
        (self.on_change)(Change::Kept);
        self.read();
    }

    // ---- Reading.

    /// Reads the match anew, after what is being read now.
    fn read(self: &Rc<Self>) {
        if self.reading.replace(true) {
            self.read_again.set(true);
            return;
        }
        let this = Rc::clone(self);
        self.storage().spawn(Box::pin(async move {
            loop {
                this.read_again.set(false);
                let whole = this.read_once().await;
                if this.closed.get() || (whole && !this.read_again.get()) {
                    break;
                }
                if !whole {
                    this.storage().wait(RETRY_MS).await;
                }
                if this.closed.get() {
                    break;
                }
            }
            this.reading.set(false);
            this.pump();
        }));
    }

    /// Says whether the database was read, and all that was found is kept.
    async fn read_once(self: &Rc<Self>) -> bool {
        let turn = self.turn.get();
        let writes = self.state.borrow().has_lock;
        let found = if writes {
            self.storage().claim(&self.id, &self.me).await
        } else {
            let lines = self.storage().lines(&self.id).await;
            lines.map(|lines| Claimed {
                lines,
                was_marked: true,
            })
        };
        if turn != self.turn.get() {
            // Somebody else writes by now.
            self.read_again.set(true);
            return true;
        }
        let durable = match found {
            Ok(claimed) => {
                let marked = self.state.borrow().marked_there;
                if writes && marked && !claimed.was_marked {
                    self.emptied();
                }
                self.state.borrow_mut().marked_there = writes;
                claimed.lines
            }
            Err(trouble) => {
                self.store.durable_went(Err(trouble));
                self.show_without_database(writes);
                // Where storage is forbidden there is nothing to wait for.
                return self.store.health().durable == Err(StorageTrouble::Refused);
            }
        };
        self.store.durable_went(Ok(()));
        let local = self.local_lines();
        self.store
            .local_went(local.as_ref().map(|_| ()).map_err(Clone::clone));
        // What local storage would not say counts as not there for reading, and is not repaired.
        loop {
            let local_now = local.clone().unwrap_or_default();
            let merged = {
                let state = self.state.borrow();
                if writes {
                    merge(&[&durable, &state.lines, &local_now])
                } else {
                    merge(&[&durable, &local_now])
                }
            };
            let branch = self.not_kept(&merged, writes);
            let Some(branch) = branch else {
                self.adopt(merged, writes, Some(&durable), local.is_ok());
                return true;
            };
            if self.keep_beside(branch, &merged.lines).await.is_err() {
                return false;
            }
            if turn != self.turn.get() {
                self.read_again.set(true);
                return true;
            }
        }
    }

    /// A log that parts from the one that was read and is kept nowhere yet.
    fn not_kept(&self, merged: &Merged, writes: bool) -> Option<Lines> {
        let state = self.state.borrow();
        let mut branches = merged.branches.clone();
        branches.extend(state.beside_again.iter().cloned());
        if !writes && state.robbed {
            let mine = merge(&[&merged.lines, &state.lines]);
            // A line of this tab that stands nowhere else: the rest of its log is kept with it.
            let is_apart = state.lines.iter().any(|(n, line)| {
                merged.lines.get(n) != Some(line) && mine.lines.get(n) == Some(line)
            });
            if is_apart {
                branches.push(state.lines.clone());
            } else {
                branches.extend(mine.branches);
            }
        }
        branches.into_iter().find(|b| !state.beside.contains(b))
    }

    /// Keeps a log as a match of its own.
    async fn keep_beside(&self, branch: Lines, main: &Lines) -> Result<(), StorageTrouble> {
        let id = self.store.insert_beside(&self.id, &branch).await?;
        let apart = |(n, line): &(&u32, &String)| main.get(n) != Some(line);
        let entries = branch.iter().filter(apart).count();
        let mut state = self.state.borrow_mut();
        state.told.push(StorageNotice::Beside { id, entries });
        state.beside.push(branch);
        Ok(())
    }

    /// Shows what there is without the database.
    fn show_without_database(self: &Rc<Self>, writes: bool) {
        let shown = {
            let state = self.state.borrow();
            match state.standing {
                Standing::Asking => false,
                Standing::Waiting | Standing::Writer => true,
                Standing::ReadOnly { .. } => !writes && !state.lines.is_empty(),
            }
        };
        if shown {
            // The log in memory goes on.
            (self.on_change)(Change::Kept);
            return;
        }
        let local = self.local_lines();
        self.store
            .local_went(local.as_ref().map(|_| ()).map_err(Clone::clone));
        let merged = {
            let state = self.state.borrow();
            let local = local.clone().unwrap_or_default();
            merge(&[&state.lines, &local])
        };
        self.adopt(merged, writes, None, local.is_ok());
    }

    /// Takes over what was read.
    fn adopt(
        self: &Rc<Self>,
        mut merged: Merged,
        writes: bool,
        durable: Option<&Lines>,
        local_read: bool,
    ) {
        let to_local = merged.repairs.pop().unwrap_or_default();
        let to_durable = merged.repairs.into_iter().next().unwrap_or_default();
        {
            let mut state = self.state.borrow_mut();
            let shown = matches!(state.standing, Standing::Waiting | Standing::Writer);
            let late = durable.is_some() && !state.is_read && shown;
            let more = merged
                .lines
                .keys()
                .filter(|n| !state.lines.contains_key(n))
                .count();
            if late && writes && more > 0 && !state.lines.is_empty() {
                let more = u32::try_from(more).unwrap_or(u32::MAX);
                state.told.push(StorageNotice::CameLate(more));
            }
            if !merged.mended.is_empty() && durable.is_some() && writes {
                state.told.push(StorageNotice::Mended(merged.mended));
            }
            state.lines = merged.lines;
            state.entries = merged.entries;
            state.next = merged.next;
            state.writer = merged.writer;
            state.damage = merged.damage;
            state.is_read = durable.is_some();
            // What parts from this log is kept beside it as soon as the database answers.
            state.local_held = durable.is_none() && !merged.branches.is_empty();
            let by_number =
                |puts: Vec<Put>| rules::gather(puts.into_iter().map(|put| (put.n, put)));
            state.to_durable = match durable {
                Some(_) => by_number(to_durable),
                None => BTreeMap::new(),
            };
            let forbidden = self.store.health().durable == Err(StorageTrouble::Refused);
            state.standing = match (writes, durable) {
                (false, _) => Standing::ReadOnly {
                    robbed: state.robbed,
                },
                (true, None) if !state.goes_on && !forbidden => Standing::Waiting,
                (true, _) => Standing::Writer,
            };
            let may = state.standing.may_write() && local_read;
            state.to_local = if may {
                by_number(to_local)
            } else {
                BTreeMap::new()
            };
        }
        // Whoever reads the log says whether the match runs; what local storage lacks is written then.
        (self.on_change)(Change::Log);
        if self.state.borrow().standing.may_write() {
            self.write_local();
        } else {
            (self.on_change)(Change::Kept);
        }
    }
}
