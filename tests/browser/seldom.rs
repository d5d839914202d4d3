//! What happens seldom, each by its real buttons: players who are not those of the line-up, a libero who comes
//! late, a tally that becomes a match without a toss, the end of a set by the clock.

use game::entry::{Amendment, Change, Kind};
use game::{Entry, Phase, SanctionKind};
use rules::{Preset, Score, SetLimit, Shirt, Team};

use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::support::{heading, list, numbered, run};
use crate::{Ran, Test, BOTH};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "other_players_on_court_are_put_right_or_kept_before_the_set",
        engines: BOTH,
        run: other_players_on_court,
    },
    Test {
        name: "a_late_libero_replacement_is_let_pass_once",
        engines: BOTH,
        run: a_late_libero_replacement,
    },
    Test {
        name: "a_tally_becomes_a_match_with_the_first_service_as_seen",
        engines: BOTH,
        run: the_first_service_as_seen,
    },
    Test {
        name: "time_up_ends_a_set_or_leaves_one_rally",
        engines: BOTH,
        run: time_up,
    },
];

fn last(entries: &[Entry]) -> Kind {
    entries.last().expect("an entry").kind.clone()
}

/// Official Volleyball Rules 2025-2028, 7.3.5.1 and 7.3.5.2.
fn other_players_on_court(stage: &mut Stage) -> Ran {
    let mut entries = begun();
    let begins = |e: &Entry| e.kind == Kind::BeginSet;
    entries.truncate(entries.iter().position(begins).expect("a set begins"));
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("others", entries);
    referee.tap("Last check");
    let dialog = "[role=dialog]";
    let found = |team, changes: &[(u16, u16)], kept| Kind::Discrepancy {
        team,
        changes: changes
            .iter()
            .map(|&(out, into)| Change {
                out: Shirt(out),
                into: Shirt(into),
            })
            .collect(),
        kept,
    };

    // The right players at wrong places.
    referee.tap("Other players are on court");
    referee.tap_in(dialog, A);
    referee.tap("Right players, wrong places: corrected");
    let timeline = referee.timeline();
    assert_eq!(last(timeline.entries()), found(Team::A, &[], false));

    // 7.3.5.1: put right, and it costs nothing.
    referee.tap("Other players are on court");
    referee.tap_in(dialog, A);
    referee.tap("1 is not on court");
    referee.tap("7 stands there");
    referee.browser().picture("others-on-court");
    referee.tap("Corrected, no sanction");
    let timeline = referee.timeline();
    assert_eq!(last(timeline.entries()), found(Team::A, &[(1, 7)], false));

    // 7.3.5.2: the coach keeps the player. A second press of the same button records nothing more.
    referee.tap("Other players are on court");
    referee.tap_in(dialog, B);
    referee.tap("2 is not on court");
    referee.tap("8 stands there");
    let keeps = referee
        .browser()
        .find_named("The coach keeps the player: a substitution");
    referee.browser().tap_twice(&keeps, 150);
    let kept = referee.timeline();
    assert_eq!(last(kept.entries()), found(Team::B, &[(2, 8)], true));
    assert_eq!(kept.entries().len(), timeline.entries().len() + 1);

    // The next button lies under the same finger: what comes within a moment still belongs to the press before.
    std::thread::sleep(std::time::Duration::from_millis(400));
    referee.tap_at("#begin-set");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    let court = referee.court();
    assert_eq!(court[0].places, [1, 2, 3, 4, 5, 6]);
    assert_eq!(court[1].places, [1, 8, 3, 4, 5, 6]);
    assert!(timeline.state().sanctions().is_empty());
    assert!(referee.sees(&format!("Substitution {A}, 0 of 6 used")));
    assert!(referee.sees(&format!("Substitution {B}, 1 of 6 used")));
    // 7.3.5.3: from now on it is a fault, which is found another way.
    assert!(!referee.sees("Other players are on court"));
    Ok(())
}

/// Official Volleyball Rules 2025-2028, 19.3.2.5 and 19.3.2.6.
fn a_late_libero_replacement(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("late-libero", begun());
    referee.browser().find("#half-left");
    let more = format!("More {B}");
    let late = Kind::LateReplacement { team: Team::B };

    // 19.3.2.5: the first one is let pass.
    referee.tap(&more);
    referee.tap("12 in for 5");
    referee.tap(&more);
    referee.browser().find("#panel-title");
    referee.browser().picture("late-libero-more");
    referee.tap("Late libero");
    referee.reads_at(
        "#consequence",
        "It is allowed this time. Tell the game captain",
    );
    referee.browser().picture("late-libero-first");
    referee.tap_at("#make-it");
    let timeline = referee.court_is_right(false);
    assert_eq!(last(timeline.entries()), late);
    assert!(timeline.state().sanctions().is_empty());
    assert_eq!(referee.court()[1].places, [1, 2, 3, 4, 12, 6]);

    // A rally later nothing was replaced, so nothing was late.
    referee.point(Side::Left);
    referee.tap(&more);
    referee.browser().find("#panel-title");
    assert!(!referee.sees("Late libero"));

    // 19.3.2.6: the next one is a delay, and the replacement stands.
    referee.tap("5 in for 12");
    referee.tap(&more);
    referee.tap("Late libero");
    referee.reads_at("#consequence", "First delay in this match: delay warning");
    referee.browser().picture("late-libero-again");
    let record = referee.browser().find("#make-it");
    referee.browser().tap_twice(&record, 150);
    let timeline = referee.court_is_right(false);
    assert_eq!(last(timeline.entries()), late);
    let sanctions: Vec<_> = timeline
        .state()
        .sanctions()
        .iter()
        .map(|one| (one.team, one.kind))
        .collect();
    assert_eq!(sanctions, [(Team::B, SanctionKind::DelayWarning)]);
    assert_eq!(referee.court()[1].places, [1, 2, 3, 4, 5, 6]);
    let score = timeline.state().score();
    assert_eq!((score.a, score.b), (1, 0), "a warning gives no point");
    Ok(())
}

/// No rule of the book speaks of it; the form is the project's (`Kind::FirstService`).
fn the_first_service_as_seen(stage: &mut Stage) -> Ran {
    let rules = Preset::SchoolJunior.rules();
    let grown = Amendment {
        rules: Some(rules),
        ..Amendment::default()
    };
    let mut kinds = vec![heading(Preset::Tally.rules()), Kind::BeginSet];
    kinds.extend(run(&"A".repeat(25)));
    kinds.push(Kind::Heading(Box::new(grown)));
    kinds.push(list(Team::A, 8, &[]));
    kinds.push(list(Team::B, 8, &[]));
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("as-seen", numbered(kinds));
    referee.reads("Sets were played here without a toss. Enter what you see on court.");
    referee.tap_in(".toss fieldset:nth-of-type(1)", B);
    referee.tap_in(".toss fieldset:nth-of-type(2)", A);
    // Nobody tossed, so nobody is asked who chose.
    assert!(!referee.sees(&format!("{A} chose to receive.")));
    referee.browser().picture("first-service-as-seen");
    referee.tap("Record who serves");
    let timeline = referee.timeline();
    let seen = Kind::FirstService {
        team: Team::B,
        left: Team::A,
    };
    assert_eq!(last(timeline.entries()), seen);
    assert!(timeline.state().opener_to_come() == Some(Team::B));

    let on_court: Vec<u16> = (1..=u16::from(rules.players_on_court)).collect();
    for team in [A, B] {
        referee.line_up(team, &on_court);
    }
    referee.tap_at("#begin-set");
    referee.browser().find("#half-left");
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().serving(), Some((Team::B, Some(Shirt(1)))));
    assert_eq!(referee.side_of(A), Side::Left);
    referee.tap("Menu");
    referee.tap("Sheet");
    referee.reads_at(
        ".sheet-remarks",
        &format!("{B} served first, {A} stood on the left, as seen on court."),
    );
    Ok(())
}

/// Sets by the organiser's clock: common practice of tournaments, no source (`SetLimit::Minutes`).
fn time_up(stage: &mut Stage) -> Ran {
    let mut rules = Preset::Tally.rules();
    rules.set_limit = Some(SetLimit::Minutes(12));
    let mut kinds = vec![heading(rules), Kind::BeginSet];
    kinds.extend(run("ABBA"));
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("time-up", numbered(kinds));
    referee.browser().find("#half-left");
    let before = referee.timeline();

    // Where the teams are level one more rally decides. A line of the menu tapped by mistake ends nothing.
    let ask = |referee: &mut Referee, words: &str| {
        referee.tap("Menu");
        referee.tap("Time is up: end the set");
        referee.reads_at("[role=dialog]", words);
    };
    let level = "Time is up at 2:2. The teams are level: one more rally decides the set.";
    ask(referee, level);
    referee.browser().picture("time-up-level");
    referee.tap_in("[role=dialog]", "Cancel");
    assert_eq!(referee.timeline().entries(), before.entries());
    ask(referee, level);
    referee.tap("Yes, time is up");
    let timeline = referee.court_is_right(false);
    assert_eq!(last(timeline.entries()), Kind::TimeUp);
    assert_eq!(timeline.state().phase(), Phase::Playing);
    referee.point(Side::Right);
    referee.reads("Herons win set 1, 3:2");
    let timeline = referee.timeline();
    let sets: Vec<_> = timeline
        .state()
        .sets()
        .map(|s| (s.score, s.winner))
        .collect();
    assert_eq!(sets, [(Score { a: 2, b: 3 }, Team::B)]);

    // Whoever leads has won the set at once, and a second press gives no point in the next one.
    referee.tap_at("#begin-set");
    referee.browser().find("#half-left");
    referee.point_for(A);
    ask(referee, "Otters win the set.");
    referee.browser().picture("time-up-leads");
    let yes = referee.browser().find_named("Yes, time is up");
    referee.browser().tap_twice(&yes, 150);
    referee.reads("Otters win set 2");
    let timeline = referee.timeline();
    // The interval of this set begins with it, though that of the set before would still run.
    let (interval, before) = timeline.entries().split_last().expect("entries");
    assert!(matches!(interval.kind, Kind::Timer(_)), "{interval:?}");
    assert_eq!(last(before), Kind::TimeUp);
    assert_eq!(timeline.state().phase(), Phase::BetweenSets);
    // It can be taken back as anything else.
    referee.tap_at("#take-back");
    referee.browser().find("#half-left");
    assert_eq!(referee.timeline().state().phase(), Phase::Playing);
    Ok(())
}
