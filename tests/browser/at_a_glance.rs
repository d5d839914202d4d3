//! What is seen and reached without looking twice: figures for eyes at arm's length, a lock that opens at
//! once, courts that change once, keys that stay where they are.

use game::{notices, Notice};
use serde_json::{json, Value};

use crate::driver::Engine;
use crate::kept::begun;
use crate::pictures::first_simulated;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "score_and_server_are_read_from_70_centimetres",
        engines: CHROMIUM,
        run: read_from_70_centimetres,
    },
    Test {
        name: "the_lock_opens_within_a_second_on_a_slow_phone",
        engines: CHROMIUM,
        run: the_lock_opens,
    },
    Test {
        name: "the_courts_change_with_one_movement_or_none",
        engines: CHROMIUM,
        run: the_courts_change,
    },
    Test {
        name: "a_side_out_turns_the_numbers_once_and_a_point_rolls",
        engines: CHROMIUM,
        run: a_side_out_turns,
    },
    Test {
        name: "a_match_is_kept_by_keys_alone",
        engines: CHROMIUM,
        run: by_keys_alone,
    },
];

fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("glance", begun());
    referee.browser().find("#half-left");
    referee
}

/// The height of a figure, in minutes of arc, seen from 70 cm on a phone with 140 CSS pixels to the inch:
/// 360 of them on 65 mm, as ordinary phones have. Figures are as high as capitals, 0.7 of the type or
/// more in every face that phones have (from memory).
fn minutes_of_arc(referee: &mut Referee, css: &str) -> f64 {
    let size = referee.browser().run(
        "return parseFloat(getComputedStyle(document.querySelector(arguments[0])).fontSize);",
        json!([css]),
    );
    let mm = size.as_f64().expect("it is on the screen") * 0.7 * 25.4 / 140.0;
    (mm / 700.0).atan().to_degrees() * 60.0
}

fn read_from_70_centimetres(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    referee.points(&[Side::Right; 12], 25);
    // Legible is 16, comfortable 20 to 22 minutes of arc (ISO 9241-303, from memory). The smallest phone
    // is a smaller thing with the same pixels to the inch.
    for (width, height) in [(360, 740), (320, 568), (740, 360)] {
        referee.browser().screen(width, height);
        let score = minutes_of_arc(referee, "#half-right .half-score");
        assert!(score > 40.0, "{width}x{height}: the score has {score:.1}");
    }
    for (width, height) in [(360, 740), (320, 568), (740, 360)] {
        referee.browser().screen(width, height);
        let server = minutes_of_arc(referee, "#half-right .half-serves b");
        assert!(
            server > 16.0,
            "{width}x{height}: the server has {server:.1}"
        );
    }
    referee.browser().screen(360, 740);
    referee.tap("Menu");
    referee.tap("Large court");
    for (width, height) in [(360, 740), (320, 568), (740, 360)] {
        referee.browser().screen(width, height);
        let score = minutes_of_arc(referee, "#half-right .half-score");
        assert!(
            score > 60.0,
            "{width}x{height}: alone the score has {score:.1}"
        );
        let server = minutes_of_arc(referee, "#half-right .half-serves b");
        assert!(
            server > 20.0,
            "{width}x{height}: alone the server has {server:.1}"
        );
    }
    Ok(())
}

fn the_lock_opens(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.tap("Menu");
    referee.tap("Lock");
    referee.browser().find("#locked");
    referee.browser().slow_down(4.0);
    let took = referee.browser().value(
        "(async () => {
           const begun = performance.now();
           document.querySelector('#corner-1').click();
           document.querySelector('#corner-2').click();
           while (document.querySelector('#locked')) await new Promise(requestAnimationFrame);
           await new Promise(requestAnimationFrame);
           return performance.now() - begun;
         })()",
    );
    referee.browser().slow_down(1.0);
    assert!(took.as_f64().is_some_and(|ms| ms < 1000.0), "{took} ms");
    Ok(())
}

/// What moves or has moved since the page was built: the halves of the court.
const MOVES: &str = "document.querySelector('.court').getAnimations({ subtree: true })
    .map((one) => [one.animationName, Math.round(one.effect.getTiming().duration), one.effect.getTiming().iterations])";

fn the_courts_change(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let due = first_simulated(|timeline| notices(timeline.state()).contains(&Notice::ChangeCourts));
    referee.go_on_with("change", due);
    referee.browser().find("#change-courts");
    assert_eq!(referee.browser().value(MOVES), json!([]));
    let left = referee.court()[0].name.clone();
    referee.tap("Courts changed");
    let moves = referee.browser().value(MOVES);
    assert_eq!(
        moves,
        json!([["from-right", 900, 1], ["from-left", 900, 1]]),
        "each half once"
    );
    referee.still();
    assert_eq!(referee.court()[1].name, left);
    // Taken back and made again for somebody who asked for less movement: the words say it.
    referee.tap_at("#take-back");
    referee.browser().cdp(
        "Emulation.setEmulatedMedia",
        json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] }),
    );
    referee.tap("Courts changed");
    referee.reads(&format!("{left} right"));
    let long = referee.browser().value(MOVES);
    let still = |one: &Value| one[1].as_f64().is_some_and(|ms| ms < 1.0);
    assert!(
        long.as_array().is_some_and(|all| all.iter().all(still)),
        "{long}"
    );
    Ok(())
}

/// A key goes down and up.
fn press(referee: &mut Referee, key: &str) {
    let text = if key == "Enter" { "\r" } else { "" };
    for what in ["keyDown", "keyUp"] {
        referee.browser().cdp(
            "Input.dispatchKeyEvent",
            json!({ "type": what, "key": key, "code": key, "text": text,
                    "windowsVirtualKeyCode": code_of(key) }),
        );
    }
}

/// The numbers of keys that a browser still wants (UI Events, legacy key attributes).
fn code_of(key: &str) -> u32 {
    match key {
        "Tab" => 9,
        "Enter" => 13,
        "Escape" => 27,
        "ArrowLeft" => 37,
        "ArrowRight" => 39,
        _ => 0,
    }
}

/// Waits until the keys speak to an element.
fn keys_at(referee: &mut Referee, css: &str) {
    referee.browser().wait_until(
        &format!("the keys are at {css}"),
        &format!("document.activeElement?.matches({})", json!(css)),
    );
}

/// Presses Tab until the keys speak to an element.
fn tab_to(referee: &mut Referee, css: &str) {
    for _ in 0..60 {
        let here = referee.browser().run(
            "return document.activeElement?.matches(arguments[0]);",
            json!([css]),
        );
        if here == json!(true) {
            return;
        }
        press(referee, "Tab");
    }
    panic!("Tab does not reach {css}");
}

fn by_keys_alone(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    referee.quick();
    tab_to(referee, "#half-left");
    press(referee, "ArrowRight");
    keys_at(referee, "#half-right");
    press(referee, "Enter");
    press(referee, "ArrowLeft");
    press(referee, "Enter");
    let timeline = referee.court_is_right(false);
    assert_eq!(
        (timeline.state().score().a, timeline.state().score().b),
        (1, 1)
    );
    // A reason.
    tab_to(referee, ".group:nth-child(2)");
    press(referee, "Enter");
    tab_to(referee, ".cause");
    press(referee, "Enter");
    referee.reads_at("#last-entry", "Reason: Net touch");
    // A panel takes the keys and gives them back.
    tab_to(referee, "#more-right");
    press(referee, "Enter");
    keys_at(referee, "#panel-title");
    press(referee, "Escape");
    keys_at(referee, "#more-right");
    // So does a sheet of choices.
    tab_to(referee, "#menu");
    press(referee, "Enter");
    keys_at(referee, ".drawer [aria-label=Close]");
    press(referee, "Escape");
    keys_at(referee, "#menu");
    // And a refusal.
    for used in 0..3 {
        tab_to(referee, "#time-out-left");
        press(referee, "Enter");
        if used < 2 {
            referee.reads_at("#last-entry", "Time-out");
            tab_to(referee, "#half-left");
            press(referee, "Enter");
        }
    }
    referee.browser().find("#refusal-sentence");
    keys_at(referee, ".drawer [aria-label=Close]");
    press(referee, "Escape");
    keys_at(referee, "#time-out-left");
    Ok(())
}

/// What moves in one half at this moment, by name: each name once, with how often and how long.
const MOVES_OF: &str = "
    const all = document.querySelector(arguments[0]).getAnimations({ subtree: true }).filter((one) => one.animationName);
    const of = (name) => all.filter((one) => one.animationName === name);
    return [...new Set(all.map((one) => one.animationName))].sort().map((name) =>
      [name, of(name).length, ...new Set(of(name).map((one) =>
        [one.effect.getTiming().duration, one.effect.getTiming().iterations].join(' x ')))]);";

/// FIVB Official Volleyball Rules 2025-2028, 7.6.2: the team that gained the right to serve moves one place
/// clockwise; the numbers go that way before the eyes, once.
fn a_side_out_turns(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    let moves = |referee: &mut Referee, half: &str| referee.browser().run(MOVES_OF, json!([half]));
    referee.quick();
    let places = referee.court()[1].places.clone();
    // Slowly, so that it can be looked at.
    let slowly = "document.documentElement.style.setProperty('--move', '60000ms')";
    referee.browser().value(slowly);
    let at_once = "document.getAnimations().forEach((one) => one.finish())";
    // A plain point turns nobody.
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#half-left .half-score", "1");
    let rolls = json!([["roll-in", 1, "60000 x 1"], ["roll-out", 1, "60000 x 1"]]);
    assert_eq!(moves(referee, "#half-left"), rolls);
    assert_eq!(moves(referee, "#half-right"), json!([]));
    referee.browser().value(at_once);
    referee.taps(&[Side::Right], 0);
    referee.reads_at("#half-right .half-score", "1");
    let turns = json!([
        ["one-place-on", 6, "60000 x 1"],
        ["roll-in", 1, "60000 x 1"],
        ["roll-out", 1, "60000 x 1"]
    ]);
    assert_eq!(moves(referee, "#half-right"), turns);
    // Each number begins where it stood before.
    let begins = referee.browser().run(
        "const spots = [...document.querySelectorAll('#half-right .spot')];
         const middle = (e) => { const b = e.getBoundingClientRect(); return [(b.left + b.right) / 2, (b.top + b.bottom) / 2]; };
         for (const one of document.querySelector('#half-right').getAnimations({ subtree: true })) { one.pause(); one.currentTime = 0; }
         return spots.map((spot) => {
           const [x, y] = middle(spot.querySelector('.spot-shirt'));
           const from = spots.findIndex((other) => { const [u, v] = middle(other); return Math.hypot(u - x, v - y) < 4; });
           return [spot.className.match(/at-(\\d)/)[1], spots[from]?.className.match(/at-(\\d)/)[1]].map(Number);
         }).sort();",
        json!([]),
    );
    assert_eq!(
        begins,
        json!([[1, 2], [2, 3], [3, 4], [4, 5], [5, 6], [6, 1]])
    );
    referee.browser().value(at_once);
    referee.still();
    let mut turned = places;
    turned.rotate_left(1);
    assert_eq!(referee.court()[1].places, turned);
    // What was seen does not move once more when a panel goes.
    referee.tap_at("#more-right");
    referee.tap_at("#panel-close");
    assert_eq!(moves(referee, "#half-right"), json!([]));
    // Who asked for less movement sees which places have changed, for a moment.
    referee.browser().cdp(
        "Emulation.setEmulatedMedia",
        json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] }),
    );
    referee
        .browser()
        .value("document.documentElement.style.setProperty('--marked', '60000ms')");
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#half-left .half-score", "2");
    let marks = moves(referee, "#half-left");
    let names: Vec<&str> = marks
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|one| one[0].as_str())
        .collect();
    assert!(
        names.iter().all(|name| name.starts_with("marked")),
        "{marks}"
    );
    let seven: u64 = marks
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(|one| one[1].as_u64())
        .sum();
    assert_eq!(seven, 7, "six places and the score: {marks}");
    Ok(())
}
