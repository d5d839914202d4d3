//! The words of the command line for what it cannot do.

use reports::FileKind;
use std::io::ErrorKind;

words! { CommandLineWords in command_line;
    /// No command was named.
    no_command -> &'static str;
    /// No file was named.
    no_file -> &'static str;
    /// Two records were not named.
    not_two -> &'static str;
    /// One record was not named.
    one_record -> &'static str;
    /// One packed record was not named.
    one_packed -> &'static str;
    /// The offset of the hall's clock cannot be read.
    clock -> &'static str;
    /// How often teams meet cannot be read.
    meetings -> &'static str;
    /// Options of a ranking beside a pool that has its own.
    ranked_already -> &'static str;
    /// A file that should hold a packed record.
    not_packed -> &'static str;
    /// A part of a backup that is not there.
    no_such_part -> &'static str;
    /// A command that does not exist.
    unknown_command(name: &str) -> String;
    /// An option that the command does not have.
    unknown_option(name: &str) -> String;
    /// An option without its value.
    no_value(name: &str) -> String;
    /// A value that the option cannot have.
    wrong_value(option: &str, value: &str) -> String;
    /// Two ways to print at once.
    two_ways(first: &str, second: &str) -> String;
    /// A criterion that does not exist.
    unknown_criterion(code: &str) -> String;
    /// A way to give match points that does not exist.
    unknown_scheme(code: &str) -> String;
    /// The output cannot be written, and why in the system's words.
    not_written(why: &str) -> String;
    /// A file that is larger than any of ours.
    too_large(megabytes: usize) -> String;
    /// A file that cannot be opened or read; `why` in the system's words.
    not_readable(name: &str, kind: ErrorKind, why: &str) -> String;
    /// A pool in a backup, where only records are read.
    pool_not_read(name: &str) -> String;
    /// Paper sheets in a backup, where only records are read.
    papers_not_read(count: usize) -> String;
    /// A backup where one record is wanted; the first of its names.
    several(count: usize, first: &str) -> String;
    /// A file of another kind than the command reads.
    another_kind(kind: FileKind) -> String;
}
