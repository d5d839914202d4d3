//! How an entry is written down in JSON and read again, apart from the types in memory.
//!
//! The names here leave the program; `FORMAT.md` beside this file describes them. Fields are read and
//! written by hand with the helpers of [`super::fields`]: derived code for a tagged, flattened type made
//! 150 KB of WebAssembly.

mod frozen_rules;
mod read;
mod rules_v1;
mod write;

pub(super) use frozen_rules::rules_lack_values;
pub use frozen_rules::{read as read_rules, write as write_rules};
pub(super) use read::read;
pub(super) use write::{write, write_with_rules};
