//! A learner who has never refereed: what has to be in sight, what a slip of the finger may not do, and what is
//! still there after a page that was read in between, a reload, an update, or a second tab.

use app::practice::Practice;
use game::Kind;
use record::{Logbook, LogbookReading, NoteKind};
use rules::Duty;
use serde_json::json;
use text::learn as words;

use crate::driver::Engine;
use crate::referee::Referee;
use crate::stage::Stage;
use crate::{Ran, Test, ALL, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "learner_finds_the_reasons_of_a_practice_match_below_its_court",
        // Another one's window has a least size of its own.
        engines: &[Engine::Chromium],
        run: reasons_in_sight,
    },
    Test {
        name: "learner_is_told_that_an_update_has_changed_a_practice_match",
        engines: ALL,
        run: changed_by_an_update,
    },
    Test {
        name: "learner_who_watches_swaps_sides_for_good_and_slips_without_harm",
        engines: ALL,
        run: swapped_and_slipped,
    },
    Test {
        name: "learner_comes_back_from_a_decision_to_the_same_answer",
        engines: ALL,
        run: back_to_the_answer,
    },
    Test {
        name: "learner_writes_one_match_of_the_logbook_in_two_tabs",
        engines: BOTH,
        run: one_match_in_two_tabs,
    },
    Test {
        name: "learner_reads_a_job_beside_its_drawing_on_a_tablet",
        engines: &[Engine::Chromium],
        run: a_job_beside_its_drawing,
    },
];

/// To a learning page by its address.
fn open(referee: &mut Referee, place: &str) {
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/learn/{place}"));
    referee.stage.started();
}

fn reasons_in_sight(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, "practice");
    let begin = referee.browser().find("#practice-begin");
    referee.browser().tap_twice(&begin, 100);
    // Whoever reads first what happens is slower than a double tap.
    referee.reads_at("#practice-told", "1 of ");
    std::thread::sleep(std::time::Duration::from_millis(1100));
    let scores = "[...document.querySelectorAll('.half-score')].map((e) => e.innerText.trim())";
    assert_eq!(referee.browser().value(scores), json!(["0", "0"]));
    referee.tap_at("#half-left");
    // What was told, the way on, and the first reasons: all of it without scrolling.
    for css in [
        "#practice-told",
        "#practice-next",
        "#practice-compare",
        ".rally-reasons .group",
        ".rally-reasons .cause",
    ] {
        let [_, top, _, bottom] = referee.place(css);
        assert!(top >= 0.0 && bottom <= 741.0, "{css}: {top} to {bottom}");
    }
    referee.browser().picture("practice-reasons");
    // Nothing is asked that nobody has told of.
    assert!(!referee.sees("Choose one"));
    referee.saved();
    let entries = referee.timeline().entries().to_vec();
    assert!(matches!(&entries[0].kind, Kind::Match(heading) if heading.practice));
    for (size, name) in [((740, 360), "lying"), ((1180, 820), "tablet")] {
        referee.browser().screen(size.0, size.1);
        let [_, top, _, bottom] = referee.place("#practice-next");
        assert!(top >= 0.0 && bottom <= f64::from(size.1) + 1.0, "{name}");
        referee.browser().picture(&format!("practice-{name}"));
    }
    referee.browser().screen(360, 740);
    // One match was begun.
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/start"));
    referee.stage.started();
    let begun = referee.browser().value(
        "new Set(Object.keys(localStorage).filter((k) => k.includes('practice-'))
           .map((k) => k.match(/practice-[^/]*/)[0])).size",
    );
    assert_eq!(begun, json!(1));
    Ok(())
}

fn changed_by_an_update(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let practice = Practice::from_seed(7).expect("a match");
    // As another version wrote it: from this seed it told something else.
    let id = "practice-7-0000000000000000-a";
    referee.go_on_with(id, practice.opening);
    referee.reads_at("#practice-changed", words::practice_changed());
    referee.browser().picture("practice-changed");
    // The match itself can be played on.
    referee.tap_at("#half-left");
    referee.saved();
    open(referee, &format!("practice/{id}"));
    referee.reads_at("#practice-changed", words::practice_changed());
    referee.stage.reload();
    referee.reads_at("#practice-changed", words::practice_changed());
    Ok(())
}

fn swapped_and_slipped(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, "observer");
    for (team, name) in [("A", "Blue"), ("B", "White")] {
        let field = referee.browser().find(&format!("#observed-{team}"));
        referee.browser().write(&field, name);
        // One of the engines is still typing when its driver says that it has typed.
        referee.browser().wait_until(
            "the name is there",
            &format!(
                "document.querySelector('#observed-{team}').value === {}",
                json!(name)
            ),
        );
    }
    referee.tap_at("#observer-begin");
    referee.reads_at("#watch-left", "Blue");
    referee.tap(words::swap_sides());
    referee.reads_at("#watch-left", "White");
    referee.stage.reload();
    referee.reads_at("#watch-left", "White");
    referee.reads_at("#watch-right", "Blue");
    // A thumb that comes down twice skips no set and notes nothing twice.
    let next = referee.browser().find_named(words::next_set());
    referee.browser().tap_twice(&next, 100);
    referee.reads("Set 2 begins");
    let note = referee
        .browser()
        .find_named(words::note(NoteKind::GoodCalm));
    referee.browser().tap_twice(&note, 100);
    referee.tap_at("#watch-stop");
    referee.reads("1 note");
    referee.reads("Set 2");
    // Of several notes each field and button says which it is of.
    let about =
        "[...document.querySelectorAll('.noted-one input, .noted-one button')].map((control) =>
        document.getElementById(control.getAttribute('aria-describedby'))?.innerText ?? '')";
    let about = referee.browser().value(about);
    let about = about.as_array().expect("a list");
    assert_eq!(about.len(), 2);
    let named = words::note(NoteKind::GoodCalm);
    assert!(about
        .iter()
        .all(|one| one.as_str().is_some_and(|one| one.contains(named))));
    Ok(())
}

fn back_to_the_answer(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, "trainer");
    referee.tap(words::in_steps());
    referee.tap(words::begin());
    let shown = "(document.querySelector('.trainer-rally')?.dataset.scene ?? '')";
    // Whatever is answered, there is an answer.
    let answered = "!!document.querySelector('#next')";
    for _ in 0..30 {
        if referee.browser().value(answered) == json!(true) {
            break;
        }
        referee.tap_at("#step");
    }
    let scene = referee.browser().value(shown);
    let left = referee
        .browser()
        .value("document.querySelector('.trainer-line .tabular').innerText");
    referee.tap(words::read_about());
    referee.browser().find(".board");
    referee.browser().back();
    referee.browser().find("#next");
    assert_eq!(referee.browser().value(shown), scene);
    let now = referee
        .browser()
        .value("document.querySelector('.trainer-line .tabular').innerText");
    let seconds = |said: &serde_json::Value| {
        let said = said.as_str().expect("a time");
        let (minutes, rest) = said.split_once(':').expect("minutes and seconds");
        let number = |text: &str| text.parse::<u32>().expect("a number");
        number(minutes) * 60 + number(&rest[..2])
    };
    assert!(seconds(&now) <= seconds(&left));
    // It goes on with another one, and the end counts what was answered before.
    referee.tap_at("#next");
    referee
        .browser()
        .wait_until("another scene", &format!("{shown} && {shown} !== {scene}"));
    // A slip: back, and in again.
    referee.browser().back();
    open(referee, "trainer");
    referee.browser().find("#step");
    Ok(())
}

fn one_match_in_two_tabs(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let kept = |referee: &mut Referee| {
        let text = referee
            .browser()
            .value("localStorage.getItem('dutystand/s/logbook')");
        match Logbook::read(text.as_str().expect("a logbook")) {
            LogbookReading::Logbook(logbook, 0) => logbook.matches()[0].clone(),
            other => panic!("{other:?}"),
        }
    };
    let write = |referee: &mut Referee, field: &str, text: &str| {
        let input = referee.browser().find(field);
        referee.browser().write(&input, text);
    };
    open(referee, "logbook");
    referee.tap_at("#log-match");
    referee.reads(words::logged_kept());
    let id = kept(referee).id;
    let first = referee.browser().tab();
    referee.browser().open_tab();
    let page = format!("logbook/match/{id}");
    open(referee, &page);
    referee.reads(words::logged_kept());
    write(referee, "#logged-talk", "Late twice.");
    referee.browser().switch_to(&first);
    // What the other tab wrote has come into the form.
    referee.browser().wait_until(
        "the talk is there",
        "document.querySelector('#logged-talk').value === 'Late twice.'",
    );
    referee.tap(words::duty(Duty::Scorer));
    write(referee, "#logged-minutes", "62");
    let one = kept(referee);
    assert_eq!(
        (one.talk.as_str(), one.duty, one.minutes),
        ("Late twice.", Duty::Scorer, Some(62))
    );
    Ok(())
}

fn a_job_beside_its_drawing(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.browser().screen(1180, 820);
    open(referee, "jobs/second_referee");
    let [_, top, right, _] = referee.place(".role-place svg");
    let [left, begins, ..] = referee.place(".role > .stack:last-child");
    assert!(left >= right, "the text stands beside the drawing");
    assert!((begins - top).abs() < 200.0);
    // Who "I" is.
    referee.reads(words::read_aloud());
    referee.browser().picture("job-1180x820");
    Ok(())
}
