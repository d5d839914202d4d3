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

/// Milliseconds for which a count-down that is over says so; then it goes by itself.
const SAYS_OVER_MS: i64 = 15_000;

/// The count-downs that run since the last rally.
#[component]
pub fn Running() -> impl IntoView {
    let session = use_session();
    let running = Memo::new(move |_| {
        session.with_timeline(|replay| {
            let rally = replay.last_rally().map_or(0, |e| e.n);
            replay
                .state()
                .timers()
                .iter()
                .filter(|t| {
                    t.entry > rally && matches!(t.timer.what, Timed::TimeOut | Timed::Recovery)
                })
                .cloned()
                .collect::<Vec<_>>()
        })
    });
    let shown = Memo::new(move |_| {
        let mut shown = running.get();
        shown.retain(|timer| left_ms(session, timer) > -SAYS_OVER_MS);
        shown
    });
    view! {
        <For each=move || shown.get() key=|t| t.entry let:timer>
            <Line timer />
        </For>
    }
}

#[component]
fn Line(timer: RunningTimer) -> impl IntoView {
    let session = use_session();
    let words = text::timer(&timer.timer, &session.state_now());
    let kept = StoredValue::new(timer.clone());
    view! {
        <div class="prompt timer">
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
}
