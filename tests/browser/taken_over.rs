//! A match that is already being played is taken over as it stands, and a score that was miscounted is put
//! right.

use game::Kind;
use rules::{Preset, Score, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::support::{numbered, opening, run};
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_running_match_is_taken_over_in_set_three",
        engines: CHROMIUM,
        run: in_set_three,
    },
    Test {
        name: "play_goes_back_after_wrong_information",
        engines: CHROMIUM,
        run: wrong_information,
    },
];

fn write(referee: &mut Referee, css: &str, words: &str) {
    let field = referee.browser().find(css);
    referee.browser().write(&field, words);
}

fn in_set_three(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#quick-tally");
    referee.tap("The match is already running");
    for (set, a, b) in [(1, "25", "20"), (2, "22", "25")] {
        referee.tap(&format!("Set {set} is over"));
        write(referee, &format!("#set-{set}-A"), a);
        write(referee, &format!("#set-{set}-B"), b);
    }
    // Half a score is none.
    write(referee, "#now-A", "7");
    referee.reads("Enter the points of both teams");
    write(referee, "#now-B", "6");
    referee.browser().picture("taken-over-form");
    // The phone's back button, pressed by mistake, loses nothing of it.
    referee.browser().back();
    referee.browser().wait_until(
        "the form is closed",
        "document.querySelector('#now-B') === null",
    );
    referee.tap("The match is already running");
    let typed = "['#set-1-A', '#set-2-B', '#now-A', '#now-B'].map((id) => document.querySelector(id).value)";
    referee.browser().find("#now-B");
    assert_eq!(
        referee.browser().value(typed),
        json!(["25", "25", "7", "6"])
    );
    referee.tap("Continue from here");
    referee.browser().picture("taken-over");
    let timeline = referee.court_is_right(false);
    let state = timeline.state();
    assert_eq!(state.score(), Score { a: 7, b: 6 });
    assert_eq!((state.sets_won().a, state.sets_won().b), (1, 1));
    assert_eq!(state.set_at_hand(), 3);
    assert!(!referee.sees("The match is already running"));

    referee.point(Side::Left);
    referee.tap("Menu");
    referee.tap("Correct the score");
    // What is refused says so, and its button keeps its name.
    referee.tap("A point was missed.");
    referee.reads_at("#consequence", "The score is already A 8:6 B.");
    referee
        .browser()
        .find_named_in("#consequence", "Correct the score");
    write(referee, "#right-B", "8");
    referee.browser().picture("score-corrected");
    referee.tap_in("#consequence", "Correct the score");
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score(), Score { a: 8, b: 8 });

    // A full match from now on, and in this set still nobody's places are followed.
    referee.tap("Menu");
    referee.tap("Make it a full match");
    referee.tap("International");
    referee.tap("Play by: International");
    referee.tap("Menu");
    referee.tap("Correct the score");
    write(referee, "#right-A", "9");
    referee.tap("A point was missed.");
    referee.tap_in("#consequence", "Correct the score");
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score(), Score { a: 9, b: 8 });

    referee.tap("Menu");
    referee.tap("Sheet");
    referee.reads_at(".sheet-remarks", "This record was begun in set 3");
    referee.reads_at(".sheet-remarks", "A point was missed.");
    Ok(())
}

fn wrong_information(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut kinds = opening(Preset::International.rules());
    kinds.extend(run("ABBA"));
    referee.go_on_with("informed", numbered(kinds));
    referee.browser().find("#half-left");
    referee.tap("Menu");
    referee.tap("The officials were wrong");
    referee.tap("Back to 1:1");
    referee.tap("The wrong team was told to serve.");
    referee.browser().picture("wrong-information");
    referee.tap("Go back to this score");
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score(), Score { a: 1, b: 1 });
    assert_eq!(timeline.state().serving().map(|s| s.0), Some(Team::B));
    let last = timeline.entries().last().map(|e| e.kind.clone());
    assert!(matches!(last, Some(Kind::WrongInformation { .. })));
    Ok(())
}
