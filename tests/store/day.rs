//! Days with bad luck, and what must hold on each of them.

mod laws;
mod luck;

use std::collections::BTreeSet;
use std::panic::{catch_unwind, AssertUnwindSafe};
use std::rc::Rc;

use app::keeper::{Change, Keeper};
use app::ports::{line_key, Lines, Standing};
use app::store::Store;
use game::{simulate, Entry};
use record::LineWriter;
use rules::Preset;

use crate::world::{carry_out, deliver, poll, Shared, Tab, World};

const ID: &str = "m";

/// An open tab.
struct Open {
    number: usize,
    keeper: Rc<Keeper>,
    store: Store,
    /// What it has written since it was opened.
    appended: Vec<String>,
}

/// Something that the browser says of the lock, on its way.
enum Word {
    Granted,
    Denied,
    Robbed,
}

struct Day {
    world: Shared,
    kinds: Vec<Entry>,
    tabs: Vec<Open>,
    next_tab: usize,
    holder: Option<usize>,
    words: Vec<(usize, Word)>,
    /// Where there are no locks, every tab is told that it may write.
    lockless: bool,
    stamp: i64,
    /// What was shown as saved.
    saved: Lines,
    submitted: BTreeSet<String>,
    /// Damaged lines of which no whole copy is left, each with what it was.
    precious: BTreeSet<(u32, String, String)>,
    /// Whether a line of the database was ever damaged.
    damaged_durable: bool,
    /// How much was seen last.
    seen: (usize, usize, usize),
    happened: Vec<String>,
}

impl Day {
    fn new(seed: u64) -> Day {
        let world = World::new(seed);
        let (lockless, length, known) = {
            let random = &mut world.borrow_mut().random;
            (random.u8(0..6) == 0, random.u64(1..4), random.usize(0..30))
        };
        let mut day = Day {
            world,
            kinds: simulate(Preset::SchoolJunior, length),
            tabs: Vec::new(),
            next_tab: 0,
            holder: None,
            words: Vec::new(),
            lockless,
            stamp: 0,
            saved: Lines::new(),
            submitted: BTreeSet::new(),
            precious: BTreeSet::new(),
            damaged_durable: false,
            seen: (0, 0, 0),
            happened: Vec::new(),
        };
        // The match stands in both stores already.
        let mut writer = LineWriter::default();
        let mut lines = Lines::new();
        for n in 1..=known {
            let line = writer.line(&day.entry(n as u32));
            lines.insert(n as u32, line);
        }
        day.submitted.extend(lines.values().cloned());
        day.saved = lines.clone();
        {
            let mut world = day.world.borrow_mut();
            for (n, line) in &lines {
                world.set_local(&line_key(ID, *n), Some(line.clone()));
            }
            world.flush();
            world.database.lines.insert(ID.to_owned(), lines);
        }
        day
    }

    fn entry(&mut self, n: u32) -> Entry {
        self.stamp += 1000;
        let like = &self.kinds[(n as usize - 1) % self.kinds.len()];
        Entry {
            at: Some(self.stamp),
            ..Entry::new(n, like.kind.clone())
        }
    }

    fn chance(&self, of: u32) -> bool {
        self.world.borrow_mut().random.u32(0..of) == 0
    }

    fn pick(&self, below: usize) -> usize {
        self.world.borrow_mut().random.usize(0..below)
    }

    fn note(&mut self, what: impl Into<String>) {
        self.happened.push(what.into());
    }

    fn open(&mut self) {
        let number = self.next_tab;
        self.next_tab += 1;
        let storage = Rc::new(Tab {
            world: Rc::clone(&self.world),
            tab: number,
        });
        let store = Store::new(storage, Ok(()));
        let keeper = Rc::new(Keeper::open(&store, ID, |_: Change| {}));
        self.tabs.push(Open {
            number,
            keeper,
            store,
            appended: Vec::new(),
        });
        self.note(format!("tab {number} opens"));
        if self.lockless || self.holder.is_none() {
            self.holder = Some(number);
            self.words.push((number, Word::Granted));
        } else {
            self.words.push((number, Word::Denied));
        }
    }

    fn take_over(&mut self, at: usize) {
        let number = self.tabs[at].number;
        if self.holder == Some(number) {
            // The lock is here, the match's mark is not.
            self.words.push((number, Word::Granted));
            return;
        }
        self.note(format!("tab {number} takes over"));
        if let Some(old) = self.holder.replace(number) {
            if !self.lockless {
                self.words.push((old, Word::Robbed));
            }
        }
        self.words.push((number, Word::Granted));
    }

    fn say_lock(&mut self) {
        if self.words.is_empty() {
            return;
        }
        let at = self.pick(self.words.len());
        let (tab, word) = self.words.remove(at);
        let Some(open) = self.tabs.iter().find(|t| t.number == tab) else {
            return;
        };
        let keeper = Rc::clone(&open.keeper);
        match word {
            // An answer from before another tab took over says nothing any more.
            Word::Granted if self.holder == Some(tab) || self.lockless => keeper.granted(),
            Word::Granted => {}
            Word::Denied => keeper.denied(false),
            Word::Robbed if self.holder != Some(tab) => keeper.denied(true),
            Word::Robbed => {}
        }
    }

    fn tap(&mut self, at: usize) {
        let keeper = Rc::clone(&self.tabs[at].keeper);
        if keeper.standing() == Standing::Waiting && self.chance(3) {
            self.note("goes on without the database");
            keeper.go_on();
        }
        if !keeper.standing().may_write() {
            return;
        }
        let next = keeper.lines().keys().next_back().map_or(1, |n| n + 1);
        let entry = self.entry(next);
        if keeper.append(&entry) {
            let line = keeper.lines().get(&next).cloned().expect("just appended");
            self.submitted.insert(line.clone());
            self.tabs[at].appended.push(line);
        }
    }

    /// The list puts a match away that is over.
    fn tidy(&mut self) {
        let number = self.next_tab;
        self.next_tab += 1;
        self.note("the list puts the match away");
        let storage = Rc::new(Tab {
            world: Rc::clone(&self.world),
            tab: number,
        });
        let store = Store::new(storage, Ok(()));
        let task = Box::pin(async move {
            // A store that fails leaves it where it is.
            let _ = store.tidy(ID).await;
        });
        self.world.borrow_mut().tasks.insert(number, vec![task]);
        self.run(40, 30);
        self.world.borrow_mut().tab_dies(number);
    }

    /// Lets the browser do what it has to do.
    fn run(&mut self, steps: usize, ms: u64) {
        for _ in 0..steps {
            let what = self.pick(4);
            match what {
                0 => {
                    carry_out(&self.world);
                }
                1 => {
                    deliver(&self.world);
                }
                2 => poll(&self.world),
                _ => {
                    self.say_lock();
                    let mut world = self.world.borrow_mut();
                    let pass = world.random.u64(0..=ms);
                    world.now += pass;
                }
            }
            self.seen();
        }
    }

    fn step(&mut self) {
        self.run(12, 120);
        let what = self.pick(40);
        match what {
            0 if self.tabs.len() < 3 => self.open(),
            1 | 2 if !self.tabs.is_empty() => {
                let at = self.pick(self.tabs.len());
                self.take_over(at);
            }
            3 if !self.tabs.is_empty() => {
                let at = self.pick(self.tabs.len());
                self.kill_tab(at);
            }
            4 => self.kill_all(),
            5 if self.chance(4) => self.clear(),
            6 => self.damage(),
            7 if self.tabs.is_empty() => self.newer(),
            8 => {
                let full = self.chance(2);
                self.world.borrow_mut().local_full = full;
            }
            9 => {
                let full = self.chance(3);
                self.world.borrow_mut().database_full = full;
            }
            10 | 11 => {
                let mut world = self.world.borrow_mut();
                let until = world.now + world.random.u64(0..6_000);
                world.late_until = until;
            }
            12 => {
                let fails = [0, 0, 3, 8][self.pick(4)];
                self.world.borrow_mut().fails = fails;
            }
            13 => self.world.borrow_mut().flush(),
            14 if self.tabs.is_empty() => self.tidy(),
            15 if !self.tabs.is_empty() => {
                let at = self.pick(self.tabs.len());
                self.tabs[at].keeper.written_elsewhere();
            }
            16 if !self.tabs.is_empty() => {
                let at = self.pick(self.tabs.len());
                self.tabs[at].keeper.look();
            }
            _ if self.tabs.is_empty() => self.open(),
            _ => {
                let at = self.pick(self.tabs.len());
                for _ in 0..self.pick(4) {
                    self.tap(at);
                    self.run(2, 20);
                }
            }
        }
    }
}

fn one(seed: u64) -> Vec<String> {
    let mut day = Day::new(seed);
    let steps = day.pick(120) + 20;
    let outcome = catch_unwind(AssertUnwindSafe(|| {
        for _ in 0..steps {
            day.step();
        }
        day.laws();
    }));
    if let Err(why) = outcome {
        let say = why.downcast_ref::<&str>().map(|say| (*say).to_owned());
        let why = why.downcast_ref::<String>().cloned().or(say);
        let why = why.unwrap_or_else(|| "a panic without words".to_owned());
        return vec![format!(
            "DAY={seed} cargo test --test store -- days\n  {why}\n  {}",
            day.happened.join("\n  ")
        )];
    }
    Vec::new()
}

fn number(name: &str) -> Option<u64> {
    std::env::var(name).ok()?.parse().ok()
}

#[test]
fn bad_days_lose_nothing() {
    if let Some(seed) = number("DAY") {
        let broken = one(seed);
        assert!(broken.is_empty(), "{}", broken.join("\n"));
        return;
    }
    let days = number("DAYS").unwrap_or(2_400);
    let cores = std::thread::available_parallelism().map_or(1, usize::from) as u64;
    let broken: Vec<String> = std::thread::scope(|scope| {
        let work = |core| {
            (1..=days)
                .filter(move |day| day % cores == core)
                .flat_map(one)
        };
        let all: Vec<_> = (0..cores)
            .map(|core| scope.spawn(move || work(core).take(3).collect::<Vec<_>>()))
            .collect();
        all.into_iter()
            .flat_map(|w| w.join().expect("a broken law is caught"))
            .collect()
    });
    assert!(broken.is_empty(), "{}", broken.join("\n\n"));
}
