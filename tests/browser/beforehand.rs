//! What follows is said before it is done: delays, misconduct, injuries, signing and sealing, each by the
//! buttons a person presses.

use game::entry::{Check, Detail};
use game::{Entry, Kind, Level, SanctionKind, Timeline};
use rules::{Preset, Team};

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, A, B};
use crate::sealed::played;
use crate::stage::Stage;
use crate::{Ran, Test};

const CHROMIUM: &[Engine] = &[Engine::Chromium];

/// The tests of this file.
pub const TESTS: &[Test] = &[
    Test {
        name: "beforehand_a_delay_is_seen_with_its_card_before_it_is_recorded",
        engines: CHROMIUM,
        run: a_delay,
    },
    Test {
        name: "beforehand_a_rejected_request_says_what_it_becomes",
        engines: CHROMIUM,
        run: rejected_request,
    },
    Test {
        name: "beforehand_misconduct_says_what_each_level_is_for",
        engines: CHROMIUM,
        run: misconduct,
    },
    Test {
        name: "beforehand_an_injury_says_what_each_way_on_means",
        engines: CHROMIUM,
        run: injury,
    },
    Test {
        name: "beforehand_the_result_and_what_is_open_come_before_signing_and_sealing",
        engines: CHROMIUM,
        run: signing_and_sealing,
    },
    Test {
        name: "beforehand_scores_stand_as_the_court_is_drawn",
        engines: CHROMIUM,
        run: scores_as_drawn,
    },
];

/// A phone upright and a desk.
const SIZES: [(u32, u32); 2] = [(360, 740), (1180, 820)];

/// Pictures in both sizes for whoever looks at them; the phone stays.
pub fn pictures(referee: &mut Referee, name: &str) {
    for (width, height) in SIZES.into_iter().rev() {
        referee.browser().screen(width, height);
        referee.still();
        referee.browser().picture(&format!("{name}-{width}"));
    }
}

fn on_court(stage: &mut Stage) -> Referee<'_> {
    let mut referee = Referee::at(stage);
    referee.go_on_with("beforehand", begun());
    referee
}

fn kinds(referee: &mut Referee) -> Vec<SanctionKind> {
    let timeline = referee.timeline();
    let sanctions = timeline.state().sanctions().iter();
    sanctions.map(|s| s.kind).collect()
}

fn a_delay(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    let more = format!("More {A}");
    referee.tap(&more);
    referee.tap("Improper request");
    referee.reads_at(
        "#becomes",
        "First improper request in this match: only noted",
    );
    referee.reads_at(
        "#consequence",
        "Next improper request of Otters: delay warning",
    );
    pictures(&mut referee, "beforehand-improper");
    // The judgement whether it held play up is one tap away, and so is the way back.
    referee.tap("It delayed play: a delay");
    referee.reads_at(
        "#becomes",
        "First delay in this match: delay warning Yellow card on the wrist",
    );
    referee.tap("It did not delay play: improper request");
    assert_eq!(kinds(&mut referee), [], "nothing is written by looking");
    referee.tap("Record the improper request");
    referee.reads_at(
        "#last-entry",
        "Improper request Otters, the first: only noted",
    );

    referee.tap(&more);
    referee.tap("Improper request");
    referee.reads_at(
        "#becomes",
        "Second improper request in this match: delay warning Yellow card on the wrist",
    );
    referee.reads_at("#consequence", "No point, service stays");
    referee.reads_at(
        "#consequence",
        "Otters may make no more requests until the next rally is over",
    );
    pictures(&mut referee, "beforehand-second-improper");
    referee.tap("Record the delay warning");
    referee.reads_at(
        "#last-entry",
        "Delay warning Otters, second improper request",
    );

    referee.tap(&more);
    referee.tap("Other delay");
    referee.reads_at(
        "#becomes",
        "Second delay in this match: delay penalty Red card on the wrist",
    );
    referee.reads_at("#consequence", "Point and service to Herons");
    referee.reads_at("#consequence", "Score 1:0 becomes 1:1");
    pictures(&mut referee, "beforehand-delay-penalty");
    assert_eq!(referee.timeline().state().score().b, 0);
    referee.tap("Record the delay penalty");
    referee.reads_at(
        "#last-entry",
        "Delay penalty Otters: point and service to Herons",
    );
    let timeline = referee.court_is_right(false);
    assert_eq!(timeline.state().score().b, 1);
    assert_eq!(
        kinds(&mut referee),
        [
            SanctionKind::ImproperRequest,
            SanctionKind::DelayWarning,
            SanctionKind::DelayPenalty
        ]
    );
    // In the log and on the sheet they stand as what they were.
    referee.tap("Menu");
    referee.tap("Match log");
    referee.reads("Delay warning Otters, second improper request");
    Ok(())
}

fn rejected_request(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    for used in 0..2 {
        referee.tap(&format!("Time-out {A}, {used} of 2 used"));
        referee.reads_at("#last-entry", "Time-out Otters");
    }
    // The third one is beyond what a team may take (15.11.1).
    referee.tap_at("#time-out-left");
    referee.reads_at(
        "#right-act-becomes",
        "First improper request in this match: only noted No card. No point, service stays",
    );
    pictures(&mut referee, "beforehand-rejected");
    referee.tap_at("#right-act");
    referee.reads_at(
        "#last-entry",
        "Improper request Otters, the first: only noted",
    );
    assert_eq!(kinds(&mut referee), [SanctionKind::ImproperRequest]);
    Ok(())
}

fn misconduct(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(B);
    let open = |referee: &mut Referee, person: &str| {
        referee.tap(&format!("More {A}"));
        referee.tap("Misconduct");
        referee.tap(person);
    };
    open(&mut referee, "number 3");
    let levels = [
        (
            "Warning",
            "Minor misconduct that goes on after a word through the game captain",
        ),
        ("Penalty", "Rude: against good manners"),
        ("Expulsion", "Offensive: insult or contempt"),
        ("Disqualification", "Aggressive: an attack or a threat"),
    ];
    for (level, what) in levels {
        referee.reads_at(&format!("[aria-label='{level}, number 3']"), what);
    }
    referee.reads_at(
        "[aria-label='Penalty, number 3']",
        "Red card. Point and service to Herons",
    );
    pictures(&mut referee, "beforehand-levels");
    for (level, _) in levels {
        referee.tap_in(".levels", &format!("{level}, number 3"));
        referee.reads_at("#becomes", &format!("{level}, number 3"));
        pictures(
            &mut referee,
            &format!("beforehand-{}", level.to_lowercase()),
        );
        referee.tap("Another level");
    }
    assert_eq!(kinds(&mut referee), [], "nothing is written by looking");
    referee.tap_in(".levels", "Penalty, number 3");
    referee.reads_at("#consequence", "Point and service to Herons");
    referee.reads_at("#consequence", "Next for number 3: expulsion");
    referee.tap("Record the penalty, number 3");
    referee.court_is_right(false);

    // The ladder of this person goes on, that of the others does not.
    open(&mut referee, "number 3");
    referee.reads_at(".button.advised", "Expulsion next step");
    referee.reads_at(
        "[aria-label='Expulsion, number 3']",
        "Minor misconduct again; rude again; offensive: insult or contempt",
    );
    // What is not open says why where it stands.
    referee.reads_at("[aria-label='Penalty, number 3'].barred", "heavier");
    pictures(&mut referee, "beforehand-levels-again");
    referee.tap_in(".levels", "Expulsion, number 3");
    referee.reads_at("#consequence", "Number 3 is substituted at once");
    referee.reads_at(
        "#consequence",
        "Goes to the team's dressing room for the rest of the set",
    );
    referee.reads_at("#consequence", "Next for number 3: disqualification");
    referee.reads("A young person does not wait alone");
    referee.tap("Record the expulsion, number 3");
    assert_eq!(
        kinds(&mut referee),
        [Level::Penalty, Level::Expulsion].map(SanctionKind::Misconduct)
    );
    referee.reads_at("#due", "must leave");
    Ok(())
}

fn injury(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    referee.point_for(A);
    let hurt = |referee: &mut Referee, number: &str| {
        referee.tap(&format!("More {A}"));
        referee.tap("Somebody hurt");
        referee.reads_at("#care-steps", "Stop play at once.");
        referee.tap(number);
    };
    hurt(&mut referee, "Number 4");
    referee.reads_at(
        "#care-steps",
        "Nobody comes back without clearance by a licensed medical person",
    );
    referee.reads(
        "Regular substitution: number 4 may come back in this set, if cleared to play. It counts as one of the \
         set's substitutions.",
    );
    pictures(&mut referee, "beforehand-injury");
    referee.tap("7 in for 4");
    hurt(&mut referee, "Number 7");
    referee.reads("Regular substitution: number 7 may come back in the next set, if cleared to play, not in this one.");
    referee.tap("4 in for 7");
    hurt(&mut referee, "Number 4");
    referee.reads(
        "Exceptional substitution: number 4 may not come back in this match. It does not count as one of \
         the set's substitutions.",
    );
    pictures(&mut referee, "beforehand-injury-exceptional");
    referee.tap("8 in for 4");
    let timeline = referee.court_is_right(false);
    let play = timeline.state().play().expect("a set");
    let side = &play.sides[Team::A];
    assert_eq!((side.substitutions, side.exceptional), (2, 1));
    assert!(matches!(
        timeline.last_standing().map(|e| &e.kind),
        Some(Kind::Substitution { .. })
    ));
    Ok(())
}

fn signing_and_sealing(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let mut entries = played(Preset::SchoolJunior, 3);
    // A check failed and nobody cleared it; the hall is not named.
    for entry in &mut entries {
        match &mut entry.kind {
            Kind::Match(heading) => heading.details[Detail::Venue] = None,
            Kind::Heading(given) => given.details[Detail::Venue] = None,
            _ => {}
        }
    }
    let n = entries.len() as u32 + 1;
    let check = Check {
        item: "net".into(),
        ok: false,
        note: None,
    };
    let at = entries.last().and_then(|e| e.at);
    entries.push(Entry {
        at,
        ..Entry::new(n, Kind::Check(check))
    });
    let timeline = Timeline::of(entries.clone());
    let result = timeline.state().sets_won();
    referee.go_on_with("to-close", entries);
    referee.reads_at("#result", &format!("{}", result.a.max(result.b)));
    let first = timeline
        .state()
        .sets()
        .next()
        .expect("a set")
        .score
        .marked();
    referee.reads_at("#result", &format!("Set 1 {first}"));
    referee.reads_at(
        "#still-open",
        "This check failed and nobody cleared it: net.",
    );
    referee.reads_at("#still-open", "The hall is not named.");
    pictures(&mut referee, "beforehand-closing");
    // The result stands again before the name is given.
    referee.tap("Scorer: not signed");
    referee.reads_at(".drawer #result", &format!("Set 1 {first}"));
    referee.reads_at(".drawer", "still open");
    pictures(&mut referee, "beforehand-signing");
    referee.tap_in(".drawer", "Save signature");
    referee.reads("Scorer: signed");
    // Each has its way.
    referee.tap("All good now: This check failed and nobody cleared it: net.");
    let field = referee.browser().find("#closing-field");
    referee.browser().write(&field, "M. Teal, coach");
    referee.tap_in(".drawer", "Clear the check");
    referee.tap("Complete it: The hall is not named.");
    let field = referee.browser().find_named("Hall");
    referee.browser().write(&field, "North hall");
    referee.tap_in(".drawer", "Save changes");
    referee.browser().wait_until(
        "both are put right",
        "!/(net\\.|hall is not named)/.test(document.querySelector('#still-open')?.innerText ?? '')",
    );
    // Sealing anyway is possible, and is said.
    referee.reads("You can seal anyway. The sheet will say what was open.");
    pictures(&mut referee, "beforehand-sealing");
    referee.tap("Seal anyway");
    referee.reads_at(".sheet-seal", "Sealed although this was open:");
    referee.reads_at(".sheet-seal", "The first referee has not signed.");
    pictures(&mut referee, "beforehand-sealed-anyway");
    Ok(())
}

fn scores_as_drawn(stage: &mut Stage) -> Ran {
    let mut referee = on_court(stage);
    for team in [A, B, B, B] {
        referee.point_for(team);
    }
    // Turned for the table, team B stands in the left half.
    referee.tap_at("#turn");
    referee.court_is_right(true);
    referee.tap(&format!("More {B}"));
    referee.tap("Fault found late");
    referee.tap("Wrong server");
    referee.tap("Since 1:1");
    referee.reads_at("#consequence", "Score 3:1 becomes 1:2");
    referee.reads_at("#moments", "2:1");
    referee.tap_at("#panel-close");
    // The score on the lock is in the same order, also for whoever listens.
    referee.tap("Menu");
    referee.tap("Lock");
    referee.reads_at("#locked .visually-hidden", "Herons 3 : 1 Otters");
    referee.tap("Unlock, corner 1");
    referee.tap("Unlock, corner 2");
    // Away from the court it carries the letters.
    referee.tap("Menu");
    referee.tap("Match log");
    referee.reads_at(".log", "A 1:3 B");
    Ok(())
}
