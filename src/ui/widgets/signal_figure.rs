//! A signal's drawing on the page. Where it moves and the phone asks for less motion, the two moments
//! that tell it stand side by side instead.

use leptos::prelude::*;

use super::figure::{figure, view_box, Moment};
use rules::pose::Movement;
use rules::Signal;

pub use super::figure::Seen;

/// The drawing; its meaning stands beside it in words. `mirrored`: the side concerned is on the right.
#[component]
pub fn SignalFigure(
    /// Which.
    signal: Signal,
    /// Whether the side concerned is on the right.
    mirrored: bool,
    /// Whether it moves, if it is a movement.
    moves: bool,
) -> impl IntoView {
    let behind = false;
    figure_of(signal.movement(), Seen { mirrored, behind }, moves)
}

/// The drawing of any movement, from wherever it is seen.
pub fn figure_of(movement: Movement, seen: Seen, moves: bool) -> AnyView {
    let is_movement = movement.stills().1.is_some();
    let drawing = |class: &str, moment: Moment| {
        let inside = figure(&movement, moment, seen);
        format!(
            "<svg class='{class}' viewBox='{}'>{inside}</svg>",
            view_box(&movement)
        )
    };
    let all = if is_movement && moves {
        let moments = [
            ("moving", Moment::Moving),
            ("still", Moment::First),
            ("still", Moment::Last),
        ];
        moments
            .map(|(class, moment)| drawing(class, moment))
            .concat()
    } else {
        drawing("still", Moment::Naming)
    };
    // Numbers and our own words only.
    view! { <span class="figure" class:moves=is_movement && moves aria-hidden="true" inner_html=all></span> }
        .into_any()
}
