//! The sheet on paper: how many pages it takes, whatever happened in the match.

use game::entry::{Detail, Staff};
use game::{simulate, Entry, Kind, Timeline};
use render::document;
use reports::{demo, Sheet, WallClock};
use rules::{Preset, Shirt};

use serde_json::json;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::whole_match::pages;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "three_sets_take_one_page_and_five_take_two",
        engines: &[Engine::Chromium],
        run: three_sets_take_one_page_and_five_take_two,
    },
    Test {
        name: "no_screen_prints_a_button",
        engines: ALL,
        run: no_screen_prints_a_button,
    },
    Test {
        name: "no_desk_screen_prints_a_button",
        engines: ALL,
        run: no_desk_screen_prints_a_button,
    },
];

/// Lets the rules for paper hold on the screen as well, and names what could be pressed and shows.
const PRESSED_ON_PAPER: &str = "(() => {
    for (const sheet of document.styleSheets) {
      for (const rule of sheet.cssRules) {
        if (rule instanceof CSSMediaRule && rule.media.mediaText === 'print') rule.media.mediaText = 'all';
      }
    }
    return [...document.querySelectorAll('button, .button, input, select, [role=button]')]
      .filter((e) => e.getClientRects().length > 0 && getComputedStyle(e).visibility === 'visible')
      .map((e) => e.outerHTML.slice(0, 120));
  })()";

/// Whatever screen is printed, nothing that could be pressed goes on paper; and a sheet printed from its
/// screen takes as many pages as the page that is saved.
fn no_screen_prints_a_button(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("printed", simulate(Preset::SchoolJunior, 4));
    referee.browser().find("#sheet-page");
    referee.browser().wait_until(
        "the whole sheet is there",
        "document.querySelector('.paper') !== null \
         && document.querySelector('.paper[aria-busy]') === null",
    );
    if referee.browser().engine() == Engine::Chromium {
        let paper = referee.browser().paper();
        assert_eq!(pages(&paper), 1);
    }
    for place in ["sheet/printed", "review/printed", "log/printed"] {
        let address = format!("{}#/{place}", referee.stage.url());
        referee.browser().goto(&address);
        referee.stage.reload();
        referee.browser().wait_until(
            "the screen is there",
            "document.querySelectorAll('main *').length > 5",
        );
        let pressed = referee.browser().value(PRESSED_ON_PAPER);
        assert_eq!(pressed, json!([]), "{place}");
    }
    referee.browser().picture("printed");
    Ok(())
}

/// The same of the desk with an invented day on it: its list takes two pages at most, a table, the report of a pool and
/// a sheet one, and each of the sheets of a pool has one of its own.
fn no_desk_screen_prints_a_button(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.tap("Add the sample tournament");
    referee.browser().find("#tour");
    referee.tap("Select for the table: Sample tournament, Pool 2");
    let home = referee.stage.url();
    let sheet = format!("sheet/{}", demo::id_of(3));
    for (place, shows, most) in [
        ("desk", ".desk-item", 2),
        ("desk/table", "#standings", 1),
        ("desk/report", ".report-table", 1),
        (
            "desk/sheets",
            ".desk:not([aria-busy]) .all-sheets .paper",
            5,
        ),
        (&*sheet, ".paper:not([aria-busy])", 1),
    ] {
        let address = format!("{home}#/{place}");
        referee.browser().goto(&address);
        referee.stage.reload();
        referee.browser().find(shows);
        referee.still();
        if referee.browser().engine() == Engine::Chromium {
            let paper = referee.browser().paper();
            let found = pages(&paper);
            assert!((1..=most).contains(&found), "{place}: {found} pages");
            if place == "desk/sheets" {
                // Of the six matches of the pool one is on paper already.
                assert_eq!(found, 5);
            }
        }
        let pressed = referee.browser().value(PRESSED_ON_PAPER);
        assert_eq!(pressed, json!([]), "{place}");
        let name = format!("printed-{}", place.replace('/', "-"));
        referee.browser().picture(&name);
    }
    Ok(())
}

/// Fourteen players of a team and five others, all with long names, and a competition with one.
fn dressed(entries: &mut [Entry]) {
    for entry in entries {
        match &mut entry.kind {
            Kind::Match(heading) => {
                heading.names.a = "Otterbourne River Otters 1897 II".to_owned();
                heading.names.b = "Combined Schools of the Heron Marshes".to_owned();
                let competition = "Regional school championship, girls under 16, second round";
                heading.details[Detail::Competition] = Some(competition.to_owned());
            }
            Kind::TeamList(list) => {
                for number in 1..=99 {
                    if list.players.len() < 14 && list.players.iter().all(|p| p.number.0 != number)
                    {
                        let mut player = list.players[0].clone();
                        (player.captain, player.libero) = (false, false);
                        player.number = Shirt(number);
                        list.players.push(player);
                    }
                }
                for (i, player) in list.players.iter_mut().enumerate() {
                    player.name = Some(format!("Persephone Underhill-Brambles {i}"));
                }
                let roles = [
                    "coach",
                    "assistant coach",
                    "second assistant",
                    "therapist",
                    "doctor",
                ];
                let staff = roles.map(|role| Staff {
                    role: role.to_owned(),
                    name: Some("Ambrosius Longfellow-Pond".to_owned()),
                });
                list.staff = staff.into();
            }
            _ => {}
        }
    }
}

fn three_sets_take_one_page_and_five_take_two(stage: &mut Stage) -> Ran {
    let mut tried = [0; 3];
    for preset in [
        Preset::International,
        Preset::SchoolSenior,
        Preset::SchoolJunior,
    ] {
        for seed in 0..30 {
            let mut entries = simulate(preset, seed);
            let sets = Timeline::of(entries.clone()).state().sets().count();
            let (kind, most) = match sets {
                ..=3 => (0, 1),
                5 => (1, 2),
                _ => continue,
            };
            let long_names = seed % 3 == 0;
            if tried[kind] >= 8 && !long_names || tried[2] >= 6 && long_names {
                continue;
            }
            if long_names {
                dressed(&mut entries);
            }
            let mut sheet = Sheet::of(&Timeline::of(entries));
            if long_names {
                // The liberos' record is one of its own and may go on to a further page.
                sheet.sets.iter_mut().for_each(|set| set.liberos.clear());
            }
            tried[if long_names { 2 } else { kind }] += 1;
            // As somebody opens a page that was saved.
            let file = stage.scratch("sheet.html");
            std::fs::write(&file, document(&sheet, WallClock(120))).expect("room for a page");
            stage.browser().goto(&format!("file://{}", file.display()));
            let paper = stage.browser().paper();
            assert!(
                (1..=most).contains(&pages(&paper)),
                "{preset:?} {seed}, {sets} sets: {} pages",
                pages(&paper)
            );
        }
    }
    assert!(tried.iter().all(|&n| n >= 4), "{tried:?}");
    Ok(())
}
