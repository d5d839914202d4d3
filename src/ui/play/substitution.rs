//! Who goes and who comes: only legal changes are offered, a tap on another one says why not. In a tally, which
//! follows nobody, both numbers are typed.

use leptos::prelude::*;

use super::captain::requests_by;
use super::court::use_court;
use super::panel::Frame;
use crate::memo::Memo;
use crate::session::{use_session, Refused, Session};
use crate::widgets::number_pad::NumberPad;
use crate::widgets::picker::{asked, buttons, fixed, question, Choice, Layout};
use game::entry::{Change, Forced};
use game::{preview_substitution, Barred, Kind, MayReturn, OutFor, Refusal, State};
use rules::{Shirt, Team};

const REASONS: [Option<Forced>; 4] = [
    None,
    Some(Forced::Injury),
    Some(Forced::Expelled),
    Some(Forced::Disqualified),
];

/// One request, as it is put together.
#[derive(Clone, Copy)]
struct Request {
    session: Session,
    team: Team,
    out: RwSignal<Option<Shirt>>,
    changes: RwSignal<Vec<Change>>,
    reason: RwSignal<Option<Forced>>,
}

impl Request {
    fn kind(self, changes: Vec<Change>) -> Kind {
        Kind::Substitution {
            team: self.team,
            changes,
            reason: self.reason.get(),
        }
    }

    /// Whether somebody changes in this request already: each player changes once.
    fn names(self, shirt: Shirt) -> bool {
        let is_of = |change: &Change| change.out == shirt || change.into == shirt;
        self.changes.read().iter().any(is_of)
    }

    /// What the core says to one more change in this request.
    fn check(self, change: Change) -> Result<(), Refusal> {
        let mut changes = self.changes.get();
        changes.push(change);
        match self.session.check(&self.kind(changes)) {
            // The part that is wrong is what was asked about.
            Err(Refusal::PartlyIllegal { because, .. }) => Err(*because),
            answer => answer,
        }
    }

    /// Why a player on court cannot go, if there is nobody to come.
    fn may_go(self, out: Shirt, bench: &[Shirt]) -> Result<(), Refusal> {
        let mut first = None;
        for &into in bench {
            match self.check(Change { out, into }) {
                Ok(()) => return Ok(()),
                Err(refusal) => {
                    first.get_or_insert(refusal);
                }
            }
        }
        Err(first.unwrap_or(Refusal::NoChange))
    }

    fn add(self, change: Change) {
        self.changes.update(|changes| changes.push(change));
        self.out.set(None);
    }

    /// Shows why a change is not offered, and the way past the advice.
    fn explain(self, why: Refusal, change: Option<Change>) {
        let mut changes = self.changes.get_untracked();
        changes.extend(change);
        let kind = Kind::Substitution {
            team: self.team,
            changes,
            reason: self.reason.get_untracked(),
        };
        self.session.refused().set(Some(Refused { kind, why }));
    }
}

/// Who is on court, place 1 first, and who is not, in order of the numbers.
fn players(state: &State, team: Team) -> (Vec<Shirt>, Vec<Shirt>) {
    let on_court: Vec<Shirt> = state
        .on_floor()
        .map(|play| play.sides[team].on_court().collect())
        .unwrap_or_default();
    let holds = |shirt: Shirt| {
        state
            .on_floor()
            .is_some_and(|play| play.sides[team].holds(shirt))
    };
    let mut bench: Vec<Shirt> = state
        .team(team)
        .listed()
        .filter(|&shirt| !holds(shirt) && !state.team(team).is_libero(shirt))
        .collect();
    bench.sort_unstable();
    (on_court, bench)
}

/// The reason that the state already knows for a player who must leave.
fn known_reason(state: &State, team: Team) -> Option<(Shirt, Forced)> {
    let play = state.on_floor()?;
    play.sides[team].slots.iter().find_map(|slot| {
        let why = state.team(team).barred(slot.player, play.number)?;
        let reason = match why {
            Barred::Expelled => Forced::Expelled,
            Barred::Out(OutFor::Disqualified) => Forced::Disqualified,
            Barred::Out(OutFor::Exceptional | OutFor::Redesignated) => return None,
        };
        Some((slot.player, reason))
    })
}

/// The panel.
#[component]
pub fn Substitution(
    /// Whose.
    team: Team,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let known = known_reason(&session.state_now(), team);
    let request = Request {
        session,
        team,
        out: RwSignal::new(known.map(|(player, _)| player)),
        changes: RwSignal::new(Vec::new()),
        reason: RwSignal::new(known.map(|(_, reason)| reason)),
    };
    let title = text::substitution_title(&text::team_name(&session.state_now(), team));
    let ready = Memo::new(move |_| !request.changes.read().is_empty());
    let record = move |_| {
        if session.submit(request.kind(request.changes.get_untracked())) {
            court.close_panel();
        }
    };
    let is_reason = Callback::new(move |i: usize| request.reason.get() == REASONS[i]);
    let set_reason = Callback::new(move |i: usize| request.reason.set(REASONS[i]));
    let reasons = fixed(REASONS.map(text::forced));
    let followed = session.state_now().rules().line_ups;
    if followed && players(&session.state_now(), team).0.is_empty() {
        return view! {
            <Frame title>
                <p class="sentence warn">{text::no_line_up()}</p>
            </Frame>
        }
        .into_any();
    }
    view! {
        <Frame title>
            {if followed {
                view! {
                    {going(request)}
                    {coming(request)}
                }
                    .into_any()
            } else {
                typed(request)
            }}
            {asked(text::substitution_reason(), buttons(Layout::Row, reasons, Some(is_reason), set_reason))}
            {requests_by(team)}
            <Show when=move || ready.get()>
                <div class="panel-foot">
                    {chosen(request)}
                    {means(request)}
                    <button type="button" class="button primary" id="record-change" on:click=record>
                        {move || text::record_substitutions(request.changes.read().len())}
                    </button>
                </div>
            </Show>
        </Frame>
    }
    .into_any()
}

/// The changes of this request so far; a tap leaves one out.
fn chosen(request: Request) -> AnyView {
    let choices = Signal::derive(move || {
        let one = |change: &Change| Choice {
            label: Some(text::drop_change(change)),
            ..Choice::new(text::dropped(change))
        };
        request.changes.read().iter().map(one).collect()
    });
    let drop = Callback::new(move |i: usize| {
        request.changes.update(|all| {
            if i < all.len() {
                all.remove(i);
            }
        });
    });
    buttons(Layout::Row, choices, None, drop)
}

/// What each change of a forced request is, and what it means for whoever goes out; before that, who comes back
/// after an injury.
fn means(request: Request) -> AnyView {
    let lines = Memo::new(move |_| {
        let state = request.session.state();
        let reason = request.reason.get();
        let one = |change: &Change| {
            let preview = preview_substitution(&state, request.team, *change, reason)?;
            let worth_saying = reason.is_some() || preview.may_return != MayReturn::ThisSet;
            worth_saying.then(|| text::sort_means(preview, change.out, reason))
        };
        let changes = request.changes.read();
        let hurt = &state.team(request.team).hurt;
        let comes_back = changes.iter().filter(|change| hurt.contains(&change.into));
        let warned = comes_back.map(|change| text::was_hurt(change.into));
        warned
            .chain(changes.iter().filter_map(one))
            .collect::<Vec<_>>()
    });
    view! {
        {move || lines.get().into_iter().map(|line| view! { <p class="means">{line}</p> }).collect_view()}
    }
    .into_any()
}

/// Who goes. Somebody who cannot is asked about with the others.
fn going(request: Request) -> AnyView {
    let numbers = Memo::new(move |_| {
        let (on_court, bench) = players(&request.session.state(), request.team);
        let one = |out: Shirt| (out, request.may_go(out, &bench).err());
        let open = on_court.into_iter().filter(|&shirt| !request.names(shirt));
        let all: Vec<_> = open.map(one).collect();
        // Beside somebody who was sent off, nobody wants to read of each of the others that he or she was not.
        let stays =
            |(_, why): &(Shirt, Option<Refusal>)| matches!(why, Some(Refusal::NotSentOff { .. }));
        if all.iter().all(stays) {
            return all;
        }
        all.into_iter().filter(|one| !stays(one)).collect()
    });
    let choices = Signal::derive(move || {
        let one = |(out, why): &(Shirt, Option<Refusal>)| {
            let state = request.session.state();
            let why = why.as_ref().map(|why| text::refusal(why, (&*state).into()));
            Choice::number(*out, text::goes_out(*out)).unless(why)
        };
        numbers.read().iter().map(one).collect()
    });
    let is = Callback::new(move |i: usize| {
        let out = numbers.read().get(i).map(|(out, _)| *out);
        out.is_some() && request.out.get() == out
    });
    let goes = move |(out, why): (Shirt, Option<Refusal>)| {
        request.out.set(Some(out));
        if why == Some(Refusal::NoChange) {
            request.explain(Refusal::NoChange, None);
        }
    };
    let tap = Callback::new(move |i: usize| {
        if let Some(one) = numbers.with_untracked(|numbers| numbers.get(i).cloned()) {
            goes(one);
        }
    });
    let find = move |shirt: Shirt| {
        let of = |numbers: &Vec<(Shirt, _)>| numbers.iter().find(|(out, _)| *out == shirt).cloned();
        numbers.with(of)
    };
    use_court().ask_for_player(
        move |team, shirt| team == request.team && find(shirt).is_some(),
        move |_, shirt| {
            if let Some(one) = untrack(|| find(shirt)) {
                goes(one);
            }
        },
    );
    let legend = Signal::derive(move || match request.changes.read().is_empty() {
        true => text::who_goes().to_owned(),
        false => text::who_else_goes().to_owned(),
    });
    question(legend, buttons(Layout::Numbers, choices, Some(is), tap))
}

/// First who goes, then who comes; the core only counts them.
fn typed(request: Request) -> AnyView {
    let take = Callback::new(move |shirt: Shirt| {
        let Some(out) = request.out.get_untracked() else {
            return request.out.set(Some(shirt));
        };
        let change = Change { out, into: shirt };
        match untrack(|| request.check(change)) {
            Ok(()) => request.add(change),
            Err(why) => request.explain(why, Some(change)),
        }
    });
    let legend = Signal::derive(move || match request.out.get() {
        None => text::who_goes().to_owned(),
        out => text::who_comes(out),
    });
    let pad = view! { <NumberPad label=legend on_take=take take_words=text::this_player() /> };
    question(legend, pad.into_any())
}

/// Who comes, once it is said who goes.
fn coming(request: Request) -> AnyView {
    let numbers = Memo::new(move |_| {
        let out = request.out.get()?;
        let (_, bench) = players(&request.session.state(), request.team);
        let one = |into: Shirt| {
            let change = Change { out, into };
            (change, request.check(change).err())
        };
        let open = bench.into_iter().filter(|&shirt| !request.names(shirt));
        Some(open.map(one).collect::<Vec<_>>())
    });
    let choices = Signal::derive(move || {
        let one = |(change, why): &(Change, Option<Refusal>)| {
            let state = request.session.state();
            let why = why.as_ref().map(|why| text::refusal(why, (&*state).into()));
            Choice::number(change.into, text::comes_in(change.into)).unless(why)
        };
        numbers.read().iter().flatten().map(one).collect()
    });
    let tap = Callback::new(move |i: usize| {
        match numbers.with_untracked(|all| all.as_ref()?.get(i).cloned()) {
            Some((change, None)) => request.add(change),
            Some((change, Some(why))) => request.explain(why, Some(change)),
            None => {}
        }
    });
    let shows = Memo::new(move |_| numbers.read().is_some());
    let legend = Signal::derive(move || text::who_comes(request.out.get()));
    let answers = move || {
        view! {
            {buttons(Layout::Numbers, choices, None, tap)}
        }
        .into_any()
    };
    view! { {move || shows.get().then(|| question(legend, answers()))} }.into_any()
}
