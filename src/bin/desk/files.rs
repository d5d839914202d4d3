//! Files as somebody names them on a command line. Whatever cannot be read is said in one sentence with
//! the way out.

use std::io::{ErrorKind, Read};

use dutystand::record::{self, Opened, Reading};
use dutystand::sheet::paper::{self, PaperSheet};
use dutystand::sheet::standings::{self, Pool};
use dutystand::sheet::{FileKind, Form, FormProblem};

/// A file may be so long: the largest that any reader takes.
const MOST_BYTES: usize = record::MOST_BACKUP_BYTES;
/// A packed record begins with its version, a text never with such a byte.
const FIRST_OF_TEXT: u8 = 9;

/// Says what is wrong with a file.
pub fn complain(name: &str, say: &str) {
    eprintln!("{name}: {say}");
}

/// What is in a file.
fn bytes(name: &str) -> Option<Vec<u8>> {
    let most = MOST_BYTES as u64 + 1;
    let mut bytes = Vec::new();
    let read = if name == "-" {
        std::io::stdin().take(most).read_to_end(&mut bytes)
    } else {
        std::fs::File::open(name).and_then(|file| file.take(most).read_to_end(&mut bytes))
    };
    let say = match read {
        Ok(0) => "There is nothing in this file. Ask for it once more.".to_owned(),
        Ok(n) if n > MOST_BYTES => format!(
            "This file has more than {} MB, more than any of ours. Choose another file.",
            MOST_BYTES >> 20
        ),
        Ok(_) => return Some(bytes),
        Err(e) => match e.kind() {
            ErrorKind::NotFound => {
                "There is no such file. Check its name, and the folder you are in.".to_owned()
            }
            ErrorKind::IsADirectory => {
                format!("This is a folder. Name the files in it, such as {name}/*.json.")
            }
            ErrorKind::PermissionDenied => {
                "You may not read this file. Ask its owner for a copy.".to_owned()
            }
            _ => format!("It cannot be read ({e}). Try again, or copy it here first."),
        },
    };
    complain(name, &say);
    None
}

/// The bytes of a packed record.
pub fn packed(name: &str) -> Option<Vec<u8>> {
    let bytes = bytes(name)?;
    if bytes.first().is_some_and(|b| *b < FIRST_OF_TEXT) {
        return Some(bytes);
    }
    let text = String::from_utf8_lossy(&bytes);
    match FileKind::of(&text) {
        Some(kind) => is_another(name, kind),
        None => {
            complain(name, "This is no packed record. desk pack makes one.");
            None
        }
    }
}

/// What a file holds.
pub enum Given {
    /// Match records, each under a name of its own: of one record that of the file.
    Records(Vec<(String, Reading)>),
    /// A paper sheet, and the fields of it that nobody knows.
    Paper(Box<PaperSheet>, Vec<FormProblem>),
    /// The results of a pool, likewise.
    Pool(Box<Pool>, Vec<FormProblem>),
}

/// Reads a file as what it says that it is; one that says nothing as what is expected here.
pub fn given(name: &str, expected: FileKind) -> Option<Given> {
    let bytes = bytes(name)?;
    if bytes.first().is_some_and(|b| *b < FIRST_OF_TEXT) {
        return match record::unpack(&bytes) {
            Ok(log) => {
                let reading = record::read(&record::write(&log));
                Some(Given::Records(vec![(name.to_owned(), reading)]))
            }
            Err(why) => {
                complain(name, &why);
                None
            }
        };
    }
    let Ok(text) = String::from_utf8(bytes) else {
        complain(
            name,
            "This is no text, so it is none of our files. Choose another one.",
        );
        return None;
    };
    match FileKind::of(&text).unwrap_or(expected) {
        FileKind::Paper => {
            form(name, paper::read(&text)).map(|(s, p)| Given::Paper(Box::new(s), p))
        }
        FileKind::Pool => {
            form(name, standings::read(&text)).map(|(s, p)| Given::Pool(Box::new(s), p))
        }
        FileKind::Match | FileKind::Backup => all_records(name, &text).map(Given::Records),
    }
}

fn all_records(name: &str, text: &str) -> Option<Vec<(String, Reading)>> {
    match record::open(text) {
        Opened::Match(reading) => readable(name, reading).map(|r| vec![(name.to_owned(), r)]),
        Opened::Backup(backup) => {
            for problem in &backup.problems {
                complain(name, &problem.say);
            }
            let matches = backup.matches.into_iter().filter_map(|one| {
                let name = format!("{name}#{}", one.reading.log.id);
                readable(&name, one.reading).map(|reading| (name, reading))
            });
            let matches: Vec<_> = matches.collect();
            (!matches.is_empty()).then_some(matches)
        }
    }
}

/// The match records of a file.
pub fn records(name: &str) -> Option<Vec<(String, Reading)>> {
    match given(name, FileKind::Match)? {
        Given::Records(records) => Some(records),
        Given::Paper(..) => is_another(name, FileKind::Paper),
        Given::Pool(..) => is_another(name, FileKind::Pool),
    }
}

/// The paper sheet of a file, and the fields of it that nobody knows.
pub fn sheet(name: &str) -> Option<(PaperSheet, Vec<FormProblem>)> {
    match given(name, FileKind::Paper)? {
        Given::Paper(sheet, problems) => Some((*sheet, problems)),
        Given::Records(_) => is_another(name, FileKind::Match),
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
        let say = format!(
            "This is a backup of {} matches, and one is wanted here. Export that match alone.",
            all.len()
        );
        complain(name, &say);
        return None;
    }
    all.pop().map(|(_, reading)| reading)
}

/// A reading of which anything could be read; otherwise why not is said.
fn readable(name: &str, reading: Reading) -> Option<Reading> {
    for problem in reading.problems.iter().filter(|p| p.fatal) {
        complain(name, &problem.say);
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
        complain(name, &format!("{place}{}", problem.say));
    }
    Some((form.read?, form.problems))
}

/// Says what to do with a file of another kind than the command reads.
pub fn is_another<T>(name: &str, kind: FileKind) -> Option<T> {
    let way = match kind {
        FileKind::Match | FileKind::Backup => "desk audit, desk sheet and desk list read it",
        FileKind::Paper => "desk paper reads it",
        FileKind::Pool => "desk standings reads it",
    };
    complain(name, &format!("This is {}: {way}.", kind.words()));
    None
}
