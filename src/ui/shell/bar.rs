//! The bar above every screen: the way back, where one is, how well the last entry is kept.

use leptos::prelude::*;

use super::{use_shell, Screen, Shell};
use crate::memo::Memo;
use crate::play::BarTools;
use crate::session::{use_session, Saved, Session};
use crate::widgets::icon::{icon, Icon};
use crate::widgets::keys::go_on_at;

/// What a screen is called.
pub(super) fn heading(session: Session, shell: Shell, screen: &Screen) -> String {
    match screen {
        Screen::Start => text::APP.into(),
        Screen::NewMatch => text::new_match().into(),
        Screen::Learn { .. } => shell.lesson.get().into(),
        Screen::ThisPhone => text::this_phone().into(),
        Screen::About => text::about_title().into(),
        Screen::Before { .. } => text::before().into(),
        Screen::Log { .. } => text::log().into(),
        Screen::Sheet { .. } => text::sheet().into(),
        Screen::HandOver { .. } => text::hand_over().into(),
        Screen::Receive => text::receive().into(),
        Screen::Review { .. } => text::review::review().into(),
        Screen::Desk(place) => place.heading().into(),
        Screen::Play { .. } => text::play_title(&session.state()),
    }
}

/// The bar.
#[component]
pub(super) fn Bar() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let at_start = Memo::new(move |_| shell.screen() == Screen::Start);
    let in_match = Memo::new(move |_| shell.screen().match_id().is_some());
    let on_court = Memo::new(move |_| {
        matches!(shell.screen(), Screen::Play { .. }) && session.state().heading().is_some()
    });
    let title = Memo::new(move |_| heading(session, shell, &shell.screen()));
    // Whoever listens to the page begins anew at the heading of each new screen.
    Effect::new(move |before: Option<Screen>| {
        let screen = shell.screen();
        // Beside a list that stays nobody is taken away from it.
        let stays =
            |before: &Screen| shell.wide.get_untracked() && before.drawn_as() == screen.drawn_as();
        if before.is_some_and(|before| before != screen && !stays(&before)) {
            go_on_at("heading");
        }
        screen
    });
    let up = move |_| shell.up();
    view! {
        <header class="bar" inert=move || shell.locked.get()>
            <Show when=move || !at_start.get()>
                <button type="button" class="bar-button" id="up" aria-label=text::back() on:click=up>
                    {icon(Icon::Back)}
                </button>
            </Show>
            <h1 tabindex="-1" id="heading">
                {move || title.get()}
            </h1>
            <Show when=move || in_match.get()>
                <SavedMark />
            </Show>
            <Show when=move || on_court.get()>
                <div class="bar-tools"><BarTools /></div>
            </Show>
        </header>
    }
}

/// Whether the last entry is safely on disk.
#[component]
fn SavedMark() -> impl IntoView {
    let session = use_session();
    let saved = Memo::new(move |_| session.saved());
    view! {
        <span
            id="saved"
            class="saved"
            class:safe=move || saved.get() == Saved::Safe
            class:trouble=move || matches!(saved.get(), Saved::OneCopy | Saved::MemoryOnly)
        >
            // All three stand there: what every entry changes is shown and hidden, not built.
            <span class="saved-icon" hidden=move || saved.get() != Saved::Safe>
                {icon(Icon::Done)}
            </span>
            <span class="saved-icon" hidden=move || saved.get() != Saved::Saving>
                {icon(Icon::Busy)}
            </span>
            <span
                class="saved-icon"
                hidden=move || !matches!(saved.get(), Saved::OneCopy | Saved::MemoryOnly)
            >
                {icon(Icon::Trouble)}
            </span>
            <span class="saved-word">{move || text::saved(saved.get())}</span>
        </span>
    }
}
