//! A finger, a pen or a mouse that drags something.

use wasm_bindgen::JsCast;
use web_sys::{Element, PointerEvent};

/// From now until it is lifted, what the pointer does goes to the element that it came down on, wherever it is
/// meanwhile. A finger does so by itself, a mouse does not.
pub fn hold_pointer(event: &PointerEvent) {
    let target = event.target();
    let element = target.and_then(|target| target.dyn_into::<Element>().ok());
    if let Some(element) = element {
        // Fails for a pointer that is gone already.
        let _ = element.set_pointer_capture(event.pointer_id());
    }
}
