//! The screen and what a person told the phone about it: colours, movement, the address shown,
//! a short vibration. Styles are set through the object model, because the page's policy forbids
//! style attributes in text.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{Element, HtmlElement, HtmlInputElement, MediaQueryList};

use super::listen::{Listener, Listeners};
use super::reach::{method, options, window};

const STILL: &str = "(prefers-reduced-motion: reduce)";

/// Whether the person asked for little movement.
pub fn prefers_reduced_motion() -> bool {
    media_matches(STILL)
}

/// Whether a media query holds now (CSS, Media Queries); false where the browser does not know it.
pub fn media_matches(media: &str) -> bool {
    query(media).is_some_and(|query| query.matches())
}

/// Calls `f` with whether a media query holds, each time that this changes.
pub fn on_media_change(media: &str, f: impl Fn(bool) + 'static) -> Listeners {
    let Some(query) = query(media) else {
        return Listeners::default();
    };
    let asked = query.clone();
    vec![Listener::new(&query, "change", move |_| f(asked.matches()))].into()
}

/// Asks the phone to vibrate: on, off, on… in milliseconds. False where it said no at once;
/// true promises nothing, so this is never the only signal.
pub fn vibrate(pattern_ms: &[u32]) -> bool {
    let Some(navigator) = window().map(|window| window.navigator()) else {
        return false;
    };
    let pattern: js_sys::Array = pattern_ms.iter().copied().map(JsValue::from).collect();
    method(&navigator, "vibrate")
        .and_then(|vibrate| vibrate.call1(&navigator, &pattern).ok())
        .is_some_and(|said| said.is_truthy())
}

/// What stands behind the `#` of the address, decoded; empty where nothing does.
pub fn hash() -> String {
    let Some(hash) = window().and_then(|window| window.location().hash().ok()) else {
        return String::new();
    };
    let coded = hash.strip_prefix('#').unwrap_or(&hash);
    // What does not decode was typed by somebody and is shown as it stands.
    js_sys::decode_uri_component(coded).map_or_else(|_| coded.to_owned(), String::from)
}

/// Goes on to another hash, so that the phone's back button comes back to this one.
pub fn push_hash(hash: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // Fails where a browser limits how often; the screen has changed all the same.
        let _ = history.push_state_with_url(&JsValue::NULL, "", Some(&coded(hash)));
    }
}

/// Puts another hash in the place of this one.
pub fn replace_hash(hash: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // As above.
        let _ = history.replace_state_with_url(&JsValue::NULL, "", Some(&coded(hash)));
    }
}

/// Goes through the history: back for numbers below 0, as the phone's back button does with -1.
pub fn go_in_history(steps: i32) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // Fails only in a page that is going away.
        let _ = history.go_with_delta(steps);
    }
}

/// The mark on the entry of the history that shows; empty where none was left.
pub fn history_mark() -> String {
    let history = window().and_then(|window| window.history().ok());
    let mark = history.and_then(|history| history.state().ok()?.as_string());
    mark.unwrap_or_default()
}

/// Marks the entry of the history that shows; its address stays.
pub fn mark_history(mark: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // Fails where a browser limits how often; the way back is longer by a step then.
        let _ = history.replace_state_with_url(&mark.into(), "", None);
    }
}

/// Adds an entry of the same address to the history, with a mark.
pub fn push_history(mark: &str) {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // As above.
        let _ = history.push_state_with_url(&mark.into(), "", None);
    }
}

/// From now on the page itself says how far it is scrolled after a step in the history: what it shows is
/// built later than a browser looks.
pub fn keep_scroll_by_hand() {
    if let Some(history) = window().and_then(|window| window.history().ok()) {
        // Fails for nothing that has a history.
        let _ = history.set_scroll_restoration(web_sys::ScrollRestoration::Manual);
    }
}

/// How far the page is scrolled down, in CSS pixels.
pub fn scrolled_to() -> f64 {
    window()
        .and_then(|window| window.scroll_y().ok())
        .unwrap_or(0.0)
}

/// Scrolls the page down so far; false where it is not as long as that yet.
pub fn scroll_to(y: f64) -> bool {
    if let Some(window) = window() {
        window.scroll_to_with_x_and_y(0.0, y);
    }
    (scrolled_to() - y).abs() < 2.0
}

/// Scrolls no further than it takes to see an element, whatever scrolls around it; one that is taller than the
/// screen from its top on.
pub fn bring_into_sight(id: &str) {
    let element = window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(id));
    if let Some(element) = element {
        let options = web_sys::ScrollIntoViewOptions::new();
        options.set_block(web_sys::ScrollLogicalPosition::Nearest);
        element.scroll_into_view_with_scroll_into_view_options(&options);
    }
}

/// Loads this page anew.
pub fn reload() {
    if let Some(window) = window() {
        // As above.
        let _ = window.location().reload();
    }
}

/// Calls `f` with the new hash when the person went back, forward or typed another one; not
/// for [`push_hash`] and [`replace_hash`], whose caller knows.
pub fn on_hash_change(f: impl Fn(String) + 'static) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    vec![Listener::new(&window, "popstate", move |_| f(hash()))].into()
}

/// Sets the title of the page.
pub fn set_title(title: &str) {
    if let Some(document) = window().and_then(|window| window.document()) {
        document.set_title(title);
    }
}

/// Puts the cursor into the element of that id, and marks what it holds, so that typing replaces it.
/// False where there is none.
pub fn focus_on(id: &str) -> bool {
    let found = window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(id));
    let Some(element) = found.and_then(|found| found.dyn_into::<HtmlElement>().ok()) else {
        return false;
    };
    if let Some(input) = element.dyn_ref::<HtmlInputElement>() {
        input.select();
    }
    element.focus().is_ok()
}

/// What the keys speak to, so that they can go back there.
#[derive(Clone, Default)]
pub struct Focus(Option<HtmlElement>);

impl Focus {
    /// Where it is now; nowhere where only the page itself has it.
    #[must_use]
    pub fn here() -> Focus {
        let active = window()
            .and_then(|window| window.document()?.active_element())
            .and_then(|active| active.dyn_into::<HtmlElement>().ok());
        Focus(active.filter(|active| active.tag_name() != "BODY"))
    }

    /// Takes the keys from a button that has them only because a finger pressed it. A button that goes
    /// away with them makes the browser lay out the whole page on the spot, and once more afterwards.
    pub fn let_go() {
        let Focus(Some(element)) = Focus::here() else {
            return;
        };
        // Fails only for a selector that is none. A field shows its focus however it came by it.
        if element.matches(":not(:focus-visible)").unwrap_or(false) {
            // Fails for nothing that has the focus.
            let _ = element.blur();
        }
    }

    /// Back to it, or to what stands in its place under the same id. Whatever has the keys meanwhile
    /// keeps them.
    pub fn back(&self) {
        let Focus(Some(element)) = self else {
            return;
        };
        if Focus::here().0.is_some() {
            return;
        }
        if element.is_connected() {
            // Fails only for what cannot be focused any more.
            let _ = element.focus();
        } else {
            focus_on(&element.id());
        }
    }
}

/// Where what had the focus is gone, gives it to the element of that id, and scrolls nothing: whoever uses
/// keys goes on from there and not from the top of the page.
pub fn focus_if_lost(id: &str) {
    if Focus::here().0.is_some() {
        return;
    }
    let found = window()
        .and_then(|window| window.document())
        .and_then(|document| document.get_element_by_id(id));
    let Some(element) = found else {
        return;
    };
    if let Some(focus) = method(&element, "focus") {
        // Fails only for what cannot have the focus.
        let _ = focus.call1(&element, &options(&[("preventScroll", true.into())]));
    }
}

/// The languages of the phone as tags such as `es-MX`, the dearest first.
pub fn languages() -> Vec<String> {
    let languages = window().map(|window| window.navigator().languages());
    languages
        .iter()
        .flat_map(js_sys::Array::iter)
        .filter_map(|tag| tag.as_string())
        .collect()
}

/// Tells the page's own scripts something.
pub fn announce(name: &str) {
    if let (Some(window), Ok(event)) = (window(), web_sys::Event::new(name)) {
        // Fails only for an event that is under way.
        let _ = window.dispatch_event(&event);
    }
}

/// Sets an attribute of the root element, such as `lang` or `data-theme`.
pub fn set_root_attribute(name: &str, value: &str) {
    if let Some(root) = root() {
        // Fails only for a name that no attribute can have.
        let _ = root.set_attribute(name, value);
    }
}

/// Sets a custom property of the root element's style, such as `--hand`.
pub fn set_css_property(name: &str, value: &str) {
    if let Some(root) = root().and_then(|root| root.dyn_into::<HtmlElement>().ok()) {
        // A wrong value is ignored without an error.
        let _ = root.style().set_property(name, value);
    }
}

fn root() -> Option<Element> {
    window()?.document()?.document_element()
}

fn query(text: &str) -> Option<MediaQueryList> {
    window()?.match_media(text).ok()?
}

/// Encoded so that [`hash`] gives back the very same text.
fn coded(hash: &str) -> String {
    format!("#{}", String::from(js_sys::encode_uri(hash)))
}
