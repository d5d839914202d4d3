//! The words of the screens before a match and between sets: a file for each part of the way.

pub(crate) mod briefing;
pub(crate) mod form;
pub(crate) mod late_team;
pub mod library;
pub(crate) mod lists;
pub(crate) mod measure;
pub(crate) mod plan;
pub(crate) mod set_out;
pub(crate) mod step;
pub(crate) mod toss;

pub use briefing::*;
pub use form::*;
pub use late_team::*;
pub use lists::*;
pub use measure::*;
pub use plan::*;
pub use set_out::*;
pub use step::*;
pub use toss::*;
