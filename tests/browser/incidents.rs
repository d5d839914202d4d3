//! What happens in a match besides rallies, each by the buttons a person presses: changes, liberos,
//! requests, sanctions, injuries, faults found late, interruptions, teams that cannot go on.

use game::{Entry, Kind, Level, Phase, SanctionKind, Timeline};
use rules::{Shirt, Team};

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "both_teams_change_in_one_interruption",
        engines: CHROMIUM,
        run: both_teams_change_in_one_interruption,
    },
    Test {
        name: "a_libero_comes_and_goes_before_the_set_and_in_it",
        engines: CHROMIUM,
        run: a_libero_comes_and_goes,
    },
    Test {
        name: "requests_and_delays_are_counted_by_their_kind",
        engines: CHROMIUM,
        run: requests_and_delays,
    },
    Test {
        name: "the_ladder_of_misconduct_shows_its_next_step",
        engines: CHROMIUM,
        run: the_ladder_of_misconduct,
    },
    Test {
        name: "somebody_is_hurt_and_the_careful_steps_come_first",
        engines: CHROMIUM,
        run: somebody_is_hurt,
    },
    Test {
        name: "a_wrong_server_found_late_is_seen_before_it_is_recorded",
        engines: CHROMIUM,
        run: a_wrong_server_found_late,
    },
    Test {
        name: "play_is_interrupted_and_goes_on_on_another_court",
        engines: CHROMIUM,
        run: play_is_interrupted,
    },
    Test {
        name: "a_team_that_cannot_go_on_loses_what_is_said_before",
        engines: CHROMIUM,
        run: a_team_that_cannot_go_on,
    },
    Test {
        name: "a_replay_gives_no_point_and_a_remark_goes_onto_the_sheet",
        engines: CHROMIUM,
        run: a_replay_and_a_remark,
    },
    Test {
        name: "the_service_clock_runs_when_it_is_wanted",
        engines: CHROMIUM,
        run: the_service_clock,
    },
    Test {
        name: "only_the_court_shows_score_and_server_and_what_is_due",
        engines: CHROMIUM,
        run: only_the_court,
    },
    Test {
        name: "a_fault_of_the_libero_asks_which_signal",
        engines: CHROMIUM,
        run: a_fault_of_the_libero,
    },
    Test {
        name: "a_tally_takes_late_faults_names_and_a_full_match",
        engines: CHROMIUM,
        run: a_tally_grows,
    },
    Test {
        name: "a_reason_names_the_signals_in_their_order",
        engines: CHROMIUM,
        run: a_reason_names_the_signals,
    },
    Test {
        name: "every_signal_can_be_looked_at_and_learned",
        engines: CHROMIUM,
        run: every_signal_can_be_learned,
    },
];

fn on_court(stage: &mut Stage) -> Referee<'_> {
    with(stage, begun())
}

fn with(stage: &mut Stage, entries: Vec<Entry>) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("incidents", entries);
    referee
}

/// The last entry that a person made.
fn last(timeline: &Timeline) -> Kind {
    let entry = timeline.last_standing().expect("an entry");
    entry.kind.clone()
}

fn holds(timeline: &Timeline, team: Team, number: u16) -> bool {
    let play = timeline.state().play().expect("a set is played");
    play.sides[team].on_court().any(|s| s == Shirt(number))
}

fn kinds(timeline: &Timeline) -> Vec<SanctionKind> {
    timeline
        .state()
        .sanctions()
        .iter()
        .map(|s| s.kind)
        .collect()
}

fn both_teams_change_in_one_interruption(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    // Two changes in one request, one of them thought better of.
    referee.tap(&format!("Substitution {A}, 0 of 6 used"));
    for (out, into) in [(2, 8), (3, 9), (4, 10)] {
        referee.tap(&format!("{out} goes out"));
        referee.tap(&format!("{into} comes in"));
    }
    referee.tap("Remove: 9 in for 3");
    referee.tap("Record 2 substitutions");
    // The other team asks in the same interruption.
    referee.tap(&format!("Substitution {B}, 0 of 6 used"));
    referee.tap("6 goes out");
    referee.tap("7 comes in");
    referee.tap("Record the substitution");
    let timeline = referee.court_is_right(false);
    assert!(
        holds(&timeline, Team::A, 8)
            && holds(&timeline, Team::A, 10)
            && holds(&timeline, Team::A, 3)
    );
    assert!(holds(&timeline, Team::B, 7));
    let used = |team| timeline.state().play().map(|p| p.sides[team].substitutions);
    assert_eq!((used(Team::A), used(Team::B)), (Some(2), Some(1)));
    // A second request of one team before the next rally is refused, with its rule.
    referee.tap(&format!("Substitution {A}, 2 of 6 used"));
    referee.tap("5 goes out");
    referee.tap("11 comes in");
    referee.reads("Official Volleyball Rules, 15");
    referee.tap_in("[role=dialog]", "Cancel");
    assert_eq!(referee.timeline().entries(), timeline.entries());
    Ok(())
}

fn a_libero_comes_and_goes(stage: &mut Stage) -> Ran {
    // Both line-ups are in, the first service has yet to be whistled.
    let mut entries = begun();
    let begins = |e: &Entry| e.kind == Kind::BeginSet;
    entries.truncate(entries.iter().position(begins).expect("a set begins"));
    let mut referee = with(stage, entries);
    referee.tap("Last check");
    referee.tap(&format!("{B}: 12 comes in for 5"));
    let timeline = referee.timeline();
    assert!(matches!(
        last(&timeline),
        Kind::LiberoReplacement { team: Team::B, .. }
    ));
    referee.tap("Begin set 1");
    referee.browser().find("#half-left");
    assert!(holds(&referee.court_is_right(false), Team::B, 12));
    referee.point_for(A);
    referee.tap(&format!("More {B}"));
    referee.tap("5 in for 12");
    let timeline = referee.court_is_right(false);
    assert!(holds(&timeline, Team::B, 5) && !holds(&timeline, Team::B, 12));
    // At once in again is one rally too early: said where it would be tapped, and the first referee may still decide.
    referee.tap(&format!("More {B}"));
    referee.reads("A rally must be completed between two libero replacements.");
    referee.browser().picture("libero-too-early");
    referee.tap("12 in for 6");
    referee.tap_in("[role=dialog]", "Record it anyway");
    referee.browser().picture("libero-too-early-anyway");
    Ok(())
}

fn requests_and_delays(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    let more = format!("More {A}");
    referee.tap(&more);
    referee.tap("Improper request");
    referee.tap("Record the improper request");
    assert_eq!(kinds(&referee.timeline()), [SanctionKind::ImproperRequest]);
    // The second one is a delay, and the next delay costs a point.
    referee.tap(&more);
    referee.tap("Improper request");
    referee.reads_at(
        "#becomes",
        "Second improper request in this match: delay warning",
    );
    referee.tap("Record the delay warning");
    referee.tap(&more);
    referee.tap("Other delay");
    referee.reads_at("#becomes", "Second delay in this match: delay penalty");
    referee.tap("Record the delay penalty");
    let timeline = referee.court_is_right(false);
    assert_eq!(
        kinds(&timeline),
        [
            SanctionKind::ImproperRequest,
            SanctionKind::DelayWarning,
            SanctionKind::DelayPenalty
        ]
    );
    assert_eq!(timeline.state().score().b, 1);
    // One tap takes the penalty and its point back.
    referee.tap_at("#take-back");
    assert_eq!(referee.court_is_right(false).state().score().b, 0);
    Ok(())
}

fn the_ladder_of_misconduct(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(B);
    let mut sanction = |person: &str, level: &str| {
        referee.tap(&format!("More {A}"));
        referee.tap("Misconduct");
        referee.tap(person);
        // What the ladder leaves open next is marked, and no more than that.
        referee.reads_at(".button.advised", level);
        referee.tap_in(".levels", &format!("{level}, {person}"));
        referee.tap(&format!("Record the {}, {person}", level.to_lowercase()));
        referee.court_is_right(false)
    };
    sanction("number 3", "Warning");
    let timeline = sanction("number 4", "Penalty");
    assert_eq!(timeline.state().score().b, 2);
    let timeline = sanction("number 4", "Expulsion");

    assert_eq!(timeline.state().score().b, 2, "an expulsion gives no point");
    assert_eq!(
        kinds(&timeline),
        [
            SanctionKind::Misconduct(Level::Warning),
            SanctionKind::Misconduct(Level::Penalty),
            SanctionKind::Misconduct(Level::Expulsion)
        ]
    );
    // The signal is shown with it.
    referee.reads_at("#announced", "Left arm Expulsion (7)");
    // The team has to change, and the panel already knows why.
    referee.reads_at("#due", "must leave");
    referee.tap_in(".prompt", "Substitution");
    referee.tap("8 comes in");
    referee.tap("Record the substitution");
    assert!(holds(&referee.court_is_right(false), Team::A, 8));
    Ok(())
}

fn somebody_is_hurt(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    // A rally is stopped for it: no point, then what becomes of the player.
    referee.tap_at("#replay");
    referee.tap("A new rally: no point was entered");
    referee.tap("Somebody hurt");
    referee.reads_at("#care-steps", "Stop play at once.");
    referee.tap_in(".panel", B);
    referee.tap("Number 4");
    let timeline = referee.timeline();
    assert!(
        matches!(last(&timeline), Kind::Replay { hurt: Some(by), .. } if by.number == Some(Shirt(4)))
    );
    referee.reads_at("#care-steps", "Nobody comes back without clearance");
    referee.tap("7 in for 4");
    let timeline = referee.court_is_right(false);
    assert!(holds(&timeline, Team::B, 7));
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (1, 0));

    // Those who do not see the score hear it again when a point is taken back.
    referee.point_for(B);
    referee.reads_at("#news", &format!("{A} 1, {B} 1"));
    referee.tap_at("#take-back");
    referee.reads_at("#news", &format!("{A} 1, {B} 0"));
    // Whoever went out hurt is remembered; whoever changes already is not asked about again.
    referee.point_for(B);
    referee.tap(&format!("Substitution {B}, 1 of 6 used"));
    referee.tap("7 goes out");
    referee.tap("4 comes in");
    referee.reads("Number 4 was hurt or ill in this match.");
    referee.reads("Somebody else as well?");
    let panel = referee.browser().text(".panel");
    assert!(!panel.contains("named twice"), "{panel}");
    referee.browser().picture("comes-back-after-an-injury");
    referee.tap_at("#panel-close");

    // Somebody who does not play: the same care, and play can be interrupted.
    referee.tap(&format!("More {A}"));
    referee.tap("Somebody hurt");
    referee.tap("Not a player");
    referee.reads_at("#care-steps", "Nobody comes back without clearance");
    referee.tap("Interrupt play");
    referee.tap("Interrupt play now");
    assert_eq!(referee.timeline().state().phase(), Phase::Suspended);
    referee.tap("Resume on this court");
    assert_eq!(
        referee.court_is_right(false).state().phase(),
        Phase::Playing
    );
    Ok(())
}

fn a_wrong_server_found_late(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    for team in [A, B, B, B] {
        referee.point_for(team);
    }
    let before = referee.timeline();
    referee.tap(&format!("More {B}"));
    referee.tap("Fault found late");
    referee.tap("Wrong server");
    referee.tap("Since 1:1");
    // What becomes of it stands there before anything is written.
    referee.reads_at("#consequence", "2 points of Herons are cancelled");
    referee.reads_at("#consequence", "Score 1:3 becomes 2:1");
    assert_eq!(referee.timeline().entries(), before.entries());
    referee.tap("Record the fault");
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (2, 1));
    assert!(matches!(last(&timeline), Kind::LateFault(_)));
    Ok(())
}

fn play_is_interrupted(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.points(&[Side::Left; 5], 50);
    referee.tap("Menu");
    referee.tap("Interrupt play");
    referee.tap("Light");
    referee.reads("Play is interrupted");
    // A point cannot be made meanwhile.
    let stopped = referee.timeline();
    referee.point(Side::Left);
    assert_eq!(referee.timeline().entries(), stopped.entries());
    referee.tap_in("[role=dialog]", "Cancel");
    referee.tap("Resume on another court");
    referee.reads_at("#consequence", "Score 5:0 becomes 0:0");
    referee.tap("Play this set again on the other court");
    referee.tap("Last check");
    assert_eq!(referee.timeline().state().score().a, 0);
    referee.tap("Begin set 1");
    referee.browser().find("#half-left");
    assert_eq!(
        referee.court_is_right(false).state().phase(),
        Phase::Playing
    );
    Ok(())
}

fn a_team_that_cannot_go_on(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(B);
    referee.tap(&format!("More {B}"));
    referee.tap("Incomplete or default");
    referee.tap("Incomplete, this set");
    referee.reads_at("#consequence", "Otters win set 1, 25:1");
    referee.tap(&format!("{B} lose this set"));
    referee.reads("Otters win set 1, 25:1");
    referee.reads_at(".interval", "At 0:30 whistle the teams back.");
    // Between the sets: the rest of the match as well.
    referee.tap(&format!("More {B}"));
    referee.tap("Incomplete or default");
    referee.tap("Not there or refuses");
    referee.tap(&format!("{B} lose the match by default"));
    referee.reads("Otters win 3:0");
    let timeline = referee.timeline();
    assert_eq!(timeline.state().phase(), Phase::Finished);
    // After the match a remark still finds its way onto the sheet.
    referee.tap(&format!("More {B}"));
    let field = referee.browser().find_named("Remark for the sheet");
    referee.browser().write(&field, "The bus had to leave.");
    referee.tap("Add remark");
    referee.tap("To the sheet");
    referee.reads_at(".sheet-remarks", "The bus had to leave.");
    Ok(())
}

fn a_replay_and_a_remark(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(B);
    let before = referee.court();
    // A new rally: nobody has a point for it.
    referee.tap_at("#replay");
    assert!(!referee.sees("Something on court"), "first, which rally");
    referee.tap("A new rally: no point was entered");
    referee.tap("Something on court");
    assert_eq!(referee.court(), before, "no point, the same server");
    let timeline = referee.court_is_right(false);
    assert!(matches!(last(&timeline), Kind::Replay { rally: None, .. }));
    referee.tap_at("#take-back");
    // The last one: its point goes with one entry, and one tap brings it back.
    referee.point_for(A);
    referee.reason("Net", "Net touch");
    let point = referee.court();
    referee.tap_at("#replay");
    referee.tap("This rally (1:1): its point is cancelled");
    referee.reads_at("#follows", "Score 1:1 becomes 0:1");
    referee.browser().picture("replay-last-rally");
    referee.tap("Both teams at fault");
    assert_eq!(referee.court(), before, "score and service go back");
    let timeline = referee.court_is_right(false);
    assert!(matches!(
        last(&timeline),
        Kind::Replay { rally: Some(_), .. }
    ));
    referee.tap_at("#take-back");
    assert_eq!(referee.court(), point);
    referee.tap_at("#take-back");
    referee.tap_at("#take-back");
    referee.tap(&format!("More {A}"));
    let field = referee.browser().find_named("Remark for the sheet");
    referee.browser().write(&field, "Ball from the next court");
    referee.tap("Add remark");
    referee.reads_at("#last-entry", "Ball from the next court");
    Ok(())
}

fn the_service_clock(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    assert!(
        !referee.sees("Whistle: start"),
        "off unless somebody wants it"
    );
    referee.tap("Menu");
    referee.tap("Service clock, 8 seconds: off");
    referee.tap("Close");
    referee.tap("Whistle: start");
    referee.reads_at(".service", "s to serve");
    let before = referee.timeline();
    // A point ends it, and it has left nothing in the log.
    referee.point(Side::Left);
    referee.browser().wait_until(
        "the clock is quiet",
        "document.querySelector('.service-left').innerText === ''",
    );
    assert_eq!(
        referee.timeline().entries().len(),
        before.entries().len() + 1
    );
    Ok(())
}

fn only_the_court(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.tap("Menu");
    referee.tap("Large court");
    referee.browser().find(".floor.glance");
    referee.point(Side::Right);
    let timeline = referee.timeline();
    assert_eq!(timeline.state().score().b, 1);
    referee.reads_at("#half-right .half-score", "1");
    referee.reads_at("#half-right .half-serves", "2 serves");
    // Two figures take the width of their half, for eyes 70 cm away.
    let share = referee.browser().value(
        "(() => { const at = (css) => document.querySelector('#half-right' + css);
           return parseFloat(getComputedStyle(at(' .half-score')).fontSize) / at('').clientWidth; })()",
    );
    assert!(share.as_f64().is_some_and(|share| share > 0.65), "{share}");
    referee.tap_at("#take-back");
    assert_eq!(referee.timeline().state().score().b, 0);
    referee.tap_at("#whole");
    referee.court_is_right(false);
    Ok(())
}

fn a_tally_grows(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#quick-tally");
    referee.points(&[Side::Left, Side::Right, Side::Right], 50);
    // A wrong server is found late here as well.
    referee.tap("More Team B");
    referee.tap("Fault found late");
    referee.tap("Wrong server");
    referee.tap("Since 1:1");
    referee.reads_at("#consequence", "Score 1:2 becomes 2:1");
    referee.tap("Record the fault");
    let timeline = referee.court_is_right(false);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (2, 1));

    referee.tap("Menu");
    referee.tap("Name the teams");
    let field = referee.browser().find("#name-A");
    referee.browser().write(&field, A);
    referee.tap("Save names");
    referee.reads_at("#half-left .half-name", A);
    referee.tap("Menu");
    referee.tap("Make it a full match");
    referee.tap("School, juniors");
    referee.tap_at("#make-it");
    let grown = referee.court_is_right(false);
    assert_eq!(grown.state().score(), score, "every point stays");
    assert!(grown.state().rules().line_ups);
    Ok(())
}

fn a_reason_names_the_signals(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point(Side::Right);
    referee.reason("Hits", "Four hits");
    let steps = "[...document.querySelectorAll('.signal-step')].map((e) => e.innerText.replace(/\\s+/g, ' ').trim())";
    assert_eq!(
        referee.browser().value(steps),
        serde_json::json!([
            "1 Whistle",
            "2 Right arm Herons to serve",
            "3 Left arm Four hits (18)"
        ])
    );
    referee.tap("It was number 4");
    referee.browser().wait_until(
        "the number is the last step",
        &format!("{steps}[3]?.startsWith('4')"),
    );
    let timeline = referee.court_is_right(false);
    let entry = timeline.last_rally().expect("a rally").n;
    let by = timeline.state().said(entry).and_then(|said| said.by);
    assert_eq!(by.and_then(|by| by.number), Some(Shirt(4)));
    // The second referee shows the fault first, on the other side of the net.
    referee.tap("Seen from the stand. Turn the court for the table");
    referee.browser().wait_until(
        "the order is the second referee's",
        &format!("{steps}[1] === '2 Right arm Four hits (18)' && {steps}[3] === '4 Left arm Herons to serve'"),
    );
    // Skipping is free: the next point takes its place.
    referee.point(Side::Left);
    referee.browser().wait_until(
        "the card is gone",
        "document.querySelector('.signal-step') === null",
    );
    Ok(())
}

/// A libero's attack and a libero's block have signals of their own (21 and 12), and a player outside the court
/// has the signal of the lines (22), either team's; a time-out takes both arms.
fn a_fault_of_the_libero(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    let steps = "[...document.querySelectorAll('.signal-step')].map((e) => e.innerText.replace(/\\s+/g, ' ').trim())";
    let says = |referee: &mut Referee, step: &str| {
        let there = format!("{steps}.includes({})", serde_json::json!(step));
        referee.browser().wait_until(step, &there);
    };
    referee.point(Side::Right);
    referee.reason("Places", "Libero fault");
    says(&mut referee, "3 Left arm Attack-hit fault (21)");
    referee.reads("What did the libero do?");
    referee.browser().picture("libero-which-phone");
    referee.tap("Blocked or tried to block: signal 12");
    says(&mut referee, "3 Both arms Block fault or screen (12)");
    let timeline = referee.court_is_right(false);
    let entry = timeline.last_rally().expect("a rally").n;
    let said = timeline.state().said(entry).expect("a reason");
    assert_eq!(said.cause.code(), "block_fault");
    // Either team's player other than the server: B served and lost, so its server is not offered.
    referee.point(Side::Left);
    referee.reason("Places", "Outside court");
    says(&mut referee, "3 Right arm Line fault or under the net (22)");
    assert!(
        !referee.sees("It was number 2"),
        "the server may stand outside"
    );
    referee.tap("It was number 4");
    referee.browser().picture("outside-court-phone");
    let timeline = referee.court_is_right(false);
    let entry = timeline.last_rally().expect("a rally").n;
    let said = timeline.state().said(entry).expect("a reason");
    assert_eq!(said.cause.code(), "outside_court");
    assert_eq!(said.by.and_then(|by| by.number), Some(Shirt(4)));
    referee.tap(&format!("Time-out {A}, 0 of 2 used"));
    referee.reads_at("#announced", "Both arms Time-out (4)");
    Ok(())
}

fn every_signal_can_be_learned(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    referee.tap_at("#to-signals");
    referee.browser().wait_until(
        "every signal is drawn",
        "document.querySelectorAll('.signal-list .figure svg').length === 27",
    );
    referee.tap_at("#learn");
    let mut seen = std::collections::BTreeSet::new();
    for _ in 0..27 {
        referee.reads("Which signal is this?");
        referee.tap("What is it?");
        seen.insert(referee.browser().text(".signal-meaning h2"));
        referee.tap("Next signal");
    }
    assert_eq!(seen.len(), 27, "each comes once: {seen:?}");
    // Whoever wants less motion sees where it begins and where it gets to.
    referee.tap("All signals");
    referee.tap("16 Catch");
    let shown = "[...document.querySelectorAll('.signal-look .figure svg')].filter((e) => e.checkVisibility()).map((e) => e.classList[0])";
    assert_eq!(
        referee.browser().value(shown),
        serde_json::json!(["moving"])
    );
    referee.browser().cdp(
        "Emulation.setEmulatedMedia",
        serde_json::json!({ "features": [{ "name": "prefers-reduced-motion", "value": "reduce" }] }),
    );
    assert_eq!(
        referee.browser().value(shown),
        serde_json::json!(["still", "still"])
    );
    Ok(())
}
