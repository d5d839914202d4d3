//! Measures instead of testing: `cargo test --test browser -- --bench`.
//!
//! Every figure is a ratio against the smallest plain page that shows the same, taken on the
//! same machine in the same run, turn by turn; milliseconds alone say little about a phone.

use serde_json::json;

use crate::driver::{Browser, Engine};
use crate::stage::Stage;

/// Loads of each page; the middle one counts.
const LOADS: usize = 21;

/// A page that shows as much as ours at first sight, by hand and with nothing behind it. It
/// comes from the server each time; ours comes from the service worker.
const PLAIN: &str = "<!doctype html><html lang=en><meta charset=utf-8>\
    <meta name=viewport content='width=device-width'><title>Dutystand</title>\
    <p id=starting>starting</p><script src=./plain.js></script>";

/// Builds a heading and a dozen buttons.
const PLAIN_SCRIPT: &str = "\
    const main = document.createElement('main');
    main.append(document.createElement('h1'));
    main.firstChild.textContent = 'Dutystand';
    for (let n = 0; n < 12; n++) {
      const button = document.createElement('button');
      button.textContent = 'Button ' + n;
      main.append(button);
    }
    document.body.append(main);
    document.getElementById('starting').remove();";

/// Notes when the first frame after the start has been handed to the screen.
const WATCH: &str = "
    new MutationObserver((_, watch) => {
      if (!document.body || document.querySelector('#starting') || !document.querySelector('h1')) return;
      watch.disconnect();
      requestAnimationFrame(() => setTimeout(() => {
        document.documentElement.dataset.shown = performance.now();
      }));
    }).observe(document, { childList: true, subtree: true });";

/// Prints the figures.
pub fn print() -> Result<(), String> {
    Engine::Chromium.present()?;
    println!(
        "start: from the address to the first painted screen, Chromium, median of {LOADS} loads"
    );
    println!("{:<34} {:>9} {:>9} {:>7}", "", "page", "plain", "ratio");
    for (what, slower) in [
        ("kept on the phone", 1.0),
        ("the same, processor 4 times slower", 4.0),
    ] {
        let mut page = Stage::new(Engine::Chromium);
        let mut plain = Stage::new(Engine::Chromium);
        plain.hand_out("plain.js", PLAIN_SCRIPT.as_bytes());
        plain.hand_out("plain.html", PLAIN.as_bytes());
        page.open();
        page.ready_offline();
        let (here, there) = (page.url(), format!("{}plain.html", plain.url()));
        for stage in [&mut page, &mut plain] {
            let browser = stage.browser();
            browser.cdp(
                "Page.addScriptToEvaluateOnNewDocument",
                json!({ "source": WATCH }),
            );
            browser.slow_down(slower);
        }
        let (mut ours, mut theirs) = (Vec::new(), Vec::new());
        for _ in 0..LOADS {
            ours.push(shown(page.browser(), &here));
            theirs.push(shown(plain.browser(), &there));
        }
        let (ours, theirs) = (middle(ours), middle(theirs));
        println!(
            "{what:<34} {ours:>6.1} ms {theirs:>6.1} ms {:>7.2}",
            ours / theirs
        );
    }
    Ok(())
}

/// Milliseconds from the address to the first frame.
fn shown(browser: &mut Browser, url: &str) -> f64 {
    browser.goto("about:blank");
    browser.goto(url);
    browser.wait_until(
        "the first screen is painted",
        "'shown' in document.documentElement.dataset",
    );
    browser
        .value("Number(document.documentElement.dataset.shown)")
        .as_f64()
        .expect("a time")
}

fn middle(mut times: Vec<f64>) -> f64 {
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
