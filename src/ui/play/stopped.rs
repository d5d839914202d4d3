//! Play is interrupted, and how it goes on.

use leptos::prelude::*;

use super::consequence::Consequence;
use crate::memo::Memo;
use crate::session::use_session;
use game::entry::Court;
use game::{Kind, Phase};

/// Shown while play is interrupted.
#[component]
pub fn Stopped() -> impl IntoView {
    let session = use_session();
    let stopped = Memo::new(move |_| session.state().phase() == Phase::Suspended);
    let other = RwSignal::new(false);
    let again = Signal::derive(move || {
        let court = Court::Other;
        other.get().then_some(Kind::Resume { court })
    });
    let again_yes = Signal::stored(text::resume_other_yes().to_owned());
    view! {
        <Show when=move || stopped.get()>
            <div class="prompt tall" role="alert">
                <strong>{text::stopped()}</strong>
                <div class="row">
                    <button
                        type="button"
                        class="button primary"
                        on:click=move |_| {
                            session.submit(Kind::Resume { court: Court::Same });
                        }
                    >
                        {text::resume_same()}
                    </button>
                    <button
                        type="button"
                        class="button"
                        aria-pressed=move || other.get().to_string()
                        on:click=move |_| other.update(|other| *other = !*other)
                    >
                        {text::resume_other()}
                    </button>
                </div>
                <p>{text::resume_more()}</p>
                <Consequence kind=again yes=again_yes />
            </div>
        </Show>
    }
}
