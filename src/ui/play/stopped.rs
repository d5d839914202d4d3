//! Play is interrupted, and how it goes on.

use leptos::prelude::*;

use crate::game::entry::Court;
use crate::game::{Kind, Phase};
use crate::ui::session::use_session;
use crate::ui::text;

/// Shown while play is interrupted.
#[component]
pub fn Stopped() -> impl IntoView {
    let session = use_session();
    let stopped = Memo::new(move |_| session.state().phase() == Phase::Suspended);
    let resume = move |court| {
        session.tell(Kind::Resume { court });
    };
    view! {
        <Show when=move || stopped.get()>
            <div class="prompt tall" role="alert">
                <strong>{text::STOPPED}</strong>
                <div class="row">
                    <button
                        type="button"
                        class="button primary"
                        on:click=move |_| resume(Court::Same)
                    >
                        {text::RESUME_SAME}
                    </button>
                    <button type="button" class="button" on:click=move |_| resume(Court::Other)>
                        {text::RESUME_OTHER}
                    </button>
                </div>
            </div>
        </Show>
    }
}
