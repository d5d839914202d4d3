//! What there is to learn: the court, the signals, the decisions, the jobs, and care. Read from anywhere; a
//! match that is open stays as it is.

mod board;
mod decisions;
mod drawings;
mod match_line;
mod place;
mod signals;
mod sketch;

use leptos::prelude::*;

use crate::shell::{use_shell, Screen};
use place::Place;
use text::learn as words;

/// The page of an address.
pub fn show(code: &str) -> AnyView {
    let place = Place::of_code(code);
    use_shell().name_lesson(place.name());
    let page = match place {
        Place::Book => book(),
        Place::Decisions => decisions::list(),
        Place::Decision(topic) => decisions::page(topic),
        Place::Signals => signals::all(),
        Place::Signal(signal) => signals::one(signal),
    };
    view! {
        {match_line::match_line()}
        <div class="learn stack">{page}</div>
    }
    .into_any()
}

/// What there is.
fn book() -> AnyView {
    let of = vec![
        (words::DECISIONS, words::DECISIONS_MORE, Place::Decisions),
        (text::SIGNALS, text::SIGNALS_ARE, Place::Signals),
    ];
    view! {
        <p>{words::BOOK_MORE}</p>
        {ways(of)}
    }
    .into_any()
}

/// Ways to other pages: what each is called, and what is there.
fn ways(to: Vec<(&'static str, &'static str, Place)>) -> AnyView {
    let shell = use_shell();
    let one = |(name, more, place): (&'static str, &'static str, Place)| {
        view! {
            <button
                type="button"
                class="button"
                on:click=move |_| shell.go(Screen::Learn { place: place.code() })
            >
                <strong>{name}</strong>
                <span>{more}</span>
            </button>
        }
        .into_any()
    };
    view! { <div class="learn-ways">{to.into_iter().map(one).collect_view()}</div> }.into_any()
}
