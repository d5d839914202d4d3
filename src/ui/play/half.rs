//! One half of the court: the team, its score, who serves, the players at their places; and the
//! net. A tap on a half gives that side the point and the next service.

use leptos::html;
use leptos::prelude::*;

use super::court::{use_court, Court};
use super::movement::{rolls, turns, Movement, Moves};
use super::pad::Pad;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::widgets::deferred::defer_render;
use crate::widgets::icon::{icon_as, Icon};
use crate::widgets::team_mark::TeamMark;
use game::{speaker, Kind, Phase, Speaker, State};
use rules::{Shirt, Team};

/// What a half shows.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Picture {
    team: Team,
    name: String,
    score: u16,
    sets: u8,
    /// Whether this side serves next, and with whom.
    serves: Option<Option<Shirt>>,
    /// Place 1 to place 6; empty where line-ups are not kept.
    places: Vec<Standing>,
    /// Who speaks for the team.
    speaker: Option<Speaker>,
}

/// Who stands at a place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Standing {
    shirt: Shirt,
    libero: bool,
    speaks: bool,
}

impl Picture {
    fn of(state: &State, team: Team) -> Picture {
        let speaker = speaker(state, team);
        let on_floor = state.play().or_else(|| state.ready());
        let places = on_floor.map_or_else(Vec::new, |play| {
            play.sides[team]
                .slots
                .iter()
                .map(|slot| Standing {
                    shirt: slot.on_court(),
                    libero: slot.libero.is_some(),
                    speaks: speaker.is_some_and(|s| s.number() == slot.on_court()),
                })
                .collect()
        });
        let serving = state
            .serving()
            .or_else(|| state.opener_to_come().map(|t| (t, None)));
        Picture {
            team,
            name: text::team_name(state, team),
            score: state.play().map_or(0, |play| play.score[team]),
            sets: state.sets_won()[team],
            serves: serving.filter(|(t, _)| *t == team).map(|(_, s)| s),
            places,
            speaker,
        }
    }
}

/// Where the places stand in a half, row by row from the far side to the near one. In the left half
/// the net is on the right: 4, 3, 2 stand there from top to bottom, 5, 6, 1 behind them. The right
/// half is the same half turned round.
const LEFT_ROWS: [[usize; 2]; 3] = [[5, 4], [6, 3], [1, 2]];
const RIGHT_ROWS: [[usize; 2]; 3] = [[2, 1], [3, 6], [4, 5]];

/// One half of the court.
#[component]
pub fn Half(
    /// Which one, on the screen.
    left: bool,
    /// The button, for the arrow keys.
    node: NodeRef<html::Button>,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let picture = Memo::new(move |_| Picture::of(&session.state(), court.team_at(left)));
    let team = Memo::new(move |_| picture.read().team);
    let label = Memo::new(move |_| text::point_pad(&session.state(), team.get(), left));
    let serves = Memo::new(move |_| picture.read().serves);
    let score = Memo::new(move |_| picture.read().score);
    let long = Memo::new(move |_| score.get() >= 100);
    let places = Memo::new(move |_| picture.read().places.clone());
    let bare = Memo::new(move |_| places.read().is_empty());
    let (rolling, before) = rolls(move || (team.get(), score.get()));
    let turning = turns(move || {
        let shirts = places.with(|places| places.iter().map(|standing| standing.shirt).collect());
        (team.get(), shirts)
    });

    let (id, said) = if left {
        ("half-left", "half-left-said")
    } else {
        ("half-right", "half-right-said")
    };
    let pad = Pad::default();
    // While a question waits for a player the half takes the finger, and gives no point.
    let shut = Memo::new(move |_| court.is_shut() && !court.asks_for(team.get()));
    let tap = move |number: u32, at: f64| {
        let team = team.get_untracked();
        if !court.answers(team) {
            point(session, court, number, team, at);
        }
    };

    view! {
        <button
            type="button"
            class="half"
            id=id
            class:left=left
            class:right=!left
            class:team-a=move || team.get() == Team::A
            class:team-b=move || team.get() == Team::B
            class:serving=move || serves.get().is_some()
            class:asking=move || court.asks_for(team.get())
            class:bare=move || bare.get()
            aria-label=move || label.get()
            aria-describedby=said
            aria-disabled=move || shut.get().then_some("true")
            node_ref=node
            on:pointerdown=move |event| pad.down(&event, session.next_now())
            on:pointerup=move |event| {
                if let Some(number) = pad.up(&event) {
                    tap(number, event.time_stamp());
                }
            }
            on:pointercancel=move |_| pad.cancel()
            // The finger makes its entry as it lifts: the click that a browser would add lands on
            // whatever stands there by then. Said at the start, because a half that gives way to the
            // next screen hears no more of its touch.
            on:touchstart=move |event| event.prevent_default()
            on:keydown=move |event| pad.key(&event)
            on:click=move |event| {
                if pad.click() {
                    tap(session.next_now(), event.time_stamp());
                }
            }
        >
            <span class="visually-hidden" id=said>
                {move || {
                    let picture = picture.read();
                    text::half_said(picture.score, picture.sets, picture.serves, picture.speaker)
                }}
            </span>
            <span class="half-team">
                {move || view! { <TeamMark team=team.get() /> }}
                <span class="half-name">{move || picture.read().name.clone()}</span>
                <span class="half-sets tabular" aria-hidden="true">
                    {move || picture.read().sets}
                </span>
            </span>
            <span
                class="half-score tabular"
                class:three-digits=move || long.get()
                class:rolls-one=move || rolling.is(Moves::One)
                class:rolls-other=move || rolling.is(Moves::Other)
                data-was=move || before.get().to_string()
                on:animationend=move |_| rolling.ended()
            >
                <span class="half-score-now">{move || score.get()}</span>
            </span>
            <span class="half-serves">
                {move || {
                    serves
                        .get()
                        .map(|with| {
                            view! {
                                {icon_as("icon ball", Icon::Ball)}
                                <span>
                                    {with.map(|number| view! {
                                        <b class="tabular">{number.to_string()}</b>
                                        " "
                                    })}
                                    {text::serves()}
                                </span>
                            }
                        })
                }}
            </span>
            {defer_render(move || {
                view! {
                    <Show when=move || !bare.get()>
                        <Places places left turning serves=Signal::derive(move || serves.get().is_some()) />
                    </Show>
                }
                    .into_any()
            })}
        </button>
    }
}

/// The players at their places, the front row at the net.
#[component]
fn Places(
    places: Memo<Vec<Standing>>,
    left: bool,
    turning: Movement,
    serves: Signal<bool>,
) -> impl IntoView {
    let court = use_court();
    let rows = if left { LEFT_ROWS } else { RIGHT_ROWS };
    view! {
        <span
            class="places"
            class:turns-one=move || turning.is(Moves::One)
            class:turns-other=move || turning.is(Moves::Other)
            on:animationend=move |_| turning.ended()
        >
            {rows
                .into_iter()
                .flatten()
                .map(|place| {
                    let standing = Memo::new(move |_| places.read().get(place - 1).copied());
                    let press = move |_| court.press(standing.get_untracked().map(|s| s.shirt));
                    view! {
                        <span
                            class=format!("spot at-{place} tabular")
                            class:front=(2..=4).contains(&place)
                            class:server=move || place == 1 && serves.get()
                            class:libero=move || standing.get().is_some_and(|s| s.libero)
                            class:speaks=move || standing.get().is_some_and(|s| s.speaks)
                            class:answer=move || {
                                court.is_asking() && standing.get().is_some_and(|s| {
                                    court.is_answer(court.team_at(left), s.shirt)
                                })
                            }
                            on:pointerdown=press
                        >
                            <span class="spot-shirt">
                                {move || standing.get().map(|s| s.shirt.to_string())}
                            </span>
                        </span>
                    }
                })
                .collect_view()}
        </span>
    }
}

/// The net with its antennas.
#[component]
pub fn Net() -> impl IntoView {
    view! {
        <span class="net" aria-hidden="true">
            <span class="antenna"></span>
            <span class="cord"></span>
            <span class="antenna"></span>
        </span>
    }
}

/// A rally ends: the point and the next service. A tally's first point also begins its first set.
fn point(session: Session, court: Court, number: u32, won_by: Team, at: f64) {
    let rally = Kind::Rally {
        won_by,
        cause: None,
        by: None,
    };
    let entered = if session.state_now().phase() == Phase::Preparation {
        session.submit_at(number, Kind::BeginSet) && court.point(number + 1, rally, at)
    } else {
        court.point(number, rally, at)
    };
    if entered {
        device::vibrate(&[18]);
    }
}
