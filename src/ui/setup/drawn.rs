//! Signatures drawn with a finger: kept on this phone beside the match, never in its log.

use std::collections::BTreeMap;

use leptos::prelude::*;

use super::draft::{self, DRAWN};
use record::{read_drawn, write_drawn, Strokes, HEIGHT, WIDTH};

/// The drawings of a match, by the entry that signs.
#[must_use]
pub fn drawn(id: &str) -> BTreeMap<u32, Strokes> {
    read_drawn(&draft::kept(id, DRAWN).unwrap_or_default())
}

/// Keeps the drawings of a match.
pub fn keep_drawn(id: &str, all: &BTreeMap<u32, Strokes>) {
    draft::keep(id, DRAWN, &write_drawn(all));
}

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
