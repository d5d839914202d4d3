//! A fault found late: what was wrong, since which score, when it was found, and the right places. What
//! the core makes of it is shown before it is recorded.

use leptos::prelude::*;

use super::consequence::Consequence;
use super::panel::Frame;
use crate::game::entry::{Fault, Found, LateFault, Since};
use crate::game::{Kind, SetPlay, State};
use crate::rules::{Score, Shirt, Team};
use crate::ui::session::{use_session, Session};
use crate::ui::text;

const FAULTS: [Fault; 5] = [
    Fault::Rotation,
    Fault::WrongLineUp,
    Fault::IllegalSubstitution,
    Fault::IllegalLibero,
    Fault::UnregisteredPlayer,
];

/// What has been said so far. Copies are the same.
#[derive(Clone, Copy)]
struct Told {
    session: Session,
    team: Team,
    fault: RwSignal<Option<Fault>>,
    /// None: not asked yet; none within: nobody knows.
    since: RwSignal<Option<Option<Score>>>,
    /// An earlier set, for a player who was never on the list.
    set: RwSignal<Option<u8>>,
    during: RwSignal<Found>,
    /// The right places, once somebody has opened them.
    places: RwSignal<Option<Vec<Shirt>>>,
}

impl Told {
    /// The entry, once the least is known.
    fn kind(self) -> Option<Kind> {
        let since = self.since.get()?;
        Some(Kind::LateFault(LateFault {
            team: self.team,
            fault: self.fault.get()?,
            since: since.map(|score| Since {
                score,
                set: self.set.get(),
            }),
            during: self.during.get(),
            positions: self.places.get(),
        }))
    }

    fn choose(self, fault: Fault) {
        self.fault.set(Some(fault));
        if fault != Fault::UnregisteredPlayer {
            self.in_set(None);
        }
    }

    fn in_set(self, set: Option<u8>) {
        if self.set.get_untracked() != set {
            self.set.set(set);
            self.since.set(None);
        }
    }
}

/// The set that can be put right: the one played, or the last one.
fn at_hand(state: &State) -> Option<&SetPlay> {
    state.play().or_else(|| state.sets().last()?.play.as_ref())
}

/// A set that is over, or the one at hand.
fn set_of(state: &State, set: Option<u8>) -> Option<&SetPlay> {
    match set {
        None => at_hand(state),
        Some(number) => state.sets().find(|s| s.number == number)?.play.as_ref(),
    }
}

/// Every score that stood, the latest first, each once.
fn scores(state: &State, set: Option<u8>) -> Vec<Score> {
    let mut scores: Vec<Score> = Vec::new();
    for score in set_of(state, set).iter().flat_map(|play| play.scores()) {
        scores.retain(|s| *s != score);
        scores.push(score);
    }
    scores.reverse();
    scores
}

/// The panel below the court.
#[component]
pub fn Late(
    /// Whose fault.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let title = text::panel_title(text::LATE, &text::team_name(&session.state_now(), team));
    view! {
        <Frame title>
            <OfTeam team />
        </Frame>
    }
}

/// The same where no set is on court: between the sets, and once the match is over.
#[component]
pub fn LateAfterwards(
    /// Closed once the fault is recorded.
    open: RwSignal<bool>,
) -> impl IntoView {
    let session = use_session();
    let team = RwSignal::new(None::<Team>);
    let done = Callback::new(move |()| open.set(false));
    view! {
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
        </div>
        {move || team.get().map(|team| view! { <OfTeam team done /> })}
    }
}

#[component]
fn OfTeam(team: Team, #[prop(optional)] done: Option<Callback<()>>) -> impl IntoView {
    let session = use_session();
    let told = Told {
        session,
        team,
        fault: RwSignal::new(None),
        since: RwSignal::new(None),
        set: RwSignal::new(None),
        during: RwSignal::new(Found::AfterRally),
        places: RwSignal::new(None),
    };
    let kind = Signal::derive(move || told.kind());
    let yes = Signal::stored(text::LATE_RECORD.to_owned());
    let possible = Memo::new(move |_| at_hand(&session.state()).is_some());
    let done = done.unwrap_or_else(|| Callback::new(|()| {}));
    view! {
        <Show
            when=move || possible.get()
            fallback=|| view! { <p class="muted">{text::LATE_NOTHING}</p> }
        >
            <What told />
            <FoundWhen told />
            <SinceWhen told />
            <Places told />
            <Consequence kind yes done />
        </Show>
    }
}

#[component]
fn What(told: Told) -> impl IntoView {
    view! {
        <fieldset class="asked">
            <legend>{text::LATE_WHAT}</legend>
            <div class="causes">
                {FAULTS
                    .into_iter()
                    .map(|fault| {
                        view! {
                            <button
                                type="button"
                                class="button cause"
                                aria-pressed=move || (told.fault.get() == Some(fault)).to_string()
                                on:click=move |_| told.choose(fault)
                            >
                                {text::fault(fault)}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
}

#[component]
fn FoundWhen(told: Told) -> impl IntoView {
    view! {
        <fieldset class="asked">
            <legend>{text::LATE_FOUND}</legend>
            <div class="row">
                {[(Found::AfterRally, text::FOUND_AFTER), (Found::Rally, text::FOUND_RALLY)]
                    .into_iter()
                    .map(|(found, words)| {
                        view! {
                            <button
                                type="button"
                                class="button"
                                aria-pressed=move || (told.during.get() == found).to_string()
                                on:click=move |_| told.during.set(found)
                            >
                                {words}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </fieldset>
    }
}

/// The moment, on the running score.
#[component]
fn SinceWhen(told: Told) -> impl IntoView {
    let session = told.session;
    let list = Memo::new(move |_| scores(&session.state(), told.set.get()));
    // A player who is on no list may have come in earlier.
    let sets = Memo::new(move |_| {
        if told.fault.get() != Some(Fault::UnregisteredPlayer) {
            return Vec::new();
        }
        let state = session.state();
        let now = at_hand(&state).map_or(0, |play| play.number);
        let earlier = state.sets().filter(|s| s.number < now && s.play.is_some());
        earlier.map(|s| s.number).collect::<Vec<_>>()
    });
    view! {
        <Show when=move || !sets.read().is_empty()>
            <fieldset class="asked">
                <legend>{text::LATE_SET}</legend>
                <div class="row">
                    {move || {
                        sets.get()
                            .into_iter()
                            .map(Some)
                            .chain([None])
                            .map(|set| {
                                let number = set
                                    .or_else(|| at_hand(&session.state_now()).map(|p| p.number));
                                view! {
                                    <button
                                        type="button"
                                        class="button"
                                        aria-pressed=move || (told.set.get() == set).to_string()
                                        on:click=move |_| told.in_set(set)
                                    >
                                        {text::set_number(number.unwrap_or_default())}
                                    </button>
                                }
                            })
                            .collect_view()
                    }}
                </div>
            </fieldset>
        </Show>
        <fieldset class="asked">
            <legend>{text::LATE_SINCE}</legend>
            <button
                type="button"
                class="button"
                aria-pressed=move || (told.since.get() == Some(None)).to_string()
                on:click=move |_| told.since.set(Some(None))
            >
                {text::LATE_UNKNOWN}
            </button>
            <div class="numbers moments" id="moments">
                {move || {
                    list.get()
                        .into_iter()
                        .map(|score| {
                            view! {
                                <button
                                    type="button"
                                    class="button number tabular"
                                    aria-label=text::since_score(score)
                                    aria-pressed=move || {
                                        (told.since.get() == Some(Some(score))).to_string()
                                    }
                                    on:click=move |_| told.since.set(Some(Some(score)))
                                >
                                    {text::score(score)}
                                </button>
                            }
                        })
                        .collect_view()
                }}
            </div>
        </fieldset>
    }
}

/// The right places, from those the core has now. A place is tapped, then what belongs there: another
/// place, or a number of the bench.
#[component]
fn Places(told: Told) -> impl IntoView {
    let session = told.session;
    let team = told.team;
    let now = Memo::new(move |_| {
        let state = session.state();
        at_hand(&state)
            .map(|play| play.sides[team].on_court().collect::<Vec<Shirt>>())
            .unwrap_or_default()
    });
    let picked = RwSignal::new(None::<usize>);
    let tap = move |place: usize| match picked.get_untracked() {
        None => picked.set(Some(place)),
        Some(other) => {
            told.places.update(|places| {
                if let Some(places) = places {
                    places.swap(other, place);
                }
            });
            picked.set(None);
        }
    };
    let bench = Memo::new(move |_| {
        let on_court = told.places.get().unwrap_or_default();
        let state = session.state();
        let list = state.team(team).list.clone();
        let mut numbers: Vec<Shirt> = list
            .iter()
            .flat_map(|l| l.players.iter().map(|p| p.number))
            .filter(|n| !on_court.contains(n))
            .collect();
        numbers.sort_unstable();
        numbers
    });
    let put = move |number: Shirt| {
        let place = picked.get_untracked();
        told.places.update(|places| {
            if let (Some(places), Some(place)) = (places, place) {
                places[place] = number;
            }
        });
        picked.set(None);
    };
    view! {
        <Show when=move || !now.read().is_empty()>
            <fieldset class="asked">
                <Show
                    when=move || told.places.read().is_some()
                    fallback=move || {
                        view! {
                            <button
                                type="button"
                                class="button"
                                on:click=move |_| told.places.set(Some(now.get_untracked()))
                            >
                                {text::SET_PLACES}
                            </button>
                        }
                    }
                >
                    <p class="muted">{text::LATE_PLACES}</p>
                    <div class="numbers order" id="right-places">
                        {move || {
                            told.places
                                .get()
                                .unwrap_or_default()
                                .into_iter()
                                .enumerate()
                                .map(|(place, shirt)| {
                                    view! {
                                        <button
                                            type="button"
                                            class="button number tabular"
                                            aria-label=text::place_label(place + 1, shirt)
                                            aria-pressed=move || {
                                                (picked.get() == Some(place)).to_string()
                                            }
                                            on:click=move |_| tap(place)
                                        >
                                            <span class="order-place" aria-hidden="true">
                                                {place + 1}
                                            </span>
                                            {shirt.to_string()}
                                        </button>
                                    }
                                })
                                .collect_view()
                        }}
                    </div>
                    <Show when=move || picked.get().is_some()>
                        <div class="numbers" id="bench">
                            {move || {
                                bench
                                    .get()
                                    .into_iter()
                                    .map(|number| {
                                        view! {
                                            <button
                                                type="button"
                                                class="button number tabular"
                                                aria-label=text::comes_in(number)
                                                on:click=move |_| put(number)
                                            >
                                                {number.to_string()}
                                            </button>
                                        }
                                    })
                                    .collect_view()
                            }}
                        </div>
                    </Show>
                    <button
                        type="button"
                        class="button after"
                        on:click=move |_| {
                            picked.set(None);
                            told.places.set(None);
                        }
                    >
                        {text::KEEP_PLACES}
                    </button>
                </Show>
            </fieldset>
        </Show>
    }
}
