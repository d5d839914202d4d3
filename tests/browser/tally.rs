//! The parent in the stand: the score in two taps from opening.

use game::Phase;

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
