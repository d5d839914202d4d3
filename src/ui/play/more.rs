//! Everything else that can happen to a team.

use leptos::html;
use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::game::entry::Change;
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
            <Happened team enter />
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

/// What can happen to a team besides. Each is recorded at once or opens its own panel.
#[component]
fn Happened(team: Team, enter: Callback<Kind>) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let liberos = Memo::new(move |_| !session.state().team(team).liberos.is_empty());
    let open = move |words: &'static str, panel: Panel| {
        view! {
            <button type="button" class="button cause" on:click=move |_| court.panel.set(panel)>
                {words}
            </button>
        }
    };
    let record = move |words: &'static str, kind: Kind| {
        view! {
            <button
                type="button"
                class="button cause"
                on:click=move |_| enter.run(kind.clone())
            >
                {words}
            </button>
        }
    };
    let hurt = Panel::Hurt {
        rally: false,
        team: Some(team),
    };
    view! {
        <fieldset class="asked">
            <legend>{text::HAPPENED}</legend>
            <div class="causes">
                {open(text::CONDUCT, Panel::Conduct(team))}
                {open(text::HURT, hurt)}
                {record(text::IMPROPER, Kind::ImproperRequest { team })}
                {record(text::REQUEST_DELAY, Kind::Delay { team, request: true })}
                {record(text::OTHER_DELAY, Kind::Delay { team, request: false })}
                {open(text::LATE, Panel::Late(team))}
                <Show when=move || liberos.get()>
                    {open(text::NEW_LIBERO, Panel::NewLibero(team))}
                </Show>
                {open(text::SHORT, Panel::Short(team))}
            </div>
            <p class="muted">{text::REQUESTS_MORE}</p>
        </fieldset>
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
