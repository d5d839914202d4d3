//! Five sets by quick taps, to the end and onto the sheet.

use game::{Phase, Timeline};
use reports::{Half, Round, Sheet, Turn};
use rules::{ByTeam, Preset, Shirt, Team};
use serde_json::{json, Value};

use crate::driver::Engine;
use crate::kept::begun;
use crate::referee::{Referee, Side, A, B};
use crate::stage::Stage;
use crate::{Ran, Test};

/// The tests of this file.
pub const TESTS: &[Test] = &[Test {
    name: "five_sets_by_quick_taps_and_their_sheet",
    engines: &[Engine::Chromium],
    run: five_sets_by_quick_taps_and_their_sheet,
}];

/// Milliseconds from tap to tap: twenty a second, more than a thumb can do on purpose.
const QUICK: u32 = 50;
/// As many taps as are made without looking.
const BURST: usize = 20;

/// Who wins each rally of a set that ends so, the winner's last point at the end and the points of
/// the loser spread over it.
fn rallies(score: ByTeam<u16>) -> Vec<Team> {
    let winner = if score.a > score.b { Team::A } else { Team::B };
    let mut left = score;
    let mut order = Vec::new();
    while left[winner] + left[winner.other()] > 0 {
        let next = if left[winner.other()] > 0 && left[winner] <= left[winner.other()] + 5 {
            winner.other()
        } else {
            winner
        };
        left[next] -= 1;
        order.push(next);
    }
    order
}

/// Plays rallies in bursts; every tap must count.
fn play(referee: &mut Referee, rallies: &[Team], left: Team) {
    for burst in rallies.chunks(BURST) {
        let sides: Vec<Side> = burst
            .iter()
            .map(|&team| {
                if team == left {
                    Side::Left
                } else {
                    Side::Right
                }
            })
            .collect();
        let before = referee.timeline();
        referee.points(&sides, QUICK);
        let after = referee.timeline();
        let points = |timeline: &Timeline, team: Team| {
            timeline.state().sets().map(|s| s.score[team]).sum::<u16>()
                + timeline.state().play().map_or(0, |p| p.score[team])
        };
        for team in Team::BOTH {
            let tapped = burst.iter().filter(|&&t| t == team).count();
            assert_eq!(
                usize::from(points(&after, team) - points(&before, team)),
                tapped,
                "every tap for team {team} is a point"
            );
        }
        if after.state().phase() == Phase::Playing {
            referee.court_is_right(false);
        }
    }
}

fn five_sets_by_quick_taps_and_their_sheet(stage: &mut Stage) -> Ran {
    let mut referee = Referee::at(stage);
    let rules = Preset::International.rules();
    assert_eq!((rules.set.target, rules.decider.to.target), (25, 15));
    referee.go_on_with("five-sets", begun());
    referee.browser().find("#half-left");

    let results = [(25, 20), (18, 25), (26, 24), (23, 25)].map(|(a, b)| ByTeam { a, b });
    for (number, &score) in (1..).zip(&results) {
        let state = referee.timeline();
        let left = state.state().left().expect("a side");
        play(&mut referee, &rallies(score), left);
        referee.reads(&format!("After set {number}"));
        if number == 4 {
            referee.tossed(B, A);
        }
        for team in [A, B] {
            referee.tap_in("[aria-label=\"Which team's line-up?\"]", team);
            referee.tap("Same as last set");
            referee.tap("Confirm the line-up");
            referee.reads("The line-up is confirmed");
        }
        referee.tap(&format!("Begin set {}", number + 1));
        referee.browser().find("#half-left");
    }

    // The deciding set: at eight the courts are changed, said and done with one tap.
    let last = ByTeam { a: 15, b: 12 };
    let order = rallies(last);
    let mut reached = 0;
    let until_eight = order
        .iter()
        .position(|team| {
            reached += u16::from(*team == Team::A);
            reached == 8
        })
        .expect("the winner reaches eight")
        + 1;
    let (before, after) = order.split_at(until_eight);
    play(&mut referee, before, Team::A);
    referee.reads_at("#change-courts", "Change of courts now");
    referee.tap("Courts changed");
    referee.reads("Courts changed: Herons left, Otters right");
    referee.court_is_right(false);
    assert_eq!(referee.side_of(A), Side::Right);
    play(&mut referee, after, Team::B);
    referee.reads("Otters win 3:2");

    let timeline = referee.timeline();
    let state = timeline.state();
    assert_eq!(state.phase(), Phase::Finished);
    let scores: Vec<_> = state.sets().map(|s| (s.score.a, s.score.b)).collect();
    assert_eq!(scores, [(25, 20), (18, 25), (26, 24), (23, 25), (15, 12)]);

    referee.tap("To the sheet");
    referee.reads_at("#outcome", "Otters won 3:2");
    sheet_is_right(&mut referee, &Sheet::of(&timeline));
    two_pages(&mut referee);
    assert_eq!(referee.browser().complaints(), Vec::<String>::new());
    Ok(())
}

/// The words of every element that a selector finds, spaces made one.
fn words(referee: &mut Referee, css: &str) -> Vec<String> {
    let found = referee.browser().run(
        "return [...document.querySelectorAll(arguments[0])]
            .map((e) => e.innerText.replace(/\\s+/g, ' ').trim());",
        json!([css]),
    );
    serde_json::from_value(found).expect("a list of words")
}

/// What the screen shows is what the core has computed.
fn sheet_is_right(referee: &mut Referee, sheet: &Sheet) {
    let rows: Vec<String> = sheet
        .sets
        .iter()
        .map(|set| {
            // The first set began without a time, in the file that was given.
            let minutes = set.minutes().map(|m| format!(" {m}")).unwrap_or_default();
            let box_of = |team: Team| {
                let won = u8::from(set.won.is_some_and(|(winner, _)| winner == team));
                let time_outs = set.time_outs.iter().filter(|t| t.team == team).count();
                let changes = set.substitutions.iter().filter(|s| s.team == team).count();
                format!(" {} {won} {time_outs} {changes}", set.score[team])
            };
            let boxes = Team::BOTH.map(box_of).concat();
            format!("{}{minutes}{boxes}", set.number)
        })
        .collect();
    assert_eq!(words(referee, ".paper .sheet-table tbody tr"), rows);
    let all = sheet.result.points;
    let (sets, time_outs, changes) = (
        sheet.result.sets,
        sheet.result.time_outs,
        sheet.result.substitutions,
    );
    let totals =
        Team::BOTH.map(|t| format!(" {} {} {} {}", all[t], sets[t], time_outs[t], changes[t]));
    let minutes = sheet.result.minutes.map(|m| format!(" {m}"));
    assert_eq!(
        words(referee, ".paper .sheet-table tfoot tr"),
        [format!(
            "Total{}{}",
            minutes.unwrap_or_default(),
            totals.concat()
        )]
    );
    for (i, set) in sheet.sets.iter().enumerate() {
        let shown = referee.browser().run(
            "const set = document.querySelectorAll('.sheet-set')[arguments[0]];
             set.scrollIntoView();
             const frame = () => new Promise(requestAnimationFrame);
             const list = (css) => [...set.querySelectorAll(css)].map((e) => e.innerText.trim());
             const half = (css) => [list(css + ' .starter'), list(css + ' .came-in b'), list(css + ' .turn-total'),
               list(css + ' .turn sup')];
             // What a person has not scrolled to is not drawn.
             return frame().then(frame).then(() => ({ a: half('.team-a'), b: half('.team-b'),
                      running: list('.running-score .point:not(.whose)') }));",
            json!([i]),
        );
        for (team, key) in [(Team::A, "a"), (Team::B, "b")] {
            let half = Half::of(set, team);
            let starters: Vec<String> = half.places.iter().map(|p| p.starter.to_string()).collect();
            let entered = half.places.iter().flat_map(|p| &p.entered);
            let entered: Vec<String> = entered.map(|e| e.shirt.to_string()).collect();
            let turns = half
                .places
                .iter()
                .flat_map(|p| p.turns.iter().map(move |t| (p, t)));
            let rounds: Vec<(Shirt, Round)> = turns
                .filter_map(|(place, turn)| match turn {
                    Turn::Ended { round, .. } => Some((place.starter, *round)),
                    Turn::None => None,
                })
                .collect();
            assert_eq!(rounds.len(), set.rounds[team].len());
            let totals: Vec<String> = rounds.iter().map(|r| r.1.total.to_string()).collect();
            let others = rounds
                .iter()
                .filter(|(starter, r)| r.server != Some(*starter));
            let others: Vec<String> = others
                .filter_map(|(_, r)| Some(r.server?.to_string()))
                .collect();
            assert_eq!(
                shown[key],
                json!([starters, entered, totals, others]),
                "set {}",
                set.number
            );
        }
        let running: Vec<Value> = set
            .running
            .iter()
            .map(|p| json!(p.total.map(|t| t.to_string())))
            .collect();
        assert_eq!(shown["running"], json!(running), "set {}", set.number);
    }
}

/// Five sets go on two pages of paper at most, large enough to read.
fn two_pages(referee: &mut Referee) {
    let paper = referee.browser().paper();
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("shots");
    std::fs::create_dir_all(&folder).expect("a folder for pictures");
    std::fs::write(folder.join("sheet.pdf"), &paper).expect("room for a page");
    let pages = pages(&paper);
    assert!((1..=2).contains(&pages), "{pages} pages of paper");
}

/// Pages of a PDF.
pub fn pages(paper: &[u8]) -> usize {
    // A page object in a PDF (ISO 32000-1, 7.7.3.3); the tree of pages is "/Pages".
    let text = String::from_utf8_lossy(paper);
    let found = text.match_indices("/Type /Page");
    found
        .filter(|(at, found)| !text[at + found.len()..].starts_with('s'))
        .count()
}
