//! A count-down that is computed from the clock each time, never counted.

use leptos::prelude::*;

use crate::device;
use crate::game::RunningTimer;
use crate::ui::session::{use_session, Session};
use crate::ui::text;

/// Milliseconds of shaking and rest at the end of a count-down.
const END: [u32; 3] = [80, 60, 80];

/// Milliseconds left; negative once it is over. Follows the clock.
#[must_use]
pub fn left_ms(session: Session, timer: &RunningTimer) -> i64 {
    let total = i64::from(timer.timer.seconds) * 1000;
    match timer.since {
        // The clock that is looked at may be a moment older than the start.
        Some(since) => total - (session.now() - since).max(0),
        None => total,
    }
}

/// The time left, and a word at the end.
#[component]
pub fn CountDown(
    /// The one that runs.
    timer: RunningTimer,
    /// In the largest type.
    #[prop(optional)]
    big: bool,
) -> impl IntoView {
    let session = use_session();
    let seconds = Memo::new(move |_| {
        let left = left_ms(session, &timer);
        // Shown until it is really over.
        (left + 999).div_euclid(1000).max(0)
    });
    let over = Memo::new(move |_| seconds.get() == 0);
    // Felt by whoever looks at the court; once, and not for one that was over already.
    Effect::new(move |was: Option<bool>| {
        let over = over.get();
        if over && was == Some(false) {
            device::vibrate(&END);
        }
        over
    });
    view! {
        <span class="count-down" class:big=big class:over=move || over.get() role="timer">
            <span class="tabular">{move || text::minutes(seconds.get())}</span>
            <Show when=move || over.get()>
                <span class="count-down-over">{text::TIME_OVER}</span>
            </Show>
        </span>
    }
}
