//! Paper sheets: worked cases, told boxes, laws.

use game::{Kind, Outcome, Timeline};
use proptest::prelude::*;
use reports::paper::{self, Checked, PaperSheet};
use reports::Sheet;
use rules::{Preset, Rules, Team};
use serde_json::{json, Value};

fn read(value: &Value) -> PaperSheet {
    let form = paper::read(&value.to_string());
    form.read.unwrap_or_else(|| panic!("{:?}", form.problems))
}

fn checked(value: &Value) -> Value {
    let sheet = read(value);
    render::paper::json(&sheet, &paper::check(&sheet))
}

#[test]
fn worked_cases() {
    super::check("paper", checked);
}

/// A clean sheet of the worked cases: three sets, two substitutions, three time-outs.
fn clean() -> Value {
    super::support::case::cases("paper").swap_remove(0).input
}

/// Set, place and code of each finding.
fn found(value: &Value) -> Vec<(u64, String, String)> {
    let text = |f: &Value, key: &str| f[key].as_str().unwrap_or_default().to_owned();
    let checked = checked(value);
    let findings = checked["findings"].as_array().expect("findings");
    findings
        .iter()
        .map(|f| {
            (
                f["set"].as_u64().unwrap_or(0),
                text(f, "where"),
                text(f, "code"),
            )
        })
        .collect()
}

/// The one finding that a change of the clean sheet brings.
fn one(change: impl FnOnce(&mut Value)) -> (u64, String, String) {
    let mut sheet = clean();
    change(&mut sheet);
    let all = found(&sheet);
    assert_eq!(all.len(), 1, "{all:?}");
    all.into_iter().next().expect("one")
}

fn is(found: (u64, String, String), set: u64, place: &str, code: &str) {
    assert_eq!(
        (found.0, found.1.as_str(), found.2.as_str()),
        (set, place, code)
    );
}

#[test]
fn each_wrong_box_is_the_one_finding() {
    is(
        one(|s| s["sets"][0]["rounds"]["A"][3] = 1.into()),
        1,
        "rounds.A[3]",
        "rounds_decrease",
    );
    is(
        one(|s| s["sets"][0]["rounds"]["B"][7] = 7.into()),
        1,
        "rounds.B[7]",
        "rounds_impossible",
    );
    is(
        one(|s| s["sets"][1]["final"]["B"] = 9.into()),
        2,
        "final.B",
        "final_mismatch",
    );
    is(
        one(|s| s["sets"][2]["line_up"]["A"][5] = 77.into()),
        3,
        "line_up.A[5]",
        "unknown_player",
    );
    is(
        one(|s| s["sets"][2]["line_up"]["B"] = json!([1, 2, 3])),
        3,
        "line_up.B",
        "illegal_line_up",
    );
    is(
        one(|s| s["sets"][0]["substitutions"][1]["in"] = 55.into()),
        1,
        "substitutions[1]",
        "unknown_player",
    );
    is(
        one(|s| s["sets"][0]["substitutions"][1]["out"] = 8.into()),
        1,
        "substitutions[1]",
        "illegal_substitution",
    );
    is(
        one(|s| s["sets"][1]["end"] = "18:26".into()),
        2,
        "end",
        "implausible_time",
    );
    is(
        one(|s| s["sets"][1]["end"] = "18:20".into()),
        2,
        "end",
        "time_backwards",
    );
    is(
        one(|s| s["sets"][1]["start"] = Value::Null),
        2,
        "start",
        "missing",
    );
    is(
        one(|s| s["sets"][0]["time_outs"][0]["score"] = json!({"A": 25, "B": 17})),
        1,
        "time_outs[0]",
        "after_the_end",
    );
    is(
        one(|s| {
            s["sets"][1]["first_service"] = "A".into();
            s["sets"][1]["rounds"]["B"] = json!([2, 4, 6, 8, 10]);
            s["sets"][1]["time_outs"] = json!([]);
        }),
        2,
        "first_service",
        "first_service_order",
    );
    is(
        one(|s| s["result"]["sets"]["B"] = 1.into()),
        0,
        "result.sets.B",
        "wrong_set_count",
    );
    is(one(|s| s["result"] = Value::Null), 0, "result", "missing");
}

/// A libero stands in no line-up (19.3.2.3), in each of the three sets.
#[test]
fn a_libero_in_the_line_up_is_found_in_every_set() {
    let mut sheet = clean();
    sheet["teams"]["B"]["liberos"] = json!([6]);
    let all = found(&sheet);
    assert_eq!(all.len(), 3, "{all:?}");
    assert!(all
        .iter()
        .all(|f| f.1 == "line_up.B[5]" && f.2 == "illegal_line_up"));
}

/// Two liberos are allowed (19.1.1).
#[test]
fn a_list_that_cannot_be_is_found() {
    let mut sheet = clean();
    sheet["teams"]["A"]["liberos"] = json!([10, 11, 12]);
    assert_eq!(
        found(&sheet),
        [(0, "teams.A.players".into(), "illegal_team_list".into())]
    );
    sheet["teams"]["A"] = json!({ "players": [1, 2, 3, 4, 5, 6, 9, 9] });
    assert_eq!(
        found(&sheet),
        [(0, "teams.A.players".into(), "illegal_team_list".into())]
    );
    sheet["teams"]["A"] = json!({});
    assert_eq!(
        found(&sheet),
        [(0, "teams.A.players".into(), "missing".into())]
    );
}

#[test]
fn a_set_too_many_and_a_set_too_few() {
    let mut more = clean();
    let last = more["sets"][2].clone();
    more["sets"].as_array_mut().expect("sets").push(last);
    let codes: Vec<String> = found(&more).into_iter().map(|f| f.2).collect();
    assert!(codes.contains(&"wrong_set_count".to_owned()), "{codes:?}");
    let mut fewer = clean();
    fewer["sets"].as_array_mut().expect("sets").pop();
    let codes: Vec<String> = found(&fewer).into_iter().map(|f| f.2).collect();
    assert_eq!(codes, ["match_not_finished", "wrong_set_count"]);
}

/// A delay penalty gives the opponent the next point (16.2.3); the first delay of a match is only a
/// warning (16.2.2).
#[test]
fn sanctions_are_looked_for_in_the_order_of_points() {
    let delay = |kind: &str, a: u16, b: u16| json!({ "set": 1, "team": "A", "kind": kind, "score": { "A": a, "B": b } });
    let with = |list: Value| {
        let mut sheet = clean();
        sheet["sanctions"] = list;
        found(&sheet)
    };
    // The first set goes AABAAB…
    let warned = delay("delay_warning", 1, 0);
    assert_eq!(with(json!([warned, delay("delay_penalty", 2, 0)])), []);
    let missing = with(json!([warned, delay("delay_penalty", 2, 1)]));
    assert_eq!(
        missing,
        [(0, "sanctions[1]".into(), "point_missing".into())]
    );
    let level = with(json!([delay("delay_penalty", 2, 0)]));
    assert_eq!(level[0].2, "other_sanction");
    let nowhere = with(json!([delay("delay_warning", 9, 9)]));
    assert_eq!(nowhere[0].2, "score_never_stood");
}

#[test]
fn the_rebuilt_record_folds_to_the_same_result() {
    let sheet = read(&clean());
    let checked = paper::check(&sheet);
    assert!(checked.whole);
    let reading = record::read(&record::write(&checked.log));
    assert!(reading.problems.is_empty(), "{:?}", reading.problems);
    let timeline = Timeline::of(reading.log.entries);
    assert!(timeline.outcomes().all(|(_, o)| *o == Outcome::Accepted));
    let scores: Vec<(u16, u16)> = timeline
        .state()
        .sets()
        .map(|s| (s.score.a, s.score.b))
        .collect();
    assert_eq!(scores, [(25, 17), (25, 10), (25, 6)]);
    assert_eq!(timeline.state().winner(), Some(Team::A));
}

#[test]
fn a_record_that_cannot_be_rebuilt_ends_where_the_sheet_ends() {
    let mut value = clean();
    value["sets"][1]["rounds"]["A"] = json!([1, 2, 3, 4, 5, 23]);
    let checked = paper::check(&read(&value));
    assert!(!checked.whole);
    let timeline = Timeline::of(checked.log.entries);
    assert_eq!(timeline.state().sets().count(), 1);
    let play = timeline.state().play().expect("set 2 is running");
    assert_eq!((play.score.a, play.score.b), (23, 10));
}

#[test]
fn hostile_sheets_get_a_sentence_with_the_place() {
    let sorry = |change: fn(&mut Value)| {
        let mut value = clean();
        change(&mut value);
        let form = paper::read(&value.to_string());
        assert_eq!(form.read, None);
        let problem = form.problems.into_iter().next().expect("a problem");
        format!("{}: {}", problem.place, text::form_problem(&problem.kind))
    };
    assert!(sorry(|s| s["sets"][0]["rounds"]["A"][1] = "x".into())
        .starts_with("sets[0].rounds.A[1]: This should be a whole number from 0 to 999"));
    assert!(sorry(|s| s["sets"][0]["start"] = "half six".into())
        .starts_with("sets[0].start: A time is written with hour and minute"));
    assert!(sorry(|s| s["sets"][0]["first_service"] = Value::Null)
        .starts_with("sets[0].first_service: This is missing"));
    assert!(sorry(|s| s["rules"] = json!({ "preset": "garden" })).starts_with("rules: "));
    assert!(sorry(|s| s["rules"] = json!("school_junior")).starts_with("rules: "));
    assert!(sorry(|s| s["sets"] = json!(vec![0; 10])).starts_with("sets: 10 items are too many"));
}

/// A simulated match, played again with nothing but what a paper sheet has boxes for.
pub fn simulated(rules: Rules, seed: u64) -> Option<Timeline> {
    let has_a_box = |kind: &Kind| {
        matches!(
            kind,
            Kind::Match(_)
                | Kind::TeamList(_)
                | Kind::Toss(_)
                | Kind::LineUp { .. }
                | Kind::BeginSet
                | Kind::Rally { .. }
                | Kind::Replay { .. }
                | Kind::TimeOut { .. }
                | Kind::Substitution { .. }
                | Kind::LiberoReplacement { .. }
                | Kind::ImproperRequest { .. }
                | Kind::Delay { .. }
                | Kind::Misconduct { .. }
                | Kind::Recovery { .. }
                | Kind::ChangeCourts
        )
    };
    let mut timeline = Timeline::new();
    let whole = Timeline::of(game::simulate_by(rules, seed));
    for (entry, outcome) in whole.outcomes() {
        if *outcome == Outcome::Accepted && has_a_box(&entry.kind) {
            let n = timeline.next_number();
            let entry = game::Entry { n, ..entry.clone() };
            if timeline.check(&entry).is_ok() {
                timeline.push(entry);
            }
        }
    }
    // Penalties of both teams between two sets: no box says that both have rotated.
    let both = |set: &game::SetPlay| {
        let penalty = |p: &&game::Point| p.why == game::PointFor::Penalty;
        let opening = || set.points.iter().take_while(penalty);
        Team::BOTH
            .iter()
            .all(|team| opening().any(|p| p.to == *team))
    };
    let state = timeline.state();
    let plainly = !state.sets().any(|s| s.play.as_ref().is_some_and(both));
    (plainly && state.phase() == game::Phase::Finished).then_some(timeline)
}

pub fn on_paper(timeline: &Timeline) -> PaperSheet {
    paper::of_sheet(&Sheet::of(timeline), *timeline.state().rules(), 0)
}

pub fn rallies(timeline: &Timeline) -> Vec<Vec<Team>> {
    let plays = timeline.state().sets().filter_map(|s| s.play.as_ref());
    plays
        .map(|p| p.points.iter().map(|p| p.to).collect())
        .collect()
}

#[test]
fn the_paper_of_a_simulated_match_has_no_findings_and_the_same_rallies() {
    let mut seen = 0;
    for preset in [
        Preset::International,
        Preset::SchoolSenior,
        Preset::SchoolJunior,
    ] {
        for seed in 0..40 {
            let Some(timeline) = simulated(preset.rules(), seed) else {
                continue;
            };
            let sheet = on_paper(&timeline);
            let again = read(&serde_json::from_str(&paper::write(&sheet)).expect("JSON"));
            assert_eq!(again, sheet, "{preset:?} {seed}");
            let checked = paper::check(&sheet);
            assert_eq!(checked.findings, [], "{preset:?} {seed}");
            assert_eq!(checked.rallies, rallies(&timeline), "{preset:?} {seed}");
            assert!(checked.whole);
            let rebuilt = Timeline::of(checked.log.entries);
            assert_eq!(rebuilt.state().winner(), timeline.state().winner());
            seen += 1;
        }
    }
    assert!(
        seen > 60,
        "only {seen} matches had nothing but boxes of a paper sheet"
    );
}

/// Where a change of one box is found for certain.
fn change(sheet: &mut PaperSheet, what: u8, set: usize, other: u16) -> bool {
    let i = set % sheet.sets.len();
    let is_last = i + 1 == sheet.sets.len();
    let box_ = &mut sheet.sets[i];
    match what {
        0 => box_.points.as_mut().expect("points").a += other,
        1 => {
            let last = box_.rounds.a.last_mut().or(box_.rounds.b.last_mut());
            *last.expect("a total") += other;
        }
        2 if i > 0 && !is_last => box_.first_service = box_.first_service.other(),
        3 => box_.line_up.as_mut().expect("line-up").b[usize::from(other) % 6].0 = 900 + other,
        4 => {
            let line_up = &mut box_.line_up.as_mut().expect("line-up").a;
            line_up[usize::from(other) % 6] = line_up[usize::from(other + 1) % 6];
        }
        5 => sheet.result.as_mut().expect("result").sets.a += 1,
        6 => {
            let winner = &mut sheet.result.as_mut().expect("result").winner;
            *winner = winner.map(Team::other);
        }
        7 => {
            let Some(time_out) = box_.time_outs.first_mut() else {
                return false;
            };
            time_out.score = rules::Score { a: 300, b: other };
        }
        _ => return false,
    }
    true
}

fn any_simulated() -> impl Strategy<Value = PaperSheet> {
    (0u64..2000, 0..3usize).prop_filter_map("not on paper", |(seed, preset)| {
        let preset = [
            Preset::International,
            Preset::SchoolSenior,
            Preset::SchoolJunior,
        ][preset];
        simulated(preset.rules(), seed).map(|r| on_paper(&r))
    })
}

proptest! {
    #![proptest_config(super::config(40))]

    #[test]
    fn a_changed_box_is_found(sheet in any_simulated(), what in 0u8..8, set in 0usize..5, other in 1u16..40) {
        let mut wrong = sheet;
        if change(&mut wrong, what, set, other) {
            prop_assert!(!paper::check(&wrong).findings.is_empty());
        }
    }

    /// A changed service total within a set is found, or it tells another order of points that is as
    /// sound as the first. No box of the sheet can say more.
    #[test]
    fn a_changed_total_is_found_or_tells_another_order(
        sheet in any_simulated(), set in 0usize..5, i in 0usize..40, total in 0u16..30,
    ) {
        let before = paper::check(&sheet).rallies;
        let mut other = sheet;
        let set = set % other.sets.len();
        let rounds = &mut other.sets[set].rounds.b;
        prop_assume!(!rounds.is_empty());
        let i = i % rounds.len();
        prop_assume!(rounds[i] != total);
        rounds[i] = total;
        let Checked { rallies, findings, .. } = paper::check(&other);
        prop_assert!(!findings.is_empty() || rallies != before);
    }
}

proptest! {
    #![proptest_config(super::config(256))]

    #[test]
    fn reading_any_sheet_ends_with_findings_or_a_sentence(value in super::any_form("volleyball-paper-sheet")) {
        let form = paper::read(&value.to_string());
        match form.read {
            Some(sheet) => prop_assert!(render::paper::json(&sheet, &paper::check(&sheet)).is_object()),
            None => prop_assert!(!form.problems.is_empty()),
        }
    }

    /// Boxes filled in anyhow, of the right kind: never more than findings.
    #[test]
    fn any_numbers_in_the_boxes_are_checked(
        numbers in proptest::collection::vec(0u16..30, 40),
        preset in 0..4usize,
        first in any::<bool>(),
    ) {
        let preset = Preset::ALL[preset].code();
        let score = |i: usize| json!({ "A": numbers[i], "B": numbers[i + 1] });
        let team = |i: usize| if numbers[i] % 2 == 0 { "A" } else { "B" };
        let set = |i: usize| json!({
            "first_service": if first { "A" } else { "B" },
            "line_up": { "A": numbers[i..i + 6], "B": [1, 2, 3, 4, 5, 6] },
            "rounds": { "A": numbers[i + 1..i + 9], "B": [1, 2, 3, numbers[i], 25] },
            "final": score(i),
            "substitutions": [
                { "team": team(i), "out": numbers[i], "in": numbers[i + 2], "score": score(i + 3) },
                { "team": team(i + 1), "out": 1, "in": numbers[i + 2], "score": score(i), "exceptional": first },
            ],
            "time_outs": [{ "team": team(i), "score": score(i + 5) }],
        });
        let value = json!({
            "log": "volleyball-paper-sheet", "version": 1, "rules": { "preset": preset },
            "teams": { "A": { "players": numbers[0..9] }, "B": { "players": [1, 2, 3, 4, 5, 6, 7], "liberos": [7] } },
            "sets": [set(0), set(10), set(20)],
            "sanctions": [
                { "set": 1, "team": team(3), "kind": "penalty", "who": { "player": 3 }, "score": score(7) },
                { "set": 2, "team": team(4), "kind": "expulsion", "who": { "staff": "coach" }, "score": score(8) },
                { "set": 1, "team": "B", "kind": "delay_warning", "score": score(9) },
            ],
        });
        let sheet = read(&value);
        prop_assert!(!paper::check(&sheet).findings.is_empty());
    }
}
