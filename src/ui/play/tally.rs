//! A tally may begin without knowing who serves; a tap says it, or the first point does.

use leptos::prelude::*;

use super::court::{stand_left, use_court};
use super::running::AlreadyRunning;
use crate::memo::Memo;
use crate::session::use_session;
use game::entry::Toss;
use game::{Kind, Phase};

/// Who serves first, while nobody has scored and nothing is known.
#[component]
pub fn FirstService() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let open = Memo::new(move |_| {
        let state = session.state();
        state.phase() == Phase::Preparation && state.opener_to_come().is_none()
    });
    let begin = move |left: bool| {
        let toss = Toss::new(
            untrack(|| court.team_at(left)),
            stand_left(&session.state_now()),
        );
        if session.submit(Kind::Toss(toss)) {
            session.submit(Kind::BeginSet);
        }
    };
    view! {
        <Show when=move || open.get()>
            <div class="prompt tall">
                <p>{text::tally_begin()}</p>
                <div class="row">
                    <button type="button" class="button" on:click=move |_| begin(true)>
                        {text::left_serves()}
                    </button>
                    <button type="button" class="button" on:click=move |_| begin(false)>
                        {text::right_serves()}
                    </button>
                </div>
                <AlreadyRunning />
            </div>
        </Show>
    }
}
