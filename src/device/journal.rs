//! The write path of a match: every line once, in order, in two copies.
//!
//! A line goes to local storage before [`Journal::append`] returns, so that the screen never
//! shows what is not kept, and to IndexedDB at the same moment; only when the latter says so it
//! is safe. Lines are opaque here, their check sums included: which copy is the longer valid
//! one is decided by whoever can read them.
//!
//! What a store would not take stays in memory and is offered to it again, so a match goes on
//! in memory alone where a browser refuses everything.

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::rc::Rc;

use wasm_bindgen_futures::spawn_local;

use super::durable::Durable;
use super::listen::{after, on_resume, Listeners, Ticker, Watch, Watchers};
use super::local;
use super::trouble::StorageTrouble;

/// After a failure that may pass by itself, the durable copy is tried again after this long.
/// Our own choice: often enough to catch up between two rallies, rare enough not to tire a
/// phone.
const RETRY_MS: u32 = 5_000;

/// How the two copies fare.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Health {
    /// Local storage: written at once.
    pub local: Result<(), StorageTrouble>,
    /// IndexedDB: safe on disk.
    pub durable: Result<(), StorageTrouble>,
}

impl Health {
    /// Whether both copies are being kept.
    pub fn is_fine(&self) -> bool {
        self.local.is_ok() && self.durable.is_ok()
    }

    /// Whether new lines are in memory alone, so that closing the page loses them.
    pub fn memory_only(&self) -> bool {
        self.local.is_err() && self.durable.is_err()
    }
}

/// What a journal tells those who watch it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Notice {
    /// Every line of the match `id` up to this number is on disk. It falls only where somebody
    /// cleared the browser's storage meanwhile; [`Journal::repair`] with the lines in memory
    /// then keeps them again.
    Safe {
        /// The match.
        id: String,
        /// The number of its last safe line.
        upto: u32,
    },
    /// A copy began to fail, or to work again.
    Health(Health),
}

/// Both copies of a match as they were found, each ascending by number.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Copies {
    /// From local storage and, where that took nothing, from memory.
    pub local: Vec<(u32, String)>,
    /// From IndexedDB.
    pub durable: Vec<(u32, String)>,
}

type Line = (String, u32);

/// Which lines of a match are on disk.
#[derive(Default)]
struct OnDisk {
    // All from 1 up to this one,
    upto: u32,
    // and these, whose forerunners are not there yet.
    beyond: BTreeSet<u32>,
}

impl OnDisk {
    fn add(&mut self, n: u32) {
        self.beyond.insert(n);
        while self.beyond.remove(&(self.upto.saturating_add(1))) {
            self.upto += 1;
        }
    }
}

impl FromIterator<u32> for OnDisk {
    fn from_iter<I: IntoIterator<Item = u32>>(numbers: I) -> Self {
        let mut on_disk = OnDisk::default();
        for n in numbers {
            on_disk.add(n);
        }
        on_disk
    }
}

/// The journal of every match on this phone. Clones are the same journal.
#[derive(Clone)]
pub struct Journal {
    inner: Rc<Inner>,
}

struct Inner {
    durable: Durable,
    health: RefCell<Health>,
    // Lines each store has not taken yet, in order.
    not_local: RefCell<BTreeMap<Line, String>>,
    not_durable: RefCell<BTreeMap<Line, String>>,
    // What is known to be in the durable copy, by match, and how often that copy had been made
    // when it was learnt.
    on_disk: RefCell<HashMap<String, OnDisk>>,
    made: Cell<u32>,
    // Whether everything unsaved is being written to IndexedDB just now, and whether there is
    // something unsaved that nothing under way will write.
    catching_up: Cell<bool>,
    behind: Cell<bool>,
    retry: RefCell<Option<Ticker>>,
    watchers: Rc<Watchers<Notice>>,
    resumed: RefCell<Option<Listeners>>,
}

impl Journal {
    /// Opens both stores. Never fails: what is wrong with them is in [`Journal::health`], the
    /// local one at once, the other as soon as the browser has said so.
    pub fn open() -> Journal {
        let inner = Rc::new(Inner {
            durable: Durable::default(),
            health: RefCell::new(Health {
                local: local::probe(),
                durable: Ok(()),
            }),
            not_local: RefCell::default(),
            not_durable: RefCell::default(),
            on_disk: RefCell::default(),
            made: Cell::new(0),
            catching_up: Cell::new(false),
            behind: Cell::new(false),
            retry: RefCell::default(),
            watchers: Watchers::new(),
            resumed: RefCell::default(),
        });
        let weak = Rc::downgrade(&inner);
        *inner.resumed.borrow_mut() = Some(on_resume(move || {
            if let Some(inner) = weak.upgrade() {
                Journal { inner }.retry();
            }
        }));
        let journal = Journal { inner };
        // Writing nothing opens the database and tells whether it can be written to.
        let opening = journal.clone();
        spawn_local(async move {
            let outcome = opening.inner.durable.put(&[]).await;
            opening.durable_went(outcome);
        });
        journal
    }

    /// Keeps line `n` of a match. The local copy is written when this returns; the durable one
    /// is under way, and [`Notice::Safe`] follows.
    ///
    /// # Errors
    /// Where local storage did not take the line. It is then held in memory and offered again
    /// with the next one, so the match goes on; nothing has to be undone.
    pub fn append(&self, id: &str, n: u32, line: &str) -> Result<(), StorageTrouble> {
        let key = (id.to_owned(), n);
        let mut unsaved = self.inner.not_local.borrow_mut();
        unsaved.insert(key.clone(), line.to_owned());
        drop(unsaved);
        let outcome = self.catch_up_local();

        self.inner
            .not_durable
            .borrow_mut()
            .insert(key.clone(), line.to_owned());
        let journal = self.clone();
        if self.inner.health.borrow().durable.is_ok() {
            let batch = [(key.0, key.1, line.to_owned())];
            spawn_local(async move {
                let outcome = journal.inner.durable.put(&batch).await;
                journal.taken(&batch, outcome);
            });
        } else {
            self.catch_up_durable();
        }
        outcome
    }

    /// The number of the last line of this match that is safely on disk together with every
    /// line before it. 0 while nothing is, or before the match was read.
    pub fn safe_upto(&self, id: &str) -> u32 {
        let known = self
            .inner
            .on_disk
            .borrow()
            .get(id)
            .map_or(0, |on_disk| on_disk.upto);
        match first_of(&self.inner.not_durable.borrow(), id) {
            Some(missing) => known.min(missing.saturating_sub(1)),
            None => known,
        }
    }

    /// How the two copies fare now.
    pub fn health(&self) -> Health {
        self.inner.health.borrow().clone()
    }

    /// Calls `f` when lines became safe and when a copy's health changed. It may call back.
    pub fn watch(&self, f: impl Fn(&Notice) + 'static) -> Watch {
        self.inner.watchers.add(f)
    }

    /// Offers everything unsaved to both stores again. Also done with each line, when the page
    /// comes back, and after a while where a store was lost.
    pub fn retry(&self) {
        // The outcome is in the health.
        let _ = self.catch_up_local();
        self.catch_up_durable();
    }

    /// For a page that is about to go, which would take along what is on its way: writes to the disk
    /// whatever is not there yet. Says whether every line is now in one of the two copies at least.
    pub async fn settle(&self) -> bool {
        let batch = self.not_durable();
        if !batch.is_empty() && self.health().durable.is_ok() {
            let outcome = self.inner.durable.put(&batch).await;
            self.taken(&batch, outcome);
        }
        let not_durable = self.inner.not_durable.borrow();
        let not_local = self.inner.not_local.borrow();
        not_local.keys().all(|line| !not_durable.contains_key(line))
    }

    /// The id of every match found in either store or in memory, sorted.
    pub async fn ids(&self) -> Vec<String> {
        let mut ids = BTreeSet::new();
        // What cannot be read is in the health, and the other copy still counts.
        match local::keys(local::LINES) {
            Ok(keys) => ids.extend(
                keys.iter()
                    .filter_map(|key| Some(local::split_line_key(key)?.0.to_owned())),
            ),
            Err(trouble) => self.local_went(Err(trouble)),
        }
        ids.extend(
            self.inner
                .not_local
                .borrow()
                .keys()
                .map(|(id, _)| id.clone()),
        );
        match self.inner.durable.ids().await {
            Ok(found) => ids.extend(found),
            Err(trouble) => self.durable_went(Err(trouble)),
        }
        ids.into_iter().collect()
    }

    /// Both copies of every match, in one go: for a list of them, where one
    /// [`Journal::read_all`] after the other would look through everything each time.
    pub async fn read_every(&self) -> BTreeMap<String, Copies> {
        let mut local: BTreeMap<Line, String> = BTreeMap::new();
        match local::keys(local::LINES) {
            Ok(names) => {
                for name in names {
                    if let (Some((id, n)), Ok(Some(line))) =
                        (local::split_line_key(&name), local::get(&name))
                    {
                        local.insert((id.to_owned(), n), line);
                    }
                }
            }
            Err(trouble) => self.local_went(Err(trouble)),
        }
        local.extend(self.inner.not_local.borrow().clone());
        let durable = match self.inner.durable.every_line().await {
            Ok(lines) => lines,
            Err(trouble) => {
                self.durable_went(Err(trouble));
                Vec::new()
            }
        };
        let mut every: BTreeMap<String, Copies> = BTreeMap::new();
        for ((id, n), line) in local {
            every.entry(id).or_default().local.push((n, line));
        }
        for ((id, n), line) in durable {
            every.entry(id).or_default().durable.push((n, line));
        }
        every
    }

    /// Both copies of a match. A copy that cannot be read is empty, and the health says why.
    pub async fn read_all(&self, id: &str) -> Copies {
        let mut copy: BTreeMap<u32, String> = match self.local_lines(id) {
            Ok(lines) => lines,
            Err(trouble) => {
                self.local_went(Err(trouble));
                BTreeMap::new()
            }
        };
        copy.extend(of_match(&self.inner.not_local.borrow(), id));
        let durable = match self.inner.durable.lines(id).await {
            Ok(lines) => {
                self.learn(id, lines.iter().map(|(n, _)| *n));
                lines
            }
            Err(trouble) => {
                self.durable_went(Err(trouble));
                Vec::new()
            }
        };
        Copies {
            local: copy.into_iter().collect(),
            durable,
        }
    }

    /// Makes both copies hold exactly these lines, and no other of this match. What must not be
    /// lost is exported before. Only where the copies differ: the durable one is written anew.
    ///
    /// # Errors
    /// The first trouble met; the other copy is put right all the same.
    pub async fn repair(&self, id: &str, lines: &[(u32, String)]) -> Result<(), StorageTrouble> {
        let wanted: BTreeMap<u32, &str> =
            lines.iter().map(|(n, line)| (*n, line.as_str())).collect();
        forget_in(&mut self.inner.not_local.borrow_mut(), id);
        forget_in(&mut self.inner.not_durable.borrow_mut(), id);

        let local = self.repair_local(id, &wanted);
        self.local_went(local.clone());
        let durable = self.repair_durable(id, &wanted).await;
        if durable.is_ok() {
            self.learn(id, wanted.keys().copied());
        }
        self.durable_went(durable.clone());
        self.tell_safe(id);
        local.and(durable)
    }

    /// Forgets a match in both stores and in memory.
    ///
    /// # Errors
    /// Where a store could not be told to; the match may then come back.
    pub async fn forget(&self, id: &str) -> Result<(), StorageTrouble> {
        forget_in(&mut self.inner.not_local.borrow_mut(), id);
        forget_in(&mut self.inner.not_durable.borrow_mut(), id);
        self.inner.on_disk.borrow_mut().remove(id);
        let local = self.local_lines(id).and_then(|lines| {
            lines
                .keys()
                .try_for_each(|n| local::remove(&local::line_key(id, *n)))
        });
        let durable = self.inner.durable.forget(id).await;
        self.durable_went(durable.clone());
        local.and(durable)
    }

    /// Forgets every match, and every setting with them.
    ///
    /// # Errors
    /// Where a store could not be told to.
    pub async fn forget_all(&self) -> Result<(), StorageTrouble> {
        self.inner.not_local.borrow_mut().clear();
        self.inner.not_durable.borrow_mut().clear();
        self.inner.on_disk.borrow_mut().clear();
        let local = local::keys(local::OURS)
            .and_then(|keys| keys.iter().try_for_each(|key| local::remove(key)));
        let durable = self.inner.durable.forget_all().await;
        self.durable_went(durable.clone());
        local.and(durable)
    }

    fn local_lines(&self, id: &str) -> Result<BTreeMap<u32, String>, StorageTrouble> {
        let mut lines = BTreeMap::new();
        for name in local::keys(local::LINES)? {
            if let Some((of, n)) = local::split_line_key(&name) {
                if of == id {
                    if let Some(line) = local::get(&name)? {
                        lines.insert(n, line);
                    }
                }
            }
        }
        Ok(lines)
    }

    fn repair_local(&self, id: &str, wanted: &BTreeMap<u32, &str>) -> Result<(), StorageTrouble> {
        let found = self.local_lines(id);
        // Until each is written, a line counts as unsaved, so that a store that fills up in the
        // middle leaves the rest in memory.
        self.inner.not_local.borrow_mut().extend(
            wanted
                .iter()
                .filter(|(n, line)| {
                    found
                        .as_ref()
                        .is_ok_and(|found| found.get(n).map(String::as_str) != Some(line))
                        || found.is_err()
                })
                .map(|(n, line)| ((id.to_owned(), *n), (*line).to_owned())),
        );
        for n in found?.keys().filter(|n| !wanted.contains_key(n)) {
            local::remove(&local::line_key(id, *n))?;
        }
        self.catch_up_local()
    }

    async fn repair_durable(
        &self,
        id: &str,
        wanted: &BTreeMap<u32, &str>,
    ) -> Result<(), StorageTrouble> {
        let lines: Vec<(String, u32, String)> = wanted
            .iter()
            .map(|(n, line)| (id.to_owned(), *n, (*line).to_owned()))
            .collect();
        let outcome = self.inner.durable.replace(id, &lines).await;
        if outcome.is_err() {
            let lines = lines.into_iter().map(|(id, n, line)| ((id, n), line));
            self.inner.not_durable.borrow_mut().extend(lines);
            self.inner.behind.set(true);
        }
        outcome
    }

    /// Writes what local storage has not taken yet, in order, up to the first that it refuses:
    /// the copy has no holes.
    fn catch_up_local(&self) -> Result<(), StorageTrouble> {
        let mut outcome = Ok(());
        let mut unsaved = self.inner.not_local.borrow_mut();
        while let Some(line) = unsaved.first_entry() {
            let (id, n) = line.key();
            outcome = local::set(&local::line_key(id, *n), line.get());
            if outcome.is_err() {
                break;
            }
            line.remove();
        }
        drop(unsaved);
        self.local_went(outcome.clone());
        outcome
    }

    /// Everything that the durable copy has not taken yet.
    fn not_durable(&self) -> Vec<(String, u32, String)> {
        let unsaved = self.inner.not_durable.borrow();
        let lines = unsaved.iter();
        lines
            .map(|((id, n), line)| (id.clone(), *n, line.clone()))
            .collect()
    }

    /// Writes all of that in one go.
    fn catch_up_durable(&self) {
        let batch = self.not_durable();
        if self.inner.catching_up.get() {
            self.inner.behind.set(true);
            return;
        }
        if batch.is_empty() && self.inner.health.borrow().durable.is_ok() {
            return;
        }
        self.inner.catching_up.set(true);
        let journal = self.clone();
        spawn_local(async move {
            let outcome = journal.inner.durable.put(&batch).await;
            journal.inner.catching_up.set(false);
            journal.taken(&batch, outcome);
        });
    }

    /// The durable copy has taken these lines, or not.
    fn taken(&self, batch: &[(String, u32, String)], outcome: Result<(), StorageTrouble>) {
        self.mind_cleared_storage();
        let mut touched = BTreeSet::new();
        if outcome.is_ok() {
            let mut unsaved = self.inner.not_durable.borrow_mut();
            let mut on_disk = self.inner.on_disk.borrow_mut();
            for (id, n, line) in batch {
                let key = (id.clone(), *n);
                // Gone already when the match was forgotten or repaired meanwhile; another line
                // when it was written over.
                if unsaved.get(&key) != Some(line) {
                    continue;
                }
                unsaved.remove(&key);
                on_disk.entry(id.clone()).or_default().add(*n);
                touched.insert(id.as_str());
            }
        } else {
            self.inner.behind.set(true);
        }
        self.durable_went(outcome);
        for id in touched {
            self.tell_safe(id);
        }
    }

    /// Where the durable copy was emptied under the open page, nothing of what was on disk is any
    /// more: offers it what local storage still has, and says so.
    fn mind_cleared_storage(&self) {
        let made = self.inner.durable.times_made();
        if self.inner.made.replace(made) == made {
            return;
        }
        let gone = self.inner.on_disk.take();
        for id in gone.keys() {
            if let Ok(lines) = self.local_lines(id) {
                let lines = lines.into_iter().map(|(n, line)| ((id.clone(), n), line));
                self.inner.not_durable.borrow_mut().extend(lines);
                self.inner.behind.set(true);
            }
            self.tell_safe(id);
        }
    }

    fn learn(&self, id: &str, numbers: impl Iterator<Item = u32>) {
        self.mind_cleared_storage();
        self.inner
            .on_disk
            .borrow_mut()
            .insert(id.to_owned(), numbers.collect());
    }

    fn tell_safe(&self, id: &str) {
        self.inner.watchers.tell(&Notice::Safe {
            id: id.to_owned(),
            upto: self.safe_upto(id),
        });
    }

    fn local_went(&self, outcome: Result<(), StorageTrouble>) {
        self.health_went(|health| health.local = outcome);
    }

    fn durable_went(&self, outcome: Result<(), StorageTrouble>) {
        // Chromium that forbids storage says so of the local one, but of the other only that
        // it would not open, which elsewhere passes.
        let forbidden = self.inner.health.borrow().local == Err(StorageTrouble::Refused)
            && self.inner.durable.never_opened();
        let outcome = match outcome {
            Err(StorageTrouble::Lost) if forbidden => Err(StorageTrouble::Refused),
            outcome => outcome,
        };
        let may_pass = matches!(
            outcome,
            Err(StorageTrouble::Lost | StorageTrouble::Unknown(_))
        );
        let later = may_pass.then(|| {
            let weak = Rc::downgrade(&self.inner);
            after(RETRY_MS, move || {
                if let Some(inner) = weak.upgrade() {
                    Journal { inner }.catch_up_durable();
                }
            })
        });
        *self.inner.retry.borrow_mut() = later;
        let works = outcome.is_ok();
        self.health_went(|health| health.durable = outcome);
        if works && self.inner.behind.replace(false) {
            self.catch_up_durable();
        }
    }

    fn health_went(&self, change: impl FnOnce(&mut Health)) {
        let mut health = self.inner.health.borrow_mut();
        let before = health.clone();
        change(&mut health);
        let now = health.clone();
        drop(health);
        if now != before {
            self.inner.watchers.tell(&Notice::Health(now));
        }
    }
}

fn range(id: &str) -> std::ops::RangeInclusive<Line> {
    (id.to_owned(), 0)..=(id.to_owned(), u32::MAX)
}

fn first_of(lines: &BTreeMap<Line, String>, id: &str) -> Option<u32> {
    lines.range(range(id)).next().map(|((_, n), _)| *n)
}

fn of_match(lines: &BTreeMap<Line, String>, id: &str) -> Vec<(u32, String)> {
    lines
        .range(range(id))
        .map(|((_, n), line)| (*n, line.clone()))
        .collect()
}

fn forget_in(lines: &mut BTreeMap<Line, String>, id: &str) {
    lines.retain(|(of, _), _| of != id);
}
