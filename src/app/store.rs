//! All matches on this phone: read, listed, taken in, put away and forgotten.
//!
//! A match that runs stands in local storage and in the database; one that is over stands in the
//! database alone, with a summary beside it. It is moved only when the database is known to hold every
//! line, read back after the write.

use std::cell::{Cell, RefCell};
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use super::merge::{merge, Merged};
use super::ports::{
    line_key, mark_key, split_line_key, Health, Lines, Pending, Storage, StorageTrouble, Written,
    LINES,
};
use super::summary::Summary;
use game::Timeline;

/// So many summaries are read in one task.
const READ_AT_ONCE: usize = 50;

/// The stores of this phone. Clones are the same.
#[derive(Clone)]
pub struct Store {
    inner: Rc<Inner>,
}

type Watcher = dyn Fn(&Health);

struct Inner {
    storage: Rc<dyn Storage>,
    health: RefCell<Health>,
    ever_read: Cell<bool>,
    // What a match that was closed could not write yet.
    left: RefCell<BTreeMap<String, Lines>>,
    on_health: RefCell<Vec<Rc<Watcher>>>,
}

/// What a list has at once, without folding anything.
#[derive(Clone, Debug, Default)]
pub struct Listing {
    /// Matches whose summaries stand in the database.
    pub summaries: BTreeMap<String, Summary>,
    /// Matches that have to be read: those with lines in local storage.
    pub unread: BTreeSet<String>,
    /// Whether the database has answered.
    pub is_whole: bool,
}

/// A match that was read without being opened.
#[derive(Clone, Debug, Default)]
pub struct Found {
    /// What its copies give together.
    pub merged: Merged,
    /// Whether the database was among them.
    pub is_whole: bool,
}

impl Found {
    /// Its summary, given its fold.
    #[must_use]
    pub fn summary(&self, timeline: &Timeline) -> Summary {
        let merged = &self.merged;
        let link = merged.writer.link().digits();
        let last = merged.next.saturating_sub(1);
        Summary::of(timeline, last, link, merged.damage.len())
    }
}

/// What came of putting a match away.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tidied {
    /// It stands in the database alone.
    Moved,
    /// It stays in both stores.
    Stays,
}

impl Store {
    /// Over these stores.
    #[must_use]
    pub fn new(storage: Rc<dyn Storage>, local: Result<(), StorageTrouble>) -> Store {
        Store {
            inner: Rc::new(Inner {
                storage,
                health: RefCell::new(Health {
                    local,
                    durable: Ok(()),
                }),
                ever_read: Cell::new(false),
                left: RefCell::default(),
                on_health: RefCell::default(),
            }),
        }
    }

    pub(super) fn storage(&self) -> &dyn Storage {
        &*self.inner.storage
    }

    /// An id that no match has.
    #[must_use]
    pub fn new_id(&self) -> String {
        self.storage().unique()
    }

    /// Does something by and by.
    pub fn spawn(&self, work: Pending<()>) {
        self.storage().spawn(work);
    }

    /// Waits so many milliseconds.
    #[must_use]
    pub fn pause(&self, ms: u32) -> Pending<()> {
        self.storage().wait(ms)
    }

    /// How the two copies fare now.
    #[must_use]
    pub fn health(&self) -> Health {
        self.inner.health.borrow().clone()
    }

    /// Calls `f` whenever that changes.
    pub fn on_health(&self, f: impl Fn(&Health) + 'static) {
        self.inner.on_health.borrow_mut().push(Rc::new(f));
    }

    pub(super) fn local_went(&self, outcome: Result<(), StorageTrouble>) {
        self.went(|health| health.local = outcome);
    }

    pub(super) fn durable_went(&self, outcome: Result<(), StorageTrouble>) {
        if outcome.is_ok() {
            self.inner.ever_read.set(true);
        }
        // Chromium that forbids storage says so of the local one, but of the other only that it would
        // not open, which elsewhere passes.
        let forbidden = self.inner.health.borrow().local == Err(StorageTrouble::Refused)
            && !self.inner.ever_read.get();
        let outcome = match outcome {
            Err(StorageTrouble::Lost) if forbidden => Err(StorageTrouble::Refused),
            outcome => outcome,
        };
        self.went(|health| health.durable = outcome);
    }

    fn went(&self, change: impl FnOnce(&mut Health)) {
        let (before, now) = {
            let mut health = self.inner.health.borrow_mut();
            let before = health.clone();
            change(&mut health);
            (before, health.clone())
        };
        if now != before {
            let told = self.inner.on_health.borrow().clone();
            for f in told {
                f(&now);
            }
        }
    }

    pub(super) fn leave(&self, id: &str, lines: Lines) {
        self.inner.left.borrow_mut().insert(id.to_owned(), lines);
    }

    pub(super) fn left(&self, id: &str) -> Lines {
        self.inner.left.borrow_mut().remove(id).unwrap_or_default()
    }

    // ---- Lists.

    /// The lines that local storage has, by match.
    fn local_ids(&self) -> BTreeSet<String> {
        match self.storage().keys(LINES) {
            Ok(keys) => {
                let ids = keys.iter().filter_map(|key| split_line_key(key));
                rules::gather(ids.map(|(id, _)| id.to_owned()))
            }
            Err(trouble) => {
                self.local_went(Err(trouble));
                BTreeSet::new()
            }
        }
    }

    /// What can be listed at once.
    pub async fn list(&self) -> Listing {
        let unread = self.local_ids();
        let found = self.storage().summaries().await;
        self.durable_went(found.as_ref().map(|_| ()).map_err(Clone::clone));
        let is_whole = found.is_ok();
        let summaries = found.unwrap_or_default();
        let mut known = BTreeMap::new();
        for (count, (id, text)) in (1..).zip(summaries) {
            if count % READ_AT_ONCE == 0 {
                self.pause(0).await;
            }
            if let (false, Some(summary)) = (unread.contains(&id), Summary::read(&text)) {
                known.insert(id, summary);
            }
        }
        Listing {
            summaries: known,
            unread,
            is_whole,
        }
    }

    /// Matches of the database that a listing lacks, or that have gone on since they were summarized; `known`
    /// gives the last line of one that is listed.
    ///
    /// # Errors
    /// Where the database does not answer.
    pub async fn not_summarized(
        &self,
        known: impl Fn(&str) -> Option<u32>,
    ) -> Result<Vec<String>, StorageTrouble> {
        let index = self.storage().index().await?;
        let stale = |(id, last): &(String, u32)| known(id) != Some(*last);
        let ids = index.last.into_iter().filter(stale);
        Ok(ids.map(|(id, _)| id).collect())
    }

    /// Every id, for what concerns all of them.
    ///
    /// # Errors
    /// Where the database does not answer.
    pub async fn ids(&self) -> Result<BTreeSet<String>, StorageTrouble> {
        let mut ids = self.local_ids();
        ids.extend(self.storage().index().await?.last.into_keys());
        Ok(ids)
    }

    /// Reads a match without opening it, and changes nothing.
    pub async fn read(&self, id: &str) -> Found {
        let durable = self.storage().lines(id).await;
        let is_whole = durable.is_ok();
        self.durable_went(durable.as_ref().map(|_| ()).map_err(Clone::clone));
        let local = self.local_lines(id).unwrap_or_default();
        Found {
            merged: merge(&[&durable.unwrap_or_default(), &local]),
            is_whole,
        }
    }

    fn local_lines(&self, id: &str) -> Result<Lines, StorageTrouble> {
        let mut lines = Lines::new();
        for key in self.storage().keys(&format!("{LINES}{id}/"))? {
            match split_line_key(&key) {
                Some((of, n)) if of == id => {
                    if let Some(line) = self.storage().get(&key)? {
                        lines.insert(n, line);
                    }
                }
                _ => {}
            }
        }
        Ok(lines)
    }

    /// Keeps the summary of a match that has none.
    pub async fn summarize(&self, id: &str, summary: &Summary) {
        // One that is not kept is made again next time.
        let _ = self.storage().summarize(id, summary.write()).await;
    }

    // ---- Whole matches. The caller holds the match's lock.

    /// Moves a match that is over out of local storage, once the database has it for certain.
    ///
    /// # Errors
    /// Where a store does not answer; the match then stays as it is.
    pub async fn tidy(&self, id: &str) -> Result<Tidied, StorageTrouble> {
        let mark = self.storage().unique();
        let durable = self.storage().claim(id, &mark).await?.lines;
        let local = self.local_lines(id)?;
        let merged = merge(&[&durable, &local]);
        if !merged.branches.is_empty() {
            // Opening it keeps both and says so.
            return Ok(Tidied::Stays);
        }
        let puts = merged.repairs.first().cloned().unwrap_or_default();
        if !puts.is_empty() && self.storage().write(id, &mark, puts).await? != Written::Done {
            return Ok(Tidied::Stays);
        }
        let timeline = Timeline::of(merged.entries.clone());
        let found = Found {
            merged,
            is_whole: true,
        };
        let summary = found.summary(&timeline);
        if !summary.is_over() {
            return Ok(Tidied::Stays);
        }
        self.storage().summarize(id, summary.write()).await?;
        let kept = self.storage().lines(id).await?;
        let mut all = true;
        for (n, line) in &local {
            if kept.get(n) == Some(line) {
                self.storage().remove(&line_key(id, *n))?;
            } else {
                // A line that the database has otherwise is not understood, or was damaged here.
                let good = found.merged.mended.contains(n) && kept.contains_key(n);
                if good {
                    self.storage().remove(&line_key(id, *n))?;
                }
                all &= good;
            }
        }
        if all {
            self.storage().remove(&mark_key(id))?;
            Ok(Tidied::Moved)
        } else {
            Ok(Tidied::Stays)
        }
    }

    /// Keeps a match that comes from elsewhere, or the longer course of one that is here, and gives its summary;
    /// none where it was not taken, because another course stands here or another tab writes.
    ///
    /// # Errors
    /// Where the database did not take it.
    pub async fn take_in(
        &self,
        id: &str,
        lines: &Lines,
    ) -> Result<Option<Summary>, StorageTrouble> {
        let mark = self.storage().unique();
        let durable = self.storage().claim(id, &mark).await?.lines;
        let local = self.local_lines(id)?;
        let merged = merge(&[&durable, &local, lines]);
        if !merged.branches.is_empty() {
            return Ok(None);
        }
        // A slow phone does each of these in one task.
        self.pause(0).await;
        let puts = merged.repairs.first().cloned().unwrap_or_default();
        if self.storage().write(id, &mark, puts).await? != Written::Done {
            return Ok(None);
        }
        let timeline = Timeline::of(merged.entries.clone());
        let found = Found {
            merged,
            is_whole: true,
        };
        let summary = found.summary(&timeline);
        self.storage().summarize(id, summary.write()).await?;
        Ok(Some(summary))
    }

    /// Keeps another log of a match under an id of its own, which it gives.
    ///
    /// # Errors
    /// Where the database did not take it.
    pub async fn insert_beside(&self, id: &str, lines: &Lines) -> Result<String, StorageTrouble> {
        let merged = merge(&[lines]);
        let timeline = Timeline::of(merged.entries.clone());
        let found = Found {
            merged,
            is_whole: true,
        };
        let summary = found.summary(&timeline).write();
        let mut number = 2;
        loop {
            let beside = format!("{id}_{number}");
            let asked = self
                .storage()
                .insert(&beside, lines.clone(), summary.clone());
            if asked.await? {
                return Ok(beside);
            }
            number += 1;
        }
    }

    /// Forgets a match in both stores and in memory.
    ///
    /// # Errors
    /// Where a store could not be told to; the match may then come back.
    pub async fn forget(&self, id: &str) -> Result<(), StorageTrouble> {
        self.inner.left.borrow_mut().remove(id);
        let durable = self.storage().forget(id).await;
        self.durable_went(durable.clone());
        durable?;
        // Only then, so that what could not be forgotten is still whole.
        for n in self.local_lines(id)?.into_keys() {
            self.storage().remove(&line_key(id, n))?;
        }
        self.storage().remove(&mark_key(id))
    }
}
