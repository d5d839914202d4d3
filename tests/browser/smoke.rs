//! The page starts, is kept whole, opens without a network, asks nobody for anything, and never
//! changes its version by itself.

use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side};
use crate::stage::{built, Stage};
use crate::{Ran, Test, ALL};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "opens_without_a_network",
        engines: ALL,
        run: opens_without_a_network,
    },
    Test {
        name: "opens_again_after_a_kill_without_a_network",
        engines: ALL,
        run: opens_again_after_a_kill_without_a_network,
    },
    Test {
        name: "asks_nobody_for_anything_after_loading",
        engines: CHROMIUM,
        run: asks_nobody_for_anything_after_loading,
    },
    Test {
        name: "the_start_stands_there_before_the_program",
        engines: ALL,
        run: the_start_stands_there_before_the_program,
    },
    Test {
        name: "a_running_match_is_gone_on_with_before_the_program",
        engines: ALL,
        run: a_running_match_is_gone_on_with_before_the_program,
    },
    Test {
        name: "an_address_that_leads_elsewhere_shows_no_start",
        engines: ALL,
        run: an_address_that_leads_elsewhere_shows_no_start,
    },
    Test {
        name: "breaks_no_policy_while_starting",
        engines: CHROMIUM,
        run: breaks_no_policy_while_starting,
    },
    Test {
        name: "a_new_version_waits_until_it_is_asked",
        engines: ALL,
        run: a_new_version_waits_until_it_is_asked,
    },
    Test {
        name: "a_version_with_a_damaged_file_is_not_taken",
        engines: ALL,
        run: a_version_with_a_damaged_file_is_not_taken,
    },
    Test {
        name: "says_so_where_the_browser_is_too_old",
        engines: CHROMIUM,
        run: says_so_where_the_browser_is_too_old,
    },
    Test {
        name: "says_so_where_the_module_is_damaged",
        engines: ALL,
        run: says_so_where_the_module_is_damaged,
    },
];

fn opens_without_a_network(stage: &mut Stage) -> Ran {
    stage.open();
    stage.ready_offline();
    stage.network_off();
    stage.reload();
    // The same page stands behind every address below the folder.
    let url = format!("{}no/such/page?x=1", stage.url());
    stage.browser().goto(&url);
    stage
        .browser()
        .wait_until("the page is there", "document.title === 'Dutystand'");
    Ok(())
}

fn opens_again_after_a_kill_without_a_network(stage: &mut Stage) -> Ran {
    stage.keeps()?;
    stage.open();
    stage.ready_offline();
    stage.kill_browser();
    stage.network_off();
    stage.start_browser();
    stage.open();
    Ok(())
}

fn asks_nobody_for_anything_after_loading(stage: &mut Stage) -> Ran {
    stage.open();
    stage.ready_offline();
    let here = stage.url();
    let loading = stage.browser().fetched();
    assert!(
        loading.iter().any(|url| url.ends_with(".wasm")),
        "the log shows requests: {loading:?}"
    );
    for url in &loading {
        assert!(url.starts_with(&here), "{url} lies outside {here}");
    }
    assert!(
        stage
            .asked()
            .iter()
            .all(|path| path.starts_with("/school/duty/")),
        "only the page's own folder"
    );

    // From here on everything comes from the phone, but for the question whether there is a new
    // version, which is what keeps the page from growing old.
    stage.reload();
    stage.browser().fetched();
    stage
        .browser()
        .wait_until("nothing is being loaded", "performance.now() > 3000");
    assert_eq!(stage.browser().fetched(), Vec::<String>::new());
    let asked: Vec<String> = stage
        .asked()
        .into_iter()
        .filter(|path| path != "/school/duty/sw.js")
        .collect();
    assert_eq!(asked, Vec::<String>::new());
    Ok(())
}

fn breaks_no_policy_while_starting(stage: &mut Stage) -> Ran {
    stage.open();
    stage.ready_offline();
    stage.reload();
    assert_eq!(stage.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// Whether the page is the next version.
pub const IS_NEXT: &str = "document.querySelector('meta[name=edition]') !== null";

/// The built worker under another version, with a page that says so.
pub fn next_version(stage: &mut Stage) {
    let (_, page) = built("index", ".html");
    let page = String::from_utf8(page).expect("the page is text");
    let next = page.replace(
        "<title>Dutystand</title>",
        "<title>Dutystand</title><meta name=edition content=next>",
    );
    assert_ne!(page, next);
    stage.hand_out("index.html", next.as_bytes());
    let worker = worker_for(&page, &next);
    stage.hand_out("sw.js", worker.as_bytes());
}

/// The built worker, with the version and the page's hash replaced.
fn worker_for(page: &str, next: &str) -> String {
    let (_, worker) = built("sw", ".js");
    let worker = String::from_utf8(worker).expect("the worker is text");
    let changed = worker
        .replace("const VERSION = \"", "const VERSION = \"next-")
        .replace(&hash(page), &hash(next));
    assert_ne!(worker, changed);
    changed
}

fn hash(text: &str) -> String {
    use sha2::{Digest, Sha256};
    let digest = Sha256::digest(text);
    // RFC 4648 base64 of 32 bytes: ten full groups, then two bytes and one sign of padding.
    const SIGNS: &[u8] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut out = String::new();
    for group in digest.chunks(3) {
        let bits = group
            .iter()
            .fold(0_u32, |all, byte| all << 8 | u32::from(*byte))
            << (8 * (3 - group.len()));
        for place in 0..=group.len() {
            out.push(char::from(SIGNS[(bits >> (18 - 6 * place) & 63) as usize]));
        }
    }
    out.push('=');
    out
}

/// Has the browser look for a new version, as it does by itself once a day.
// Firefox takes a look that is asked for beside one that is under way for the same one, and finds nothing new.
pub const LOOK: &str = "(async () => {
    for (let look = 0; look < 40; look += 1) {
        const r = await navigator.serviceWorker.getRegistration();
        const found = await r.update().then(() => r.installing ?? r.waiting, () => null);
        if (found) return true;
        await new Promise((done) => setTimeout(done, 250));
    }
    return false;
})()";

/// The names of the caches that hold a version, which carry it; one more says which of them answers.
const CACHES: &str =
    "caches.keys().then((all) => all.filter((name) => !name.endsWith(' release')))";

fn a_new_version_waits_until_it_is_asked(stage: &mut Stage) -> Ran {
    stage.open();
    stage.ready_offline();
    let before = stage.browser().value(CACHES);
    next_version(stage);
    stage.browser().value(LOOK);
    wait(
        stage,
        "the new version waits",
        "(await navigator.serviceWorker.getRegistration()).waiting !== null",
    );
    assert_eq!(
        stage.browser().value(CACHES).as_array().map(Vec::len),
        Some(2)
    );

    // However often the page is loaded, it stays as it was.
    stage.reload();
    assert_eq!(stage.browser().value(IS_NEXT), json!(false));

    stage.browser().run(
        "const { dataset } = document.documentElement;
         navigator.serviceWorker.addEventListener('controllerchange', () => { dataset.changed = ''; });
         return navigator.serviceWorker.getRegistration().then((r) => r.waiting.postMessage({ type: 'take-over' }));",
        json!([]),
    );
    stage.browser().wait_until(
        "the new version has taken over",
        &format!("'changed' in document.documentElement.dataset || {IS_NEXT}"),
    );
    wait(
        stage,
        "the old version is cleared away",
        &format!("(await {CACHES}).length === 1"),
    );
    assert_ne!(stage.browser().value(CACHES), before);
    stage.network_off();
    stage.reload();
    assert_eq!(stage.browser().value(IS_NEXT), json!(true));
    Ok(())
}

fn a_version_with_a_damaged_file_is_not_taken(stage: &mut Stage) -> Ran {
    stage.open();
    stage.ready_offline();
    let before = stage.browser().value(CACHES);
    next_version(stage);
    let (name, mut glue) = built("dutystand-", ".js");
    glue.push(b' ');
    stage.hand_out(&name, &glue);
    stage.asked();
    stage.browser().value(LOOK);
    wait(
        stage,
        "the new version was given up",
        "await navigator.serviceWorker.getRegistration().then((r) => !r.installing && !r.waiting)",
    );
    assert!(
        stage.asked().iter().any(|path| path.ends_with(&name)),
        "the damaged file was fetched"
    );
    assert_eq!(stage.browser().value(CACHES), before);
    stage.network_off();
    stage.reload();
    assert_eq!(stage.browser().value(IS_NEXT), json!(false));
    Ok(())
}

/// Waits until an expression that itself has to wait is true.
pub fn wait(stage: &mut Stage, what: &str, expression: &str) {
    let begun = std::time::Instant::now();
    while stage.browser().run(
        &format!("return (async () => ({expression}))();"),
        json!([]),
    ) != json!(true)
    {
        assert!(
            begun.elapsed().as_secs() < 20,
            "waited in vain until {what}"
        );
        std::thread::sleep(std::time::Duration::from_millis(20));
    }
}

/// Lets the program come four seconds late.
pub fn comes_late(stage: &mut Stage) {
    let (name, loader) = built("loader-", ".js");
    let loader = String::from_utf8(loader).expect("a script");
    let late = loader.replace(
        "import(script)",
        "new Promise((go) => setTimeout(go, 4000)).then(() => import(script))",
    );
    assert_ne!(late, loader);
    stage.hand_out(&name, late.as_bytes());
}

fn the_start_stands_there_before_the_program(stage: &mut Stage) -> Ran {
    comes_late(stage);
    let url = stage.url();
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the start is painted",
        "document.querySelector('#start-here .start-half')?.checkVisibility() ?? false",
    );
    stage.browser().picture("start-before-the-program");
    let early = "(() => { const box = document.querySelector('.start-court').getBoundingClientRect(); return [box.top, box.height]; })()";
    let before = stage.browser().value(early);
    // What is tapped meanwhile is done once the program is there.
    stage
        .browser()
        .tap(|browser| browser.find("#start-here [data-then=quick-tally]"));
    stage.started();
    stage.browser().find("#half-left");
    // What the program draws stands where it stood.
    let mut fresh = Stage::new(stage.browser().engine());
    fresh.open();
    fresh.browser().find("#new-match");
    assert_eq!(fresh.browser().value(early), before);
    Ok(())
}

fn a_running_match_is_gone_on_with_before_the_program(stage: &mut Stage) -> Ran {
    comes_late(stage);
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.points(&[Side::Left, Side::Left, Side::Right], 50);
    referee.saved();
    referee.browser().wait_until(
        "the start knows of the match",
        "/Set 1: A 2.1 B, sets 0.0$/.test(localStorage.getItem('dutystand/s/continue') ?? '')",
    );
    let url = referee.stage.url();
    referee.browser().goto("about:blank");
    referee.browser().goto(&url);
    referee.browser().wait_until(
        "the way on is painted",
        "document.querySelector('#start-here .continue')?.checkVisibility() ?? false",
    );
    referee.browser().picture("continue-before-the-program");
    // Measured from the court below it: where the worker could not be kept, the program says so above.
    let way_on = "(() => { const way = document.querySelector('.continue'), box = way.getBoundingClientRect();
        const court = document.querySelector('.start-court').getBoundingClientRect();
        return [way.innerText, Math.round(court.top - box.top), Math.round(box.height)]; })()";
    let before = referee.browser().value(way_on);
    referee.stage.started();
    referee.browser().find("#continue");
    // What the program draws says the same, in the same place.
    assert_eq!(referee.browser().value(way_on), before);
    // Pressed before the program is there, it leads to the match once it is.
    referee.browser().goto("about:blank");
    referee.browser().goto(&url);
    referee.tap_at("#start-here .continue");
    referee.stage.started();
    referee.reads_at("#half-left .half-score", "2");
    Ok(())
}

fn an_address_that_leads_elsewhere_shows_no_start(stage: &mut Stage) -> Ran {
    comes_late(stage);
    stage.open();
    stage.browser().run(
        "localStorage.setItem('dutystand/s/theme', 'dark');",
        json!([]),
    );
    let url = stage.url();
    stage.browser().goto("about:blank");
    stage.browser().goto(&format!("{url}#/signals"));
    stage.browser().wait_until(
        "a line says that it is starting",
        "document.querySelector('#starting-line')?.checkVisibility() ?? false",
    );
    let seen = "[document.querySelector('#start-here').checkVisibility(), document.documentElement.dataset.theme]";
    assert_eq!(stage.browser().value(seen), json!([false, "dark"]));
    stage.started();
    Ok(())
}

fn says_so_where_the_browser_is_too_old(stage: &mut Stage) -> Ran {
    stage.browser().cdp(
        "Page.addScriptToEvaluateOnNewDocument",
        json!({ "source": "delete globalThis.WebAssembly;" }),
    );
    let url = stage.url();
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the sentence is shown",
        "!document.querySelector('#too-old').hidden",
    );
    assert!(stage
        .browser()
        .text("body")
        .starts_with("This browser is too old"));
    Ok(())
}

fn says_so_where_the_module_is_damaged(stage: &mut Stage) -> Ran {
    let (name, module) = built("dutystand_bg-", ".wasm");
    stage.hand_out(&name, &module[..module.len() / 2]);
    let url = stage.url();
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the sentence is shown",
        "!document.querySelector('#not-started').hidden",
    );
    assert!(stage
        .browser()
        .text("body")
        .starts_with("Dutystand could not start"));
    Ok(())
}
