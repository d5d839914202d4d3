//! A scene told step by step, for whoever does not see it move.

use learn::whistle_from;
use leptos::prelude::*;

use super::rally::Deciding;
use text::learn as words;

/// The sentences so far, and what can be done now.
pub fn steps(deciding: Deciding) -> AnyView {
    let all = deciding
        .drawn
        .with_value(|drawn| words::told(&drawn.scene, &drawn.verdict));
    let all = StoredValue::new(all);
    let count = all.with_value(Vec::len);
    let told = RwSignal::new(1);
    let until = deciding.drawn.with_value(|drawn| drawn.scene.until());
    let at = move |step: usize| {
        let index = step.saturating_sub(1);
        all.with_value(|all| all.get(index).map_or(until, |told| told.at))
    };
    Effect::new(move |_| deciding.film.hold(at(told.get())));
    // Between this sentence and the next it may be any moment: the best one counts.
    let whistle = move |_| {
        let step = told.get_untracked();
        let (here, next) = (
            at(step),
            if step < count {
                at(step + 1)
            } else {
                f64::INFINITY
            },
        );
        let from = deciding
            .drawn
            .with_value(|drawn| whistle_from(&drawn.verdict));
        let moment = from
            .filter(|from| *from < next)
            .map_or(here, |from| from.max(here));
        deciding.whistles(moment);
    };
    let on = move |_| {
        if told.get_untracked() < count {
            told.update(|told| *told += 1);
        } else {
            deciding.no_whistle();
        }
    };
    let sentences = move || {
        all.with_value(|all| {
            let so_far = all.iter().take(told.get());
            so_far
                .map(|told| view! { <li>{told.say.clone()}</li> })
                .collect_view()
        })
    };
    view! {
        <div role="log">
            <ol class="trainer-told">{sentences}</ol>
        </div>
        <div class="trainer-arms">
            <button type="button" class="button primary" id="whistle" on:click=whistle>
                {words::whistle()}
            </button>
            <button type="button" class="button" id="step" on:click=on>
                {move || if told.get() < count { words::next_step() } else { words::no_whistle() }}
            </button>
        </div>
    }
    .into_any()
}
