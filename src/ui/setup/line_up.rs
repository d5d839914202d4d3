//! The line-ups (7.3): numbers tapped into a drawn court.

use leptos::prelude::*;

use super::team_tabs::{OtherTeam, TeamTabs};
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::widgets::line_up_court::LineUpCourt;
use crate::widgets::team_mark::TeamMark;
use app::drafts::Draft;
use game::{may_start, Kind, Refusal};
use rules::{Shirt, Team};
use text::setup as words;
use text::team_name;

/// No shirt has this number; in a draft it stands for a place without one.
const NOBODY: Shirt = Shirt(0);

/// The entry that handed in the line-up for the set to come.
fn handed_in(session: Session, team: Team) -> Option<u32> {
    session.with_timeline(|timeline| {
        timeline
            .outcomes()
            .filter(|(entry, outcome)| {
                outcome.counts()
                    && matches!(&entry.kind, Kind::LineUp { team: t, .. } if *t == team)
            })
            .last()
            .map(|(entry, _)| entry.n)
    })
}

/// The line-ups of both teams, one at a time.
#[component]
pub(super) fn LineUpsCard() -> impl IntoView {
    let session = use_session();
    let is_in = move |team: Team| session.state().line_up_given(team).is_some();
    let missing = |team: &Team| session.state_now().line_up_given(*team).is_none();
    let team = RwSignal::new(Team::BOTH.into_iter().find(missing).unwrap_or(Team::A));
    view! {
        <div class="stack">
            <TeamTabs team done=Callback::new(is_in) label=words::whose_line_up() />
            {move || view! { <OneLineUp team=team.get() /> }}
            <OtherTeam team done=Callback::new(is_in) />
        </div>
    }
}

#[component]
fn OneLineUp(team: Team) -> impl IntoView {
    let session = use_session();
    let given = Memo::new(move |_| session.state().line_up_given(team).map(<[Shirt]>::to_vec));
    let has_list = Memo::new(move |_| session.state().team(team).list.is_some());
    move || match given.get() {
        Some(positions) => view! { <Given team positions /> }.into_any(),
        None if has_list.get() => view! { <Editor team /> }.into_any(),
        None => view! { <p class="sentence warn">{words::list_first()}</p> }.into_any(),
    }
}

/// A line-up that is in: covered, until somebody wants to see it.
#[component]
fn Given(team: Team, positions: Vec<Shirt>) -> impl IntoView {
    let session = use_session();
    let covered = RwSignal::new(true);
    let places = Signal::stored(positions.into_iter().map(Some).collect::<Vec<_>>());
    let take_back = move |expected: u32| {
        if let Some(entry) = handed_in(session, team) {
            session.submit_at(expected, Kind::Strike { entry, why: None });
        }
    };
    view! {
        <div class="stack">
            <p class="mark-ok">{words::line_up_is_in()}</p>
            <LineUpCourt team places covered />
            <div class="row">
                <CoverButton covered />
                {move || {
                    let expected = session.next();
                    view! {
                        <button
                            type="button"
                            class="button"
                            on:click=move |_| take_back(expected)
                        >
                            {words::undo_line_up()}
                        </button>
                    }
                }}
            </div>
        </div>
    }
}

#[component]
fn CoverButton(covered: RwSignal<bool>) -> impl IntoView {
    view! {
        <button
            type="button"
            class="button"
            on:click=move |_| covered.update(|c| *c = !*c)
        >
            {move || if covered.get() { words::show_line_up() } else { words::hide_line_up() }}
        </button>
    }
}

#[component]
fn Editor(team: Team) -> impl IntoView {
    let session = use_session();
    let id = StoredValue::new(untrack(|| session.id()).unwrap_or_default());
    let needed = usize::from(session.state_now().rules().players_on_court);
    let kept = id.with_value(|id| device::settings().drafts(id).entry(Draft::LineUp(team)));
    let places = RwSignal::new(match kept {
        Some(Kind::LineUp { positions, .. }) if positions.len() == needed => positions
            .into_iter()
            .map(|shirt| (shirt != NOBODY).then_some(shirt))
            .collect(),
        _ => vec![None; needed],
    });
    let first_free = move || places.with_untracked(|p| p.iter().position(Option::is_none));
    let chosen = RwSignal::new(first_free().unwrap_or(0));
    let covered = RwSignal::new(false);
    let refused = RwSignal::new(None::<Refusal>);

    let keep = move || {
        let positions = places.with_untracked(|p| p.iter().map(|s| s.unwrap_or(NOBODY)).collect());
        id.with_value(|id| {
            device::settings()
                .drafts(id)
                .keep_entry(Draft::LineUp(team), Kind::LineUp { team, positions });
        });
    };
    let put = move |shirt: Shirt| {
        if let Err(why) = may_start(&session.state_now(), team, shirt) {
            refused.set(Some(why));
            return;
        }
        refused.set(None);
        let place = chosen.get_untracked();
        places.update(|places| {
            // Tapped again: the player changes place.
            for held in places.iter_mut() {
                if *held == Some(shirt) {
                    *held = None;
                }
            }
            places[place] = Some(shirt);
        });
        // On to the next empty place, round from the one just filled.
        let next = places.with_untracked(|p| {
            (1..=p.len())
                .map(|step| (place + step) % p.len())
                .find(|&i| p[i].is_none())
        });
        chosen.set(next.unwrap_or(place));
        keep();
    };
    let fill = move |line_up: Vec<Shirt>| {
        // Whoever may not start any more leaves his or her place empty, and the reason is said.
        let state = session.state_now();
        let barred = line_up
            .iter()
            .find_map(|&s| may_start(&state, team, s).err());
        let line_up: Vec<_> = line_up
            .into_iter()
            .map(|shirt| may_start(&state, team, shirt).is_ok().then_some(shirt))
            .collect();
        chosen.set(line_up.iter().position(Option::is_none).unwrap_or(0));
        places.set(line_up);
        refused.set(barred);
        keep();
    };
    let empty_place = move |_| {
        let place = chosen.get_untracked();
        places.update(|p| p[place] = None);
        keep();
    };
    let hand_in = move |expected: u32| {
        let positions = places.with_untracked(|p| p.iter().copied().flatten().collect());
        if session.submit_at(expected, Kind::LineUp { team, positions }) {
            id.with_value(|id| device::settings().drafts(id).forget(Draft::LineUp(team)));
        }
    };

    let bench = move || {
        let state = session.state();
        let players = state.team(team).list.as_ref().map(|l| l.players.clone());
        players
            .unwrap_or_default()
            .into_iter()
            .map(|player| {
                let number = player.number;
                let barred = may_start(&state, team, number).is_err();
                let placed = move || places.with(|p| p.contains(&Some(number)));
                view! {
                    <li>
                        <button
                            type="button"
                            class="chip tabular"
                            class:placed=placed
                            class:barred=barred
                            aria-label=move || words::put_in(&player, placed(), barred)
                            on:click=move |_| put(number)
                        >
                            {number.to_string()}
                        </button>
                    </li>
                }
            })
            .collect_view()
    };
    let complete = Memo::new(move |_| places.with(|p| p.iter().all(Option::is_some)));
    let last = session.state_now().last_line_up(team);
    view! {
        <div class="stack line-up-editor">
            <LineUpCourt team places covered chosen />
            <div class="stack">
            <p class="muted">
                {move || words::number_for_place(chosen.get() + 1)}
            </p>
            {move || refused.get().map(|why| view! {
                <p class="sentence bad" role="alert">
                    {words::refusal(&text::refusal(&why, (&*session.state()).into()), why.rule())}
                </p>
            })}
            {move || {
                let state = session.state();
                let hurt = &state.team(team).hurt;
                let back: Vec<Shirt> = places.read().iter().flatten().copied().collect();
                let back = back.into_iter().filter(|shirt| hurt.contains(shirt));
                back.map(|shirt| view! { <p class="sentence warn">{text::was_hurt(shirt)}</p> }).collect_view()
            }}
            <ul class="chips large" aria-label=words::players_on_the_list()>{bench}</ul>
            <div class="row">
                {last.map(|line_up| view! {
                    <button
                        type="button"
                        class="button"
                        on:click=move |_| fill(line_up.clone())
                    >
                        {words::same_as_last_set()}
                    </button>
                })}
                <button type="button" class="button" on:click=empty_place>
                    {words::empty_place()}
                </button>
                <CoverButton covered />
            </div>
            {move || {
                let open = !complete.get();
                open.then(|| view! { <p class="why-not">{words::fill_every_place()}</p> })
            }}
            {move || {
                let expected = session.next();
                view! {
                    <button
                        id=format!("hand-in-line-up-{team}")
                        type="button"
                        class="button primary"
                        disabled=move || !complete.get()
                        on:click=move |_| hand_in(expected)
                    >
                        {words::confirm_line_up()}
                    </button>
                }
            }}
            </div>
        </div>
    }
}

/// Both line-ups side by side, for the last check; in the order of the court.
#[component]
pub(super) fn BothLineUps(left: Team) -> impl IntoView {
    let session = use_session();
    let covered = RwSignal::new(false);
    let one = move |team: Team| {
        let places = Signal::derive(move || {
            let state = session.state();
            let given = state.line_up_given(team).unwrap_or_default();
            given.iter().copied().map(Some).collect::<Vec<_>>()
        });
        view! {
            <div class="stack">
                <h4>
                    <TeamMark team />
                    <span>{move || team_name(&session.state(), team)}</span>
                </h4>
                <LineUpCourt team places covered />
            </div>
        }
    };
    view! {
        <div class="stack">
            <div class="pair both-line-ups">{one(left)}{one(left.other())}</div>
            <CoverButton covered />
        </div>
    }
}
