//! Two records side by side: worked cases, told differences, laws.

use game::entry::{Change, Heading};
use game::{Entry, Kind, Outcome, SanctionKind, Timeline};
use proptest::prelude::*;
use reports::{compare, paper};
use rules::{Cause, Preset, Shirt, Team};
use serde_json::{json, Value};

use super::paper::{on_paper, simulated as simulated_on_paper};
use super::support::{self, numbered, random, run};

fn folded(value: &Value) -> Timeline {
    let reading = record::read(&value.to_string());
    assert!(!reading.is_nothing(), "{:?}", reading.problems);
    Timeline::of(reading.log.entries)
}

fn compared(a: &Timeline, b: &Timeline) -> Value {
    render::comparison::json(&compare::compare(a, b))
}

#[test]
fn worked_cases() {
    super::check("compare", |input| {
        compared(&folded(&input["a"]), &folded(&input["b"]))
    });
}

fn played(more: &[Kind]) -> Timeline {
    support::played(more.to_vec())
}

/// Code, set, rally and sentence of each difference.
fn told(a: &Timeline, b: &Timeline) -> Vec<(String, u64, u64, String)> {
    let value = compared(a, b);
    let text = |v: &Value| v.as_str().unwrap_or_default().to_owned();
    let number = |v: &Value| v.as_u64().unwrap_or(0);
    let findings = value["findings"].as_array().expect("findings");
    findings
        .iter()
        .map(|f| {
            (
                text(&f["code"]),
                number(&f["set"]),
                number(&f["rally"]),
                text(&f["say"]),
            )
        })
        .collect()
}

#[test]
fn a_missing_rally_is_one_cause_and_what_comes_after_still_agrees() {
    let time_out = Kind::TimeOut { team: Team::B };
    let a = played(&[run("AABAB"), vec![time_out.clone()], run("BA")].concat());
    let b = played(&[run("AAAB"), vec![time_out], run("BA")].concat());
    let told = told(&a, &b);
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(
        told[0],
        (
            "rally".to_owned(),
            1,
            3,
            "Set 1, rally 3, at A 2:0 B: the second record does not have the rally to Herons."
                .to_owned()
        )
    );
    assert_eq!(
        compared(&a, &b)["parting"],
        json!({ "set": 1, "rally": 3, "score": { "A": 2, "B": 0 } })
    );
}

/// The rally at 24:23 ends the set in one record and makes it go on in the other.
#[test]
fn a_set_that_goes_on_is_no_second_cause() {
    let level = "AB".repeat(23) + "A";
    let a = played(&run(&format!("{level}A")));
    let b = played(&run(&format!("{level}BAA")));
    let told = told(&a, &b);
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!((told[0].0.as_str(), told[0].2), ("rally", 48));
    assert!(
        told[0]
            .3
            .ends_with("So the set is longer by 2 in the second record."),
        "{told:?}"
    );
}

/// One wrong tap moves the end of the set, and the line-ups of the next one come too early: entered as it
/// was, everything behind it stands elsewhere, and it is still one cause.
#[test]
fn what_a_wrong_rally_moves_has_no_cause_of_its_own() {
    let rules = Preset::International.rules();
    let wrong_at = |n: usize| {
        let mut kinds = run(&("AB".repeat(12) + &"A".repeat(13)));
        if let Kind::Rally { won_by, .. } = &mut kinds[n] {
            *won_by = Team::B;
        }
        kinds.extend(support::set_begins(&rules));
        kinds.extend(run("BBABABAABB"));
        played(&kinds)
    };
    // An odd place is B's anyway.
    let (right, wrong) = (wrong_at(1), wrong_at(30));
    let first_set = |timeline: &Timeline| {
        timeline
            .state()
            .sets()
            .next()
            .map(|s| (s.score.a, s.score.b))
    };
    assert_eq!(first_set(&right), Some((25, 12)));
    assert_eq!(first_set(&wrong), Some((25, 15)));
    let told = told(&right, &wrong);
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!((told[0].0.as_str(), told[0].1, told[0].2), ("rally", 1, 31));
}

#[test]
fn a_record_that_stops_is_one_cause() {
    let set = run(&"A".repeat(25));
    let rules = Preset::International.rules();
    let whole = [set.clone(), support::set_begins(&rules), run("AB")].concat();
    let told = told(&played(&whole), &played(&run("AAA")));
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(
        told[0].3,
        "Set 1, rally 4, at A 3:0 B: the second record has no more points of this set, the first has 22 \
         more."
    );
}

#[test]
fn the_same_at_another_score_and_another_number() {
    let change = |into: u16| Kind::Substitution {
        team: Team::A,
        changes: vec![Change {
            out: Shirt(4),
            into: Shirt(into),
        }],
        reason: None,
    };
    let time_out = Kind::TimeOut { team: Team::B };
    let a = played(
        &[
            run("A"),
            vec![change(9)],
            run("A"),
            vec![time_out.clone()],
            run("B"),
        ]
        .concat(),
    );
    let b = played(&[run("A"), vec![change(8)], run("AB"), vec![time_out]].concat());
    let told = told(&a, &b);
    assert_eq!(told.len(), 2, "{told:?}");
    assert_eq!(
        told[0].3,
        "Set 1, rally 2, at A 1:0 B: the first record has a substitution of Otters (9 for 4), the second \
         a substitution of Otters (8 for 4)."
    );
    assert_eq!(
        told[1].3,
        "Set 1, rally 3, at A 2:0 B: the first record has a time-out of Herons, the second has it at A 2:1 B."
    );
}

/// A delay penalty in one record and a rally in the other give the same point.
#[test]
fn a_penalty_taken_for_a_rally_is_one_difference() {
    let delay = Kind::Delay {
        team: Team::B,
        request: false,
    };
    let first = [vec![delay.clone()], run("A"), vec![delay.clone()], run("B")].concat();
    let second = [vec![delay], run("AAB")].concat();
    let told = told(&played(&first), &played(&second));
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!((told[0].0.as_str(), told[0].2), ("delay", 2));
}

#[test]
fn what_was_taken_back_does_not_count() {
    let slip = Kind::Strike {
        entry: 9,
        why: None,
    };
    let a = played(&[run("AB"), vec![slip], run("AB")].concat());
    let b = played(&run("AAB"));
    assert_eq!(told(&a, &b), []);
}

#[test]
fn two_causes_of_one_rally_differ_only_where_both_are_said() {
    let explain = |cause| Kind::Explain {
        entry: 8,
        cause,
        by: None,
        seen_by: None,
    };
    let of = |cause| played(&[run("A"), vec![explain(cause)]].concat());
    let silent = played(&run("A"));
    assert_eq!(told(&of(Cause::BallOut), &silent), []);
    let told = told(&of(Cause::BallOut), &of(Cause::NetTouch));
    assert_eq!(told.len(), 1);
    assert_eq!(
        told[0].3,
        "Set 1, rally 1, at A 0:0 B: the first record says ball out, the second net touch."
    );
}

/// One of the two tables called the Herons team A.
#[test]
fn exchanged_letters_are_put_right() {
    let a = played(&[run("AABAA"), vec![Kind::TimeOut { team: Team::B }]].concat());
    let turn = |team: Team| team.other();
    let mut entries = a.entries().to_vec();
    for entry in &mut entries {
        match &mut entry.kind {
            Kind::Match(heading) => {
                let Heading { names, .. } = &mut **heading;
                std::mem::swap(&mut names.a, &mut names.b);
            }
            Kind::TeamList(list) => list.team = turn(list.team),
            Kind::Toss(toss) => {
                toss.first_service = turn(toss.first_service);
                toss.left = turn(toss.left);
            }
            Kind::LineUp { team, .. } | Kind::TimeOut { team } => *team = turn(*team),
            Kind::Rally { won_by, .. } => *won_by = turn(*won_by),
            _ => {}
        }
    }
    let told = told(&a, &Timeline::of(entries));
    assert_eq!(told.len(), 1, "{told:?}");
    assert_eq!(told[0].0, "match");
    assert!(told[0]
        .3
        .starts_with("Team A of the first record is team B"));
}

/// A parent's tally has no players; where it has the same points it agrees.
#[test]
fn a_tally_agrees_with_the_sheet_on_the_points() {
    let sheet = played(&run("ABBAB"));
    let mut tally = vec![support::heading(Preset::Tally.rules()), Kind::BeginSet];
    tally.extend(run("ABBAB"));
    assert_eq!(told(&sheet, &Timeline::of(numbered(tally.clone()))), []);
    tally.extend(run("A"));
    assert_eq!(told(&sheet, &Timeline::of(numbered(tally))).len(), 1);
}

/// The names of kinds are those of the log.
#[test]
fn every_difference_is_named_as_in_the_log() {
    for seed in 0..40 {
        let timeline = Timeline::of(game::simulate(Preset::International, seed));
        let opening = timeline.entries().iter().take(1).cloned().collect();
        let whole = compare::compare(&timeline, &Timeline::of(opening));
        for d in &whole.differences {
            let Some(entry) = d.entries.0.and_then(|n| timeline.entry(n)) else {
                continue;
            };
            let written: Value = serde_json::from_str(&record::write_entry(entry)).expect("JSON");
            // An improper request that is a delay by the rules is told as one.
            let by_rule = timeline
                .state()
                .sanctions()
                .iter()
                .find(|s| s.entry == entry.n);
            let told = match by_rule.map(|s| s.kind) {
                Some(SanctionKind::DelayWarning | SanctionKind::DelayPenalty) => json!("delay"),
                _ => written["kind"].clone(),
            };
            assert_eq!(told, d.code, "{d:?}");
        }
    }
}

/// The seed and the preset of a simulated match: what fails is told in a word.
fn seeds() -> impl Strategy<Value = (u64, Preset)> {
    (0u64..5000, 0..4usize).prop_map(|(seed, preset)| (seed, Preset::ALL[preset]))
}

fn simulated((seed, preset): (u64, Preset)) -> Timeline {
    Timeline::of(game::simulate(preset, seed))
}

/// The entries of rallies that count, in order.
fn rallies(timeline: &Timeline) -> Vec<u32> {
    let counts = |(entry, outcome): &(&Entry, &Outcome)| {
        matches!(entry.kind, Kind::Rally { .. }) && **outcome == Outcome::Accepted
    };
    timeline
        .outcomes()
        .filter(counts)
        .map(|(e, _)| e.n)
        .collect()
}

proptest! {
    #![proptest_config(super::config(60))]

    #[test]
    fn a_record_agrees_with_itself(rules in random::rules(), drawn in random::entries(60)) {
        let timeline = Timeline::of(random::log(rules, drawn));
        prop_assert_eq!(compare::compare(&timeline, &timeline).differences, vec![]);
    }

    #[test]
    fn a_simulated_match_agrees_with_itself(seed in seeds()) {
        let timeline = simulated(seed);
        prop_assert_eq!(compare::compare(&timeline, &timeline).differences, vec![]);
    }

    /// Any two records: never more than differences, and the other way round as many partings.
    #[test]
    fn any_two_records_are_compared(
        rules in random::rules(), one in random::entries(40), other in random::entries(40),
    ) {
        let (a, b) = (Timeline::of(random::log(rules, one)), Timeline::of(random::log(rules, other)));
        let parting = |a, b| {
            let whole = compare::compare(a, b);
            prop_assert!(render::comparison::text(&whole).lines().count() >= whole.differences.len());
            Ok(whole.parting().map(|d| (d.set, d.rally)))
        };
        prop_assert_eq!(parting(&a, &b)?, parting(&b, &a)?);
    }

    /// One rally given to the other team: the records part there, whatever follows from it.
    #[test]
    fn a_turned_rally_is_where_they_part(seed in seeds(), pick in any::<prop::sample::Index>()) {
        let timeline = simulated(seed);
        let rallies = rallies(&timeline);
        prop_assume!(!rallies.is_empty());
        let n = rallies[pick.index(rallies.len())];
        let mut entries = timeline.entries().to_vec();
        for entry in entries.iter_mut().filter(|e| e.n == n) {
            if let Kind::Rally { won_by, .. } = &mut entry.kind {
                *won_by = won_by.other();
            }
        }
        let whole = compare::compare(&timeline, &Timeline::of(entries));
        let parting = whole.parting().expect("they part");
        prop_assert_eq!(parting.entries, (Some(n), Some(n)));
        // Whatever follows from it, it is the one cause.
        prop_assert_eq!(whole.differences.len(), 1, "{:?}", &whole.differences);
    }
}

/// A match and its own paper sheet, keyed in: nothing but what paper has no box for.
#[test]
fn a_match_agrees_with_its_own_paper_sheet() {
    let rules = Preset::International.rules();
    let mut seen = 0;
    for timeline in (0..20).filter_map(|seed| simulated_on_paper(rules, seed)) {
        let rebuilt = Timeline::of(paper::check(&on_paper(&timeline)).log.entries);
        let whole = compare::compare(&timeline, &rebuilt);
        assert_eq!(whole.parting(), None);
        let no_box = ["libero_replacement", "change_courts", "replay", "recovery"];
        for d in &whole.differences {
            assert!(
                no_box.contains(&d.code),
                "{}",
                text::comparison::difference(d, &whole)
            );
        }
        seen += 1;
    }
    assert!(seen > 9, "only {seen} matches");
}
