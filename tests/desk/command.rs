//! The command line as a coordinator has it: exit status, what is printed, what is said of bad files.

use record::Log;
use rules::Preset;
use serde_json::{json, Value};
use std::path::PathBuf;
use std::process::{Command, Output};

/// What a run gave: exit status, output, errors.
pub(super) struct Run {
    pub status: i32,
    pub out: String,
    pub err: String,
}

impl Run {
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|e| panic!("{e}: {}", self.out))
    }
}

pub(super) fn output(args: &[&str]) -> Output {
    Command::new(env!("CARGO_BIN_EXE_desk"))
        .args(args)
        .env("LC_ALL", "C")
        .output()
        .expect("desk runs")
}

pub(super) fn desk(args: &[&str]) -> Run {
    let output = output(args);
    let text = |bytes| String::from_utf8(bytes).expect("text");
    Run {
        status: output.status.code().expect("an exit status"),
        out: text(output.stdout),
        err: text(output.stderr),
    }
}

/// A file for one test.
pub(super) fn file(name: &str, content: &(impl AsRef<[u8]> + ?Sized)) -> String {
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(format!("desk-{name}"));
    std::fs::write(&path, content).expect("writable");
    path.to_str().expect("plain").to_owned()
}

pub(super) fn case(topic: &str, n: usize) -> String {
    super::support::case::cases(topic)[n].input.to_string()
}

pub(super) fn simulated(seed: u64) -> String {
    record::write(&Log {
        id: format!("rehearsal {seed}"),
        entries: game::simulate(Preset::SchoolJunior, seed),
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
        run.err.contains(": resolt: This field is unknown"),
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
    let (a, b) = (file("a.json", &simulated(1)), file("b.json", &simulated(2)));
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
    let a = file("audit.json", &simulated(1));
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
fn a_desk_is_listed_for_readers_scripts_and_spreadsheets() {
    let record = file("list-record.json", &simulated(5));
    let sheet = file("list-paper.json", &case("paper", 3));
    let text = desk(&["list", &record, &sheet]);
    assert_eq!(text.status, 1);
    let lines: Vec<&str> = text.out.lines().collect();
    assert_eq!(lines.len(), 2);
    assert!(lines[0].starts_with(&record) && lines[0].contains(" to check."));
    assert!(lines[1].contains(". On paper. "), "{}", lines[1]);
    let listed = desk(&["list", "--json", &record, &sheet]).json();
    assert_eq!(listed["list"][0]["over"], true);
    assert_eq!(listed["list"][1]["paper"], true);
    let csv = desk(&["list", "--csv", &record, &sheet]).out;
    assert_eq!(csv.lines().count(), 3);
    assert!(csv.starts_with("\u{feff}file,kind,group,match_no,A,B,sets_A,"));
}

/// A record that is not as it was written says so in its line, whether it was sealed or not.
#[test]
fn a_changed_record_is_marked_in_the_list() {
    let text = simulated(5);
    let changed = text.replacen("\"won_by\":\"A\"", "\"won_by\":\"B\"", 1);
    assert_ne!(text, changed);
    let line = |name: &str, text: &str| desk(&["list", &file(name, text)]).out;
    let marked = line("changed-in-list.json", &changed);
    assert!(
        marked.contains("In doubt: ") && marked.contains("damaged or was changed"),
        "{marked}"
    );
    let plain = line("whole-in-list.json", &text);
    assert!(!plain.contains("In doubt"), "{plain}");
}

/// What makes a result doubtful is read before the table, what is missing from it after it.
#[test]
fn a_doubt_stands_before_the_table() {
    let pool = json!({
        "log": "volleyball-pool", "version": 1, "rank_by": ["wins"], "teams": ["Otters", "Herons", "Voles"],
        "results": [ { "home": "Otters", "away": "Herons", "sets": [[25, 24], [25, 20]] } ],
    });
    let run = desk(&[
        "standings",
        "--text",
        &file("doubt-first.json", &pool.to_string()),
    ]);
    let place = |word: &str| {
        let place = run.out.find(word);
        place.unwrap_or_else(|| panic!("no {word}: {}", run.out))
    };
    assert!(
        place("set_cannot_be: ") < place("matches  points"),
        "{}",
        run.out
    );
    assert!(
        place("matches  points") < place("not_played: "),
        "{}",
        run.out
    );
}

#[test]
fn many_records_make_a_table_and_two_of_one_match_count_once() {
    let day = reports::demo::day();
    let pool: Vec<String> = day.logs[6..]
        .iter()
        .map(|log| file(&format!("{}.json", log.id), &record::write(log)))
        .collect();
    let on_paper = file("day-paper.json", &reports::paper::write(&day.paper));
    let mut args = vec!["standings"];
    args.extend(pool.iter().map(String::as_str));
    args.push(&on_paper);
    let run = desk(&args);
    assert_eq!(run.status, 1, "{}", run.err);
    let table = run.json();
    let played: u64 = (0..4)
        .filter_map(|i| table["table"][i]["played"].as_u64())
        .sum();
    assert_eq!(played, 12, "six matches of two teams each");
    assert_eq!(table["findings"][0]["code"], "match_twice");
    assert_eq!(table["findings"].as_array().map(Vec::len), Some(1));
    // By another rule of order.
    args.extend(["--by", "point_difference", "--points", "21", "--text"]);
    let text = desk(&args).out;
    assert!(
        text.contains(" by points won minus points lost: "),
        "{text}"
    );
    args.extend(["--by", "luck"]);
    let refused = desk(&args);
    assert_eq!(refused.status, 2);
    assert!(
        refused.err.contains("`luck` is no criterion"),
        "{}",
        refused.err
    );
}

#[test]
fn a_backup_is_many_records_and_a_packed_one_is_read_as_it_is() {
    let logs: Vec<Log> = (1..4)
        .map(|seed| Log {
            id: format!("r{seed}"),
            entries: game::simulate(Preset::SchoolJunior, seed),
        })
        .collect();
    let kept = logs.iter().map(|log| record::KeptMatch {
        log: log.clone(),
        ..record::KeptMatch::default()
    });
    let kept: Vec<_> = kept.collect();
    let backup = file(
        "backup.json",
        &record::write_backup(&kept, &record::OnDesk::default(), None),
    );
    let run = desk(&["list", &backup]);
    assert_eq!(run.out.lines().count(), 3, "{}", run.err);
    assert!(run.out.contains("backup.json#r2: "), "{}", run.out);
    let one = desk(&["pack", &backup]);
    assert_eq!(one.status, 2);
    assert!(one.err.contains("backup of 3 matches"), "{}", one.err);

    let packed = record::pack(&logs[0]).expect("it packs");
    let path = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("desk-r1.pack");
    std::fs::write(&path, packed).expect("writable");
    let path = path.to_str().expect("plain");
    let plain = file("r1.json", &record::write(&logs[0]));
    assert_eq!(desk(&["replay", path]).out, desk(&["replay", &plain]).out);
}

#[test]
fn a_record_that_an_editor_saved_anew_is_read() {
    let text = simulated(1);
    let wide: Vec<u8> = text.encode_utf16().flat_map(u16::to_le_bytes).collect();
    let wide = file("wide.json", &wide);
    let lines = file(
        "lines.json",
        &format!("\u{feff}{}", text.replace('\n', "\r\n")),
    );
    let plain = desk(&["replay", &file("plain.json", &text)]);
    for name in [wide, lines] {
        let run = desk(&["replay", &name]);
        assert_eq!((run.status, run.err.as_str()), (0, ""), "{name}");
        assert_eq!(run.out, plain.out, "{name}");
    }
}

#[test]
fn every_command_says_how_it_is_used_with_an_example() {
    let overview = desk(&["--help"]).out;
    for command in [
        "list",
        "audit",
        "paper",
        "compare",
        "standings",
        "sheet",
        "replay",
        "pack",
        "unpack",
        "simulate",
    ] {
        assert!(overview.contains(&format!("desk {command} ")), "{overview}");
        let run = desk(&[command, "--help"]);
        assert_eq!((run.status, run.err.as_str()), (0, ""));
        assert!(
            run.out.starts_with(&format!("desk {command}")),
            "{}",
            run.out
        );
        assert!(run.out.contains("Example"), "{}", run.out);
        // Whoever uses it wrongly reads the same.
        let wrong = desk(&[command, "--nonsense"]);
        assert_eq!(wrong.status, 2);
        assert!(wrong.err.contains("`--nonsense` is not understood here"));
        assert!(wrong.err.ends_with(&run.out), "{}", wrong.err);
    }
}

/// A wrong option is refused in one sentence that is true, before anything is printed.
#[test]
fn a_wrong_option_or_value_is_named() {
    let record = file("options.json", &simulated(1));
    for (args, say) in [
        (
            &["simulate", "--seed", "x"][..],
            "`--seed` does not take `x`.",
        ),
        (
            &["simulate", "--matches", "0"],
            "`--matches` does not take `0`.",
        ),
        (
            &["simulate", "--preset", "beach"],
            "`--preset` does not take `beach`.",
        ),
        (&["simulate", "--seed"], "`--seed` wants a value."),
        (&["simulate", "7"], "`7` is not understood here."),
        (
            &["sheet", "--json", &record],
            "`--json` is not understood here.",
        ),
        (
            &["pack", "--json", &record],
            "`--json` is not understood here.",
        ),
        (
            &["sheet", "--html", "--csv", &record],
            "`--html` and `--csv` do not go together.",
        ),
        (
            &["list", "--json", &record, "--csv"],
            "`--json` and `--csv` do not go together.",
        ),
    ] {
        let run = desk(args);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{args:?}");
        assert!(run.err.starts_with(say), "{args:?}: {}", run.err);
    }
}

/// What could not be written is never taken for written, and a closed standard error ends no command.
#[cfg(target_os = "linux")]
#[test]
fn a_full_disk_is_said() {
    let record = file("full-disk.json", &simulated(1));
    let full = || {
        let file = std::fs::OpenOptions::new().write(true).open("/dev/full");
        file.expect("Linux has one")
    };
    for args in [
        &["sheet", "--html", &record][..],
        &["replay", &record],
        &["list", &record],
        &["pack", &record],
        &["simulate"],
        &["--help"],
    ] {
        let run = Command::new(env!("CARGO_BIN_EXE_desk"))
            .args(args)
            .env("LC_ALL", "C")
            .stdout(full())
            .output()
            .expect("desk runs");
        assert_eq!(run.status.code(), Some(2), "{args:?}");
        let said = String::from_utf8(run.stderr).expect("text");
        assert!(said.contains("The output could not be written: "), "{said}");
    }
    let run = Command::new(env!("CARGO_BIN_EXE_desk"))
        .args(["audit", "no-such-file.json"])
        .stderr(full())
        .status();
    assert_eq!(run.expect("desk runs").code(), Some(2));
}

/// The cells of a line of a table: quotes hold together what stands between them.
fn cells(line: &str) -> Vec<String> {
    let mut cells = vec![String::new()];
    let mut inside = false;
    for sign in line.chars() {
        match sign {
            '"' => inside = !inside,
            ',' if !inside => cells.push(String::new()),
            _ => {}
        }
        if sign != ',' || inside {
            cells.last_mut().expect("one cell at least").push(sign);
        }
    }
    cells
}

/// The points of several matches are one table. What somebody typed as a name stands in quotes and is no
/// formula, also where semicolons or tabs part the cells; everything else is numbers and codes.
#[test]
fn points_of_many_matches_are_one_table_that_opens_rightly() {
    let hostile = simulated(6)
        .replace("Otters", "=HYPERLINK(1)")
        .replace("Herons", "@SUM(1+1),\\\"x\\\";y\\tz");
    let first = file("hostile.json", &hostile);
    let second = file("second.json", &simulated(7));
    let run = desk(&["sheet", "--csv", "--clock", "+02:00", &first, &second]);
    assert!(run.out.starts_with('\u{feff}'), "the mark of UTF-8");
    let mut lines = run
        .out
        .trim_start_matches('\u{feff}')
        .split_terminator("\r\n");
    let head: Vec<&str> = lines.next().expect("a head").split(',').collect();
    let column = |name: &str| head.iter().position(|h| *h == name).expect("that column");
    let mut matches = std::collections::BTreeSet::new();
    let mut points = 0;
    for line in lines {
        let cells = cells(line);
        assert_eq!(cells.len(), head.len(), "{line}");
        for cell in &cells {
            let quoted = cell.starts_with('"') && cell.ends_with('"') && cell.len() >= 2;
            let plain = |c: char| c.is_ascii_alphanumeric() || "_-: ".contains(c);
            assert!(quoted || cell.chars().all(plain), "{cell} in {line}");
            assert!(
                !cell.starts_with("\"=") && !cell.starts_with("\"@"),
                "{cell}"
            );
        }
        // The hall is two hours ahead of the world.
        let [utc, local] = ["utc", "local"].map(|name| cells[column(name)].clone());
        let minute = |moment: &str| {
            let (hours, rest) = moment[11..].split_once(':').expect("a time");
            hours.parse::<u32>().expect("hours") * 60 + rest[..2].parse::<u32>().expect("minutes")
        };
        assert_eq!((minute(&utc) + 120) % (24 * 60), minute(&local), "{line}");
        matches.insert(cells[column("match")].clone());
        points += 1;
    }
    assert_eq!(matches.len(), 2);
    assert!(points > 100, "{points}");
}
