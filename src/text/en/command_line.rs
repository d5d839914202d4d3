//! The words of the command line for what it cannot do.

use crate::command_line::*;
use reports::FileKind;
use std::io::ErrorKind;

/// In English.
pub static WORDS: CommandLineWords = CommandLineWords {
    no_command: "Name a command.",
    no_file: "Name at least one file.",
    not_two: "Name two records of one match.",
    one_record: "Name one record.",
    one_packed: "Name one packed record.",
    clock: "--clock wants how far the hall is ahead, such as +02:00.",
    meetings: "--meetings wants how often two teams meet, from 1 to 9.",
    ranked_already: "The file already says how it is ranked.",
    not_packed: "This is no packed record. desk pack makes one.",
    no_such_part: "This file has no such part. desk list names its parts.",
    unknown_command,
    unknown_option,
    no_value,
    wrong_value,
    two_ways,
    unknown_criterion,
    unknown_scheme,
    not_written,
    too_large,
    not_readable,
    pool_not_read,
    papers_not_read,
    several,
    another_kind,
};

fn unknown_command(name: &str) -> String {
    format!("There is no command `{name}`.")
}

fn unknown_option(name: &str) -> String {
    format!("`{name}` is not understood here.")
}

fn no_value(name: &str) -> String {
    format!("`{name}` wants a value.")
}

fn wrong_value(option: &str, value: &str) -> String {
    format!("`{option}` does not take `{value}`.")
}

fn two_ways(first: &str, second: &str) -> String {
    format!("`{first}` and `{second}` do not go together. Choose one of them.")
}

fn unknown_criterion(code: &str) -> String {
    format!("`{code}` is no criterion of a rule of order.")
}

fn unknown_scheme(code: &str) -> String {
    format!("`{code}` is no way to give match points.")
}

fn not_written(why: &str) -> String {
    format!("The output could not be written: {why}.")
}

fn too_large(megabytes: usize) -> String {
    format!("This file has more than {megabytes} MB, more than any of ours. Choose another file.")
}

fn not_readable(name: &str, kind: ErrorKind, why: &str) -> String {
    match kind {
        ErrorKind::NotFound => {
            "There is no such file. Check its name, and the folder you are in.".to_owned()
        }
        ErrorKind::IsADirectory => {
            format!("This is a folder. Name the files in it, such as {name}/*.json.")
        }
        ErrorKind::PermissionDenied => {
            "You may not read this file. Ask its owner for a copy.".to_owned()
        }
        _ => format!("It cannot be read ({why}). Try again, or copy it here first."),
    }
}

fn pool_not_read(name: &str) -> String {
    format!(
        "The results of a pool are not read here: desk standings makes a table of {name} alone."
    )
}

fn papers_not_read(count: usize) -> String {
    let papers = match count {
        1 => "1 paper sheet".to_owned(),
        n => format!("{n} paper sheets"),
    };
    format!(
        "{papers} in this backup, not read here: desk paper, desk list and desk standings read paper sheets."
    )
}

fn several(count: usize, first: &str) -> String {
    format!(
        "This is a backup of {count} matches, and one is wanted here. Name one of them, such as {first}."
    )
}

fn another_kind(kind: FileKind) -> String {
    let way = match kind {
        FileKind::Match | FileKind::Backup => "desk audit, desk sheet and desk list read it",
        FileKind::Paper => "desk paper reads it",
        FileKind::Pool => "desk standings reads it",
        FileKind::Observer | FileKind::Logbook => "open it in the app on the phone it is for",
    };
    format!("This is {}: {way}.", crate::desk::file_kind(kind))
}
