//! Measures the desk with many matches on it: the longest task of the page's thread while the table opens, sorts, is
//! searched and goes from match to match, on a processor four times slower.

use std::time::{Duration, Instant};

use serde_json::json;

use crate::bench::{long_tasks, many_matches, MANY, WATCH_TASKS};
use crate::driver::{Browser, Engine};
use crate::referee::Referee;
use crate::stage::Stage;

/// So many times each thing is done; all of its tasks count.
const TIMES: usize = 5;

/// Prints the figures.
pub fn print() {
    println!("\n{MANY} matches on the desk, 1440 x 900, processor 4 times slower, Chromium");
    println!("{:<44} {:>9} {:>11}", "", "over 50 ms", "the longest");
    let mut stage = Stage::new(Engine::Chromium);
    stage.browser().screen(1440, 900);
    let mut referee = Referee::at(&mut stage);
    let referee = &mut referee;
    referee.open_file("all.json", many_matches().as_bytes());
    let done = "document.body.innerText.includes('matches new') && !document.querySelector('#import-progress')";
    while referee.browser().value(done) != json!(true) {
        std::thread::sleep(Duration::from_secs(1));
    }
    // The program has rested by then.
    referee.stage.ready_offline();
    referee.stage.reload();
    std::thread::sleep(Duration::from_secs(2));
    let browser = referee.browser();
    browser.slow_down(4.0);
    browser.run(WATCH_TASKS, json!([]));
    let begun = Instant::now();
    referee.tap_at("#to-desk");
    // Longer than a person would be asked to wait for anything else.
    let read = "document.querySelectorAll('.matches tbody tr').length > 0
        && !document.body.innerText.includes('Reading match')";
    while referee.browser().value(read) != json!(true) {
        std::thread::sleep(Duration::from_millis(200));
    }
    all_there(referee.browser());
    let first = begun.elapsed();
    line(referee.browser(), "opens for the first time, all read");
    println!(
        "{:<44} {:>21.1} s",
        "until all rows stand there",
        first.as_secs_f64()
    );
    referee.tap("Back");
    referee.browser().find("#to-desk");
    referee.still();
    long_tasks(referee.browser());
    let begun = Instant::now();
    referee.tap_at("#to-desk");
    all_there(referee.browser());
    let again = begun.elapsed();
    line(referee.browser(), "opens again");
    println!(
        "{:<44} {:>21.1} s",
        "until all rows stand there",
        again.as_secs_f64()
    );
    for column in ["teams", "findings", "day", "result", "pool"] {
        for _ in 0..2 {
            referee.tap_at(&format!("#sort-{column}"));
            referee.still();
        }
    }
    line(referee.browser(), "sorts, 10 times");
    for _ in 0..TIMES {
        let field = referee.browser().find("#desk-find");
        for words in ["o", "ot", "ott", " "] {
            referee.browser().write(&field, words);
            referee.still();
        }
        all_there(referee.browser());
    }
    line(referee.browser(), "is searched, 20 times");
    for _ in 0..TIMES {
        referee.tap_at("#desk-all");
        referee.tap_at("#desk-none");
        referee.still();
    }
    line(referee.browser(), "all chosen, and none, 10 times");
    referee.tap_at(".matches tbody tr:first-child .row-open");
    sheet_there(referee.browser());
    line(referee.browser(), "opens a match");
    for _ in 0..TIMES * 2 {
        referee.tap_at("#desk-next");
        sheet_there(referee.browser());
    }
    line(referee.browser(), "goes to the next one, 10 times");
}

/// Waits until all rows are built, and the page rests.
fn all_there(browser: &mut Browser) {
    browser.wait_until(
        "all rows stand there",
        &format!("document.querySelectorAll('.matches tbody tr').length === {MANY}"),
    );
}

fn sheet_there(browser: &mut Browser) {
    browser.wait_until(
        "the sheet stands there",
        "document.querySelector('.desk-middle .paper:not([aria-busy]) .sheet-head') !== null",
    );
}

/// What there was since the last look.
fn line(browser: &mut Browser, what: &str) {
    // What is told of a task comes a little after it.
    std::thread::sleep(Duration::from_millis(500));
    let (count, longest) = long_tasks(browser);
    println!("{what:<44} {count:>9} {longest:>9.0} ms");
}
