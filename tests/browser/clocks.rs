//! What the clock changes by itself moves no button, since a finger may be on its way to it.

use game::entry::{Detail, Heading};
use game::{Kind, Phase};
use rules::{ByTeam, Preset, CALL_BACK_SECONDS};
use serde_json::{json, Value};

use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::{built, Stage};
use crate::support::{numbered, opening, run};
use crate::{Ran, Test, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_count_down_that_runs_out_moves_no_button_of_play",
        engines: BOTH,
        run: of_play,
    },
    Test {
        name: "an_interval_that_runs_out_moves_no_button",
        engines: BOTH,
        run: of_the_interval,
    },
    Test {
        name: "a_count_down_that_runs_out_moves_no_button_before_the_match",
        engines: BOTH,
        run: before_the_match,
    },
    Test {
        name: "a_step_that_becomes_due_or_late_moves_no_button",
        engines: BOTH,
        run: of_the_plan,
    },
];

/// A phone and a tablet.
const SIZES: [(u32, u32); 2] = [(360, 740), (1180, 820)];

/// Stands before the page's own loader: both clocks of the page go forward when the test says so.
const LATER: &str = "
let later = 0;
for (const clock of [Date, performance]) {
  const now = clock.now.bind(clock);
  clock.now = () => now() + later;
}
addEventListener('later', () => { later += Number(document.documentElement.dataset.later); });
";

/// A page whose clocks can be moved.
fn at_the_page(stage: &mut Stage) -> Referee<'_> {
    let (name, loader) = built("loader-", ".js");
    let mut altered = LATER.as_bytes().to_vec();
    altered.extend(loader);
    stage.hand_out(&name, &altered);
    Referee::at(stage)
}

/// So many seconds go by at once.
fn later(referee: &mut Referee, seconds: i64) {
    referee.browser().run(
        "document.documentElement.dataset.later = arguments[0];
         dispatchEvent(new Event('later'));
         return null;",
        json!([seconds * 1000]),
    );
}

/// Every button that can be seen, and where it stands.
const BUTTONS: &str = "[...document.querySelectorAll('#main button, #main input')]
    .filter((one) => one.checkVisibility({ visibilityProperty: true }))
    .map((one) => {
      const box = one.getBoundingClientRect();
      const words = one.id || one.getAttribute('aria-label') || one.innerText.trim();
      return [words, ...[box.left, box.top, box.width, box.height].map(Math.round)];
    })";

fn buttons(referee: &mut Referee) -> Vec<Value> {
    referee.still();
    match referee.browser().value(BUTTONS) {
        Value::Array(all) => all,
        other => panic!("a list was expected, not {other}"),
    }
}

/// So many seconds go by, which the page shows by `sign`; each button stands where it stood.
fn moves_nothing(referee: &mut Referee, name: &str, seconds: i64, sign: &str) {
    let before = buttons(referee);
    assert!(before.len() > 2, "{name}: {before:?}");
    let engine = referee.browser().engine().name();
    referee.browser().picture(&format!("{name}-runs-{engine}"));
    later(referee, seconds);
    referee
        .browser()
        .wait_until(&format!("{name}: {sign}"), sign);
    let after = buttons(referee);
    referee.browser().picture(&format!("{name}-over-{engine}"));
    let moved: Vec<_> = before.iter().filter(|one| !after.contains(one)).collect();
    assert!(moved.is_empty(), "{name} has moved {moved:?} to {after:?}");
}

const OVER: &str = "document.querySelector('.count-down.over') !== null";

fn of_play(stage: &mut Stage) -> Ran {
    let mut referee = at_the_page(stage);
    let referee = &mut referee;
    referee.go_on_with("time-out", begun());
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        referee.tap_at("#time-out-left");
        referee.browser().find(".count-down");
        moves_nothing(referee, &format!("time-out-{width}"), 31, OVER);
        referee.reads("time is over");
        referee.tap("End");
        referee.point(Side::Left);
    }
    Ok(())
}

fn of_the_interval(stage: &mut Stage) -> Ran {
    let mut referee = at_the_page(stage);
    let referee = &mut referee;
    let rules = Preset::International.rules();
    let mut kinds = opening(rules);
    kinds.extend(run(&"A".repeat(24)));
    referee.go_on_with("interval", numbered(kinds));
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        referee.point(Side::Left);
        referee.browser().find(".interval .count-down");
        assert_eq!(referee.timeline().state().phase(), Phase::BetweenSets);
        let says = |words: &str| {
            format!("document.querySelector('.interval').innerText.includes('{words}')")
        };
        let until_called = i64::from(rules.interval_seconds) - CALL_BACK_SECONDS;
        moves_nothing(
            referee,
            &format!("called-back-{width}"),
            until_called,
            &says("Whistle now"),
        );
        moves_nothing(
            referee,
            &format!("interval-{width}"),
            CALL_BACK_SECONDS,
            &says("whistle for the service"),
        );
        // The set is played on for the next size.
        referee.tap_at("#take-back");
        referee.browser().find("#half-left");
    }
    Ok(())
}

fn before_the_match(stage: &mut Stage) -> Ran {
    let mut referee = at_the_page(stage);
    let referee = &mut referee;
    referee.new_match("School, juniors Shorter, no libero");
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        referee.tap_at("#late-team");
        referee.tap_in(".late-team", B);
        let minutes = referee.browser().find("#wait-minutes");
        referee.browser().write(&minutes, "10");
        referee.tap("Start the clock");
        referee.browser().find(".count-down");
        // The room of what comes at the end is not left empty until then.
        referee.reads_at(".late-team", "If they come in time");
        moves_nothing(referee, &format!("late-{width}"), 601, OVER);
        referee.reads("The time is over.");
        referee.tap("They are here");
        referee.tap_at("#late-team");
    }
    // The second one ends the step, which brings the way on to the next one.
    for ((width, height), team) in SIZES.into_iter().zip([A, B]) {
        referee.browser().screen(width, height);
        referee.tap_at("#step-warm_up");
        referee.tap(&format!("Start: warm-up, {team}"));
        referee.browser().find(".count-down");
        moves_nothing(referee, &format!("warm-up-{width}"), 3600, OVER);
        // What ends a count-down does not begin it anew once the time is over.
        referee.tap(&format!("End now: warm-up, {team}"));
        referee
            .browser()
            .find_named(&format!("Start again: warm-up, {team}"));
        assert_eq!(referee.timeline().state().timers().len(), 0);
        referee.tap_at("#step-warm_up");
    }
    referee.reads_at("#step-warm_up", "done");
    Ok(())
}

fn of_the_plan(stage: &mut Stage) -> Ran {
    let mut referee = at_the_page(stage);
    let referee = &mut referee;
    for (width, height) in SIZES {
        // Its clock is right again.
        referee.stage.open();
        referee.browser().screen(width, height);
        // By the clock of the page, however late it is meanwhile.
        let start = referee.browser().value(
            "(() => {
                const at = new Date(Date.now() + 60 * 60000);
                return new Date(at - at.getTimezoneOffset() * 60000).toISOString().slice(0, 16);
            })()",
        );
        let mut heading = Heading::new(
            ByTeam {
                a: A.into(),
                b: B.into(),
            },
            Preset::International.rules(),
        );
        heading.details[Detail::Scheduled] = start.as_str().map(str::to_owned);
        heading.details[Detail::MatchNo] = Some(width.to_string());
        let kinds = [Kind::Match(Box::new(heading))];
        referee.go_on_with(&format!("plan-{width}"), numbered(kinds));
        referee.browser().find("#step-last_check");
        referee.browser().find("#match-details");
        let says = |words: &str| format!("document.body.innerText.includes('{words}')");
        for (what, minutes, sign) in [
            ("due", 28, "due now"),
            ("late", 15, "late"),
            ("over", 20, "min ago"),
        ] {
            moves_nothing(
                referee,
                &format!("plan-{what}-{width}"),
                minutes * 60,
                &says(sign),
            );
        }
    }
    Ok(())
}
