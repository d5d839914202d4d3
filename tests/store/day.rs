//! Days with bad luck, and what must hold on each of them.

use std::collections::{BTreeMap, BTreeSet};
use std::panic::{catch_unwind, AssertUnwindSafe};
use std::rc::Rc;

use app::keeper::{Change, Keeper, Saved};
use app::ports::{line_key, split_line_key, Lines, Standing};
use app::store::Store;
use game::{simulate, Entry};
use record::{LineWriter, Link};
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

    fn kill_tab(&mut self, at: usize) {
        let open = self.tabs.remove(at);
        self.note(format!("tab {} dies", open.number));
        self.world.borrow_mut().tab_dies(open.number);
        if self.holder == Some(open.number) {
            self.holder = None;
        }
        self.words.retain(|(tab, _)| *tab != open.number);
    }

    fn kill_all(&mut self) {
        self.note("the browser dies");
        self.tabs.clear();
        self.words.clear();
        self.holder = None;
        self.world.borrow_mut().power_cut();
    }

    fn clear(&mut self) {
        self.note("storage is emptied");
        let mut world = self.world.borrow_mut();
        let keys: Vec<String> = world.local.keys().cloned().collect();
        for key in keys {
            world.set_local(&key, None);
        }
        world.flush();
        world.database = Default::default();
        self.saved.clear();
        self.precious.clear();
        for open in &mut self.tabs {
            // What was kept beside the match is gone with the rest.
            let lines = open.keeper.lines();
            let writes = open.keeper.standing().may_write();
            let held = |line: &String| writes && lines.values().any(|l| l == line);
            open.appended.retain(held);
        }
        drop(world);
        // Who still has the match in memory notices sooner or later.
        for open in &self.tabs {
            open.keeper.look();
        }
    }

    /// One line of one copy, or of both, is not what it was.
    fn damage(&mut self) {
        let which = self.pick(5);
        let mut world = self.world.borrow_mut();
        let durable = world.database.lines.get(ID).cloned().unwrap_or_default();
        if durable.is_empty() {
            return;
        }
        let at = world.random.usize(0..durable.len());
        let Some((&n, good)) = durable.iter().nth(at) else {
            return;
        };
        let key = line_key(ID, n);
        let there = world.local.get(&key).cloned();
        let spoilt = |world: &mut World, line: &str| {
            let cut = world.random.usize(0..line.len().max(1));
            match world.random.u8(0..4) {
                0 => line[..cut].to_owned(),
                1 => line.replacen("won_by", "won_bY", 1) + " ",
                2 => format!("x{line}"),
                _ => line.chars().rev().collect(),
            }
        };
        let good = good.clone();
        let known = self.saved.get(&n);
        let was_good = known.is_none_or(|saved| *saved == good);
        let local_good = there.is_some() && there.as_ref() == known;
        let (hit_local, hit_durable) = match which {
            0 | 1 => (true, false),
            2 | 3 => (false, true),
            _ => (true, true),
        };
        let mut raw = Vec::new();
        // What stood there and was mended or goes now is gone rightly.
        self.precious.retain(|(of, line, _)| {
            let stays =
                (!hit_local && there.as_ref() == Some(line)) || (!hit_durable && good == *line);
            *of != n || stays
        });
        if let (true, Some(line)) = (hit_local, &there) {
            let bad = spoilt(&mut world, line);
            world.set_local(&key, Some(bad.clone()));
            raw.push((n, bad, line.clone()));
        }
        if hit_durable {
            self.damaged_durable = true;
            let bad = spoilt(&mut world, &good);
            world
                .database
                .lines
                .entry(ID.to_owned())
                .or_default()
                .insert(n, bad.clone());
            raw.push((n, bad, good.clone()));
        }
        world.flush();
        drop(world);
        self.note(format!(
            "line {n} is damaged, local {hit_local}, durable {hit_durable}"
        ));
        let lost_durable = hit_durable || !was_good;
        let lost_local = hit_local || !local_good;
        if lost_durable && lost_local {
            self.saved.remove(&n);
            // Where the copies have parted, nothing proves either log any more behind that line; the one that
            // goes on counts, the other stays where it is.
            let world = self.world.borrow();
            let parted = |k: u32, line: &String| {
                let local = world.local.get(&line_key(ID, k));
                k > n && local.is_some_and(|local| local != line)
            };
            self.saved.retain(|k, line| !parted(*k, line));
            drop(world);
            for open in &mut self.tabs {
                let hit = |line: &String| Some(line) == there.as_ref() || *line == good;
                open.appended.retain(|line| !hit(line));
            }
            self.precious.extend(raw);
        }
    }

    /// A newer version of the program has written a line, while no tab was open.
    fn newer(&mut self) {
        let known = self.pick(2) == 0;
        let mut world = self.world.borrow_mut();
        // It has put the copies together before; local storage may be behind since.
        let durable = world.database.lines.get(ID).cloned().unwrap_or_default();
        let ahead = |(key, line): (&String, &String)| {
            let n = split_line_key(key).map(|(_, n)| n);
            n.is_some_and(|n| durable.get(&n) != Some(line))
        };
        if world.local.iter().any(ahead) {
            return;
        }
        let lines = world.database.lines.entry(ID.to_owned()).or_default();
        let Some((&n, last)) = lines.iter().next_back() else {
            return;
        };
        let Some(link) = last.get(..16).and_then(Link::read) else {
            return;
        };
        let n = n + 1;
        let json = if known {
            format!("{{\"n\":{n},\"kind\":\"remark\",\"text\":\"x\",\"mood\":{n}}}")
        } else {
            format!("{{\"n\":{n},\"kind\":\"hologram\",\"beams\":[{n}]}}")
        };
        let line = format!("{} {json}", link.next(&json).digits());
        lines.insert(n, line.clone());
        drop(world);
        self.note(format!("a newer version writes line {n}"));
        self.submitted.insert(line.clone());
        self.saved.insert(n, line);
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

    /// What the tabs show as saved now.
    fn seen(&mut self) {
        // A tab that has not noticed yet that storage was emptied shows what was true before.
        if !self.world.borrow().database.marks.contains_key(ID) {
            return;
        }
        let there = self
            .world
            .borrow()
            .database
            .lines
            .get(ID)
            .map_or(0, Lines::len);
        for open in &self.tabs {
            let writes = open.keeper.standing().may_write();
            if writes && open.keeper.saved() == Saved::Safe {
                let seen = (open.number, there, self.happened.len());
                if self.seen == seen {
                    continue;
                }
                self.seen = seen;
                let lines = open.keeper.lines();
                let durable = self.world.borrow();
                let durable = durable.database.lines.get(ID);
                for (n, line) in lines {
                    // What was damaged since it was read is not seen before it is read again.
                    let there = durable.and_then(|d| d.get(&n)) == Some(&line);
                    if there && self.submitted.contains(&line) {
                        self.saved.insert(n, line);
                    }
                }
            }
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

    /// Everything works again, and time passes.
    fn settle(&mut self) {
        {
            let mut world = self.world.borrow_mut();
            world.local_full = false;
            world.database_full = false;
            world.fails = 0;
            world.late_until = 0;
        }
        for round in 0..12 {
            for open in &self.tabs {
                open.keeper.look();
            }
            for _ in 0..400 {
                self.run(4, 200);
            }
            if round > 2 && self.words.is_empty() && self.world.borrow().is_idle() {
                break;
            }
        }
    }

    fn everything(&self) -> BTreeMap<String, BTreeSet<String>> {
        let world = self.world.borrow();
        let mut all: BTreeMap<String, BTreeSet<String>> = BTreeMap::new();
        for (id, lines) in &world.database.lines {
            all.entry(id.clone())
                .or_default()
                .extend(lines.values().cloned());
        }
        let local = world
            .local
            .iter()
            .filter(|(key, _)| key.starts_with("dutystand/m/"));
        all.entry(ID.to_owned())
            .or_default()
            .extend(local.map(|(_, line)| line.clone()));
        all
    }

    fn laws(&mut self) {
        self.settle();
        // One writer.
        let writers = self.tabs.iter().filter(|t| t.keeper.standing().may_write());
        assert!(writers.count() <= 1, "more than one tab writes");
        // What an open tab was given is kept: in the match, or beside it.
        let everything = self.everything();
        let anywhere: BTreeSet<&String> = everything.values().flatten().collect();
        for open in &self.tabs {
            for line in &open.appended {
                assert!(anywhere.contains(line), "tab {} lost {line}", open.number);
            }
        }
        self.kill_all();
        self.open();
        self.settle();
        let keeper = Rc::clone(&self.tabs[0].keeper);
        assert_eq!(keeper.standing(), Standing::Writer, "the only tab writes");
        let lines = keeper.lines();
        // What was shown as saved is there. Where the database's log was damaged and another one went on from
        // before the damage, it is in a match beside this one.
        let everything = self.everything();
        let beside: BTreeSet<&String> = everything
            .iter()
            .filter(|(id, _)| self.damaged_durable && *id != ID)
            .flat_map(|(_, lines)| lines)
            .collect();
        for (n, line) in &self.saved {
            let here = lines.get(n);
            let kept = here == Some(line) || beside.contains(line);
            assert!(
                kept,
                "line {n} was shown as saved: {line}; now there is {here:?}"
            );
        }
        // Nothing that was not understood was deleted.
        for (n, line, whole) in &self.precious {
            // A tab that still had the whole line in memory may have mended it, here or in a match beside.
            let mended = lines.get(n).is_some_and(|l| self.submitted.contains(l))
                || everything.values().any(|lines| lines.contains(whole));
            let here = everything[ID].contains(line);
            let now = &lines.get(n);
            assert!(mended || here, "deleted: {line}; now there is {now:?}");
        }
        // The log is what was submitted, line after line.
        let damaged: BTreeSet<u32> = keeper.damage().iter().map(|d| d.n).collect();
        for (n, line) in &lines {
            let known = self.submitted.contains(line) || damaged.contains(n);
            assert!(known, "nobody wrote line {n}: {line}");
        }
        // And it goes on.
        assert_eq!(
            keeper.saved(),
            Saved::Safe,
            "everything is saved in the end"
        );
        let store = &self.tabs[0].store;
        assert!(store.health().is_fine());
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
