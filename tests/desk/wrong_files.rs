//! Files that are wrong, or meant to do harm, on the command line: what is said of them, and what is printed.

use record::Log;
use rules::Preset;
use serde_json::{json, Value};

use super::command::{case, desk, file, simulated};

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

/// Every kind of wrong input: one sentence that names the file and the way out, and never a panic.
#[test]
fn each_wrong_file_is_refused_with_the_way_out() {
    let folder = env!("CARGO_TARGET_TMPDIR");
    let empty = file("empty.json", "");
    let prose = file("prose.txt", "Otters won, I think.");
    let deep = file("deep.json", &"[".repeat(200_000));
    let newer = file(
        "newer.json",
        &simulated(1).replacen("\"version\":2", "\"version\":9", 1),
    );
    let newer_sheet = file(
        "newer-sheet.json",
        &case("paper", 0).replacen("\"version\":1", "\"version\":9", 1),
    );
    let sheet = file("kind-paper.json", &case("paper", 0));
    let pool = file("kind-pool.json", &case("standings", 0));
    let record = file("kind-record.json", &simulated(1));
    let zip = file("record.zip", b"PK\x03\x04\x14\0\0\0");
    let picture = file("sheet.jpg", b"\xff\xd8\xff\xe0\0\x10JFIF");
    let pdf = file("sheet.pdf", b"%PDF-1.7\n%\xe2\xe3");
    let letters = file("letters.json", b"{\"a\":\"\xc3\xa9\",\"b\":\"\xe9\"}");
    let headless = |name: &str, from: &str, to: &str| {
        let text = simulated(1).replacen(from, to, 1);
        file(name, &text)
    };
    let list = file("a-list.json", "[]");
    let other = headless("other-log.json", "volleyball-match", "volleyball-scores");
    let ageless = headless("ageless.json", "\"version\":2,", "");
    let hollow = headless("hollow.json", "\"entries\":", "\"entry\":");
    let wrong = [
        ("replay", &*list, "Choose another file."),
        (
            "replay",
            &other,
            "is not a match record of this app. Choose another file.",
        ),
        (
            "audit",
            &ageless,
            "which version it has. Ask for the file again.",
        ),
        (
            "sheet",
            &hollow,
            "no list of entries. Ask for the file again.",
        ),
        (
            "audit",
            &*zip,
            "Unpack it first, then choose the file inside it.",
        ),
        ("list", &picture, "This is a picture, not a record."),
        ("unpack", &pdf, "This is a PDF"),
        ("paper", &letters, "save it there as UTF-8."),
        ("audit", "no-such.json", "There is no such file."),
        ("list", folder, "This is a folder. Name the files in it"),
        ("paper", &empty, "There is nothing in this file."),
        ("unpack", &empty, "There is nothing in this file."),
        (
            "replay",
            &prose,
            "This is not a match record, or it is damaged (line 1)",
        ),
        (
            "standings",
            &deep,
            "The file is damaged or cut off in line 1",
        ),
        ("sheet", &newer, "newer version (9)"),
        ("paper", &newer_sheet, "newer version (9)"),
        (
            "audit",
            &sheet,
            "This is a keyed-in paper sheet: desk paper reads it.",
        ),
        (
            "sheet",
            &pool,
            "This is the results of a pool: desk standings reads it.",
        ),
        ("paper", &record, "This is a match record: desk audit"),
        ("pack", &sheet, "desk paper reads it."),
        ("list", &pool, "desk standings reads it."),
        ("unpack", &record, "This is a match record: desk audit"),
        ("unpack", &prose, "This is no packed record."),
    ];
    for (command, name, say) in wrong {
        let run = desk(&[command, name]);
        assert_eq!((run.status, run.out.as_str()), (2, ""), "{command} {name}");
        let line = format!("{name}: ");
        assert!(
            run.err.starts_with(&line) && run.err.contains(say),
            "{command}: {}",
            run.err
        );
        assert_eq!(run.err.lines().count(), 1, "{command}: {}", run.err);
    }
}

/// A terminal obeys control characters, and direction characters turn what follows. Scripts get the letters as
/// they are, with the escapes of JSON.
#[test]
fn no_name_acts_on_a_terminal() {
    const ODD: &str = "\u{1b}[2J\u{9b}31m\u{7}\u{202e}Ot\u{2066}ters\u{7f}\r";
    let is_plain = |text: &str| {
        let ends = text.replace("\r\n", "\n");
        let acts = |c: char| c != '\n' && c.is_control() || ('\u{2028}'..='\u{2069}').contains(&c);
        assert!(!ends.contains(acts), "{text:?}");
    };
    let escaped = json!(ODD).to_string();
    let odd = |text: &str, name: &str| {
        let changed = text.replace(&format!("\"{name}\""), &escaped);
        assert_ne!(changed, text);
        changed
    };
    let record = file(&format!("{ODD}record.json"), &odd(&simulated(5), "Herons"));
    let other = file(&format!("{ODD}other.json"), &simulated(6));
    let name = serde_json::from_str::<Value>(&case("paper", 3)).expect("a sheet");
    let name = name["teams"]["A"]["name"]
        .as_str()
        .expect("a name")
        .to_owned();
    let sheet = file(&format!("{ODD}sheet.json"), &odd(&case("paper", 3), &name));
    let pool = file(
        &format!("{ODD}pool.json"),
        &odd(&case("standings", 1), "Otters"),
    );
    let none = format!("no-such{ODD}.json");
    for args in [
        ["list", &record, &sheet],
        ["list", "--csv", &record],
        ["audit", &record, &none],
        ["sheet", &record, &other],
        ["sheet", "--csv", &record],
        ["paper", "--text", &sheet],
        ["standings", "--text", &pool],
        ["standings", "--csv", &pool],
        ["replay", &none, ODD],
        [ODD, ODD, ODD],
    ] {
        let run = desk(&args);
        is_plain(&run.out);
        is_plain(&run.err);
    }
    let run = desk(&["compare", "--text", &record, &other]);
    assert!(run.out.contains("Ot"), "{}", run.out);
    is_plain(&run.out);
    // Each of these has one line, whatever the names.
    let broken = file("broken\n.json", &simulated(5));
    assert_eq!(desk(&["list", &broken]).out.lines().count(), 1);
    assert_eq!(desk(&["audit", "no\nfile"]).err.lines().count(), 1);
    let two_lines = case("standings", 1).replace("\"Otters\"", "\"Otters\\n1 Herons\"");
    let plain = desk(&[
        "standings",
        "--text",
        &file("one-line.json", &case("standings", 1)),
    ])
    .out;
    let run = desk(&["standings", "--text", &file("two-lines.json", &two_lines)]);
    assert_eq!(
        run.out.lines().count(),
        plain.lines().count(),
        "{}",
        run.out
    );
    // For a script.
    let listed = desk(&["list", "--json", &record]).json();
    assert_eq!(listed["list"][0]["file"], record.as_str());
}

#[test]
fn a_name_in_a_list_is_no_formula() {
    let mut entries = game::simulate(Preset::SchoolJunior, 5);
    if let game::Kind::Match(heading) = &mut entries[0].kind {
        heading.names.a = "=HYPERLINK(\"x\")".to_owned();
    }
    let log = Log {
        id: "formula".to_owned(),
        entries,
    };
    let record = file("list-formula.json", &record::write(&log));
    for args in [["list", "--csv", &record], ["standings", "--csv", &record]] {
        let csv = desk(&args).out;
        assert!(csv.contains("\"'=HYPERLINK(\"\"x\"\")\""), "{csv}");
    }
}

/// What stands behind a whole record takes nothing from it, and is not taken for its missing end.
#[test]
fn what_stands_behind_a_record_is_said() {
    let text = simulated(1);
    let whole = desk(&["replay", &file("alone.json", &text)]).json();
    let flat = text.replace('\n', "");
    for (name, more) in [
        ("behind-words.json", format!("{text} and so on")),
        ("behind-record.json", format!("{flat}\n{}", simulated(2))),
    ] {
        let run = desk(&["replay", &file(name, &more)]);
        assert_eq!(run.status, 1, "{name}: {}", run.err);
        let state = run.json();
        assert_eq!(state["entries"], whole["entries"], "{name}");
        let said = state["problems"][0]["say"].to_string();
        assert!(
            said.contains("something else stands behind the record"),
            "{name}: {said}"
        );
    }
    // Damage in the middle is no cut.
    let middle = flat.len() / 2;
    let damaged = format!("{}\0\0{}", &flat[..middle], &flat[middle..]);
    let run = desk(&["replay", &file("middle.json", &damaged)]);
    let state = run.json();
    assert!(state["entries"].as_u64() < whole["entries"].as_u64());
    let said = state["problems"][0]["say"].to_string();
    assert!(
        said.contains("damaged and cannot be read to its end"),
        "{said}"
    );
}
