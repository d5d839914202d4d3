//! The match that goes on while somebody reads: what it stands at, what is being counted down, and the way
//! back to it.

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::count_down::CountDown;
use game::Timed;
use text::learn as words;

/// One line above a page; nothing where no match is being played.
pub fn match_line() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let id = Memo::new(move |_| {
        session
            .id()
            .filter(|_| session.state().phase().is_under_way())
    });
    let stands = Memo::new(move |_| text::standing(&session.state()));
    let timers = Memo::new(move |_| {
        let state = session.state();
        let timers = state.timers().iter();
        let counts = timers.filter(|timer| {
            let what = &timer.timer.what;
            matches!(what, Timed::TimeOut | Timed::Recovery | Timed::Interval)
        });
        counts.cloned().collect::<Vec<_>>()
    });
    let line = move |id: String| {
        view! {
            <div class="match-line" id="match-line">
                <button
                    type="button"
                    class="button primary"
                    on:click=move |_| shell.go(Screen::Play { id: id.clone() })
                >
                    {words::back_to_match()}
                </button>
                <span class="tabular">{move || stands.get()}</span>
                <For each=move || timers.get() key=|timer| timer.entry let:timer>
                    <CountDown timer />
                </For>
            </div>
        }
        .into_any()
    };
    (move || id.get().map(line)).into_any()
}
