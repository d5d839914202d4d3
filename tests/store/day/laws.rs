//! What must hold of a day: on its way, of what is shown as saved, and once it is over.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use app::keeper::Saved;
use app::ports::{Lines, Standing};

use super::{Day, ID};

impl Day {
    /// What the tabs show as saved now.
    pub(super) fn seen(&mut self) {
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

    pub(super) fn laws(&mut self) {
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
