//! A paper sheet that looks like one: its heading, lists that are known already, six places on one line.

use reports::paper::{Cell, Draft, Part};
use rules::Team;
use serde_json::json;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Skipped, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "desk_paper_form_has_the_heading_and_the_lines_of_the_paper",
        engines: &[Engine::Chromium],
        run: like_the_paper,
    },
    Test {
        name: "desk_list_follows_a_paper_sheet_while_it_is_keyed_in",
        engines: &[Engine::Chromium],
        run: list_follows,
    },
];

fn key(set: u8, part: Part, row: u8) -> String {
    Cell::new(set, part, Team::A, row, 0).key()
}

fn write(referee: &mut Referee, id: &str, text: &str) {
    let field = referee.browser().find(&format!("[id='{id}']"));
    referee.browser().write(&field, text);
}

fn like_the_paper(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#to-desk");
    referee.tap("Add the sample tournament");
    referee.browser().find("#tour");
    referee.tap("Key in a paper sheet");
    referee.browser().find(".keying");
    write(referee, &key(Cell::HEAD, Part::Number, 0), "12");
    write(referee, &key(Cell::HEAD, Part::Day, 0), "20261309");
    referee.reads("This is not a day.");
    write(referee, &key(Cell::HEAD, Part::Day, 0), "20260509");
    write(referee, &key(Cell::HEAD, Part::Official, 0), "Ada Lark");
    write(referee, &key(Cell::HEAD, Part::Signed, 4), "x");
    // After the last box the next part of the sheet comes by itself.
    referee.reads("First service (A or B)");
    referee.tap("Teams");
    // The list of a team that has played is known.
    write(referee, &key(Cell::HEAD, Part::Name, 0), "otters");
    let take = "[...document.querySelectorAll('.keying button')].map((b) => b.innerText)
        .find((t) => t.startsWith('Take the list of otters'))";
    referee
        .browser()
        .wait_until("its list is known", &format!("{take} !== undefined"));
    for theme in ["light", "dark"] {
        let set = format!("document.documentElement.setAttribute('data-theme', '{theme}')");
        referee.browser().value(&set);
        referee
            .browser()
            .full_picture(&format!("paper-heading-{theme}"));
        let hindrances = referee.browser().hindrances().map_err(Skipped)?;
        assert_eq!(hindrances, Vec::<String>::new(), "{theme}");
    }
    let take = referee.browser().value(take);
    referee.tap(take.as_str().expect("a button"));
    let kept = "Object.entries(localStorage).filter(([k]) => k.startsWith('dutystand/s/paper/'))
        .map(([, v]) => v).find((v) => v.includes('otters')) ?? ''";
    referee
        .browser()
        .wait_until("the list is kept", &format!("({kept}).includes('list-A')"));
    let written = referee.browser().value(kept);
    let draft = Draft::of_written(written.as_str().expect("a draft"));
    let sheet = draft.check(false).sheet;
    assert_eq!(sheet.head.number, "12");
    assert_eq!(sheet.head.day.as_deref(), Some("2026-05-09"));
    assert_eq!(sheet.head.officials[0], "Ada Lark");
    assert_eq!(sheet.head.signed.len(), 1);
    assert!(sheet.teams.a.players.is_some_and(|list| list.len() >= 6));
    // Six places stand on one line of the smallest ordinary phone, each large enough for a finger.
    referee.tap("Set 1");
    for part in [Part::LineUp, Part::Round] {
        let first = key(1, part, 0);
        referee.browser().find(&format!("[id='{first}']"));
    }
    let tops = "[0, 1, 2, 3, 4, 5].map((row) => {
        const box = document.getElementById('1-line_up-A-' + row + '-0').getBoundingClientRect();
        return [Math.round(box.top), Math.round(box.height)]; })";
    let tops = referee.browser().value(tops);
    let tops: Vec<[i64; 2]> = serde_json::from_value(tops).expect("places");
    assert!(tops.iter().all(|top| *top == tops[0]), "{tops:?}");
    assert!(tops[0][1] >= 48, "{tops:?}");
    let wide = "document.documentElement.scrollWidth <= window.innerWidth";
    assert_eq!(referee.browser().value(wide), json!(true));
    referee.browser().full_picture("paper-set-360");
    // Beside the matches where there is room.
    referee.browser().screen(1440, 900);
    referee.browser().find(".desk-beside");
    referee.browser().find(".desk-middle .keying");
    referee.browser().picture("paper-wide");
    Ok(())
}

/// A coordinator who does not find the sheet in the list keys it in a second time.
fn list_follows(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.browser().screen(1440, 900);
    referee.tap_at("#to-desk");
    // A sheet into which nobody wrote leaves nothing behind.
    referee.tap("Key in a paper sheet");
    referee.browser().find(".keying");
    referee.tap("Back");
    referee.reads("The desk is empty.");
    referee.tap("Key in a paper sheet");
    referee.browser().find(".keying");
    write(referee, &key(Cell::HEAD, Part::Name, 0), "Wrens");
    referee.reads_at(".desk-beside", "Wrens");
    // The cursor stays where somebody types.
    let name = key(Cell::HEAD, Part::Name, 0);
    let here = format!("document.activeElement.id === '{name}'");
    assert_eq!(referee.browser().value(&here), json!(true));
    referee.tap("Back");
    referee.reads_at("main", "Wrens");
    Ok(())
}
