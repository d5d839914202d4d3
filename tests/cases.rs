//! The worked cases, each with its published source: what must come out of a log.

mod support;

use support::case::{cases, differences};

/// Runs all cases of a file and tells every one that fails, with its source.
fn check(file: &str) {
    let cases = cases(file);
    assert!(!cases.is_empty(), "{file} has no cases");
    let mut failed = Vec::new();
    for case in &cases {
        let reading = record::read(&case.input.to_string());
        let found = differences(&case.expect, &render::fold(&reading));
        if !found.is_empty() {
            failed.push(format!(
                "{} {} ({})\n    {}",
                case.id,
                case.title,
                case.source,
                found.join("\n    ")
            ));
        }
    }
    assert!(
        failed.is_empty(),
        "{} of {}:\n{}",
        failed.len(),
        cases.len(),
        failed.join("\n")
    );
}

macro_rules! topics {
    ($($topic:ident)+) => { $(
        #[test]
        fn $topic() {
            check(stringify!($topic));
        }
    )+ };
}

topics! {
    change_of_courts
    default_incomplete
    editions
    interruptions
    late_faults
    libero
    misconduct
    replay_suspend
    rotation
    school_and_tally
    scoring
    strike_explain
    substitutions
}

#[test]
fn the_matcher_sees_a_difference() {
    let all = cases("scoring");
    let case = &all[0];
    let print = render::fold(&record::read(&case.input.to_string()));
    let mut wrong = case.expect.clone();
    wrong["score"]["A"] = 2.into();
    assert_eq!(differences(&wrong, &print).len(), 1);
}
