//! The open match and its storage on simulated days: stores that are late, fail, fill up, lose their tail or are
//! emptied, tabs that take a match from each other and are killed, lines that are damaged or newer than
//! the program.
//!
//! A day that breaks a law prints its seed: `DAY=SEED cargo test --test store -- days` repeats it, and
//! `DAYS=20000 cargo test --release --test store -- days` runs more of them.

mod day;
mod hall;
mod importing;
mod landed;
mod library;
mod merging;
mod remembered;
mod session;
mod world;
