//! The start screen: go on with the running match, the three ways in, the matches on this phone. What concerns the
//! phone as a whole stands on a screen of its own.

mod about;
mod continued;
mod import;
mod library;
mod parcel;
mod phone;
mod sheets;
mod storage;

use leptos::prelude::*;

use super::desk::Place;
use super::screens;
use super::session::{use_session, NotEntered};
use super::shell::{use_shell, Screen};
use crate::memo::Memo;
use app::machine::Offline;
use game::entry::Heading;
use game::Timeline;
use rules::{ByTeam, Preset};

pub use about::About;
pub use continued::{remember_open_match, Known};
pub use import::Import;
pub use library::Library;
pub use parcel::{export, export_open_match, parcel};
pub use phone::ThisPhone;

use continued::{is_untouched, screen_of, Continued};
use sheets::Sheets;

/// The start screen.
#[component]
pub fn Start() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let known = Known::begin();
    let at_once = known.running.get_untracked();

    // A tally that was begun by a slip and left is the next one.
    let left_empty = move || {
        let is_tally = |timeline: &Timeline| {
            is_untouched(timeline) && timeline.state().heading() == Some(&tally())
        };
        session
            .id_now()
            .filter(|_| session.with_untracked(is_tally))
    };
    let quick = move |_| match left_empty().map_or_else(|| session.create(tally()), Ok) {
        Ok(id) => shell.go(Screen::Play { id }),
        // The preset's own rules can be played by.
        Err(
            NotEntered::Refused(_) | NotEntered::ReadOnly | NotEntered::Stale | NotEntered::NoMatch,
        ) => {}
    };

    // A link, so that the desk can be opened in a tab beside a match.
    let desk = Screen::Desk(Place::List);
    let to_desk = move |event: leptos::ev::MouseEvent| {
        if !(event.ctrl_key() || event.meta_key() || event.shift_key()) {
            event.prevent_default();
            shell.go(Screen::Desk(Place::List));
        }
    };

    view! {
        <div class="start">
            {move || known.running.get().map(|running| {
                let late = at_once.as_ref() != Some(&running);
                view! { <Continue running late /> }
            })}
            <div class="start-begin stack">
                <p class="start-lead">{text::lead()}</p>
                // The first thing to be seen is a court: what is begun on the one half, what on the other.
                <div class="start-court">
                    <button
                        type="button"
                        class="start-half team-a"
                        id="new-match"
                        on:click=move |_| shell.go(Screen::NewMatch)
                    >
                        <CourtDrawing />
                        <strong>{text::referee_a_match()}</strong>
                        <span>{text::new_match_more()}</span>
                    </button>
                    <div class="start-net" aria-hidden="true"></div>
                    <button type="button" class="start-half team-b" id="quick-tally" on:click=quick>
                        <TallyDrawing />
                        <strong>{text::quick_tally()}</strong>
                        <span>{text::quick_tally_more()}</span>
                    </button>
                </div>
                <button
                    type="button"
                    class="start-learn"
                    id="to-learn"
                    on:click=move |_| shell.go(Screen::Learn { place: String::new() })
                >
                    <SignalDrawing />
                    <strong>{text::learn()}</strong>
                    <span>{text::learn_more()}</span>
                </button>
                <div class="start-ways">
                    <button
                        type="button"
                        class="button quiet"
                        id="to-signals"
                        on:click=move |_| shell.go(Screen::signals())
                    >
                        {text::signals()}
                    </button>
                    <a class="button quiet" id="to-desk" href=format!("#{}", desk.hash()) on:click=to_desk>
                        {text::desk()}
                    </a>
                    <button
                        type="button"
                        class="button quiet"
                        id="to-phone"
                        on:click=move |_| shell.go(Screen::ThisPhone)
                    >
                        {text::this_phone()}
                    </button>
                </div>
                // Both come by themselves: below the ways in, where neither moves one of them.
                <NewVersion known />
                <NotOffline />
            </div>
            <div class="start-kept stack">{screens::library(known)}</div>
        </div>
    }
}

/// The matches of this phone, and files that come in.
pub fn below(known: Known) -> AnyView {
    let library = Library::begin();
    known.follow(library);
    view! {
        <Sheets library />
        <Import library />
    }
    .into_any()
}

/// A tally needs no names.
fn tally() -> Heading {
    Heading::new(ByTeam::default(), Preset::Tally.rules())
}

/// The match that is not over.
#[component]
fn Continue(
    running: Continued,
    /// It has come up while the start screen stood there already, and has moved what stands below it.
    late: bool,
) -> impl IntoView {
    let shell = use_shell();
    let screen = running.screen();
    view! {
        <button
            type="button"
            class="button primary continue"
            class:late=late
            id="continue"
            on:click=move |_| shell.go(screen.clone())
        >
            <span class="continue-word">{text::continue_match()}</span>
            <strong>{running.teams}</strong>
            <span class="continue-score tabular">{running.standing}</span>
        </button>
    }
}

/// A newer version of the program is offered here and nowhere else, and only while no match is being
/// played on this phone.
#[component]
fn NewVersion(known: Known) -> impl IntoView {
    let shell = use_shell();
    let under_way = known.under_way;
    // The worker hears of each match when it begins and ends; of one that was deleted it hears here.
    let offline = Memo::new(move |_| shell.offline());
    Effect::new(move |_| {
        offline.track();
        if let Some(ids) = under_way.get() {
            shell.only_these_run(&ids);
        }
    });
    let idle = move || under_way.read().as_ref().is_some_and(Vec::is_empty);
    let waiting = move || match (offline.get(), idle()) {
        (Offline::NewVersionWaiting, true) => view! {
            <p>{text::new_version()}</p>
            <button type="button" class="button" on:click=move |_| shell.take_new_version()>
                {text::new_version_take()}
            </button>
        }
        .into_any(),
        (Offline::NewVersionWaiting, false) => {
            view! { <p>{text::new_version_later()}</p> }.into_any()
        }
        (Offline::NewVersionElsewhere, _) => view! {
            <p>{text::new_version_elsewhere()}</p>
            <button type="button" class="button" on:click=move |_| shell.load_again()>
                {text::load_again()}
            </button>
        }
        .into_any(),
        (
            Offline::NotSupported
            | Offline::Insecure
            | Offline::Installing
            | Offline::ReadyOffline
            | Offline::Incomplete
            | Offline::Failed(_),
            _,
        ) => ().into_any(),
    };
    let has_news = move || {
        matches!(
            shell.offline(),
            Offline::NewVersionWaiting | Offline::NewVersionElsewhere
        )
    };
    view! {
        <Show when=has_news>
            <div class="card row" role="status" id="new-version">
                {waiting}
            </div>
        </Show>
    }
}

/// Why the program will not open without a network, where that is so; else it is said on the phone's own screen.
#[component]
fn NotOffline() -> impl IntoView {
    let shell = use_shell();
    let trouble = Memo::new(move |_| {
        let offline = shell.offline();
        match offline {
            Offline::NotSupported
            | Offline::Insecure
            | Offline::Incomplete
            | Offline::Failed(_) => Some(text::offline(&offline)),
            Offline::Installing
            | Offline::ReadyOffline
            | Offline::NewVersionWaiting
            | Offline::NewVersionElsewhere => None,
        }
    });
    move || {
        trouble
            .get()
            .map(|words| view! { <p id="offline" class="sentence warn" role="status">{words}</p> })
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

/// A referee who shows the side to serve.
#[component]
fn SignalDrawing() -> impl IntoView {
    view! {
        <svg viewBox="0 0 48 32" class="drawing" aria-hidden="true">
            <path class="strong" d="M28 13 V29 M28 15 L8 13 M28 15 L34 23" />
            <circle class="strong" cx="28" cy="6" r="4" />
        </svg>
    }
}
