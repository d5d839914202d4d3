//! Everything else that can happen to a team.

use leptos::html;
use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::game::entry::{Change, Level, Who};
use crate::game::Kind;
use crate::rules::{Shirt, Team};
use crate::ui::session::use_session;
use crate::ui::text;

/// The panel.
#[component]
pub fn More(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let title = text::team_name(&session.state_now(), team);
    let enter = Callback::new(move |kind: Kind| {
        court.tell_as(session.next_now(), kind);
    });
    view! {
        <Frame title>
            <Liberos team enter />
            <fieldset class="asked">
                <legend>{text::REQUESTS}</legend>
                <div class="row">
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| enter.run(Kind::ImproperRequest { team })
                    >
                        {text::IMPROPER}
                    </button>
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| enter.run(Kind::Delay { team, request: false })
                    >
                        {text::DELAY}
                    </button>
                </div>
            </fieldset>
            <Conduct team enter />
            <Remark team enter />
        </Frame>
    }
}

/// Libero replacements that are legal now.
#[component]
fn Liberos(team: Team, enter: Callback<Kind>) -> impl IntoView {
    let session = use_session();
    let legal = Memo::new(move |_| {
        let state = session.state();
        let Some(play) = state.on_floor() else {
            return Vec::new();
        };
        let side = &play.sides[team];
        let liberos = &state.team(team).liberos;
        let on_court: Vec<Shirt> = side.on_court().collect();
        let waiting = side.slots.iter().filter(|s| s.libero.is_some());
        let coming: Vec<Shirt> = waiting
            .map(|s| s.player)
            .chain(liberos.iter().copied())
            .collect();
        on_court
            .iter()
            .flat_map(|&out| coming.iter().map(move |&into| Change { out, into }))
            .filter(|&change| {
                session
                    .may(&Kind::LiberoReplacement { team, change })
                    .is_ok()
            })
            .collect::<Vec<_>>()
    });
    let has = Memo::new(move |_| !session.state().team(team).liberos.is_empty());
    view! {
        <Show when=move || has.get()>
            <fieldset class="asked">
                <legend>{text::LIBERO}</legend>
                <div class="row">
                    {move || {
                        let legal = legal.get();
                        if legal.is_empty() {
                            return view! { <p class="muted">{text::NO_LIBERO_NOW}</p> }.into_any();
                        }
                        legal
                            .into_iter()
                            .map(|change| {
                                view! {
                                    <button
                                        type="button"
                                        class="button"
                                        on:click=move |_| {
                                            enter.run(Kind::LiberoReplacement { team, change });
                                        }
                                    >
                                        {text::one_change(&change)}
                                    </button>
                                }
                            })
                            .collect_view()
                            .into_any()
                    }}
                </div>
            </fieldset>
        </Show>
    }
}

/// Misconduct: first the person, then the level.
#[component]
fn Conduct(team: Team, enter: Callback<Kind>) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let mut people: Vec<Who> = Vec::new();
    if let Some(list) = &state.team(team).list {
        let mut numbers: Vec<Shirt> = list.players.iter().map(|p| p.number).collect();
        numbers.sort_unstable();
        people.extend(numbers.into_iter().map(Who::Player));
        people.extend(list.staff.iter().map(|s| Who::Staff(s.role.clone())));
    }
    if !people.iter().any(|p| matches!(p, Who::Staff(_))) {
        people.push(Who::Staff("coach".to_owned()));
    }
    let chosen = RwSignal::new(None::<Who>);
    let buttons = people
        .into_iter()
        .map(|who| {
            let label = text::who(&who);
            let this = who.clone();
            view! {
                <button
                    type="button"
                    class="button number tabular"
                    aria-pressed=move || (chosen.read().as_ref() == Some(&this)).to_string()
                    on:click=move |_| chosen.set(Some(who.clone()))
                >
                    {label}
                </button>
            }
        })
        .collect_view();
    view! {
        <fieldset class="asked">
            <legend>{text::MISCONDUCT}</legend>
            <div class="numbers">{buttons}</div>
        </fieldset>
        {move || {
            let who = chosen.get()?;
            Some(
                view! {
                    <fieldset class="asked">
                        <legend>{text::level_for(&who)}</legend>
                        <div class="row">
                            {Level::ALL
                                .into_iter()
                                .map(|sanction| {
                                    let kind = Kind::Misconduct {
                                        team,
                                        who: who.clone(),
                                        sanction,
                                    };
                                    let legal = session.may(&kind).is_ok();
                                    view! {
                                        <button
                                            type="button"
                                            class="button"
                                            aria-disabled=(!legal).to_string()
                                            on:click=move |_| enter.run(kind.clone())
                                        >
                                            {text::level(sanction)}
                                        </button>
                                    }
                                })
                                .collect_view()}
                        </div>
                    </fieldset>
                },
            )
        }}
    }
}

/// Words for the sheet.
#[component]
fn Remark(team: Team, enter: Callback<Kind>) -> impl IntoView {
    let field = NodeRef::<html::Input>::new();
    let note = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let words = field.get().map(|input| input.value()).unwrap_or_default();
        let words = words.trim();
        if !words.is_empty() {
            enter.run(Kind::Remark {
                text: words.to_owned(),
                team: Some(team),
            });
        }
    };
    view! {
        <form class="remark" on:submit=note>
            <label class="field">
                <span>{text::REMARK}</span>
                <input type="text" maxlength="300" node_ref=field />
            </label>
            <button type="submit" class="button">
                {text::NOTE_IT}
            </button>
        </form>
    }
}
