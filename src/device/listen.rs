//! Listening to the browser, and ceasing to: a listener lives exactly as long as its guard.

use std::rc::Rc;

use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{
    AddEventListenerOptions, Event, EventTarget, PageTransitionEvent, VisibilityState, Window,
};

use super::reach::window;

/// One event listener; dropping it takes the listener off.
pub(super) struct Listener {
    target: EventTarget,
    kind: &'static str,
    callback: Closure<dyn FnMut(Event)>,
}

impl Listener {
    /// Calls `f` with every event of this kind that reaches `target`, from the outside in, so
    /// that nothing in the page can hide one. Never delays scrolling.
    pub(super) fn new(
        target: &EventTarget,
        kind: &'static str,
        f: impl FnMut(Event) + 'static,
    ) -> Listener {
        Listener::listen(target, kind, f, true)
    }

    /// The same for one that may keep the event from what it was meant for.
    pub(super) fn that_stops(
        target: &EventTarget,
        kind: &'static str,
        f: impl FnMut(Event) + 'static,
    ) -> Listener {
        Listener::listen(target, kind, f, false)
    }

    fn listen(
        target: &EventTarget,
        kind: &'static str,
        f: impl FnMut(Event) + 'static,
        passive: bool,
    ) -> Listener {
        let callback = Closure::<dyn FnMut(Event)>::new(f);
        let options = AddEventListenerOptions::new();
        options.set_capture(true);
        options.set_passive(passive);
        // Fails only for arguments of the wrong type, which these are not.
        let _ = target.add_event_listener_with_callback_and_add_event_listener_options(
            kind,
            callback.as_ref().unchecked_ref(),
            &options,
        );
        Listener {
            target: target.clone(),
            kind,
            callback,
        }
    }
}

impl Drop for Listener {
    fn drop(&mut self) {
        let _ = self.target.remove_event_listener_with_callback_and_bool(
            self.kind,
            self.callback.as_ref().unchecked_ref(),
            true,
        );
    }
}

/// Some event listeners that belong together; dropping this takes them off.
#[must_use = "the listeners are taken off when this is dropped"]
#[derive(Default)]
pub struct Listeners {
    // Held for its drop alone.
    _held: Vec<Listener>,
}

impl From<Vec<Listener>> for Listeners {
    fn from(held: Vec<Listener>) -> Self {
        Listeners { _held: held }
    }
}

/// Whether the page is on screen now. True where the browser does not say.
pub fn is_visible() -> bool {
    window()
        .and_then(|window| window.document())
        .is_none_or(|document| document.visibility_state() != VisibilityState::Hidden)
}

/// Calls `f` with true when the page comes on screen, with false when it leaves it. Leaving is
/// the last moment a phone promises to tell of.
pub fn on_visibility(f: impl Fn(bool) + 'static) -> Listeners {
    let Some(document) = window().and_then(|window| window.document()) else {
        return Listeners::default();
    };
    vec![Listener::new(&document, "visibilitychange", move |_| {
        f(is_visible());
    })]
    .into()
}

/// Calls `f` whenever the window gets another size.
pub fn on_resize(f: impl Fn() + 'static) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    vec![Listener::new(&window, "resize", move |_| f())].into()
}

/// Calls `f` whenever the page comes back: made visible again, or restored from the browser's
/// memory of pages left.
pub fn on_resume(f: impl Fn() + 'static) -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    let Some(document) = window.document() else {
        return Listeners::default();
    };
    let f = Rc::new(f);
    let restored = Rc::clone(&f);
    vec![
        Listener::new(&document, "visibilitychange", move |_| {
            if is_visible() {
                f();
            }
        }),
        restored_listener(&window, move || restored()),
    ]
    .into()
}

/// Calls `f` when the browser shows the page again as it had kept it in memory, after others.
pub fn on_restored(f: impl Fn() + 'static) -> Listeners {
    window()
        .map(|window| vec![restored_listener(&window, f)])
        .unwrap_or_default()
        .into()
}

fn restored_listener(window: &Window, f: impl Fn() + 'static) -> Listener {
    Listener::new(window, "pageshow", move |event| {
        // The first showing of a page is not a return.
        if event
            .dyn_ref::<PageTransitionEvent>()
            .is_some_and(PageTransitionEvent::persisted)
        {
            f();
        }
    })
}

/// Something due once or again and again; dropping it calls it off.
#[must_use = "the timer is called off when this is dropped"]
pub struct Ticker {
    handle: i32,
    again: bool,
    // Held so that the browser's timer has something to call.
    _callback: Closure<dyn FnMut()>,
}

impl Ticker {
    fn set(callback: Closure<dyn FnMut()>, ms: u32, again: bool) -> Ticker {
        let function = callback.as_ref().unchecked_ref();
        let ms = i32::try_from(ms).unwrap_or(i32::MAX);
        let handle = window()
            .ok_or(JsValue::UNDEFINED)
            .and_then(|window| {
                if again {
                    window.set_interval_with_callback_and_timeout_and_arguments_0(function, ms)
                } else {
                    window.set_timeout_with_callback_and_timeout_and_arguments_0(function, ms)
                }
            })
            // 0 is never the number of a timer, and clearing it does nothing.
            .unwrap_or(0);
        Ticker {
            handle,
            again,
            _callback: callback,
        }
    }
}

impl Drop for Ticker {
    fn drop(&mut self) {
        if let Some(window) = window() {
            if self.again {
                window.clear_interval_with_handle(self.handle);
            } else {
                window.clear_timeout_with_handle(self.handle);
            }
        }
    }
}

/// Calls `f` every `ms` milliseconds. A page that is not on screen is called far less often or
/// not at all, so `f` reads the clock and never counts its calls.
pub fn every(ms: u32, f: impl FnMut() + 'static) -> Ticker {
    Ticker::set(Closure::new(f), ms, true)
}

/// Calls `f` once, in `ms` milliseconds.
pub fn after(ms: u32, f: impl FnOnce() + 'static) -> Ticker {
    let mut f = Some(f);
    Ticker::set(
        Closure::new(move || {
            if let Some(f) = f.take() {
                f();
            }
        }),
        ms,
        false,
    )
}
