//! A team that is not there: the clock of the competition, and the default after it.

use leptos::prelude::*;

use app::last_used::LastUsed;

use super::details::Chevron;
use super::team_tabs::choose_team;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::count_down::CountDown;
use crate::widgets::dialog::Confirm;
use crate::widgets::team_mark::TeamMark;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use game::entry::{Timer, TimerAction};
use game::{is_over, late_team, Kind, RunningTimer, Timed};
use rules::{waited_until, Team};
use text::setup as words;
use text::team_name;

/// More is no waiting: this project's own choice.
const MAX_MINUTES: u16 = 180;

/// The card.
#[component]
pub(super) fn LateTeam(start: Memo<Option<i64>>) -> impl IntoView {
    let session = use_session();
    let runs = Memo::new(move |_| late_team(&session.state()).cloned());
    let open = RwSignal::new(runs.with_untracked(Option::is_some));
    view! {
        <section class="card stack match-details">
            <h2>
                <button
                    id="late-team"
                    type="button"
                    class="step-head"
                    aria-expanded=move || open.get().to_string()
                    on:click=move |_| open.update(|o| *o = !*o)
                >
                    <span class="step-name">{words::late_team()}</span>
                    <Chevron />
                </button>
            </h2>
            {move || open.get().then(|| view! {
                <fieldset class="stack late-team" disabled=move || !session.may_write()>
                    <p>{words::late_rule()}</p>
                    {move || match runs.get() {
                        Some(timer) => view! { <Waiting timer /> }.into_any(),
                        None => view! { <Begin start /> }.into_any(),
                    }}
                </fieldset>
            })}
        </section>
    }
}

/// Which team, and how long.
#[component]
fn Begin(start: Memo<Option<i64>>) -> impl IntoView {
    let session = use_session();
    let late = RwSignal::new(None::<Team>);
    let typed = RwSignal::new(device::settings().last_used(LastUsed::Wait));
    let minutes = move || {
        let minutes = typed.with(|t| t.trim().parse::<u16>().ok());
        minutes.filter(|m| *m <= MAX_MINUTES)
    };
    let wrong = Signal::derive(move || {
        let unread = typed.with(|t| !t.trim().is_empty()) && minutes().is_none();
        unread.then(|| words::wait_form(MAX_MINUTES))
    });
    let label = Signal::derive(move || {
        let words = match start.get() {
            Some(_) => words::wait_minutes(),
            None => words::wait_minutes_from_now(),
        };
        words.to_owned()
    });
    let begin = move |expected: u32| {
        let Some((team, minutes)) = untrack(|| Some((late.get()?, minutes()?))) else {
            return;
        };
        device::settings().set_last_used(LastUsed::Wait, &minutes.to_string());
        let now = session.time_now();
        let until = waited_until(start.get_untracked(), now, minutes);
        let seconds = u32::try_from((until - now).max(0) / 1000).unwrap_or_default();
        session.submit_at(expected, clock(team, seconds, TimerAction::Start));
    };
    view! {
        <fieldset>
            <legend>{words::who_is_late()}</legend>
            {choose_team(late)}
        </fieldset>
        {text_field(
            "wait-minutes",
            label,
            InputKind::Whole,
            typed,
            FieldOptions {
                wrong: Some(wrong),
                hint: Some(named(words::wait_usual())),
                ..FieldOptions::default()
            },
        )}
        {move || {
            let open = late.get().is_none() || minutes().is_none();
            open.then(|| view! { <p class="why-not">{words::late_needs()}</p> })
        }}
        {move || {
            let expected = session.next();
            view! {
                <button
                    type="button"
                    class="button primary"
                    disabled=move || late.get().is_none() || minutes().is_none()
                    on:click=move |_| begin(expected)
                >
                    {words::start_waiting()}
                </button>
            }
        }}
    }
}

fn clock(team: Team, seconds: u32, action: TimerAction) -> Kind {
    Kind::Timer(Timer {
        what: Timed::LateTeam,
        team: Some(team),
        seconds,
        action,
    })
}

/// The clock runs, or has run out.
#[component]
fn Waiting(timer: RunningTimer) -> impl IntoView {
    let session = use_session();
    let asked = RwSignal::new(false);
    let seconds = timer.timer.seconds;
    let team = timer.timer.team.unwrap_or(Team::A);
    let name = move || team_name(&session.state(), team);
    let shown = timer.clone();
    let over = Memo::new(move |_| is_over(&timer, session.now()));
    let default = Callback::new(move |()| {
        session.submit(Kind::Default { team });
    });
    view! {
        <div class="warm-up">
            <h4><TeamMark team /><span>{move || words::waiting_for(&name())}</span></h4>
            <CountDown timer=shown />
        </div>
        // One takes the room of the other, or what comes would move the buttons under a finger.
        <div class="in-turn">
            <p class:waits=move || over.get()>{words::while_waiting()}</p>
            <p class="sentence warn" class:waits=move || !over.get() role="alert">
                {words::waited_enough()}
            </p>
        </div>
        {move || {
            let expected = session.next();
            let came = move |_| {
                session.submit_at(expected, clock(team, seconds, TimerAction::Stop));
            };
            view! {
                <button type="button" class="button" class:primary=move || !over.get() on:click=came>
                    {words::they_are_here()}
                </button>
            }
        }}
        <button
            type="button"
            class="button"
            class:primary=move || over.get()
            on:click=move |_| asked.set(true)
        >
            {words::record_default()}
        </button>
        <Confirm
            open=asked
            question=Signal::derive(move || words::default_question(&name()))
            yes=Signal::stored(words::record_default().to_owned())
            on_yes=default
        />
    }
}
