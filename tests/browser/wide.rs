//! Where there is room: the court keeps its proportion, what a phone shows in turn stands beside it, and on a
//! phone a form takes the whole height.

use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file. Another engine's window has a least size of its own.
pub const TESTS: &[Test] = &[
    Test {
        name: "wide_screens_show_beside_the_court_what_a_phone_shows_in_turn",
        engines: &[Engine::Chromium],
        run: beside_the_court,
    },
    Test {
        name: "wide_screens_open_the_next_step_beside_the_plan",
        engines: &[Engine::Chromium],
        run: beside_the_plan,
    },
    Test {
        name: "a_form_on_a_phone_takes_the_whole_height",
        engines: &[Engine::Chromium],
        run: the_whole_height,
    },
];

/// Tablets both ways, and a desk.
const WIDE: [(u32, u32); 3] = [(820, 1180), (1180, 820), (1440, 900)];

/// Whether everything that a selector finds stands wholly on the screen, and there is something.
fn all_in_sight(referee: &mut Referee, css: &str) {
    let there = format!(
        "(() => {{ const all = [...document.querySelectorAll('{css}')].filter((e) => e.checkVisibility());
            return all.length > 0 && all.every((e) => {{ const box = e.getBoundingClientRect();
              return box.top >= 0 && box.left >= 0 && box.bottom <= innerHeight + 1 && box.right <= innerWidth + 1; }}); }})()"
    );
    referee
        .browser()
        .wait_until(&format!("all of {css} stands in sight"), &there);
}

/// A court is twice as long as it is wide (FIVB Official Volleyball Rules 2025-2028, 1.1: 18 m by 9 m); the
/// score stands above the players, so the picture may be somewhat higher than that, and never a band.
fn keeps_its_proportion(referee: &mut Referee, size: (u32, u32)) {
    let [left, top, right, bottom] = referee.place(".court");
    let ratio = (right - left) / (bottom - top);
    assert!((1.4..=2.0).contains(&ratio), "{size:?}: {ratio:.2}");
}

fn beside_the_court(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("wide", begun());
    for (width, height) in WIDE {
        let size = (width, height);
        referee.browser().screen(width, height);
        referee.browser().find(".log-beside-line");
        referee.point(Side::Left);
        keeps_its_proportion(referee, size);
        let winner = referee.court()[0].name.clone();
        referee.reads_at(".log-beside-line:first-child", &format!("Point {winner}"));
        let score = referee.browser().text(".log-beside-line:first-child b");
        let court = referee.court();
        assert_eq!(score, format!("{}:{}", court[0].score, court[1].score));
        // No group has to be opened first.
        let groups = referee
            .browser()
            .value("document.querySelectorAll('.whole-group').length");
        assert_eq!(groups, json!(5), "{size:?}");
        all_in_sight(referee, ".whole-group .cause");
        referee.tap("Net touch");
        all_in_sight(referee, ".signal-card .signal-step");
        referee.browser().picture(&format!("wide-signal-{width}"));
        // What opens covers no half and pushes none.
        let before = referee.place(".court");
        referee.tap(&format!("More {A}"));
        referee.browser().find("#panel-title");
        assert_eq!(referee.place(".court"), before, "{size:?}");
        let panel = referee.place(".panel");
        assert!(
            panel[0] >= before[2] || panel[1] >= before[3],
            "{size:?}: {panel:?}"
        );
        referee.tap_at("#panel-close");
        referee.tap("Menu");
        let drawer = referee.place(".drawer");
        assert!(
            drawer[0] >= before[2] - 1.0 || drawer[1] >= before[3],
            "{size:?}: {drawer:?}"
        );
        referee.browser().picture(&format!("wide-menu-{width}"));
        referee.tap_in("[role=dialog]", "Close");
    }
    // Turned upright and small again it is a phone.
    referee.browser().screen(360, 740);
    referee.browser().wait_until(
        "the log is gone",
        "document.querySelector('.log-beside') === null",
    );
    Ok(())
}

fn beside_the_plan(stage: &mut Stage) -> Ran {
    stage.browser().screen(1180, 820);
    let mut referee = Referee::at(stage);
    let mut entries = begun();
    entries.truncate(1);
    referee.go_on_with("plan", entries);
    referee.browser().find(".step-body");
    let [_, _, plan, _] = referee.place(".step-row");
    let [step, top, ..] = referee.place(".step-body");
    assert!(step >= plan, "the step stands beside the plan");
    assert!(top < 200.0, "and from the top on");
    referee.tap("Toss");
    referee.browser().wait_until(
        "another one takes its place",
        "document.querySelectorAll('.step-body').length === 1 && document.querySelector('.step-body .toss, .step-body .coin, .step-body [class*=toss]') !== null",
    );
    referee.browser().picture("wide-plan");
    Ok(())
}

fn the_whole_height(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("whole", begun());
    referee.browser().screen(360, 740);
    referee.point(Side::Left);
    all_in_sight(referee, ".rally-reasons button");
    referee.tap(&format!("More {B}"));
    let [_, top, _, bottom] = referee.place(".strip");
    assert!(bottom - top > 580.0, "{top} to {bottom} of 740");
    all_in_sight(referee, ".panel .cause");
    // The score stays in sight, and a tap on it still says why it gives no point.
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#due", "No point:");
    referee.tap("Misconduct");
    // Somebody is asked for, so the players stand there.
    all_in_sight(referee, ".half.asking .spot");
    referee.tap("number 5");
    referee.tap("Warning, number 5");
    all_in_sight(referee, "#consequence li, #make-it");
    referee.browser().picture("form-whole-height");
    Ok(())
}
