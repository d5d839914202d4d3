//! The words about files that are taken in, in Spanish.

use crate::intake::*;
use app::machine::ReadTrouble;
use record::{Foreign, Reading};

/// In Spanish.
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
            format!("{name} es demasiado grande para un partido. Elige otro archivo.")
        }
        ReadTrouble::Unreadable(why) => {
            format!(
                "{name} no se pudo leer{}. Elígelo otra vez.",
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
                Some(entry) => format!("{name}, anotación {entry}: {say}."),
                None => format!("{name}: {say}."),
            }
        })
        .collect();
    if reading.problems.len() > MOST {
        words.push(format!(
            "{name}: {} más como esto.",
            reading.problems.len() - MOST
        ));
    }
    words
}

fn left_out(name: &str, count: usize) -> String {
    match count {
        1 => format!("{name}: se omitió 1 anotación con números imposibles."),
        n => format!("{name}: se omitieron {n} anotaciones con números imposibles."),
    }
}

fn import_not_saved(name: &str) -> String {
    format!("{name} no se pudo guardar entero en este teléfono. Conserva el archivo.")
}
