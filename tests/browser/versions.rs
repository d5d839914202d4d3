//! Which version of the program runs, and what a page says that cannot start, or whose clock was set.

use game::{Phase, Timeline};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::server::Habits;
use crate::smoke::{next_version, wait, IS_NEXT, LOOK};
use crate::stage::Stage;
use crate::support::{numbered, opening, set_begins};
use crate::{Ran, Test, ALL, BOTH};
use game::Kind;
use rules::{Preset, Team};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "the_version_stays_while_a_match_runs",
        engines: ALL,
        run: the_version_stays_while_a_match_runs,
    },
    Test {
        name: "no_other_tab_takes_a_version_while_a_match_runs",
        engines: BOTH,
        run: no_other_tab_takes_a_version_while_a_match_runs,
    },
    Test {
        name: "a_tab_of_the_older_version_says_so",
        engines: BOTH,
        run: a_tab_of_the_older_version_says_so,
    },
    Test {
        name: "scripts_of_a_wrong_type_are_said",
        engines: ALL,
        run: scripts_of_a_wrong_type_are_said,
    },
    Test {
        name: "a_page_in_the_wrong_folder_says_so",
        engines: ALL,
        run: a_page_in_the_wrong_folder_says_so,
    },
    Test {
        name: "a_page_opened_as_a_file_says_so",
        engines: CHROMIUM,
        run: a_page_opened_as_a_file_says_so,
    },
    Test {
        name: "an_address_that_is_not_secure_is_said",
        engines: CHROMIUM,
        run: an_address_that_is_not_secure_is_said,
    },
    Test {
        name: "nothing_starts_inside_another_page",
        engines: ALL,
        run: nothing_starts_inside_another_page,
    },
    Test {
        name: "a_clock_set_back_while_closed_is_said",
        engines: CHROMIUM,
        run: a_clock_set_back_while_closed_is_said,
    },
];

/// What the page offers about a newer version.
const NEWS: &str = "document.querySelector('#new-version')?.innerText ?? ''";

/// A newer version lies beside the page and waits.
pub fn newer_waits(stage: &mut Stage) {
    next_version(stage);
    stage.browser().value(LOOK);
    wait(
        stage,
        "the new version waits",
        "(await navigator.serviceWorker.getRegistration()).waiting !== null",
    );
}

/// A match two points before its end: three sets of the same course, the last without its last points.
fn two_points_before_the_end() -> Vec<game::Entry> {
    let rules = Preset::International.rules();
    let mut kinds = opening(rules);
    for set in 0..3 {
        kinds.extend(set_begins(&rules));
        let points = if set == 2 { 23 } else { 25 };
        kinds.extend((0..points).map(|_| Kind::Rally {
            won_by: Team::A,
            cause: None,
            by: None,
        }));
    }
    let entries = numbered(kinds);
    let timeline = Timeline::of(entries.clone());
    assert_eq!(timeline.state().phase(), Phase::Playing);
    assert_eq!(timeline.state().sets_won().a, 2);
    entries
}

fn the_version_stays_while_a_match_runs(stage: &mut Stage) -> Ran {
    stage.keeps()?;
    let mut referee = Referee::at(stage);
    referee.stage.ready_offline();
    referee.go_on_with("runs", two_points_before_the_end());
    let side = referee.side_of("Otters");
    referee.point(side);
    referee.saved();
    newer_waits(referee.stage);

    // The start screen says that it is there, and offers no way to take it.
    referee.tap("Back");
    referee.browser().wait_until(
        "the newer version is mentioned",
        &format!("({NEWS}).includes('when the match is over')"),
    );
    assert!(!referee.sees("Use it now"));

    // After a kill the browser itself brings the newer worker into office: no tab is left of the older.
    referee.stage.kill_browser();
    referee.stage.start_browser();
    for _ in 0..2 {
        referee.stage.open();
        assert_eq!(referee.browser().value(IS_NEXT), json!(false));
        referee.browser().wait_until(
            "the newer version is mentioned again",
            &format!("({NEWS}).includes('when the match is over')"),
        );
    }
    // Its parts come from the same version, also without a network.
    referee.stage.network_off();
    referee.stage.open();
    assert_eq!(referee.browser().value(IS_NEXT), json!(false));
    referee.stage.network_on();

    // The last point; then it may be taken.
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    let side = referee.side_of("Otters");
    referee.point(side);
    referee.reads("Otters");
    referee.saved();
    referee.stage.open();
    referee.browser().wait_until(
        "the newer version is offered",
        &format!("({NEWS}).includes('Use it now')"),
    );
    referee.tap("Use it now");
    referee
        .browser()
        .wait_until("the newer version is there", IS_NEXT);
    referee.stage.network_off();
    referee.stage.reload();
    assert_eq!(referee.browser().value(IS_NEXT), json!(true));
    Ok(())
}

fn no_other_tab_takes_a_version_while_a_match_runs(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.stage.ready_offline();
    referee.go_on_with("runs", begun());
    referee.point(Side::Left);
    referee.saved();
    newer_waits(referee.stage);
    let first = referee.browser().tab();

    let second = referee.browser().open_tab();
    referee.browser().switch_to(&second);
    referee.stage.open();
    referee.browser().wait_until(
        "the other tab knows that a match runs",
        &format!("({NEWS}).includes('when the match is over')"),
    );
    // Even a page that asks all the same is refused by the worker.
    referee.browser().run(
        "const { dataset } = document.documentElement;
         navigator.serviceWorker.addEventListener('message', ({ data }) => { dataset[data.type] = ''; });
         return navigator.serviceWorker.getRegistration().then((r) => r.waiting.postMessage({ type: 'take-over' }));",
        json!([]),
    );
    referee.browser().wait_until(
        "the worker has refused",
        "'held' in document.documentElement.dataset",
    );
    referee.stage.reload();
    assert_eq!(referee.browser().value(IS_NEXT), json!(false));
    referee.browser().switch_to(&first);
    referee.point(Side::Left);
    Ok(())
}

fn a_tab_of_the_older_version_says_so(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.stage.ready_offline();
    newer_waits(referee.stage);
    let first = referee.browser().tab();
    let second = referee.browser().open_tab();
    referee.browser().switch_to(&second);
    referee.stage.open();
    referee.tap("Use it now");
    referee
        .browser()
        .wait_until("the newer version is there", IS_NEXT);
    referee.browser().switch_to(&first);
    assert_eq!(referee.browser().value(IS_NEXT), json!(false));
    referee.browser().wait_until(
        "the older tab says so",
        &format!("({NEWS}).includes('open in another tab')"),
    );
    // What it may still load is there, without a network too.
    referee.stage.network_off();
    let part = "[...document.querySelectorAll('link[rel=modulepreload]')].map((l) => l.href)[0]";
    wait(
        referee.stage,
        "a part of the older version is answered",
        &format!("(await fetch({part})).ok"),
    );
    referee.tap("Load again");
    referee
        .browser()
        .wait_until("the newer version is there", IS_NEXT);
    Ok(())
}

/// What is to be read where the page cannot start, and that nothing else is.
fn says_why_it_does_not_start(stage: &mut Stage, url: &str, picture: &str) {
    stage.browser().goto(url);
    stage.browser().wait_until(
        "the sentence is shown",
        "(document.querySelector('#still-starting')?.innerText ?? '').includes('has not started yet') \
         && getComputedStyle(document.querySelector('#still-starting')).visibility === 'visible'",
    );
    // What stood there in its place is given up.
    let given_up = "(() => { const style = getComputedStyle(document.querySelector('#start-here'));
        return style.display === 'none' || style.visibility === 'hidden'; })()";
    assert_eq!(stage.browser().value(given_up), json!(true));
    stage.browser().picture(picture);
}

fn scripts_of_a_wrong_type_are_said(stage: &mut Stage) -> Ran {
    stage.hosted(Habits {
        types_scripts: false,
        ..Habits::default()
    });
    let url = stage.url();
    says_why_it_does_not_start(stage, &url, "wrong-type");
    Ok(())
}

fn a_page_in_the_wrong_folder_says_so(stage: &mut Stage) -> Ran {
    stage.hosted(Habits {
        answers_everything: true,
        ..Habits::default()
    });
    let url = format!("{}two/down/", stage.url());
    says_why_it_does_not_start(stage, &url, "wrong-folder");
    Ok(())
}

fn a_page_opened_as_a_file_says_so(stage: &mut Stage) -> Ran {
    let folder = std::env::var("BROWSER_DIST").expect("names the build");
    let file = std::fs::canonicalize(folder).expect("the build is there");
    let url = format!("file://{}/index.html", file.display());
    says_why_it_does_not_start(stage, &url, "as-a-file");
    Ok(())
}

fn an_address_that_is_not_secure_is_said(stage: &mut Stage) -> Ran {
    let url = stage.insecure("hall.invalid");
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the page says that its address is not secure",
        "(document.querySelector('#offline')?.innerText ?? '').includes('not secure')",
    );
    Ok(())
}

fn nothing_starts_inside_another_page(stage: &mut Stage) -> Ran {
    stage.hosted(Habits {
        sends_policy: false,
        ..Habits::default()
    });
    stage.hand_out(
        "frame.html",
        b"<!doctype html><title>another page</title><iframe src=./ width=340 height=600></iframe>",
    );
    let url = format!("{}frame.html", stage.url());
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the framed page says why it does not start",
        "(frames[0]?.document.querySelector('#framed')?.innerText ?? '').includes('does not start inside')",
    );
    assert_eq!(
        stage
            .browser()
            .value("frames[0].document.querySelector('#starting').hidden"),
        json!(true)
    );
    stage.browser().picture("framed");
    Ok(())
}

fn a_clock_set_back_while_closed_is_said(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("clock", begun());
    referee.browser().find("#half-left");
    referee.point(Side::Left);
    referee.saved();
    // What the browser tells every page from the next load on.
    referee.browser().cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": "{ const now = Date.now; Date.now = () => now() - 58.5 * 60000; }" }),
    );
    referee.stage.reload();
    referee.browser().find("#half-left");
    referee.reads_at("#clock-doubt", "58 min behind the last entry");
    referee.browser().picture("clock-set-back");
    referee.tap_in("#clock-doubt", "Understood");
    referee.point(Side::Left);
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score().a + timeline.state().score().b, 2);
    // The log keeps the order and says where the clock was set.
    referee.tap("Menu");
    referee.tap("Match log");
    referee.reads("The clock of the phone was set back by");
    referee.browser().picture("clock-in-log");
    Ok(())
}
