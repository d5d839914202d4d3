//! The book: every page by its own address, every decision tried by finger, by key and by step, and the way
//! from a reason on the court to its page and back. What the page says is compared with what the decision
//! functions say natively.

use learn::{Dial, Mark, Point, Scale, Situation, Topic, Values};
use rules::{Cause, FlagSignal, Preset};
use serde_json::json;
use text::learn::{self as words, Care, Role};
use text::setup::Phase;

use crate::kept::begun;
use crate::referee::{Referee, Side, A};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "book_every_decision_can_be_tried_by_step_and_by_choice",
        engines: ALL,
        run: by_step_and_by_choice,
    },
    Test {
        name: "book_every_handle_can_be_dragged",
        engines: ALL,
        run: every_handle_is_dragged,
    },
    Test {
        name: "book_a_slider_follows_the_keys",
        engines: ALL,
        run: a_slider_follows_the_keys,
    },
    Test {
        name: "book_leads_from_a_reason_to_its_page_and_back_into_the_match",
        engines: ALL,
        run: from_a_reason_and_back,
    },
    Test {
        name: "book_leads_from_an_injury_to_the_pages_about_safety_and_back",
        engines: ALL,
        run: from_an_injury_and_back,
    },
    Test {
        name: "book_finds_a_signal_and_shows_it_from_every_side",
        engines: ALL,
        run: finds_a_signal,
    },
    Test {
        name: "book_says_what_is_tapped_on_the_court",
        engines: ALL,
        run: the_court,
    },
    Test {
        name: "book_shows_every_job_and_everything_to_take_care_of",
        engines: ALL,
        run: jobs_and_care,
    },
    Test {
        name: "book_is_found_from_the_start_and_every_address_leads_to_its_page",
        engines: ALL,
        run: every_address,
    },
];

/// Arrow keys, as WebDriver numbers them.
const ARROW_RIGHT: char = '\u{E014}';
const ARROW_LEFT: char = '\u{E012}';

/// Opens a learning page by its address, in a page that is loaded already.
fn open(referee: &mut Referee, place: &str) {
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/learn/{place}"));
    referee.stage.started();
}

/// The part of a page that shows a situation.
fn board(situation: Situation) -> String {
    format!("#board-{}", format!("{situation:?}").to_lowercase())
}

/// Waits until the lines of a situation say what the decision functions say of it.
fn decides(referee: &mut Referee, situation: Situation, set: &Values) {
    let expected: Vec<String> = situation
        .decide(set)
        .iter()
        .map(|decided| {
            let reading = words::reading(decided.reading);
            let call = words::call(decided);
            format!("{reading} {call}").trim().to_owned()
        })
        .collect();
    let shown = format!(
        "JSON.stringify([...document.querySelectorAll('{} .call')].map((e) => e.innerText.replace(/\\s+/g, ' ').trim()))",
        board(situation)
    );
    referee.browser().wait_until(
        &format!("{situation:?} decides {expected:?} for {set:?}"),
        &format!("{shown} === {}", json!(json!(expected).to_string())),
    );
}

/// How a control stands, as a screen reader hears it.
fn heard(referee: &mut Referee, situation: Situation, dial: Dial, set: &Values) {
    let expected = words::set_to(dial, set.get(dial));
    referee.browser().wait_until(
        &format!("{dial:?} says {expected:?}"),
        &format!(
            "document.querySelector({})?.getAttribute('aria-valuetext') === {}",
            json!(slider(situation, dial)),
            json!(expected)
        ),
    );
}

fn slider(situation: Situation, dial: Dial) -> String {
    format!(
        "{} input[aria-label=\"{}\"]",
        board(situation),
        words::dial(dial)
    )
}

/// Chooses which of several things the controls are for, where there are several.
fn choose_mover(referee: &mut Referee, situation: Situation, dial: Dial) {
    if let Dial::PlayerDepth(n) | Dial::PlayerRight(n) | Dial::Hitter(n) = dial {
        referee.tap_in(&board(situation), &words::mover(situation, n));
    }
}

fn by_step_and_by_choice(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    for topic in Topic::ALL {
        open(referee, &format!("decisions/{}", topic.code()));
        referee.reads(words::look_for(topic)[0]);
        for situation in topic.situations() {
            let situation = *situation;
            let mut set = situation.start();
            decides(referee, situation, &set);
            let dials: Vec<Dial> = set.dials().collect();
            for dial in dials {
                choose_mover(referee, situation, dial);
                match dial.scale() {
                    Scale::Metres { step, .. } | Scale::Seconds { step, .. } => {
                        let more = format!("{}: {}", words::more_of_it(), words::dial(dial));
                        let less = format!("{}: {}", words::less(), words::dial(dial));
                        for (name, by) in [(&more, step), (&less, -step), (&less, -step)] {
                            referee.tap_in(&board(situation), name);
                            set.set(dial, set.get(dial) + by);
                        }
                        heard(referee, situation, dial, &set);
                    }
                    Scale::Choice(count) => {
                        for choice in (0..usize::from(count)).rev() {
                            press_choice(referee, situation, dial, choice);
                            set.set(dial, choice as f64);
                            decides(referee, situation, &set);
                        }
                    }
                }
                decides(referee, situation, &set);
            }
            referee.tap_in(&board(situation), words::as_at_first());
            decides(referee, situation, &situation.start());
        }
    }
    Ok(())
}

/// Presses one of the choices of a control; several controls may have choices of the same words.
fn press_choice(referee: &mut Referee, situation: Situation, dial: Dial, choice: usize) {
    let name = words::dial(dial);
    let found = referee.browser().run(
        "const of = [...document.querySelectorAll(`${arguments[0]} fieldset`)]
           .find((e) => e.querySelector('legend').innerText.trim() === arguments[1]);
         const button = of.querySelectorAll('button')[arguments[2]];
         document.querySelectorAll('[data-pressed-by-test]').forEach((e) => delete e.dataset.pressedByTest);
         button.dataset.pressedByTest = '';
         return button.innerText.trim();",
        json!([board(situation), name, choice]),
    );
    assert_eq!(found, json!(words::choices(dial)[choice]));
    referee.tap_at("[data-pressed-by-test]");
    referee.browser().wait_until(
        "it is chosen",
        "document.querySelector('[data-pressed-by-test]').ariaPressed === 'true'",
    );
}

fn every_handle_is_dragged(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut dragged = 0;
    for topic in Topic::ALL {
        open(referee, &format!("decisions/{}", topic.code()));
        for situation in topic.situations() {
            let board = board(*situation);
            referee.browser().find(&board);
            let count = referee.browser().value(&format!(
                "document.querySelectorAll('{board} .handle').length"
            ));
            for n in 0..count.as_u64().unwrap_or(0) {
                drag(referee, &board, n);
                dragged += 1;
            }
        }
    }
    assert!(dragged > 25, "{dragged} handles");

    // A foot that goes across, told by what is said of it. The page begins anew, or it would scroll to where it was
    // left before.
    open(referee, "decisions/under_net");
    referee.stage.reload();
    let foot = board(Situation::Foot);
    referee.reads_at(&format!("{foot} .call"), "Play on: no fault");
    let at = middle_of(referee, &format!("{foot} .handle"));
    referee
        .browser()
        .draw(&[at, (at.0 + 30, at.1), (at.0 + 70, at.1)]);
    referee.reads_at(
        &format!("{foot} .call"),
        "Under the net: point for the right team",
    );
    referee.browser().picture("dragged-foot");
    Ok(())
}

fn middle_of(referee: &mut Referee, css: &str) -> (i64, i64) {
    let at = referee.browser().run(
        "const e = document.querySelector(arguments[0]);
         e.scrollIntoView({ block: 'center' });
         const box = e.getBoundingClientRect();
         return [(box.left + box.right) / 2, (box.top + box.bottom) / 2].map(Math.round);",
        json!([css]),
    );
    let of = |i: usize| at[i].as_i64().expect("a place");
    (of(0), of(1))
}

/// Drags the handle of this number until it stands elsewhere, whichever way it goes.
fn drag(referee: &mut Referee, board: &str, n: u64) {
    let css = format!("{board} .handle:nth-of-type({})", n + 1);
    let place = format!(
        "((e) => `${{e.style.left}} ${{e.style.top}}`)(document.querySelector({}))",
        json!(css)
    );
    let before = referee.browser().value(&place);
    for (right, down) in [(60, 0), (0, 60), (-60, 0), (0, -60), (110, 60), (-130, 0)] {
        let (x, y) = middle_of(referee, &css);
        let half = (x + right / 2, y + down / 2);
        referee
            .browser()
            .draw(&[(x, y), half, (x + right, y + down)]);
        if referee.browser().value(&place) != before {
            return;
        }
    }
    panic!("handle {n} of {board} does not move from {before}");
}

fn a_slider_follows_the_keys(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let (situation, dial) = (Situation::ServiceFoot, Dial::ServerDepth);
    open(referee, "decisions/service");
    let mut set = situation.start();
    decides(referee, situation, &set);
    let element = referee.browser().find(&slider(situation, dial));
    // Step by step onto the line, and off it.
    for (key, by, times) in [
        (ARROW_LEFT, -0.01, 6),
        (ARROW_RIGHT, 0.01, 3),
        (ARROW_RIGHT, 0.01, 2),
    ] {
        for _ in 0..times {
            referee.browser().press_key(&element, key);
            set.set(dial, set.get(dial) + by);
        }
        heard(referee, situation, dial, &set);
        decides(referee, situation, &set);
    }
    assert!(!situation.decide(&set)[0].ruling.is_fault());
    Ok(())
}

fn from_an_injury_and_back(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("hurt", begun());
    referee.saved();
    let before = referee.timeline().entries().to_vec();
    for back in ["Back", "Back to the match"] {
        referee.tap(&format!("More {A}"));
        referee.tap(text::hurt());
        referee.reads_at("#care-steps", "Stop play at once.");
        referee.tap_at("#to-safety");
        referee.reads(words::care_more());
        if back == "Back" {
            referee.tap("Head injury");
            referee.reads(text::care_head());
            referee.tap("Back");
            referee.reads(words::care_more());
        }
        referee.tap(back);
        referee.browser().find("#half-left");
    }
    assert_eq!(referee.timeline().entries(), before);
    Ok(())
}

fn from_a_reason_and_back(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("taught", begun());
    referee.point(Side::Right);
    referee.reason("Net", "Net touch");
    referee.tap(&format!("Time-out {A}, 0 of 2 used"));
    referee.reads_at(".strip", "Time-out");
    referee.saved();
    let before = referee.timeline().entries().to_vec();
    let left = "(() => { const [m, s] = document.querySelector('.count-down .tabular').innerText.split(':'); return m * 60 + Number(s); })()";
    let seconds = |referee: &mut Referee| referee.browser().value(left).as_f64().expect("seconds");
    let at_first = seconds(referee);
    referee.tap_at("#decide");
    referee.reads(words::look_for(Topic::NetTouch)[0]);
    decides(referee, Situation::NetTouch, &Situation::NetTouch.start());
    assert_eq!(
        referee
            .browser()
            .value("[location.hash, document.querySelector('#heading').innerText]"),
        json!(["#/learn/decisions/net_touch", "Net touch"])
    );
    // The count-down goes on in sight.
    referee.browser().wait_until(
        "the count-down goes on",
        &format!("{left} < {}", at_first - 1.0),
    );
    referee.browser().picture("decision-during-a-time-out");
    // To the signal and back to the match, one step at a time.
    referee.tap_in(&board(Situation::NetTouch), "Signal 19: Net touch");
    referee.reads("Show the net on the side at fault.");
    referee.tap("Back");
    referee.reads(words::look_for(Topic::NetTouch)[0]);
    referee.tap("Back");
    referee.browser().find("#half-left");
    assert!(seconds(referee) < at_first - 1.0);
    assert_eq!(referee.timeline().entries(), before);
    // And by the button above the page.
    referee.tap_at("#decide");
    referee.tap("Back to the match");
    referee.browser().find("#half-left");
    referee.point(Side::Left);
    referee.saved();
    assert_eq!(referee.timeline().entries().len(), before.len() + 1);
    Ok(())
}

fn finds_a_signal(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#to-signals");
    let list = "[...document.querySelectorAll('.signal-line')].map((e) => e.innerText.replace(/\\s+/g, ' ').trim())";
    referee
        .browser()
        .wait_until("all are there", &format!("{list}.length === 27"));
    assert_eq!(
        referee
            .browser()
            .value("document.querySelectorAll('.flag svg').length"),
        json!(FlagSignal::ALL.len() + 2),
        "one of them moves, so it has its stills"
    );
    // Spelled wrongly, and told by what happened; in the order in which the words find them.
    for typed in ["antena", "net tuoch", "he stepped on the line", "xylophone"] {
        let field = referee.browser().find("#find-signal");
        referee.browser().write(&field, typed);
        let expected: Vec<String> = words::find_signals(typed)
            .into_iter()
            .map(|signal| format!("{} {}", signal.number(), text::signal(signal)))
            .collect();
        referee.browser().wait_until(
            &format!("{typed:?} finds {expected:?}"),
            &format!(
                "JSON.stringify({list}) === {}",
                json!(json!(expected).to_string())
            ),
        );
        if expected.is_empty() {
            referee.reads(words::find_nothing());
        }
    }
    referee.tap(words::find_examples()[0]);
    referee.browser().wait_until(
        "an example is looked for",
        &format!("{list}[0] === '19 Net touch'"),
    );
    referee.browser().picture("signals-found");
    referee.tap("19 Net touch");
    referee.reads("Left arm");
    let x = "document.querySelector('.signal-look svg > g').getAttribute('transform')";
    let face = "document.querySelector('.signal-look svg').innerHTML.includes('M86.5 53H93.5')";
    assert_eq!(
        referee.browser().value(&format!("[{x}, {face}]")),
        json!([null, true])
    );
    // Who stands in front sees the other side; from behind there is no mouth.
    referee.tap(words::views()[1]);
    referee
        .browser()
        .wait_until("it is turned over", &format!("{x} !== null && {face}"));
    referee.tap(words::views()[2]);
    referee.browser().wait_until(
        "it is seen from behind",
        &format!("{x} === null && !{face}"),
    );
    referee.browser().picture("signal-from-behind");
    referee.tap(words::sides()[1]);
    referee.reads("Right arm");
    referee
        .browser()
        .wait_until("the other side", &format!("{x} !== null && !{face}"));
    referee.tap(&format!(
        "{} {}",
        words::topic(Topic::NetTouch),
        words::topic_more(Topic::NetTouch)
    ));
    referee.reads(words::look_for(Topic::NetTouch)[0]);
    Ok(())
}

fn the_court(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    open(referee, "court");
    // By name, as who uses keys or listens does.
    for mark in Mark::ALL {
        referee.tap_in(".court-page", words::mark(mark));
        referee.reads_at("#about-mark", words::mark(mark));
        for line in words::mark_lines(mark) {
            referee.reads_at("#about-mark", line);
        }
    }
    // By finger, from place to place; what is meant there the measurements say.
    let places = [
        (-1.5, 1.5),
        (6.0, -1.0),
        (-10.5, 0.0),
        (9.0, 2.0),
        (-9.0, 2.0),
        (5.0, 4.5),
        (0.0, 0.0),
        (3.0, -2.0),
        (0.0, -6.1),
        (0.6, 6.1),
        (0.0, 8.2),
        (5.0, 8.1),
        (-10.0, 5.5),
        (-6.0, 6.0),
        (2.0, 6.2),
        (6.0, -6.0),
        (0.0, 5.0),
    ];
    let mut tapped = Vec::new();
    for (x, y) in places {
        let mark = Mark::at(Point { x, y, z: 0.0 }).expect("something is there");
        let at = referee.browser().run(
            "const field = document.querySelector('.whole-court');
             field.scrollIntoView({ block: 'center' });
             const box = field.getBoundingClientRect();
             const [, , w] = field.querySelector('svg').getAttribute('viewBox').split(' ').map(Number);
             const [left, top] = field.querySelector('svg').getAttribute('viewBox').split(' ').map(Number);
             const scale = (box.width - 2 * field.clientLeft) / w;
             return [box.left + field.clientLeft + (arguments[0] * 100 - left) * scale,
                     box.top + field.clientTop + (-arguments[1] * 100 - top) * scale].map(Math.round);",
            json!([x, y]),
        );
        let of = |i: usize| at[i].as_i64().expect("a place");
        referee.browser().tap_place(of(0), of(1));
        referee.reads_at("#about-mark", words::mark(mark));
        tapped.push(mark);
    }
    assert!(
        Mark::ALL.iter().all(|mark| tapped.contains(mark)),
        "{tapped:?}"
    );
    referee.browser().picture("court-tapped");
    // The heights of the net stand below, and the way leads to a decision.
    referee.reads(words::net_young());
    referee.reads("Under 16");
    referee.tap_in(".court-page", words::mark(Mark::CentreLine));
    referee.tap(&format!(
        "{} {}",
        words::topic(Topic::UnderNet),
        words::topic_more(Topic::UnderNet)
    ));
    referee.reads(words::look_for(Topic::UnderNet)[0]);
    referee.tap("Back");
    referee.browser().find("#about-mark");
    Ok(())
}

fn jobs_and_care(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let rules = Preset::International.rules();
    open(referee, "jobs");
    for role in Role::ALL {
        referee.tap(&format!(
            "{} {}",
            words::role_name(role),
            words::role_more(role)
        ));
        for phase in Phase::ALL {
            for line in words::job(role, phase, &rules) {
                referee.reads(&line);
            }
        }
        referee.tap("Back");
    }
    referee.tap(&format!(
        "{} {}",
        words::for_the_table(),
        words::for_the_table_more()
    ));
    for line in words::job(Role::Scorer, Phase::During, &rules) {
        referee.reads(&line);
    }
    let size = "parseFloat(getComputedStyle(document.querySelector('.large-print li')).fontSize)";
    assert!(referee
        .browser()
        .value(size)
        .as_f64()
        .is_some_and(|px| px >= 22.0));
    open(referee, "safety");
    for care in Care::ALL {
        referee.tap(words::care_name(care));
        for line in words::care_lines(care, &rules) {
            referee.reads(&line);
        }
        referee.tap("Back");
    }
    Ok(())
}

fn every_address(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#to-learn");
    referee.reads(words::book_more());
    referee.browser().picture("book");
    referee.tap(&format!(
        "{} {}",
        words::decisions(),
        words::decisions_more()
    ));
    referee.reads(words::topic_more(Topic::InOut));
    referee.tap(&format!(
        "{} {}",
        words::topic(Topic::Block),
        words::topic_more(Topic::Block)
    ));
    referee.reads(words::look_for(Topic::Block)[0]);
    for _ in 0..3 {
        referee.tap("Back");
    }
    referee.browser().find("#to-learn");
    // The code of a reason is an address as well, and what leads nowhere leads to what is above it.
    for cause in Cause::ALL {
        open(referee, &format!("decisions/{}", cause.code()));
        match Topic::of(cause) {
            Some(topic) => referee.reads(words::look_for(topic)[0]),
            None => referee.reads(words::topic_more(Topic::InOut)),
        }
    }
    for (place, reads) in [
        ("", words::book_more()),
        ("nowhere", words::book_more()),
        ("decisions", words::decisions_more()),
        ("signals", text::signals_more()),
        ("signals/25-red", "Cover the wrist with the red card."),
        ("signals/99", text::signals_more()),
    ] {
        open(referee, place);
        referee.reads(reads);
    }
    let here = referee.stage.url();
    referee.browser().goto(&format!("{here}#/signals"));
    referee.reads(text::signals_more());
    Ok(())
}
