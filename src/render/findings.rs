//! Findings of an audit as JSON and as lines, each with the file it is from.

use serde_json::{json, Value};

use game::State;
use reports::audit::Finding;
use text::audit::finding as say;

/// One finding as a JSON object.
#[must_use]
pub fn json(file: &str, finding: &Finding, state: &State) -> Value {
    json!({
        "file": file, "entry": finding.entry, "code": finding.what.code(),
        "rule": finding.what.rule(), "say": say(finding, state.into()),
    })
}

/// One finding as a line.
#[must_use]
pub fn text(file: &str, finding: &Finding, state: &State) -> String {
    let entry = finding
        .entry
        .map(|n| format!("entry {n}: "))
        .unwrap_or_default();
    let rule = finding
        .what
        .rule()
        .map(|r| format!(" ({r})"))
        .unwrap_or_default();
    let code = finding.what.code();
    format!(
        "{file}: {entry}{code}{rule}: {}",
        say(finding, state.into())
    )
}
