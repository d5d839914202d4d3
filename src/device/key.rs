//! Keys that are meant for the whole page.

use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent};

use super::listen::{Listener, Listeners};
use super::reach::window;
use app::ports::KeyPress;

/// Where keys are typed or choose something.
const TYPING: &str =
    "input:not([type=checkbox], [type=radio]), textarea, select, [contenteditable]";
/// Where they go to a list.
const LIST: &str = "[data-list]";

/// Calls `f` with every key that is pressed; where it answers true, the key does nothing else.
pub fn on_key(f: impl Fn(KeyPress) -> bool + 'static) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    let listener = Listener::that_stops(&window, "keydown", move |event| {
        let Some(pressed) = event.dyn_ref::<KeyboardEvent>() else {
            return;
        };
        let on = event
            .target()
            .and_then(|target| target.dyn_into::<Element>().ok());
        // Both selectors are ones.
        let within = |selector| {
            let found = on.as_ref().and_then(|on| on.closest(selector).ok());
            found.flatten().is_some()
        };
        let press = KeyPress {
            key: pressed.key(),
            modified: pressed.ctrl_key() || pressed.alt_key() || pressed.meta_key(),
            typing: pressed.is_composing() || within(TYPING),
            in_list: within(LIST),
        };
        if f(press) {
            pressed.prevent_default();
        }
    });
    vec![listener].into()
}
