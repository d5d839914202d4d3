//! Before the match: what is measured, who clears what was wrong, who is briefed, who signs, who is
//! late, who goes in before the first service.

use game::{signed, Choice, Entry, Kind, Phase, Signed, Signer, Timeline};
use rules::Team;
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, A, B};
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "net_and_ball_are_measured_and_a_failed_check_is_cleared_by_a_word",
        engines: &[Engine::Chromium],
        run: measured,
    },
    Test {
        name: "the_duty_team_is_briefed_sentence_by_sentence",
        engines: &[Engine::Chromium],
        run: briefed,
    },
    Test {
        name: "a_briefing_is_read_by_the_phone_when_it_is_asked_to",
        engines: &[Engine::Chromium],
        run: read_by_the_phone,
    },
    Test {
        name: "a_time_that_is_long_over_means_tomorrow",
        engines: &[Engine::Chromium],
        run: planned_for_tonight,
    },
    Test {
        name: "the_coin_falls_and_the_record_says_who_chose_what",
        engines: &[Engine::Chromium],
        run: tossed,
    },
    Test {
        name: "captain_and_coach_sign_with_a_finger_or_without",
        engines: &[Engine::Chromium],
        run: signatures,
    },
    Test {
        name: "a_late_team_is_waited_for_and_then_in_default",
        engines: &[Engine::Chromium],
        run: late_team,
    },
    Test {
        name: "a_libero_goes_in_before_the_first_service",
        engines: &[Engine::Chromium],
        run: libero,
    },
];

/// The last check of an item: whether it was in order, and its note.
fn last_check(timeline: &Timeline, item: &str) -> (bool, String) {
    let check = timeline.state().checks().iter().find(|c| c.item == item);
    let check = check.expect("it was checked");
    (check.ok, check.note.clone().unwrap_or_default())
}

fn fill(referee: &mut Referee, field: &str, text: &str) {
    let field = referee.browser().find_named(field);
    referee.browser().write(&field, text);
}

fn measured(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#step-ball");
    fill(&mut referee, "What the gauge shows", "4.4");
    referee.reads_at("#gauge-says", "In psi this number would be right");
    referee.tap_at(".gauge-unit:nth-child(4)");
    referee.reads_at("#gauge-says", "Within the limits.");
    referee.reads_at(".gauge-unit:nth-child(2)", "= 303");
    fill(&mut referee, "What the gauge shows", "3,9");
    referee.reads_at("#gauge-says", "Too soft");
    referee.tap("Problem: 3.90 psi, too soft");
    referee.reads("Do not start. Speak to the coach or the organiser.");
    let timeline = referee.timeline();
    assert_eq!(
        last_check(&timeline, "ball"),
        (false, "3.90 psi, too soft".to_owned())
    );
    // Nobody has said anything yet.
    let clear = referee.browser().find_named("All good now");
    assert_eq!(
        referee
            .browser()
            .run("return arguments[0].disabled;", json!([clear])),
        json!(true)
    );
    referee.reads("You do not have to settle this alone.");
    referee.tap("Organiser");
    fill(&mut referee, "What was done? (optional)", "pumped up");
    referee.tap("All good now");
    assert_eq!(
        last_check(&referee.timeline(), "ball"),
        (true, "Organiser: pumped up".to_owned())
    );

    // The next step in the plan has opened by itself.
    referee.reads("Which adult gives first aid today");
    referee.tap("All good");
    assert_eq!(
        last_check(&referee.timeline(), "first_aid"),
        (true, String::new())
    );
    referee.tap_at("#step-floor");
    referee.tap("Problem");
    fill(&mut referee, "What is wrong? (optional)", "wet");
    referee.tap("Record the problem");
    // The button is gone; whoever uses keys is still at this step.
    referee.browser().wait_until(
        "the step has the focus",
        "document.activeElement.id === 'step-floor'",
    );
    // What was done alone clears nothing.
    fill(&mut referee, "What was done? (optional)", "wiped");
    let clear = referee.browser().find_named("All good now");
    assert_eq!(
        referee
            .browser()
            .run("return arguments[0].disabled;", json!([clear])),
        json!(true)
    );
    fill(
        &mut referee,
        "Which adult has looked at it and says that it is safe now?",
        "Ms Lane",
    );
    referee.tap("All good now");
    assert_eq!(
        last_check(&referee.timeline(), "floor"),
        (true, "Ms Lane: wiped".to_owned())
    );

    // So has the one after the floor.
    referee.tap("Women: 2.24 m");
    fill(&mut referee, "Middle", "2.24");
    fill(&mut referee, "Left side line", "225");
    referee.reads_at("#net-says", "The net is right.");
    fill(&mut referee, "Right side line", "2.30");
    referee.reads_at("#net-says", "the sides differ by 5 cm");
    fill(&mut referee, "Right side line", "2.25");
    let words = "2.24 m, measured: middle 2.24, left side line 2.25, right side line 2.25";
    referee.tap(&format!("All good: {words}"));
    assert_eq!(
        last_check(&referee.timeline(), "net"),
        (true, words.to_owned())
    );
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// A phone with one voice of its own and one that would send the words away; what is read is kept.
const VOICES: &str = "
    window.read = [];
    const voice = (name, localService) => ({ name, localService, lang: 'en-GB' });
    const voices = Object.assign(new EventTarget(), {
      getVoices: () => [voice('far', false), voice('here', true)],
      speak: (words) => window.read.push(words),
      cancel: () => window.read.push(null),
    });
    Object.defineProperty(window, 'speechSynthesis', { value: voices });
    window.SpeechSynthesisUtterance = class extends EventTarget {
      constructor(text) { super(); this.text = text; }
    };";

fn read_by_the_phone(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.browser().run(VOICES, json!([]));
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#step-briefing");
    let said = |referee: &mut Referee| {
        referee
            .browser()
            .value("window.read.filter(Boolean).map((u) => [u.text.split(' ')[0], u.voice.name])")
    };
    // Quiet until somebody asks.
    assert_eq!(said(&mut referee), json!([]));
    referee.tap("Let the phone read it");
    let words = said(&mut referee);
    assert_eq!(words[0], json!(["Stand", "here"]));
    let sentences = referee
        .browser()
        .value("document.querySelectorAll('.briefing li').length");
    assert_eq!(
        words.as_array().map(Vec::len),
        sentences.as_u64().map(|n| n as usize)
    );
    // The last sentence is over.
    referee.browser().run(
        "window.read.filter(Boolean).at(-1).dispatchEvent(new Event('end'));",
        json!([]),
    );
    referee.tap("Let the phone read it");
    referee.tap("Stop reading");
    referee.browser().find_named("Let the phone read it");
    assert_eq!(referee.browser().value("window.read.at(-1)"), json!(null));
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

fn planned_for_tonight(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#new-match");
    // Eight in the evening wherever the test runs: seven in the morning is tomorrow's, nine today's.
    let hour = referee.browser().value("new Date().getUTCHours()");
    let ahead = (20 - hour.as_i64().unwrap_or_default() + 12).rem_euclid(24) - 12;
    // Names of zones count to the west.
    let zone = format!("Etc/GMT{:+}", -ahead);
    referee.browser().cdp(
        "Emulation.setTimezoneOverride",
        json!({ "timezoneId": zone }),
    );
    let start = |referee: &mut Referee, time: &str| {
        let field = referee.browser().find_named("Planned start");
        referee.browser().run(
            "arguments[0].value = arguments[1];
             arguments[0].dispatchEvent(new Event('input', { bubbles: true }));",
            json!([field, time]),
        );
    };
    start(&mut referee, "21:30");
    referee.reads_at("#starts", "Today at 21:30.");
    start(&mut referee, "07:00");
    referee.reads_at("#starts", "Tomorrow at 07:00.");
    referee.tap("Open the match");
    let day = "new Date(Date.now() + 864e5).toLocaleDateString('sv')";
    let day = referee.browser().value(day);
    let day = day.as_str().unwrap_or_default().to_owned();
    referee.reads_at(".start-at", &format!("Start {day}, 07:00"));
    Ok(())
}

fn briefed(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#step-briefing");
    for (who, next) in [
        ("Second referee", Some("Next: Scorer")),
        ("Scorer", Some("Next: Line judges")),
        ("Line judges", None),
    ] {
        // About a minute: people read aloud some 130 to 150 words in one (common practice).
        let words = referee
            .browser()
            .text(".briefing")
            .split_whitespace()
            .count();
        assert!((90..=150).contains(&words), "{who}: {words} words");
        let lines = referee
            .browser()
            .value("document.querySelectorAll('.briefing li').length")
            .as_u64()
            .unwrap_or_default();
        for line in 1..=lines {
            referee.tap_at(&format!(".briefing li:nth-child({line}) label"));
            if (who, line) == ("Scorer", 3) {
                // A reload forgets no tick.
                referee.stage.reload();
                referee.tap_at("#step-briefing");
                let ticked = "document.querySelectorAll('.briefing input:checked').length";
                assert_eq!(referee.browser().value(ticked), json!(3));
            }
        }
        if let Some(next) = next {
            referee.tap(next);
        }
    }
    referee.tap("Everybody is briefed");
    assert!(last_check(&referee.timeline(), "briefing").0);
    Ok(())
}

/// Draws on the field for a signature, places as parts of its width and height.
fn draw(referee: &mut Referee, places: &[(f64, f64)]) {
    let field = referee.browser().find(".sign-pad");
    referee.browser().over(&field);
    let place = |(x, y): &(f64, f64)| {
        referee.browser().value(&format!(
            "(({{ left, top, width, height }}) => [left + width * {x}, top + height * {y}].map(Math.round))\
             (document.querySelector('.sign-pad').getBoundingClientRect())"
        ))
    };
    let places: Vec<(i64, i64)> = places
        .iter()
        .map(place)
        .map(|p| {
            (
                p[0].as_i64().unwrap_or_default(),
                p[1].as_i64().unwrap_or_default(),
            )
        })
        .collect();
    referee.browser().draw(&places);
}

fn signatures(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#step-team_lists");
    referee.list(A, &[1, 2, 3, 4, 5, 6, 7], 4);
    referee.tap(&format!("Sign: captain, {A}"));
    // A slip of the finger is no signature.
    draw(&mut referee, &[(0.25, 0.5), (0.26, 0.5)]);
    referee.tap("Save signature");
    referee.reads("That is only a dot.");
    referee.tap("Clear");
    draw(&mut referee, &[(0.25, 0.5), (0.5, 0.25), (0.5, 0.5)]);
    let path = referee
        .browser()
        .value("document.querySelector('.sign-pad path').getAttribute('d')");
    let path = path.as_str().unwrap_or_default().to_owned();
    assert!(path.starts_with('M') && path.contains('L'), "{path:?}");
    referee.tap("Save signature");
    referee.browser().find(".sign-status .drawn");
    // The coach has no finger free: a plain tap.
    referee.tap(&format!("Sign: coach, {A}"));
    referee.tap("Save signature");
    let timeline = referee.timeline();
    for signer in [Signer::Captain(Team::A), Signer::Coach(Team::A)] {
        assert!(
            matches!(signed(&timeline, signer), Signed::Yes(_)),
            "{signer:?}"
        );
    }
    // The drawing outlives a reload and is not in the record.
    referee.stage.reload();
    referee.tap_at("#step-team_lists");
    referee.tap_at(".team-tab");
    let again = referee
        .browser()
        .value("document.querySelector('.sign-status .drawn path').getAttribute('d')");
    assert_eq!(again, json!(path));
    // Another list is not what they signed.
    referee.tap("Edit this list");
    for key in ["8", "Add", "Confirm the team list (8 players)"] {
        referee.tap(key);
    }
    referee.reads("signed, but the list was changed afterwards");
    referee.tap(&format!("Sign again: captain, {A}"));
    referee.tap("Not now");
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

fn tossed(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#step-toss");
    referee.tap(&format!("Heads: {B}"));
    referee.tap("Toss the coin");
    let won = referee.browser().text(".coin-won");
    let winner = won.trim_end_matches(" won the toss").to_owned();
    // A coin that fell is not tossed again.
    referee.stage.reload();
    referee.tap_at("#step-toss");
    referee.reads_at(".coin-won", &won);
    referee.tap("Right side");
    referee.tap("Receive");
    referee.tap("Record the toss");
    referee.reads(&format!("{winner} won the toss and chose the right side."));
    let toss = referee.timeline().state().toss_to_come().expect("a toss");
    let by = if winner == A { Team::A } else { Team::B };
    assert_eq!(toss.chosen(), Some((by, Choice::Right)));
    // The other captain chose to receive, so the winner serves.
    assert_eq!((toss.first_service, toss.left), (by, by.other()));
    // Tossed with a coin of metal instead; who chose can be left out, or said.
    referee.tap("Edit the toss");
    referee.tossed(A, A);
    assert_eq!(
        referee
            .timeline()
            .state()
            .toss_to_come()
            .and_then(|t| t.won),
        None
    );
    referee.tap("Edit the toss");
    referee.tap("We have tossed already");
    referee.tap_in(".toss fieldset:nth-of-type(1)", B);
    referee.tap_in(".toss fieldset:nth-of-type(2)", A);
    referee.tap(&format!("{A} chose to receive."));
    referee.tap("Record the toss");
    let toss = referee.timeline().state().toss_to_come().expect("a toss");
    assert_eq!(toss.chosen(), Some((Team::A, Choice::Receive)));
    Ok(())
}

/// Label of the minutes where no start is planned.
const WAITS: &str = "Minutes your competition waits (no start is planned, so they count from now)";

fn late_team(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, juniors Shorter, no libero");
    referee.tap_at("#late-team");
    referee.reads("Your competition's own regulations count");
    referee.tap_in(".late-team", B);
    fill(&mut referee, WAITS, "a while");
    referee.reads("Write whole minutes");
    fill(&mut referee, WAITS, "10");
    referee.tap("Start the clock");
    referee.reads(&format!("Waiting for {B}"));
    referee.stage.reload();
    referee.reads(&format!("Waiting for {B}"));
    referee.tap("They are here");
    referee.tap_in(".late-team", B);
    // No time at all, as a competition may have it.
    fill(&mut referee, WAITS, "0");
    referee.tap("Start the clock");
    referee.reads("The time is over.");
    referee.tap("Record the default");
    referee.reads(&format!("{B} lose the match"));
    referee.tap_in("[role=dialog]", "Record the default");
    referee.reads("This match is over.");
    let timeline = referee.timeline();
    assert_eq!(timeline.state().phase(), Phase::Finished);
    assert_eq!(timeline.state().winner(), Some(Team::A));
    referee.tap("To the sheet");
    referee.reads("won 2:0");
    Ok(())
}

fn libero(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.new_match("School, seniors Full length, one libero");
    referee.tap_at("#step-team_lists");
    referee.tap(A);
    for key in ["9", "Add", "Number 9", "Libero"] {
        referee.tap(key);
    }
    for number in ["1", "2", "3", "4", "5", "6"] {
        referee.tap(number);
        referee.tap("Add");
    }
    for key in ["Number 1", "Captain", "Confirm the team list (7 players)"] {
        referee.tap(key);
    }
    referee.list(B, &[11, 12, 13, 14, 15, 16], 16);
    referee.tap_at("#step-toss");
    referee.tossed(B, A);
    referee.tap_at("#step-line_ups");
    referee.line_up(A, &[1, 2, 3, 4, 5, 6]);
    referee.line_up(B, &[11, 12, 13, 14, 15, 16]);
    referee.tap_at("#step-last_check");
    // The front row is not offered.
    assert!(!referee.sees(&format!("{A}: 9 comes in for 3")));
    referee.tap(&format!("{A}: 9 comes in for 6"));
    referee.browser().wait_until(
        "nobody else is offered",
        "document.querySelector('[aria-label*=\"comes in for\"]') === null",
    );
    referee.tap("Begin set 1");
    referee.browser().find("#half-left");
    let timeline = referee.timeline();
    let last: Vec<&Entry> = timeline.entries().iter().rev().take(2).collect();
    assert!(matches!(last[0].kind, Kind::BeginSet));
    assert!(matches!(last[1].kind, Kind::LiberoReplacement { .. }));
    assert_eq!(timeline.state().phase(), Phase::Playing);
    Ok(())
}
