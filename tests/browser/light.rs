//! What a tap may cost, told by what it builds and not by a clock: only what differs is drawn anew.

use serde_json::{json, Value};

use crate::driver::{Browser, Engine};
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[Test {
    name: "a_point_builds_nothing_that_is_there_already",
    engines: &[Engine::Chromium],
    run: builds_nothing_anew,
}];

/// Writes down every element that comes or goes from now on, with the one it stands in.
const WATCH: &str = "
    const name = (e) => e.id ? '#' + e.id : e.localName + '.' + (e.getAttribute('class') ?? '');
    const seen = window.built = [];
    new MutationObserver((records) => {
      for (const record of records)
        for (const one of [...record.addedNodes, ...record.removedNodes])
          if (one.nodeType === 1) seen.push(name(record.target) + ' > ' + name(one));
    }).observe(document, { subtree: true, childList: true });";

/// What came or went since the last look.
fn built(browser: &mut Browser) -> Value {
    browser.value("window.built.splice(0)")
}

fn builds_nothing_anew(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.go_on_with("light", begun());
    referee.points(&[Side::Left, Side::Left], 100);
    referee.saved();
    referee.browser().run(WATCH, json!([]));

    referee.point(Side::Left);
    referee.saved();
    assert_eq!(built(referee.browser()), json!([]), "the server stays");

    // The ball is all that goes over.
    referee.point(Side::Right);
    referee.saved();
    let service = [
        "span.half-serves > svg.icon ball",
        "span.half-serves > span.",
    ];
    for one in built(referee.browser()).as_array().expect("a list") {
        let one = one.as_str().expect("names");
        assert!(service.contains(&one), "{one}");
    }
    Ok(())
}
