//! A style sheet that the page names and does not load: a `link` without `rel`.

use js_sys::Promise;
use wasm_bindgen_futures::JsFuture;

use super::reach::window;

/// Loads the style sheet of the `link` of that id and waits until it counts. False where it does not come;
/// it may be asked for again then.
pub async fn load_style(id: &str) -> bool {
    let Some(link) = window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(id))
    else {
        return false;
    };
    if link.has_attribute("rel") {
        return true;
    }
    let answered = Promise::new(&mut |came, broke| {
        // Fails for no event that an element of the page can have.
        let _ = link.add_event_listener_with_callback("load", &came);
        let _ = link.add_event_listener_with_callback("error", &broke);
    });
    // Fails only for a name that no attribute can have.
    let _ = link.set_attribute("rel", "stylesheet");
    let came = JsFuture::from(answered).await;
    if came.is_err() {
        let _ = link.remove_attribute("rel");
    }
    came.is_ok()
}
