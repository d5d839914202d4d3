//! Why the last rally ended: for as long as one likes, and never in the way of the next rally.

use leptos::prelude::*;

use super::signal_card::SignalCard;
use crate::game::{Kind, Phase, Said};
use crate::rules::{Cause, Group, Team};
use crate::ui::part::picker::{buttons, Choice, Lie};
use crate::ui::session::{use_session, Session};
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

/// What is known of a rally, where its reason can still be said.
fn talked_of(session: Session, entry: u32) -> Option<Talked> {
    let not_said = Kind::Explain {
        entry,
        cause: Cause::NotSaid,
        by: None,
        seen_by: None,
    };
    session.may(&not_said).ok()?;
    session.with_replay(|replay| {
        let rally = replay.state().rally(entry)?;
        Some(Talked {
            entry,
            won_by: rally.to,
            server_lost: rally.served.is_some_and(|t| t != rally.to),
            said: replay.state().said(entry),
        })
    })
}

/// The reasons of the last rally of the set at hand, or the signal of the one that was chosen. After a
/// set there are other things to do, so the groups stay closed then.
#[component]
pub fn Reasons() -> impl IntoView {
    let session = use_session();
    let talked = Memo::new(move |_| {
        let entry = session.with_replay(|replay| {
            let entry = replay.last_rally()?.n;
            let set = replay.state().correctable()?;
            set.points.iter().any(|p| p.entry == entry).then_some(entry)
        })?;
        talked_of(session, entry)
    });
    // Another rally begins anew; another reason for the same one does not.
    let entry = Memo::new(move |_| talked.get().map(|t| t.entry));
    move || {
        entry.get()?;
        let playing = session.state_now().phase() == Phase::Playing;
        Some(of_rally(talked, playing.then_some(Group::ALL[0])))
    }
}

/// The reason of any rally that is still in the log.
pub fn of_entry(entry: u32) -> AnyView {
    let session = use_session();
    let talked = Memo::new(move |_| talked_of(session, entry));
    of_rally(talked, Some(Group::ALL[0]))
}

fn of_rally(talked: Memo<Option<Talked>>, opens: Option<Group>) -> AnyView {
    let choosing = RwSignal::new(false);
    // The number to a reason leaves its signal as it is.
    let cause = Memo::new(move |_| talked.get()?.said.map(|said| said.cause));
    let shown = move || match cause.get() {
        Some(cause) if !choosing.get() => {
            Some(view! { <SignalCard talked cause again=choosing /> }.into_any())
        }
        _ => talked.get().map(|talked| choice(talked, opens, choosing)),
    };
    view! { {shown} }.into_any()
}

/// All reasons in their groups, always in the same places.
fn choice(talked: Talked, opens: Option<Group>, choosing: RwSignal<bool>) -> AnyView {
    let open = RwSignal::new(opens);
    let name = text::team_name(&use_session().state_now(), talked.won_by);
    let words = text::why_point(&name);
    let legend = opens
        .is_none()
        .then(|| view! { <p class="muted">{words.clone()}</p> });
    let tab = |group: Group| {
        view! {
            <button
                type="button"
                class="group"
                aria-pressed=move || (open.get() == Some(group)).to_string()
                on:click=move |_| open.set(Some(group))
            >
                {text::group(group)}
            </button>
        }
        .into_any()
    };
    view! {
        <section class="reasons" aria-label=words>
            {legend}
            <div class="groups" role="group" aria-label=text::GROUPS>
                {Group::ALL.map(tab).into_iter().collect_view()}
            </div>
            {move || open.get().map(|group| causes(talked, group, choosing))}
        </section>
    }
    .into_any()
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
        seen_by: talked.said.and_then(|said| said.seen_by),
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
