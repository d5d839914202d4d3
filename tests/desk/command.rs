//! The command line as a coordinator has it: exit status, what is printed, what is said of bad files.

use std::path::PathBuf;
use std::process::Command;

use dutystand::game;
use dutystand::record::{self, Log};
use dutystand::rules::Preset;
use serde_json::{json, Value};

/// What a run gave: exit status, output, errors.
struct Run {
    status: i32,
    out: String,
    err: String,
}

impl Run {
    fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|e| panic!("{e}: {}", self.out))
    }
}

fn desk(args: &[&str]) -> Run {
    let output = Command::new(env!("CARGO_BIN_EXE_desk"))
        .args(args)
        .output()
        .expect("desk runs");
    let text = |bytes| String::from_utf8(bytes).expect("text");
    Run {
        status: output.status.code().expect("an exit status"),
        out: text(output.stdout),
        err: text(output.stderr),
    }
}

/// A file for one test.
fn file(name: &str, text: &str) -> String {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("desk-{name}"));
    std::fs::write(&path, text).expect("writable");
    path.to_str().expect("plain").to_owned()
}

fn case(topic: &str, n: usize) -> String {
    super::support::case::cases(topic)[n].input.to_string()
}

fn rehearsed(seed: u64) -> String {
    record::write(&Log {
        id: format!("rehearsal {seed}"),
        entries: game::rehearse(Preset::SchoolJunior, seed),
    })
}

#[test]
fn paper_prints_the_order_the_findings_or_the_record() {
    let clean = file("paper-clean.json", &case("paper", 0));
    let run = desk(&["paper", &clean]);
    assert_eq!((run.status, run.err.as_str()), (0, ""));
    assert_eq!(run.json()["findings"], json!([]));
    let run = desk(&["paper", &clean, "--record"]);
    let reading = record::read(&run.out);
    assert!(reading.problems.is_empty() && reading.entries > 100);
    let wrong = file("paper-wrong.json", &case("paper", 3));
    let run = desk(&["paper", "--text", &wrong]);
    assert_eq!(run.status, 1);
    assert!(
        run.out.contains("set 2, final.B: final_mismatch: "),
        "{}",
        run.out
    );
    let run = desk(&["paper", &clean, &wrong]);
    assert_eq!((run.status, run.out.lines().count()), (1, 2));
}

#[test]
fn an_unknown_field_is_a_finding() {
    let text = case("paper", 0).replacen("\"result\"", "\"resolt\":1,\"result\"", 1);
    let run = desk(&["paper", &file("paper-unknown.json", &text)]);
    assert_eq!(run.status, 1);
    assert_eq!(run.json()["findings"][0]["code"], "unknown_field");
    assert!(
        run.err.contains(": resolt: Nobody knows this field"),
        "{}",
        run.err
    );
}

#[test]
fn standings_print_a_table_for_scripts_readers_and_spreadsheets() {
    let pool = file("pool.json", &case("standings", 1));
    let run = desk(&["standings", "--json", &pool]);
    assert_eq!(run.status, 0);
    assert_eq!(run.json()["table"][0]["team"], "Otters");
    let csv = desk(&["standings", "--csv", &pool]).out;
    assert_eq!(csv.lines().count(), 4);
    assert!(csv
        .lines()
        .nth(1)
        .expect("a row")
        .starts_with("1,\"Otters\",2,2,0,0,6,"));
    let text = desk(&["standings", "--text", &pool]).out;
    assert!(
        text.contains("Otters before Herons by matches won: 2 to 1."),
        "{text}"
    );
}

#[test]
fn compare_takes_two_records() {
    let (a, b) = (file("a.json", &rehearsed(1)), file("b.json", &rehearsed(2)));
    let run = desk(&["compare", &a, &a]);
    assert_eq!(
        (run.status, run.json()),
        (0, json!({ "findings": [], "parting": null }))
    );
    let run = desk(&["compare", &a, &b, "--text"]);
    assert_eq!(run.status, 1);
    assert!(run.out.contains("rally: Set 1, rally "), "{}", run.out);
    assert_eq!(desk(&["compare", &a]).status, 2);
}

#[test]
fn audit_has_a_line_for_each_finding_or_one_object() {
    let a = file("audit.json", &rehearsed(1));
    let run = desk(&["audit", &a]);
    assert_eq!(run.status, 1);
    assert!(
        run.out.lines().all(|line| line.starts_with(&a)),
        "{}",
        run.out
    );
    assert!(run
        .out
        .contains("missing_field: The date and the scheduled time are missing."));
    let findings = desk(&["audit", "--json", &a]).json();
    let list = findings["findings"].as_array().expect("findings");
    assert_eq!(list.len(), run.out.lines().count());
    assert!(list.iter().all(|f| f["file"] == a.as_str()));
}

#[test]
fn what_cannot_be_read_is_said_with_file_and_place() {
    let missing = desk(&["audit", "no-such-file.json"]);
    assert_eq!(missing.status, 2);
    assert!(
        missing.err.starts_with("no-such-file.json: "),
        "{}",
        missing.err
    );
    let broken = file("broken.json", "{ \"log\":\n oops");
    for command in ["audit", "replay", "paper", "standings"] {
        let run = desk(&[command, &broken]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{command}");
        assert!(
            run.err.contains("broken.json: ") && run.err.contains("line 2"),
            "{}",
            run.err
        );
    }
    let pool = file(
        "pool-wrong.json",
        &case("standings", 0).replace("\"wins\"", "\"luck\""),
    );
    let run = desk(&["standings", &pool]);
    assert_eq!(run.status, 2);
    assert!(
        run.err.contains("rank_by[0]: This should be one of: wins"),
        "{}",
        run.err
    );
    assert_eq!(desk(&["standings", "--nonsense", &pool]).status, 2);
    assert_eq!(desk(&["nonsense"]).status, 2);
    assert_eq!(desk(&["--help"]).status, 0);
}
