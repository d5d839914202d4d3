//! What this phone remembers, in its local storage.

use std::rc::Rc;

use wasm_bindgen::JsCast;
use web_sys::StorageEvent;

use super::listen::{Listener, Listeners};
use super::local::Local;
use super::reach::window;
use app::settings::{key, Settings};

/// What this phone remembers.
#[must_use]
pub fn settings() -> Settings {
    Settings::new(Rc::new(Local))
}

/// Calls `f` whenever another tab has changed or forgotten what is remembered under a name.
pub fn on_setting_changed(name: &str, f: impl Fn() + 'static) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    let of = key(name);
    vec![Listener::new(&window, "storage", move |event| {
        let changed = event.dyn_ref::<StorageEvent>().map(StorageEvent::key);
        // Where everything was forgotten no key is named.
        if changed.is_some_and(|key| key.is_none_or(|key| key == of)) {
            f();
        }
    })]
    .into()
}
