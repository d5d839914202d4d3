//! Every official signal, to look through and to learn: a list, and one drawing after the other whose
//! meaning is asked first. Nobody counts what was known.

use crate::session::use_session;
use crate::shell::{scroll_once_long_enough, use_shell};
use crate::widgets::afterwards::by_and_by;
use crate::widgets::signal_figure::SignalFigure;
use leptos::prelude::*;
use rules::{Signal as Sign, Team};

/// From one drawing to the next, so that neighbours of the list do not follow each other; it has no
/// divisor with their number in common, so each comes once.
const STRIDE: usize = 11;

/// So many are drawn between two frames; the first of them fill a screen.
const AT_A_TIME: usize = 8;

/// The one that is looked at.
#[derive(Clone, Copy)]
struct Shown {
    index: RwSignal<usize>,
    named: RwSignal<bool>,
    mirrored: RwSignal<bool>,
}

/// The screen.
#[component]
pub fn Signals() -> impl IntoView {
    let one = RwSignal::new(false);
    let shown = Shown {
        index: RwSignal::new(0),
        named: RwSignal::new(false),
        mirrored: RwSignal::new(false),
    };
    let session = use_session();
    let place = StoredValue::new(0.0);
    let open = move |index: usize, named: bool| {
        place.set_value(device::scrolled_to());
        shown.index.set(index);
        shown.named.set(named);
        one.set(true);
    };
    let all = move || {
        if place.get_value() > 0.0 {
            scroll_once_long_enough(place.get_value());
        }
        let built = by_and_by(|| Sign::ALL.len(), AT_A_TIME);
        let line = move |(index, sign): (usize, Sign)| {
            view! {
                <li>
                    <button type="button" class="signal-line" on:click=move |_| open(index, true)>
                        <SignalFigure signal=sign mirrored=false moves=false />
                        <span>
                            <span class="muted tabular">{sign.number()}</span>
                            " "
                            {text::signal(sign)}
                        </span>
                    </button>
                </li>
            }
            .into_any()
        };
        view! {
            <p>{text::SIGNALS_MORE}</p>
            <button
                type="button"
                class="button primary"
                id="learn"
                // Each time another one to begin with.
                on:click=move |_| {
                    let at = session.clock().stamp().unsigned_abs() % Sign::ALL.len() as u64;
                    open(at as usize, false);
                }
            >
                {text::LEARN}
            </button>
            <ul class="signal-list">
                <For
                    each=move || Sign::ALL.into_iter().enumerate().take(built.get())
                    key=|(index, _)| *index
                    children=line
                />
            </ul>
        }
        .into_any()
    };
    view! {
        <div class="stack signals">
            {move || if one.get() { look(shown, one) } else { all() }}
        </div>
    }
}

/// One drawing, large.
fn look(shown: Shown, one: RwSignal<bool>) -> AnyView {
    use_shell().opened.while_here(move || {
        one.set(false);
        true
    });
    device::scroll_to(0.0);
    let sign = move || Sign::ALL[shown.index.get()];
    let again = RwSignal::new(());
    let drawing = move || {
        again.track();
        let mirrored = shown.mirrored.get();
        view! { <SignalFigure signal=sign() mirrored moves=true /> }.into_any()
    };
    let words = move || {
        let sign = sign();
        if !shown.named.get() {
            return view! { <h2>{text::HIDDEN_SIGNAL}</h2> }.into_any();
        }
        // Team A stands for the side concerned.
        let left = if shown.mirrored.get() {
            Team::B
        } else {
            Team::A
        };
        view! {
            <h2>
                <span class="tabular">{sign.number()}</span>
                " "
                {text::signal(sign)}
            </h2>
            <p>{text::signal_how(sign)}</p>
            {text::signal_for(sign).map(|words| view! { <p>{words}</p> })}
            <p class="muted">{text::arm(sign.arm(Team::A, left))} " · " {text::signal_by(sign)}</p>
        }
        .into_any()
    };
    let on = move |_| {
        if shown.named.get_untracked() {
            shown.named.set(false);
            shown.index.update(|i| *i = (*i + STRIDE) % Sign::ALL.len());
        } else {
            shown.named.set(true);
        }
    };
    view! {
        <div class="signal-look">
            {drawing}
            <div class="signal-meaning" role="status">
                {words}
            </div>
        </div>
        <button type="button" class="button primary" id="on" on:click=on>
            {move || if shown.named.get() { text::NEXT_SIGNAL } else { text::SHOW_NAME }}
        </button>
        <div class="row">
            <button type="button" class="button" on:click=move |_| again.set(())>
                {text::AGAIN}
            </button>
            <button
                type="button"
                class="button"
                aria-pressed=move || shown.mirrored.get().to_string()
                on:click=move |_| shown.mirrored.update(|right| *right = !*right)
            >
                {text::OTHER_SIDE}
            </button>
            <button type="button" class="button" on:click=move |_| one.set(false)>
                {text::ALL_SIGNALS}
            </button>
        </div>
    }
    .into_any()
}
