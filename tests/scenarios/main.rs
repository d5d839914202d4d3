//! The rules, told: one story for each branch of the reducer, named by its rule, with the source in
//! the comment. Rule numbers without a name are those of the FIVB Official Volleyball Rules 2025-2028.
//!
//! A story is written from the rule. Where the rule is silent the comment says that the choice is
//! the project's.

#[path = "../support/mod.rs"]
mod support;

mod story;

mod before;
mod beforehand;
mod captains;
mod chains;
mod conduct;
mod corrected;
mod courts;
mod effects;
mod endings;
mod forced;
mod formats;
mod late;
mod late_all;
mod late_change;
mod late_end;
mod late_player;
mod libero;
mod line_ups;
mod new_libero;
mod opened;
mod questions;
mod rally;
mod requests;
mod seal;
mod stops;
mod substitution;
mod taken_back;
mod taken_over;
mod tally;
mod time_out;
