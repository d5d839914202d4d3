//! The language of the page: that of the phone, or another one that somebody chooses.

use app::language::Language;
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side};
use crate::smoke::comes_late;
use crate::stage::Stage;
use crate::support::language::in_spanish;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "another_language_is_spoken_without_a_reload",
        engines: ALL,
        run: is_spoken_without_a_reload,
    },
    Test {
        name: "a_phone_in_spanish_begins_in_spanish",
        engines: &[Engine::Chromium],
        run: begins_in_the_language_of_the_phone,
    },
    Test {
        name: "a_language_that_does_not_come_leaves_the_page_as_it_is",
        engines: &[Engine::Chromium],
        run: a_language_that_does_not_come,
    },
    Test {
        name: "a_phone_whose_language_does_not_come_is_told_that_it_hears_english",
        engines: &[Engine::Chromium],
        run: the_language_of_the_phone_does_not_come,
    },
    Test {
        name: "the_page_before_the_program_chooses_the_language_as_the_program_does",
        engines: &[Engine::Chromium],
        run: chosen_early_as_later,
    },
];

/// In the middle of a match: the score stays, the words change, and back again.
fn is_spoken_without_a_reload(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.points(&[Side::Left, Side::Left, Side::Right], 50);
    referee.saved();
    let court = referee.browser().value("location.hash");
    referee.browser().run("window.stays = true;", json!([]));
    referee
        .browser()
        .run("location.hash = '#/phone';", json!([]));
    referee.tap(text::language_name(Language::Spanish));
    referee.reads_at("h1", in_spanish(text::this_phone));
    assert_eq!(
        referee.browser().value("document.documentElement.lang"),
        json!("es")
    );
    referee.browser().wait_until(
        "whoever uses keys goes on at the same button",
        "document.activeElement?.id === 'language-spanish'",
    );
    referee.browser().picture("phone-in-spanish");

    referee
        .browser()
        .run("location.hash = arguments[0];", json!([court]));
    referee.reads_at("#half-left .half-score", "2");
    referee.reads(in_spanish(text::undo));
    referee.point(Side::Right);
    referee.saved();
    referee.browser().picture("court-in-spanish");

    referee
        .browser()
        .run("location.hash = '#/phone';", json!([]));
    // The colours have a choice of this name too.
    referee.tap_at("#language-of-phone");
    referee.reads_at("h1", text::this_phone());
    assert_eq!(
        referee
            .browser()
            .value("[document.documentElement.lang, window.stays]"),
        json!(["en", true])
    );
    Ok(())
}

/// Also what stands there before the program is.
fn begins_in_the_language_of_the_phone(stage: &mut Stage) -> Ran {
    stage.phone_speaks("es-MX,en-US");
    comes_late(stage);
    let url = stage.url();
    stage.browser().goto(&url);
    let words = in_spanish(text::referee_a_match);
    stage.browser().wait_until(
        "the start stands there in Spanish",
        &format!("document.querySelector('#start-here')?.innerText.includes({words:?})"),
    );
    let first = stage
        .browser()
        .value("document.querySelector('#start-here .start-begin').innerText");
    stage.browser().picture("start-in-spanish");
    stage.started();
    // What the program draws says the same.
    assert_eq!(
        stage
            .browser()
            .value("document.querySelector('.start-begin').innerText"),
        first
    );
    assert_eq!(
        stage.browser().value("document.documentElement.lang"),
        json!("es")
    );
    Ok(())
}

/// The network breaks off before the phone has kept everything.
fn a_language_that_does_not_come(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.browser().cdp("Network.enable", json!({}));
    referee
        .browser()
        .cdp("Network.setBlockedURLs", json!({ "urls": ["*spanish*"] }));
    referee
        .browser()
        .run("location.hash = '#/phone';", json!([]));
    let spanish = Language::Spanish;
    referee.tap(text::language_name(spanish));
    referee.reads(&text::language_missing(spanish));
    referee.reads_at("h1", text::this_phone());
    Ok(())
}

/// A screen reader pronounces a page in the language that it is said to be in.
fn the_language_of_the_phone_does_not_come(stage: &mut Stage) -> Ran {
    stage.phone_speaks("es-MX,en-US");
    stage.browser().cdp("Network.enable", json!({}));
    stage
        .browser()
        .cdp("Network.setBlockedURLs", json!({ "urls": ["*spanish*"] }));
    let mut referee = Referee::at(stage);
    referee.browser().wait_until(
        "the page is said to be in English",
        "document.documentElement.lang === 'en'",
    );
    referee.reads(text::referee_a_match());
    referee
        .browser()
        .run("location.hash = '#/phone';", json!([]));
    referee.reads(&text::language_missing(Language::Spanish));
    Ok(())
}

/// `assets/early.js` cannot ask `Language::wanted`: the program is not there yet.
fn chosen_early_as_later(stage: &mut Stage) -> Ran {
    for of_phone in [
        "es-MX,en-US",
        "fr-FR,es-ES,en-US",
        "de-DE,fr-FR",
        "en-GB,es-ES",
    ] {
        stage.phone_speaks(of_phone);
        comes_late(stage);
        let url = stage.url();
        for kept in [None, Some("en"), Some("es"), Some("eo"), Some("")] {
            stage.browser().goto(&url);
            stage.browser().run(
                "if (arguments[0] === null) localStorage.removeItem('dutystand/s/language');
                 else localStorage.setItem('dutystand/s/language', arguments[0]);",
                json!([kept]),
            );
            stage.browser().goto("about:blank");
            stage.browser().goto(&url);
            let early = stage.browser().value("document.documentElement.lang");
            let chosen = kept.and_then(Language::from_code);
            let later = Language::wanted(chosen, of_phone.split(','));
            assert_eq!(
                early,
                json!(later.code()),
                "{kept:?} on a phone in {of_phone}"
            );
        }
    }
    Ok(())
}
