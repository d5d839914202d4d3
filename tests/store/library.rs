//! The matches on a phone: listed, archived, deleted, and all of them in one file.

use std::cell::RefCell;
use std::rc::Rc;

use app::drafts::Draft;
use app::library::{running, under_way, Kept, Library, List};
use app::ports::StorageTrouble;
use app::setting::Setting;
use game::entry::Heading;
use game::{simulate, Entry};
use record::{open, Opened};
use rules::{ByTeam, Preset, Team};

use crate::hall::{point, tally, Hall, Screen};

/// The library of a screen, and all lists that it has published.
pub fn library(screen: &Screen) -> (Library, Rc<RefCell<Vec<List>>>) {
    let lists: Rc<RefCell<Vec<List>>> = Rc::default();
    let to = Rc::clone(&lists);
    let library = Library::new(
        screen.session.clone(),
        screen.settings.clone(),
        move |all| {
            to.borrow_mut().push(all.clone());
        },
    );
    (library, lists)
}

/// The ids of the list as it is when it is read now.
pub fn ids(hall: &Hall, screen: &Screen) -> Vec<String> {
    let (library, lists) = library(screen);
    screen.wait_for(hall, async move { library.read_list().await });
    let lists = lists.borrow();
    let last = lists.last().expect("a list");
    last.iter().map(|listed| listed.id.clone()).collect()
}

/// An invented match that was played to its end long ago, kept under this id.
fn keep(hall: &Hall, screen: &Screen, id: &str, seed: u64) -> Vec<Entry> {
    let mut entries = simulate(Preset::SchoolJunior, seed);
    for entry in &mut entries {
        entry.at = Some(1_000);
    }
    let (library, _) = library(screen);
    let (id, all) = (id.to_owned(), entries.clone());
    let kept = screen.wait_for(hall, async move { library.keep(&id, &all).await });
    assert_eq!(kept, Kept::Here);
    entries
}

#[test]
fn the_latest_match_comes_first_and_the_running_one_is_gone_on_with() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.point(Team::A);
    keep(&hall, &screen, "old", 1);
    hall.run(1000);
    let (library, lists) = library(&screen);
    screen.wait_for(&hall, async move { library.read_list().await });
    let now = screen.session.now();
    let list = lists.borrow().last().cloned().expect("a list");
    let open = screen.session.id().expect("it is open");
    assert_eq!(list.len(), 2);
    assert_eq!(list[0].id, open);
    assert_eq!(running(&list).map(|one| &one.id), Some(&open));
    assert_eq!(under_way(&list, now), std::slice::from_ref(&open));
    // Somebody forgot to finish it: the next day it is no longer being played.
    assert!(under_way(&list, now + 24 * 3_600_000).is_empty());
    // What was archived nobody wants to go on with.
    screen.settings.set_archived(&open, true);
    let (library, lists) = self::library(&screen);
    screen.wait_for(&hall, async move { library.read_list().await });
    assert!(running(lists.borrow().last().expect("a list")).is_none());
}

/// Somebody taps on another match by mistake and goes back: the one that is played is what the start offers.
#[test]
fn a_match_without_an_entry_does_not_stand_before_the_one_that_is_played() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.point(Team::A);
    let played = screen.session.id().expect("it is open");
    hall.run(1000);
    let heading = Heading::new(ByTeam::default(), Preset::Tally.rules());
    let slip = screen.session.create(heading).expect("it begins");
    hall.run(1000);
    let offered = || {
        let (library, lists) = library(&screen);
        screen.wait_for(&hall, async move { library.read_list().await });
        let list = lists.borrow().last().cloned().expect("a list");
        running(&list).map(|one| one.id.clone())
    };
    assert_eq!(offered(), Some(played.clone()));
    // Where nothing else is played it can be gone on with.
    screen.settings.set_archived(&played, true);
    assert_eq!(offered(), Some(slip));
}

#[test]
fn a_list_that_nobody_looks_at_is_read_no_further() {
    let hall = Hall::new();
    let screen = tally(&hall);
    let (library, lists) = library(&screen);
    library.refresh();
    library.close();
    hall.run(5000);
    assert!(lists.borrow().is_empty());
}

#[test]
fn a_deleted_match_is_gone_with_everything_beside_it() {
    let hall = Hall::new();
    let screen = tally(&hall);
    hall.run(1000);
    let id = screen.session.id().expect("it is open");
    let drafts = screen.settings.drafts(&id);
    drafts.keep(Draft::Toss, "1 A H");
    screen.settings.set_archived(&id, true);
    screen.settings.set_lacks_a_part(&id, true);
    let (library, _) = library(&screen);
    let of = vec![id.clone()];
    let stay = screen.wait_for(&hall, async move { library.delete(&of).await });
    assert_eq!(stay, 0);
    assert_eq!(screen.session.id(), None, "it is closed as well");
    assert!(ids(&hall, &screen).is_empty());
    assert_eq!(drafts.get(Draft::Toss), None);
    assert!(!screen.settings.is_archived(&id) && !screen.settings.lacks_a_part(&id));
}

#[test]
fn a_match_that_another_tab_has_open_is_not_deleted_from_under_it() {
    let hall = Hall::new();
    let writer = tally(&hall);
    let id = writer.session.id().expect("it is open");
    let other = hall.tab();
    other.settings.set(Setting::Theme, "dark");
    let (library, _) = library(&other);
    let (one, of) = (library.clone(), vec![id.clone()]);
    let stay = other.wait_for(&hall, async move { one.delete(&of).await });
    assert_eq!(stay, 1);
    assert!(!other.wait_for(&hall, async move { library.delete_all().await }));
    assert_eq!(ids(&hall, &other), [id]);
    assert_eq!(other.settings.get(Setting::Theme).as_deref(), Some("dark"));
    writer.point(Team::A);
    writer.session.close();
    let (library, _) = self::library(&other);
    assert!(other.wait_for(&hall, async move { library.delete_all().await }));
    assert!(ids(&hall, &other).is_empty());
    assert_eq!(other.settings.get(Setting::Theme), None);
}

#[test]
fn a_backup_holds_every_match_though_no_list_was_read() {
    let hall = Hall::new();
    let screen = tally(&hall);
    screen.session.submit(point(Team::B)).expect("a point");
    let over = keep(&hall, &screen, "over", 1);
    assert!(screen.settings.papers().put("paper", "a sheet"));
    let (library, _) = library(&screen);
    let text = screen.wait_for(&hall, async move { library.backup(1).await });
    let Opened::Backup(backup) = open(&text.expect("it is made")) else {
        panic!("no backup");
    };
    let logs: Vec<_> = backup.matches.iter().map(|one| &one.reading.log).collect();
    assert_eq!(logs.len(), 2);
    assert_eq!(logs[0].entries, screen.session.log().entries);
    assert_eq!(logs[1].entries, over);
    assert_eq!(backup.desk.papers, ["a sheet"]);
}

/// A backup that lacks matches would be taken for a whole one, and the phone be wiped.
#[test]
fn no_backup_is_made_while_the_database_does_not_answer() {
    let hall = Hall::new();
    let screen = tally(&hall);
    keep(&hall, &screen, "over", 1);
    hall.world.borrow_mut().fails = 1;
    let (library, _) = library(&screen);
    let text = screen.wait_for(&hall, async move { library.backup(1).await });
    assert_eq!(text, Err(StorageTrouble::Lost));
}
