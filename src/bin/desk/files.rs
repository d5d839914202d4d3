//! Files as somebody names them on a command line. Whatever cannot be read is said in one sentence with
//! the way out.

use std::io::Read;
use std::path::Path;

use record::{Handed, Log, Opened, Reading};
use reports::paper::{self, Draft, PaperSheet};
use reports::standings::{self, Pool};
use reports::{FileKind, Form, FormProblem};

use text::command_line as words;

use crate::print::complain;

/// A file may be so long: the largest that any reader takes.
const MAX_BYTES: usize = record::MAX_BACKUP_BYTES;

/// What is in a file.
fn bytes(name: &str) -> Option<Vec<u8>> {
    let most = MAX_BYTES as u64 + 1;
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(name).and_then(|file| file.take(most).read_to_end(&mut bytes))
    };
    let say = match read {
        Ok(n) if n > MAX_BYTES => words::too_large(MAX_BYTES >> 20),
        Ok(_) => return Some(bytes),
        Err(e) => words::not_readable(name, e.kind(), &e.to_string()),
    };
    complain(name, &say);
    None
}

/// The file of a name: that of a backup where the name is one of its parts, such as `backup.json#pool-1`.
fn file_of(name: &str) -> &str {
    match name.rsplit_once('#') {
        Some((file, _)) if !Path::new(name).exists() => file,
        _ => name,
    }
}

/// What a file was handed over as.
fn handed(name: &str) -> Option<Handed> {
    let read = record::handed(&bytes(name)?);
    read.map_err(|foreign| complain(name, &text::problem::foreign(&foreign)))
        .ok()
}

/// The record of a hand-over.
pub fn packed(name: &str) -> Option<Log> {
    match handed(name)? {
        Handed::Record(log) => Some(*log),
        Handed::Text(text) => match FileKind::of(&text) {
            Some(kind) => is_another(name, kind),
            None => {
                complain(name, words::not_packed());
                None
            }
        },
    }
}

/// What a file holds.
pub enum Given {
    /// Match records, and the paper sheets and pools of a backup.
    Matches(Matches),
    /// A paper sheet, and the fields of it that nobody knows.
    Paper(Box<PaperSheet>, Vec<FormProblem>),
    /// The results of a pool, likewise.
    Pool(Box<Pool>, Vec<FormProblem>),
}

/// What a file of matches holds, each under a name of its own: a match that is alone under that of the file.
#[derive(Default)]
pub struct Matches {
    /// The records.
    pub records: Vec<(String, Reading)>,
    /// The paper sheets of a backup.
    pub papers: Vec<(String, Draft)>,
    /// The results of its pools, and the fields of each that nobody knows.
    pub pools: Vec<(String, Box<Pool>, Vec<FormProblem>)>,
    /// Whether a part of a backup cannot be read.
    pub is_damaged: bool,
}

impl Matches {
    fn of_one(name: &str, reading: Reading) -> Matches {
        Matches {
            records: vec![(name.to_owned(), reading)],
            ..Matches::default()
        }
    }

    /// Whether there is neither a record nor a paper sheet.
    pub fn is_empty(&self) -> bool {
        self.records.is_empty() && self.papers.is_empty()
    }

    /// All of it. A pool and nothing else is that pool.
    fn all(mut self) -> Given {
        if self.is_empty() && self.pools.len() == 1 {
            let (_, pool, problems) = self.pools.swap_remove(0);
            return Given::Pool(pool, problems);
        }
        Given::Matches(self)
    }

    /// What is called so, of all of it.
    fn part(mut self, name: &str) -> Option<Given> {
        if let Some(place) = self.pools.iter().position(|pool| pool.0 == name) {
            let (_, pool, problems) = self.pools.swap_remove(place);
            return Some(Given::Pool(pool, problems));
        }
        self.records.retain(|record| record.0 == name);
        self.papers.retain(|paper| paper.0 == name);
        self.pools.clear();
        (!self.is_empty()).then_some(Given::Matches(self))
    }

    /// Says of the pools that they are not read here: each has a rule of order of its own.
    pub fn say_pools(&self) {
        for (name, ..) in &self.pools {
            complain(name, &words::pool_not_read(name));
        }
    }

    /// The records alone; that there are paper sheets and pools is said.
    pub fn records(self, name: &str) -> Option<Vec<(String, Reading)>> {
        self.say_pools();
        if !self.papers.is_empty() {
            complain(name, &words::papers_not_read(self.papers.len()));
        }
        (!self.records.is_empty()).then_some(self.records)
    }
}

/// Reads a file, or a part of a backup, as what it says that it is; one that says nothing as what is
/// expected here.
pub fn given(name: &str, expected: FileKind) -> Option<Given> {
    let file = file_of(name);
    let part = match whole(file, expected)? {
        Given::Matches(matches) if file == name => return Some(matches.all()),
        given if file == name => return Some(given),
        Given::Matches(matches) => matches.part(name),
        Given::Paper(..) | Given::Pool(..) => None,
    };
    if part.is_none() {
        complain(name, words::no_such_part());
    }
    part
}

fn whole(name: &str, expected: FileKind) -> Option<Given> {
    let text = match handed(name)? {
        Handed::Text(text) => text,
        Handed::Record(log) => {
            let reading = record::read(&record::write(&log));
            return Some(Given::Matches(Matches::of_one(name, reading)));
        }
    };
    match FileKind::of(&text).unwrap_or(expected) {
        FileKind::Paper => {
            form(name, paper::read(&text)).map(|(s, p)| Given::Paper(Box::new(s), p))
        }
        FileKind::Pool => {
            form(name, standings::read(&text)).map(|(s, p)| Given::Pool(Box::new(s), p))
        }
        FileKind::Match | FileKind::Backup => matches(name, &text).map(Given::Matches),
        kind @ (FileKind::Observer | FileKind::Logbook) => is_another(name, kind),
    }
}

fn matches(name: &str, text: &str) -> Option<Matches> {
    match record::open(text) {
        Opened::Match(reading) => readable(name, reading).map(|r| Matches::of_one(name, r)),
        Opened::Backup(backup) => {
            for problem in &backup.problems {
                complain(name, &text::problem::problem(problem));
            }
            let records = backup.matches.into_iter().filter_map(|one| {
                let name = format!("{name}#{}", one.reading.log.id);
                readable(&name, one.reading).map(|reading| (name, reading))
            });
            let papers = (1..).zip(&backup.desk.papers);
            let pools = (1..).zip(&backup.desk.pools);
            let pools = pools.filter_map(|(n, text)| {
                let name = format!("{name}#pool-{n}");
                let (pool, problems) = form(&name, standings::read(text))?;
                Some((name, Box::new(pool), problems))
            });
            let pools: Vec<_> = pools.collect();
            let unread = pools.len() < backup.desk.pools.len();
            let matches = Matches {
                records: records.collect(),
                papers: papers
                    .map(|(n, text)| (format!("{name}#paper-{n}"), Draft::of_written(text)))
                    .collect(),
                pools,
                is_damaged: unread || !backup.problems.is_empty(),
            };
            let is_nothing = matches.is_empty() && matches.pools.is_empty();
            (!is_nothing).then_some(matches)
        }
    }
}

/// The match records of a file.
pub fn records(name: &str) -> Option<Vec<(String, Reading)>> {
    match given(name, FileKind::Match)? {
        Given::Matches(matches) => matches.records(name),
        Given::Paper(..) => is_another(name, FileKind::Paper),
        Given::Pool(..) => is_another(name, FileKind::Pool),
    }
}

/// A paper sheet under its name, and the fields of it that nobody knows.
pub type Sheet = (String, PaperSheet, Vec<FormProblem>);

/// The paper sheets of a file.
pub fn sheets(name: &str) -> Option<Vec<Sheet>> {
    match given(name, FileKind::Paper)? {
        Given::Paper(sheet, problems) => Some(vec![(name.to_owned(), *sheet, problems)]),
        Given::Matches(matches) if !matches.papers.is_empty() => {
            matches.say_pools();
            let papers = matches.papers.into_iter();
            let sheets = papers.map(|(name, draft)| (name, draft.check(true).sheet, Vec::new()));
            Some(sheets.collect())
        }
        Given::Matches(_) => is_another(name, FileKind::Match),
        Given::Pool(..) => is_another(name, FileKind::Pool),
    }
}

/// The only match record of a file.
pub fn record(name: &str) -> Option<Reading> {
    only(name, records(name)?)
}

/// One record, where there are not several of them.
pub fn only(name: &str, mut all: Vec<(String, Reading)>) -> Option<Reading> {
    if all.len() > 1 {
        complain(name, &words::several(all.len(), &all[0].0));
        return None;
    }
    all.pop().map(|(_, reading)| reading)
}

/// A reading of which anything could be read; otherwise why not is said.
fn readable(name: &str, reading: Reading) -> Option<Reading> {
    for problem in reading.problems.iter().filter(|p| p.is_fatal()) {
        complain(name, &text::problem::problem(problem));
    }
    (!reading.is_nothing()).then_some(reading)
}

/// A form with the fields that were left out; why it cannot be read is said.
fn form<T>(name: &str, form: Form<T>) -> Option<(T, Vec<FormProblem>)> {
    for problem in &form.problems {
        let place = match problem.place.as_str() {
            "" => String::new(),
            place => format!("{place}: "),
        };
        complain(
            name,
            &format!("{place}{}", text::form_problem(&problem.kind)),
        );
    }
    Some((form.read?, form.problems))
}

/// Says what to do with a file of another kind than the command reads.
pub fn is_another<T>(name: &str, kind: FileKind) -> Option<T> {
    complain(name, &words::another_kind(kind));
    None
}
