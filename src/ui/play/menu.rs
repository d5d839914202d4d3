//! The court screen's part of the bar: how the court lies, and everything that is not about one
//! team.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::grow::{Grow, Names};
use crate::game::Phase;
use crate::ui::part::dialog::Drawer;
use crate::ui::session::use_session;
use crate::ui::shell::{use_shell, Screen};
use crate::ui::start::export;
use crate::ui::text;

/// The switch and the menu.
#[component]
pub fn BarTools() -> impl IntoView {
    let court = use_court();
    let open = RwSignal::new(false);
    let names = RwSignal::new(false);
    let grow = RwSignal::new(false);
    let turned = move || court.is_turned();
    let session = use_session();
    let floor = Memo::new(move |_| {
        let phase = session.state().phase();
        !matches!(phase, Phase::BetweenSets | Phase::Finished)
    });
    view! {
        <Show when=move || floor.get()>
            <button
                type="button"
                class="bar-button turn"
                id="turn"
                aria-label=move || text::turn_label(turned())
                on:click=move |_| court.turn(untrack(|| !court.is_turned()))
            >
                <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                    <path d="M5 9 A8 8 0 0 1 19 9 M19 4 V9 H14 M19 15 A8 8 0 0 1 5 15 M5 20 V15 H10" />
                </svg>
                {move || if turned() { text::TABLE } else { text::STAND }}
            </button>
        </Show>
        <button
            type="button"
            class="bar-button"
            id="menu"
            aria-label=text::MENU
            on:click=move |_| open.set(true)
        >
            <svg viewBox="0 0 24 24" aria-hidden="true" class="icon">
                <path d="M4 7 H20 M4 12 H20 M4 17 H20" />
            </svg>
        </button>
        <Drawer open title=Signal::stored(text::MENU.to_owned())>
            <Choices open names grow />
        </Drawer>
        <Drawer open=names title=text::NAME_TEAMS>
            <Names open=names />
        </Drawer>
        <Drawer open=grow title=text::GROW>
            <Grow open=grow />
        </Drawer>
    }
}

#[component]
fn Choices(open: RwSignal<bool>, names: RwSignal<bool>, grow: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let shell = use_shell();
    let playing = Memo::new(move |_| session.state().phase() == Phase::Playing);
    let to = move |screen: fn(String) -> Screen| {
        open.set(false);
        if let Some(id) = untrack(|| session.id()) {
            shell.go(screen(id));
        }
    };
    let phase = Memo::new(move |_| session.state().phase());
    let floor = move || !matches!(phase.get(), Phase::BetweenSets | Phase::Finished);
    let tally = Memo::new(move |_| !session.state().rules().line_ups);
    let may_grow = move || tally.get() && phase.get() != Phase::Finished;
    let instead = move |other: RwSignal<bool>| {
        open.set(false);
        other.set(true);
    };
    view! {
        <Show when=floor>
            <div class="row">
                <button
                    type="button"
                    class="button"
                    id="glance"
                    on:click=move |_| {
                        open.set(false);
                        court.set_glance(true);
                    }
                >
                    {text::GLANCE}
                </button>
                <button
                    type="button"
                    class="button"
                    on:click=move |_| {
                        open.set(false);
                        court.locked.set(true);
                    }
                >
                    {text::LOCK}
                </button>
            </div>
        </Show>
        <button type="button" class="button" on:click=move |_| to(|id| Screen::Log { id })>
            {text::LOG}
        </button>
        <button type="button" class="button" on:click=move |_| to(|id| Screen::Sheet { id })>
            {text::SHEET}
        </button>
        <button type="button" class="button" on:click=move |_| to(|_| Screen::Signals)>
            {text::SIGNALS}
        </button>
        <button
            type="button"
            class="button"
            on:click=move |_| {
                open.set(false);
                export(&session.log(), &session.state_now());
            }
        >
            {text::EXPORT_MATCH}
        </button>
        <Show when=move || playing.get()>
            <button
                type="button"
                class="button"
                on:click=move |_| {
                    open.set(false);
                    court.panel.set(Panel::Suspend);
                }
            >
                {text::SUSPEND}
            </button>
        </Show>
        <button type="button" class="button" on:click=move |_| instead(names)>
            {text::NAME_TEAMS}
        </button>
        <Show when=may_grow>
            <button type="button" class="button" on:click=move |_| instead(grow)>
                {text::GROW}
            </button>
        </Show>
        <Show when=floor>
            <button
                type="button"
                class="button"
                aria-pressed=move || court.has_service_clock().to_string()
                on:click=move |_| court.set_service_clock(untrack(|| !court.has_service_clock()))
            >
                {move || {
                    let seconds = session.state().rules().service_seconds;
                    text::service_clock(court.has_service_clock(), seconds)
                }}
            </button>
        </Show>
    }
}
