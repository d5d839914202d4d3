//! The one thin floor that touches the browser: storage, locks between tabs, clocks, screen
//! wake lock, randomness, service worker, files and printing.
//!
//! Everything here speaks in plain strings, numbers and enums of its own: this module knows
//! nothing of a match beyond an id and numbered lines, and imports nothing of the program but the ports
//! that it carries out (`app::ports`).
//! What the browser refuses comes back as a typed value; nothing here panics on purpose.
//!
//! Guards such as
//! [`Listeners`] and [`Ticker`] end what they stand for when they are dropped.

#![cfg(target_arch = "wasm32")]

mod browser;
mod camera;
mod canvas;
mod clock;
mod coin;
mod drop;
mod durable;
mod key;
mod listen;
mod local;
mod local_time;
mod lock;
mod machine;
mod persist;
mod pointer;
mod press;
mod reach;
mod screen;
mod settings;
mod share;
mod speech;
mod style;
mod tabs;
mod trouble;
mod turn;
mod wake;
mod worker;

pub use browser::{open_store, pause};
pub use camera::{codes_in_photo, Camera};
pub use canvas::{now_ms, Brush, Canvas};
pub use coin::{new_id, toss_coin};
pub use drop::on_files_dropped;
pub use key::on_key;
pub use listen::{
    after, every, is_visible, on_resize, on_restored, on_resume, on_visibility, Listeners, Ticker,
};
pub use local_time::{local_time, ms_of, offset_minutes};
pub use machine::open_machine;
pub use persist::{ask_to_keep, is_kept, room};
pub use pointer::hold_pointer;
pub use press::drop_stray_presses;
pub use screen::{
    announce, bring_into_sight, focus_if_lost, focus_on, go_in_history, hash, history_mark,
    keep_scroll_by_hand, languages, mark_history, media_matches, on_hash_change, on_media_change,
    prefers_reduced_motion, push_hash, push_history, reload, replace_hash, scroll_to, scrolled_to,
    set_css_property, set_root_attribute, set_title, vibrate, Focus,
};
pub use settings::{on_setting_changed, settings};
pub use share::{
    can_share_files, download, hand_over, is_installed, is_ios_installed, picked_files, print_page,
    ExportFile, Handed, PickedFile,
};
pub use speech::{on_voices, Voice};
pub use style::load_style;
pub use turn::Turn;
pub use worker::Worker;

/// Does something that waits for the browser's answers, and goes on as soon as each is there: what is read
/// from the disk in one go must not let the page take a turn in between.
pub use wasm_bindgen_futures::spawn_local as spawn;
