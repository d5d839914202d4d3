//! The two pages of the program: the desk is loaded only when somebody goes there, opens without a
//! network, and leads back to the screen and the match it was left for.

use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "pages_lead_to_the_desk_and_back_without_a_network",
        engines: ALL,
        run: to_the_desk_and_back_without_a_network,
    },
    Test {
        name: "pages_send_an_address_to_the_one_that_holds_it",
        engines: ALL,
        run: an_address_is_sent_to_the_page_that_holds_it,
    },
];

/// Waits until one of the pages shows something and is loaded whole, as it is when a person goes on.
fn shows(referee: &mut Referee, file: &str, css: &str) {
    let there = format!(
        "location.pathname.endsWith('/duty/{file}') && document.querySelector('{css}') !== null \
         && document.readyState === 'complete'"
    );
    referee.browser().wait_until(css, &there);
}

fn to_the_desk_and_back_without_a_network(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("lent", begun());
    referee.point(Side::Left);
    let before = referee.replay().entries().len();
    referee.stage.ready_offline();
    referee.stage.network_off();
    let loaded = "performance.getEntriesByType('resource').filter((e) => e.name.includes('desk-page')).length";
    assert_eq!(referee.browser().value(loaded), json!(0));

    // By the arrow to the start, by the link to the desk, to a sheet there and all the way back.
    referee.tap("Back");
    referee.tap_at("#to-desk");
    shows(&mut referee, "desk.html", ".desk-item");
    referee.tap_in(".desk-item", "Sheet");
    shows(&mut referee, "desk.html", "#print-sheet");
    referee.tap("Back");
    shows(&mut referee, "desk.html", ".desk-item");
    referee.tap("Back");
    shows(&mut referee, "", "#to-desk");
    // Only there can the driver say what the page's policy forbade.
    if referee.browser().engine() == Engine::Chromium {
        assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    }

    // The match is where it was, and nobody else holds it.
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    referee.point(Side::Right);
    referee.saved();
    assert_eq!(referee.replay().entries().len(), before + 1);
    Ok(())
}

fn an_address_is_sent_to_the_page_that_holds_it(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("lent", begun());
    let here = referee.stage.url();
    // One screen of the desk asked for at the page of the match, and the other way round.
    referee.browser().goto(&format!("{here}#/desk"));
    shows(&mut referee, "desk.html", ".desk-item");
    referee
        .browser()
        .goto(&format!("{here}desk.html#/play/lent"));
    shows(&mut referee, "", "#half-left");
    Ok(())
}
