//! The desk where there is room: matches, the open one and its findings beside each other, a table that sorts and
//! filters, keys for everything, files that are dropped onto the window.

use std::sync::Arc;

use app::desk::{shown, Column, Filter, Order, Row, RowKind};
use game::Timeline;
use record::Reading;
use reports::list::Line;
use reports::paper::Draft;
use reports::{demo, paper, WallClock};
use serde_json::{json, Value};
use text::setup::library::date_words;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Skipped, Test, ALL};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file. Another engine's window has a least size of its own, which is wide enough for a table.
pub const TESTS: &[Test] = &[
    Test {
        name: "desk_shows_matches_sheet_and_findings_beside_each_other",
        engines: CHROMIUM,
        run: beside_each_other,
    },
    Test {
        name: "desk_shows_the_same_one_after_the_other_on_a_phone",
        engines: CHROMIUM,
        run: one_after_the_other,
    },
    Test {
        name: "desk_sorts_filters_and_finds",
        engines: CHROMIUM,
        run: sorts_filters_and_finds,
    },
    Test {
        name: "desk_archives_and_deletes_what_is_chosen",
        engines: CHROMIUM,
        run: archives_and_deletes,
    },
    Test {
        name: "desk_is_worked_with_keys_alone",
        engines: ALL,
        run: with_keys_alone,
    },
    Test {
        name: "desk_takes_in_files_that_are_dropped",
        engines: ALL,
        run: dropped,
    },
];

/// Keys without a letter, in the table of WebDriver.
const ESCAPE: char = '\u{e00c}';
const ENTER: char = '\u{e007}';
const BACKSPACE: char = '\u{e003}';
const DOWN: char = '\u{e015}';

/// The desk with the invented day on it, on a screen of this size.
fn desk_at<'a>(stage: &'a mut Stage, size: (u32, u32)) -> Referee<'a> {
    let mut referee = Referee::at(stage);
    referee.browser().screen(size.0, size.1);
    referee.tap_at("#to-desk");
    referee.tap("Add the sample tournament");
    referee.browser().find("#tour");
    referee
}

/// Nothing in the way of anybody, in all themes; nothing wider than the screen.
fn is_fit(referee: &mut Referee, name: &str) -> Ran {
    for theme in ["light", "dark", "sunlight"] {
        let set = format!("document.documentElement.setAttribute('data-theme', '{theme}')");
        referee.browser().value(&set);
        if theme != "sunlight" {
            referee.browser().picture(&format!("{name}-{theme}"));
        }
        let hindrances = referee.browser().hindrances().map_err(Skipped)?;
        assert_eq!(hindrances, Vec::<String>::new(), "{name}, {theme}");
    }
    let wide = "document.documentElement.scrollWidth <= window.innerWidth";
    assert_eq!(referee.browser().value(wide), json!(true), "{name}");
    referee
        .browser()
        .value("document.documentElement.setAttribute('data-theme', 'light')");
    Ok(())
}

/// Presses a key where the keys go.
fn key(referee: &mut Referee, key: char) {
    let on = referee
        .browser()
        .value("document.querySelector(':focus') ? ':focus' : 'body'");
    let on = referee.browser().find(on.as_str().expect("a selector"));
    referee.browser().press_key(&on, key);
}

/// Waits until the element of this id has the keys.
fn keys_are_on(referee: &mut Referee, id: &str) {
    referee.browser().wait_until(
        &format!("the keys go to {id}"),
        &format!("document.activeElement?.id === {}", json!(id)),
    );
}

/// The titles of the rows of the table, from top to bottom.
const TITLES: &str =
    "[...document.querySelectorAll('.matches .row-open')].map((b) => b.innerText.trim())";

fn titles(referee: &mut Referee, wanted: &[String]) {
    referee.browser().wait_until(
        &format!("the table shows {wanted:?}"),
        &format!(
            "JSON.stringify({TITLES}) === JSON.stringify({})",
            json!(wanted)
        ),
    );
}

/// The rows of the invented day as the core makes them.
fn rows() -> Vec<Arc<Row>> {
    let day = demo::day();
    let mut rows: Vec<Row> = day
        .logs
        .iter()
        .map(|log| {
            let line = Line::of_record(&Reading::default(), &Timeline::of(log.entries.clone()));
            // As the page writes it; it sorts alike by the clock of any hall.
            let clock = WallClock::default();
            let day = |(first, _)| format!("{}, {}", clock.date(first), clock.time(first));
            Row {
                id: log.id.clone(),
                kind: RowKind::Record,
                group: line.group.clone(),
                words: Vec::new(),
                scheduled: None,
                day: line.time.map(day).unwrap_or_default(),
                archived: false,
                again: false,
                line: Some(line),
            }
        })
        .collect();
    let line = Line::of_paper(&Draft::of(&day.paper));
    rows.push(Row {
        id: day.paper_id,
        kind: RowKind::Paper,
        group: rows[10].group.clone(),
        words: Vec::new(),
        scheduled: None,
        day: line.day.clone().unwrap_or_default(),
        archived: false,
        again: false,
        line: Some(line),
    });
    rows.into_iter().map(Arc::new).collect()
}

fn titles_by(order: Order, filter: &Filter) -> Vec<String> {
    let rows = shown(&rows(), filter, order, date_words());
    rows.iter()
        .filter_map(|row| Some(text::desk::teams_of(row.line.as_ref()?)))
        .collect()
}

fn beside_each_other(stage: &mut Stage) -> Ran {
    let mut referee = desk_at(stage, (1440, 900));
    let referee = &mut referee;
    for size in [(1180, 820), (1440, 900)] {
        referee.browser().screen(size.0, size.1);
        referee.browser().find(".matches .row-open");
        is_fit(referee, &format!("desk-table-{}", size.0))?;
        // The match with the most to look at.
        referee.tap_at("#sort-findings");
        referee.tap_at(".matches tbody tr:first-child .row-open");
        referee.browser().find(".desk-found .finding");
        referee.browser().wait_until(
            "the sheet is there",
            "document.querySelector('.desk-middle .paper:not([aria-busy]) .sheet-head') !== null",
        );
        let [list, middle, found] =
            [".desk-beside", ".desk-middle", ".desk-found"].map(|css| referee.place(css));
        assert!(list[2] <= middle[0] && middle[2] <= found[0], "{size:?}");
        assert!(
            middle[2] - middle[0] > 420.0,
            "the sheet has room: {middle:?}"
        );
        for pane in [list, middle, found] {
            assert!(pane[3] <= f64::from(size.1) + 1.0, "{size:?}: {pane:?}");
        }
        is_fit(referee, &format!("desk-panes-{}", size.0))?;
        // A finding leads to its entry in the log, one of the whole record to its box of the sheet.
        let ways = "[...document.querySelectorAll('.finding button')].map((b) => b.innerText)";
        let ways = referee.browser().value(ways);
        let ways: Vec<String> = serde_json::from_value(ways).expect("words");
        let entry = ways.iter().find_map(|w| w.strip_prefix("Show entry "));
        if let Some(n) = entry {
            referee.tap_in(".finding:has(button)", &format!("Show entry {n}"));
            keys_are_on(referee, &format!("entry-{n}"));
            referee.browser().find(".log-line.looked-for");
            referee.browser().picture(&format!("desk-entry-{}", size.0));
        }
        referee.tap_in(".desk-middle", "Sheet");
        referee.browser().find(".desk-middle .paper");
        // Next and previous, in the order of the table.
        let first = referee.browser().text(".desk-what h2");
        let before = "document.querySelector('#desk-previous').getAttribute('aria-disabled')";
        assert_eq!(referee.browser().value(before), json!("true"));
        referee.tap_at("#desk-next");
        referee.browser().wait_until(
            "the next match is open",
            &format!(
                "document.querySelector('.desk-what h2')?.innerText !== {}",
                json!(first)
            ),
        );
        referee.tap_at("#desk-previous");
        referee.reads_at(".desk-what h2", &first);
        referee.tap_at("#desk-close");
        referee.browser().find(".matches");
        // One step led here, whatever was looked at in between.
        referee.tap_at("#sort-findings");
    }
    Ok(())
}

fn one_after_the_other(stage: &mut Stage) -> Ran {
    let mut referee = desk_at(stage, (360, 740));
    let referee = &mut referee;
    is_fit(referee, "desk-cards-360")?;
    referee.tap("Table");
    referee.browser().find(".matches .row-open");
    is_fit(referee, "desk-table-360")?;
    referee.tap("List");
    referee.tap_at(".desk-item .found");
    referee.browser().find(".desk-found .finding");
    let sheet = "document.querySelector('.desk-middle:not([hidden])')";
    assert_eq!(referee.browser().value(sheet), Value::Null);
    is_fit(referee, "desk-findings-360")?;
    let way = referee.browser().text(".finding button");
    referee.tap_at(".finding button");
    let is_log = way.starts_with("Show entry");
    referee.browser().find(if is_log {
        ".desk-log .looked-for"
    } else {
        ".paper .looked-for"
    });
    is_fit(referee, "desk-looked-for-360")?;
    referee.tap("Back");
    referee.browser().find(".desk-found .finding");
    let first = referee.browser().text("#desk-found");
    referee.tap_at("#desk-next");
    referee.browser().wait_until(
        "the next one shows",
        &format!(
            "document.querySelector('#desk-found')?.innerText !== {}",
            json!(first)
        ),
    );
    referee.tap("Back");
    referee.browser().find(".desk-item");
    Ok(())
}

fn sorts_filters_and_finds(stage: &mut Stage) -> Ran {
    let mut referee = desk_at(stage, (1440, 900));
    let referee = &mut referee;
    let all = Filter::default();
    titles(referee, &titles_by(Order::default(), &all));
    for column in [
        Column::Teams,
        Column::Result,
        Column::Day,
        Column::Signed,
        Column::Seal,
        Column::Findings,
    ] {
        let order = Order::by(column);
        for order in [order, order.pressed(column)] {
            referee.tap_at(&format!("#sort-{}", column.code()));
            titles(referee, &titles_by(order, &all));
            let sorted = format!(
                "document.querySelector('.matches th.{}').getAttribute('aria-sort')",
                column.code()
            );
            let way = if order.backwards {
                "descending"
            } else {
                "ascending"
            };
            assert_eq!(referee.browser().value(&sorted), json!(way));
        }
    }
    // Words narrow it down, and what is shown is counted.
    let order = Order::by(Column::Findings).pressed(Column::Findings);
    let name = rows()[0].line.as_ref().expect("a match").teams.a.clone();
    let field = referee.browser().find("#desk-find");
    referee.browser().write(&field, &name);
    let found = titles_by(
        order,
        &Filter {
            words: name.clone(),
            ..Filter::default()
        },
    );
    assert!(!found.is_empty() && found.len() < 13);
    titles(referee, &found);
    referee.reads_at("#desk-count", &format!("{} of 13 matches", found.len()));
    let field = referee.browser().find("#desk-find");
    referee.browser().write(&field, "nobody at all");
    referee.reads_at("#desk-nothing", "No match fits.");
    referee.tap("Show everything");
    titles(referee, &titles_by(order, &all));
    let field = "document.querySelector('#desk-find').value";
    assert_eq!(referee.browser().value(field), json!(""));
    // Only what is on paper.
    let choose = "const select = document.querySelector(arguments[0]);
        select.value = arguments[1]; select.dispatchEvent(new Event('change', { bubbles: true }));";
    referee
        .browser()
        .run(choose, json!(["#desk-show", "paper"]));
    referee.reads_at("#desk-count", "1 of 13 matches");
    referee.browser().run(choose, json!(["#desk-show", "all"]));
    // A pool, and all of it.
    referee.browser().run(choose, json!(["#desk-pool", "0"]));
    referee.reads_at("#desk-count", "6 of 13 matches");
    referee.tap_at("#desk-all");
    referee.reads_at("#desk-chosen", "6 selected");
    referee.tap_at("#desk-none");
    referee.reads_at("#desk-chosen", "None selected");
    // It is as it was left.
    referee.stage.reload();
    referee.browser().find(".matches");
    titles(referee, &titles_by(order, &all));
    Ok(())
}

fn archives_and_deletes(stage: &mut Stage) -> Ran {
    let mut referee = desk_at(stage, (1440, 900));
    let referee = &mut referee;
    let count = |referee: &mut Referee, n: usize| {
        referee.browser().wait_until(
            &format!("{n} rows show"),
            &format!("document.querySelectorAll('.matches .row-open').length === {n}"),
        );
    };
    count(referee, 13);
    referee.tap_at("#desk-archive");
    referee.reads_at("#desk-refused", "Select at least one match first.");
    for n in [1, 2] {
        referee.tap_at(&format!(".matches tbody tr:nth-child({n}) .choose label"));
    }
    referee.reads_at("#desk-chosen", "2 selected");
    referee.tap_at("#desk-archive");
    count(referee, 11);
    // A stray tap is undone where it is said.
    referee.reads_at("#desk-done", "2 matches are archived.");
    referee.tap_in("#desk-done", "Undo");
    count(referee, 13);
    for n in [1, 2] {
        referee.tap_at(&format!(".matches tbody tr:nth-child({n}) .choose label"));
    }
    referee.tap_at("#desk-archive");
    count(referee, 11);
    let choose = "const select = document.querySelector('#desk-show');
        select.value = arguments[0]; select.dispatchEvent(new Event('change', { bubbles: true }));";
    referee.browser().run(choose, json!(["archived"]));
    count(referee, 2);
    referee.tap_at("#desk-all");
    referee.tap("Restore");
    count(referee, 0);
    referee.tap("Show everything");
    count(referee, 13);
    // One question before anything is lost, and no is no.
    referee.browser().run(choose, json!(["paper"]));
    count(referee, 1);
    referee.tap_at("#desk-all");
    referee.browser().run(choose, json!(["all"]));
    count(referee, 13);
    referee.tap_at(".matches tbody tr:first-child .choose label");
    referee.tap_at("#desk-delete");
    referee.reads("Delete 1 match record and 1 paper sheet from this device?");
    referee.browser().picture("desk-delete");
    referee.tap_in("[role=dialog]", "Cancel");
    count(referee, 13);
    referee.tap_at("#desk-delete");
    referee.tap_in("[role=dialog]", "Delete");
    count(referee, 11);
    referee.reads_at("#desk-chosen", "None selected");
    referee.stage.reload();
    count(referee, 11);
    Ok(())
}

fn with_keys_alone(stage: &mut Stage) -> Ran {
    stage.browser().screen(1180, 820);
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#to-desk");
    referee.tap("Add the sample tournament");
    referee.browser().find("#tour");
    if referee
        .browser()
        .value("innerWidth >= 960 && innerHeight >= 544")
        != json!(true)
    {
        return Err(Skipped(
            "its window cannot be made as wide as a desk".to_owned(),
        ));
    }
    referee.browser().find(".matches .row-open");
    // The list of keys, and back to where one was.
    key(referee, '?');
    referee.reads_at("#desk-keys-list", "Next match");
    referee.browser().picture("desk-keys");
    key(referee, ESCAPE);
    referee.browser().wait_until(
        "the list of keys is closed",
        "document.querySelector('#desk-keys-list') === null",
    );
    // Down the table, with a letter and with an arrow, and one is chosen.
    let id = |referee: &mut Referee, n: usize| {
        let id = format!("document.querySelectorAll('.matches .row-open')[{n}].id");
        let id = referee.browser().value(&id);
        id.as_str().expect("an id").to_owned()
    };
    let (first, second) = (id(referee, 0), id(referee, 1));
    key(referee, 'j');
    keys_are_on(referee, &first);
    key(referee, DOWN);
    keys_are_on(referee, &second);
    key(referee, 'k');
    keys_are_on(referee, &first);
    key(referee, 'x');
    referee.reads_at("#desk-chosen", "1 selected");
    key(referee, 'p');
    referee.reads_at("#desk-chosen", "6 selected");
    key(referee, 'n');
    referee.reads_at("#desk-chosen", "None selected");
    key(referee, 'a');
    referee.reads_at("#desk-chosen", "13 selected");
    key(referee, 'n');
    // What is typed is typed.
    key(referee, '/');
    keys_are_on(referee, "desk-find");
    key(referee, 'j');
    key(referee, 'a');
    referee.browser().wait_until(
        "it stands in the field",
        "document.querySelector('#desk-find').value === 'ja'",
    );
    referee.reads_at("#desk-chosen", "None selected");
    key(referee, BACKSPACE);
    key(referee, BACKSPACE);
    referee.reads_at("#desk-count", "13 matches");
    referee.browser().value("document.activeElement.blur()");
    // A match is opened, looked at, and closed.
    key(referee, 'j');
    keys_are_on(referee, &second);
    key(referee, ENTER);
    referee.browser().find(".desk-middle .paper");
    let title = referee.browser().text(".desk-what h2");
    key(referee, 'l');
    referee.browser().find(".desk-log .log-line");
    key(referee, 's');
    referee.browser().find(".desk-middle .paper");
    key(referee, 'f');
    keys_are_on(referee, "desk-found");
    key(referee, 'j');
    referee.browser().wait_until(
        "another match is open",
        &format!(
            "![null, undefined, {}].includes(document.querySelector('.desk-what h2')?.innerText)",
            json!(title)
        ),
    );
    key(referee, ESCAPE);
    referee.browser().find(".matches");
    key(referee, 'v');
    referee.browser().find(".desk-item");
    key(referee, 'v');
    referee.browser().find(".matches");
    key(referee, '7');
    referee
        .browser()
        .find(".matches th.findings[aria-sort=descending]");
    // Whoever does not want keys of letters switches them off.
    referee.tap_at("#desk-keys");
    referee.tap_at("#desk-use-keys");
    key(referee, ESCAPE);
    referee.browser().wait_until(
        "the list of keys is closed",
        "document.querySelector('#desk-keys-list') === null",
    );
    key(referee, 'a');
    referee.still();
    referee.reads_at("#desk-chosen", "None selected");
    Ok(())
}

/// What the browser does when files are let go over the window.
const DROP: &str = "
    const held = new DataTransfer();
    for (const [name, text] of arguments[0]) held.items.add(new File([text], name));
    const tell = (kind) => document.body.dispatchEvent(
        new DragEvent(kind, { bubbles: true, cancelable: true, dataTransfer: held }));
    const taken = !tell('dragover');
    if (arguments[1]) tell('drop');
    return taken;";

fn dropped(stage: &mut Stage) -> Ran {
    let day = demo::day();
    let files: Vec<(String, String)> = day.logs[..2]
        .iter()
        .map(|log| (format!("{}.json", log.id), record::write(log)))
        .chain([("on-paper.json".to_owned(), paper::write(&day.paper))])
        .collect();
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#to-desk");
    referee.browser().find("#import");
    // While they are held over the window it says so.
    let taken = referee.browser().run(DROP, json!([files, false]));
    assert_eq!(
        taken,
        json!(true),
        "the browser is kept from showing the file"
    );
    referee.reads_at(".drop-here", "Drop the files to import them");
    referee.browser().picture("desk-drop");
    referee.browser().run(DROP, json!([files, true]));
    referee.reads("3 files: all of them are on this phone.");
    referee.reads("on-paper.json is on the desk now.");
    let gone = "document.querySelector('.drop-here') === null";
    referee.browser().wait_until("it says so no more", gone);
    referee.browser().wait_until(
        "all lie on the desk",
        "document.querySelectorAll('.desk-item, .matches .row-open').length === 3",
    );
    Ok(())
}
