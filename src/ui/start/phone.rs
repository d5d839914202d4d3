//! What concerns this phone as a whole and no single match: whether the app opens without a network, its colours,
//! the storage and its backup, and what the app is for.

use leptos::prelude::*;

use super::library::Library;
use super::storage::Storage;
use crate::shell::{use_shell, Screen};
use app::theme::Theme;

/// The screen.
#[component]
pub fn ThisPhone() -> impl IntoView {
    let shell = use_shell();
    let library = Library::begin();
    view! {
        <div class="phone stack">
            <OfflineMark />
            <section class="card stack">
                <ThemeChoice />
            </section>
            <Storage library />
            <button type="button" class="button quiet" on:click=move |_| shell.go(Screen::About)>
                {text::about()}
            </button>
        </div>
    }
}

/// Whether the program opens without a network.
#[component]
fn OfflineMark() -> impl IntoView {
    let shell = use_shell();
    view! {
        <p id="offline" class="sentence" role="status">
            {move || text::offline(&shell.offline())}
        </p>
    }
}

/// Light, dark or sunlight.
#[component]
fn ThemeChoice() -> impl IntoView {
    let shell = use_shell();
    view! {
        <fieldset class="asked">
            <legend>{text::theme_label()}</legend>
            <div class="row">
                {Theme::ALL
                    .into_iter()
                    .map(|theme| {
                        view! {
                            <button
                                type="button"
                                class="button"
                                aria-pressed=move || (shell.theme() == theme).to_string()
                                on:click=move |_| shell.set_theme(theme)
                            >
                                {text::theme(theme)}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
}
