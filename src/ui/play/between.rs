//! Between two sets: the result, the pause, and what the next set needs.

use leptos::prelude::*;

use super::court::{stand_left, start_interval, use_court};
use super::last::Last;
use super::reasons::Reasons;
use super::signal_card::end_of_set;
use super::Aside;
use crate::memo::Memo;
use crate::screens::{around, Around};
use crate::session::use_session;
use crate::widgets::count_down::{left_ms, CountDown};
use crate::widgets::deferred::defer_render;
use crate::widgets::picker::{asked, buttons, Choice, Layout};
use crate::widgets::team_mark::TeamMark;
use game::entry::Toss;
use game::{Kind, Timed};
use rules::{Team, CALL_BACK_SECONDS};

/// The screen between two sets.
#[component]
pub fn Between() -> impl IntoView {
    let session = use_session();
    let line_ups = Memo::new(move |_| session.state().rules().line_ups);
    view! {
        <div class="set-over stack">
            <h2>{move || text::set_over(&session.state())}</h2>
            <Last />
            <Results />
            <Interval />
            {defer_render(move || {
                view! {
                    {end_of_set()}
                    <Reasons />
                    {defer_render(move || {
                        if line_ups.get() {
                            around(Around::BetweenSets)
                        } else {
                            view! { <NextOfTally /> }.into_any()
                        }
                    })}
                }
                    .into_any()
            })}
        </div>
    }
}

/// Every finished set.
#[component]
pub fn Results() -> impl IntoView {
    let session = use_session();
    let sets = Memo::new(move |_| {
        session
            .state()
            .sets()
            .map(|set| (set.number, set.score, set.winner))
            .collect::<Vec<_>>()
    });
    let head = |team: Team| {
        let name = move || text::team_name(&session.state(), team);
        view! {
            <th scope="col" class:team-a=team == Team::A class:team-b=team == Team::B>
                <TeamMark team />
                " "
                {name}
            </th>
        }
    };
    view! {
        <table class="set-results tabular">
            <thead>
                <tr>
                    <th scope="col">{text::set()}</th>
                    {head(Team::A)}
                    {head(Team::B)}
                </tr>
            </thead>
            <tbody>
                {move || {
                    sets.get()
                        .into_iter()
                        .map(|(number, score, winner)| {
                            view! {
                                <tr>
                                    <th scope="row">{number}</th>
                                    <td class:won=winner == Team::A>{score.a}</td>
                                    <td class:won=winner == Team::B>{score.b}</td>
                                </tr>
                            }
                        })
                        .collect_view()
                }}
            </tbody>
        </table>
    }
}

/// Milliseconds left at which something else is due; each sentence has its room from the beginning.
const INTERVAL_MOMENTS: [i64; 3] = [i64::MAX, CALL_BACK_SECONDS * 1000, 0];

/// The pause between sets.
#[component]
fn Interval() -> impl IntoView {
    let session = use_session();
    let running = Memo::new(move |_| {
        session
            .state()
            .timers()
            .iter()
            .find(|t| t.timer.what == Timed::Interval)
            .cloned()
    });
    view! {
        {move || match running.get() {
            Some(timer) => {
                let of = timer.clone();
                let due = move || text::interval_due(left_ms(session, &of));
                view! {
                    <div class="card interval">
                        <div class="interval-words">
                            <span>{text::interval()}</span>
                            <p class="in-turn">
                                <span role="status">{due}</span>
                                {INTERVAL_MOMENTS
                                    .map(|left| {
                                        view! {
                                            <span class="waits" aria-hidden="true">
                                                {text::interval_due(left)}
                                            </span>
                                        }
                                    })
                                    .collect_view()}
                            </p>
                        </div>
                        <CountDown timer warns_at=CALL_BACK_SECONDS />
                    </div>
                }
                    .into_any()
            }
            None => {
                view! {
                    <button type="button" class="button" on:click=move |_| start_interval(session)>
                        {text::start_interval()}
                    </button>
                }
                    .into_any()
            }
        }}
    }
}

/// A tally needs no line-ups; who serves first in the deciding set may be told.
#[component]
fn NextOfTally() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let number = Memo::new(move |_| session.state().set_at_hand());
    let unknown = Memo::new(move |_| session.state().opener_to_come().is_none());
    let begin = move || {
        session.submit(Kind::BeginSet);
    };
    let names = Signal::derive(move || {
        let state = session.state();
        let one = |team: Team| Choice::new(text::team_serves(&text::team_name(&state, team)));
        Team::BOTH.map(one).to_vec()
    });
    let begin_with = Callback::new(move |i: usize| {
        let first_service = Team::BOTH[i];
        let left = stand_left(&session.state_now());
        let toss = Toss::new(first_service, left);
        if session.submit(Kind::Toss(toss)) {
            begin();
        }
    });
    view! {
        <p>{move || text::sides_to_come(&session.state(), court.team_at(true))}</p>
        <button type="button" class="button primary" id="begin-set" on:click=move |_| begin()>
            {move || text::begin_set(number.get())}
        </button>
        {move || {
            let ask = unknown.get();
            ask.then(|| asked(text::or_with_service(), buttons(Layout::Row, names, None, begin_with)))
        }}
        <Aside />
    }
}
