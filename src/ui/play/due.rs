//! What is due comes here: small things on the line above the court, large ones below it.

use leptos::prelude::*;

use super::captain::CaptainPrompts;
use super::court::{use_court, Panel};
use super::held::Held;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::icon::{icon, Icon};
use game::entry::{Change, Kind};
use game::{notices, Notice, Timeline};
use rules::Team;

/// Whether something has to be done about it now.
const fn is_large(notice: &Notice) -> bool {
    matches!(
        notice,
        Notice::ChangeCourts
            | Notice::MustSubstitute { .. }
            | Notice::LiberoMustLeave { .. }
            | Notice::Question { .. }
    )
}

/// Counts are told when they change, and no longer after the next rally; all else as long as it is
/// due.
fn is_news(notice: &Notice, replay: &Timeline) -> bool {
    let since = replay.last_rally().map_or(0, |rally| rally.n);
    let asked_since = |asks: &dyn Fn(&Kind) -> bool| {
        replay
            .entries()
            .iter()
            .rev()
            .take_while(|entry| entry.n > since)
            .any(|entry| asks(&entry.kind))
    };
    match notice {
        Notice::LastTimeOut { team } => {
            asked_since(&|kind| matches!(kind, Kind::TimeOut { team: of } if of == team))
        }
        Notice::SubstitutionsLeft { team, .. } => {
            asked_since(&|kind| matches!(kind, Kind::Substitution { team: of, .. } if of == team))
        }
        // It waits below the court, and may wait long: the line is for what is news.
        Notice::GameCaptain { .. } => false,
        _ => true,
    }
}

/// The line above the court. It is always there, so that the court never moves.
#[component]
pub fn DueLine() -> impl IntoView {
    let session = use_session();
    let due = Memo::new(move |_| {
        session.with_timeline(|replay| {
            let state = replay.state();
            notices(state)
                .iter()
                .filter(|n| is_news(n, replay))
                .map(|n| text::notice(n, state))
                .collect::<Vec<_>>()
        })
    });
    let serving = Memo::new(move |_| text::serving_line(&session.state()));
    let court = use_court();
    let hint = Memo::new(move |_| court.hint());
    let is_due = move || !due.read().is_empty() || hint.get().is_some();
    view! {
        <p class="due-line" class:due=is_due id="due">
            <span class="due-words">
                {move || {
                    if let Some(words) = hint.get() {
                        return words.to_owned();
                    }
                    let due = due.get();
                    if due.is_empty() { serving.get() } else { due.join(" · ") }
                }}
            </span>
        </p>
    }
}

/// The large ones, each with what to do about it.
#[component]
pub fn Prompts() -> impl IntoView {
    let session = use_session();
    let large = Memo::new(move |_| {
        let mut large = notices(&session.state());
        large.retain(is_large);
        // Both teams wait for it, so it comes first.
        rules::sort_by_key(&mut large, |notice| *notice != Notice::ChangeCourts);
        large
    });
    view! {
        <Held />
        {move || {
            large
                .get()
                .into_iter()
                .map(|notice| match notice {
                    Notice::ChangeCourts => view! { <ChangeCourts /> }.into_any(),
                    Notice::Question { entry } => view! { <Question entry /> }.into_any(),
                    Notice::LiberoMustLeave { team, player } => {
                        view! { <LiberoLeaves team player=player.0 notice /> }.into_any()
                    }
                    Notice::MustSubstitute { team, .. } => {
                        view! { <Leaves team notice /> }.into_any()
                    }
                    _ => ().into_any(),
                })
                .collect_view()
        }}
        <CaptainPrompts />
        <Changed />
    }
}

/// The teams change courts in the deciding set.
#[component]
fn ChangeCourts() -> impl IntoView {
    let session = use_session();
    view! {
        <div class="prompt" role="alert" id="change-courts">
            {icon(Icon::Exchange)}
            <strong class="prompt-words">{text::change_courts()}</strong>
            <button
                type="button"
                class="button primary"
                on:click=move |_| {
                    session.submit(Kind::ChangeCourts);
                }
            >
                {text::courts_changed()}
            </button>
        </div>
    }
}

/// Said once more after the change, for whoever does not see the halves move.
#[component]
fn Changed() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    view! {
        <Show when=move || court.just_changed()>
            <p class="prompt" role="status">
                <strong class="prompt-words">
                    {move || text::changed_courts(&session.state(), court.team_at(true))}
                </strong>
            </p>
        </Show>
    }
}

/// Something that the rules leave to the first referee.
#[component]
fn Question(entry: u32) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let asked = state
        .questions()
        .iter()
        .find(|q| q.entry == entry)
        .map(|q| (text::question(q, (&*state).into()), q.ask.choices()));
    asked.map(|((question, words), choices)| {
        view! {
            <div class="prompt tall" role="alert">
                <p>{question}</p>
                <div class="row">
                    {words
                        .into_iter()
                        .zip(choices.iter().copied())
                        .map(|(word, choice)| {
                            view! {
                                <button
                                    type="button"
                                    class="button"
                                    on:click=move |_| {
                                        let choice = choice.to_owned();
                                        session.submit(Kind::Answer { entry, choice });
                                    }
                                >
                                    {word}
                                </button>
                            }
                        })
                        .collect_view()}
                </div>
            </div>
        }
    })
}

/// A libero who may not stay: the player comes back with one tap.
#[component]
fn LiberoLeaves(team: Team, player: u16, notice: Notice) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let words = text::notice(&notice, &state);
    let change = state.on_floor().and_then(|play| {
        let (place, libero) = play.sides[team].acting_libero()?;
        (libero.0 == player).then(|| Change {
            out: libero,
            into: play.sides[team].slots[place].player,
        })
    });
    view! {
        <div class="prompt" role="alert">
            <strong class="prompt-words">{words}</strong>
            {change
                .map(|change| {
                    view! {
                        <button
                            type="button"
                            class="button primary"
                            on:click=move |_| {
                                session.submit(Kind::LiberoReplacement { team, change });
                            }
                        >
                            {text::one_change(&change)}
                        </button>
                    }
                })}
        </div>
    }
}

/// A player who may not stay.
#[component]
fn Leaves(team: Team, notice: Notice) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let words = text::notice(&notice, &session.state_now());
    view! {
        <div class="prompt" role="alert">
            <strong class="prompt-words">{words}</strong>
            <button
                type="button"
                class="button primary"
                on:click=move |_| court.open(Panel::Substitution(team))
            >
                {text::substitution()}
            </button>
        </div>
    }
}
