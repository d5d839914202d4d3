//! Tests of the driver itself, on a page as small as can be: what the others rely on.

use serde_json::json;

use crate::driver::Engine;
use crate::stage::Stage;
use crate::{Ran, Skipped, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_tap_reaches_what_it_names",
        engines: ALL,
        run: a_tap_reaches_what_it_names,
    },
    Test {
        name: "what_is_covered_cannot_be_tapped",
        engines: ALL,
        run: what_is_covered_cannot_be_tapped,
    },
    Test {
        name: "what_is_safe_on_disk_outlives_a_kill",
        engines: ALL,
        run: what_is_safe_on_disk_outlives_a_kill,
    },
    Test {
        name: "two_tabs_share_their_storage",
        engines: ALL,
        run: two_tabs_share_their_storage,
    },
    Test {
        name: "a_chosen_file_is_read",
        engines: ALL,
        run: a_chosen_file_is_read,
    },
    Test {
        name: "a_button_without_a_name_is_a_hindrance",
        engines: &[Engine::Chromium],
        run: a_button_without_a_name_is_a_hindrance,
    },
    Test {
        name: "the_screen_is_a_phone",
        engines: &[Engine::Chromium],
        run: the_screen_is_a_phone,
    },
    Test {
        name: "a_violation_and_a_request_are_seen",
        engines: &[Engine::Chromium],
        run: a_violation_and_a_request_are_seen,
    },
    Test {
        name: "a_slower_processor_is_slower",
        engines: &[Engine::Chromium],
        run: a_slower_processor_is_slower,
    },
];

const PAGE: &[u8] = b"<!doctype html><html lang=en><meta charset=utf-8>\
    <meta name=viewport content='width=device-width'><title>Probe</title>\
    <p id=taps>0</p><p id=by></p><button aria-label='one more'>+</button>\
    <label>Number <input id=number></label>\
    <button id=under>under</button><button hidden>hidden</button><input id=file type=file aria-label=File>\
    <script src=probe.js></script>";

const SCRIPT: &[u8] = b"\
    const taps = document.getElementById('taps'), by = document.getElementById('by');
    document.querySelector('[aria-label]').onclick = (e) => { taps.textContent++; by.textContent = e.pointerType; };
    globalThis.cover = () => {
      const sheet = document.createElement('div');
      sheet.style.setProperty('position', 'fixed');
      sheet.style.setProperty('inset', '0');
      document.body.append(sheet);
    };
    globalThis.inDisk = () => new Promise((done, broken) => {
      const open = indexedDB.open('probe', 1);
      open.onupgradeneeded = () => open.result.createObjectStore('lines');
      open.onsuccess = () => done(open.result);
      open.onerror = () => broken(open.error);
    });
    globalThis.keep = async (key, value) => {
      const write = (await inDisk()).transaction('lines', 'readwrite', { durability: 'strict' });
      write.objectStore('lines').put(value, key);
      return new Promise((done, broken) => {
        write.oncomplete = () => done('kept');
        write.onerror = () => broken(write.error);
      });
    };
    globalThis.kept = async () => {
      const read = (await inDisk()).transaction('lines').objectStore('lines').getAll();
      return new Promise((done) => { read.onsuccess = () => done(read.result); });
    };";

fn open(stage: &mut Stage) {
    stage.hand_out("probe.html", PAGE);
    stage.hand_out("probe.js", SCRIPT);
    visit(stage);
}

fn visit(stage: &mut Stage) {
    let url = format!("{}probe.html", stage.url());
    stage.browser().goto(&url);
    stage.browser().wait_until(
        "the script has run",
        "typeof globalThis.kept === 'function'",
    );
}

fn a_tap_reaches_what_it_names(stage: &mut Stage) -> Ran {
    open(stage);
    let finger = stage.browser().engine().finger();
    let browser = stage.browser();
    browser.tap_named("one more");
    browser.tap_named("one more");
    browser.wait_until("both taps were counted", "taps.textContent === '2'");
    assert_eq!(browser.text("#by"), finger);
    let field = browser.find_named("Number");
    browser.write(&field, "7");
    browser.write(&field, "12");
    assert_eq!(
        browser.value("document.querySelector('#number').value"),
        json!("12")
    );
    assert!(
        browser.named("hidden").is_empty(),
        "what cannot be seen cannot be found by name"
    );
    Ok(())
}

fn what_is_covered_cannot_be_tapped(stage: &mut Stage) -> Ran {
    open(stage);
    let browser = stage.browser();
    let under = browser.find_named("under");
    assert_eq!(browser.over(&under), None);
    browser.run("cover();", json!([]));
    let over = browser.over(&under);
    assert!(
        over.is_some_and(|what| what.contains("<div")),
        "the sheet over the button is noticed"
    );
    Ok(())
}

fn what_is_safe_on_disk_outlives_a_kill(stage: &mut Stage) -> Ran {
    stage.keeps()?;
    open(stage);
    for n in 0..10 {
        let answer = stage.browser().value(&format!("keep({n}, 'line {n}')"));
        assert_eq!(answer, json!("kept"));
    }
    stage.kill_browser();
    stage.start_browser();
    visit(stage);
    let lines: Vec<String> = (0..10).map(|n| format!("line {n}")).collect();
    assert_eq!(stage.browser().value("kept()"), json!(lines));
    Ok(())
}

fn two_tabs_share_their_storage(stage: &mut Stage) -> Ran {
    open(stage);
    stage
        .browser()
        .run("localStorage.setItem('first', '1');", json!([]));
    let first = stage.browser().tab();
    let second = stage.browser().open_tab();
    assert_ne!(first, second);
    visit(stage);
    let browser = stage.browser();
    assert_eq!(browser.value("localStorage.getItem('first')"), json!("1"));
    browser.run("localStorage.setItem('second', '2');", json!([]));
    browser.switch_to(&first);
    browser.wait_until(
        "the first sees it",
        "localStorage.getItem('second') === '2'",
    );
    Ok(())
}

fn a_chosen_file_is_read(stage: &mut Stage) -> Ran {
    open(stage);
    let file = stage.scratch("a file.txt");
    std::fs::write(&file, "forty-two").expect("room for a file");
    let browser = stage.browser();
    let field = browser.find("#file");
    browser.choose_file(&field, &file);
    assert_eq!(
        browser.value("document.querySelector('#file').files[0].text()"),
        json!("forty-two")
    );
    Ok(())
}

fn a_button_without_a_name_is_a_hindrance(stage: &mut Stage) -> Ran {
    open(stage);
    let browser = stage.browser();
    browser.run(
        "document.body.append(document.createElement('button'));",
        json!([]),
    );
    let hindrances = browser.hindrances().map_err(Skipped)?;
    assert!(
        hindrances
            .iter()
            .any(|line| line.starts_with("button-name: ")),
        "{hindrances:?}"
    );
    Ok(())
}

fn the_screen_is_a_phone(stage: &mut Stage) -> Ran {
    open(stage);
    let browser = stage.browser();
    for (width, height) in [(360, 740), (320, 568), (568, 320)] {
        browser.screen(width, height);
        assert_eq!(
            browser.value("[innerWidth, innerHeight]"),
            json!([width, height])
        );
        assert_eq!(
            browser.value("matchMedia('(pointer: coarse)').matches"),
            json!(true)
        );
        let lying = browser.value("matchMedia('(orientation: landscape)').matches");
        assert_eq!(lying, json!(width > height));
    }
    let file = browser.picture("probe");
    let bytes = std::fs::read(file).expect("the picture was written");
    assert!(bytes.starts_with(b"\x89PNG"), "the picture is a picture");
    Ok(())
}

fn a_violation_and_a_request_are_seen(stage: &mut Stage) -> Ran {
    open(stage);
    let browser = stage.browser();
    browser.complaints();
    browser.fetched();
    browser.run(
        "document.body.insertAdjacentHTML('beforeend', '<b style=\"color: red\">x</b>');
         return fetch('./nothing-here').then(() => null);",
        json!([]),
    );
    let complaints = browser.complaints();
    assert!(
        complaints
            .iter()
            .any(|line| line.contains("Content Security Policy")),
        "{complaints:?}"
    );
    let fetched = browser.fetched();
    assert!(
        fetched.iter().any(|url| url.ends_with("/nothing-here")),
        "{fetched:?}"
    );
    assert!(
        stage
            .asked()
            .iter()
            .any(|path| path.ends_with("/nothing-here")),
        "the server saw it too"
    );
    Ok(())
}

fn a_slower_processor_is_slower(stage: &mut Stage) -> Ran {
    open(stage);
    let work = "(() => { const begun = performance.now(); let sum = 0;
        for (let i = 0; i < 3e7; i++) sum += i % 7; return [performance.now() - begun, sum]; })()";
    let mut took = || stage.browser().value(work)[0].as_f64().expect("a time");
    took();
    let quick = took();
    stage.browser().slow_down(20.0);
    let slow = stage.browser().value(work)[0].as_f64().expect("a time");
    // Twenty times slower was asked for; a busy machine blurs that, but not to less than double.
    assert!(slow > 2.0 * quick, "{quick} ms, then {slow} ms");
    Ok(())
}
