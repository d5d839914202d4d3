//! A fault found late: what was wrong, since which score, when it was found, and the right places. What
//! the core makes of it is shown before it is recorded.

use leptos::prelude::*;

use super::consequence::Consequence;
use super::court::use_court;
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::{use_session, Session};
use crate::widgets::deferred::after_the_frame;
use crate::widgets::picker::{asked, buttons, fixed, Choice, Layout};
use game::entry::{Fault, Found, LateFault, Since};
use game::{Kind, SetPlay, State};
use rules::{Score, Shirt, Team};

/// What has been said so far. Copies are the same.
#[derive(Clone, Copy)]
struct LateFaultDraft {
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

impl LateFaultDraft {
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

/// A set that is over, or the one at hand.
fn set_of(state: &State, set: Option<u8>) -> Option<&SetPlay> {
    match set {
        None => state.correctable(),
        Some(number) => state.sets().find(|s| s.number == number)?.play.as_ref(),
    }
}

/// Every score that stood, the latest first, each once.
pub(super) fn scores(state: &State, set: Option<u8>) -> Vec<Score> {
    let mut scores: Vec<Score> = Vec::new();
    for score in set_of(state, set).iter().flat_map(|play| play.scores()) {
        scores.retain(|s| *s != score);
        scores.push(score);
    }
    scores.reverse();
    scores
}

/// The panel.
#[component]
pub fn Late(
    /// Whose fault.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let title = text::panel_title(text::late(), &text::team_name(&session.state_now(), team));
    let told = LateFaultDraft {
        session,
        team,
        fault: RwSignal::new(None),
        since: RwSignal::new(None),
        set: RwSignal::new(None),
        during: RwSignal::new(Found::AfterRally),
        places: RwSignal::new(None),
    };
    let kind = Signal::derive(move || told.kind());
    let yes = Signal::stored(text::late_record().to_owned());
    let asked = if session.state_now().correctable().is_some() {
        view! {
            {what(told)}
            {found_when(told)}
            {in_which_set(told)}
            {since_when(told)}
            <Places told />
            <Consequence kind yes />
        }
        .into_any()
    } else {
        view! { <p class="muted">{text::late_nothing()}</p> }.into_any()
    };
    view! { <Frame title>{asked}</Frame> }
}

fn what(told: LateFaultDraft) -> AnyView {
    let rules = *told.session.state_now().rules();
    let mut faults = Vec::from(Fault::ALL);
    faults.retain(|fault| fault.occurs_under(&rules));
    let words = fixed(faults.iter().map(|fault| text::fault(*fault)));
    let faults = StoredValue::new(faults);
    let at = move |i: usize| faults.with_value(|faults| faults.get(i).copied());
    let is = Callback::new(move |i: usize| told.fault.get().is_some() && told.fault.get() == at(i));
    let choose = Callback::new(move |i: usize| {
        if let Some(fault) = at(i) {
            told.choose(fault);
        }
    });
    asked(
        text::late_what(),
        buttons(Layout::Grid, words, Some(is), choose),
    )
}

const FOUND: [Found; 2] = [Found::AfterRally, Found::Rally];

fn found_when(told: LateFaultDraft) -> AnyView {
    let is = Callback::new(move |i: usize| told.during.get() == FOUND[i]);
    let choose = Callback::new(move |i: usize| told.during.set(FOUND[i]));
    let words = fixed([text::found_after(), text::found_rally()]);
    asked(
        text::late_found(),
        buttons(Layout::Row, words, Some(is), choose),
    )
}

/// A player who is on no list may have come in in an earlier set.
fn in_which_set(told: LateFaultDraft) -> AnyView {
    let asked_for = move || {
        if told.fault.get() != Some(Fault::UnregisteredPlayer) {
            return None;
        }
        let state = told.session.state();
        let now = state.correctable()?.number;
        let earlier = state.sets().filter(|s| s.number < now && s.play.is_some());
        let mut sets: Vec<Option<u8>> = earlier.map(|s| Some(s.number)).collect();
        if sets.is_empty() {
            return None;
        }
        sets.push(None);
        let words = fixed(sets.iter().map(|set| text::set_number(set.unwrap_or(now))));
        let these = sets.clone();
        let is = Callback::new(move |i: usize| told.set.get() == these[i]);
        let choose = Callback::new(move |i: usize| told.in_set(sets[i]));
        Some(asked(
            text::late_set(),
            buttons(Layout::Row, words, Some(is), choose),
        ))
    };
    view! { {asked_for} }.into_any()
}

/// The moment, on the running score.
fn since_when(told: LateFaultDraft) -> AnyView {
    let session = told.session;
    let court = use_court();
    let unknown = move || (told.since.get() == Some(None)).to_string();
    let stood = Signal::derive(move || scores(&session.state(), told.set.get()));
    let chosen = Callback::new(move |score: Score| told.since.get() == Some(Some(score)));
    // What follows stands below the scores, on a small screen out of sight.
    let since = move |moment: Option<Score>| {
        told.since.set(Some(moment));
        after_the_frame(|| device::bring_into_sight("consequence"));
    };
    let choose = Callback::new(move |score: Score| since(Some(score)));
    let order = Signal::derive(move || court.score_order());
    let answers = view! {
        <button
            type="button"
            class="button"
            aria-pressed=unknown
            on:click=move |_| since(None)
        >
            {text::late_unknown()}
        </button>
        {moments(stood, order, text::since_score, chosen, choose)}
    };
    asked(text::late_since(), answers.into_any())
}

/// Scores that stood, each a button that `label` names for those who do not see it.
pub(super) fn moments(
    stood: Signal<Vec<Score>>,
    order: Signal<text::ScoreOrder>,
    label: fn(&str) -> String,
    chosen: Callback<Score, bool>,
    choose: Callback<Score>,
) -> AnyView {
    let choices = Signal::derive(move || {
        let order = order.get();
        let one = |score: &Score| {
            let score = order.write(score);
            Choice {
                label: Some(label(&score)),
                ..Choice::new(score)
            }
        };
        stood.read().iter().map(one).collect()
    });
    let is = Callback::new(move |i: usize| stood.read().get(i).is_some_and(|s| chosen.run(*s)));
    let tap = Callback::new(move |i: usize| {
        if let Some(score) = stood.with_untracked(|all| all.get(i).copied()) {
            choose.run(score);
        }
    });
    view! {
        <div class="moments" id="moments">{buttons(Layout::Numbers, choices, Some(is), tap)}</div>
    }
    .into_any()
}

/// The right places, from those the core has now. A place is tapped, then what belongs there: another
/// place, or a number of the bench.
#[component]
fn Places(told: LateFaultDraft) -> impl IntoView {
    let session = told.session;
    let team = told.team;
    let now = Memo::new(move |_| {
        let state = session.state();
        state
            .correctable()
            .map(|play| play.sides[team].on_court().collect::<Vec<Shirt>>())
            .unwrap_or_default()
    });
    let picked = RwSignal::new(None::<usize>);
    let tap = Callback::new(move |place: usize| match picked.get_untracked() {
        None => picked.set(Some(place)),
        Some(other) => {
            told.places.update(|places| {
                if let Some(places) = places {
                    places.swap(other, place);
                }
            });
            picked.set(None);
        }
    });
    let is_picked = Callback::new(move |place: usize| picked.get() == Some(place));
    let bench = move |state: &State| {
        let on_court = told.places.get().unwrap_or_default();
        let listed = state.team(team).listed();
        let mut numbers: Vec<Shirt> = listed.filter(|n| !on_court.contains(n)).collect();
        numbers.sort_unstable();
        numbers
    };
    let put = Callback::new(move |i: usize| {
        let number = untrack(|| bench(&session.state()).get(i).copied());
        let place = picked.get_untracked();
        told.places.update(|places| {
            if let (Some(places), Some(place), Some(number)) = (places, place, number) {
                places[place] = number;
            }
        });
        picked.set(None);
    });
    let places = Signal::derive(move || {
        let one = |(i, shirt): (usize, Shirt)| Choice {
            place: Some(i + 1),
            ..Choice::number(shirt, text::place_label(i + 1, shirt))
        };
        let places = told.places.get().unwrap_or_default();
        places.into_iter().enumerate().map(one).collect()
    });
    let waiting = Signal::derive(move || {
        let one = |shirt: Shirt| Choice::number(shirt, text::comes_in(shirt));
        bench(&session.state()).into_iter().map(one).collect()
    });
    let open = move || {
        view! {
            <p class="muted">{text::late_places()}</p>
            <div class="right-places" id="right-places">
                {buttons(Layout::Numbers, places, Some(is_picked), tap)}
            </div>
            <Show when=move || picked.get().is_some()>
                <div id="bench">{buttons(Layout::Numbers, waiting, None, put)}</div>
            </Show>
        }
        .into_any()
    };
    let opened = Memo::new(move |_| told.places.read().is_some());
    let switch = move |_| {
        picked.set(None);
        told.places
            .update(|places| *places = places.is_none().then(|| now.get_untracked()));
    };
    view! {
        <Show when=move || !now.read().is_empty()>
            <fieldset class="asked stack">
                {move || opened.get().then(open)}
                <button type="button" class="button" on:click=switch>
                    {move || if opened.get() { text::keep_places() } else { text::set_places() }}
                </button>
            </fieldset>
        </Show>
    }
}
