//! Reaching what the typed bindings do not offer: interfaces that are still marked unstable
//! there (locks, wake lock, transaction options) are looked up by name, and a missing one is
//! `None` instead of an exception.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, Window};

/// The page's window. `None` outside a page.
pub(super) fn window() -> Option<Window> {
    web_sys::window()
}

/// The property `name` of `target`, unless it is missing, null or throws when looked at.
pub(super) fn property(target: &JsValue, name: &str) -> Option<JsValue> {
    js_sys::Reflect::get(target, &JsValue::from_str(name))
        .ok()
        .filter(|value| !value.is_undefined() && !value.is_null())
}

/// The method `name` of `target`, if there is one.
pub(super) fn method(target: &JsValue, name: &str) -> Option<js_sys::Function> {
    property(target, name)?.dyn_into().ok()
}

/// A property of `navigator`, if this browser has it.
pub(super) fn of_navigator(name: &str) -> Option<JsValue> {
    property(&window()?.navigator(), name)
}

/// A plain object with these properties, as the browser's option arguments want it.
pub(super) fn options(properties: &[(&str, JsValue)]) -> JsValue {
    let object = js_sys::Object::new();
    for (name, value) in properties {
        // Setting a property of a fresh plain object cannot fail.
        let _ = js_sys::Reflect::set(&object, &JsValue::from_str(name), value);
    }
    object.into()
}

/// The name of a thrown DOM exception (`AbortError`, `QuotaExceededError`, …); empty for
/// anything else.
pub(super) fn error_name(thrown: &JsValue) -> String {
    thrown
        .dyn_ref::<DomException>()
        .map(DomException::name)
        .unwrap_or_default()
}

/// What was thrown, in the browser's own words, for a report to be read by somebody who
/// helps; nothing where it says nothing.
pub(super) fn error_words(thrown: &JsValue) -> String {
    let text = |name| property(thrown, name).and_then(|value| value.as_string());
    match (text("name"), text("message")) {
        (Some(name), Some(message)) if !message.is_empty() => format!("{name}: {message}"),
        (Some(name), _) => name,
        _ => thrown.as_string().unwrap_or_default(),
    }
}
