//! What concerns this phone as a whole and no single match: whether the app opens without a network, its colours,
//! the storage and its backup, and what the app is for.

use leptos::prelude::*;

use super::library::Library;
use super::storage::Storage;
use crate::language::Languages;
use crate::shell::{use_shell, Screen};
use app::language::Language;
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
                <LanguageChoice />
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

/// The language of the phone, or another one.
#[component]
fn LanguageChoice() -> impl IntoView {
    let languages = expect_context::<Languages>();
    let choices = [None].into_iter().chain(Language::ALL.map(Some));
    view! {
        <fieldset class="asked">
            <legend>{text::language_label()}</legend>
            <div class="row">
                {choices
                    .map(|choice| {
                        view! {
                            <button
                                type="button"
                                class="button"
                                id=id_of(choice)
                                lang=choice.map(Language::code)
                                aria-pressed=move || (languages.chosen() == choice).to_string()
                                on:click=move |_| languages.choose(choice, id_of(choice))
                            >
                                {choice.map_or_else(text::same_as_the_phone, text::language_name)}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
            {move || {
                languages.missing().map(|language| {
                    view! { <p class="sentence bad" role="alert">{text::language_missing(language)}</p> }
                })
            }}
        </fieldset>
    }
}

/// The button is found again by it when the page is drawn in another language.
const fn id_of(choice: Option<Language>) -> &'static str {
    match choice {
        None => "language-of-phone",
        Some(Language::English) => "language-english",
        Some(Language::Spanish) => "language-spanish",
    }
}
