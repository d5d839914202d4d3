//! What can wait until the answer to a tap is on the screen.

use std::time::Duration;

use leptos::prelude::*;

/// Does it after the next frame.
pub fn after_the_frame(then: impl FnOnce() + 'static) {
    request_animation_frame(move || set_timeout(then, Duration::ZERO));
}

/// How many of so many are built: at first as many as stand on a screen, then as many more after each frame,
/// so that no tap waits for what is far below.
pub fn render_in_batches(all: impl Fn() -> usize + 'static, step: usize) -> Signal<usize> {
    let built = RwSignal::new(step);
    Effect::new(move |_| {
        if built.get() < all() {
            after_the_frame(move || {
                // As below.
                built.try_update(|built| *built += step);
            });
        }
    });
    built.into()
}

/// Builds it after the frame that shows everything else, so that a slow phone answers first and asks then.
pub fn defer_render(build: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let answered = RwSignal::new(false);
    after_the_frame(move || {
        // Nobody waits for it any more where the whole thing is gone by then.
        answered.try_set(true);
    });
    view! { {move || answered.get().then(&build)} }.into_any()
}
