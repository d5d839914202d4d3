//! The words of the screens before a match and between sets, in Spanish.

pub mod briefing;
pub mod form;
pub mod late_team;
pub mod library;
pub mod lists;
pub mod measure;
pub mod plan;
pub mod set_out;
pub mod step;
pub mod toss;
