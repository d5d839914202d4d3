//! The worked cases: their macros written out, and how an expected result is matched.

use serde_json::{json, Map, Value};

/// One case of a file.
pub struct Case {
    /// Its id.
    pub id: String,
    /// What it shows.
    pub title: String,
    /// Where it comes from.
    pub source: String,
    /// The log or other input, macros written out.
    pub input: Value,
    /// What has to come out.
    pub expect: Value,
}

/// The cases of one file.
pub fn cases(file: &str) -> Vec<Case> {
    let path = format!("{}/tests/cases/{file}.json", env!("CARGO_MANIFEST_DIR"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path}: {e}"));
    let file: Value = serde_json::from_str(&text).unwrap_or_else(|e| panic!("{path}: {e}"));
    let text = |case: &Value, key: &str| case[key].as_str().expect(key).to_owned();
    file["cases"]
        .as_array()
        .expect("cases")
        .iter()
        .map(|case| Case {
            id: text(case, "id"),
            title: text(case, "title"),
            source: text(case, "source"),
            input: expand(&case["input"]),
            expect: case["expect"].clone(),
        })
        .collect()
}

fn standard(extra: Option<&Value>) -> Vec<Value> {
    let mut rules = Map::from_iter([("preset".to_owned(), json!("international"))]);
    if let Some(Value::Object(extra)) = extra {
        rules.extend(extra.clone());
    }
    let players: Vec<Value> = (1..=12)
        .map(|n| match n {
            1 => json!({ "number": n, "captain": true }),
            12 => json!({ "number": n, "libero": true }),
            _ => json!({ "number": n }),
        })
        .collect();
    let line_up =
        |team| json!({ "kind": "line_up", "team": team, "positions": [1, 2, 3, 4, 5, 6] });
    vec![
        json!({ "kind": "match", "teams": { "A": { "name": "Otters" }, "B": { "name": "Herons" } }, "rules": rules }),
        json!({ "kind": "team_list", "team": "A", "players": players }),
        json!({ "kind": "team_list", "team": "B", "players": players }),
        json!({ "kind": "toss", "first_service": "A", "left": "A" }),
        line_up("A"),
        line_up("B"),
        json!({ "kind": "begin_set" }),
    ]
}

/// Writes the macros of an input out: `setup`, `setup_rules`, `run`, missing numbers.
fn expand(input: &Value) -> Value {
    if input.get("setup").is_none() && input.get("entries").is_none() {
        // Two records to be compared, or no record at all.
        return match (input.get("a"), input.get("b")) {
            (Some(a), Some(b)) => json!({ "a": expand(a), "b": expand(b) }),
            _ => input.clone(),
        };
    }
    let mut entries = if input.get("setup").is_some() {
        standard(input.get("setup_rules"))
    } else {
        Vec::new()
    };
    for entry in input["entries"].as_array().into_iter().flatten() {
        match entry.get("run").and_then(Value::as_str) {
            Some(run) => entries.extend(
                run.chars()
                    .map(|c| json!({ "kind": "rally", "won_by": c.to_string() })),
            ),
            None => entries.push(entry.clone()),
        }
    }
    for (i, entry) in entries.iter_mut().enumerate() {
        entry["n"] = json!(i + 1);
    }
    json!({ "log": "volleyball-match", "version": 1, "id": "case", "entries": entries })
}

/// What differs between an expected result and the actual one: objects are subsets, `notices` and
/// `findings` are contained, `refused` is the same set of entries with the beginning of the rule.
pub fn differences(expect: &Value, actual: &Value) -> Vec<String> {
    let mut found = Vec::new();
    compare(expect, actual, "", &mut found);
    found
}

fn compare(expect: &Value, actual: &Value, path: &str, found: &mut Vec<String>) {
    match (expect, actual) {
        (Value::Object(expect), Value::Object(actual)) => {
            for (key, want) in expect {
                let here = format!("{path}/{key}");
                let have = actual.get(key).unwrap_or(&Value::Null);
                match key.as_str() {
                    "refused" => refused(want, have, &here, found),
                    "no_notices" => {
                        for code in want.as_array().into_iter().flatten() {
                            let notices = actual["notices"].as_array();
                            if notices.into_iter().flatten().any(|n| &n["code"] == code) {
                                found.push(format!("{here}: notice {code} should not be there"));
                            }
                        }
                    }
                    "notices" | "findings" => contained(want, have, &here, found),
                    _ => compare(want, have, &here, found),
                }
            }
        }
        (Value::Array(expect), Value::Array(actual)) if expect.len() == actual.len() => {
            for (i, (want, have)) in expect.iter().zip(actual).enumerate() {
                compare(want, have, &format!("{path}[{i}]"), found);
            }
        }
        _ if expect == actual => {}
        _ => found.push(format!("{path}: expected {expect}, got {actual}")),
    }
}

fn contained(want: &Value, have: &Value, path: &str, found: &mut Vec<String>) {
    let (want, have) = (want.as_array().expect("a list"), have.as_array());
    let have = have.map_or(&[][..], Vec::as_slice);
    if path.ends_with("findings") && want.is_empty() && !have.is_empty() {
        found.push(format!("{path}: expected none, got {have:?}"));
    }
    for item in want {
        if !have.iter().any(|h| differences(item, h).is_empty()) {
            found.push(format!("{path}: missing {item}, got {have:?}"));
        }
    }
}

fn refused(want: &Value, have: &Value, path: &str, found: &mut Vec<String>) {
    let by_entry = |v: &Value| {
        let mut list: Vec<(u64, String)> = v
            .as_array()
            .into_iter()
            .flatten()
            .map(|r| {
                let rule = r["rule"].as_str().unwrap_or_default().to_owned();
                (r["entry"].as_u64().expect("entry"), rule)
            })
            .collect();
        list.sort();
        list
    };
    let (want, have) = (by_entry(want), by_entry(have));
    let fits = want.len() == have.len()
        && want
            .iter()
            .zip(&have)
            .all(|(w, h)| w.0 == h.0 && h.1.starts_with(&w.1));
    if !fits {
        found.push(format!("{path}: expected {want:?}, got {have:?}"));
    }
}
