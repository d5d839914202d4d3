//! Files that are dropped onto the window.

use std::rc::Rc;

use wasm_bindgen::JsCast;
use web_sys::{DataTransfer, DragEvent, Event};

use super::listen::{Listener, Listeners};
use super::reach::window;
use super::share::{files_of, PickedFile};

/// Calls `over` with whether files are held over the window, and `f` with those that were dropped. A browser
/// would show a dropped file in the place of the page.
pub fn on_files_dropped(
    over: impl Fn(bool) + 'static,
    f: impl Fn(Vec<PickedFile>) + 'static,
) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    let over = Rc::new(over);
    let (left, dropped) = (Rc::clone(&over), Rc::clone(&over));
    vec![
        Listener::that_stops(&window, "dragover", move |event| {
            if files(&event).is_some() {
                event.prevent_default();
                over(true);
            }
        }),
        Listener::new(&window, "dragleave", move |event| {
            let drag = event.dyn_ref::<DragEvent>();
            // Also told of each element that is left within the window.
            if drag.is_some_and(|drag| drag.related_target().is_none()) {
                left(false);
            }
        }),
        Listener::that_stops(&window, "drop", move |event| {
            if let Some(files) = files(&event) {
                event.prevent_default();
                dropped(false);
                f(files_of(files.files()));
            }
        }),
    ]
    .into()
}

/// What is dragged, where it is files and not a text or a picture of the page.
fn files(event: &Event) -> Option<DataTransfer> {
    let dragged = event.dyn_ref::<DragEvent>()?.data_transfer()?;
    let files = dragged.types().iter().any(|kind| kind == "Files");
    files.then_some(dragged)
}
