//! Signatures drawn with a finger: kept on this phone beside the match, never in its log.

use leptos::prelude::*;

use record::{Strokes, HEIGHT, WIDTH};

/// A signature as it was drawn.
#[component]
pub fn Drawing(
    /// Its strokes.
    #[prop(into)]
    strokes: Signal<Strokes>,
) -> impl IntoView {
    view! {
        <svg class="drawn" viewBox=format!("0 0 {WIDTH} {HEIGHT}") aria-hidden="true">
            <path d=move || strokes.with(Strokes::path) />
        </svg>
    }
}
