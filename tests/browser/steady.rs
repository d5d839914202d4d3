//! What comes by itself moves no button: a finger that is on its way reaches what it was aimed at.

use serde_json::{json, Value};

use crate::driver::Engine;
use crate::kept::{begun, FILL};
use crate::referee::{Referee, Side};
use crate::smoke::comes_late;
use crate::stage::Stage;
use crate::versions::newer_waits;
use crate::{Ran, Test};

/// The tests of this file. Another engine's window has a least size of its own.
pub const TESTS: &[Test] = &[
    Test {
        name: "steady_ways_in_while_the_start_says_why_it_needs_a_network",
        engines: &[Engine::Chromium],
        run: not_offline,
    },
    Test {
        name: "steady_ways_in_while_a_newer_version_is_mentioned",
        engines: &[Engine::Chromium],
        run: newer_version,
    },
    Test {
        name: "steady_ways_in_while_a_match_is_found_late",
        engines: &[Engine::Chromium],
        run: found_late,
    },
    Test {
        name: "steady_halves_while_the_storage_fills_up",
        engines: &[Engine::Chromium],
        run: storage_fills_up,
    },
];

/// The smallest phone, an ordinary one, one that lies, and a tablet.
const SIZES: [(u32, u32); 4] = [(320, 568), (360, 740), (740, 360), (1180, 820)];

/// Where each of them stands, with its words.
fn places(stage: &mut Stage, css: &str) -> Value {
    stage.browser().run(
        "return [...document.querySelectorAll(arguments[0])].filter((e) => e.checkVisibility()).map((e) => {
            const { left, top, width, height } = e.getBoundingClientRect();
            return [e.innerText.replace(/\\s+/g, ' '), ...[left, top, width, height].map(Math.round)];
         });",
        json!([css]),
    )
}

/// What can be begun on the start screen.
const WAYS: &str = ".start-begin button, .start-begin a";

/// Compares the ways in before the program is there with those beside the notice.
fn same_with_the_notice(stage: &mut Stage, url: &str, what: &str) {
    for (width, height) in SIZES {
        stage.browser().screen(width, height);
        stage.browser().goto("about:blank");
        stage.browser().goto(url);
        stage.browser().wait_until(
            "the start is painted",
            "document.querySelector('#start-here .start-half')?.checkVisibility() ?? false",
        );
        let before = places(stage, WAYS);
        assert_eq!(before.as_array().map(Vec::len), Some(6));
        stage.browser().wait_until(
            "the notice is there",
            "document.querySelector('#offline')?.checkVisibility() ?? false",
        );
        assert_eq!(places(stage, WAYS), before, "{what} {width}x{height}");
        stage
            .browser()
            .picture(&format!("steady-{what}-{width}x{height}"));
    }
}

fn not_offline(stage: &mut Stage) -> Ran {
    comes_late(stage);
    stage.hand_out("sw.js", b"this is no script");
    let url = stage.url();
    same_with_the_notice(stage, &url, "no-worker");
    let url = stage.insecure("hall.invalid");
    same_with_the_notice(stage, &url, "insecure");
    Ok(())
}

fn newer_version(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.stage.ready_offline();
    // An older match lies below the ways in: its line moves, so for a moment it takes no press.
    referee.tap_at("#quick-tally");
    referee.point(Side::Left);
    referee.saved();
    referee.tap("Back");
    referee.browser().find(".sheet-open");
    let mut before = Vec::new();
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        before.push(places(referee.stage, WAYS));
    }
    referee.browser().run(
        "new MutationObserver(() => {
            if (document.querySelector('#new-version')) globalThis.presses ??= getComputedStyle(document.querySelector('.sheet-open')).pointerEvents;
         }).observe(document.querySelector('.start'), { childList: true, subtree: true });
         return null;",
        json!([]),
    );
    newer_waits(referee.stage);
    referee.browser().find("#new-version");
    for ((width, height), before) in SIZES.into_iter().zip(before) {
        referee.browser().screen(width, height);
        assert_eq!(places(referee.stage, WAYS), before, "{width}x{height}");
        referee
            .browser()
            .picture(&format!("steady-newer-{width}x{height}"));
    }
    assert_eq!(referee.browser().value("globalThis.presses"), json!("none"));
    referee.browser().wait_until(
        "it can be pressed again",
        "getComputedStyle(document.querySelector('.sheet-open')).pointerEvents === 'auto'",
    );
    Ok(())
}

fn found_late(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("late", begun());
    referee.browser().find("#half-left");
    // After a kill local storage may have lost what was written last, and the database alone knows of the match.
    referee.browser().run(
        "localStorage.removeItem('dutystand/s/continue'); return null;",
        json!([]),
    );
    referee.browser().cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": "addEventListener('DOMContentLoaded', () => new MutationObserver(() => {
            const [way, began] = ['#continue', '#new-match'].map((css) => document.querySelector(css));
            if (way && began) globalThis.presses ??= [way, began].map((e) => getComputedStyle(e).pointerEvents);
        }).observe(document, { childList: true, subtree: true }))" }),
    );
    let url = referee.stage.url();
    referee.browser().goto("about:blank");
    referee.browser().goto(&url);
    referee.browser().find("#continue");
    let presses = referee.browser().value("globalThis.presses");
    assert_eq!(presses, json!(["none", "none"]), "whatever it moved waits");
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    // Known from the beginning, it moves nothing and is pressed at once.
    referee.browser().goto("about:blank");
    referee.browser().goto(&url);
    referee.browser().find("#continue");
    let presses = referee.browser().value("globalThis.presses");
    assert_eq!(presses, json!(["auto", "auto"]));
    Ok(())
}

fn storage_fills_up(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("full", begun());
    let all = "#half-left, #half-right, .tools button, #undo, #take-back, .groups button";
    let mut before = Vec::new();
    referee.point(Side::Left);
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        referee
            .browser()
            .find(".groups button, .whole-group button");
        referee.still();
        before.push(places(referee.stage, all));
    }
    assert_eq!(referee.browser().run(FILL, json!([])), json!(false));
    for ((width, height), before) in SIZES.into_iter().zip(before) {
        referee.browser().screen(width, height);
        if referee
            .browser()
            .value("document.querySelector('#storage-trouble') === null")
            == json!(true)
        {
            referee.tap_at("#take-back");
            referee.point(Side::Left);
        }
        referee.browser().find("#storage-trouble");
        referee.browser().run(
            "document.querySelector('.strip').scrollTop = 0; return null;",
            json!([]),
        );
        referee.still();
        let numbers = |places: Value| -> Vec<Value> {
            let all = places.as_array().cloned().unwrap_or_default();
            all.into_iter()
                .map(|one| json!(one.as_array().map(|one| one[1..].to_vec())))
                .collect()
        };
        assert_eq!(
            numbers(places(referee.stage, all)),
            numbers(before),
            "{width}x{height}"
        );
        referee
            .browser()
            .picture(&format!("steady-full-{width}x{height}"));
        // It can be read whole and pressed, and hides nothing for good.
        referee.tap_in("#storage-trouble", "Export");
        let last = "[...document.querySelectorAll('.strip button')].filter((e) => e.checkVisibility()).at(-1)";
        referee.browser().run(
            &format!("{last}?.scrollIntoView({{ block: 'center' }}); return null;"),
            json!([]),
        );
        let free = format!(
            "(() => {{ const one = {last}, box = one.getBoundingClientRect();
               return one.contains(document.elementFromPoint((box.left + box.right) / 2, (box.top + box.bottom) / 2)); }})()"
        );
        referee
            .browser()
            .wait_until("the last button of the strip can be reached", &free);
    }
    Ok(())
}
