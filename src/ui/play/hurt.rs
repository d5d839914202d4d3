//! Somebody is hurt: the careful steps first, then what the rules offer for the player, in their order:
//! a change, three minutes, a team that cannot go on (Official Volleyball Rules 2025-2028, 15.7, 17.1).

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::game::entry::{By, Forced, ReplayWhy};
use crate::game::{legal_for, Kind, State};
use crate::rules::{Shirt, Team};
use crate::ui::session::use_session;
use crate::ui::text;

/// Who can be hurt in a team: those on court first, then the bench.
fn players(state: &State, team: Team) -> Vec<Shirt> {
    let mut all: Vec<Shirt> = state
        .on_floor()
        .map(|play| play.sides[team].on_court().collect())
        .unwrap_or_default();
    let on_list = state.team(team).list.iter();
    let mut bench: Vec<Shirt> = on_list
        .flat_map(|l| l.players.iter().map(|p| p.number))
        .filter(|n| !all.contains(n))
        .collect();
    bench.sort_unstable();
    all.extend(bench);
    all
}

/// What comes before anything that is recorded.
#[component]
fn CareSteps(steps: &'static [&'static str]) -> impl IntoView {
    view! {
        <ul class="care" id="care-steps">
            {steps.iter().map(|step| view! { <li>{*step}</li> }).collect_view()}
        </ul>
    }
}

/// The panel: whose player, and which one.
#[component]
pub fn Hurt(
    /// A rally was stopped for it and is still to be entered.
    rally: bool,
    /// Whose player, where that is known.
    team: Option<Team>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let team = RwSignal::new(team);
    let go_on = move |by: Option<By>| {
        let replay = Kind::Replay {
            why: ReplayWhy::Injury,
            hurt: by,
        };
        if rally && !court.tell_as(session.next_now(), replay) {
            return;
        }
        court.panel.set(match by {
            Some(by) => Panel::Care(by.team, by.number),
            None => Panel::Rally,
        });
    };
    view! {
        <Frame title=text::HURT.to_owned()>
            <CareSteps steps=&text::CARE_FIRST />
            <fieldset class="asked">
                <legend>{text::HURT_TEAM}</legend>
                <div class="row">
                    {Team::BOTH
                        .into_iter()
                        .map(|of| {
                            view! {
                                <button
                                    type="button"
                                    class="button"
                                    aria-pressed=move || (team.get() == Some(of)).to_string()
                                    on:click=move |_| team.set(Some(of))
                                >
                                    {move || text::team_name(&session.state(), of)}
                                </button>
                            }
                        })
                        .collect_view()}
                    {rally
                        .then(|| {
                            view! {
                                <button type="button" class="button" on:click=move |_| go_on(None)>
                                    {text::NOT_A_PLAYER}
                                </button>
                            }
                        })}
                </div>
            </fieldset>
            {move || {
                let team = team.get()?;
                let number = move |number| go_on(Some(By { team, number }));
                Some(
                    view! {
                        <fieldset class="asked">
                            <legend>{text::HURT_WHO}</legend>
                            <div class="numbers">
                                {players(&session.state_now(), team)
                                    .into_iter()
                                    .map(|shirt| {
                                        view! {
                                            <button
                                                type="button"
                                                class="button number tabular"
                                                aria-label=text::number(shirt)
                                                on:click=move |_| number(Some(shirt))
                                            >
                                                {shirt.to_string()}
                                            </button>
                                        }
                                    })
                                    .collect_view()}
                            </div>
                            <button
                                type="button"
                                class="button after"
                                on:click=move |_| number(None)
                            >
                                {text::NUMBER_LATER}
                            </button>
                        </fieldset>
                    },
                )
            }}
        </Frame>
    }
}

/// What the core allows for a player who is hurt.
fn ways_on(state: &State, team: Team, number: Shirt) -> Vec<Kind> {
    legal_for(state, team, number)
        .into_iter()
        .filter(|kind| match kind {
            Kind::Substitution { reason, .. } => *reason == Some(Forced::Injury),
            Kind::LiberoReplacement { .. } | Kind::Recovery { .. } => true,
            _ => false,
        })
        .collect()
}

/// The panel: what becomes of the player.
#[component]
pub fn Care(
    /// Whose.
    team: Team,
    /// Which one, as far as said.
    number: Option<Shirt>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let title = text::care_title(&text::team_name(&session.state_now(), team), number);
    let ways = Memo::new(move |_| number.map(|number| ways_on(&session.state(), team, number)));
    let on_floor = Memo::new(move |_| {
        let state = session.state();
        let play = state.on_floor()?;
        let here = play.sides[team].on_court().any(|s| Some(s) == number);
        Some(here)
    });
    let places = Memo::new(move |_| session.state().rules().line_ups);
    view! {
        <Frame title>
            <CareSteps steps=&text::CARE_RETURN />
            <fieldset class="asked">
                <legend>{text::CARE_THEN}</legend>
                <div class="causes">
                    {move || {
                        ways.get()
                            .unwrap_or_default()
                            .into_iter()
                            .map(|kind| {
                                let label = text::way_on(&kind);
                                view! {
                                    <button
                                        type="button"
                                        class="button cause"
                                        on:click=move |_| {
                                            court.tell_as(session.next_now(), kind.clone());
                                        }
                                    >
                                        {label}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                    <button
                        type="button"
                        class="button cause"
                        on:click=move |_| court.close_panel()
                    >
                        {text::PLAYS_ON}
                    </button>
                    {move || {
                        let none = ways.read().as_ref().is_some_and(Vec::is_empty);
                        (none && on_floor.get() == Some(true) && places.get())
                            .then(|| {
                                view! {
                                    <button
                                        type="button"
                                        class="button cause"
                                        id="cannot-go-on"
                                        on:click=move |_| court.panel.set(Panel::Short(team))
                                    >
                                        {text::CANNOT_GO_ON}
                                    </button>
                                }
                            })
                    }}
                </div>
                {move || {
                    let none = ways.read().as_ref().is_some_and(Vec::is_empty);
                    if number.is_none() && places.get() {
                        Some(text::CARE_NO_NUMBER)
                    } else if none && on_floor.get() == Some(true) && places.get() {
                        Some(text::NOBODY_CAN_COME)
                    } else {
                        None
                    }
                        .map(|words| view! { <p class="muted">{words}</p> })
                }}
            </fieldset>
        </Frame>
    }
}
