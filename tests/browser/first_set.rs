//! A whole set by taps, as it is played: what is on the screen is what the core makes of the log.

use game::{Kind, Phase, Timeline};
use rules::{Shirt, Team};

use crate::driver::Engine;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_first_set_by_taps",
        engines: &[Engine::Chromium],
        run: a_first_set_by_taps,
    },
    Test {
        name: "a_rally_and_a_reload_in_the_middle_of_it",
        engines: ALL,
        run: a_rally_and_a_reload_in_the_middle_of_it,
    },
    Test {
        name: "the_table_sees_the_halves_swapped",
        engines: &[Engine::Chromium],
        run: the_table_sees_the_halves_swapped,
    },
];

/// From the start screen to the first service of a match by the international rules.
fn up_to_the_first_service(referee: &mut Referee) {
    referee.new_match("International The official rules");
    referee.all_in_order();
    referee.tap("Open");
    referee.list(A, &[1, 2, 3, 4, 5, 6, 7, 8, 10], 4);
    referee.list(B, &[11, 12, 13, 14, 15, 16, 17], 16);
    referee.tap("Next: Toss");
    referee.tossed(A, A);
    referee.tap("Next: Warm-up");
    referee.tap("Start: warm-up, Both teams");
    referee.tap("End now: warm-up, Both teams");
    referee.tap("Next: Line-ups");
    referee.line_up(A, &[1, 2, 3, 4, 5, 6]);
    referee.line_up(B, &[11, 12, 13, 14, 15, 16]);
    referee.tap("Next: Last check");
    referee.tap("Begin set 1");
    referee.browser().find("#half-left");
}

fn a_first_set_by_taps(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let downloads = referee.catch_downloads();
    up_to_the_first_service(&mut referee);
    let timeline = referee.court_is_right(false);
    let ticked = |e: &&game::Entry| matches!(&e.kind, Kind::Check(c) if c.ok);
    assert_eq!(timeline.entries().iter().filter(ticked).count(), 7);

    // Each point, then what came with it; the halves are compared after every tap.
    give(&mut referee, A);
    referee.reason("Serve", "Ace");
    referee.reads("Left arm");
    // Side-out: the receiving team rotates, its number 12 serves.
    let timeline = give(&mut referee, B);
    assert_eq!(timeline.state().serving(), Some((Team::B, Some(Shirt(12)))));
    referee.reason("Hits", "Catch");
    referee.reads("Catch (16)");
    referee.tap("Other reason");
    referee.reason("Hits", "Four hits");
    referee.reads("Four hits (18)");

    referee.tap(&format!("Time-out {B}, 0 of 2 used"));
    referee.reads("0:30");
    referee.tap("End");

    referee.tap(&format!("Substitution {A}, 0 of 6 used"));
    referee.tap("3 goes out");
    referee.tap("8 comes in");
    referee.tap("Record the substitution");
    referee.reads(&format!("Substitution {A}: 8 in for 3"));
    let timeline = referee.court_is_right(false);
    assert!(timeline
        .state()
        .play()
        .is_some_and(|p| p.sides[Team::A].holds(Shirt(8))));

    // Four points each in turn, then A alone.
    for _ in 0..4 {
        give(&mut referee, A);
        give(&mut referee, B);
    }
    while referee.court()[0].score < 24 {
        give(&mut referee, A);
    }
    referee.reads_at("#due", "Set point");
    referee.point_for(A);
    referee.reads("After set 1");

    let timeline = referee.timeline();
    let state = timeline.state();
    assert_eq!(state.phase(), Phase::BetweenSets);
    let set = state.sets().next().expect("a set is over");
    assert_eq!((set.score.a, set.score.b), (25, 5));
    assert_eq!(set.winner, Team::A);
    referee.reads("Otters win set 1, 25:5");

    // What is handed over is what was kept, and folds to the same.
    referee.tap("Menu");
    referee.tap("Export the match as a file");
    let (name, text) = referee.caught(&downloads);
    assert_eq!(name, "match-otters-herons.json");
    let reading = record::read(&text);
    assert_eq!(reading.problems, []);
    assert_eq!(reading.log.entries, timeline.entries());
    assert_eq!(reading.log.id, referee.kept().id);
    assert_eq!(render::fold(&reading)["refused"], serde_json::json!([]));
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// A point for a team: one more for it on the screen and in the core.
fn give(referee: &mut Referee, team: &str) -> Timeline {
    let mut expected = referee.court().map(|half| (half.name, half.score));
    for (name, score) in &mut expected {
        *score += u16::from(name == team);
    }
    referee.point_for(team);
    let timeline = referee.court_is_right(false);
    assert_eq!(
        referee.court().map(|half| (half.name, half.score)),
        expected
    );
    timeline
}

/// On every engine: begin, a rally, a reload before its reason, a time-out, a reload within it.
fn a_rally_and_a_reload_in_the_middle_of_it(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    up_to_the_first_service(&mut referee);
    referee.point(Side::Right);
    let before = referee.court();
    let kept = referee.timeline();
    referee.stage.reload();
    referee.browser().find("#half-left");
    let after = referee.court_is_right(false);
    assert_eq!(referee.court(), before);
    assert_eq!(after.entries(), kept.entries());
    // The reason is still asked for, and the score is not touched by it.
    referee.reason("Net", "Net touch");
    referee.reads("Net touch (19)");
    let timeline = referee.court_is_right(false);
    let last = timeline.last_standing().map(|e| e.kind.clone());
    assert!(
        matches!(last, Some(Kind::Explain { entry, .. }) if Some(entry) == timeline.last_rally().map(|e| e.n)),
        "{last:?}"
    );

    referee.tap(&format!("Time-out {A}, 0 of 2 used"));
    referee.saved();
    referee.browser().wait_until(
        "two seconds have gone",
        "Number(document.querySelector('.count-down .tabular')?.innerText.split(':')[1]) <= 28",
    );
    referee.stage.reload();
    referee.browser().find(".count-down");
    let timeline = referee.timeline();
    let timer = timeline
        .state()
        .timers()
        .first()
        .expect("a count-down runs");
    let since = timer.since.expect("it has a time");
    // The picture is drawn anew four times a second, on a busy machine later.
    referee.browser().wait_until(
        "the count-down goes on where it was",
        &format!(
            "Number(document.querySelector('.count-down .tabular').innerText.split(':')[1])
               === Math.ceil((30000 - (Date.now() - {since})) / 1000)"
        ),
    );
    Ok(())
}

fn the_table_sees_the_halves_swapped(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    up_to_the_first_service(&mut referee);
    referee.point_for(A);
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    referee.tap("Seen from the stand. Turn the court for the table");
    let timeline = referee.court_is_right(true);
    assert_eq!(timeline.state().score(), score);
    assert_eq!(referee.side_of(A), Side::Right);
    // A tap gives the point to the team that stands there on the screen.
    referee.point(Side::Right);
    let timeline = referee.court_is_right(true);
    assert_eq!(timeline.state().score().a, score.a + 1);
    // The switch outlives a reload, and turns back.
    referee.stage.reload();
    referee.browser().find("#half-left");
    referee.court_is_right(true);
    referee.tap("Seen from the table. Turn the court for the stand");
    referee.court_is_right(false);
    Ok(())
}
