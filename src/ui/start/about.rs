//! What the app is for, and what it does not replace.

use leptos::prelude::*;

/// The screen.
#[component]
pub fn About() -> impl IntoView {
    view! {
        <div class="stack about">
            {text::about_parts()
                .iter()
                .map(|(heading, sentences)| {
                    view! {
                        <section class="stack">
                            <h2>{*heading}</h2>
                            {sentences.iter().map(|s| view! { <p>{*s}</p> }).collect_view()}
                        </section>
                    }
                })
                .collect_view()}
        </div>
    }
}
