//! The storage of a match under bad luck in real browsers: a database that opens late or not at first,
//! copies that differ, tabs that take a match from each other, storage that is emptied, deleted or full.
//! A few of each run with the other tests; `long_trials.rs` runs many.

use std::sync::atomic::{AtomicUsize, Ordering};

use game::simulate;
use record::{KeptMatch, Log, OnDesk};
use rules::Preset;
use serde_json::{json, Value};

use crate::driver::{Engine, Tab};
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::{built, Stage};
use crate::{Ran, Test, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "trial_a_late_database_loses_nothing",
        engines: BOTH,
        run: a_late_database_loses_nothing,
    },
    Test {
        name: "trial_a_failing_database_is_waited_for",
        engines: BOTH,
        run: a_failing_database_is_waited_for,
    },
    Test {
        name: "trial_copies_damaged_in_different_places_are_put_together",
        engines: BOTH,
        run: copies_damaged_in_different_places_are_put_together,
    },
    Test {
        name: "trial_what_cannot_be_read_leaves_with_the_file",
        engines: &[Engine::Chromium],
        run: what_cannot_be_read_leaves_with_the_file,
    },
    Test {
        name: "trial_tabs_take_a_match_from_each_other",
        engines: BOTH,
        run: tabs_take_a_match_from_each_other,
    },
    Test {
        name: "trial_the_question_of_a_tab_goes_once_it_writes_again",
        engines: BOTH,
        run: the_question_of_a_tab_goes_once_it_writes_again,
    },
    Test {
        name: "trial_a_tab_that_takes_over_takes_the_lease_as_well",
        engines: BOTH,
        run: a_tab_that_takes_over_takes_the_lease_as_well,
    },
    Test {
        name: "trial_an_open_match_is_not_deleted_and_outlives_a_cleared_storage",
        engines: BOTH,
        run: an_open_match_is_not_deleted_and_outlives_a_cleared_storage,
    },
    Test {
        name: "trial_finished_matches_leave_room_for_new_ones",
        engines: BOTH,
        run: finished_matches_leave_room_for_new_ones,
    },
];

/// Stands before the page's own loader: the address says how late the database opens and how often it
/// fails first (`?late=4600&fails=2`), and whether the browser has locks (`?nolocks=1`).
const BAD_LUCK: &str = "
const luck = new URLSearchParams(location.search);
const [late, fails] = ['late', 'fails'].map((name) => Number(luck.get(name) ?? 0));
if (luck.has('nolocks')) Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });
if (late + fails > 0) {
  const open = IDBFactory.prototype.open;
  let failed = 0;
  IDBFactory.prototype.open = function (...args) {
    const request = { onsuccess: null, onerror: null, onupgradeneeded: null, result: undefined, error: null };
    const factory = this;
    setTimeout(() => {
      if (failed < fails) {
        failed += 1;
        request.error = new DOMException('for a trial', 'UnknownError');
        request.onerror?.(new Event('error'));
        return;
      }
      const real = open.apply(factory, args);
      const pass = (name) => (event) => {
        request.result = name === 'onerror' ? undefined : real.result;
        request.error = name === 'onerror' ? real.error : null;
        request[name]?.(event);
      };
      for (const name of ['onsuccess', 'onerror', 'onupgradeneeded']) real[name] = pass(name);
    }, late);
    return request;
  };
}
";

/// A page whose address can bring bad luck. Its worker refuses the altered loader, so it comes from the
/// server each time.
pub fn unlucky(stage: &mut Stage) {
    let (name, loader) = built("loader-", ".js");
    let mut altered = BAD_LUCK.as_bytes().to_vec();
    altered.extend(loader);
    stage.hand_out(&name, &altered);
}

/// Opens the match of an id with this bad luck.
pub fn open_with(referee: &mut Referee, luck: &str, id: &str) {
    // An address that a tab is at already does not load the page anew.
    static OPENED: AtomicUsize = AtomicUsize::new(0);
    let opened = OPENED.fetch_add(1, Ordering::Relaxed);
    let address = format!("{}?{luck}&opened={opened}#/play/{id}", referee.stage.url());
    referee.browser().goto(&address);
    referee.stage.started();
}

/// Points in turn, so that no set ever ends.
pub fn in_turn(from: usize, count: usize) -> Vec<Side> {
    (from..from + count)
        .map(|n| if n % 2 == 0 { Side::Left } else { Side::Right })
        .collect()
}

/// On the court of a match of this id.
pub fn on_court<'a>(stage: &'a mut Stage, id: &str) -> Referee<'a> {
    unlucky(stage);
    let mut referee = Referee::at(stage);
    referee.go_on_with(id, begun());
    referee.browser().find("#half-left");
    referee
}

/// How many points both halves show together.
const POINTS_SHOWN: &str = "['left', 'right'].map((s) => Number(document.querySelector(`#half-${s} .half-score`)?.innerText ?? 0)).reduce((a, b) => a + b, 0)";

/// What the mark says, and how many points the halves show, at one moment.
pub fn shown(referee: &mut Referee) -> (bool, usize) {
    let seen = referee.browser().value(&format!(
        "[document.querySelector('#saved')?.classList.contains('safe') ?? false, {POINTS_SHOWN}]"
    ));
    let points = seen[1].as_u64().unwrap_or_default();
    (seen[0] == json!(true), points as usize)
}

/// Waits until a match that was opened again is read, and goes to its court. Where only lines from before
/// the match were read first, the page has opened *Before the match*, which leads on to the court.
pub fn on_court_again(referee: &mut Referee) {
    const ON_COURT: &str = "document.querySelector('#half-left') !== null";
    let is_read = format!(
        "document.querySelector('#stands-still') === null && ({ON_COURT} \
         || [...document.querySelectorAll('button')].some((b) => b.innerText === 'To the court'))"
    );
    referee.browser().wait_until("the match is read", &is_read);
    if referee.browser().value(ON_COURT) == json!(false) {
        referee.tap("To the court");
        referee.browser().find("#half-left");
    }
}

/// Takes the last lines out of local storage, as a kill does.
pub fn behind(referee: &mut Referee, id: &str, lines: usize) {
    referee.browser().run(
        "const head = `dutystand/m/${arguments[0]}/`;
         const keys = Object.keys(localStorage).filter((k) => k.startsWith(head)).sort();
         keys.slice(-arguments[1]).forEach((k) => localStorage.removeItem(k));",
        json!([id, lines]),
    );
}

/// Changes one line of the match: in local storage, in the database, or in both.
pub fn damage(referee: &mut Referee, id: &str, n: u32, local: bool, durable: bool) {
    referee.browser().run(
        "const [id, n, local, durable] = arguments;
         const spoilt = (line) => line.replace('\"at\":', '\"at\":9');
         const key = `dutystand/m/${id}/${String(n).padStart(5, '0')}`;
         if (local) localStorage.setItem(key, spoilt(localStorage.getItem(key)));
         if (!durable) return true;
         return new Promise((done, broken) => {
           const open = indexedDB.open('dutystand');
           open.onerror = () => broken(open.error);
           open.onsuccess = () => {
             const write = open.result.transaction('lines', 'readwrite');
             const store = write.objectStore('lines');
             const read = store.get([id, n]);
             read.onsuccess = () => store.put(spoilt(read.result), [id, n]);
             write.oncomplete = () => { open.result.close(); done(true); };
             write.onabort = () => broken(write.error);
           };
         });",
        json!([id, n, local, durable]),
    );
}

/// Empties everything that the page has stored, as somebody can in the browser's settings.
pub fn empty(referee: &mut Referee) {
    referee.browser().run(
        "localStorage.clear();
         return new Promise((done, broken) => {
           const gone = indexedDB.deleteDatabase('dutystand');
           gone.onsuccess = () => done(true);
           gone.onerror = () => broken(gone.error);
         });",
        json!([]),
    );
}

fn writes(referee: &mut Referee) -> bool {
    let banner = "document.querySelector('#stands-still') === null";
    referee.browser().value(banner) == json!(true)
}

pub fn take_over(referee: &mut Referee) {
    referee.tap_in("#stands-still", "Take over here");
    referee.browser().wait_until(
        "this tab writes",
        "document.querySelector('#stands-still') === null",
    );
}

fn a_late_database_loses_nothing(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage, "late");
    referee.points(&in_turn(0, 12), 40);
    referee.saved();
    let whole = referee.timeline();
    behind(&mut referee, "late", 9);
    open_with(&mut referee, "late=9000", "late");
    // Meanwhile nothing is called saved, and a tap says why it does nothing.
    referee.reads_at("#stands-still", "has not been read yet");
    assert!(!shown(&mut referee).0);
    let before = shown(&mut referee).1;
    referee.tap_at("#half-left");
    referee.tap_in("[role=dialog]", "Cancel");
    assert_eq!(shown(&mut referee).1, before);
    referee.browser().wait_until(
        "the second copy was read",
        "document.querySelector('#stands-still') === null",
    );
    referee.reads_at("#damaged", "One copy was read late");
    assert_eq!(referee.timeline().entries(), whole.entries());
    Ok(())
}

fn a_failing_database_is_waited_for(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage, "fails");
    referee.points(&in_turn(0, 8), 40);
    referee.saved();
    let whole = referee.timeline();
    behind(&mut referee, "fails", 4);
    open_with(&mut referee, "fails=3", "fails");
    referee.browser().wait_until(
        "the second copy was read",
        "document.querySelector('#stands-still') === null && document.querySelector('#half-left') !== null",
    );
    assert_eq!(referee.timeline().entries(), whole.entries());
    Ok(())
}

fn copies_damaged_in_different_places_are_put_together(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage, "torn");
    referee.points(&in_turn(0, 12), 40);
    referee.saved();
    let whole = referee.timeline();
    let n = begun().len() as u32;
    damage(&mut referee, "torn", n + 2, true, false);
    damage(&mut referee, "torn", n + 5, false, true);
    referee.stage.reload();
    referee.browser().find("#half-left");
    let both = format!("Entries {}, {} are damaged", n + 2, n + 5);
    referee.reads_at("#damaged", &both);
    assert_eq!(referee.timeline().entries(), whole.entries());
    referee.tap("Understood");

    // The same place in both: that entry alone is missing, stays as it is, and is said.
    damage(&mut referee, "torn", n + 3, true, true);
    let bytes = referee.kept().durable[n as usize + 2].1.clone();
    referee.stage.reload();
    referee.browser().find("#half-left");
    let one = format!("Entry {} is damaged in both copies", n + 3);
    referee.reads_at("#damaged", &one);
    let kept = referee.kept();
    assert_eq!(kept.durable[n as usize + 2].1, bytes);
    assert_eq!(
        (kept.local.len(), kept.durable.len()),
        (whole.entries().len(), whole.entries().len())
    );
    assert_eq!(shown(&mut referee).1, 11);
    referee.point(Side::Left);
    referee.saved();
    assert_eq!(referee.kept().durable.len(), whole.entries().len() + 1);
    // The log shows it in its place.
    referee.tap("Menu");
    referee.tap("Match log");
    referee.reads_at(".log", &one);
    Ok(())
}

fn what_cannot_be_read_leaves_with_the_file(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage, "torn");
    let downloads = referee.catch_downloads();
    referee.points(&in_turn(0, 6), 40);
    referee.saved();
    let whole = referee.timeline();
    let n = begun().len() as u32 + 3;
    damage(&mut referee, "torn", n, true, true);
    let bytes = referee.kept().durable[n as usize - 1].1.clone();
    referee.stage.reload();
    referee.browser().find("#half-left");
    referee.tap("Understood");
    referee.tap("Menu");
    referee.tap("Export the match as a file");
    let (_, text) = referee.caught(&downloads);
    let value: Value = serde_json::from_str(&text).expect("a file");
    assert_eq!(value["unread"], json!([bytes]));
    assert_eq!(
        record::read(&text).log.entries.len(),
        whole.entries().len() - 1
    );
    Ok(())
}

fn tabs_take_a_match_from_each_other(stage: &mut Stage) -> Ran {
    for luck in ["", "nolocks=1"] {
        let id = format!("tabs{}", luck.len());
        let mut referee = on_court(stage, &id);
        open_with(&mut referee, luck, &id);
        referee.browser().find("#half-left");
        let first = referee.browser().tab();
        let second = referee.browser().open_tab();
        open_with(&mut referee, luck, &id);
        referee.reads("This match is open in another tab.");
        let mut promised = 0;
        for round in 0..6 {
            take_over(&mut referee);
            referee.points(&in_turn(promised, 3), 15);
            // Without locks the other tab may take the match back at once, and says so; a tap then asks. What
            // was shown stays.
            let robbed = match luck {
                "" => "false",
                _ => "document.querySelector('#stands-still, [role=dialog]') !== null",
            };
            referee.browser().wait_until(
                &format!("three more than {promised} points are shown in round {round}"),
                &format!("{POINTS_SHOWN} === {promised} + 3 || {robbed}"),
            );
            let (_, seen) = shown(&mut referee);
            assert!(
                (promised..=promised + 3).contains(&seen),
                "{seen} after {promised}"
            );
            promised = seen;
            if referee.sees("Cancel") {
                referee.tap("Cancel");
            }
            let other = if round % 2 == 0 { &first } else { &second };
            referee.browser().switch_to(other);
            referee.reads("Here you can only look.");
            assert!(!writes(&mut referee));
            referee.browser().wait_until(
                "what the other one wrote is seen",
                &format!("{POINTS_SHOWN} === {promised}"),
            );
        }
        assert_eq!(referee.kept().entries().len(), begun().len() + promised);
        referee.browser().switch_to(&second);
        referee.browser().goto("about:blank");
        referee.browser().switch_to(&first);
    }
    Ok(())
}

/// Opens the match in a second tab, where it can only be looked at: the first tab and the second one.
fn looked_at_in_two_tabs(referee: &mut Referee, luck: &str, id: &str) -> (Tab, Tab) {
    open_with(referee, luck, id);
    referee.browser().find("#half-left");
    let first = referee.browser().tab();
    let second = referee.browser().open_tab();
    open_with(referee, luck, id);
    referee.reads("This match is open in another tab.");
    (first, second)
}

/// A tap on the court of a tab that only looks on is answered with a question.
fn is_asked(referee: &mut Referee) {
    referee.points(&[Side::Left], 0);
    referee.browser().find_named_in("[role=dialog]", "Cancel");
    assert!(!writes(referee));
}

/// This tab writes, the question is gone, and the court gives a point again.
fn gives_a_point_unasked(referee: &mut Referee) {
    referee.browser().wait_until(
        "this tab writes and asks nothing",
        "document.querySelector('#stands-still, [role=dialog]') === null",
    );
    let (_, before) = shown(referee);
    referee.points(&[Side::Left], 0);
    let after = format!("{POINTS_SHOWN} === {before} + 1");
    referee.browser().wait_until("the point is shown", &after);
    let timeline = referee.timeline();
    assert_eq!(
        usize::from(timeline.state().score().a + timeline.state().score().b),
        before + 1,
        "the point is kept"
    );
}

fn the_question_of_a_tab_goes_once_it_writes_again(stage: &mut Stage) -> Ran {
    // A tab that lost the match takes it back where it is asked.
    let mut referee = on_court(stage, "asked");
    let (first, second) = looked_at_in_two_tabs(&mut referee, "", "asked");
    take_over(&mut referee);
    gives_a_point_unasked(&mut referee);
    referee.browser().switch_to(&first);
    referee.reads("Another tab has taken over this match.");
    is_asked(&mut referee);
    referee.browser().picture("looking-on-asked");
    referee.tap_in("[role=dialog]", "Take over here");
    gives_a_point_unasked(&mut referee);

    // The match comes to a tab by itself once the one that wrote is closed.
    referee.browser().switch_to(&second);
    referee.browser().goto("about:blank");
    let mut last = first;
    for luck in ["", "nolocks=1"] {
        referee.browser().switch_to(&last);
        let (first, second) = looked_at_in_two_tabs(&mut referee, luck, "asked");
        is_asked(&mut referee);
        referee.browser().switch_to(&first);
        referee.browser().goto("about:blank");
        referee.browser().switch_to(&second);
        gives_a_point_unasked(&mut referee);
        last = second;
    }
    Ok(())
}

/// Where there are no locks, the match may learn that another tab writes before the lease does: whoever takes it
/// back takes both, or the lease gives it away again at its next look.
fn a_tab_that_takes_over_takes_the_lease_as_well(stage: &mut Stage) -> Ran {
    const LEASE: &str = "localStorage.getItem('dutystand/l/dutystand/both')";
    let mut referee = on_court(stage, "both");
    open_with(&mut referee, "nolocks=1", "both");
    referee.points(&[Side::Left], 0);
    referee.saved();
    // Another tab took the match a moment ago. The tap tells this one, which has not looked at its lease since.
    referee.browser().run(
        "const key = 'dutystand/l/dutystand/both';
         const [, , term] = localStorage.getItem(key).split(' ');
         localStorage.setItem('dutystand/w/both', 'stranger');
         localStorage.setItem(key, `stranger ${Date.now()} ${Number(term) + 1}`);",
        json!([]),
    );
    referee.points(&[Side::Left], 0);
    referee.tap_in("[role=dialog]", "Take over here");
    let mine = format!("!{LEASE}.startsWith('stranger ')");
    referee
        .browser()
        .wait_until("the lease is this tab's", &mine);
    // It stays so: two looks at the lease later this tab still writes.
    let confirmed = referee.browser().value(LEASE);
    for _ in 0..2 {
        let last = referee.browser().value(LEASE);
        let again = format!("{LEASE} !== {last}");
        referee
            .browser()
            .wait_until("the lease is confirmed", &again);
    }
    assert!(writes(&mut referee), "taken back after {confirmed}");
    gives_a_point_unasked(&mut referee);
    Ok(())
}

fn an_open_match_is_not_deleted_and_outlives_a_cleared_storage(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage, "open");
    referee.points(&in_turn(0, 6), 40);
    referee.saved();
    let whole = referee.timeline();
    let first = referee.browser().tab();
    let second = referee.browser().open_tab();
    referee.stage.open();
    referee.tap_at(".sheet-line button[aria-label^='More: ']");
    referee.tap_at(".sheet-line button[aria-label^='Delete']");
    referee.tap_in("[role=dialog]", "Delete");
    referee.reads("1 match was not deleted. If it is open in another tab");
    referee.tap_at("#to-phone");
    referee.tap("Delete everything");
    referee.tap_in("[role=dialog]", "Delete everything");
    referee.reads("A match that is open in another tab stays");
    referee.tap("Back");
    empty(&mut referee);
    referee.browser().switch_to(&first);
    referee.point(Side::Left);
    referee.reads_at("#damaged", "was saved again from memory");
    let after = referee.timeline();
    assert_eq!(after.entries().len(), whole.entries().len() + 1);
    assert_eq!(&after.entries()[..whole.entries().len()], whole.entries());
    referee.browser().switch_to(&second);
    referee.stage.reload();
    referee.browser().wait_until(
        "the match is in the list",
        "document.querySelectorAll('.sheet-line').length === 1",
    );
    Ok(())
}

fn finished(count: u64) -> Vec<KeptMatch> {
    (1..=count)
        .map(|seed| KeptMatch {
            log: Log {
                id: format!("f{seed}"),
                entries: simulate(Preset::SchoolJunior, seed),
            },
            ..KeptMatch::default()
        })
        .collect()
}

/// How many lines of matches stand in local storage, by match.
const IN_LOCAL: &str = "Object.keys(localStorage).filter((k) => k.startsWith('dutystand/m/'))
    .reduce((all, k) => { const id = k.split('/')[2]; all[id] = (all[id] ?? 0) + 1; return all; }, {})";

fn finished_matches_leave_room_for_new_ones(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let all = finished(12);
    let file = record::write_backup(&all, &OnDesk::default(), None);
    referee.open_file("all.json", file.as_bytes());
    referee.reads("all.json: 12 matches new");
    assert_eq!(referee.browser().value(IN_LOCAL), json!({}));
    // One that the first version left in local storage goes the same way.
    let entries = &all[0].log.entries;
    let mut writer = record::LineWriter::default();
    let lines: Vec<(String, String)> = entries
        .iter()
        .map(|e| (format!("dutystand/m/f1/{:05}", e.n), writer.line(e)))
        .collect();
    referee.browser().run(
        "for (const [key, line] of arguments[0]) localStorage.setItem(key, line);",
        json!([lines]),
    );
    referee.stage.reload();
    referee.browser().wait_until(
        "local storage holds no finished match",
        &format!("Object.keys({IN_LOCAL}).length === 0"),
    );
    // Looking at one writes nothing there; its sheet is whole.
    let sheet = format!("{}#/sheet/f1", referee.stage.url());
    referee.browser().goto(&sheet);
    referee.browser().find("#saved.safe");
    assert_eq!(referee.browser().value(IN_LOCAL), json!({}));
    assert_eq!(referee.kept().durable.len(), entries.len());
    Ok(())
}
