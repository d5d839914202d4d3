//! What a finger does that nobody has planned: twice, on the wrong thing, while the screen changes, and back.

use game::{Entry, Kind, NO_RALLY_MS};
use rules::{Shirt, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "two_taps_at_once_are_asked_about_and_lost_in_no_case",
        engines: ALL,
        run: two_taps_at_once,
    },
    Test {
        name: "two_taps_at_once_on_a_busy_phone_are_asked_about_too",
        engines: CHROMIUM,
        run: two_taps_on_a_busy_phone,
    },
    Test {
        name: "a_tap_that_was_held_back_outlives_the_page",
        engines: CHROMIUM,
        run: a_held_tap_outlives_the_page,
    },
    Test {
        name: "the_court_answers_a_question_and_gives_no_point_meanwhile",
        engines: CHROMIUM,
        run: the_court_answers,
    },
    Test {
        name: "back_closes_what_is_open_and_then_leaves_the_screen",
        engines: ALL,
        run: back_closes_first,
    },
    Test {
        name: "a_second_press_meets_nothing_that_came_up_under_the_finger",
        engines: CHROMIUM,
        run: a_second_press,
    },
];

fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("finger", begun());
    referee.browser().find("#half-left");
    referee
}

fn score(referee: &mut Referee<'_>) -> (u16, u16) {
    let court = referee.court();
    (court[0].score, court[1].score)
}

/// Long enough for a rally.
fn a_rally_later() {
    std::thread::sleep(std::time::Duration::from_millis(
        NO_RALLY_MS.unsigned_abs() + 100,
    ));
}

fn two_taps_at_once(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    // One intention.
    referee.taps(&[Side::Left, Side::Left], 120);
    referee.reads_at("#held", "Two points for");
    assert_eq!(score(&mut referee), (1, 0), "the second one waits");
    referee.browser().picture("held-point");
    referee.tap_at("#held-no");
    assert!(!referee.sees("Yes, 2 points"));
    assert_eq!(score(&mut referee), (1, 0));
    a_rally_later();
    // Two points after all.
    referee.taps(&[Side::Left, Side::Left], 120);
    referee.tap_at("#held-yes");
    assert_eq!(score(&mut referee), (3, 0));
    a_rally_later();
    // Play goes on unanswered, and the answer comes late: each rally stands at its own place.
    referee.taps(&[Side::Right, Side::Right], 120);
    a_rally_later();
    referee.taps(&[Side::Left], 0);
    assert_eq!(score(&mut referee), (4, 1));
    referee.tap_at("#held-yes");
    assert_eq!(score(&mut referee), (4, 2));
    let timeline = referee.court_is_right(false);
    let order: String = timeline
        .outcomes()
        .filter(|(_, o)| !matches!(o, game::Outcome::Struck(_)))
        .filter_map(|(e, _)| match e.kind {
            Kind::Rally { won_by, .. } => Some(won_by.letter()),
            _ => None,
        })
        .collect();
    assert_eq!(order, "AAABBA");
    a_rally_later();
    // Undo means the second tap.
    referee.taps(&[Side::Left, Side::Left], 120);
    referee.tap_at("#take-back");
    assert_eq!(score(&mut referee), (5, 2), "the first tap stands");
    a_rally_later();
    referee.tap_at("#take-back");
    assert_eq!(score(&mut referee), (4, 2));
    // The wrong half, put right at once.
    referee.taps(&[Side::Left, Side::Right], 300);
    referee.reads_at("#held", "Also a point for");
    referee.tap(&format!("One point, {B}"));
    assert_eq!(score(&mut referee), (4, 3));
    referee.court_is_right(false);
    // The question waits while two rallies go by, and each has had its second tap.
    for _ in 0..2 {
        a_rally_later();
        referee.taps(&[Side::Left, Side::Left], 120);
    }
    assert_eq!(score(&mut referee), (6, 3));
    referee.reads_at("#held", "2 taps came too soon after a point");
    referee.tap("Yes, all of them");
    assert_eq!(score(&mut referee), (8, 3));
    referee.court_is_right(false);
    Ok(())
}

fn two_taps_on_a_busy_phone(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let place = referee.browser().value(
        "(({ left, right, top, bottom }) => ({ x: (left + right) / 2, y: (top + bottom) / 2 }))
         (document.querySelector('#half-left').getBoundingClientRect())",
    );
    let begun = referee.browser().value("Date.now() / 1000");
    let begun = begun.as_f64().expect("a time in seconds");
    // The page hears of the second tap when a rally could have been played; the finger came 120 ms after the first.
    for after in [0.0, 0.12] {
        for (kind, points, later) in [
            ("touchStart", json!([place]), 0.0),
            ("touchEnd", json!([]), 0.03),
        ] {
            referee.browser().cdp(
                "Input.dispatchTouchEvent",
                json!({ "type": kind, "touchPoints": points, "timestamp": begun + after + later }),
            );
        }
        a_rally_later();
    }
    referee.reads_at("#held", "Two points for");
    assert_eq!(score(&mut referee), (1, 0), "the second one waits");
    Ok(())
}

fn a_held_tap_outlives_the_page(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.taps(&[Side::Left, Side::Left], 120);
    referee.browser().find("#held");
    referee.browser().reload();
    referee.reads_at("#held", "Two points for");
    referee.tap_at("#held-yes");
    assert_eq!(score(&mut referee), (2, 0));
    // What was answered is not asked again.
    a_rally_later();
    referee.taps(&[Side::Right, Side::Right], 120);
    referee.tap_at("#held-no");
    referee.saved();
    referee.browser().reload();
    referee.browser().find("#half-left");
    assert_eq!(score(&mut referee), (2, 1));
    assert!(!referee.sees("Yes, 2 points"));
    Ok(())
}

fn the_court_answers(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let before = referee.timeline();
    referee.tap(&format!("Substitution {A}, 0 of 6 used"));
    referee.browser().find("#panel-title");
    // Those who are an answer are marked, and nobody else.
    let marked = "['left', 'right'].map((side) =>
        getComputedStyle(document.querySelector(`#half-${side} .spot`)).backgroundColor)";
    referee.browser().wait_until(
        "the team's players are marked",
        &format!("(([left, right]) => left !== right && right === 'rgba(0, 0, 0, 0)')({marked})"),
    );
    // The other team's half is no answer, and no point.
    referee.taps(&[Side::Right], 0);
    referee.reads_at("#due", "No point:");
    referee.browser().picture("court-asked");
    referee.tap_player(Side::Left, 4);
    referee.reads("Who comes in for 4?");
    assert_eq!(referee.timeline().entries(), before.entries());
    referee.tap("8 comes in");
    referee.tap("Record the substitution");
    let timeline = referee.court_is_right(false);
    let play = timeline.state().play().expect("a set");
    assert!(play.sides[Team::A].on_court().any(|s| s == Shirt(8)));
    // Nothing asked for a player: the half says so and gives nothing.
    referee.tap("Menu");
    referee.browser().find("#drawer-close");
    let entries = referee.timeline().entries().len();
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#due", "close the open panel first");
    assert_eq!(referee.timeline().entries().len(), entries);
    referee.tap_at("#drawer-close");
    // Nor is anybody marked where a question has no answer on court: the captain speaks, and nobody there
    // can be the new libero (19.4.2.1).
    for panel in ["Game captain", "New libero"] {
        referee.tap(&format!("More {A}"));
        referee.tap(panel);
        referee.browser().find("#panel-title");
        assert_eq!(
            referee
                .browser()
                .value("document.querySelector('.spot.answer, .half.asking')"),
            json!(null),
            "{panel}"
        );
        referee.taps(&[Side::Left], 0);
        referee.reads_at("#due", "close the open panel first");
        referee.tap_at("#panel-close");
    }
    // Somebody else is meant: the next tap counts.
    referee.tap(&format!("More {A}"));
    referee.tap("Misconduct");
    referee.tap_player(Side::Left, 3);
    referee.reads("Number 3: which level?");
    referee.tap_player(Side::Left, 2);
    referee.reads("Number 2: which level?");
    referee.tap_at("#panel-close");
    referee.point(Side::Left);
    assert_eq!(score(&mut referee), (1, 0));
    Ok(())
}

/// The phone's own button.
fn back(referee: &mut Referee<'_>) {
    referee.browser().back();
}

fn gone(referee: &mut Referee<'_>, css: &str) {
    let gone = format!("document.querySelector({}) === null", json!(css));
    referee
        .browser()
        .wait_until(&format!("{css} is gone"), &gone);
}

fn back_closes_first(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.tap(&format!("More {A}"));
    referee.browser().find("#panel-title");
    back(&mut referee);
    gone(&mut referee, "#panel-title");
    referee.browser().find("#half-left");
    // One closed by its own button costs no second step.
    referee.tap("Menu");
    referee.tap_at("#drawer-close");
    gone(&mut referee, "#drawer-close");
    referee.tap("Menu");
    referee.browser().find("#drawer-close");
    back(&mut referee);
    gone(&mut referee, "#drawer-close");
    // A list keeps its place below a single signal.
    referee.tap("Menu");
    referee.tap("Signals");
    referee.browser().wait_until(
        "the list is long",
        "document.body.scrollHeight > innerHeight * 2",
    );
    referee
        .browser()
        .run("scrollTo(0, 700); return null;", json!([]));
    referee.browser().run(
        "[...document.querySelectorAll('.signal-line')].find((one) => one.getBoundingClientRect().top > 100).click(); return null;",
        json!([]),
    );
    referee.browser().find(".signal-look");
    back(&mut referee);
    referee.browser().wait_until(
        "the list is where it was",
        "document.querySelector('.signal-list') && Math.abs(scrollY - 700) < 4",
    );
    back(&mut referee);
    referee.browser().find("#half-left");
    back(&mut referee);
    referee.browser().find("#continue");
    Ok(())
}

fn a_second_press(stage: &mut Stage) -> Ran {
    let mut entries = begun();
    let begins = |e: &Entry| e.kind == Kind::BeginSet;
    entries.truncate(entries.iter().position(begins).expect("a set begins"));
    let mut referee = Referee::at(stage);
    referee.go_on_with("second-press", entries);
    referee.tap("Last check");
    let begin = referee.browser().find("#begin-set");
    referee.browser().tap_twice(&begin, 150);
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    let after = timeline.entries().last().map(|e| e.kind.clone());
    assert_eq!(
        after,
        Some(Kind::BeginSet),
        "the court under the finger gives no point"
    );
    // Undo, pressed twice, takes one entry back.
    referee.point(Side::Left);
    referee.point(Side::Left);
    let undo = referee.browser().find("#take-back");
    referee.browser().tap_twice(&undo, 150);
    assert_eq!(score(&mut referee), (1, 0));
    // A time-out, pressed twice, is one: the other one of the set stays with the team.
    let time_out = referee.browser().find("#time-out-left");
    referee.browser().tap_twice(&time_out, 150);
    let is_time_out = |e: &&Entry| matches!(e.kind, Kind::TimeOut { .. });
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.entries().iter().filter(is_time_out).count(), 1);
    Ok(())
}
