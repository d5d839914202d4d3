//! The rebuilt order and the findings, as JSON and as text.

use std::fmt::Write;

use serde_json::{json, Value};

use reports::paper::{Checked, PaperSheet};
use rules::Team;
use text::paper::finding as say;

/// Rally order and findings as one JSON object.
#[must_use]
pub fn json(sheet: &PaperSheet, checked: &Checked) -> Value {
    let rallies: Vec<String> = checked.rallies.iter().map(|set| letters(set)).collect();
    let findings = checked.findings.iter().map(|f| {
        json!({ "set": f.set, "where": f.place, "code": f.fault.code(), "rule": f.fault.rule(),
            "say": say(f, sheet.into()) })
    });
    json!({ "rallies": rallies, "findings": findings.collect::<Vec<_>>() })
}

fn letters(set: &[Team]) -> String {
    set.iter().map(|team| team.letter()).collect()
}

/// The same as lines to read.
#[must_use]
pub fn text(sheet: &PaperSheet, checked: &Checked) -> String {
    let mut out = String::new();
    for (number, set) in (1..).zip(&checked.rallies) {
        // Writing into a string cannot fail.
        let _ = writeln!(
            out,
            "{}: {}",
            text::score_sheet::set_heading(number),
            letters(set)
        );
    }
    for f in &checked.findings {
        let set = f.set.map(|n| format!("set {n}, ")).unwrap_or_default();
        let rule = f
            .fault
            .rule()
            .map(|r| format!(" ({r})"))
            .unwrap_or_default();
        let code = f.fault.code();
        let _ = writeln!(
            out,
            "{set}{}: {code}{rule}: {}",
            f.place,
            say(f, sheet.into())
        );
    }
    if checked.findings.is_empty() {
        out.push_str(text::paper::all_agrees());
        out.push('\n');
    }
    out
}
