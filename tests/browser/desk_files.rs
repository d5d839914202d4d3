//! What comes to the desk and leaves it: many files at once, a list for a spreadsheet, what was deleted and is
//! brought back, and what cannot be done with what is chosen.

use reports::{demo, paper};
use serde_json::json;
use std::time::Instant;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "desk_takes_in_many_files_of_every_kind_at_once",
        engines: CHROMIUM,
        run: desk_takes_in_many_files_of_every_kind_at_once,
    },
    Test {
        name: "desk_gives_back_what_was_deleted_and_says_what_cannot_be",
        engines: CHROMIUM,
        run: desk_gives_back_what_was_deleted_and_says_what_cannot_be,
    },
];

/// The results of a pool of one match.
pub const POOL: &str = r#"{ "log": "volleyball-pool", "version": 1, "rank_by": ["wins", "head_to_head"],
  "results": [ { "home": "Otters", "away": "Herons", "sets": [[25, 20], [25, 22], [25, 18]] } ] }"#;

fn desk_takes_in_many_files_of_every_kind_at_once(stage: &mut Stage) -> Ran {
    let day = demo::day();
    let mut files: Vec<(String, String)> = day
        .logs
        .iter()
        .map(|log| (format!("{}.json", log.id), record::write(log)))
        .collect();
    let first = files[0].1.clone();
    let sheet = paper::write(&day.paper);
    let file = |name: &str, text: String| (name.to_owned(), text);
    files.extend([
        file("again.json", first.clone()),
        file("cut.json", first[..first.len() / 2].to_owned()),
        file(
            "newer.json",
            first.replacen("\"version\":2", "\"version\":9", 1),
        ),
        file("on-paper.json", sheet.clone()),
        file("on-paper-again.json", sheet.clone()),
        file(
            "wrong-box.json",
            sheet.replacen("\"rounds\":{\"A\":[", "\"rounds\":{\"A\":[\"x\",", 1),
        ),
        file("pool.json", POOL.to_owned()),
        file("prose.txt", "Otters won.".to_owned()),
    ]);
    assert_eq!(files.len(), 20);
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.browser().find("#import");
    let begun = Instant::now();
    referee.open_files(&files);
    referee.reads("20 files: 17 are on this phone, 3 could not be imported.");
    eprintln!("20 files at once: {:.1} s", begun.elapsed().as_secs_f32());
    for say in [
        "invented-day-1.json is on this phone now.",
        "again.json is already here. Nothing was changed.",
        "cut.json: the file is cut off at its end",
        "newer.json: ",
        "on-paper.json is on the desk now.",
        "on-paper-again.json is already here. Nothing was changed.",
        "wrong-box.json was not imported. sets[0].rounds.A[0]: ",
        "pool.json is on the desk now.",
        "prose.txt: This is not a match record",
    ] {
        referee.reads(say);
    }
    // Twelve records, a paper sheet and a pool, and what was said of them still stands.
    referee.browser().wait_until(
        "all lie on the desk",
        "document.querySelectorAll('.desk-item').length === 14",
    );
    referee.reads("newer version");

    // The list for a spreadsheet.
    let downloads = referee.catch_downloads();
    referee.tap_at("#desk-csv");
    let (name, list) = referee.caught(&downloads);
    assert_eq!(name, "desk.csv");
    assert_eq!(list.lines().count(), 14, "{list}");

    // The table of the file by its own rule of order, and as a file.
    referee.tap("Table Pool of one match");
    referee.reads_at("#reasons", "Otters before Herons by matches won: 1 to 0.");
    referee.tap("Table for a spreadsheet (CSV)");
    let (name, table) = referee.caught(&downloads);
    assert_eq!((name.as_str(), table.lines().count()), ("table.csv", 3));
    Ok(())
}

fn desk_gives_back_what_was_deleted_and_says_what_cannot_be(stage: &mut Stage) -> Ran {
    let sheet = paper::write(&demo::day().paper);
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.open_file("on-paper.json", sheet.as_bytes());
    referee.browser().find(".desk-item");
    // Neither a table nor a comparison of nothing: the way out is on the screen.
    for (button, say) in [
        ("#desk-compare", "Tick exactly two records of one match"),
        ("#desk-table", "Tick the matches of a pool first"),
    ] {
        referee.tap_at(button);
        referee.reads_at("#desk-refused", say);
    }
    let visible = "document.querySelector('#desk-refused').getBoundingClientRect().height > 10";
    assert_eq!(referee.browser().value(visible), json!(true));
    let written =
        "Object.entries(localStorage).find(([k]) => k.startsWith('dutystand/s/paper/'))[1]";
    let before = referee.browser().value(written);
    let name = "[...document.querySelectorAll('.desk-item button')].map((b) => b.innerText)
        .find((t) => t.startsWith('Delete'))";
    let name = referee.browser().value(name);
    referee.tap(name.as_str().expect("a button"));
    referee.browser().wait_until(
        "it is gone",
        "document.querySelectorAll('.desk-item').length === 0",
    );
    referee.tap("Undo");
    referee.browser().find(".desk-item");
    assert_eq!(referee.browser().value(written), before);
    Ok(())
}
