//! Every official signal, to look through, to find and to learn: a list, a page for each, and one drawing
//! after the other whose meaning is asked first. Nobody counts what was known.

use super::place::Place;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::deferred::render_in_batches;
use crate::widgets::signal_figure::SignalFigure;
use leptos::prelude::*;
use rules::{Signal as Sign, Team};

/// From one drawing to the next, so that neighbours of the list do not follow each other; it has no
/// divisor with their number in common, so each comes once.
const STRIDE: usize = 11;

/// So many are drawn between two frames; the first of them fill a screen.
const AT_A_TIME: usize = 8;

/// The list.
pub fn all() -> AnyView {
    let session = use_session();
    let asked = RwSignal::new(None::<usize>);
    let list = move || {
        let built = render_in_batches(|| Sign::ALL.len(), AT_A_TIME);
        view! {
            <p>{text::SIGNALS_MORE}</p>
            <button
                type="button"
                class="button primary"
                id="learn"
                // Each time another one to begin with.
                on:click=move |_| {
                    let at = session.clock().stamp().unsigned_abs() % Sign::ALL.len() as u64;
                    asked.set(Some(at as usize));
                }
            >
                {text::LEARN_ONE_BY_ONE}
            </button>
            <ul class="signal-list">
                <For
                    each=move || Sign::ALL.into_iter().take(built.get())
                    key=|sign| *sign
                    children=line
                />
            </ul>
        }
        .into_any()
    };
    view! {
        <div class="stack signals">
            {move || match asked.get() {
                Some(first) => one_by_one(first, asked),
                None => list(),
            }}
        </div>
    }
    .into_any()
}

/// One of the list.
fn line(sign: Sign) -> AnyView {
    let shell = use_shell();
    view! {
        <li>
            <button
                type="button"
                class="signal-line"
                on:click=move |_| shell.go(Screen::Learn { place: Place::Signal(sign).code() })
            >
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
}

/// The page of one.
pub fn one(sign: Sign) -> AnyView {
    let mirrored = RwSignal::new(false);
    let again = RwSignal::new(());
    view! {
        <div class="stack signals">
            <div class="signal-look">
                {move || {
                    again.track();
                    drawing(sign, mirrored.get())
                }}
                <div class="signal-meaning">{move || meaning(sign, mirrored.get())}</div>
            </div>
            {tools(mirrored, again)}
        </div>
    }
    .into_any()
}

fn drawing(sign: Sign, mirrored: bool) -> AnyView {
    view! { <SignalFigure signal=sign mirrored moves=true /> }.into_any()
}

fn meaning(sign: Sign, mirrored: bool) -> AnyView {
    // Team A stands for the side concerned.
    let left = if mirrored { Team::B } else { Team::A };
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
}

fn tools(mirrored: RwSignal<bool>, again: RwSignal<()>) -> AnyView {
    view! {
        <div class="row">
            <button type="button" class="button" on:click=move |_| again.set(())>
                {text::AGAIN}
            </button>
            <button
                type="button"
                class="button"
                aria-pressed=move || mirrored.get().to_string()
                on:click=move |_| mirrored.update(|right| *right = !*right)
            >
                {text::OTHER_SIDE}
            </button>
        </div>
    }
    .into_any()
}

/// One drawing after the other, large, its name hidden at first.
fn one_by_one(first: usize, asked: RwSignal<Option<usize>>) -> AnyView {
    use_shell().opened.while_here(move || {
        asked.set(None);
        true
    });
    device::scroll_to(0.0);
    let index = RwSignal::new(first);
    let named = RwSignal::new(false);
    let mirrored = RwSignal::new(false);
    let again = RwSignal::new(());
    let sign = move || Sign::ALL[index.get()];
    let on = move |_| {
        if named.get_untracked() {
            named.set(false);
            index.update(|i| *i = (*i + STRIDE) % Sign::ALL.len());
        } else {
            named.set(true);
        }
    };
    view! {
        <div class="signal-look">
            {move || {
                again.track();
                drawing(sign(), mirrored.get())
            }}
            <div class="signal-meaning" role="status">
                {move || {
                    if named.get() {
                        meaning(sign(), mirrored.get())
                    } else {
                        view! { <h2>{text::HIDDEN_SIGNAL}</h2> }.into_any()
                    }
                }}
            </div>
        </div>
        <button type="button" class="button primary" id="on" on:click=on>
            {move || if named.get() { text::NEXT_SIGNAL } else { text::SHOW_NAME }}
        </button>
        {tools(mirrored, again)}
        <button type="button" class="button" on:click=move |_| asked.set(None)>
            {text::ALL_SIGNALS}
        </button>
    }
    .into_any()
}
