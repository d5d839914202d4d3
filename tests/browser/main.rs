//! Drives the built page in real browsers.
//!
//! The set-up script names the browsers and the build in the environment (`BROWSER_…`). A test
//! whose engine is missing says so and is counted as skipped; it never passes unseen.
//!
//! `cargo test --test browser -- [WORD]…` runs the tests whose names hold one of the words;
//! `cargo test --test browser -- --bench` measures instead (`-- --bench many` a part of it alone), `-- --trials` tries the storage for long.

mod at_a_glance;
mod beforehand;
mod bench;
mod bench_desk;
mod bench_trainer;
mod book;
mod briefed;
mod camera;
mod captains;
mod clocks;
mod desk;
mod desk_files;
mod desk_paper;
mod desk_results;
mod desk_work;
mod driver;
mod files;
mod finger;
mod first_set;
mod in_sight;
mod incidents;
mod kept;
mod learner;
mod library;
mod light;
mod long_trials;
mod longer;
mod narrow;
mod pages;
mod pictures;
mod pictures_more;
mod printed;
mod probe;
mod referee;
mod sealed;
mod seldom;
#[path = "../../tools/xtask/src/server.rs"]
mod server;
mod slips_of_learners;
mod smoke;
mod spoken;
mod stage;
mod steady;
#[path = "../support/mod.rs"]
mod support;
mod taken_back;
mod taken_over;
mod tally;
mod trainer;
mod trials;
mod versions;
mod whole_match;
mod wide;
mod with_everything;

use std::panic::{catch_unwind, AssertUnwindSafe};
use std::process::ExitCode;
use std::sync::atomic::{AtomicUsize, Ordering};
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

/// The engines that keep their data under a driver, for stories that look into the storage.
const BOTH: &[Engine] = &[Engine::Chromium, Engine::Firefox];

/// The tests of each file; the longest come first, so that none of them is left over at the end.
const FILES: &[&[Test]] = &[
    pictures::TESTS,
    pictures_more::TESTS,
    whole_match::TESTS,
    with_everything::TESTS,
    captains::TESTS,
    trials::TESTS,
    probe::TESTS,
    smoke::TESTS,
    first_set::TESTS,
    kept::TESTS,
    pages::TESTS,
    taken_back::TESTS,
    in_sight::TESTS,
    wide::TESTS,
    steady::TESTS,
    longer::TESTS,
    narrow::TESTS,
    incidents::TESTS,
    beforehand::TESTS,
    finger::TESTS,
    clocks::TESTS,
    at_a_glance::TESTS,
    light::TESTS,
    spoken::TESTS,
    taken_over::TESTS,
    tally::TESTS,
    versions::TESTS,
    files::TESTS,
    book::TESTS,
    trainer::TESTS,
    briefed::TESTS,
    learner::TESTS,
    slips_of_learners::TESTS,
    library::TESTS,
    sealed::TESTS,
    seldom::TESTS,
    camera::TESTS,
    printed::TESTS,
    desk::TESTS,
    desk_files::TESTS,
    desk_results::TESTS,
    desk_paper::TESTS,
    desk_work::TESTS,
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
    if std::env::args().any(|word| word == "--trials") {
        return ExitCode::from(u8::from(!long_trials::print(&words)));
    }
    let wanted =
        |name: &str| words.is_empty() || words.iter().any(|word| name.contains(word.as_str()));

    let next = AtomicUsize::new(0);
    let todo: Vec<(&Test, Engine, String)> = FILES
        .iter()
        .copied()
        .flatten()
        .flat_map(|test| test.engines.iter().map(move |&engine| (test, engine)))
        .map(|(test, engine)| (test, engine, format!("{}::{}", engine.name(), test.name)))
        .filter(|(_, _, name)| wanted(name))
        .collect();
    // A test waits for its browser most of the time, so one a core keeps the cores busy.
    let workers = std::thread::available_parallelism().map_or(1, usize::from);
    let verdicts: Vec<Verdict> = std::thread::scope(|scope| {
        let work = || {
            let mut verdicts = Vec::new();
            while let Some((test, engine, name)) = todo.get(next.fetch_add(1, Ordering::SeqCst)) {
                verdicts.push(tried(test, *engine, name));
            }
            verdicts
        };
        let all: Vec<_> = (0..workers).map(|_| scope.spawn(work)).collect();
        all.into_iter()
            .flat_map(|worker| worker.join().expect("a failed test is caught"))
            .collect()
    });
    let count = |what: Verdict| verdicts.iter().filter(|one| **one == what).count();
    let (passed, failed, skipped) = (
        count(Verdict::Passed),
        count(Verdict::Failed),
        count(Verdict::Skipped),
    );
    let word = if failed == 0 { "ok" } else { "FAILED" };
    println!("\ntest result: {word}. {passed} passed; {failed} failed; {skipped} ignored");
    ExitCode::from(u8::from(failed != 0))
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Verdict {
    Passed,
    Failed,
    Skipped,
}

/// Runs one test and says what came of it.
fn tried(test: &Test, engine: Engine, name: &str) -> Verdict {
    let begun = Instant::now();
    match run(test, engine, name) {
        Some(Ok(())) => {
            let took = begun.elapsed().as_secs_f32();
            println!("test {name} ... ok ({took:.1} s)");
            Verdict::Passed
        }
        Some(Err(Skipped(why))) => {
            println!("test {name} ... ignored, {why}");
            Verdict::Skipped
        }
        None => {
            println!("test {name} ... FAILED");
            Verdict::Failed
        }
    }
}

/// What a test comes back with; nothing if it failed.
fn run(test: &Test, engine: Engine, name: &str) -> Option<Ran> {
    if let Err(why) = engine.present() {
        return Some(Err(Skipped(why)));
    }
    // The panic itself prints what went wrong, at the place where it did.
    let mut stage = catch_unwind(|| Stage::new(engine)).ok()?;
    let ran = catch_unwind(AssertUnwindSafe(|| (test.run)(&mut stage)));
    if ran.is_err() {
        // What the page looked like, if the browser can still tell.
        let file = format!("failed-{}", name.replace("::", "-"));
        let _ = catch_unwind(AssertUnwindSafe(|| stage.browser().picture(&file)));
    }
    ran.ok()
}
