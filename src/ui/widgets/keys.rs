//! Where whoever uses keys or listens goes on when something new has come.

use leptos::prelude::*;

/// Goes on at the element of this id once it is on the screen: with the frame that shows it, because a focus
/// lays the page out, and the frame would do so once more.
pub fn go_on_at(id: &'static str) {
    // False only where it is gone again.
    request_animation_frame(move || {
        device::focus_on(id);
    });
}
