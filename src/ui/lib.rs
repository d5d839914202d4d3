//! Screens and parts: taps become entries, the state becomes pictures. No rule is decided here.
//!
//! Whatever changes a match goes through [`session::Session`]; screens read the state from it and
//! ask the core what is legal and what is due.

#![cfg(target_arch = "wasm32")]

pub mod desk;
pub mod hand_over;
mod imports;
mod language;
mod learn;
mod macrotask_executor;
mod memo;
mod parts;
pub mod play;
pub mod review;
mod screens;
pub mod session;
pub mod setup;
pub mod sheet_view;
pub mod shell;
pub mod start;
pub mod widgets;

/// What the page hears when the program is in it (`assets/loader.js`).
const DRAWN: &str = "dutystand-drawn";

/// Puts the program into the page, as soon as the language of this phone is there. Called once.
pub fn start() {
    macrotask_executor::install();
    let languages = language::Languages::begin();
    device::spawn(async move {
        languages.speak().await;
        shell::mount(languages);
        device::announce(DRAWN);
    });
}
