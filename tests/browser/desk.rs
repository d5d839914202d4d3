//! The coordinator's desk: an invented day from one tap, a table, two records side by side, a paper sheet
//! keyed in without a mouse, and the look back on a match.

use game::entry::Detail;
use game::Timeline;
use reports::demo;
use reports::paper::{Cell, Draft, Part};
use reports::standings::{self, Criterion, Pool};
use serde_json::json;

use crate::driver::{Browser, Engine};
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Skipped, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "desk_shows_a_whole_day_and_takes_it_away",
        engines: CHROMIUM,
        run: desk_shows_a_whole_day_and_takes_it_away,
    },
    Test {
        name: "desk_keys_in_a_paper_set_without_a_mouse",
        engines: CHROMIUM,
        run: desk_keys_in_a_paper_set_without_a_mouse,
    },
    Test {
        name: "desk_keys_in_a_whole_sheet_with_its_lists",
        engines: CHROMIUM,
        run: desk_keys_in_a_whole_sheet_with_its_lists,
    },
    Test {
        name: "desk_looks_back_on_a_match",
        engines: CHROMIUM,
        run: desk_looks_back_on_a_match,
    },
];

/// Nothing in the way of anybody, in each theme; nothing wider than the screen.
fn is_fit(referee: &mut Referee) -> Ran {
    for theme in ["sunlight", "dark", "light"] {
        let set = format!("document.documentElement.setAttribute('data-theme', '{theme}')");
        referee.browser().value(&set);
        let hindrances = referee.browser().hindrances().map_err(Skipped)?;
        assert_eq!(hindrances, Vec::<String>::new(), "{theme}");
    }
    let wide = "document.documentElement.scrollWidth <= window.innerWidth";
    assert_eq!(referee.browser().value(wide), json!(true));
    Ok(())
}

/// Why the first team of pool 2 is first, by the core.
fn first_reason(rank_by: &[Criterion]) -> String {
    let day = demo::day();
    let folds = day.logs[..11]
        .iter()
        .map(|l| Timeline::of(l.entries.clone()));
    let in_pool = folds.filter(|r| {
        let heading = r.state().heading().expect("a heading");
        heading.details[Detail::Division].as_deref() == Some("Pool 2")
    });
    let mut results: Vec<_> = in_pool
        .filter_map(|r| standings::of_match(r.state()))
        .collect();
    results.extend(standings::of_paper(&day.paper));
    assert_eq!(results.len(), 6);
    let table = standings::rank(&Pool {
        rank_by: rank_by.to_vec(),
        restart: true,
        match_points: Default::default(),
        default_points: None,
        rules: None,
        teams: Vec::new(),
        meetings: None,
        results,
    });
    text::standings::reason(&table.rows[0])
}

fn desk_shows_a_whole_day_and_takes_it_away(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("my-own", crate::kept::begun());
    referee.stage.open();
    referee.tap_at("#to-desk");
    referee.tap("Add the sample tournament");
    referee.reads("Sample tournament, Pool 2");
    is_fit(&mut referee)?;

    // The day says itself where to look.
    referee.tap("The table of pool 2, and why");
    referee.reads_at("#reasons", &first_reason(&Criterion::USUAL));
    referee.tap("Back");
    referee.tap("Two records that differ");
    referee.reads_at("#parting", "They differ from set 1");
    referee.tap("Back");
    referee.browser().find("#tour");
    referee.reads("Another record of the same match");

    // The table of a pool, the paper sheet among its matches.
    referee.tap("Select for the table: Sample tournament, Pool 2");
    referee.reads_at("#desk-chosen", "6 selected");
    referee.tap_at("#desk-table");
    referee.reads_at("#reasons", &first_reason(&Criterion::USUAL));
    is_fit(&mut referee)?;
    // By another rule of order, and one put together by hand.
    referee.tap("Remove: matches won");
    referee.tap("Remove: sets won to lost");
    referee.reads_at("#reasons", &first_reason(&Criterion::USUAL[2..]));
    referee.tap("Then sets won");
    referee.tap("Move up: sets won");
    referee.tap("Move up: sets won");
    let by_hand = [
        Criterion::SetsWon,
        Criterion::PointRatio,
        Criterion::HeadToHead,
    ];
    referee.reads_at("#reasons", &first_reason(&by_hand));

    // Two records of one match.
    referee.tap("Back");
    let boxes = "[...document.querySelectorAll('.desk-item')].filter((i) => i.innerText.includes('match 11'))
        .map((i) => i.querySelector('input')).forEach((b) => b.click())";
    referee.browser().wait_until(
        "the desk is back",
        "document.querySelector('.desk-item') !== null",
    );
    referee.browser().value(&format!(
        "([...document.querySelectorAll('.desk-item input:checked')].forEach((b) => b.click()), {boxes}, 1)"
    ));
    referee.reads_at("#desk-chosen", "2 selected");
    referee.tap_at("#desk-compare");
    referee.reads_at("#parting", "They differ from set 1");
    is_fit(&mut referee)?;

    // What is to be looked at: the own match without a competition stands first.
    referee.tap("Back");
    referee.browser().wait_until(
        "the desk is back",
        "document.querySelector('.desk-item .found') !== null",
    );
    referee.tap_at(".desk-item .found");
    referee.reads("The match is not over in this record.");
    is_fit(&mut referee)?;

    referee.tap("Back");
    referee.tap("Remove the sample tournament");
    referee.browser().wait_until(
        "the invented day is gone",
        "document.querySelectorAll('.desk-item').length === 1",
    );
    let invented = "Object.keys(localStorage).filter((k) => k.includes('invented')).length";
    referee
        .browser()
        .wait_until("nothing of it is kept", &format!("{invented} === 0"));
    let own =
        "Object.keys(localStorage).filter((k) => k.startsWith('dutystand/m/my-own/')).length > 0";
    assert_eq!(referee.browser().value(own), json!(true));
    Ok(())
}

/// Presses one key as a hand does.
fn press(browser: &mut Browser, key: char) {
    let (name, code, text) = match key {
        '\n' => ("Enter".to_owned(), 13, "\r".to_owned()),
        key => (
            key.to_string(),
            u32::from(key.to_ascii_uppercase()),
            key.to_string(),
        ),
    };
    for kind in ["keyDown", "keyUp"] {
        let mut event = json!({ "type": kind, "key": name, "windowsVirtualKeyCode": code });
        if kind == "keyDown" {
            event["text"] = json!(text);
        }
        browser.cdp("Input.dispatchKeyEvent", event);
    }
}

/// The keys that a hand presses to fill in a part of a sheet: the core says where Enter is needed.
fn keys(sheet: &Draft, set: u8) -> String {
    let mut draft = Draft::new(sheet.rules.preset);
    for cell in sheet.cells(Cell::HEAD) {
        draft.set(cell, sheet.get(cell));
    }
    let mut keys = String::new();
    let mut at = draft.cells(set).first().copied();
    while let Some(cell) = at {
        let mut typed = String::new();
        for letter in sheet.get(cell).chars() {
            typed.push(letter);
            keys.push(letter);
            draft.set(cell, &typed);
        }
        let full = !typed.is_empty() && draft.is_full(cell);
        at = draft.next(cell);
        if !full {
            keys.push('\n');
        }
    }
    keys
}

fn desk_keys_in_a_paper_set_without_a_mouse(stage: &mut Stage) -> Ran {
    let sheet = Draft::of(&demo::day().paper);
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.tap("Key in a paper sheet");
    let first = Cell::new(1, Part::First, rules::Team::A, 0, 0).key();
    referee.browser().find(".keying");
    referee.tap("Set 1");
    referee.browser().wait_until(
        "the cursor stands in the first box",
        &format!("document.activeElement.id === '{first}'"),
    );
    // Without a list of numbers, which is the harder way.
    let mut bare = Draft::new(sheet.rules.preset);
    for cell in sheet.cells(1) {
        bare.set(cell, sheet.get(cell));
    }
    let keys = keys(&bare, 1);
    for key in keys.chars() {
        press(referee.browser(), key);
    }
    let digits = keys.chars().filter(|k| *k != '\n').count();
    eprintln!(
        "a set on paper: {} keys, {digits} of them what stands there",
        keys.chars().count()
    );
    assert!(
        keys.chars().count() < digits * 3 / 2,
        "few keys beside the digits"
    );

    // What the core was given is what the core made of the sheet.
    let kept = "Object.entries(localStorage).find(([k]) => k.startsWith('dutystand/s/paper/'))[1]";
    let written = referee.browser().value(kept);
    assert_eq!(Draft::of_written(written.as_str().expect("a draft")), bare);

    // Every key survives a reload, and the slip is marked at its box.
    referee.stage.reload();
    referee.tap("Set 1");
    let wrong = bare.check(false).marks;
    let mark = wrong
        .iter()
        .find(|m| m.cell.part == Part::Round)
        .expect("the slip");
    referee.browser().wait_until(
        "the box is marked",
        &format!(
            "document.getElementById('{}').getAttribute('aria-invalid') === 'true'",
            mark.cell.key()
        ),
    );
    referee.reads(&text::paper::mark(mark, (&bare).into()));
    is_fit(&mut referee)?;
    // Put right: the box of the slip gets the total that is due.
    let row = mark.cell.row;
    let total: u16 = bare
        .get(Cell {
            row: row - 1,
            ..mark.cell
        })
        .parse()
        .expect("a total");
    let field = referee
        .browser()
        .find(&format!("[id='{}']", mark.cell.key()));
    referee.browser().write(&field, &(total + 1).to_string());
    referee.browser().wait_until(
        "the mark is gone",
        &format!(
            "document.getElementById('{}').getAttribute('aria-invalid') === null",
            mark.cell.key()
        ),
    );
    Ok(())
}

/// The same for a whole sheet that begins empty: what is keyed in is all that is known.
fn keys_of_all(sheet: &Draft) -> String {
    let mut draft = Draft::new(sheet.rules.preset);
    let mut keys = String::new();
    let parts = (Cell::HEAD..=sheet.sets()).chain([Cell::RESULT]);
    for set in parts {
        let mut at = draft.cells(set).first().copied();
        while let Some(cell) = at {
            let mut typed = String::new();
            for letter in sheet.get(cell).chars() {
                typed.push(letter);
                keys.push(letter);
                draft.set(cell, &typed);
            }
            let full = !typed.is_empty() && draft.is_full(cell);
            at = draft.next(cell);
            if !full {
                keys.push('\n');
            }
        }
    }
    assert_eq!(&draft, sheet, "every box can be reached");
    keys
}

fn desk_keys_in_a_whole_sheet_with_its_lists(stage: &mut Stage) -> Ran {
    let sheet = Draft::of(&demo::day().paper);
    let two_digits = |c: &Cell| c.part == Part::List && sheet.get(*c).len() == 2;
    assert!(sheet.cells(Cell::HEAD).iter().any(two_digits));
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.tap("Key in a paper sheet");
    referee.browser().find(".keying");
    // Nothing is tapped: the first key goes into the first box.
    let first = sheet.cells(Cell::HEAD)[0].key();
    referee.browser().wait_until(
        "the cursor stands in the first box",
        &format!("document.activeElement.id === '{first}'"),
    );
    for key in keys_of_all(&sheet).chars() {
        press(referee.browser(), key);
        if key == '\n' {
            // A hand is slower than the next part of the sheet.
            referee.still();
        }
    }
    let kept = "Object.entries(localStorage).find(([k]) => k.startsWith('dutystand/s/paper/'))[1]";
    let written = referee.browser().value(kept);
    assert_eq!(Draft::of_written(written.as_str().expect("a draft")), sheet);
    // After the last box everything is checked, and whoever listens hears it.
    let mut marks: Vec<Cell> = sheet.check(true).marks.iter().map(|m| m.cell).collect();
    marks.dedup();
    referee.browser().wait_until(
        "everything is checked",
        "document.activeElement.id === 'marks'",
    );
    match marks.len() {
        0 => referee.reads_at("#marks", "Every box agrees."),
        1 => referee.reads_at("#marks", "One box is marked"),
        n => referee.reads_at("#marks", &format!("{n} boxes are marked")),
    }
    referee.tap("Set 1");
    referee.browser().picture("paper-set");
    is_fit(&mut referee)
}

fn desk_looks_back_on_a_match(stage: &mut Stage) -> Ran {
    let log = demo::day().logs.swap_remove(2);
    let mut referee = Referee::at(stage);
    referee.go_on_with("looked-back-on", log.entries);
    // From the match itself, once it is over.
    let address = format!("{}#/play/looked-back-on", referee.stage.url());
    referee.browser().goto(&address);
    referee.tap_at("#to-review");
    referee.reads_at("#talk", "What went well");
    let pictures =
        "[...document.querySelectorAll('.review svg')].map((s) => s.getAttribute('aria-label'))";
    let words = referee.browser().value(pictures);
    let words = words.as_array().expect("the pictures");
    assert!(words.len() > 8);
    for word in words {
        assert!(word.as_str().is_some_and(|w| w.ends_with('.')), "{word}");
    }
    let questions = "document.querySelectorAll('.questions li').length";
    assert_eq!(referee.browser().value(questions), json!(3));
    is_fit(&mut referee)
}
