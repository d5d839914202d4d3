//! Time-outs and their thirty seconds.

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::widgets::count_down::{left_ms, CountDown};
use game::{Kind, RunningTimer, Timed};

/// Ends a count-down.
pub fn end(session: Session, running: &RunningTimer) {
    session.submit(Kind::Timer(running.timer.stopped()));
}

/// Milliseconds for which a count-down that is over says so; then it goes by itself. Its room stays until the next
/// rally, so that nothing moves under a finger.
const SAYS_OVER_MS: i64 = 15_000;

/// The count-downs that run since the last rally.
#[component]
pub fn Running() -> impl IntoView {
    let session = use_session();
    let running = Memo::new(move |_| {
        let state = session.state();
        let timers = state.timers().iter();
        let in_play = timers.filter(|t| matches!(t.timer.what, Timed::TimeOut | Timed::Recovery));
        in_play.cloned().collect::<Vec<_>>()
    });
    view! {
        <For each=move || running.get() key=|t| t.entry let:timer>
            <Line timer />
        </For>
    }
}

#[component]
fn Line(timer: RunningTimer) -> impl IntoView {
    let session = use_session();
    let words = text::timer(&timer.timer, &session.state_now());
    let kept = StoredValue::new(timer.clone());
    let of = timer.clone();
    let gone = Memo::new(move |_| left_ms(session, &of) <= -SAYS_OVER_MS);
    // Over for long when the court is drawn: nobody has seen it there.
    if gone.get_untracked() {
        return ().into_any();
    }
    view! {
        <div class="prompt timer" class:waits=move || gone.get()>
            <span class="prompt-words">{words}</span>
            <CountDown timer />
            <button
                type="button"
                class="button"
                on:click=move |_| kept.with_value(|timer| end(session, timer))
            >
                {text::end_count_down()}
            </button>
        </div>
    }
    .into_any()
}
