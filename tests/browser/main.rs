//! Drives the built page in real browsers.
//!
//! The set-up script names the browsers and the build in the environment (`BROWSER_…`). A test
//! whose engine is missing says so and is counted as skipped; it never passes unseen.
//!
//! `cargo test --test browser -- [WORD]…` runs the tests whose names hold one of the words;
//! `cargo test --test browser -- --bench` measures instead.

mod bench;
mod driver;
mod files;
mod first_set;
mod kept;
mod pictures;
mod probe;
mod referee;
#[path = "../../tools/xtask/src/server.rs"]
mod server;
mod smoke;
mod stage;
#[path = "../support/mod.rs"]
mod support;
mod taken_back;
mod tally;
mod whole_match;

use std::panic::{catch_unwind, AssertUnwindSafe};
use std::process::ExitCode;
use std::time::Instant;

use driver::Engine;
use stage::Stage;

/// One test, run once on each of its engines.
struct Test {
    name: &'static str,
    engines: &'static [Engine],
    run: fn(&mut Stage) -> Ran,
}

/// What a test comes back with; one that fails panics instead.
type Ran = Result<(), Skipped>;

/// Why a test could not be run.
struct Skipped(String);

/// Every engine that phones have.
const ALL: &[Engine] = &[Engine::Chromium, Engine::Firefox, Engine::WebKit];

/// The tests of each file.
const FILES: &[&[Test]] = &[
    probe::TESTS,
    smoke::TESTS,
    first_set::TESTS,
    kept::TESTS,
    taken_back::TESTS,
    tally::TESTS,
    whole_match::TESTS,
    files::TESTS,
    pictures::TESTS,
];

fn main() -> ExitCode {
    if std::env::args().any(|word| word == "--bench") {
        return match bench::print() {
            Ok(()) => ExitCode::SUCCESS,
            Err(why) => {
                eprintln!("nothing was measured: {why}");
                ExitCode::FAILURE
            }
        };
    }
    // Words that begin with a dash are cargo's own and mean nothing here.
    let words: Vec<String> = std::env::args()
        .skip(1)
        .filter(|word| !word.starts_with('-'))
        .collect();
    let wanted =
        |name: &str| words.is_empty() || words.iter().any(|word| name.contains(word.as_str()));

    let (mut passed, mut failed, mut skipped) = (0, 0, 0);
    for test in FILES.iter().copied().flatten() {
        for &engine in test.engines {
            let name = format!("{}::{}", engine.name(), test.name);
            if !wanted(&name) {
                continue;
            }
            let begun = Instant::now();
            match run(test, engine, &name) {
                Verdict::Passed => {
                    passed += 1;
                    println!(
                        "test {name} ... ok ({:.1} s)",
                        begun.elapsed().as_secs_f32()
                    );
                }
                Verdict::Failed => {
                    failed += 1;
                    println!("test {name} ... FAILED");
                }
                Verdict::Skipped(why) => {
                    skipped += 1;
                    println!("test {name} ... ignored, {why}");
                }
            }
        }
    }
    let word = if failed == 0 { "ok" } else { "FAILED" };
    println!("\ntest result: {word}. {passed} passed; {failed} failed; {skipped} ignored");
    ExitCode::from(u8::from(failed != 0))
}

enum Verdict {
    Passed,
    Failed,
    Skipped(String),
}

fn run(test: &Test, engine: Engine, name: &str) -> Verdict {
    if let Err(why) = engine.present() {
        return Verdict::Skipped(why);
    }
    // The panic itself prints what went wrong, at the place where it did.
    let Ok(mut stage) = catch_unwind(|| Stage::new(engine)) else {
        return Verdict::Failed;
    };
    match catch_unwind(AssertUnwindSafe(|| (test.run)(&mut stage))) {
        Ok(Ok(())) => Verdict::Passed,
        Ok(Err(Skipped(why))) => Verdict::Skipped(why),
        Err(_) => {
            // What the page looked like, if the browser can still tell.
            let file = format!("failed-{}", name.replace("::", "-"));
            let _ = catch_unwind(AssertUnwindSafe(|| stage.browser().picture(&file)));
            Verdict::Failed
        }
    }
}
