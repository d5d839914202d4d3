//! The last entry in words, with one tap to take it back.

use leptos::prelude::*;

use super::court::{use_court, Court, Panel};
use super::held::leave_last_out;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use game::{Kind, Phase, Timeline};

/// Takes an entry back.
pub fn take_back(session: Session, entry: u32, why: Option<String>) {
    session.submit(Kind::Strike { entry, why });
}

/// Takes the last entry back. Where the last tap is held back, that one is what is meant.
pub fn take_back_last(session: Session, court: Court) {
    if leave_last_out(session, court) {
        return;
    }
    if let Some(entry) = session.with_untracked(|replay| replay.last_standing().map(|e| e.n)) {
        take_back(session, entry, None);
        court.tell_score();
    }
}

/// The line below the court.
#[component]
pub fn Last() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let last = Memo::new(move |_| {
        session.with_timeline(|replay| {
            replay
                .last_standing()
                .map(|e| (e.n, text::entry(e, replay.state())))
        })
    });
    let sealed = Memo::new(move |_| session.with_timeline(Timeline::ends_with_a_seal));
    // After the last point of a set the rally that gave it can still be replayed.
    let playing = Memo::new(move |_| {
        session.with_timeline(|r| r.state().phase() == Phase::Playing || r.replayable().is_some())
    });
    view! {
        <div class="last">
            <p class="last-words" id="last-entry">
                {move || match last.get() {
                    Some((_, words)) => words,
                    None if sealed.get() => text::undo_in_the_log().to_owned(),
                    None => text::no_entry().to_owned(),
                }}
            </p>
            <Show when=move || playing.get()>
                <button
                    type="button"
                    class="button small"
                    id="replay"
                    on:click=move |_| court.open(Panel::Replay)
                >
                    {text::replay()}
                </button>
            </Show>
            <Show when=move || last.get().is_some()>
                <button type="button" class="button small" id="take-back" data-once on:click=move |_| take_back_last(session, court)>
                    {text::undo()}
                </button>
            </Show>
        </div>
    }
}
