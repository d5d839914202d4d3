//! Misconduct: first the person, then the level, with what the team and the person have had.

use leptos::prelude::*;

use super::court::use_court;
use super::panel::Frame;
use crate::game::entry::{Level, Who};
use crate::game::{Kind, State};
use crate::rules::{Shirt, Team};
use crate::ui::session::use_session;
use crate::ui::text;

/// Everybody of a team who can be sanctioned: those of the list, and a coach in any case.
fn people(state: &State, team: Team) -> Vec<Who> {
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
    people
}

/// The panel.
#[component]
pub fn Conduct(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let state = session.state_now();
    let title = text::panel_title(text::CONDUCT, &text::team_name(&state, team));
    let chosen = RwSignal::new(None::<Who>);
    let buttons = people(&state, team)
        .into_iter()
        .map(|who| {
            let label = text::who(&who);
            let this = who.clone();
            let name = text::person(&who);
            view! {
                <button
                    type="button"
                    class="button number tabular"
                    class:word=matches!(who, Who::Staff(_))
                    aria-label=name
                    aria-pressed=move || (chosen.read().as_ref() == Some(&this)).to_string()
                    on:click=move |_| chosen.set(Some(who.clone()))
                >
                    {label}
                </button>
            }
        })
        .collect_view();
    view! {
        <Frame title>
            <Ladder team />
            <fieldset class="asked">
                <legend>{text::CONDUCT_WHO}</legend>
                <div class="numbers">{buttons}</div>
            </fieldset>
            {move || chosen.get().map(|who| view! { <Levels team who /> })}
        </Frame>
    }
}

/// What the team has had.
#[component]
fn Ladder(team: Team) -> impl IntoView {
    let session = use_session();
    let had = Memo::new(move |_| text::ladder(&session.state(), team));
    view! {
        {move || {
            let had = had.get();
            if had.is_empty() {
                view! { <p class="muted">{text::LADDER_CLEAR}</p> }.into_any()
            } else {
                view! {
                    <ul class="ladder">
                        {had.into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
                    </ul>
                }
                    .into_any()
            }
        }}
    }
}

/// The levels for one person. The lightest that is open is marked, and no more than that.
#[component]
fn Levels(team: Team, who: Who) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let had = text::had(session.state_now().team(team).heaviest(&who));
    let legend = text::level_for(&who);
    let kind = move |sanction: Level, who: Who| Kind::Misconduct {
        team,
        who,
        sanction,
    };
    let asked = who.clone();
    let open = Memo::new(move |_| {
        Level::ALL.map(|level| session.may(&kind(level, asked.clone())).is_ok())
    });
    let next = Memo::new(move |_| open.get().iter().position(|open| *open));
    view! {
        <fieldset class="asked">
            <legend>{legend}</legend>
            <p class="muted">{had} " " {text::FIRST_REFEREE_DECIDES}</p>
            <div class="causes levels">
                {Level::ALL
                    .into_iter()
                    .enumerate()
                    .map(|(i, level)| {
                        let who = who.clone();
                        let label = text::record_sanction(level, &who);
                        view! {
                            <button
                                type="button"
                                class="button cause level"
                                class:suggested=move || next.get() == Some(i)
                                aria-label=label
                                aria-disabled=move || (!open.get()[i]).to_string()
                                on:click=move |_| {
                                    court.tell_as(session.next_now(), kind(level, who.clone()));
                                }
                            >
                                {text::level(level)}
                                <Show when=move || next.get() == Some(i)>
                                    <span class="level-next">{text::NEXT_STEP}</span>
                                </Show>
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
}
