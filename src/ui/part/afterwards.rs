//! What can wait until the answer to a tap is on the screen.

use std::time::Duration;

use leptos::prelude::*;

/// Builds it after the frame that shows everything else, so that a slow phone answers first and asks then.
pub fn afterwards(build: impl Fn() -> AnyView + Send + 'static) -> AnyView {
    let answered = RwSignal::new(false);
    let then = move || {
        // Nobody waits for it any more where the whole thing is gone by then.
        answered.try_set(true);
    };
    request_animation_frame(move || set_timeout(then, Duration::ZERO));
    view! { {move || answered.get().then(&build)} }.into_any()
}
