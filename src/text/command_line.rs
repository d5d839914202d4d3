//! The words of the command line for what it cannot do.

use std::io::ErrorKind;

use reports::FileKind;

/// No command was named.
pub const NO_COMMAND: &str = "Name a command.";
/// No file was named.
pub const NO_FILE: &str = "Name at least one file.";
/// Two records were not named.
pub const NOT_TWO: &str = "Name two records of one match.";
/// One record was not named.
pub const ONE_RECORD: &str = "Name one record.";
/// One packed record was not named.
pub const ONE_PACKED: &str = "Name one packed record.";
/// The offset of the hall's clock cannot be read.
pub const CLOCK: &str = "--clock wants how far the hall is ahead, such as +02:00.";
/// How often teams meet cannot be read.
pub const MEETINGS: &str = "--meetings wants how often two teams meet, from 1 to 9.";
/// Options of a ranking beside a pool that has its own.
pub const RANKED_ALREADY: &str = "The file already says how it is ranked.";
/// A file that should hold a packed record.
pub const NOT_PACKED: &str = "This is no packed record. desk pack makes one.";
/// A part of a backup that is not there.
pub const NO_SUCH_PART: &str = "This file has no such part. desk list names its parts.";

/// A command that does not exist.
#[must_use]
pub fn unknown_command(name: &str) -> String {
    format!("There is no command `{name}`.")
}

/// An option that the command does not have.
#[must_use]
pub fn unknown_option(name: &str) -> String {
    format!("`{name}` is not understood here.")
}

/// An option without its value.
#[must_use]
pub fn no_value(name: &str) -> String {
    format!("`{name}` wants a value.")
}

/// An option that does not exist or whose value cannot be read.
#[must_use]
pub fn not_understood(name: &str) -> String {
    format!("`{name}` is not understood here, or its value is missing.")
}

/// A criterion that does not exist.
#[must_use]
pub fn unknown_criterion(code: &str) -> String {
    format!("`{code}` is no criterion of a rule of order.")
}

/// A way to give match points that does not exist.
#[must_use]
pub fn unknown_scheme(code: &str) -> String {
    format!("`{code}` is no way to give match points.")
}

/// The output cannot be written, and why in the system's words.
#[must_use]
pub fn not_written(why: &str) -> String {
    format!("The output could not be written: {why}.")
}

/// A file that is larger than any of ours.
#[must_use]
pub fn too_large(megabytes: usize) -> String {
    format!("This file has more than {megabytes} MB, more than any of ours. Choose another file.")
}

/// A file that cannot be opened or read; `why` in the system's words.
#[must_use]
pub fn not_readable(name: &str, kind: ErrorKind, why: &str) -> String {
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

/// A pool in a backup, where only records are read.
#[must_use]
pub fn pool_not_read(name: &str) -> String {
    format!(
        "The results of a pool are not read here: desk standings makes a table of {name} alone."
    )
}

/// Paper sheets in a backup, where only records are read.
#[must_use]
pub fn papers_not_read(count: usize) -> String {
    let papers = match count {
        1 => "1 paper sheet".to_owned(),
        n => format!("{n} paper sheets"),
    };
    format!(
        "{papers} in this backup, not read here: desk paper, desk list and desk standings read paper sheets."
    )
}

/// A backup where one record is wanted; the first of its names.
#[must_use]
pub fn several(count: usize, first: &str) -> String {
    format!(
        "This is a backup of {count} matches, and one is wanted here. Name one of them, such as {first}."
    )
}

/// A file of another kind than the command reads.
#[must_use]
pub fn another_kind(kind: FileKind) -> String {
    let way = match kind {
        FileKind::Match | FileKind::Backup => "desk audit, desk sheet and desk list read it",
        FileKind::Paper => "desk paper reads it",
        FileKind::Pool => "desk standings reads it",
        FileKind::Observer | FileKind::Logbook => "open it in the app on the phone it is for",
    };
    format!("This is {}: {way}.", crate::desk::file_kind(kind))
}
