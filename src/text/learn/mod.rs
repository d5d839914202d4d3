//! The words of what there is to learn.

mod care;
mod court;
mod decisions;
mod dials;
mod find;
mod logbook;
mod observer;
mod practice;
mod roles;
mod scenes;
mod signals;
mod trainer;
mod why;

pub use care::*;
pub use court::*;
pub use decisions::*;
pub use dials::*;
pub use find::*;
pub use logbook::*;
pub use observer::*;
pub use practice::*;
pub use roles::*;
pub use scenes::*;
pub use signals::*;
pub use trainer::*;
pub use why::*;

/// What is on the first page.
pub const BOOK_MORE: &str =
    "Read it, then try it. Nothing is counted and nothing leaves this phone.";
/// In which order.
pub const BOOK_ORDER: &str = "New to it? Go from top to bottom.";
/// Title of the page of all decisions.
pub const DECISIONS: &str = "Decisions";
/// What is on it.
pub const DECISIONS_MORE: &str =
    "Drag feet, ball and players. See what is a fault and what is not.";
/// Title of the page of the court.
pub const COURT: &str = "Court";
/// What is on it.
pub const COURT_MORE: &str = "Tap a zone or a line. See what it is for.";
/// Title of the page of all jobs.
pub const ROLES: &str = "Jobs";
/// What is on it.
pub const ROLES_MORE: &str = "What each of the duty team does before, during and after.";
/// Title of the page about care.
pub const CARE: &str = "Safety";
/// What is on it.
pub const CARE_MORE: &str = "Floor, posts, injuries, weather: when not to play, and whom to ask.";
/// Back into the match that is open.
pub const BACK_TO_MATCH: &str = "Back to the match";
