//! What was tapped is kept: through a kill, without a network, beside a second tab, with storage
//! that is full, forbidden or damaged.

use game::Entry;
use rules::{Preset, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side, A};
use crate::stage::Stage;
use crate::support::{numbered, opening, set_begins};
use crate::{Ran, Test, ALL, BOTH};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "what_is_marked_as_saved_outlives_a_kill",
        engines: ALL,
        run: what_is_marked_as_saved_outlives_a_kill,
    },
    Test {
        name: "a_match_goes_on_without_a_network_and_asks_nobody",
        engines: CHROMIUM,
        run: a_match_goes_on_without_a_network_and_asks_nobody,
    },
    Test {
        name: "one_tab_writes_and_the_other_looks",
        // WebKitGTK's driver cannot lead a finger to a page that lies behind another one.
        engines: BOTH,
        run: one_tab_writes_and_the_other_looks,
    },
    Test {
        name: "full_storage_is_said_and_play_goes_on",
        engines: CHROMIUM,
        run: full_storage_is_said_and_play_goes_on,
    },
    Test {
        name: "with_no_room_at_all_play_goes_on_and_can_be_handed_over",
        engines: CHROMIUM,
        run: with_no_room_at_all_play_goes_on_and_can_be_handed_over,
    },
    Test {
        name: "forbidden_storage_is_said_and_play_goes_on",
        engines: CHROMIUM,
        run: forbidden_storage_is_said_and_play_goes_on,
    },
    Test {
        name: "a_damaged_line_is_mended_from_the_other_copy",
        engines: ALL,
        run: a_damaged_line_is_mended_from_the_other_copy,
    },
    Test {
        name: "a_damaged_durable_copy_is_mended_too",
        engines: CHROMIUM,
        run: a_damaged_durable_copy_is_mended_too,
    },
];

/// A match up to its first service, by the international rules; A stands left and serves.
pub fn begun() -> Vec<Entry> {
    let rules = Preset::International.rules();
    let mut kinds = opening(rules);
    kinds.extend(set_begins(&rules));
    numbered(kinds)
}

/// On the court of that match.
fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("kept", begun());
    referee.browser().find("#half-left");
    referee
}

fn what_is_marked_as_saved_outlives_a_kill(stage: &mut Stage) -> Ran {
    stage.keeps()?;
    let mut referee = on_court(stage);
    referee.points(
        &[
            Side::Left,
            Side::Right,
            Side::Right,
            Side::Left,
            Side::Right,
        ],
        50,
    );
    referee.reads("Point Herons");
    referee.saved();
    referee.stage.kill_browser();

    referee.stage.start_browser();
    referee.stage.open();
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (2, 3));
    assert_eq!(timeline.entries().len(), begun().len() + 5);
    // And it goes on in the same chain of lines.
    referee.point(Side::Left);
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score().a, 3);
    Ok(())
}

fn a_match_goes_on_without_a_network_and_asks_nobody(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.stage.ready_offline();
    for network in [true, false] {
        if !network {
            referee.stage.network_off();
        }
        referee.stage.reload();
        referee.browser().find("#half-left");
        referee.browser().wait_until(
            "the worker has looked for a new version",
            "performance.now() > 2000",
        );
        referee.browser().fetched();
        referee.browser().complaints();
        referee.stage.asked();

        referee.points(&[Side::Left, Side::Left, Side::Right], 50);
        referee.reason("Ball", "Ball in");
        referee.tap_at("#take-back");
        referee.tap_at("#change-left");
        referee.tap_at("#panel-close");
        referee.tap("Menu");
        referee.tap("Sheet");
        referee.reads("The match is not over");
        referee.tap("Back");
        referee.tap("Menu");
        referee.tap("Match log");
        referee.tap("Back");
        referee.tap("Back");
        referee.tap_at("#continue");
        referee.browser().find("#half-left");
        referee.court_is_right(false);

        assert_eq!(referee.browser().fetched(), Vec::<String>::new());
        // The browser's own question whether there is a new version is no request of the page.
        let asked = referee.stage.asked();
        let others = asked.iter().filter(|path| !path.ends_with("/sw.js"));
        assert_eq!(others.collect::<Vec<_>>(), Vec::<&String>::new());
        assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    }
    let timeline = referee.timeline();
    assert_eq!(timeline.state().score().a, 4);
    assert_eq!(timeline.state().score().b, 2);
    Ok(())
}

fn one_tab_writes_and_the_other_looks(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point(Side::Left);
    referee.saved();
    let address = referee.browser().value("location.href");
    let address = address.as_str().expect("an address").to_owned();
    let first = referee.browser().tab();
    let second = referee.browser().open_tab();
    referee.browser().goto(&address);
    referee.stage.started();
    referee.reads("This match is open in another tab. Here you can only look.");
    let seen = referee.court_is_right(false);
    // A tap there changes nothing.
    referee.point(Side::Left);
    assert_eq!(referee.court_is_right(false).entries(), seen.entries());
    // It says why, and the buttons look like it.
    referee.tap_in("[role=dialog]", "Cancel");
    let disabled = "document.querySelector('.floor').ariaDisabled";
    assert_eq!(referee.browser().value(disabled), "true");

    // What the first one writes shows in the second.
    referee.browser().switch_to(&first);
    referee.point(Side::Left);
    referee.saved();
    referee.browser().switch_to(&second);
    referee.reads_at("#half-left .half-score", "2");

    referee.tap("Take over here");
    referee.browser().wait_until(
        "the second tab writes",
        "!document.body.innerText.includes('Here you can only look')",
    );
    referee.point(Side::Right);
    let timeline = referee.court_is_right(false);
    assert_eq!(
        (timeline.state().score().a, timeline.state().score().b),
        (2, 1)
    );

    referee.browser().switch_to(&first);
    referee.reads("Another tab has taken over this match. Here you can only look.");
    referee.reads_at("#half-right .half-score", "1");
    referee.point(Side::Right);
    assert_eq!(referee.court_is_right(false).entries(), timeline.entries());
    Ok(())
}

/// Fills local storage to the last character.
pub const FILL: &str = "
    let size = 1 << 22, n = 0;
    while (size > 0) {
      try { localStorage.setItem('fill' + n++, 'x'.repeat(size)); }
      catch { size >>= 1; }
    }
    let room = false;
    try { localStorage.setItem('one more character', ''); room = true; } catch { }
    return room;";

fn full_storage_is_said_and_play_goes_on(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let downloads = referee.catch_downloads();
    referee.point(Side::Left);
    referee.saved();
    assert_eq!(referee.browser().run(FILL, json!([])), json!(false));

    // One copy is left: said, and nothing is lost by a reload.
    referee.point(Side::Right);
    referee.reads_at("#storage-trouble", "The storage of this browser is full.");
    referee.reads_at("#saved", "one copy");
    referee.point(Side::Right);
    let score = |referee: &mut Referee| {
        let court = referee.court();
        (court[0].score, court[1].score)
    };
    assert_eq!(score(&mut referee), (1, 2));
    referee.on_disk(begun().len() + 3);
    referee.tap_in("#storage-trouble", "Export");
    let (_, text) = referee.caught(&downloads);
    assert_eq!(record::read(&text).log.entries.len(), begun().len() + 3);

    // Room again: the copy is made good.
    referee.browser().run(
        "for (const key of Object.keys(localStorage)) if (!key.startsWith('dutystand/')) localStorage.removeItem(key);",
        json!([]),
    );
    referee.point(Side::Right);
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.entries().len(), begun().len() + 4);
    assert_eq!(
        referee
            .browser()
            .value("document.querySelector('#storage-trouble')"),
        json!(null)
    );
    Ok(())
}

fn with_no_room_at_all_play_goes_on_and_can_be_handed_over(stage: &mut Stage) -> Ran {
    // No byte for this page in IndexedDB, and local storage filled.
    let origin = stage.url();
    let origin = origin.split("/school").next().expect("a host");
    stage.browser().cdp(
        "Storage.overrideQuotaForOrigin",
        json!({ "origin": origin, "quotaSize": 1 }),
    );
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    assert_eq!(referee.browser().run(FILL, json!([])), json!(false));
    referee.stage.reload();
    referee.tap_at("#new-match");
    referee.tap("Open the match");
    referee.reads_at("#saved", "not saved");
    referee.reads_at("#storage-trouble", "The storage of this browser is full.");
    referee.reads_at("#storage-trouble", "Export it before you close the page.");
    referee.tap("Done: Ball");
    referee.tap_in("#storage-trouble", "Export");
    let (_, text) = referee.caught(&downloads);
    let reading = record::read(&text);
    assert_eq!(reading.problems, []);
    assert_eq!(reading.log.entries.len(), 2);
    Ok(())
}

fn forbidden_storage_is_said_and_play_goes_on(stage: &mut Stage) -> Ran {
    // As the setting "block all site data" leaves it: the browser refuses, not a script of ours.
    stage.forbid_storage();
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    assert_eq!(
        referee.browser().value(
            "(() => { try { return localStorage !== null; } catch (trouble) { return trouble.name; } })()"
        ),
        json!("SecurityError")
    );
    referee.reads("This browser does not allow this page to store anything.");
    referee.tap_at("#quick-tally");
    referee.tap("Menu");
    referee.tap("Two quick taps: ask first");
    referee.tap_at("#drawer-close");
    referee.points(&[Side::Left, Side::Left, Side::Right], 50);
    referee.reads_at("#half-left .half-score", "2");
    referee.reads_at("#half-right .half-score", "1");
    referee.reads_at("#saved", "not saved");
    referee.tap_in("#storage-trouble", "Export");
    let (_, text) = referee.caught(&downloads);
    let reading = record::read(&text);
    assert_eq!(reading.problems, []);
    let score = game::Timeline::of(reading.log.entries).state().score();
    assert_eq!((score[Team::A], score[Team::B]), (2, 1));
    Ok(())
}

fn a_damaged_line_is_mended_from_the_other_copy(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.points(&[Side::Left, Side::Right, Side::Right], 50);
    referee.reads("Point Herons");
    let whole = referee.timeline();
    // The second last entry turns into a point for the other side, its check untouched.
    let n = whole.entries().len() - 1;
    referee.browser().run(
        "const key = 'dutystand/m/kept/' + String(arguments[0]).padStart(5, '0');
         const line = localStorage.getItem(key);
         const damaged = line.replace('\"won_by\":\"B\"', '\"won_by\":\"A\"');
         if (damaged === line) throw new Error(line);
         localStorage.setItem(key, damaged);",
        json!([n]),
    );
    referee.stage.reload();
    referee.reads_at("#damaged", &format!("Entry {n} is damaged"));
    let mended = referee.court_is_right(false);
    assert_eq!(mended.entries(), whole.entries());
    referee.tap("Understood");
    referee.point_for(A);
    referee.stage.reload();
    referee.browser().find("#half-left");
    let after = referee.court_is_right(false);
    assert_eq!(after.entries().len(), whole.entries().len() + 1);
    assert_eq!(
        referee
            .browser()
            .value("document.querySelector('#damaged')"),
        json!(null)
    );
    Ok(())
}

fn a_damaged_durable_copy_is_mended_too(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.points(&[Side::Left, Side::Right, Side::Right], 50);
    referee.reads("Point Herons");
    let whole = referee.timeline();
    let n = whole.entries().len() - 1;
    referee.browser().value(&format!(
        "new Promise((done, broken) => {{
           const open = indexedDB.open('dutystand');
           open.onsuccess = () => {{
             const write = open.result.transaction('lines', 'readwrite');
             write.objectStore('lines').delete(['kept', {n}]);
             write.oncomplete = () => {{ open.result.close(); done(true); }};
             write.onerror = () => broken(write.error);
           }};
         }})"
    ));
    assert_eq!(referee.kept().durable.len(), whole.entries().len() - 1);
    referee.stage.reload();
    referee.reads_at(
        "#damaged",
        &format!("Entry {n} is damaged in one of the two copies"),
    );
    let mended = referee.court_is_right(false);
    assert_eq!(mended.entries(), whole.entries());
    Ok(())
}
