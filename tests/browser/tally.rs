//! The parent in the stand: the score in two taps from opening.

use game::entry::Change;
use game::{Kind, Phase};
use rules::{Shirt, Team};

use crate::driver::Engine;
use crate::referee::{Referee, Side};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "the_first_point_takes_two_taps",
        engines: ALL,
        run: the_first_point_takes_two_taps,
    },
    Test {
        name: "a_tally_counts_sets_and_may_know_who_serves",
        engines: &[Engine::Chromium],
        run: a_tally_counts_sets_and_may_know_who_serves,
    },
    Test {
        name: "a_tally_counts_substitutions_by_their_numbers",
        engines: ALL,
        run: a_tally_counts_substitutions_by_their_numbers,
    },
];

fn the_first_point_takes_two_taps(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.point(Side::Right);
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (0, 1));
    assert_eq!(timeline.state().phase(), Phase::Playing);
    Ok(())
}

fn a_tally_counts_sets_and_may_know_who_serves(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.tap("Right serves first");
    let court = referee.court();
    assert_eq!(court[1].serves.as_deref(), Some("serves"));
    assert_eq!(court[0].serves, None);
    // 25:0 in quick taps; the set is over, and the next one can begin.
    referee.points(&[Side::Left; 25], 50);
    referee.reads("Team A win set 1, 25:0");
    referee.tap("Begin set 2");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().set_number(), 2);
    assert_eq!(timeline.state().sets_won().a, 1);
    // What runs is offered first when the page opens again.
    referee.stage.open();
    referee.tap_at("#continue");
    referee.browser().find("#half-left");
    referee.court_is_right(false);
    Ok(())
}

/// Nobody is followed, so the numbers are typed.
fn a_tally_counts_substitutions_by_their_numbers(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.tap_at("#quick-tally");
    referee.point(Side::Left);
    let ask = |referee: &mut Referee, out: u16, into: u16| {
        referee.tap("More Team B");
        referee.tap("Substitution");
        for number in [out, into] {
            for digit in number.to_string().chars() {
                referee.tap(&digit.to_string());
            }
            referee.tap("This player");
        }
    };
    ask(referee, 12, 7);
    referee.browser().picture("tally-substitution");
    referee.tap_at("#record-change");
    referee.reads_at("#last-entry", "12");
    let timeline = referee.timeline();
    let last = timeline.entries().last().map(|e| e.kind.clone());
    let change = Change {
        out: Shirt(12),
        into: Shirt(7),
    };
    let asked = Kind::Substitution {
        team: Team::B,
        changes: vec![change],
        reason: None,
    };
    assert_eq!(last, Some(asked));
    // A tally limits nothing, and takes back what was a slip.
    for player in 1..8 {
        ask(referee, player, player + 20);
        referee.tap_at("#record-change");
    }
    let made = |referee: &mut Referee| {
        let play = referee.timeline().state().play().cloned();
        play.map(|play| play.sides.b.substitutions)
    };
    assert_eq!(made(referee), Some(8));
    referee.tap_at("#take-back");
    assert_eq!(made(referee), Some(7));
    Ok(())
}
