//! Who speaks for a team is asked for below the court and never in the way, a protest is announced and
//! written, and the words are those of the rules in force.

use game::entry::{Change, Protested};
use game::{speaker, Entry, Kind, Speaker};
use rules::{Preset, Rules, Shirt, Team};
use serde_json::json;

use crate::driver::Engine;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::support::{numbered, opening, run};
use crate::{Ran, Test, ALL};

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "a_game_captain_is_asked_for_and_never_in_the_way",
        engines: ALL,
        run: asked_for,
    },
    Test {
        name: "a_protest_is_announced_and_written_on_the_sheet",
        engines: &[Engine::Chromium],
        run: protest,
    },
    Test {
        name: "the_court_speaks_by_the_rules_in_force",
        engines: &[Engine::Chromium],
        run: rules_in_force,
    },
    Test {
        name: "the_court_speaks_of_liberos_where_there_are_some",
        engines: &[Engine::Chromium],
        run: with_a_libero,
    },
];

/// A match that has begun; number 1 is captain of both, and no coach is on the lists.
fn begun(rules: Rules) -> Vec<Entry> {
    let mut kinds = opening(rules);
    // The set has begun by now.
    kinds.extend(run("AB"));
    numbered(kinds)
}

/// What a half says to those who do not see it.
fn said(referee: &mut Referee, side: &str) -> String {
    referee.browser().text(&format!("#half-{side}-said"))
}

/// Whether the prompt lies over a half.
fn covers(referee: &mut Referee) -> bool {
    let found = referee.browser().run(
        "const box = css => document.querySelector(css).getBoundingClientRect();
         const prompt = box('.asks-captain');
         return ['#half-left', '#half-right'].some(half => {
             const of = box(half);
             return prompt.top < of.bottom && of.top < prompt.bottom
                 && prompt.left < of.right && of.left < prompt.right;
         });",
        json!([]),
    );
    found.as_bool().expect("a yes or no")
}

fn change(referee: &mut Referee, used: u8, out: u16, into: u16) {
    referee.tap(&format!("Substitution {A}, {used} of 6 used"));
    referee.tap(&format!("{out} goes out"));
    referee.tap(&format!("{into} comes in"));
    referee.tap_at("#record-change");
}

fn asked_for(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("captains", begun(Preset::International.rules()));
    referee.browser().find("#half-left");
    assert!(said(referee, "left").ends_with(", captain 1"));

    // Nobody of the lists is a coach: the panel says who requests (5.1.2.3).
    referee.tap(&format!("Substitution {A}, 0 of 6 used"));
    referee.reads(&format!(
        "No coach is listed for {A}. The game captain, number 1, makes the requests."
    ));
    referee.tap_at("#panel-close");

    change(referee, 0, 1, 7);
    referee.reads_at(".asks-captain", "captain 1 is off");
    for (width, height) in [(360, 740), (320, 568), (740, 360), (1280, 800)] {
        referee.browser().screen(width, height);
        assert!(!covers(referee), "{width}x{height}");
        referee.browser().picture(&format!("game-captain-{width}"));
    }
    referee.browser().screen(360, 740);
    // It waits, and a point is a point.
    referee.point(Side::Right);
    referee.reads_at(".asks-captain", "captain 1 is off");
    referee.tap(&format!("Choose one {A}"));
    referee.browser().picture("game-captain-panel");
    // The court answers the question.
    referee.tap_player(Side::Left, 2);
    let timeline = referee.timeline();
    let state = timeline.state();
    assert_eq!(
        speaker(state, Team::A),
        Some(Speaker::GameCaptain(Shirt(2)))
    );
    assert_eq!(
        speaker(state, Team::B),
        Some(Speaker::TeamCaptain(Shirt(1)))
    );
    assert!(said(referee, "left").ends_with(", game captain 2"));
    let marked = referee.browser().text("#half-left .spot.speaks");
    assert_eq!(marked.trim(), "2");
    referee.browser().picture("game-captain-named");

    // The captain is back, then off again: whoever spoke before is one tap away.
    referee.point(Side::Left);
    change(referee, 1, 7, 1);
    assert!(said(referee, "left").ends_with(", captain 1"));
    referee.tap(&format!("More {A}"));
    referee.tap("Game captain");
    referee.reads("Captain 1 is on court and speaks for the team.");
    referee.tap_at("#panel-close");
    Ok(())
}

/// Three sets to nothing, with a protest of the Herons.
fn over() -> Vec<Entry> {
    let rules = Preset::International.rules();
    let mut kinds = opening(rules);
    kinds.extend(run("AAB"));
    kinds.push(Kind::Protest {
        team: Team::B,
        number: None,
        text: "touched block".into(),
    });
    kinds.extend(run(&"A".repeat(23)));
    for _ in 0..2 {
        kinds.extend(crate::support::set_begins(&rules));
        kinds.extend(run(&"A".repeat(25)));
    }
    numbered(kinds)
}

fn protest(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    referee.go_on_with("protest", begun(Preset::International.rules()));
    referee.browser().find("#half-left");
    referee.tap(&format!("More {B}"));
    referee.tap("Protest");
    referee.reads("Announced by the game captain, number 1.");
    let field = referee.browser().find("#protest-about");
    referee.browser().write(&field, "touched block");
    referee.browser().picture("protest");
    // What is half typed outlives the way back and a reload, and belongs to one team.
    referee.tap("Back");
    referee.stage.reload();
    referee.tap_at("#continue");
    for (team, words) in [(A, ""), (B, "touched block")] {
        referee.tap(&format!("More {team}"));
        referee.tap("Protest");
        assert_eq!(typed(referee, "#protest-about"), words);
        if team == A {
            referee.tap("Close");
        }
    }
    referee.tap("Record the protest");
    referee.tap(&format!("More {B}"));
    referee.tap("Protest");
    assert_eq!(
        typed(referee, "#protest-about"),
        "",
        "it stands in the log now"
    );
    referee.tap("Close");
    let timeline = referee.timeline();
    let announced = &timeline.state().protests()[0];
    assert_eq!(
        (announced.team, announced.number),
        (Team::B, Some(Shirt(1)))
    );
    assert_eq!(announced.text, "touched block");
    referee.tap("Menu");
    referee.tap("Match log");
    referee.reads(&format!("Protest announced by {B}: touched block"));
    referee.tap("Back");

    // After a match it is written, or said that it was not.
    referee.tap("Back");
    referee.go_on_with("over", over());
    let open =
        format!("{B} announced a protest, but nothing was written about it after the match.");
    referee.reads(&open);
    referee.tap(&format!("Write the protest: {open}"));
    let field = referee.browser().find("#closing-field");
    referee.browser().write(&field, "It had touched the block");
    referee.tap_in(".drawer", "Write the protest");
    referee.reads_at(".sheet-remarks", "Protest as written after the match");
    referee.browser().picture("protest-written");
    let timeline = referee.timeline();
    let written = timeline.state().protests()[0].written.clone();
    assert_eq!(
        written.map(|w| w.1),
        Some("It had touched the block".into())
    );
    let made = &timeline.entries().last().expect("an entry").kind;
    let about = Protested::Entry(timeline.state().protests()[0].entry);
    assert!(matches!(made, Kind::ProtestStatement { about: of, .. } if *of == about));
    Ok(())
}

/// What stands in a field.
fn typed(referee: &mut Referee, css: &str) -> String {
    referee.browser().find(css);
    let typed = format!("document.querySelector('{css}').value");
    referee
        .browser()
        .value(&typed)
        .as_str()
        .expect("words")
        .to_owned()
}

/// Four on court, no libero, five seconds for the service.
fn rules_in_force(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let rules = Rules {
        players_on_court: 4,
        service_seconds: 5,
        ..Preset::SchoolJunior.rules()
    };
    referee.go_on_with("four", begun(rules));
    referee.browser().find("#half-left");
    referee.point(Side::Left);
    referee.tap_in(".groups", "Serve");
    referee.reads("Over 5 seconds");
    let no_libero = |referee: &mut Referee| {
        let page = referee.browser().text("main");
        assert!(!page.to_lowercase().contains("libero"), "{page}");
    };
    for group in ["Ball", "Hits", "Net", "Serve", "Places"] {
        referee.tap_in(".groups", group);
        no_libero(referee);
    }
    for panel in ["Fault found late", "Misconduct", "Protest"] {
        referee.tap(&format!("More {A}"));
        no_libero(referee);
        referee.tap(panel);
        no_libero(referee);
        referee.tap_at("#panel-close");
    }
    Ok(())
}

fn with_a_libero(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let mut kinds = opening(Preset::SchoolSenior.rules());
    kinds.extend(run("A"));
    kinds.push(Kind::LiberoReplacement {
        team: Team::B,
        change: Change {
            out: Shirt(5),
            into: Shirt(12),
        },
    });
    referee.go_on_with("six", numbered(kinds));
    referee.browser().find("#half-left");
    referee.tap(&format!("More {A}"));
    referee.tap("Fault found late");
    referee.reads("Illegal libero");
    Ok(())
}
