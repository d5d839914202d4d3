//! A count-down that is computed from the clock each time, never counted.

use crate::memo::Memo;
use crate::session::{use_session, Session};
use game::RunningTimer;
use leptos::prelude::*;

/// Milliseconds of shaking and rest when a count-down asks to be looked at.
const LOOK: [u32; 3] = [80, 60, 80];

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

/// The time left, and words in its place at the end. Whatever comes has its room from the beginning: nothing
/// moves under a finger when the clock says so.
#[component]
pub fn CountDown(
    /// The one that runs.
    timer: RunningTimer,
    /// So many seconds before its end something is due as well.
    #[prop(optional)]
    warns_at: i64,
) -> impl IntoView {
    let session = use_session();
    let longest = text::minutes(i64::from(timer.timer.seconds));
    let seconds = Memo::new(move |_| {
        let left = left_ms(session, &timer);
        // Shown until it is really over.
        (left + 999).div_euclid(1000).max(0)
    });
    let over = Memo::new(move |_| seconds.get() == 0);
    let due = Memo::new(move |_| seconds.get() <= warns_at);
    // Felt by whoever looks at the court; once, and not for what was over already.
    Effect::new(move |was: Option<(bool, bool)>| {
        let now = (due.get(), over.get());
        if was.is_some_and(|was| was < now) {
            device::vibrate(&LOOK);
        }
        now
    });
    view! {
        <span class="count-down in-turn" class:over=move || over.get() role="timer">
            <span class="tabular" class:waits=move || over.get()>
                {move || text::minutes(seconds.get())}
            </span>
            <span class="tabular waits" aria-hidden="true">
                {longest}
            </span>
            <span class="count-down-over" class:waits=move || !over.get()>
                {text::time_over()}
            </span>
        </span>
    }
}
