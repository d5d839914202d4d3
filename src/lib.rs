//! Dutystand keeps a volleyball match for the people on duty: every tap of an official becomes
//! one entry in a log, and score, server, positions, limits, sanctions and the sheet are computed
//! from that log by one pure function.
//!
//! The floors, from the ground up; imports run downwards only:
//!
//! | floor | what it knows | what it never knows |
//! |---|---|---|
//! | [`rules`] | what a competition plays by | a match |
//! | [`game`] | how an entry changes a match | how a log is written down |
//! | [`learn`] | how the decisions of a rally are made | a log |
//! | [`record`] | how a log is kept and read | what the sheet shows |
//! | [`sheet`] | what is computed from a log | a screen |
//! | [`app`] | what is kept where, who writes, how copies are put together | a browser |
//! | `device` | the browser | the game |
//! | `ui` | taps and pictures | a rule |

pub mod app;
pub mod game;
pub mod learn;
pub mod record;
pub mod rules;
pub mod sheet;

#[cfg(target_arch = "wasm32")]
pub mod device;
#[cfg(target_arch = "wasm32")]
pub mod ui;

// Pure arithmetic of the device floor, tested natively.
#[cfg(all(test, not(target_arch = "wasm32")))]
#[path = "device/skew.rs"]
mod skew;
