//! A match of five sets in which everything happens that can, pressed as a person presses it; what the
//! page shows then is what the desk's own program makes of the file.

use std::collections::BTreeSet;
use std::path::Path;
use std::process::Command;

use game::{Kind, Outcome, Phase, Timeline};
use rules::Team;
use serde_json::{json, Value};

use crate::driver::Engine;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::support::{code, EVERY_KIND};
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[Test {
    name: "five_sets_with_everything_are_the_same_at_the_desk",
    engines: &[Engine::Chromium],
    run: five_sets_with_everything,
}];

/// Milliseconds from tap to tap.
const QUICK: u32 = 25;

/// From the start screen to the sealed sheet.
pub fn five_sets_with_everything(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let referee = &mut referee;
    let downloads = referee.catch_downloads();
    before(referee);
    first_set(referee);
    second_set(referee);
    third_set(referee);
    fourth_set(referee);
    at_the_desk(referee, &downloads);
    fifth_set(referee);
    referee.tap("To the sheet");
    sign_and_seal(referee);
    let shown = paper(referee);
    referee.tap("Back");
    let timeline = at_the_desk(referee, &downloads);
    every_kind_but(&timeline, &["default"]);
    let file = referee.stage.scratch("match.json");
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    assert_eq!(desk_paper(referee, &file), shown, "the paper is the same");
    Ok(())
}

// ---- What is pressed.

/// From the start screen to the first service. The Herons have come with six players and a libero.
fn before(referee: &mut Referee) {
    referee.new_match("International The official rules");
    referee.all_in_order();
    referee.tap("Open");
    list(referee, A, &[1, 2, 3, 4, 5, 6, 7, 8], 3, 9);
    list(referee, B, &[11, 12, 13, 14, 15, 16], 11, 19);
    referee.tap("Next: Toss");
    referee.tossed(A, A);
    referee.tap("Next: Warm-up");
    referee.tap("Start: warm-up, Both teams");
    referee.tap("End now: warm-up, Both teams");
    referee.tap("Next: Line-ups");
    referee.line_up(A, &[1, 2, 3, 4, 5, 6]);
    referee.line_up(B, &[11, 12, 13, 14, 15, 16]);
    referee.tap("Next: Last check");
    referee.tap(&format!("{A}: 9 comes in for 5"));
    referee.tap("Begin set 1");
    referee.browser().find("#half-left");
}

/// A list with a libero, whose number was tapped in last.
fn list(referee: &mut Referee, team: &str, players: &[u16], captain: u16, libero: u16) {
    referee.tap(team);
    for number in players.iter().chain([&libero]) {
        for digit in number.to_string().chars() {
            referee.tap(&digit.to_string());
        }
        referee.tap("Add");
    }
    for (number, mark) in [(captain, "Captain"), (libero, "Libero")] {
        referee.tap(&format!("Number {number}"));
        referee.tap(mark);
    }
    referee.tap(&format!(
        "Confirm the team list ({} players)",
        players.len() + 1
    ));
    referee.reads("The team list is confirmed");
}

/// Reasons, both teams' requests, what is improper, what is delayed, conduct, remarks, what is taken
/// back and what is insisted on.
fn first_set(referee: &mut Referee) {
    referee.point_for(A);
    referee.reason("Serve", "Ace");
    referee.tap("It was number 1");
    referee.point_for(B);
    referee.reason("Hits", "Catch");
    referee.tap("Other reason");
    referee.reason("Hits", "Four hits");
    referee.tap("Second referee");

    // Both teams ask in one interruption.
    referee.tap(&format!("Time-out {B}, 0 of 2 used"));
    referee.tap("End");
    change(referee, A, 0, &[(3, 8)]);
    // It was the captain.
    referee.tap(&format!("Choose one {A}"));
    referee.tap("2 is game captain");
    referee.point_for(A);
    more(referee, A, "5 in for 9");
    more(referee, A, "Protest");
    let field = referee.browser().find("#protest-about");
    referee
        .browser()
        .write(&field, "the ball touched the block");
    referee.tap("Record the protest");

    more(referee, A, "Improper request");
    referee.tap("Record the improper request");
    more(referee, A, "Improper request");
    referee.tap("Record the delay warning");
    referee.reads_at("#announced", "Delay warning (25)");
    more(referee, B, "Other delay");
    referee.tap("Record the delay warning");
    more(referee, B, "Delaying request");
    referee.tap("Record the delay penalty");
    referee.reads_at("#announced", "Delay penalty (25)");
    sanction(referee, A, "number 2", "Warning");
    sanction(referee, A, "number 4", "Penalty");
    referee.court_is_right(false);

    // After a penalty no rally is the last: only a new one can be meant.
    referee.tap_at("#replay");
    referee.tap("Something on court");
    more(referee, A, "Misconduct");
    referee.tap_at("#panel-close");
    remark(referee, A, "Ball from the next court");

    // One time-out more than there are, recorded anyway.
    referee.point_for(B);
    referee.tap(&format!("Time-out {B}, 1 of 2 used"));
    referee.tap("End");
    referee.reads_at("#due", "no time-out left");
    referee.point_for(B);
    referee.tap(&format!("Time-out {B}, 2 of 2 used"));
    referee.tap("Record it anyway");
    let field = referee.browser().find("#insist-why");
    referee.browser().write(&field, "The table had counted one");
    referee.tap_in("[role=dialog]", "Record it anyway");
    referee.tap("End");

    // The last entry, and an older one from the list.
    referee.point_for(B);
    referee.tap_at("#take-back");
    referee.point_for(A);
    let wrong = referee.timeline().entries().len();
    referee.point_for(A);
    referee.tap("Menu");
    referee.tap("Match log");
    referee.tap(&format!("Undo entry {wrong}, Point {A}"));
    referee.reads_at("#follows", "Score");
    referee.tap_in("[role=dialog]", "Undo");
    referee.tap(&format!("Reason for entry {}, Point {A}", wrong + 1));
    referee.tap_in("[role=dialog]", "Net");
    referee.tap_in("[role=dialog]", "Net touch");
    referee.tap_in("[role=dialog]", "Close");
    referee.tap("Back");
    referee.browser().find("#half-left");
    referee.court_is_right(false);

    // Names are corrected, and the court turned for the table.
    referee.tap("Menu");
    referee.tap("Name the teams");
    let field = referee.browser().find("#name-B");
    referee.browser().write(&field, B);
    referee.tap("Save names");
    referee.tap("Seen from the stand. Turn the court for the table");
    referee.point_for(A);
    referee.court_is_right(true);
    referee.tap("Seen from the table. Turn the court for the stand");
    wins(referee, A);
    referee.reads("After set 1");
    referee.reason("Ball", "Ball out");
}

/// Both coaches are penalised in the interval, so the referee says who serves; somebody is hurt and
/// has three minutes, a libero cannot go on, a wrong server is found late, play is interrupted.
fn second_set(referee: &mut Referee) {
    for team in [A, B] {
        sanction(referee, team, "coach", "Penalty");
    }
    next_set(referee, 2);
    referee.reads_at(".prompt", "serve");
    let question = referee.browser().text(".prompt p");
    assert!(question.ends_with('?'), "{question}");
    referee.tap_at(".prompt .button");
    referee.point_for(A);

    referee.tap_at("#replay");
    referee.tap("A new rally: no point was entered");
    referee.tap("Somebody hurt");
    referee.reads_at("#care-steps", "Stop play at once.");
    referee.tap_in(".panel", B);
    referee.tap("Number 13");
    referee.tap("3 minutes to recover");
    referee.reads_at(".count-down", "3:00");
    referee.tap("End");

    more(referee, A, "New libero");
    referee.tap("7 is the libero now");
    referee.court_is_right(false);

    for team in [A, B, B, B] {
        referee.point_for(team);
    }
    let score = referee.timeline().state().score();
    more(referee, B, "Fault found late");
    referee.tap("Wrong server");
    let (a, b) = (score.a, score.b - 2);
    let since = match referee.side_of(A) {
        Side::Left => format!("Since {a}:{b}"),
        Side::Right => format!("Since {b}:{a}"),
    };
    referee.tap(&since);
    referee.reads_at("#consequence", "points of Herons are cancelled");
    referee.tap("Record the fault");
    referee.reads_at("#announced", "Position or rotation fault (13)");

    referee.tap("Menu");
    referee.tap("Interrupt play");
    referee.tap("Light");
    referee.reads("Play is interrupted");
    referee.tap("Resume on this court");
    referee.court_is_right(false);
    wins(referee, B);
    referee.reads("After set 2");
}

/// The set is played again on another court; somebody is expelled.
fn third_set(referee: &mut Referee) {
    next_set(referee, 3);
    referee.points(&[Side::Left, Side::Left, Side::Right], QUICK);
    referee.tap("Menu");
    referee.tap("Interrupt play");
    referee.tap("Hall alarm");
    referee.tap("Resume on another court");
    referee.reads_at("#consequence", "becomes 0:0");
    referee.tap("Play this set again on the other court");
    referee.tap("Begin set 3");
    referee.browser().find("#half-left");
    referee.court_is_right(false);
    referee.point_for(B);
    sanction(referee, A, "number 4", "Expulsion");
    referee.reads_at(".prompt", "must leave");
    referee.tap_in(".prompt", "Substitution");
    referee.tap("8 comes in");
    referee.tap("Record the substitution");
    referee.court_is_right(false);
    wins(referee, A);
    referee.reads("After set 3");
}

/// A team cannot go on in this set.
fn fourth_set(referee: &mut Referee) {
    next_set(referee, 4);
    referee.points(&[Side::Left, Side::Right, Side::Right], QUICK);
    more(referee, A, "Incomplete or default");
    referee.tap("Incomplete, this set");
    referee.reads_at("#consequence", "Herons win set 4, 25:");
    referee.tap(&format!("{A} lose this set"));
    referee.reads("After set 4");
}

/// The toss decides, the courts are changed at eight, a coach is disqualified.
fn fifth_set(referee: &mut Referee) {
    referee.tossed(B, B);
    next_set(referee, 5);
    sanction(referee, B, "coach", "Disqualification");
    referee.reads_at("#announced", "Both arms");
    let side = referee.side_of(A);
    referee.points(&[side; 8], QUICK);
    referee.reads_at("#change-courts", "Change of courts now");
    referee.tap("Courts changed");
    referee.court_is_right(false);
    assert_ne!(referee.side_of(A), side);
    wins(referee, A);
    referee.reads(&format!("{A} win 3:2"));
}

/// Everybody signs, the record is sealed, opened again and sealed for good.
fn sign_and_seal(referee: &mut Referee) {
    let open =
        format!("{A} announced a protest, but nothing was written about it after the match.");
    referee.tap(&format!("Write the protest: {open}"));
    let field = referee.browser().find("#closing-field");
    referee.browser().write(&field, "It had touched the block");
    referee.tap_in(".drawer", "Write the protest");
    for who in [
        "Captain A",
        "Captain B",
        "Scorer",
        "Second referee",
        "First referee",
    ] {
        referee.tap(&format!("{who}: not signed"));
        referee.tap_in(".drawer", "Save signature");
    }
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
    referee.tap("Reopen");
    let field = referee.browser().find("#closing-field");
    referee.browser().write(&field, "time of the end");
    referee.tap_in(".drawer", "Reopen");
    referee.tap_at("#seal");
    referee.reads("Write this code on paper");
}

/// What can happen to a team, below its half.
fn more(referee: &mut Referee, team: &str, what: &str) {
    referee.tap(&format!("More {team}"));
    referee.tap(what);
}

fn sanction(referee: &mut Referee, team: &str, person: &str, level: &str) {
    more(referee, team, "Misconduct");
    referee.tap(person);
    referee.tap_in(".levels", &format!("{level}, {person}"));
    referee.tap(&format!("Record the {}, {person}", level.to_lowercase()));
}

fn change(referee: &mut Referee, team: &str, used: u8, changes: &[(u16, u16)]) {
    referee.tap(&format!("Substitution {team}, {used} of 6 used"));
    for (out, into) in changes {
        referee.tap(&format!("{out} goes out"));
        referee.tap(&format!("{into} comes in"));
    }
    referee.tap_at("#record-change");
}

fn remark(referee: &mut Referee, team: &str, words: &str) {
    referee.tap(&format!("More {team}"));
    let field = referee.browser().find_named("Remark for the sheet");
    referee.browser().write(&field, words);
    referee.tap("Add remark");
}

/// The same line-ups once more, and the next set begins.
fn next_set(referee: &mut Referee, number: u8) {
    for team in [A, B] {
        referee.tap_in("[aria-label=\"Which team's line-up?\"]", team);
        referee.tap("Same as last set");
        referee.tap("Confirm the line-up");
        referee.reads("The line-up is confirmed");
    }
    referee.tap(&format!("Begin set {number}"));
    referee.browser().find("#half-left");
    referee.court_is_right(false);
}

/// A team makes every point until the set is over.
fn wins(referee: &mut Referee, team: &str) {
    let timeline = referee.timeline();
    let state = timeline.state();
    let score = state.score();
    let set = state.set_number();
    let target = state.rules().target_of(set);
    let (own, other) = if team == A {
        (score.a, score.b)
    } else {
        (score.b, score.a)
    };
    let points = target.target.max(other + target.lead) - own;
    let side = referee.side_of(team);
    referee.points(&vec![side; usize::from(points)], QUICK);
}

// ---- What it is compared with.

/// The desk's program.
fn desk(arguments: &[&str]) -> String {
    let run = Command::new(env!("CARGO_BIN_EXE_desk"))
        .args(arguments)
        .env("LC_ALL", "C")
        .output()
        .expect("the desk's program is built with the tests");
    assert!(run.status.success(), "{run:?}");
    String::from_utf8(run.stdout).expect("it writes text")
}

/// Hands the match over as a file; what `desk timeline` prints of it is what the page has kept and shows.
fn at_the_desk(referee: &mut Referee, downloads: &Path) -> Timeline {
    let kept = referee.timeline();
    referee.tap("Menu");
    referee.tap("Export the match as a file");
    let (_, text) = referee.caught(downloads);
    let reading = record::read(&text);
    assert_eq!(reading.problems, []);
    assert_eq!(reading.log.entries, kept.entries());
    let file = referee.stage.scratch("match.json");
    std::fs::write(&file, &text).expect("room for a file");
    let printed = desk(&["replay", &file.display().to_string()]);
    let printed: Value = serde_json::from_str(printed.trim()).expect("one object a line");
    assert_eq!(printed["entries"], json!(kept.entries().len()));
    assert_eq!(
        printed["refused"],
        json!([]),
        "nothing that was pressed is refused"
    );
    // The table of results on the screen, row by row.
    let rows = referee.browser().value(
        "[...document.querySelectorAll('.set-results tbody tr')]
            .map((row) => [...row.querySelectorAll('td')].map((cell) => Number(cell.innerText)))",
    );
    let sets = printed["sets"].as_array().expect("a list of sets");
    let expected: Vec<Value> = sets.iter().map(|set| json!([set["A"], set["B"]])).collect();
    assert_eq!(rows, json!(expected));
    let over = kept.state().phase() == Phase::Finished;
    assert_eq!(
        printed["phase"],
        json!(if over { "finished" } else { "between_sets" })
    );
    let winner = |team: Team| json!(team.to_string());
    assert_eq!(
        printed["winner"],
        kept.state().winner().map_or(Value::Null, winner)
    );
    kept
}

/// Every kind of entry was made and counts, but for those named.
fn every_kind_but(timeline: &Timeline, missing: &[&str]) {
    let made: BTreeSet<String> = timeline.entries().iter().map(|e| code(&e.kind)).collect();
    let absent: Vec<&str> = EVERY_KIND
        .into_iter()
        .filter(|kind| !made.contains(*kind))
        .collect();
    assert_eq!(absent, missing);
    assert!(
        made.iter().all(|kind| EVERY_KIND.contains(&kind.as_str())),
        "a kind is new: {made:?}"
    );
    let insisted = |o: &Outcome| matches!(o, Outcome::Insisted(_));
    assert_eq!(timeline.outcomes().filter(|(_, o)| insisted(o)).count(), 1);
    let struck = |k: &Kind| matches!(k, Kind::Strike { .. });
    assert_eq!(
        timeline
            .entries()
            .iter()
            .filter(|e| struck(&e.kind))
            .count(),
        2
    );
}

/// The paper on the screen, as its markup, without what is there to lead somebody to a part of it; an empty
/// comment only marks a place for the library.
fn paper(referee: &mut Referee) -> Value {
    referee.browser().find(".paper:not([aria-busy])");
    referee.browser().run(
        "const paper = document.querySelector('.paper').cloneNode(true);
         for (const part of paper.children) {
             part.removeAttribute('id');
             part.removeAttribute('tabindex');
         }
         return paper.outerHTML.replaceAll('<!---->', '');",
        json!([]),
    )
}

/// The same of the desk's page, read by the same browser.
fn desk_paper(referee: &mut Referee, file: &Path) -> Value {
    let page = desk(&["sheet", "--html", &file.display().to_string()]);
    referee.browser().run(
        "return new DOMParser().parseFromString(arguments[0], 'text/html')
            .querySelector('.paper').outerHTML;",
        json!([page]),
    )
}
