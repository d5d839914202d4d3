//! What the desk makes of many results: the pool of a paper sheet, results in doubt, how often teams meet, and
//! two matches that are compared although they are not one.

use game::entry::Detail;
use game::{Entry, Kind, Timeline};
use record::{KeptMatch, Log, OnDesk};
use reports::paper::Draft;
use reports::{demo, paper, Sheet};
use serde_json::json;

use crate::desk_files::POOL;
use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Test};

const ENGINES: &[Engine] = &[Engine::Chromium, Engine::Firefox];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "desk_finds_the_pool_of_a_paper_sheet_past_a_friendly_match",
        engines: ENGINES,
        run: desk_finds_the_pool_of_a_paper_sheet_past_a_friendly_match,
    },
    Test {
        name: "desk_reads_a_backup_as_it_reads_its_parts_one_by_one",
        engines: ENGINES,
        run: desk_reads_a_backup_as_it_reads_its_parts_one_by_one,
    },
    Test {
        name: "desk_marks_what_is_in_doubt_in_the_list_and_beside_the_table",
        engines: ENGINES,
        run: desk_marks_what_is_in_doubt_in_the_list_and_beside_the_table,
    },
    Test {
        name: "desk_lets_teams_meet_as_often_as_the_competition_says",
        engines: ENGINES,
        run: desk_lets_teams_meet_as_often_as_the_competition_says,
    },
    Test {
        name: "desk_says_once_that_two_matches_are_not_one",
        engines: ENGINES,
        run: desk_says_once_that_two_matches_are_not_one,
    },
];

/// The six match records of pool 1.
fn pool_1() -> Vec<Log> {
    let mut logs = demo::day().logs;
    logs.truncate(6);
    logs
}

fn file(log: &Log) -> (String, String) {
    (format!("{}.json", log.id), record::write(log))
}

fn with_heading(log: &mut Log, change: impl Fn(&mut game::entry::Heading)) {
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
    let timeline = Timeline::of(on_paper.entries.clone());
    let sheet = paper::of_sheet(&Sheet::of(&timeline), *timeline.state().rules(), 0);
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
        "[...document.querySelectorAll('.desk-item')].find((i) => i.innerText.includes('On \
         paper'))
            .closest('section').querySelector('h2').innerText === 'Sample tournament, \
         Pool 1'",
    );
    Ok(())
}

/// A small backup is read in one go, a large one match by match.
fn desk_reads_a_backup_as_it_reads_its_parts_one_by_one(stage: &mut Stage) -> Ran {
    let day = demo::day();
    let on_desk = OnDesk {
        papers: vec![Draft::of(&day.paper).written()],
        pools: vec![POOL.to_owned()],
        ..OnDesk::default()
    };
    let backup = |logs: &[Log]| {
        let kept = logs.iter().map(|log| KeptMatch {
            log: log.clone(),
            ..KeptMatch::default()
        });
        let kept: Vec<KeptMatch> = kept.collect();
        record::write_backup(&kept, &on_desk, None)
    };
    let small = backup(&day.logs[6..11]);
    let large = backup(&day.logs);
    assert!(small.len() < 256 * 1024 && large.len() > 256 * 1024);
    let groups = "[...document.querySelectorAll('.desk-group')].map((g) =>
        [g.querySelector('h2').innerText, g.parentElement.querySelectorAll('.desk-item').length])";
    let mut referee = with_files(stage, &[("small.json".to_owned(), small)], 7);
    let shown = referee.browser().value(groups);
    assert_eq!(
        shown,
        json!([
            ["Without a competition", 1],
            ["Sample tournament, Pool 2", 6]
        ])
    );
    referee.open_files(&[("large.json".to_owned(), large)]);
    referee.browser().wait_until(
        "all of it lies there",
        "document.querySelectorAll('.desk-item').length === 14",
    );
    let mut shown = referee.browser().value(groups);
    let shown = shown.as_array_mut().expect("the groups");
    shown.sort_by_key(|group| group[0].to_string());
    let of_pool = |n: u8, items: u8| json!([format!("Sample tournament, Pool {n}"), items]);
    assert_eq!(
        *shown,
        [
            of_pool(1, 6),
            of_pool(2, 7),
            json!(["Without a competition", 1])
        ]
    );
    referee.tap("Table Pool of one match");
    referee.reads_at("#reasons", "Otters before Herons by matches won: 1 to 0.");
    Ok(())
}

/// A file in which a line is not as it was written, and a record that was changed after its seal.
fn desk_marks_what_is_in_doubt_in_the_list_and_beside_the_table(stage: &mut Stage) -> Ran {
    let mut logs = pool_1();
    let code = record::seal_code(&logs[1].entries);
    let n = logs[1].entries.last().expect("an entry").n + 1;
    logs[1].entries.push(Entry::new(n, Kind::Seal { code }));
    with_heading(&mut logs[1], |heading| {
        heading.details[Detail::Venue] = Some("Elsewhere".to_owned());
    });
    let mut files: Vec<_> = logs.iter().map(file).collect();
    let changed = files[0].1.replacen("2026-05-09T", "2026-05-08T", 1);
    assert_ne!(changed, files[0].1);
    files[0].1 = changed;
    let mut referee = with_files(stage, &files, 6);
    let said = "[...document.querySelectorAll('.desk-item .warn')].map((d) => d.innerText).sort()";
    let both = json!([
        "In doubt: a part of this record is damaged or was changed. Ask for the record again.",
        "In doubt: the seal of this record does not fit, so something was changed after sealing. Ask for \
         the sealed record."
    ]);
    assert_eq!(referee.browser().value(said), both);
    referee.reads_at(".desk-item .warn", "In doubt");
    referee.browser().picture("desk-in-doubt");
    // What came in damaged stays so, whenever the page is opened.
    referee.stage.reload();
    referee.browser().find(".desk-item .warn");
    assert_eq!(referee.browser().value(said), both);

    referee.tap("Select for the table: Sample tournament, Pool 1");
    referee.tap_at("#desk-table");
    for say in [
        ") is damaged or was changed. Ask for",
        ") does not fit, so something",
    ] {
        referee.reads_at("#doubts", say);
    }
    let before = "document.querySelector('#doubts')
        .compareDocumentPosition(document.querySelector('#standings')) === Node.DOCUMENT_POSITION_FOLLOWING";
    assert_eq!(referee.browser().value(before), json!(true));
    referee.browser().picture("desk-table-in-doubt");

    // What is cut off is in doubt until the whole of it is here.
    referee.tap("Back");
    referee.browser().find("#import");
    let whole = record::write(&demo::day().logs[7]);
    let cut = whole[..whole.len() / 2].to_owned();
    let doubts = |n: usize| format!("document.querySelectorAll('.desk-item .warn').length === {n}");
    referee.open_files(&[("cut.json".to_owned(), cut)]);
    referee.browser().wait_until("it is in doubt", &doubts(3));
    referee.open_files(&[("whole.json".to_owned(), whole)]);
    referee.browser().wait_until("it is no more", &doubts(2));
    Ok(())
}

fn desk_lets_teams_meet_as_often_as_the_competition_says(stage: &mut Stage) -> Ran {
    let files: Vec<_> = pool_1().iter().map(file).collect();
    let mut referee = with_files(stage, &files, 6);
    referee.tap("Select for the table: Sample tournament, Pool 1");
    referee.tap_at("#desk-table");
    referee.browser().find("#standings");
    let missing =
        "document.querySelector('.desk-findings')?.innerText.includes('missing') ?? false";
    assert_eq!(referee.browser().value(missing), json!(false));
    referee.tap("Twice");
    referee.reads("6 matches are missing from Sample tournament, Pool 1");
    referee.browser().picture("desk-meetings");
    // It stays with the other settings of the desk.
    referee.stage.reload();
    referee.reads("6 matches are missing from Sample tournament, Pool 1");
    referee.tap("Once");
    referee
        .browser()
        .wait_until("nothing is missing", &format!("!({missing})"));
    Ok(())
}

fn desk_says_once_that_two_matches_are_not_one(stage: &mut Stage) -> Ran {
    let files: Vec<_> = pool_1()[..2].iter().map(file).collect();
    let mut referee = with_files(stage, &files, 2);
    referee.tap("Select for the table: Sample tournament, Pool 1");
    referee.tap_at("#desk-compare");
    referee.reads("These are two different matches");
    let times = "document.querySelector('main').innerText.split('These are two different matches').length - 1";
    assert_eq!(referee.browser().value(times), json!(1));
    let first = "document.querySelector('.desk').innerText.trim().startsWith('These are two different matches')";
    assert_eq!(referee.browser().value(first), json!(true));
    referee.browser().picture("desk-not-one-match");
    Ok(())
}
