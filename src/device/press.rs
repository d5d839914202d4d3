//! A finger that comes down twice at one place, while what it pressed first has given way to something else.
//!
//! A person presses twice by accident, or because the screen seemed slow. The second press then meets
//! whatever has come up under the finger, which nobody has aimed at. It is kept from the page.

use std::cell::RefCell;
use std::rc::Rc;

use wasm_bindgen::JsCast;
use web_sys::{Element, Event, MouseEvent};

use super::listen::{Listener, Listeners};
use super::reach::window;

/// Two presses within so many milliseconds are one intention: what systems take for a double click is around
/// half a second, and who aims anew has to look first. (Our own choice, no source.)
const SAME_PRESS_MS: f64 = 350.0;

/// And within so many CSS pixels: half of what a finger covers. (Our own choice, no source.)
const SAME_PLACE: i32 = 24;

/// What takes a press as a whole.
const OPERATED: &str = "button, a, input, select, textarea, label, summary, [role=button]";

/// A button that means something else at the second press of one intention.
const ONCE: &str = "[data-once]";

struct Press {
    at: f64,
    x: i32,
    y: i32,
    on: Element,
}

#[derive(Default)]
struct Presses {
    last: Option<Press>,
    /// The press that is under way belongs to nobody.
    dropped: bool,
}

impl Presses {
    fn down(&mut self, event: &Event) {
        let Some(press) = press(event) else {
            return;
        };
        self.dropped = self
            .last
            .as_ref()
            .is_some_and(|last| is_stray(last, &press));
        self.last = Some(press);
    }
}

/// Keeps such presses from the page, until this is dropped.
pub fn drop_stray_presses() -> Listeners {
    let Some(window) = window() else {
        return Listeners::default();
    };
    let presses = Rc::new(RefCell::new(Presses::default()));
    let of = |kind: &'static str| {
        let presses = Rc::clone(&presses);
        Listener::that_stops(&window, kind, move |event| {
            let mut presses = presses.borrow_mut();
            if event.type_() == "pointerdown" {
                presses.down(&event);
            }
            // A key, or a screen reader, presses nothing with a finger.
            let by_key = event.type_() == "click"
                && event
                    .dyn_ref::<MouseEvent>()
                    .is_some_and(|click| click.detail() == 0);
            if presses.dropped && !by_key {
                event.stop_immediate_propagation();
                event.prevent_default();
            }
        })
    };
    ["pointerdown", "pointerup", "click"]
        .map(of)
        .into_iter()
        .collect::<Vec<_>>()
        .into()
}

fn press(event: &Event) -> Option<Press> {
    let pointer = event.dyn_ref::<MouseEvent>()?;
    let on = event.target()?.dyn_into::<Element>().ok()?;
    Some(Press {
        at: event.time_stamp(),
        x: pointer.client_x(),
        y: pointer.client_y(),
        on: operated(&on),
    })
}

fn operated(element: &Element) -> Element {
    // Fails only for a selector that is none.
    let found = element.closest(OPERATED).ok().flatten();
    found.unwrap_or_else(|| element.clone())
}

fn is_stray(last: &Press, now: &Press) -> bool {
    let near = last.x.abs_diff(now.x) <= SAME_PLACE.unsigned_abs()
        && last.y.abs_diff(now.y) <= SAME_PLACE.unsigned_abs();
    if !near || now.at - last.at > SAME_PRESS_MS {
        return false;
    }
    if last.on == now.on {
        return last.on.matches(ONCE).unwrap_or(false);
    }
    // Two things beside each other were there before; something new is there only where the first has gone.
    let there = window()
        .and_then(|window| window.document())
        .and_then(|document| document.element_from_point(last.x as f32, last.y as f32));
    there.is_none_or(|there| operated(&there) != last.on)
}
