//! Small things remembered between visits: one text a name, in local storage alone. Losing one
//! is a nuisance and no more, so nothing here is kept twice.

use wasm_bindgen::JsCast;
use web_sys::StorageEvent;

use super::listen::{Listener, Listeners};
use super::local;
use super::reach::window;
use app::ports::{StorageTrouble, LINES, OURS};

fn key(name: &str) -> String {
    format!("{}s/{name}", OURS)
}

/// The setting of this name, if there is one and storage can be read.
pub fn setting(name: &str) -> Option<String> {
    local::get(&key(name)).ok().flatten()
}

/// Remembers a setting.
///
/// # Errors
/// Where storage is refused or full: the setting then holds for this visit only.
pub fn set_setting(name: &str, value: &str) -> Result<(), StorageTrouble> {
    local::set(&key(name), value)
}

/// Calls `f` whenever another tab has changed or forgotten the setting of this name.
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

/// Forgets a setting. Where storage is refused there is nothing to forget.
pub fn forget_setting(name: &str) {
    let _ = local::remove(&key(name));
}

/// Forgets every name of this program that is no line of a match; whether all went.
pub fn forget_settings() -> bool {
    let gone = local::keys(OURS).and_then(|keys| {
        keys.iter()
            .filter(|key| !key.starts_with(LINES))
            .try_for_each(|key| local::remove(key))
    });
    gone.is_ok()
}
