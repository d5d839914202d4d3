//! What somebody has to see before the next tap stands in sight on a low screen, in the order of the court,
//! and nothing of it is left over from what was open before.

use game::entry::{Amendment, Kind, Who};
use game::Joined;
use rules::{Preset, Score, Shirt, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::support::{heading, numbered, opening, run};
use crate::{Ran, Test, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "the_record_button_covers_no_line_of_what_follows",
        // Another one's window has a least size of its own.
        engines: &[Engine::Chromium],
        run: nothing_is_covered,
    },
    Test {
        name: "what_follows_a_late_fault_comes_into_sight",
        engines: BOTH,
        run: what_follows_a_late_fault,
    },
    Test {
        name: "a_step_at_the_foot_of_the_plan_opens_into_sight",
        engines: BOTH,
        run: a_step_at_the_foot,
    },
    Test {
        name: "a_player_is_sanctioned_without_a_list",
        engines: BOTH,
        run: a_player_without_a_list,
    },
    Test {
        name: "a_level_of_misconduct_is_shown_from_its_card_on",
        engines: BOTH,
        run: a_level_from_its_card,
    },
    Test {
        name: "no_word_below_a_half_is_wider_than_its_button",
        engines: BOTH,
        run: words_fit,
    },
    Test {
        name: "a_replayed_rally_leaves_no_reason_and_no_hint_behind",
        engines: BOTH,
        run: nothing_left_behind,
    },
    Test {
        name: "scores_are_typed_and_told_as_the_teams_stand",
        engines: BOTH,
        run: score_as_they_stand,
    },
    Test {
        name: "a_tally_that_grows_says_to_what_the_set_is_played",
        engines: BOTH,
        run: grown_in_the_decider,
    },
    Test {
        name: "a_set_begun_against_the_advice_leads_to_the_court",
        engines: BOTH,
        run: begun_against_the_advice,
    },
];

/// Whether what a selector finds stands wholly on the screen.
fn in_sight(referee: &mut Referee, css: &str) {
    let there = format!(
        "(() => {{ const box = document.querySelector('{css}')?.getBoundingClientRect();
            return box && box.height > 0 && box.top >= 0 && box.bottom <= innerHeight + 1; }})()"
    );
    referee
        .browser()
        .wait_until(&format!("{css} stands in sight"), &there);
}

fn what_follows_a_late_fault(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    for team in [A, B, B, B] {
        referee.point_for(team);
    }
    referee.tap(&format!("More {B}"));
    referee.tap("Fault found late");
    referee.tap("Wrong server");
    referee.tap("Since 1:1");
    in_sight(&mut referee, "#make-it");
    in_sight(&mut referee, "#consequence h3");
    referee.browser().picture("late-fault-follows");
    Ok(())
}

fn a_step_at_the_foot(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let mut entries = begun();
    entries.truncate(1);
    referee.go_on_with("plan", entries);
    referee.browser().find("#plan-last_check");
    referee.still();
    referee
        .browser()
        .value("scrollTo(0, document.body.scrollHeight)");
    referee.tap_at("#plan-last_check .step-head");
    in_sight(&mut referee, "#plan-last_check .step-head");
    referee.browser().wait_until(
        "what it holds begins in sight",
        "document.querySelector('#plan-last_check .step-body').getBoundingClientRect().top < innerHeight - 100",
    );
    referee.browser().picture("step-at-the-foot");
    Ok(())
}

/// FIVB Official Volleyball Rules 2025-2028, 21.2 and 21.3: a sanction is for one person, whom a tally without
/// lists does not know yet.
fn a_player_without_a_list(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.point(Side::Left);
    referee.tap("More Team A");
    referee.tap("Misconduct");
    referee.tap("7");
    referee.browser().picture("misconduct-without-a-list");
    referee.tap("This player");
    referee.reads("7");
    referee.tap_at(".level.advised");
    referee.tap_at("#make-it");
    referee.saved();
    let timeline = referee.timeline();
    let given = timeline
        .entries()
        .iter()
        .any(|e| matches!(&e.kind, Kind::Misconduct { who, .. } if *who == Who::Player(Shirt(7))));
    assert!(given, "{:?}", timeline.entries().last());
    Ok(())
}

/// The lines of what follows that end behind the button, by their words.
const COVERED: &str = "(() => {
    const button = document.querySelector('#make-it').getBoundingClientRect();
    return [...document.querySelectorAll('#consequence li, #consequence h3, #consequence p')]
        .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height > 0)
        .filter((one) => one.getBoundingClientRect().left < button.right)
        .filter((one) => one.getBoundingClientRect().bottom > button.top + 1)
        .map((one) => one.innerText);
})()";

fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("in-sight", begun());
    referee.browser().find("#half-left");
    referee
}

fn nothing_is_covered(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    // Nothing is sanctioned, one is a warning, the next is a penalty: each says more than the one before.
    for what in ["Improper request", "Improper request", "Other delay"] {
        referee.tap(&format!("More {A}"));
        referee.tap(what);
        referee.browser().find("#make-it");
        for (width, height) in [(1180, 820), (360, 740)] {
            referee.browser().screen(width, height);
            referee.still();
            referee.browser().picture(&format!("in-sight-{width}"));
            let covered = referee.browser().value(COVERED);
            assert_eq!(covered, json!([]), "{what} {width}");
        }
        referee.tap_at("#make-it");
    }
    assert_eq!(referee.timeline().state().score(), Score { a: 0, b: 1 });
    Ok(())
}

fn a_level_from_its_card(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    referee.browser().screen(360, 740);
    referee.tap(&format!("More {B}"));
    referee.tap("Misconduct");
    referee.tap("number 5");
    // It is the lowest of four: whoever taps it has scrolled down.
    referee.tap("Disqualification, number 5");
    referee.browser().find("#make-it");
    referee.still();
    let in_sight = "(() => {
        const head = document.querySelector('.panel-head').getBoundingClientRect();
        const words = document.querySelector('#becomes h3').getBoundingClientRect();
        return words.top >= head.bottom - 1 && words.bottom < innerHeight;
    })()";
    referee
        .browser()
        .wait_until("the card and its words are in sight", in_sight);
    Ok(())
}

fn words_fit(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    let wide = "[...document.querySelectorAll('.tool-word')].filter((one) => {
            const words = document.createRange();
            words.selectNodeContents(one);
            const [text, button] = [words, one.closest('button')].map((e) => e.getBoundingClientRect());
            return text.left < button.left || text.right > button.right;
        }).map((one) => one.innerText)";
    referee.point(Side::Left);
    referee.tap_at("#replay");
    referee.tap("This rally (1:0): its point is cancelled");
    referee.tap("Something on court");
    for (width, height) in [(360, 740), (320, 568), (1180, 820)] {
        referee.browser().screen(width, height);
        referee.still();
        assert_eq!(referee.browser().value(wide), json!([]), "{width}");
    }
    // A time-out that is not to be had now says so in its own place, and why when it is tapped.
    referee.browser().screen(360, 740);
    referee.tap_at("#time-out-left");
    referee.browser().find("#refusal-sentence");
    Ok(())
}

fn nothing_left_behind(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let referee = &mut referee;
    let reasons = "document.querySelector('.reasons')?.checkVisibility() === true";
    let card = "document.querySelector('.signal-card')?.checkVisibility() === true";
    referee.point(Side::Left);
    referee.reason("Ball", "Ball in");
    referee.reads("Ball in (14)");
    referee.point(Side::Right);
    referee.browser().wait_until("reasons are offered", reasons);
    referee.tap_at("#replay");
    // The half gives no point meanwhile, and says so only as long as this is open.
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#due", "No point:");
    referee.tap("This rally (1:1): its point is cancelled");
    referee.tap("Both teams at fault");
    referee.reads_at(
        "#last-entry",
        "Rally replayed, its point cancelled: both teams at fault",
    );
    // The reason of the rally before it would be taken for one of the rally that counts no more.
    assert_eq!(referee.browser().value(reasons), json!(false));
    assert_eq!(referee.browser().value(card), json!(false));
    assert!(!referee.browser().text("#main").contains("Ball in"));
    // What was not done in one panel is not said in the next one.
    referee.tap(&format!("More {A}"));
    referee.taps(&[Side::Left], 0);
    referee.reads_at("#due", "No point:");
    referee.tap("Improper request");
    referee.browser().find("#make-it");
    assert!(!referee.browser().text("#due").contains("No point"));
    referee.tap_at("#panel-close");
    referee.point(Side::Right);
    referee.browser().wait_until("reasons are offered", reasons);
    Ok(())
}

fn score_as_they_stand(stage: &mut Stage) -> Ran {
    let joined = Kind::Joined(Joined {
        sets: vec![Score { a: 25, b: 20 }, Score { a: 18, b: 25 }],
        score: Some(Score { a: 7, b: 9 }),
        serving: Some(Team::B),
        left: Some(Team::B),
    });
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("joined", numbered([heading(Preset::Tally.rules()), joined]));
    referee.browser().find("#half-left");
    assert_eq!(referee.side_of(B), Side::Left);
    referee.reads_at("#last-entry", "Recorded from set 3, A 7:9 B");
    referee.tap("Menu");
    referee.tap("Correct the score");
    referee.browser().find("#right-A");
    let first = "document.querySelector('#right-B').getBoundingClientRect().left
        < document.querySelector('#right-A').getBoundingClientRect().left";
    assert_eq!(referee.browser().value(first), json!(true));
    let field = referee.browser().find("#right-B");
    referee.browser().write(&field, "10");
    referee.tap("A point was missed.");
    referee.reads_at("#consequence", "Score 9:7 becomes 10:7");
    referee.tap_at("#make-it");
    referee.reads_at(
        "#last-entry",
        "Score corrected to A 7:10 B: A point was missed.",
    );
    Ok(())
}

fn grown_in_the_decider(stage: &mut Stage) -> Ran {
    let mut kinds = vec![heading(Preset::Tally.rules()), Kind::BeginSet];
    kinds.extend(run(&"A".repeat(25)));
    kinds.push(Kind::BeginSet);
    kinds.extend(run(&"B".repeat(25)));
    kinds.push(Kind::BeginSet);
    kinds.extend(run("AAB"));
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("grown", numbered(kinds));
    referee.tap("Menu");
    referee.tap("Make it a full match");
    // The third of three is the deciding set.
    referee.tap_in("[role=dialog]", "School, juniors");
    referee.reads_at("#consequence", "Set 3 is played to 15 points");
    referee.tap_in("[role=dialog]", "International");
    referee.reads_at("#consequence", "Score, sets and service stay as they are");
    referee.tap_in("[role=dialog]", "School, juniors");
    referee.tap_at("#make-it");
    let timeline = referee.timeline();
    let last = timeline.entries().last().map(|e| e.kind.clone());
    let grown = Amendment {
        rules: Some(Preset::SchoolJunior.rules()),
        ..Amendment::default()
    };
    assert_eq!(last, Some(Kind::Heading(Box::new(grown))));
    Ok(())
}

fn begun_against_the_advice(stage: &mut Stage) -> Ran {
    let rules = Preset::International.rules();
    let mut kinds = opening(rules);
    // Everything but the line-ups, the toss and the beginning.
    kinds.truncate(3);
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("against", numbered(kinds));
    referee.tap("Last check");
    referee.tap("Begin anyway");
    referee.tap_in("[role=dialog]", "Record it anyway");
    let why = referee.browser().find("#insist-why");
    referee.browser().write(&why, "nobody has written any");
    referee.tap_in("[role=dialog]", "Record it anyway");
    referee.browser().find("#half-left");
    referee.point(Side::Left);
    // Nobody is followed, so the panel says why there is nobody to choose.
    referee.tap(&format!("Substitution {A}, 0 of 6 used"));
    referee.reads_at(".panel", "has no line-up");
    Ok(())
}
