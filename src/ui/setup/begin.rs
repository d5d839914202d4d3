//! The last check before a set, and its beginning.

use leptos::prelude::*;

use super::check::look_at;
use super::discrepancy::OthersOnCourt;
use super::liberos::LiberosNow;
use super::line_up::BothLineUps;
use super::toss::CourtSketch;
use crate::memo::Memo;
use crate::play::{AlreadyRunning, Aside};
use crate::session::{use_session, Refused};
use crate::widgets::deferred::defer_render;
use crate::widgets::dialog::Confirm;
use game::entry::Toss;
use game::{notices, Kind, Notice};
use rules::{Step, Team};
use text::setup as words;
use text::team_name;

/// Who serves, who is where, both line-ups, and the button that begins the set.
#[component]
pub(super) fn BeginCard() -> impl IntoView {
    let session = use_session();
    let outcome = Memo::new(move |_| {
        let state = session.state();
        Some(Toss::new(state.opener_to_come()?, state.left_to_come()?))
    });
    let line_ups = Memo::new(move |_| {
        let state = session.state();
        Team::BOTH.iter().all(|&t| state.line_up_given(t).is_some())
    });
    let missing = move || {
        let why = session.check(&Kind::BeginSet).err()?;
        Some(words::refusal(
            &text::refusal(&why, (&*session.state()).into()),
            why.rule(),
        ))
    };
    let unsafe_items = Memo::new(move |_| failed_items(&notices(&session.state())));
    let ready = Memo::new(move |_| session.check(&Kind::BeginSet).is_ok());
    // What is missing can be left out on the first referee's decision, with a reason.
    let against = move |_| {
        if let Err(why) = session.check(&Kind::BeginSet) {
            let kind = Kind::BeginSet;
            session.refused().set(Some(Refused { kind, why }));
        }
    };
    let set = Memo::new(move |_| session.state().set_at_hand());
    let asked = RwSignal::new(false);
    let begin = move |expected: u32| {
        session.submit_at(expected, Kind::BeginSet);
    };
    let server = move || {
        let toss = outcome.get()?;
        let state = session.state();
        let number = state.ready().and_then(|play| play.server());
        Some(words::serves_with(
            &team_name(&state, toss.first_service),
            number,
        ))
    };
    let button = move || {
        let expected = session.next();
        let unsafe_now = unsafe_items.with(|items| !items.is_empty());
        view! {
            <button
                id="begin-set"
                type="button"
                class="button"
                class:primary=!unsafe_now
                disabled=move || !ready.get()
                on:click=move |_| if unsafe_now { asked.set(true) } else { begin(expected) }
            >
                {if unsafe_now { words::begin_all_the_same().to_owned() } else { words::begin_set(set.get()) }}
            </button>
        }
    };
    view! {
        <div class="stack">
            {move || unsafe_items.with(|items| (!items.is_empty()).then(|| view! {
                <div class="sentence bad do-not-start" role="alert">
                    <strong>{words::do_not_start()}</strong>
                    <p>{words::not_in_order(items)}</p>
                </div>
            }))}
            {move || outcome.get().map(|toss| view! { <CourtSketch toss /> })}
            {move || server().map(|words| view! { <p class="who-serves">{words}</p> })}
            {move || {
                let left = outcome.get()?.left;
                line_ups.get().then(|| view! { <BothLineUps left /> })
            }}
            {defer_render(move || {
                view! {
                    <LiberosNow />
                    {look_at(Step::LastCheck)}
                    <Aside />
                    <AlreadyRunning />
                    <OthersOnCourt />
                    {move || {
                        missing().map(|words| view! {
                            <p class="sentence warn">{words}</p>
                            <button type="button" class="button" id="begin-against" on:click=against>
                                {words::begin_all_the_same()}
                            </button>
                        })
                    }}
                    {button}
                    <Confirm
                        open=asked
                        question=Signal::stored(words::begin_unsafe().to_owned())
                        yes=Signal::stored(words::begin_all_the_same().to_owned())
                        on_yes=Callback::new(move |()| begin(session.next()))
                    />
                }
                    .into_any()
            })}
        </div>
    }
}

/// The checks that stand in the way.
fn failed_items(due: &[Notice]) -> Vec<String> {
    due.iter()
        .filter_map(|notice| match notice {
            Notice::DoNotStart { item } => Some(item.clone()),
            _ => None,
        })
        .collect()
}
