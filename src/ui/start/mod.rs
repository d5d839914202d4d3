//! The start screen: go on with the running match, begin one, look at those on this phone.

mod about;
mod import;
mod kept;
mod library;
mod parcel;

use leptos::prelude::*;

use super::session::{use_session, NotEntered};
use super::shell::{use_shell, Screen, Theme};
use super::text;
use crate::device::Offline;
use crate::game::entry::Heading;
use crate::game::Phase;
use crate::rules::{ByTeam, Preset};

pub use about::About;
pub use import::{take_in, How};
pub use library::Library;
pub use parcel::{export, hand_over, parcel};

use import::Import;
use kept::Kept;

/// The start screen.
#[component]
pub fn Start() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let library = Library::begin();
    let running = Memo::new(move |_| library.running());

    let quick = move |_| match session.create(tally()) {
        Ok(id) => shell.go(Screen::Play { id }),
        // The preset's own rules can be played by.
        Err(
            NotEntered::Refused(_) | NotEntered::ReadOnly | NotEntered::Stale | NotEntered::NoMatch,
        ) => {}
    };

    view! {
        <div class="start stack">
            <NewVersion />
            {move || running.get().map(|kept| view! { <Continue kept /> })}
            <div class="start-new">
                <button
                    type="button"
                    class="button start-pad"
                    class:primary=move || running.get().is_none()
                    id="new-match"
                    on:click=move |_| shell.go(Screen::NewMatch)
                >
                    <CourtDrawing />
                    <strong>{text::NEW_MATCH}</strong>
                    <span>{text::NEW_MATCH_MORE}</span>
                </button>
                <button type="button" class="button start-pad" id="quick-tally" on:click=quick>
                    <TallyDrawing />
                    <strong>{text::QUICK_TALLY}</strong>
                    <span>{text::QUICK_TALLY_MORE}</span>
                </button>
            </div>
            <Sheets library />
            <Import library />
            <button type="button" class="button" id="receive" on:click=move |_| shell.go(Screen::Receive)>
                {text::RECEIVE}
            </button>
            <section class="stack">
                <h2>{text::SETTINGS}</h2>
                <ThemeChoice />
                <OfflineMark />
                <button type="button" class="button" on:click=move |_| shell.go(Screen::Signals)>
                    {text::SIGNALS}
                </button>
                <button type="button" class="button quiet" on:click=move |_| shell.go(Screen::About)>
                    {text::ABOUT}
                </button>
            </section>
        </div>
    }
}

/// A tally needs no names.
fn tally() -> Heading {
    Heading::new(ByTeam::default(), Preset::Tally.rules())
}

/// Where a match goes on.
fn screen_of(kept: &Kept) -> Screen {
    let id = kept.id.clone();
    match kept.state.phase() {
        Phase::Finished => Screen::Sheet { id },
        Phase::Preparation if kept.state.rules().line_ups => Screen::Before { id },
        _ => Screen::Play { id },
    }
}

/// The match that is not over.
#[component]
fn Continue(kept: Kept) -> impl IntoView {
    let shell = use_shell();
    let screen = screen_of(&kept);
    view! {
        <button
            type="button"
            class="button primary continue"
            id="continue"
            on:click=move |_| shell.go(screen.clone())
        >
            <strong>{text::CONTINUE}</strong>
            <span class="continue-teams">{text::teams(&kept.state)}</span>
            <span class="continue-score tabular">{text::standing(&kept.state)}</span>
        </button>
    }
}

/// Every match on this phone.
#[component]
fn Sheets(library: Library) -> impl IntoView {
    view! {
        <section class="stack" aria-labelledby="sheets">
            <h2 id="sheets">{text::SHEETS}</h2>
            {move || match library.all() {
                None => view! { <p class="muted">{text::READING}</p> }.into_any(),
                Some(all) if all.is_empty() => {
                    view! { <p class="muted">{text::NO_SHEETS}</p> }.into_any()
                }
                Some(all) => {
                    view! {
                        <ul class="sheets">
                            {all
                                .into_iter()
                                .map(|kept| view! { <SheetLine kept library /> })
                                .collect_view()}
                        </ul>
                    }
                        .into_any()
                }
            }}
        </section>
    }
}

#[component]
fn SheetLine(kept: Kept, library: Library) -> impl IntoView {
    let shell = use_shell();
    let asking = RwSignal::new(false);
    let screen = screen_of(&kept);
    let (id, teams) = (kept.id.clone(), text::teams(&kept.state));
    let question = text::delete_question(&teams);
    let delete = Callback::new(move |()| library.delete(id.clone()));
    let (label_open, label_export, label_delete) = (
        text::of_teams(text::OPEN, &teams),
        text::of_teams(text::EXPORT, &teams),
        text::of_teams(text::DELETE, &teams),
    );
    let (when, result) = (text::when(kept.last_at), text::standing(&kept.state));
    let problems = kept.problems.clone();
    let readable = kept.state.heading().is_some();
    let kept = StoredValue::new(kept);
    view! {
        <li class="card sheet-line">
            <div class="sheet-line-words">
                <strong>{teams}</strong>
                <span class="tabular">{result}</span>
                <span class="muted">{when}</span>
            </div>
            {problems
                .into_iter()
                .map(|problem| view! { <p class="sentence bad">{text::problem(&problem)}</p> })
                .collect_view()}
            <div class="row">
                <Show when=move || readable>
                    <button
                        type="button"
                        class="button"
                        aria-label=label_open.clone()
                        on:click={
                            let screen = screen.clone();
                            move |_| shell.go(screen.clone())
                        }
                    >
                        {text::OPEN}
                    </button>
                    <button
                        type="button"
                        class="button"
                        aria-label=label_export.clone()
                        on:click=move |_| {
                            kept.with_value(|kept| export(&kept.log(), &kept.state));
                        }
                    >
                        {text::EXPORT}
                    </button>
                </Show>
                <button
                    type="button"
                    class="button quiet"
                    aria-label=label_delete
                    on:click=move |_| asking.set(true)
                >
                    {text::DELETE}
                </button>
            </div>
            <super::part::dialog::Confirm
                open=asking
                question=Signal::stored(question)
                yes=Signal::stored(text::DELETE.to_owned())
                on_yes=delete
            />
        </li>
    }
}

/// A newer version of the program is offered here and nowhere else.
#[component]
fn NewVersion() -> impl IntoView {
    let shell = use_shell();
    view! {
        <Show when=move || shell.offline() == Offline::NewVersionWaiting>
            <div class="card row" role="status">
                <p>{text::NEW_VERSION}</p>
                <button type="button" class="button" on:click=move |_| shell.take_new_version()>
                    {text::NEW_VERSION_TAKE}
                </button>
            </div>
        </Show>
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

/// Light or dark.
#[component]
fn ThemeChoice() -> impl IntoView {
    let shell = use_shell();
    view! {
        <fieldset class="asked">
            <legend>{text::THEME}</legend>
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

/// A court from above.
#[component]
fn CourtDrawing() -> impl IntoView {
    view! {
        <svg viewBox="0 0 48 32" class="drawing" aria-hidden="true">
            <path d="M4 6 H44 V26 H4 Z M18 6 V26 M30 6 V26" />
            <path class="strong" d="M24 2 V30" />
        </svg>
    }
}

/// Five strokes.
#[component]
fn TallyDrawing() -> impl IntoView {
    view! {
        <svg viewBox="0 0 48 32" class="drawing" aria-hidden="true">
            <path class="strong" d="M12 5 V27 M20 5 V27 M28 5 V27 M36 5 V27 M6 23 L42 9" />
        </svg>
    }
}
