//! A tap on a pad makes one entry: the one that was next when the finger went down.
//!
//! A touch counts when the finger lifts, also where it slid a little, which a browser's click would
//! drop. The click that follows belongs to the same tap. Keys and screen readers click without a
//! touch. No time-out takes part: two taps are two taps, however quick; what a quick second one is worth the
//! court decides.

use leptos::ev::{KeyboardEvent, PointerEvent};
use leptos::prelude::*;

/// A finger that slides further, in CSS pixels, has changed its mind (our choice, no source).
const SLID_AWAY: i32 = 96;

/// A touch under way.
#[derive(Clone, Copy)]
struct Touch {
    number: u32,
    x: i32,
    y: i32,
}

/// One pad. Copies are the same.
#[derive(Clone, Copy)]
pub struct Pad {
    touch: StoredValue<Option<Touch>>,
    done_by_touch: StoredValue<bool>,
}

impl Default for Pad {
    fn default() -> Pad {
        Pad {
            touch: StoredValue::new(None),
            done_by_touch: StoredValue::new(false),
        }
    }
}

impl Pad {
    /// A finger, or a mouse button, goes down, and the entry of that number is next.
    pub fn down(self, event: &PointerEvent, next: u32) {
        self.done_by_touch.set_value(false);
        if event.button() == 0 {
            self.touch.set_value(Some(Touch {
                number: next,
                x: event.client_x(),
                y: event.client_y(),
            }));
        }
    }

    /// It lifts: the number of the entry, if it was a tap.
    pub fn up(self, event: &PointerEvent) -> Option<u32> {
        let touch = self.touch.get_value()?;
        self.touch.set_value(None);
        self.done_by_touch.set_value(true);
        let near = |a: i32, b: i32| a.abs_diff(b) <= SLID_AWAY.unsigned_abs();
        (near(touch.x, event.client_x()) && near(touch.y, event.client_y())).then_some(touch.number)
    }

    /// The browser took the touch for something else.
    pub fn cancel(self) {
        self.touch.set_value(None);
    }

    /// A key goes down: the next click is not a touch's. A key that is held down makes one entry.
    pub fn key(self, event: &KeyboardEvent) {
        if event.repeat() && event.key() == "Enter" {
            event.prevent_default();
        }
        self.done_by_touch.set_value(false);
    }

    /// A click: whether it makes an entry, because no touch has made it already.
    pub fn click(self) -> bool {
        let done = self.done_by_touch.get_value();
        self.done_by_touch.set_value(false);
        !done
    }
}
