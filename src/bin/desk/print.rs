//! What is written. Whatever a person reads may hold names from anybody's files, and a terminal obeys
//! control characters: all text goes through here, and those are left out (see [`record::plain`]). What a
//! program reads is written as it is.

use std::io::{self, ErrorKind, Write};

use record::plain;
use text::command_line as words;

use crate::Verdict;

/// Something for a program to read, as it is.
pub fn out(text: &str) {
    bytes(text.as_bytes());
}

/// The same, where it is no text.
pub fn bytes(bytes: &[u8]) {
    written(io::stdout().write_all(bytes));
}

/// Writes what is still held back.
pub fn end() {
    written(io::stdout().flush());
}

/// Ends the program where nothing more can be written. Whoever reads may have seen enough and gone: then there
/// is nothing left to do. A full disk has to be said, or half a sheet would be taken for a whole one.
fn written(done: io::Result<()>) {
    match done {
        Ok(()) => {}
        Err(why) if why.kind() == ErrorKind::BrokenPipe => std::process::exit(0),
        Err(why) => {
            say(&format!("{}\n", words::not_written(&why.to_string())));
            std::process::exit(Verdict::Unreadable as i32);
        }
    }
}

/// Writes to the standard error. Where nobody can be told there is nobody to tell.
fn say(text: &str) {
    let _ = io::stderr().write_all(text.as_bytes());
}

/// Lines to read.
pub fn lines(text: &str) {
    for line in text.split_inclusive('\n') {
        let end = ["\r\n", "\n"].into_iter().find(|end| line.ends_with(end));
        let end = end.unwrap_or_default();
        out(&plain(line.strip_suffix(end).unwrap_or(line)));
        out(end);
    }
}

/// One line to read: a line break in a name begins no other one.
pub fn line(text: &str) {
    out(&plain(text));
    out("\n");
}

/// Says what is wrong with a file.
pub fn complain(name: &str, say: &str) {
    self::say(&format!("{}\n", plain(&format!("{name}: {say}"))));
}

/// Says why a command was not understood, and how it is used.
pub fn refuse(say: &str, how: &str) {
    self::say(&format!("{}\n\n{how}", plain(say)));
}
