//! One page in parts: the desk opens without a network and leads back to the screen and the match it was
//! left for, nothing is fetched once a match is played, and a part that does not come says so.

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::{built, built_names, Stage};
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "pages_lead_to_the_desk_and_back_without_a_network",
        engines: ALL,
        run: to_the_desk_and_back_without_a_network,
    },
    Test {
        name: "pages_load_every_part_before_a_match_is_played",
        engines: ALL,
        run: every_part_is_loaded_before_a_match_is_played,
    },
    Test {
        name: "pages_say_so_where_a_part_does_not_come",
        engines: ALL,
        run: a_part_that_does_not_come_says_so,
    },
];

fn to_the_desk_and_back_without_a_network(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("lent", begun());
    referee.point(Side::Left);
    let before = referee.timeline().entries().len();
    referee.stage.ready_offline();
    referee.stage.network_off();

    // By the arrow to the start, by the link to the desk, to a sheet there and all the way back.
    referee.tap("Back");
    referee.tap_at("#to-desk");
    referee.browser().find(".desk-item");
    referee.tap_in(".desk-item", "Sheet");
    referee.browser().find("#print-sheet");
    referee.tap("Back");
    referee.browser().find(".desk-item");
    referee.tap("Back");
    referee.browser().find("#to-desk");
    // Only there can the driver say what the page's policy forbade.
    if referee.browser().engine() == Engine::Chromium {
        assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    }

    // The match is where it was, and nobody else holds it.
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    referee.point(Side::Right);
    referee.saved();
    assert_eq!(referee.timeline().entries().len(), before + 1);

    // An address leads to each screen, also from the one to the other.
    let here = referee.stage.url();
    for (place, shows) in [("desk", ".desk-item"), ("play/lent", "#half-left")] {
        referee.browser().goto(&format!("{here}#/{place}"));
        referee.browser().find(shows);
    }
    Ok(())
}

/// How many parts have been fetched.
const FETCHED: &str =
    "new Set(performance.getEntriesByType('resource').map((e) => e.name.split('/').pop()) \
     .filter((name) => name.startsWith('split_') || name.startsWith('chunk_'))).size";

/// The part of a language is loaded where it is spoken.
const OF_A_LANGUAGE: &str = "split_spanish-";

fn every_part_is_loaded_before_a_match_is_played(stage: &mut Stage) -> Ran {
    let is_part = |name: &String| {
        (name.starts_with("split_") || name.starts_with("chunk_"))
            && !name.starts_with(OF_A_LANGUAGE)
    };
    let parts = built_names().into_iter().filter(is_part).count();
    assert!(parts >= 3, "the page is cut into parts");
    let mut referee = Referee::at(stage);
    let all = format!("{FETCHED} === {parts}");
    referee
        .browser()
        .wait_until("every part was fetched from the start screen", &all);
    referee.go_on_with("played", begun());
    referee.browser().find("#half-left");
    referee.browser().wait_until("every part was fetched", &all);
    Ok(())
}

fn a_part_that_does_not_come_says_so(stage: &mut Stage) -> Ran {
    let (name, whole) = built("split_desk", ".wasm");
    stage.hand_out(&name, b"broken off");
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-desk");
    referee.reads("This part of Dutystand could not be loaded.");
    referee.browser().picture("part-not-loaded");
    referee.stage.hand_out(&name, &whole);
    referee.tap("Try again");
    referee.reads("paper sheet");
    // Everything else works meanwhile, and afterwards.
    referee.tap("Back");
    referee.tap_at("#quick-tally");
    referee.point(Side::Left);
    referee.saved();
    Ok(())
}
