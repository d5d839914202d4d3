//! The coordinator's desk: standings, paper sheets, two records side by side, audits.

#[path = "../support/mod.rs"]
mod support;

mod audit;
mod command;
mod compare;
mod demo;
mod draft;
mod hand_over;
mod paper;
mod pools;
mod review;
mod standings;
mod work;
mod wrong_files;

use serde_json::Value;
use support::case::{cases, differences};

/// Runs all cases of a file and tells every one that fails, with its source.
fn check(file: &str, run: impl Fn(&Value) -> Value) {
    let cases = cases(file);
    assert!(!cases.is_empty(), "{file} has no cases");
    let failed: Vec<String> = cases
        .iter()
        .filter_map(|case| {
            let found = differences(&case.expect, &run(&case.input));
            let say = || {
                format!(
                    "{} {} ({})\n    {}",
                    case.id,
                    case.title,
                    case.source,
                    found.join("\n    ")
                )
            };
            (!found.is_empty()).then(say)
        })
        .collect();
    assert!(
        failed.is_empty(),
        "{} of {}:\n{}",
        failed.len(),
        cases.len(),
        failed.join("\n")
    );
}

/// So many cases of each law; `TIMES` multiplies them for a long run.
fn config(cases: u32) -> proptest::prelude::ProptestConfig {
    let times = std::env::var("TIMES")
        .ok()
        .and_then(|v| v.parse::<u32>().ok());
    proptest::prelude::ProptestConfig {
        cases: cases * times.unwrap_or(1),
        failure_persistence: None,
        ..Default::default()
    }
}

/// Any JSON whatever, often with the names of a form's fields.
fn any_form(log: &'static str) -> impl proptest::strategy::Strategy<Value = Value> {
    use proptest::prelude::*;
    const KEYS: [&str; 31] = [
        "rank_by",
        "restart",
        "match_points",
        "rules",
        "teams",
        "results",
        "home",
        "away",
        "sets",
        "default",
        "3-0",
        "A",
        "B",
        "name",
        "players",
        "liberos",
        "first_service",
        "line_up",
        "rounds",
        "final",
        "substitutions",
        "time_outs",
        "start",
        "end",
        "result",
        "winner",
        "team",
        "out",
        "in",
        "score",
        "preset",
    ];
    let leaf = prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        (-3i64..40).prop_map(Value::from),
        any::<f64>().prop_map(Value::from),
        prop_oneof![
            Just("A"),
            Just("B"),
            Just("wins"),
            Just("head_to_head"),
            Just("18:05"),
            Just("international"),
            Just("tally"),
            Just("")
        ]
        .prop_map(Value::from),
    ];
    let any_value = leaf.prop_recursive(5, 120, 8, |inner| {
        let key = (0..KEYS.len()).prop_map(|i| KEYS[i].to_owned());
        prop_oneof![
            proptest::collection::vec(inner.clone(), 0..8).prop_map(Value::from),
            proptest::collection::vec((key, inner), 0..8)
                .prop_map(|m| Value::Object(m.into_iter().collect())),
        ]
    });
    any_value.prop_map(move |mut value| {
        if let Some(map) = value.as_object_mut() {
            map.insert("log".into(), log.into());
            map.insert("version".into(), 1.into());
        }
        value
    })
}
