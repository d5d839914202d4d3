//! A panel below the court, with its heading and its way back.

use leptos::html;
use leptos::prelude::*;

use super::court::use_court;
use crate::ui::text;

/// The frame.
#[component]
pub fn Frame(
    /// What it is about.
    title: String,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    let court = use_court();
    let head = NodeRef::<html::H2>::new();
    // Whoever uses keys or listens stands at the head of the panel when it comes.
    Effect::new(move |_| {
        if let Some(head) = head.get() {
            // Fails only for a heading that is gone already.
            let _ = head.focus();
        }
    });
    view! {
        <section class="panel" aria-labelledby="panel-title">
            <div class="panel-head">
                <h2 id="panel-title" tabindex="-1" node_ref=head>{title}</h2>
                <button
                    type="button"
                    class="bar-button"
                    id="panel-close"
                    aria-label=text::CLOSE
                    on:click=move |_| court.close_panel()
                >
                    <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                        <path d="M5 5 L19 19 M19 5 L5 19" />
                    </svg>
                </button>
            </div>
            {children()}
        </section>
    }
}
