//! Where there is little room: the lowest phone, names of sixty letters without a space, letters twice as large.

use game::Kind;
use rules::ByTeam;
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file. Another engine's window has a least size of its own.
pub const TESTS: &[Test] = &[
    Test {
        name: "narrow_a_name_of_sixty_letters_stays_in_its_lines",
        engines: &[Engine::Chromium],
        run: sixty_letters,
    },
    Test {
        name: "narrow_every_reason_stands_in_sight_on_the_lowest_phone",
        engines: &[Engine::Chromium],
        run: every_reason,
    },
    Test {
        name: "narrow_letters_twice_as_large_lose_nothing",
        engines: &[Engine::Chromium],
        run: twice_as_large,
    },
];

/// Phones both ways, a tablet both ways, a desk.
const SIZES: [(u32, u32); 7] = [
    (320, 568),
    (360, 740),
    (390, 844),
    (740, 360),
    (820, 1180),
    (1180, 820),
    (1440, 900),
];

/// Which of these are wider or higher inside than their own box.
const OVER: &str = "
    return arguments[0].filter((css) => {
      const one = document.querySelector(css);
      return !one?.checkVisibility() || one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 1;
    });";

fn sixty_letters(stage: &mut Stage) -> Ran {
    let mut entries = begun();
    let names = ByTeam {
        a: "W".repeat(60),
        b: "Herons".to_owned(),
    };
    if let Kind::Match(heading) = &mut entries[0].kind {
        heading.names = names;
    }
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("sixty", entries);
    referee.browser().find("#half-left");
    // The long one serves, and the line above the court says so.
    referee.point(Side::Left);
    referee.reads_at("#due", "WWW");
    let over = |referee: &mut Referee, css: &[&str]| {
        for (width, height) in SIZES {
            referee.browser().screen(width, height);
            referee.still();
            let found = referee.browser().run(OVER, json!([css]));
            assert_eq!(found, json!([]), "{width}x{height}");
            let wide = "document.documentElement.scrollWidth <= innerWidth";
            assert_eq!(
                referee.browser().value(wide),
                json!(true),
                "{width}x{height}"
            );
            referee
                .browser()
                .picture(&format!("narrow-sixty-{width}x{height}"));
        }
    };
    over(referee, &["#due", "#heading"]);
    referee.browser().screen(360, 740);
    referee.tap("Menu");
    referee.tap("Interrupt play");
    referee.tap("Interrupt play now");
    referee.reads_at("#heading", "Interrupted");
    over(referee, &["#due", "#heading"]);
    Ok(())
}

fn every_reason(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("low", begun());
    referee.point(Side::Right);
    let halves = "[...document.querySelectorAll('.half')].map((e) => Math.round(e.getBoundingClientRect().bottom))";
    for (width, height) in [(320, 568), (360, 640), (740, 360)] {
        referee.browser().screen(width, height);
        let stand = referee.browser().value(halves);
        for group in ["Ball", "Net", "Hits", "Serve", "Places"] {
            referee.tap_in(".groups", group);
            referee.still();
            let hidden = "[...document.querySelectorAll('.rally-reasons .cause')].filter((e) => {
                const box = e.getBoundingClientRect(), strip = e.closest('.strip').getBoundingClientRect();
                return box.height < 48 || box.top < strip.top || box.bottom > Math.min(strip.bottom, innerHeight) + 1;
            }).map((e) => e.innerText)";
            let found = referee.browser().value(hidden);
            assert_eq!(found, json!([]), "{group} {width}x{height}");
            referee
                .browser()
                .picture(&format!("narrow-reasons-{group}-{width}x{height}"));
        }
        assert_eq!(referee.browser().value(halves), stand);
    }
    Ok(())
}

fn twice_as_large(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("large", begun());
    referee.point(Side::Left);
    referee.browser().run(
        "document.documentElement.style.fontSize = '200%'; return null;",
        json!([]),
    );
    for (width, height) in SIZES {
        referee.browser().screen(width, height);
        referee.browser().value("scrollTo(0, 0)");
        referee.still();
        let undo =
            "(() => { const box = document.querySelector('#take-back').getBoundingClientRect();
            return box.top >= 0 && box.bottom <= innerHeight && box.right <= innerWidth; })()";
        let seen = referee.browser().value(undo);
        assert_eq!(seen, json!(true), "Undo at {width}x{height}");
        let scores = "[...document.querySelectorAll('.half-score')].every((e) => {
            const letters = parseFloat(getComputedStyle(e).fontSize);
            return e.checkVisibility() && letters >= 32 && e.getBoundingClientRect().height >= letters * 0.7;
        })";
        let seen = referee.browser().value(scores);
        assert_eq!(seen, json!(true), "scores at {width}x{height}");
        let wide = "document.documentElement.scrollWidth <= innerWidth";
        assert_eq!(
            referee.browser().value(wide),
            json!(true),
            "{width}x{height}"
        );
        referee
            .browser()
            .picture(&format!("narrow-large-{width}x{height}"));
    }
    Ok(())
}
