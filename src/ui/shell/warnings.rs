//! What has to be said about the storage or another tab, in a sentence, with the way out.

use leptos::prelude::*;

use super::use_shell;
use crate::memo::Memo;
use crate::screens::{self, Around};
use crate::session::{use_session, Session};
use app::ports::Standing;
use reports::ClockDoubt;

/// Lets this tab write after all.
pub(super) fn go_on(session: Session) {
    if untrack(|| session.standing()) == Standing::Waiting {
        session.go_on();
    } else {
        session.take_over();
    }
}

/// All of them.
#[component]
pub(super) fn Warnings() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let in_match = Memo::new(move |_| shell.screen().match_id().is_some());
    let standing = Memo::new(move |_| session.standing());
    let stands_still = Memo::new(move |_| text::stands_still(standing.get()));
    let trouble = Memo::new(move |_| text::storage_trouble(&session.health()));
    // Read once for each match that is opened: what is entered then has times of its own.
    let clock_doubt = RwSignal::new(None::<ClockDoubt>);
    Effect::new(move |_| {
        let opened = session.id().is_some();
        let now = session.time_now();
        clock_doubt.set(
            opened
                .then(|| session.with_untracked(|timeline| ClockDoubt::on_opening(timeline, now)))
                .flatten(),
        );
    });
    let notices = Memo::new(move |_| session.notices());
    view! {
        <div class="keepers" inert=move || shell.locked.get()>
            <Show when=move || in_match.get() && stands_still.get().is_some()>
                <div class="keeper" role="alert" id="stands-still">
                    <p>{move || stands_still.get()}</p>
                    <button type="button" class="button" on:click=move |_| go_on(session)>
                        {move || text::go_on(standing.get())}
                    </button>
                </div>
            </Show>
            <Show when=move || trouble.get().is_some()>
                <div class="keeper bad" role="alert" id="storage-trouble">
                    <p>{move || trouble.get()}</p>
                    <Show when=move || in_match.get()>
                        {screens::around(Around::Export)}
                    </Show>
                </div>
            </Show>
            <Show when=move || in_match.get() && clock_doubt.get().is_some()>
                <div class="keeper bad" role="alert" id="clock-doubt">
                    <p>{move || clock_doubt.get().map(text::clock_doubt_on_opening)}</p>
                    <button type="button" class="button" on:click=move |_| clock_doubt.set(None)>
                        {text::understood()}
                    </button>
                </div>
            </Show>
            <Show when=move || in_match.get() && !notices.get().is_empty()>
                <div class="keeper bad" role="alert" id="damaged">
                    <p>{move || text::session_notices(&notices.get())}</p>
                    <button type="button" class="button" on:click=move |_| session.notices_read()>
                        {text::understood()}
                    </button>
                </div>
            </Show>
        </div>
    }
}
