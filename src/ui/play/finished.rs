//! The match is over: the result, and the way to the sheet.

use leptos::prelude::*;

use super::between::Results;
use super::last::Last;
use super::reasons::Reasons;
use super::signal_card::end_of_set;
use super::Aside;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};

/// The screen after the last point.
#[component]
pub fn Finished() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let to_sheet = move |_| {
        if let Some(id) = untrack(|| session.id()) {
            shell.go(Screen::Sheet { id });
        }
    };
    let to_review = move |_| {
        if let Some(id) = untrack(|| session.id()) {
            shell.go(Screen::Review { id });
        }
    };
    view! {
        <div class="set-over stack">
            <h2>{move || text::match_over(&session.state())}</h2>
            <Last />
            <Results />
            {end_of_set()}
            <Reasons />
            <button type="button" class="button primary" id="to-sheet" on:click=to_sheet>
                {text::to_sheet()}
            </button>
            <button type="button" class="button" id="to-review" on:click=to_review>
                {text::to_review()}
            </button>
            <Aside />
        </div>
    }
}
