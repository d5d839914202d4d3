//! Screens and parts: taps become entries, the state becomes pictures. No rule is decided here.
//!
//! Whatever changes a match goes through [`session::Session`]; screens read the state from it and
//! ask the core what is legal and what is due.

#![cfg(target_arch = "wasm32")]

pub mod before;
pub mod desk;
pub mod hand_over;
mod learn;
mod parts;
pub mod play;
pub mod review;
mod screens;
pub mod session;
pub mod sheet_view;
mod shelf;
pub mod shell;
pub mod start;
mod turns;
pub mod widgets;

/// Puts the program into the page. Called once.
pub fn start() {
    turns::take_turns();
    shell::mount();
}
