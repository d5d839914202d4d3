//! A panel below the court, with its heading and its way back.

use leptos::prelude::*;

use super::court::use_court;
use crate::shell::use_shell;
use crate::widgets::icon::{icon, Icon};
use crate::widgets::keys::go_on_at;

/// The frame.
#[component]
pub fn Frame(
    /// What it is about.
    title: String,
    /// What it holds.
    children: Children,
) -> impl IntoView {
    let court = use_court();
    use_shell().opened.while_here(move || {
        court.close_panel();
        true
    });
    go_on_at("panel-title");
    view! {
        <section class="panel" aria-labelledby="panel-title">
            <div class="panel-head">
                <h2 id="panel-title" tabindex="-1">{title}</h2>
                <button
                    type="button"
                    class="bar-button"
                    id="panel-close"
                    aria-label=text::close()
                    on:click=move |_| court.close_panel()
                >
                    {icon(Icon::Close)}
                </button>
            </div>
            {children()}
        </section>
    }
}
