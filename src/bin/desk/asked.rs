//! What stands behind a command.

use crate::command_error::CommandError;
use reports::WallClock;

/// The files of a command and how it is to print.
#[derive(Default)]
pub struct Asked {
    /// Their names.
    pub files: Vec<String>,
    how: Option<String>,
    /// Options with their values.
    pub values: Vec<(String, String)>,
}

impl Asked {
    /// What stands behind a command: `ways` are ways to print, `named` take a value.
    pub fn of(args: &[String], ways: &[&str], named: &[&str]) -> Result<Asked, CommandError> {
        let mut asked = Asked::default();
        let mut args = args.iter();
        while let Some(arg) = args.next() {
            if ways.contains(&arg.as_str()) {
                let before = asked.how.replace(arg.clone());
                if let Some(before) = before.filter(|before| before != arg) {
                    return Err(CommandError::TwoWays(before, arg.clone()));
                }
            } else if named.contains(&arg.as_str()) {
                let value = args
                    .next()
                    .ok_or_else(|| CommandError::NoValue(arg.clone()))?;
                asked.values.push((arg.clone(), value.clone()));
            } else if arg.starts_with("--") {
                return Err(CommandError::UnknownOption(arg.clone()));
            } else {
                asked.files.push(arg.clone());
            }
        }
        if asked.files.is_empty() {
            return Err(CommandError::NoFile);
        }
        Ok(asked)
    }

    /// Whether this way to print was named.
    pub fn is(&self, way: &str) -> bool {
        self.how.as_deref() == Some(way)
    }

    /// The value of an option.
    pub fn value(&self, name: &str) -> Option<&str> {
        let given = self.values.iter().rev().find(|v| v.0 == name);
        given.map(|v| v.1.as_str())
    }

    /// The one file of a command that takes no more.
    pub fn one(&self, otherwise: CommandError) -> Result<&str, CommandError> {
        match &self.files[..] {
            [name] => Ok(name),
            _ => Err(otherwise),
        }
    }

    /// The hall's clock, which is in no record.
    pub fn hall_clock(&self) -> Result<WallClock, CommandError> {
        match self.value("--clock") {
            Some(value) => WallClock::read(value).ok_or(CommandError::Clock),
            None => Ok(WallClock::default()),
        }
    }
}
