//! The words of what there is to learn.

pub(crate) mod book;
pub(crate) mod care;
pub(crate) mod court;
pub(crate) mod decisions;
pub(crate) mod dials;
pub(crate) mod find;
pub(crate) mod logbook;
pub(crate) mod observer;
pub(crate) mod practice;
pub(crate) mod roles;
pub(crate) mod scenes;
pub(crate) mod signals;
pub(crate) mod trainer;
pub(crate) mod why;

pub use book::*;
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
