//! What the desk makes of many results: the pool of a paper sheet, results in doubt, how often teams meet, and
//! two matches that are compared although they are not one.

use dutystand::game::entry::Detail;
use dutystand::game::{Kind, Replay};
use dutystand::record::{self, Log};
use dutystand::sheet::{demo, paper, Sheet};
use serde_json::json;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Test};

const ENGINES: &[Engine] = &[Engine::Chromium, Engine::Firefox];

/// The tests of this file.
pub const TESTS: &[Test] = &[Test {
    name: "desk_finds_the_pool_of_a_paper_sheet_past_a_friendly_match",
    engines: ENGINES,
    run: desk_finds_the_pool_of_a_paper_sheet_past_a_friendly_match,
}];

/// The six match records of pool 1.
fn pool_1() -> Vec<Log> {
    let mut logs = demo::day().logs;
    logs.truncate(6);
    logs
}

fn file(log: &Log) -> (String, String) {
    (format!("{}.json", log.id), record::write(log))
}

fn with_heading(log: &mut Log, change: impl Fn(&mut dutystand::game::entry::Heading)) {
    let first = &mut log.entries[0];
    if let Kind::Match(heading) = &mut first.kind {
        change(heading);
    }
    first.written = None;
}

/// Opens the desk with these files on it.
fn with_files<'a>(stage: &'a mut Stage, files: &[(String, String)], items: usize) -> Referee<'a> {
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.open_files(files);
    referee.browser().wait_until(
        "all lie on the desk",
        &format!("document.querySelectorAll('.desk-item').length === {items}"),
    );
    referee
}

/// The teams of a sheet have met in another match, later and outside of any competition.
fn desk_finds_the_pool_of_a_paper_sheet_past_a_friendly_match(stage: &mut Stage) -> Ran {
    let mut logs = pool_1();
    let on_paper = logs.remove(2);
    let replay = Replay::of(on_paper.entries.clone());
    let sheet = paper::of_sheet(&Sheet::of(&replay), *replay.state().rules(), 0);
    let mut friendly = on_paper;
    friendly.id = "friendly".to_owned();
    with_heading(&mut friendly, |heading| {
        heading.details[Detail::Competition] = None;
        heading.details[Detail::Division] = None;
    });
    for entry in &mut friendly.entries {
        entry.at = entry.at.map(|at| at + 86_400_000);
    }
    logs.push(friendly);
    let mut files: Vec<_> = logs.iter().map(file).collect();
    files.push(("on-paper.json".to_owned(), paper::write(&sheet)));
    let mut referee = with_files(stage, &files, 7);
    referee.browser().wait_until(
        "the sheet lies among the matches of its pool",
        "[...document.querySelectorAll('.desk-item')].find((i) => i.innerText.includes('On paper'))
            .closest('section').querySelector('h2').innerText === 'Invented day, Pool 1'",
    );
    Ok(())
}
