//! The official warm-up at the net (7.2), timed by entries, so that lock, reload and a changed clock
//! leave it right.

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::count_down::CountDown;
use crate::widgets::team_mark::TeamMark;
use device::vibrate;
use game::entry::{Timer, TimerAction};
use game::{warm_up_running, warm_ups, warmed_up, Kind, Timed};
use rules::Team;
use text::setup as words;
use text::team_name;

/// One count-down for both teams together, or one for each.
#[component]
pub(super) fn WarmUpCard() -> impl IntoView {
    let session = use_session();
    let all = Memo::new(move |_| warm_ups(&session.state()));
    let style = move || {
        let state = session.state();
        words::warm_up_is(state.rules().warm_up, state.opener_to_come().is_some())
    };
    view! {
        <div class="stack">
            <p class="muted">{style}</p>
            {move || all.get().into_iter().map(|team| view! { <OneWarmUp team /> }).collect_view()}
        </div>
    }
}

#[component]
fn OneWarmUp(team: Option<Team>) -> impl IntoView {
    let session = use_session();
    let timer = Memo::new(move |_| warm_up_running(&session.state(), team).cloned());
    let over = Memo::new(move |_| warmed_up(&session.state(), team, session.now()));
    // What stands here changes when somebody presses a button, never by the clock alone: who wants to end the
    // count-down at its last second must not begin it anew.
    let ended = Memo::new(move |_| timer.read().is_none() && over.get());
    // Outward only: the phone is felt when a count-down that was watched runs out.
    Effect::new(move |before: Option<bool>| {
        let now_over = over.get();
        if before == Some(false) && now_over && timer.with_untracked(Option::is_some) {
            vibrate(&[300, 150, 300]);
        }
        now_over
    });
    let enter = move |expected: u32, action: TimerAction| {
        if let Some(start) = Timed::WarmUp.start(team, session.state_now().rules()) {
            session.submit_at(expected, Kind::Timer(Timer { action, ..start }));
        }
    };
    let name = move || match team {
        Some(team) => team_name(&session.state(), team),
        None => words::both_teams().to_owned(),
    };
    let button = move |words: &'static str, action: TimerAction, primary: bool| {
        let expected = session.next();
        view! {
            <button
                type="button"
                class="button"
                class:primary=primary
                aria-label=move || words::warm_up_of(words, &name())
                on:click=move |_| enter(expected, action)
            >
                {words}
            </button>
        }
    };
    view! {
        <section class="warm-up" class:over=move || over.get()>
            <h4>
                {team.map(|team| view! { <TeamMark team /> })}
                <span>{name}</span>
            </h4>
            {move || match (timer.get(), ended.get()) {
                (Some(timer), _) => view! {
                    <CountDown timer />
                    {button(words::end_warm_up(), TimerAction::Stop, false)}
                }
                .into_any(),
                (None, true) => view! {
                    <p class="mark-ok" role="status">{words::warm_up_over()}</p>
                    {button(words::warm_up_again(), TimerAction::Start, false)}
                }
                .into_any(),
                (None, false) => button(words::start_warm_up(), TimerAction::Start, true).into_any(),
            }}
        </section>
    }
}
