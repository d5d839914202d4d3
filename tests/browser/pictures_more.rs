//! The screens after a match and at the edges of the app once, as `pictures` looks at the others: signing, sealing,
//! handing over, the review, practice and a lesson, and what is said of the storage.

use rules::Preset;
use serde_json::json;

use crate::driver::Engine;
use crate::kept::{begun, FILL};
use crate::pictures::Look;
use crate::referee::{Referee, Side};
use crate::sealed::played;
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "every_screen_of_handing_over_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: of_handing_over,
    },
    Test {
        name: "every_screen_of_practice_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: of_practice,
    },
    Test {
        name: "every_notice_of_the_storage_can_be_used_by_everybody",
        engines: &[Engine::Chromium],
        run: of_the_storage,
    },
    Test {
        name: "every_mark_of_the_court_stays_where_the_system_chooses_the_colours",
        engines: &[Engine::Chromium],
        run: with_colours_of_the_system,
    },
];

fn of_handing_over(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::new();
    referee.go_on_with("over", played(Preset::SchoolJunior, 5));
    referee.reads("Sign and seal");
    referee.tap("Scorer: not signed");
    look.at(referee, "sign");
    referee.tap_in(".drawer", "Save signature");
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
    look.at(referee, "sealed");
    referee.tap("Reopen");
    look.at(referee, "reopen");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap_at("#export-sheet");
    look.at(referee, "share");
    referee.tap("Show the code");
    look.at(referee, "share-code");
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/review/over"));
    referee.reads_at("#talk", "What went well");
    look.at(referee, "review");
    referee.browser().goto(&format!("{here}#/receive"));
    referee.browser().find("#digits-read");
    referee.tap_at("#digits-read");
    referee.reads("The field is empty.");
    look.at(referee, "receive");
    referee.browser().goto(&format!("{here}#/start"));
    referee.tap_at(".sheet-line [aria-expanded]");
    look.at(referee, "start-more");
    look.done()
}

fn of_practice(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::with_large_letters();
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/learn/practice"));
    referee.browser().find("#practice-begin");
    look.at(referee, "practice");
    referee.tap_at("#practice-begin");
    referee.browser().find("#practice-told");
    look.at(referee, "practice-told");
    referee
        .browser()
        .goto(&format!("{here}#/learn/trainer/lesson"));
    referee.browser().find("#lesson-begin");
    look.at(referee, "lesson");
    referee.tap_at("#lesson-begin");
    referee.browser().find(".lesson-field");
    look.at(referee, "lesson-scene");
    look.done()
}

fn of_the_storage(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut look = Look::with_large_letters();
    referee.go_on_with("court", begun());
    referee.point(Side::Left);
    assert_eq!(referee.browser().run(FILL, json!([])), json!(false));
    referee.point(Side::Left);
    referee.browser().find("#storage-trouble");
    look.at(referee, "full-court");
    referee.tap("Menu");
    referee.tap("Large court");
    look.at(referee, "full-large-court");
    let log = format!("{}#/log/court", referee.stage.url());
    referee.browser().goto(&log);
    referee.browser().find(".log-line");
    look.at(referee, "full-log");
    look.done()
}

/// Grounds and shadows are gone there (CSS Color Adjustment 1, 3.1), so a line says what they said.
fn with_colours_of_the_system(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("system", begun());
    referee.point(Side::Left);
    referee.browser().cdp(
        "Emulation.setEmulatedMedia",
        json!({ "features": [{ "name": "forced-colors", "value": "active" }] }),
    );
    let lines = |referee: &mut Referee, css: &str| {
        let drawn = format!(
            "[...document.querySelectorAll('{css}')].map((e) => {{ const {{ outlineStyle, borderTopStyle }} = getComputedStyle(e);
               return outlineStyle !== 'none' || borderTopStyle !== 'none'; }})"
        );
        let all = referee.browser().value(&drawn);
        let all = all.as_array().cloned().unwrap_or_default();
        assert!(
            !all.is_empty() && all.iter().all(|line| *line == json!(true)),
            "{css}: {all:?}"
        );
    };
    for css in [
        ".group[aria-pressed=true]",
        ".spot.server",
        ".half.serving .half-serves",
    ] {
        lines(referee, css);
    }
    referee.browser().picture("system-colours-court");
    referee.tap("More Otters");
    referee.tap("Misconduct");
    referee.browser().find(".half.asking .answer");
    lines(referee, ".half.asking .answer");
    referee.browser().picture("system-colours-asking");
    Ok(())
}
