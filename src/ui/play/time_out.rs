//! Time-outs and their thirty seconds.

use leptos::prelude::*;

use crate::game::entry::{Timer, TimerAction};
use crate::game::{Kind, RunningTimer};
use crate::ui::part::count_down::CountDown;
use crate::ui::session::{use_session, Session};
use crate::ui::text;

/// The count-down of a time-out in the log.
pub const TIME_OUT: &str = "time_out";
/// The count-down of the pause between sets in the log.
pub const INTERVAL: &str = "interval";
/// The count-down of an injured player's three minutes in the log.
pub const RECOVERY: &str = "recovery";

/// Ends a count-down.
pub fn end(session: Session, running: &RunningTimer) {
    session.tell(Kind::Timer(Timer {
        action: TimerAction::Stop,
        ..running.timer.clone()
    }));
}

/// The count-downs that run since the last rally.
#[component]
pub fn Running() -> impl IntoView {
    let session = use_session();
    let running = Memo::new(move |_| {
        session.with_replay(|replay| {
            let rally = replay.last_rally().map_or(0, |e| e.n);
            replay
                .state()
                .timers()
                .iter()
                .filter(|t| t.entry > rally && matches!(t.timer.what.as_str(), TIME_OUT | RECOVERY))
                .cloned()
                .collect::<Vec<_>>()
        })
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
    view! {
        <div class="prompt timer">
            <span class="prompt-words">{words}</span>
            <CountDown timer big=true />
            <button
                type="button"
                class="button"
                on:click=move |_| kept.with_value(|timer| end(session, timer))
            >
                {text::END_COUNT_DOWN}
            </button>
        </div>
    }
}
