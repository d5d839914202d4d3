//! Why the last rally ended: for as long as one likes, and never in the way of the next rally.

use leptos::prelude::*;

use super::signal_card::SignalCard;
use crate::game::{Kind, Phase, Said};
use crate::rules::{Cause, Group, Team};
use crate::ui::part::picker::{buttons, Choice, Lie};
use crate::ui::session::use_session;
use crate::ui::text;

/// The rally that is talked about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Talked {
    /// Its entry.
    pub entry: u32,
    /// Who won it.
    pub won_by: Team,
    /// Whether the side that lost it had served.
    pub server_lost: bool,
    /// What was said about it.
    pub said: Option<Said>,
}

/// The reasons of the last rally, or the signal of the one that was chosen.
#[component]
pub fn Reasons() -> impl IntoView {
    let session = use_session();
    let talked = Memo::new(move |_| {
        session.with_replay(|replay| {
            let state = replay.state();
            (state.phase() == Phase::Playing).then_some(())?;
            let entry = replay.last_rally()?.n;
            let rally = state.rally(entry)?;
            // Only a rally of this set.
            state.play()?.points.iter().find(|p| p.entry == entry)?;
            Some(Talked {
                entry,
                won_by: rally.to,
                server_lost: rally.served.is_some_and(|t| t != rally.to),
                said: state.said(entry),
            })
        })
    });
    // Another rally begins anew; another reason for the same one does not.
    let entry = Memo::new(move |_| talked.get().map(|t| t.entry));
    view! {
        {move || {
            entry.get()?;
            Some(view! { <OfRally talked /> })
        }}
    }
}

#[component]
fn OfRally(talked: Memo<Option<Talked>>) -> impl IntoView {
    let choosing = RwSignal::new(false);
    // The number to a reason leaves its signal as it is.
    let cause = Memo::new(move |_| talked.get()?.said.map(|said| said.cause));
    view! {
        {move || match cause.get() {
            Some(cause) if !choosing.get() => {
                Some(view! { <SignalCard talked cause again=choosing /> }.into_any())
            }
            _ => talked.get().map(|talked| view! { <Choice talked choosing /> }.into_any()),
        }}
    }
}

/// All reasons in their groups, always in the same places.
#[component]
fn Choice(talked: Talked, choosing: RwSignal<bool>) -> impl IntoView {
    let open = RwSignal::new(Group::ALL[0]);
    let name = text::team_name(&use_session().state_now(), talked.won_by);
    view! {
        <section class="reasons" aria-label=text::why_point(&name)>
            <div class="groups" role="group" aria-label=text::GROUPS>
                {Group::ALL
                    .into_iter()
                    .map(|group| {
                        view! {
                            <button
                                type="button"
                                class="group"
                                aria-pressed=move || (open.get() == group).to_string()
                                on:click=move |_| open.set(group)
                            >
                                {text::group(group)}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
            {move || causes(talked, open.get(), choosing)}
        </section>
    }
}

/// The reasons of one group. One that cannot have ended this rally says so.
fn causes(talked: Talked, group: Group, choosing: RwSignal<bool>) -> AnyView {
    let session = use_session();
    let hint = RwSignal::new(false);
    let of_group: Vec<Cause> = Cause::ALL
        .into_iter()
        .filter(|cause| cause.group() == Some(group))
        .collect();
    let explain = move |cause: Cause| Kind::Explain {
        entry: talked.entry,
        cause,
        by: None,
        seen_by: None,
    };
    let one = |cause: &Cause| {
        let legal = cause.fits(talked.server_lost) && session.may(&explain(*cause)).is_ok();
        Choice::new(text::cause(*cause)).when(legal)
    };
    let choices = Signal::stored(untrack(|| of_group.iter().map(one).collect()));
    let tap = Callback::new(move |i: usize| {
        let Some(&cause) = of_group.get(i) else {
            return;
        };
        if !cause.fits(talked.server_lost) {
            hint.set(true);
        } else if session.tell(explain(cause)) {
            choosing.set(false);
        }
    });
    let why_not = move || {
        hint.get().then(|| {
            let words = text::cause_does_not_fit(talked.server_lost);
            view! { <p class="muted" role="status">{words}</p> }
        })
    };
    view! {
        {buttons(Lie::Grid, choices, None, tap)}
        {why_not}
    }
    .into_any()
}
