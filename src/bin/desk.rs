//! The core on a coordinator's command line.
//!
//! Exit status: 0 fine, 1 findings, 2 could not read.

use std::io::{Read, Write};
use std::process::ExitCode;

use dutystand::game::{self, Replay};
use dutystand::record::{self, Reading};
use dutystand::rules::Preset;
use dutystand::sheet::{self, audit, compare, paper, standings, Form, FormProblem, WallClock};
use serde_json::{json, Value};

const USAGE: &str = "\
desk replay FILE…      the state after each match record, one JSON object a line
desk sheet FILE…       the sheet of each match record; --html to print it, --csv for its points;
                       --clock +02:00 for the time in the hall, without it universal time
desk pack FILE         a match record in few bytes, for a hand-over
desk unpack FILE       the match record of such bytes
desk audit FILE…       what to look at in match records, one finding a line
desk paper FILE…       paper sheets that were keyed in: rally order and findings as JSON;
                       --text to read them, --record for the rebuilt match record
desk compare A B       where two records of one match part, as JSON; --text to read it
desk standings FILE    the table of a pool as JSON; --text to read it, --csv for a spreadsheet
desk rehearse [--seed S] [--matches N] [--preset NAME]
                       invented matches, one record a line
A FILE of - is standard input. --json prints one JSON object with the findings.
Exit status: 0 fine, 1 findings, 2 could not read.
";

/// Prints. Whoever reads may have seen enough and gone: then there is nothing left to do.
fn out(text: &str) {
    if std::io::stdout().write_all(text.as_bytes()).is_err() {
        std::process::exit(0);
    }
}

fn main() -> ExitCode {
    let mut args = std::env::args().skip(1);
    let command = args.next();
    let rest: Vec<String> = args.collect();
    let done = match command.as_deref() {
        Some("replay") => Asked::of(&rest, &[]).map(|a| over_records(&a.files, replay)),
        Some("sheet") => print_sheets(&rest),
        Some("pack") => pack(&rest),
        Some("unpack") => unpack(&rest),
        Some("audit") => Asked::of(&rest, &[]).map(|a| audit_all(&a)),
        Some("paper") => Asked::of(&rest, &["--text", "--record"]).map(|a| paper_all(&a)),
        Some("compare") => Asked::of(&rest, &["--text"]).and_then(|a| compare_two(&a)),
        Some("standings") => Asked::of(&rest, &["--text", "--csv"]).and_then(|a| rank(&a)),
        Some("rehearse") => rehearse(&rest),
        Some("--help" | "-h") => {
            out(USAGE);
            Ok(Verdict::Fine)
        }
        Some(other) => Err(format!("There is no command `{other}`.")),
        None => Err("Say what to do.".to_owned()),
    };
    let verdict = done.unwrap_or_else(|say| {
        eprint!("{say}\n{USAGE}");
        Verdict::Unreadable
    });
    ExitCode::from(verdict as u8)
}

/// What became of one file; the worst over all files is the exit status.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Verdict {
    Fine = 0,
    Findings = 1,
    Unreadable = 2,
}

impl Verdict {
    fn of(findings: bool) -> Verdict {
        if findings {
            Verdict::Findings
        } else {
            Verdict::Fine
        }
    }
}

/// The files of a command and how it is to print.
struct Asked {
    files: Vec<String>,
    json: bool,
    how: Option<String>,
}

impl Asked {
    fn of(args: &[String], ways: &[&str]) -> Result<Asked, String> {
        let mut asked = Asked {
            files: Vec::new(),
            json: false,
            how: None,
        };
        for arg in args {
            if arg == "--json" {
                asked.json = true;
            } else if ways.contains(&arg.as_str()) {
                asked.how = Some(arg.clone());
            } else if arg.starts_with("--") {
                return Err(format!("`{arg}` is not understood here."));
            } else {
                asked.files.push(arg.clone());
            }
        }
        if asked.files.is_empty() {
            return Err("Name at least one file.".to_owned());
        }
        Ok(asked)
    }

    fn is(&self, way: &str) -> bool {
        self.how.as_deref() == Some(way)
    }
}

/// What is in a file, no more of it than `most` bytes.
fn bytes(name: &str, most: u64) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(name).and_then(|file| file.take(most).read_to_end(&mut bytes))
    };
    match read {
        Ok(_) => Some(bytes),
        Err(e) => {
            eprintln!("{name}: {e}. Check the name and try again.");
            None
        }
    }
}

/// The text of a file, no more of it than any reader takes.
fn text(name: &str) -> Option<String> {
    let most = record::MOST_BYTES as u64 + 1;
    let bytes = bytes(name, most)?;
    // A file that is cut off here may end within a letter.
    if bytes.len() as u64 == most {
        return Some(String::from_utf8_lossy(&bytes).into_owned());
    }
    let text = String::from_utf8(bytes).ok();
    if text.is_none() {
        eprintln!("{name}: This is no text. Choose another file.");
    }
    text
}

/// A match record; why it cannot be read is said.
fn record(name: &str) -> Option<Reading> {
    let reading = record::read(&text(name)?);
    for problem in reading.problems.iter().filter(|p| p.fatal) {
        eprintln!("{name}: {}", problem.say);
    }
    (!reading.is_nothing()).then_some(reading)
}

/// A form with the fields that were left out; why it cannot be read is said.
fn form<T>(name: &str, read: fn(&str) -> Form<T>) -> Option<(T, Vec<FormProblem>)> {
    let Form {
        read: form,
        problems,
    } = read(&text(name)?);
    for problem in &problems {
        let place = match problem.place.as_str() {
            "" => String::new(),
            place => format!("{place}: "),
        };
        eprintln!("{name}: {place}{}", problem.say);
    }
    Some((form?, problems))
}

/// Adds the fields that were left out to the findings.
fn with_problems(mut printed: Value, problems: &[FormProblem]) -> Value {
    if let Some(findings) = printed["findings"].as_array_mut() {
        findings.extend(problems.iter().map(
            |p| json!({ "set": null, "where": p.place, "code": "unknown_field", "say": p.say }),
        ));
    }
    printed
}

fn over_records(files: &[String], each: impl Fn(&str, &Reading) -> Verdict) -> Verdict {
    let one = |name: &String| record(name).map_or(Verdict::Unreadable, |r| each(name, &r));
    files.iter().map(one).max().unwrap_or(Verdict::Fine)
}

fn replay(_name: &str, reading: &Reading) -> Verdict {
    let fold = sheet::fold_print(reading);
    out(&format!("{fold}\n"));
    let some = |key: &str| {
        fold.get(key)
            .and_then(Value::as_array)
            .is_some_and(|list| !list.is_empty())
    };
    Verdict::of(some("refused") || some("problems"))
}

fn print_sheets(args: &[String]) -> Result<Verdict, String> {
    // The hall's clock is not in the record.
    let mut clock = WallClock::default();
    let mut rest = Vec::new();
    let mut args = args.iter();
    while let Some(arg) = args.next() {
        if arg == "--clock" {
            let given = args.next().and_then(|value| WallClock::read(value));
            clock = given.ok_or("--clock wants how far the hall is ahead, such as +02:00.")?;
        } else {
            rest.push(arg.clone());
        }
    }
    let asked = Asked::of(&rest, &["--html", "--csv"])?;
    let print = |replay: &Replay| {
        if asked.is("--html") {
            out(&sheet::document(&sheet::Sheet::of(replay), clock));
        } else if asked.is("--csv") {
            out(&sheet::csv(replay));
        } else {
            out(&sheet::text(&sheet::Sheet::of(replay), clock));
        }
    };
    Ok(over_records(&asked.files, |name, reading| {
        for problem in &reading.problems {
            eprintln!("{name}: {}", problem.say);
        }
        print(&Replay::of(reading.log.entries.clone()));
        Verdict::of(!reading.problems.is_empty())
    }))
}

/// A record as bytes for a hand-over.
fn pack(args: &[String]) -> Result<Verdict, String> {
    let asked = Asked::of(args, &[])?;
    let [name] = &asked.files[..] else {
        return Err("Name one record.".to_owned());
    };
    let Some(reading) = record(name) else {
        return Ok(Verdict::Unreadable);
    };
    for problem in &reading.problems {
        eprintln!("{name}: {}", problem.say);
    }
    match record::pack(&reading.log) {
        Ok(bytes) => {
            write_out(&bytes)?;
            Ok(Verdict::of(!reading.problems.is_empty()))
        }
        Err(why) => {
            eprintln!("{name}: {why}");
            Ok(Verdict::Unreadable)
        }
    }
}

/// The record of a hand-over.
fn unpack(args: &[String]) -> Result<Verdict, String> {
    let asked = Asked::of(args, &[])?;
    let [name] = &asked.files[..] else {
        return Err("Name one hand-over.".to_owned());
    };
    let Some(bytes) = bytes(name, record::MOST_PACKED as u64 + 1) else {
        return Ok(Verdict::Unreadable);
    };
    match record::unpack(&bytes) {
        Ok(log) => {
            write_out(record::write(&log).as_bytes())?;
            Ok(Verdict::Fine)
        }
        Err(why) => {
            eprintln!("{name}: {why}");
            Ok(Verdict::Unreadable)
        }
    }
}

/// To the standard output as it is.
fn write_out(bytes: &[u8]) -> Result<(), String> {
    let mut out = std::io::stdout().lock();
    let written = out.write_all(bytes).and_then(|()| out.flush());
    written.map_err(|e| format!("The output could not be written: {e}."))
}

fn audit_all(asked: &Asked) -> Verdict {
    let mut verdict = Verdict::Fine;
    let mut all = Vec::new();
    for name in &asked.files {
        let Some(reading) = record(name) else {
            verdict = Verdict::Unreadable;
            continue;
        };
        let replay = Replay::of(reading.log.entries.clone());
        for finding in audit::audit(&reading, &replay) {
            verdict = verdict.max(Verdict::Findings);
            if asked.json {
                all.push(audit::json(name, &finding, replay.state()));
            } else {
                out(&format!(
                    "{}\n",
                    audit::text(name, &finding, replay.state())
                ));
            }
        }
    }
    if asked.json {
        out(&format!("{}\n", json!({ "findings": all })));
    }
    verdict
}

fn paper_all(asked: &Asked) -> Verdict {
    let one = |name: &String| {
        let Some((sheet, problems)) = form(name, paper::read) else {
            return Verdict::Unreadable;
        };
        let checked = paper::check(&sheet);
        if asked.is("--record") {
            out(&record::write(&checked.log));
        } else if asked.is("--text") {
            out(&paper::text(&sheet, &checked));
        } else {
            let mut printed = with_problems(paper::json(&sheet, &checked), &problems);
            if asked.files.len() > 1 {
                printed["file"] = name.as_str().into();
            }
            out(&format!("{printed}\n"));
        }
        Verdict::of(!checked.findings.is_empty() || !problems.is_empty())
    };
    asked.files.iter().map(one).max().unwrap_or(Verdict::Fine)
}

fn compare_two(asked: &Asked) -> Result<Verdict, String> {
    let [a, b] = &asked.files[..] else {
        return Err("Name two records of one match.".to_owned());
    };
    let (Some(first), Some(second)) = (record(a), record(b)) else {
        return Ok(Verdict::Unreadable);
    };
    for (name, reading) in [(a, &first), (b, &second)] {
        for problem in &reading.problems {
            eprintln!("{name}: {}", problem.say);
        }
    }
    let fold = |reading: Reading| Replay::of(reading.log.entries);
    let comparison = compare::compare(&fold(first), &fold(second));
    if asked.is("--text") {
        out(&compare::text(&comparison));
    } else {
        out(&format!("{}\n", compare::json(&comparison)));
    }
    Ok(Verdict::of(!comparison.differences.is_empty()))
}

fn rank(asked: &Asked) -> Result<Verdict, String> {
    let [name] = &asked.files[..] else {
        return Err("Name one file with the results of one pool.".to_owned());
    };
    let Some((pool, problems)) = form(name, standings::read) else {
        return Ok(Verdict::Unreadable);
    };
    let table = standings::rank(&pool);
    if asked.is("--csv") {
        out(&standings::csv(&table));
        for finding in &table.findings {
            let say = standings::say_finding(finding, &pool);
            eprintln!("{name}: {}: {say}", finding.place());
        }
    } else if asked.is("--text") {
        out(&standings::text(&pool, &table));
    } else {
        let printed = with_problems(standings::json(&pool, &table), &problems);
        out(&format!("{printed}\n"));
    }
    Ok(Verdict::of(
        !table.findings.is_empty() || !problems.is_empty(),
    ))
}

/// Invented matches: each record on one line, from consecutive seeds.
fn rehearse(args: &[String]) -> Result<Verdict, String> {
    let (mut seed, mut matches, mut preset) = (1u64, 1u64, Preset::International);
    let mut args = args.iter();
    while let Some(name) = args.next() {
        let value = args.next().map(String::as_str);
        let understood = match (name.as_str(), value) {
            ("--seed", Some(v)) => v.parse().map(|v| seed = v).is_ok(),
            ("--matches", Some(v)) => v.parse().map(|v| matches = v).is_ok(),
            ("--preset", Some(v)) => Preset::from_code(v).map(|v| preset = v).is_some(),
            _ => false,
        };
        if !understood {
            return Err(format!(
                "`{name}` is not understood here, or its value is missing."
            ));
        }
    }
    for seed in seed..seed.saturating_add(matches) {
        let entries = game::rehearse(preset, seed);
        let log = record::Log {
            id: format!("rehearsal-{}-{seed}", preset.code()),
            entries,
        };
        out(&format!("{}\n", record::write(&log).replace('\n', "")));
    }
    Ok(Verdict::Fine)
}
