//! A court half with the places of a line-up, the net above, as the coach's sheet shows them.

use leptos::prelude::*;

use crate::memo::Memo;

use rules::{Shirt, Team};
use text::setup as words;

/// The places of one team: 4, 3, 2 at the net and 5, 6, 1 behind.
#[component]
pub fn LineUpCourt(
    /// Whose half.
    team: Team,
    /// Who stands where, place 1 first.
    #[prop(into)]
    places: Signal<Vec<Option<Shirt>>>,
    /// Numbers hidden from whoever looks over the shoulder.
    #[prop(into, optional)]
    covered: Signal<bool>,
    /// The place that the next number goes to; with it the places can be tapped.
    #[prop(optional)]
    chosen: Option<RwSignal<usize>>,
) -> impl IntoView {
    let count = Memo::new(move |_| places.with(Vec::len));
    let shown = move |place: usize| {
        let shirt = places.with(|p| p.get(place).copied().flatten());
        match shirt {
            Some(_) if covered.get() => "\u{2022}".to_owned(),
            Some(shirt) => shirt.to_string(),
            None => String::new(),
        }
    };
    let name = move |place: usize| words::place_holds(place + 1, &shown(place));
    let one = move |place: usize| {
        let class = format!("place place-{}", place + 1);
        // The number of the place is drawn by the style sheet.
        let inside = view! {
            <span class="place-shirt tabular" aria-hidden="true">{move || shown(place)}</span>
        };
        match chosen {
            Some(chosen) => view! {
                <button
                    type="button"
                    class=class
                    aria-label=move || name(place)
                    aria-pressed=move || (chosen.get() == place).to_string()
                    on:click=move |_| chosen.set(place)
                >
                    {inside}
                </button>
            }
            .into_any(),
            None => view! {
                <div class=class role="img" aria-label=move || name(place)>{inside}</div>
            }
            .into_any(),
        }
    };
    let side = match team {
        Team::A => "line-up-court team-a",
        Team::B => "line-up-court team-b",
    };
    view! {
        <div class=move || format!("{side} of-{}", count.get())>
            <div class="line-up-net" aria-hidden="true"></div>
            {move || (0..count.get()).map(one).collect_view()}
        </div>
    }
}
