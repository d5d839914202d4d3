//! Why a command was not carried out.

use std::error::Error;
use std::fmt;

use text::command_line as words;

/// Why a command was not carried out. What is wrong with a file is said beside its name instead, and the others
/// are read all the same.
#[derive(Debug)]
pub enum CommandError {
    /// No command was named.
    NoCommand,
    /// There is no such command.
    UnknownCommand(String),
    /// The command has no such option.
    UnknownOption(String),
    /// An option lacks its value.
    NoValue(String),
    /// An option cannot have this value.
    WrongValue {
        /// The option.
        option: String,
        /// What stands behind it.
        value: String,
    },
    /// Two ways to print at once.
    TwoWays(String, String),
    /// No file was named.
    NoFile,
    /// Two records are compared, no more and no fewer.
    NotTwoRecords,
    /// One record is packed.
    NotOneRecord,
    /// One packed record is unpacked.
    NotOnePacked,
    /// The offset of the hall's clock cannot be read.
    Clock,
    /// How often teams meet cannot be read.
    Meetings,
    /// There is no such criterion.
    UnknownCriterion(String),
    /// There is no such way to give match points.
    UnknownScheme(String),
    /// Options of a ranking beside a pool that has its own.
    RankedAlready,
}

impl fmt::Display for CommandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&match self {
            CommandError::NoCommand => words::no_command().to_owned(),
            CommandError::UnknownCommand(name) => words::unknown_command(name),
            CommandError::UnknownOption(name) => words::unknown_option(name),
            CommandError::NoValue(name) => words::no_value(name),
            CommandError::WrongValue { option, value } => words::wrong_value(option, value),
            CommandError::TwoWays(first, second) => words::two_ways(first, second),
            CommandError::NoFile => words::no_file().to_owned(),
            CommandError::NotTwoRecords => words::not_two().to_owned(),
            CommandError::NotOneRecord => words::one_record().to_owned(),
            CommandError::NotOnePacked => words::one_packed().to_owned(),
            CommandError::Clock => words::clock().to_owned(),
            CommandError::Meetings => words::meetings().to_owned(),
            CommandError::UnknownCriterion(code) => words::unknown_criterion(code),
            CommandError::UnknownScheme(code) => words::unknown_scheme(code),
            CommandError::RankedAlready => words::ranked_already().to_owned(),
        })
    }
}

impl Error for CommandError {}
