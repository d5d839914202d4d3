//! The core on a coordinator's command line.
//!
//! Exit status: 0 fine, 1 findings, 2 could not read.

mod asked;
mod command_error;
mod files;
mod print;
mod rank;

use std::num::NonZeroU64;
use std::process::ExitCode;

use app::language::Language;
use asked::Asked;
use command_error::CommandError;
use files::Given;
use game::Timeline;
use print::{bytes, complain, line, lines, out};
use record::Reading;
use render::findings;
use render::list;
use reports::list::Line;
use reports::{audit, compare, paper, FileKind, FormProblem};
use rules::Preset;
use serde_json::{json, Value};
use text::command_help;

fn main() -> ExitCode {
    speak();
    let verdict = run();
    print::end();
    ExitCode::from(verdict as u8)
}

fn run() -> Verdict {
    let mut args = std::env::args().skip(1);
    let command = args.next().unwrap_or_default();
    let rest: Vec<String> = args.collect();
    let wants_help = rest.iter().any(|a| a == "--help" || a == "-h");
    let done = match (command.as_str(), command_help::help(&command)) {
        ("--help" | "-h" | "help", _) => {
            let of = rest.first().and_then(|name| command_help::help(name));
            out(&of.map_or_else(command_help::overview, str::to_owned));
            return Verdict::Fine;
        }
        (_, Some(more)) if wants_help => {
            out(more);
            return Verdict::Fine;
        }
        ("list", _) => {
            Asked::of(&rest, &["--csv", "--json"], &["--clock"]).and_then(|a| list_all(&a))
        }
        ("audit", _) => Asked::of(&rest, &["--json"], &[]).map(|a| audit_all(&a)),
        ("paper", _) => {
            Asked::of(&rest, &["--text", "--record", "--json"], &[]).map(|a| paper_all(&a))
        }
        ("compare", _) => {
            Asked::of(&rest, &["--text", "--json"], &[]).and_then(|a| compare_two(&a))
        }
        ("standings", _) => {
            let named = ["--by", "--points", "--meetings"];
            Asked::of(&rest, &["--text", "--csv", "--json"], &named).and_then(|a| rank::rank(&a))
        }
        ("sheet", _) => {
            Asked::of(&rest, &["--html", "--csv"], &["--clock"]).and_then(|a| print_sheets(&a))
        }
        ("replay", _) => Asked::of(&rest, &["--json"], &[]).map(|a| over_records(&a.files, replay)),
        ("pack", _) => Asked::of(&rest, &[], &[]).and_then(|a| pack(&a)),
        ("unpack", _) => Asked::of(&rest, &[], &[]).and_then(|a| unpack(&a)),
        ("simulate", _) => simulate(&rest),
        ("", _) => Err(CommandError::NoCommand),
        (other, _) => Err(CommandError::UnknownCommand(other.to_owned())),
    };
    done.unwrap_or_else(|why| {
        // Who is in a command already needs that one alone.
        let of = command_help::help(&command).map_or_else(command_help::overview, str::to_owned);
        print::refuse(&why.to_string(), &of);
        Verdict::Unreadable
    })
}

/// Speaks the language of the terminal: the first of these that is set counts (POSIX.1-2017, chapter 8.2).
fn speak() {
    let set = |name: &&str| std::env::var(name).is_ok_and(|value| !value.is_empty());
    let named = ["LC_ALL", "LC_MESSAGES", "LANG"].into_iter().find(set);
    let tag = named.and_then(|name| std::env::var(name).ok());
    match Language::wanted(None, tag) {
        Language::English => {}
        Language::Spanish => text::speak(Some(&text::es::SPANISH)),
    }
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

/// Adds the fields that were left out to the findings.
fn with_problems(mut printed: Value, problems: &[FormProblem]) -> Value {
    if let Some(findings) = printed["findings"].as_array_mut() {
        findings.extend(problems.iter().map(
            |p| json!({ "set": null, "where": p.place, "code": "unknown_field", "say": text::form_problem(&p.kind) }),
        ));
    }
    printed
}

fn over_records(files: &[String], mut each: impl FnMut(&str, &Reading) -> Verdict) -> Verdict {
    let mut worst = Verdict::Fine;
    for name in files {
        let Some(records) = files::records(name) else {
            worst = Verdict::Unreadable;
            continue;
        };
        for (name, reading) in &records {
            worst = worst.max(each(name, reading));
        }
    }
    worst
}

fn replay(_name: &str, reading: &Reading) -> Verdict {
    let fold = render::fold(reading);
    out(&format!("{fold}\n"));
    let some = |key: &str| {
        fold.get(key)
            .and_then(Value::as_array)
            .is_some_and(|list| !list.is_empty())
    };
    Verdict::of(some("refused") || some("problems"))
}

fn print_sheets(asked: &Asked) -> Result<Verdict, CommandError> {
    let clock = asked.hall_clock()?;
    let mut records: Vec<(String, Timeline)> = Vec::new();
    let verdict = over_records(&asked.files, |name, reading| {
        say_problems(name, reading);
        let timeline = Timeline::of(reading.log.entries.clone());
        if asked.is("--html") {
            out(&render::document(&reports::Sheet::of(&timeline), clock));
        } else if asked.is("--csv") {
            records.push((name.to_owned(), timeline));
        } else {
            lines(&render::sheet_text(&reports::Sheet::of(&timeline), clock));
        }
        Verdict::of(!reading.problems.is_empty())
    });
    if asked.is("--csv") {
        // One table for all of them.
        let records: Vec<_> = records
            .iter()
            .map(|(name, timeline)| (name.as_str(), timeline))
            .collect();
        lines(&render::points_csv(&records, clock));
    }
    Ok(verdict)
}

fn say_problems(name: &str, reading: &Reading) {
    for problem in &reading.problems {
        complain(name, &text::problem::problem(problem));
    }
}

/// A record as bytes for a hand-over.
fn pack(asked: &Asked) -> Result<Verdict, CommandError> {
    let name = asked.one(CommandError::NotOneRecord)?;
    let Some(reading) = files::record(name) else {
        return Ok(Verdict::Unreadable);
    };
    say_problems(name, &reading);
    match record::pack(&reading.log) {
        Ok(packed) => {
            bytes(&packed);
            Ok(Verdict::of(!reading.problems.is_empty()))
        }
        Err(why) => {
            complain(name, &text::problem::packed(&why));
            Ok(Verdict::Unreadable)
        }
    }
}

/// The record of a hand-over.
fn unpack(asked: &Asked) -> Result<Verdict, CommandError> {
    let name = asked.one(CommandError::NotOnePacked)?;
    let Some(log) = files::packed(name) else {
        return Ok(Verdict::Unreadable);
    };
    out(&record::write(&log));
    Ok(Verdict::Fine)
}

/// The lines of what lies on a desk, each with the name of its file.
type Listed = Vec<(String, Line)>;

/// The lines of records and paper sheets, and whether every file could be read.
fn listed(files: Vec<(&String, Option<Given>)>) -> (Listed, Verdict) {
    let mut listed = Vec::new();
    let mut verdict = Verdict::Fine;
    for (name, given) in files {
        match given {
            Some(Given::Matches(matches)) => {
                matches.say_pools();
                if matches.is_empty() {
                    verdict = Verdict::Unreadable;
                }
                listed.extend(matches.records.into_iter().map(line_of));
                let papers = matches.papers.into_iter();
                listed.extend(papers.map(|(name, draft)| (name, Line::of_paper(&draft))));
                verdict = verdict.max(Verdict::of(matches.is_damaged));
            }
            Some(Given::Paper(sheet, problems)) => {
                let draft = paper::Draft::of(&sheet);
                listed.push((name.clone(), Line::of_paper(&draft)));
                verdict = verdict.max(Verdict::of(!problems.is_empty()));
            }
            Some(Given::Pool(..)) => {
                files::is_another::<()>(name, FileKind::Pool);
                verdict = Verdict::Unreadable;
            }
            None => verdict = Verdict::Unreadable,
        }
    }
    (listed, verdict)
}

fn line_of((name, reading): (String, Reading)) -> (String, Line) {
    let timeline = Timeline::of(reading.log.entries.clone());
    (name, Line::of_record(&reading, &timeline))
}

/// Every file that was named, read.
fn all_given(asked: &Asked, expected: FileKind) -> Vec<(&String, Option<Given>)> {
    let names = asked.files.iter();
    names
        .map(|name| (name, files::given(name, expected)))
        .collect()
}

fn list_all(asked: &Asked) -> Result<Verdict, CommandError> {
    let hall = asked.hall_clock()?;
    let (listed, verdict) = listed(all_given(asked, FileKind::Match));
    if asked.is("--csv") {
        lines(&list::csv(&listed, |_| hall));
    } else if asked.is("--json") {
        out(&format!("{}\n", list::json(&listed)));
    } else {
        for (name, of) in &listed {
            line(&list::text(name, of));
        }
    }
    let findings = listed.iter().any(|(_, line)| line.findings.all() > 0);
    Ok(verdict.max(Verdict::of(findings)))
}

fn audit_all(asked: &Asked) -> Verdict {
    let mut all = Vec::new();
    let verdict = over_records(&asked.files, |name, reading| {
        let timeline = Timeline::of(reading.log.entries.clone());
        let findings = audit::audit(reading, &timeline);
        for finding in &findings {
            if asked.is("--json") {
                all.push(findings::json(name, finding, timeline.state()));
            } else {
                line(&findings::text(name, finding, timeline.state()));
            }
        }
        Verdict::of(!findings.is_empty())
    });
    if asked.is("--json") {
        out(&format!("{}\n", json!({ "findings": all })));
    }
    verdict
}

fn paper_all(asked: &Asked) -> Verdict {
    let mut verdict = Verdict::Fine;
    let mut sheets = Vec::new();
    for name in &asked.files {
        match files::sheets(name) {
            Some(of_file) => sheets.extend(of_file),
            None => verdict = Verdict::Unreadable,
        }
    }
    let several = asked.files.len() > 1 || sheets.len() > 1;
    let one = |(name, sheet, problems): files::Sheet| {
        let checked = paper::check(&sheet);
        if asked.is("--record") {
            out(&record::write(&checked.log));
        } else if asked.is("--text") {
            if several {
                line(&format!("{name}:"));
            }
            lines(&render::paper::text(&sheet, &checked));
        } else {
            let mut printed = with_problems(render::paper::json(&sheet, &checked), &problems);
            if several {
                printed["file"] = name.as_str().into();
            }
            out(&format!("{printed}\n"));
        }
        Verdict::of(!checked.findings.is_empty() || !problems.is_empty())
    };
    sheets.into_iter().map(one).fold(verdict, Verdict::max)
}

/// The fold of a record, or of what can be rebuilt of a paper sheet.
fn fold(name: &str) -> Option<Timeline> {
    match files::given(name, FileKind::Match)? {
        Given::Matches(matches) => match &matches.papers[..] {
            [(_, draft)] if matches.records.is_empty() => {
                Some(Timeline::of(draft.check(true).checked.log.entries))
            }
            _ => {
                let reading = files::only(name, matches.records(name)?)?;
                say_problems(name, &reading);
                Some(Timeline::of(reading.log.entries))
            }
        },
        Given::Paper(sheet, _) => Some(Timeline::of(paper::check(&sheet).log.entries)),
        Given::Pool(..) => files::is_another(name, FileKind::Pool),
    }
}

fn compare_two(asked: &Asked) -> Result<Verdict, CommandError> {
    let [a, b] = &asked.files[..] else {
        return Err(CommandError::NotTwoRecords);
    };
    let (Some(first), Some(second)) = (fold(a), fold(b)) else {
        return Ok(Verdict::Unreadable);
    };
    let comparison = compare::compare(&first, &second);
    if asked.is("--text") {
        lines(&render::comparison::text(&comparison));
    } else {
        out(&format!("{}\n", render::comparison::json(&comparison)));
    }
    Ok(Verdict::of(!comparison.differences.is_empty()))
}

/// Invented matches: each record on one line, from consecutive seeds.
fn simulate(args: &[String]) -> Result<Verdict, CommandError> {
    let (mut seed, mut matches, mut preset) = (1u64, 1u64, Preset::International);
    let mut args = args.iter();
    while let Some(name) = args.next() {
        if !["--seed", "--matches", "--preset"].contains(&name.as_str()) {
            return Err(CommandError::UnknownOption(name.clone()));
        }
        let value = args
            .next()
            .ok_or_else(|| CommandError::NoValue(name.clone()))?;
        let understood = match name.as_str() {
            "--seed" => value.parse().map(|v| seed = v).is_ok(),
            "--matches" => value.parse().map(|v: NonZeroU64| matches = v.get()).is_ok(),
            _ => Preset::from_code(value).map(|v| preset = v).is_some(),
        };
        if !understood {
            return Err(CommandError::WrongValue {
                option: name.clone(),
                value: value.clone(),
            });
        }
    }
    for seed in seed..seed.saturating_add(matches) {
        let entries = game::simulate(preset, seed);
        let log = record::Log {
            id: format!("rehearsal-{}-{seed}", preset.code()),
            entries,
        };
        out(&format!("{}\n", record::write(&log).replace('\n', "")));
    }
    Ok(Verdict::Fine)
}
