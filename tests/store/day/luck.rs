//! What goes wrong on a day: tabs and the browser die, storage is emptied or damaged, a newer version writes.

use app::ports::{line_key, split_line_key};
use record::Link;

use super::{Day, ID};
use crate::world::World;

impl Day {
    pub(super) fn kill_tab(&mut self, at: usize) {
        let open = self.tabs.remove(at);
        self.note(format!("tab {} dies", open.number));
        self.world.borrow_mut().tab_dies(open.number);
        if self.holder == Some(open.number) {
            self.holder = None;
        }
        self.words.retain(|(tab, _)| *tab != open.number);
    }

    pub(super) fn kill_all(&mut self) {
        self.note("the browser dies");
        self.tabs.clear();
        self.words.clear();
        self.holder = None;
        self.world.borrow_mut().power_cut();
    }

    pub(super) fn clear(&mut self) {
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
    pub(super) fn damage(&mut self) {
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
    pub(super) fn newer(&mut self) {
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
}
