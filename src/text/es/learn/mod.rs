//! The words of what there is to learn, in Spanish.

pub mod book;
pub mod care;
pub mod court;
pub mod decisions;
pub mod dials;
pub mod find;
pub mod logbook;
pub mod observer;
pub mod practice;
pub mod roles;
pub mod scenes;
pub mod signals;
pub mod trainer;
pub mod why;
