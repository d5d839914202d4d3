//! A browser that is made of nothing but its stores, its locks and its faults; a seed decides the order
//! in which everything happens.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet, VecDeque};
use std::future::Future;
use std::pin::Pin;
use std::rc::Rc;
use std::task::{Context, Poll, Waker};

use app::ports::{
    Claimed, Index, Lines, LocalStorage, Pending, Put, Storage, StorageTrouble, Written,
};

/// What the database holds.
#[derive(Clone, Debug, Default)]
pub struct Database {
    pub lines: BTreeMap<String, Lines>,
    pub marks: BTreeMap<String, String>,
    pub summaries: BTreeMap<String, String>,
}

type Work = Box<dyn FnOnce(&mut World, Fault)>;

/// What happens to one question to the database.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fault {
    None,
    /// It fails, and nothing has happened.
    Fails,
    /// It is carried out, and the answer gets lost.
    Unsaid,
    /// There is no room.
    Full,
}

struct Question {
    tab: usize,
    work: Work,
}

/// Everything outside of the tabs.
pub struct World {
    pub random: fastrand::Rng,
    pub now: u64,
    pub local: BTreeMap<String, String>,
    /// What of local storage is on the disk, and what came since.
    flushed: BTreeMap<String, String>,
    unflushed: Vec<(String, Option<String>)>,
    pub database: Database,
    /// Asked, not carried out yet; of one tab in their order.
    asked: VecDeque<Question>,
    /// Carried out, the answer on its way.
    answers: VecDeque<(usize, Box<dyn FnOnce()>)>,
    pub tasks: BTreeMap<usize, Vec<Pending<()>>>,
    pub local_full: bool,
    pub database_full: bool,
    /// No question is answered before this time.
    pub late_until: u64,
    /// One of so many questions fails; 0 for none.
    pub fails: u32,
    pub unique: u32,
    pub dead: BTreeSet<usize>,
}

pub type Shared = Rc<RefCell<World>>;

impl World {
    pub fn new(seed: u64) -> Shared {
        Rc::new(RefCell::new(World {
            random: fastrand::Rng::with_seed(seed),
            now: 0,
            local: BTreeMap::new(),
            flushed: BTreeMap::new(),
            unflushed: Vec::new(),
            database: Database::default(),
            asked: VecDeque::new(),
            answers: VecDeque::new(),
            tasks: BTreeMap::new(),
            local_full: false,
            database_full: false,
            late_until: 0,
            fails: 0,
            unique: 0,
            dead: BTreeSet::new(),
        }))
    }

    pub fn set_local(&mut self, key: &str, value: Option<String>) {
        match &value {
            Some(value) => self.local.insert(key.to_owned(), value.clone()),
            None => self.local.remove(key),
        };
        self.unflushed.push((key.to_owned(), value));
    }

    pub fn flush(&mut self) {
        self.flushed = self.local.clone();
        self.unflushed.clear();
    }

    /// The whole browser dies: of local storage some of what came last is gone.
    pub fn power_cut(&mut self) {
        let kept = self.random.usize(0..=self.unflushed.len());
        let mut left = self.flushed.clone();
        for (key, value) in self.unflushed.drain(..).take(kept) {
            match value {
                Some(value) => left.insert(key, value),
                None => left.remove(&key),
            };
        }
        self.local = left.clone();
        self.flushed = left;
        self.asked.clear();
        self.answers.clear();
        self.tasks.clear();
    }

    /// One tab dies; what it asked of the database may still happen or not.
    pub fn tab_dies(&mut self, tab: usize) {
        self.tasks.remove(&tab);
        self.dead.insert(tab);
        if self.random.bool() {
            self.asked.retain(|q| q.tab != tab);
        }
    }

    pub fn is_idle(&self) -> bool {
        self.asked.is_empty() && self.answers.is_empty()
    }
}

/// Carries out the next question, if one may be by now.
pub fn carry_out(world: &Shared) -> bool {
    let (question, fault) = {
        let mut world = world.borrow_mut();
        if world.now < world.late_until || world.asked.is_empty() {
            return false;
        }
        // Any tab's, but of one tab the oldest.
        let among = world.asked.len();
        let pick = world.random.usize(0..among);
        let tab = world.asked[pick].tab;
        let at = world.asked.iter().position(|q| q.tab == tab);
        let Some(question) = at.and_then(|at| world.asked.remove(at)) else {
            return false;
        };
        let fails = world.fails;
        let fault = if fails > 0 && world.random.u32(0..fails) == 0 {
            if world.random.bool() {
                Fault::Fails
            } else {
                Fault::Unsaid
            }
        } else if world.database_full {
            Fault::Full
        } else {
            Fault::None
        };
        (question, fault)
    };
    (question.work)(&mut world.borrow_mut(), fault);
    true
}

/// Delivers the next answer.
pub fn deliver(world: &Shared) -> bool {
    let next = {
        let mut world = world.borrow_mut();
        if world.answers.is_empty() {
            return false;
        }
        let among = world.answers.len();
        let pick = world.random.usize(0..among);
        let tab = world.answers[pick].0;
        let at = world.answers.iter().position(|a| a.0 == tab);
        at.and_then(|at| world.answers.remove(at))
    };
    if let Some((_, answer)) = next {
        answer();
    }
    true
}

/// Lets every tab's work go on as far as it can.
pub fn poll(world: &Shared) {
    let tabs: Vec<usize> = world.borrow().tasks.keys().copied().collect();
    for tab in tabs {
        let tasks = world.borrow_mut().tasks.remove(&tab).unwrap_or_default();
        let mut waiting = Vec::new();
        for mut task in tasks {
            let mut context = Context::from_waker(Waker::noop());
            if task.as_mut().poll(&mut context).is_pending() {
                waiting.push(task);
            }
        }
        let mut world = world.borrow_mut();
        if !world.dead.contains(&tab) {
            let new = world.tasks.remove(&tab).unwrap_or_default();
            waiting.extend(new);
            world.tasks.insert(tab, waiting);
        }
    }
}

struct Answer<T>(Rc<RefCell<Option<T>>>);

impl<T> Future for Answer<T> {
    type Output = T;
    fn poll(self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<T> {
        self.0
            .borrow_mut()
            .take()
            .map_or(Poll::Pending, Poll::Ready)
    }
}

struct Until(Shared, u64);

impl Future for Until {
    type Output = ();
    fn poll(self: Pin<&mut Self>, _: &mut Context<'_>) -> Poll<()> {
        if self.0.borrow().now >= self.1 {
            Poll::Ready(())
        } else {
            Poll::Pending
        }
    }
}

/// One tab's view of the stores.
pub struct Tab {
    pub world: Shared,
    pub tab: usize,
}

impl Tab {
    /// Asks the database something; only what writes meets a full disk.
    fn ask<T: 'static>(
        &self,
        writes: bool,
        work: impl FnOnce(&mut Database) -> T + 'static,
    ) -> Pending<Result<T, StorageTrouble>> {
        let slot = Rc::new(RefCell::new(None));
        let (to, tab) = (Rc::clone(&slot), self.tab);
        let work: Work = Box::new(move |world: &mut World, fault| {
            let outcome = match fault {
                Fault::Fails => Err(StorageTrouble::Lost),
                Fault::Full if writes => Err(StorageTrouble::Full),
                Fault::Unsaid => {
                    work(&mut world.database);
                    Err(StorageTrouble::Lost)
                }
                Fault::None | Fault::Full => Ok(work(&mut world.database)),
            };
            let answer = move || *to.borrow_mut() = Some(outcome);
            world.answers.push_back((tab, Box::new(answer)));
        });
        let mut world = self.world.borrow_mut();
        world.asked.push_back(Question { tab, work });
        Box::pin(Answer(slot))
    }
}

impl LocalStorage for Tab {
    fn get(&self, key: &str) -> Result<Option<String>, StorageTrouble> {
        Ok(self.world.borrow().local.get(key).cloned())
    }

    fn set(&self, key: &str, value: &str) -> Result<(), StorageTrouble> {
        let mut world = self.world.borrow_mut();
        if world.local_full {
            return Err(StorageTrouble::Full);
        }
        world.set_local(key, Some(value.to_owned()));
        Ok(())
    }

    fn remove(&self, key: &str) -> Result<(), StorageTrouble> {
        self.world.borrow_mut().set_local(key, None);
        Ok(())
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageTrouble> {
        let world = self.world.borrow();
        let keys = world.local.keys().filter(|k| k.starts_with(prefix));
        Ok(keys.cloned().collect())
    }
}

impl Storage for Tab {
    fn claim(&self, id: &str, writer: &str) -> Pending<Result<Claimed, StorageTrouble>> {
        let (id, writer) = (id.to_owned(), writer.to_owned());
        self.ask(true, move |database| {
            let before = database.marks.insert(id.clone(), writer);
            Claimed {
                lines: database.lines.get(&id).cloned().unwrap_or_default(),
                was_marked: before.is_some(),
            }
        })
    }

    fn lines(&self, id: &str) -> Pending<Result<Lines, StorageTrouble>> {
        let id = id.to_owned();
        self.ask(false, move |database| {
            database.lines.get(&id).cloned().unwrap_or_default()
        })
    }

    fn write(
        &self,
        id: &str,
        writer: &str,
        puts: Vec<Put>,
    ) -> Pending<Result<Written, StorageTrouble>> {
        let (id, writer) = (id.to_owned(), writer.to_owned());
        self.ask(true, move |database| {
            match database.marks.get(&id) {
                None => return Written::Gone,
                Some(mark) if *mark != writer => return Written::Robbed,
                Some(_) => {}
            }
            let lines = database.lines.entry(id).or_default();
            let fits = |put: &Put| {
                let there = lines.get(&put.n);
                there == put.found.as_ref() || there == put.line.as_ref()
            };
            if !puts.iter().all(fits) {
                return Written::Differs;
            }
            for put in puts {
                match put.line {
                    Some(line) => lines.insert(put.n, line),
                    None => lines.remove(&put.n),
                };
            }
            Written::Done
        })
    }

    fn insert(
        &self,
        id: &str,
        lines: Lines,
        summary: String,
    ) -> Pending<Result<bool, StorageTrouble>> {
        let id = id.to_owned();
        self.ask(true, move |database| {
            let there = database.lines.get(&id);
            if let Some(there) = there.filter(|there| !there.is_empty()) {
                return lines.iter().all(|(n, line)| there.get(n) == Some(line));
            }
            database.lines.insert(id.clone(), lines);
            database.summaries.insert(id, summary);
            true
        })
    }

    fn summaries(&self) -> Pending<Result<BTreeMap<String, String>, StorageTrouble>> {
        self.ask(false, |database| database.summaries.clone())
    }

    fn summarize(&self, id: &str, summary: String) -> Pending<Result<(), StorageTrouble>> {
        let id = id.to_owned();
        self.ask(true, move |database| {
            database.summaries.insert(id, summary);
        })
    }

    fn index(&self) -> Pending<Result<Index, StorageTrouble>> {
        self.ask(false, |database| {
            let lasts = database.lines.iter();
            let last = lasts
                .filter_map(|(id, lines)| Some((id.clone(), *lines.keys().next_back()?)))
                .collect();
            Index { last }
        })
    }

    fn forget(&self, id: &str) -> Pending<Result<(), StorageTrouble>> {
        let id = id.to_owned();
        self.ask(true, move |database| {
            database.lines.remove(&id);
            database.marks.remove(&id);
            database.summaries.remove(&id);
        })
    }

    fn spawn(&self, work: Pending<()>) {
        let mut world = self.world.borrow_mut();
        if !world.dead.contains(&self.tab) {
            world.tasks.entry(self.tab).or_default().push(work);
        }
    }

    fn wait(&self, ms: u32) -> Pending<()> {
        let until = self.world.borrow().now + u64::from(ms);
        Box::pin(Until(Rc::clone(&self.world), until))
    }

    fn unique(&self) -> String {
        let mut world = self.world.borrow_mut();
        world.unique += 1;
        format!("mark-{}", world.unique)
    }
}
