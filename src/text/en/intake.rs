//! The words about files that are taken in.

use crate::intake::*;
use app::machine::ReadTrouble;
use record::{Foreign, Reading};

/// In English.
pub static WORDS: IntakeWords = IntakeWords {
    unreadable_file,
    foreign_file,
    reading_problems,
    left_out,
    import_not_saved,
};

fn unreadable_file(name: &str, trouble: &ReadTrouble) -> String {
    match trouble {
        ReadTrouble::TooBig { .. } => {
            format!("{name} is far too large for a match. Choose another file.")
        }
        ReadTrouble::Unreadable(why) => {
            format!(
                "{name} could not be read{}. Choose it again.",
                crate::machine::in_its_words(why)
            )
        }
    }
}

fn foreign_file(name: &str, foreign: &Foreign) -> String {
    format!("{name}: {}", crate::problem::foreign(foreign))
}

fn reading_problems(name: &str, reading: &Reading) -> Vec<String> {
    const MOST: usize = 5;
    let mut words: Vec<String> = reading
        .problems
        .iter()
        .take(MOST)
        .map(|p| {
            let say = crate::problem::problem(p);
            let say = say.trim_end_matches('.');
            match p.entry {
                Some(entry) => format!("{name}, entry {entry}: {say}."),
                None => format!("{name}: {say}."),
            }
        })
        .collect();
    if reading.problems.len() > MOST {
        words.push(format!(
            "{name}: {} more like this.",
            reading.problems.len() - MOST
        ));
    }
    words
}

fn left_out(name: &str, count: usize) -> String {
    format!("{name}: {count} entries have impossible numbers and were left out.")
}

fn import_not_saved(name: &str) -> String {
    format!("Not all of {name} could be saved on this phone. Keep the file.")
}
