//! What is written. Whatever a person reads may hold names from anybody's files, and a terminal obeys
//! control characters: all text goes through here, and those are left out (see [`record::plain`]). What a
//! program reads is written as it is.

use std::io::Write;

use record::plain;

/// Something for a program to read, as it is. Whoever reads may have seen enough and gone: then there is
/// nothing left to do.
pub fn out(text: &str) {
    if std::io::stdout().write_all(text.as_bytes()).is_err() {
        std::process::exit(0);
    }
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
    eprintln!("{}", plain(&format!("{name}: {say}")));
}

/// Says why a command was not understood, and how it is used.
pub fn refuse(say: &str, how: &str) {
    eprint!("{}\n\n{how}", plain(say));
}
