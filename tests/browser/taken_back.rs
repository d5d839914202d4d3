//! Wrong taps: taking back the last entry and an older one, and deciding against the advice.

use game::{Entry, Kind, Outcome};
use rules::{Preset, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "the_last_entry_is_taken_back_with_one_tap",
        engines: CHROMIUM,
        run: the_last_entry_is_taken_back_with_one_tap,
    },
    Test {
        name: "an_older_entry_is_taken_back_from_the_list",
        engines: CHROMIUM,
        run: an_older_entry_is_taken_back_from_the_list,
    },
    Test {
        name: "a_refused_request_can_be_recorded_anyway",
        engines: CHROMIUM,
        run: a_refused_request_can_be_recorded_anyway,
    },
    Test {
        name: "one_tap_is_one_point",
        engines: CHROMIUM,
        run: one_tap_is_one_point,
    },
    Test {
        name: "a_locked_phone_records_nothing",
        engines: CHROMIUM,
        run: a_locked_phone_records_nothing,
    },
    Test {
        name: "the_last_tap_of_a_set_touches_nothing_else",
        engines: crate::ALL,
        run: the_last_tap_of_a_set_touches_nothing_else,
    },
];

fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("taken-back", begun());
    referee.browser().find("#half-left");
    referee
}

fn the_last_entry_is_taken_back_with_one_tap(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    let right = referee.court();
    referee.point_for(B);
    referee.reads_at("#last-entry", &format!("Point {B}"));
    referee.tap_at("#take-back");
    referee.reads_at("#last-entry", &format!("Point {A}"));
    assert_eq!(referee.court(), right);
    let timeline = referee.court_is_right(false);
    // Nothing has disappeared: the point stands in the log, and so does what took it back.
    let rallies = |kind: &Kind| matches!(kind, Kind::Rally { .. });
    assert_eq!(
        timeline
            .entries()
            .iter()
            .filter(|e| rallies(&e.kind))
            .count(),
        2
    );
    // A reason is taken back before its rally.
    referee.reason("Ball", "Ball in");
    referee.reads_at("#last-entry", "Reason: Ball in");
    referee.tap_at("#take-back");
    referee.reads_at("#last-entry", &format!("Point {A}"));
    assert_eq!(referee.court_is_right(false).state().score().a, 1);
    // A time-out takes its count-down with it.
    referee.tap(&format!("Time-out {A}, 0 of 2 used"));
    referee.browser().find(".count-down");
    referee.tap_at("#take-back");
    referee.browser().wait_until(
        "the count-down is gone",
        "document.querySelector('.count-down') === null",
    );
    let timeline = referee.court_is_right(false);
    assert!(timeline.state().timers().is_empty());
    assert!(referee.sees(&format!("Time-out {A}, 0 of 2 used")));
    Ok(())
}

fn an_older_entry_is_taken_back_from_the_list(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.points(&[Side::Left, Side::Right, Side::Left, Side::Left], 50);
    referee.reads_at("#half-left .half-score", "3");
    let first = begun().len() + 1;
    referee.tap("Menu");
    referee.tap("Match log");
    referee.tap(&format!("Undo entry {}, Point {B}", first + 1));
    referee.reads(&format!("Undo entry {}, Point {B}?", first + 1));
    referee.tap_in("[role=dialog]", "Undo");
    referee.reads(&format!("Undone by entry {}", first + 4));
    referee.tap("Back");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (3, 0));
    assert_eq!(
        timeline.outcome(first as u32 + 1),
        Some(&Outcome::Struck(first as u32 + 4))
    );
    Ok(())
}

fn a_refused_request_can_be_recorded_anyway(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let most = Preset::International.rules().time_outs.per_set;
    assert_eq!(most, Some(2));
    for used in 0..2 {
        referee.tap(&format!("Time-out {B}, {used} of 2 used"));
        referee.point_for(A);
    }
    let before = referee.timeline();
    referee.tap(&format!("Time-out {B}, 2 of 2 used"));
    referee.browser().find("#refusal-sentence");
    referee.reads("Official Volleyball Rules, 15.1");
    referee.tap_in("[role=dialog]", "Cancel");
    assert_eq!(
        referee.timeline().entries(),
        before.entries(),
        "nothing was written"
    );

    referee.tap(&format!("Time-out {B}, 2 of 2 used"));
    referee.tap("Record it anyway");
    // Not without a reason.
    referee.tap("Record it anyway");
    referee.reads("Write a short reason first.");
    let field = referee.browser().find("#insist-why");
    referee
        .browser()
        .write(&field, "the second one was the other team's");
    referee.tap("Record it anyway");
    referee.browser().wait_until(
        "the sheet is closed",
        "document.querySelector('#refusal-sentence') === null",
    );
    let timeline = referee.court_is_right(false);
    let (entry, outcome) = timeline
        .outcomes()
        .filter(|(e, _)| matches!(e.kind, Kind::TimeOut { .. }))
        .last()
        .expect("a time-out");
    assert!(matches!(outcome, Outcome::Insisted(_)), "{outcome:?}");
    assert_eq!(
        entry.insist.as_deref(),
        Some("the second one was the other team's")
    );
    // It shows on the sheet.
    referee.tap("Menu");
    referee.tap("Sheet");
    referee.reads("the second one was the other team's");
    Ok(())
}

/// A finger that lifts gives a point; the click that a browser makes of it gives no second one, and
/// neither does a second lift of the same finger.
fn one_tap_is_one_point(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point(Side::Left);
    referee.browser().run(
        "const half = document.querySelector('#half-left');
         half.dispatchEvent(new PointerEvent('pointerup', { bubbles: true, pointerType: 'touch' }));
         return null;",
        json!([]),
    );
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score().a, 1);
    // A key is a tap as well.
    referee
        .browser()
        .run("document.querySelector('#half-right').click();", json!([]));
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score().b, 1);
    Ok(())
}

/// A pocket touches the screen anywhere; only two opposite corners, one right after the other, open
/// the lock.
fn a_locked_phone_records_nothing(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point(Side::Left);
    let before = referee.timeline();
    referee.tap("Menu");
    referee.tap("Lock");
    referee.browser().find("#locked");
    for x in [30, 120, 180, 240, 330] {
        for y in [20, 90, 200, 330, 460, 600, 720] {
            referee.browser().tap_place(x, y);
            // The second corner alone, or after a touch elsewhere, does not open it.
            if (x, y) == (240, 330) {
                referee.tap_at("#corner-1");
            }
        }
    }
    referee.tap_at("#corner-2");
    referee.browser().find("#locked");
    assert_eq!(referee.timeline().entries(), before.entries());
    referee.tap_at("#corner-1");
    referee.tap_at("#corner-2");
    referee.browser().wait_until(
        "the lock is open",
        "document.querySelector('#locked') === null",
    );
    referee.point(Side::Left);
    assert_eq!(referee.court_is_right(false).state().score().a, 2);
    Ok(())
}

/// How everything stands that can be operated: its words, what is chosen, what is open.
const STANDING: &str = "[location.hash, ...[...document.querySelectorAll('button, input, details')]
    .map((e) => [e.ariaLabel ?? e.innerText, e.ariaPressed, e.ariaExpanded, e.open].join())]";

/// The tap that ends a set brings another screen under the finger. What the browser makes of the
/// rest of that touch must not operate it, wherever on the half the finger was.
fn the_last_tap_of_a_set_touches_nothing_else(stage: &mut Stage) -> Ran {
    let mut entries = begun();
    for _ in 0..24 {
        entries.push(Entry::new(
            entries.len() as u32 + 1,
            Kind::Rally {
                won_by: Team::A,
                cause: None,
                by: None,
            },
        ));
    }
    let mut referee = Referee::at(stage);
    referee.go_on_with("last-tap", entries);
    referee.browser().find("#half-left");
    // From the table the team that wins stands on the right, where the next screen has its button.
    referee.tap("Seen from the stand. Turn the court for the table");
    referee.browser().find("#half-right");
    let half = referee.browser().value(
        "(({ left, top, right, bottom }) => ({ left, top, right, bottom }))(document.querySelector('#half-right').getBoundingClientRect())",
    );
    referee.point(Side::Right);
    over(&mut referee);
    referee.browser().run("scrollTo(0, 0);", json!([]));
    let right = referee.browser().value(STANDING);
    // Everything of the next screen that lies where the half was.
    let places = referee.browser().run(
        "const half = arguments[0];
         const both = (b) => [Math.max(b.left, half.left), Math.min(b.right, half.right),
                              Math.max(b.top, half.top), Math.min(b.bottom, half.bottom)];
         return [...document.querySelectorAll('button, input, summary, label')]
           .filter((e) => e.checkVisibility())
           .map((e) => both(e.getBoundingClientRect()))
           .filter(([left, right, top, bottom]) => right - left > 4 && bottom - top > 4)
           .map(([left, right, top, bottom]) => [Math.round((left + right) / 2), Math.round((top + bottom) / 2)]);",
        json!([half]),
    );
    let places: Vec<(i64, i64)> = serde_json::from_value(places).expect("places");
    assert!(!places.is_empty(), "something lies where the half was");
    for (x, y) in places {
        referee.tap_at("#take-back");
        referee.browser().find("#half-left");
        let before = referee.timeline().entries().len();
        // Whoever sees the court again does not tap within the same press.
        std::thread::sleep(std::time::Duration::from_millis(700));
        referee.browser().tap_place(x, y);
        over(&mut referee);
        // The point and the count-down of the interval, nothing else.
        assert_eq!(
            referee.timeline().entries().len(),
            before + 2,
            "at {x}, {y}"
        );
        assert_eq!(referee.browser().value(STANDING), right, "at {x}, {y}");
    }
    Ok(())
}

/// Waits for the whole screen after the set; its name in the bar may be there before it.
fn over(referee: &mut Referee) {
    referee.reads("After set 1");
    referee.browser().find(".set-over .interval");
    referee.browser().find(".set-over #take-back");
    referee.browser().find("#begin-set");
}
