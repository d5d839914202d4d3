//! The time for the service (Official Volleyball Rules 2025-2028, 12.4.4), counted from the whistle when
//! somebody wants it. It is looked at and not recorded.

use leptos::prelude::*;

use super::court::use_court;
use crate::memo::Memo;
use crate::session::use_session;
use game::Phase;

/// A whistle: the entry that it waits for, and when it was.
type Whistle = (u32, i64);

/// The button and what is left.
#[component]
pub fn Service() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let whistle = RwSignal::new(None::<Whistle>);
    let shown =
        Memo::new(move |_| court.has_service_clock() && session.state().phase() == Phase::Playing);
    // Whatever is entered ends it.
    let since = Memo::new(move |_| {
        let (entry, since) = whistle.get()?;
        (entry == session.next()).then_some(since)
    });
    let left = Memo::new(move |_| {
        let since = since.get()?;
        let total = i64::from(session.state().rules().service_seconds) * 1000;
        let left = total - (session.now() - since).max(0);
        Some((left + 999).div_euclid(1000).max(0))
    });
    let start = move |_| {
        whistle.set(Some((session.next_now(), session.time_now())));
    };
    view! {
        <Show when=move || shown.get()>
            <div class="service">
                <button type="button" class="button" id="whistle" on:click=start>
                    {text::whistle()}
                </button>
                <span class="service-left tabular" role="timer" class:over=move || left.get() == Some(0)>
                    {move || left.get().map(text::service_left)}
                </span>
            </div>
        </Show>
    }
}
