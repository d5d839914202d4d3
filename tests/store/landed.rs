//! Matches as the first landed version of the program has left them: every line in both stores, no mark
//! and no summary, the keys as they were then.

use std::rc::Rc;

use app::keeper::{Keeper, Saved};
use app::ports::{Lines, Standing};
use app::store::{Store, Tidied};
use game::{simulate, Entry, Kind};
use record::LineWriter;
use rules::Preset;

use crate::world::{carry_out, deliver, poll, Shared, Tab, World};

fn run(world: &Shared) {
    for _ in 0..400 {
        carry_out(world);
        deliver(world);
        poll(world);
        world.borrow_mut().now += 50;
    }
}

/// Writes a match under the keys of that version.
fn left(world: &Shared, id: &str, count: usize, local: bool, durable: bool) -> Lines {
    let mut entries = simulate(Preset::SchoolJunior, 5);
    entries.truncate(count);
    let mut writer = LineWriter::default();
    let lines: Lines = entries.iter().map(|e| (e.n, writer.line(e))).collect();
    let mut world = world.borrow_mut();
    for (n, line) in lines.iter().filter(|_| local) {
        world.set_local(&format!("dutystand/m/{id}/{n:05}"), Some(line.clone()));
    }
    if durable {
        world.database.lines.insert(id.to_owned(), lines.clone());
    }
    lines
}

fn store(world: &Shared, tab: usize) -> Store {
    Store::new(
        Rc::new(Tab {
            world: Rc::clone(world),
            tab,
        }),
        Ok(()),
    )
}

fn done<T: 'static>(world: &Shared, work: impl std::future::Future<Output = T> + 'static) -> T {
    let slot = Rc::new(std::cell::RefCell::new(None));
    let to = Rc::clone(&slot);
    let task = Box::pin(async move {
        let found = work.await;
        *to.borrow_mut() = Some(found);
    });
    world.borrow_mut().tasks.entry(99).or_default().push(task);
    run(world);
    let found = slot.borrow_mut().take();
    found.expect("it comes to an end")
}

#[test]
fn a_running_match_is_opened_and_goes_on_whichever_copy_is_left() {
    for (local, durable) in [(true, true), (true, false), (false, true)] {
        let world = World::new(1);
        let lines = left(&world, "m", 40, local, durable);
        let keeper = Keeper::open(&store(&world, 1), "m", |_| {});
        keeper.granted();
        run(&world);
        assert_eq!(keeper.standing(), Standing::Writer);
        assert_eq!(keeper.lines(), lines);
        assert!(keeper.append(&Entry::new(41, Kind::ChangeCourts)));
        run(&world);
        assert_eq!(keeper.saved(), Saved::Safe);
        let world = world.borrow();
        assert_eq!(world.database.lines["m"].len(), 41);
        let there = world
            .local
            .keys()
            .filter(|k| k.starts_with("dutystand/m/m/"));
        assert_eq!(there.count(), 41);
        // Plain names are what that version steps over; its own keys are as they were.
        assert!(world.local.contains_key("dutystand/m/m/00041"));
    }
}

#[test]
fn finished_ones_leave_local_storage_when_the_database_has_them_for_certain() {
    for (local, durable) in [(true, true), (true, false)] {
        let world = World::new(1);
        let lines = left(&world, "old", usize::MAX, local, durable);
        let running = left(&world, "new", 40, true, true);
        let s = store(&world, 1);
        let listing = done(&world, {
            let s = s.clone();
            async move { s.list().await }
        });
        assert_eq!(listing.unread.len(), 2);
        let moved = done(&world, {
            let s = s.clone();
            async move { (s.tidy("old").await, s.tidy("new").await) }
        });
        assert_eq!(moved, (Ok(Tidied::Moved), Ok(Tidied::Stays)));
        let listing = done(&world, async move { s.list().await });
        assert_eq!(listing.unread.into_iter().collect::<Vec<_>>(), ["new"]);
        assert!(listing.summaries["old"].is_over());
        assert_eq!(listing.summaries["old"].last as usize, lines.len());
        let world = world.borrow();
        assert_eq!(world.database.lines["old"], lines);
        assert_eq!(world.database.lines["new"], running);
        assert!(!world.local.keys().any(|k| k.contains("/old")));
    }
}

#[test]
fn a_database_that_fails_moves_nothing() {
    let world = World::new(1);
    let lines = left(&world, "old", usize::MAX, true, false);
    world.borrow_mut().database_full = true;
    let s = store(&world, 1);
    let moved = done(&world, async move { s.tidy("old").await });
    assert!(moved.is_err());
    let there = world
        .borrow()
        .local
        .keys()
        .filter(|k| k.starts_with("dutystand/m/old/"))
        .count();
    assert_eq!(there, lines.len());
}

#[test]
fn a_slow_first_opening_destroys_nothing() {
    // Local storage has lost its tail in a kill; the database answers after seven seconds.
    let world = World::new(1);
    let lines = left(&world, "m", 44, false, true);
    for (n, line) in lines.iter().take(18) {
        world
            .borrow_mut()
            .set_local(&format!("dutystand/m/m/{n:05}"), Some(line.clone()));
    }
    world.borrow_mut().late_until = 7_000;
    let keeper = Keeper::open(&store(&world, 1), "m", |_| {});
    keeper.granted();
    for _ in 0..60 {
        poll(&world);
        world.borrow_mut().now += 100;
        assert!(!keeper.append(&Entry::new(19, Kind::ChangeCourts)));
        assert_ne!(keeper.saved(), Saved::Safe);
    }
    run(&world);
    assert_eq!(keeper.lines(), lines);
    assert_eq!(
        (keeper.standing(), keeper.saved()),
        (Standing::Writer, Saved::Safe)
    );
    assert_eq!(world.borrow().database.lines["m"], lines);
}

#[test]
fn an_opening_that_fails_is_tried_again_and_nothing_is_taken_for_empty() {
    let world = World::new(1);
    let lines = left(&world, "m", 44, false, true);
    for (n, line) in lines.iter().take(18) {
        world
            .borrow_mut()
            .set_local(&format!("dutystand/m/m/{n:05}"), Some(line.clone()));
    }
    // Everything fails, half of it unsaid.
    world.borrow_mut().fails = 1;
    let keeper = Keeper::open(&store(&world, 1), "m", |_| {});
    keeper.granted();
    run(&world);
    assert_eq!(keeper.standing(), Standing::Waiting);
    assert_eq!(keeper.lines().len(), 18);
    assert_eq!(world.borrow().database.lines["m"], lines);
    // Somebody goes on all the same: both courses are kept.
    keeper.go_on();
    assert!(keeper.append(&Entry::new(19, Kind::ChangeCourts)));
    assert_eq!(keeper.saved(), Saved::OneCopy);
    let mine = keeper.lines();
    world.borrow_mut().fails = 0;
    run(&world);
    assert_eq!(keeper.lines(), lines);
    assert_eq!(world.borrow().database.lines["m_2"], mine);
    assert_eq!(keeper.saved(), Saved::Safe);
}

#[test]
fn emptied_storage_is_written_again_and_said() {
    use app::keeper::StorageNotice;
    let world = World::new(1);
    let lines = left(&world, "m", 44, true, true);
    let keeper = Keeper::open(&store(&world, 1), "m", |_| {});
    keeper.granted();
    run(&world);
    {
        let mut world = world.borrow_mut();
        world.database = Default::default();
        world.local.clear();
    }
    keeper.look();
    // What was noticed is not called saved before the database has it again.
    assert_ne!(keeper.saved(), Saved::Safe);
    run(&world);
    assert_eq!(world.borrow().database.lines["m"], lines);
    assert_eq!(
        world
            .borrow()
            .local
            .keys()
            .filter(|k| k.starts_with("dutystand/m/"))
            .count(),
        44
    );
    assert_eq!(keeper.told(), [StorageNotice::Emptied]);
    assert_eq!(keeper.saved(), Saved::Safe);
}
