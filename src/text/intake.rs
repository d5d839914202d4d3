//! The words about files that are taken in.

use app::machine::ReadTrouble;
use record::{Foreign, Reading};

words! { IntakeWords in intake;
    /// A file that could not be opened.
    unreadable_file(name: &str, trouble: &ReadTrouble) -> String;
    /// A file that holds nothing of ours.
    foreign_file(name: &str, foreign: &Foreign) -> String;
    /// What was wrong in a file, line by line.
    reading_problems(name: &str, reading: &Reading) -> Vec<String>;
    /// Entries with impossible numbers.
    left_out(name: &str, count: usize) -> String;
    /// The storage did not take it.
    import_not_saved(name: &str) -> String;
}
