//! The differences as JSON and as text.

use std::fmt::Write;

use serde_json::{json, Value};

use reports::compare::Comparison;
use rules::Score;
use text::comparison::difference as say;

/// The parting and every difference as one JSON object.
#[must_use]
pub fn json(comparison: &Comparison) -> Value {
    let score = |s: Score| json!({ "A": s.a, "B": s.b });
    let findings = comparison.differences.iter().map(|d| {
        json!({
            "code": d.code, "set": d.set, "rally": d.rally, "score": d.score.map(score),
            "entries": [d.entries.0, d.entries.1], "say": say(d, comparison),
        })
    });
    let parting = comparison
        .parting()
        .map(|d| json!({ "set": d.set, "rally": d.rally, "score": d.score.map(score) }));
    json!({ "parting": parting, "findings": findings.collect::<Vec<_>>() })
}

/// The same as lines to read.
#[must_use]
pub fn text(comparison: &Comparison) -> String {
    if comparison.differences.is_empty() {
        return format!("{}\n", text::comparison::no_difference());
    }
    let mut out = String::new();
    for d in &comparison.differences {
        // Writing into a string cannot fail.
        let _ = writeln!(out, "{}: {}", d.code, say(d, comparison));
    }
    out
}
