//! The core on a coordinator's command line.
//!
//! Exit status: 0 fine, 1 findings, 2 could not read.

use std::process::ExitCode;

use dutystand::game::{self, Replay};
use dutystand::record::{self, Reading};
use dutystand::rules::Preset;
use dutystand::sheet;

const USAGE: &str = "\
desk replay FILE…      the state after each match record, one JSON object a line
desk sheet FILE…       the sheet of each match record
desk rehearse [--seed S] [--matches N] [--preset NAME]
                       invented matches, one record a line
";

fn main() -> ExitCode {
    let mut args = std::env::args().skip(1);
    let command = args.next();
    let rest: Vec<String> = args.collect();
    match command.as_deref() {
        Some("replay") => over_files(&rest, replay),
        Some("sheet") => over_files(&rest, print_sheet),
        Some("rehearse") => rehearse(&rest),
        Some("--help" | "-h") => {
            print!("{USAGE}");
            ExitCode::SUCCESS
        }
        Some(other) => wrong(&format!("There is no command `{other}`.")),
        None => wrong("Say what to do."),
    }
}

fn wrong(say: &str) -> ExitCode {
    eprint!("{say}\n{USAGE}");
    ExitCode::from(2)
}

/// What became of one file; the worst over all files is the exit status.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
enum Verdict {
    Fine = 0,
    Findings = 1,
    Unreadable = 2,
}

fn over_files(files: &[String], each: fn(&str, &Reading) -> Verdict) -> ExitCode {
    if files.is_empty() {
        return wrong("Name at least one file.");
    }
    let worst = files
        .iter()
        .map(|name| match std::fs::read_to_string(name) {
            Ok(text) => {
                let reading = record::read(&text);
                for problem in reading.problems.iter().filter(|p| p.fatal) {
                    eprintln!("{name}: {}", problem.say);
                }
                if reading.is_nothing() {
                    Verdict::Unreadable
                } else {
                    each(name, &reading)
                }
            }
            Err(e) => {
                eprintln!("{name}: {e}. Check the name and try again.");
                Verdict::Unreadable
            }
        })
        .max()
        .unwrap_or(Verdict::Fine);
    ExitCode::from(worst as u8)
}

fn replay(_name: &str, reading: &Reading) -> Verdict {
    let fold = sheet::fold_print(reading);
    println!("{fold}");
    let none = |key: &str| {
        fold.get(key)
            .is_none_or(|v| v.as_array().is_none_or(Vec::is_empty))
    };
    if none("refused") && none("problems") {
        Verdict::Fine
    } else {
        Verdict::Findings
    }
}

fn print_sheet(name: &str, reading: &Reading) -> Verdict {
    for problem in &reading.problems {
        eprintln!("{name}: {}", problem.say);
    }
    let replay = Replay::of(reading.log.entries.clone());
    print!("{}", sheet::text(&sheet::Sheet::of(&replay)));
    if reading.problems.is_empty() {
        Verdict::Fine
    } else {
        Verdict::Findings
    }
}

/// Invented matches: each record on one line, from consecutive seeds.
fn rehearse(args: &[String]) -> ExitCode {
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
            return wrong(&format!(
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
        println!("{}", record::write(&log).replace('\n', ""));
    }
    ExitCode::SUCCESS
}
