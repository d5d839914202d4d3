//! Only the court: score, server and what is due, as large as the screen allows; and the lock against
//! pockets.

use leptos::prelude::*;

use super::court::use_court;
use super::due::Prompts;
use super::last::take_back_last;
use super::service::Service;
use super::stopped::Stopped;
use super::tally::FirstService;
use super::time_out::Running;
use crate::session::use_session;
use crate::shell::use_shell;
use crate::widgets::keys::go_on_at;
use crate::widgets::team_mark::TeamMark;
use rules::Team;

/// What stays below the halves while only the court shows.
#[component]
pub fn Foot() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    view! {
        <div class="glance-due">
            <Stopped />
            <Prompts />
            <Running />
            <FirstService />
            <Service />
        </div>
        <div class="glance-foot">
            <button
                type="button"
                class="button"
                id="take-back"
                data-once
                on:click=move |_| take_back_last(session, court)
            >
                {text::undo()}
            </button>
            <button type="button" class="button" id="lock" on:click=move |_| court.locked.set(true)>
                {text::lock()}
            </button>
            <button
                type="button"
                class="button"
                id="whole"
                on:click=move |_| court.set_glance(false)
            >
                {text::whole()}
            </button>
        </div>
    }
}

/// Covers everything until two opposite corners were pressed one after the other. A touch between them
/// begins anew, so a pocket does not open it.
#[component]
pub fn Lock() -> impl IntoView {
    let court = use_court();
    view! {
        <Show when=move || court.locked.get()>
            <Locked />
        </Show>
    }
}

#[component]
fn Locked() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let begun = RwSignal::new(false);
    // Nothing that a pocket presses opens it, the phone's own buttons neither.
    use_shell().opened.while_here(|| false);
    go_on_at("corner-1");
    let points = move |left: bool| {
        let team = court.team_at(left);
        let class = match team {
            Team::A => "lock-points team-a",
            Team::B => "lock-points team-b",
        };
        view! {
            <span class=class>
                <TeamMark team />
                {session.state().score()[team]}
            </span>
        }
        .into_any()
    };
    let open = move |_| {
        if begun.get_untracked() {
            court.locked.set(false);
            device::vibrate(&[18]);
        }
    };
    view! {
        <div class="lock" id="locked" role="dialog" aria-modal="true" aria-label=text::locked()>
            <div class="lock-ground" on:pointerdown=move |_| begun.set(false)></div>
            <div class="lock-says">
            <p class="lock-score tabular" aria-hidden="true">
                {move || points(true)}
                {move || points(false)}
            </p>
            <p class="visually-hidden">
                {move || {
                    let state = session.state();
                    text::locked_score(&state, court.team_at(true))
                }}
            </p>
            <p class="lock-serves">{move || text::serving_line(&session.state())}</p>
            <p class="lock-how">{text::locked()}</p>
            </div>
            <button
                type="button"
                class="button lock-corner one"
                id="corner-1"
                aria-label=text::corner_1()
                aria-pressed=move || begun.get().to_string()
                on:click=move |_| begun.set(true)
            >
                "1"
            </button>
            <button
                type="button"
                class="button lock-corner two"
                id="corner-2"
                aria-label=text::corner_2()
                on:click=open
            >
                "2"
            </button>
        </div>
    }
}
