//! Players on court who differ from the line-up, seen before the set begins (Official Volleyball Rules
//! 2025-2028, 7.3.5.1 and 7.3.5.2).

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::dialog::Drawer;
use crate::widgets::picker::{asked, buttons, teams, Choice, Layout};
use game::entry::Change;
use game::Kind;
use rules::{Shirt, Team};

/// Opens the form, once both line-ups are in.
#[component]
pub(super) fn OthersOnCourt() -> impl IntoView {
    let session = use_session();
    let open = RwSignal::new(false);
    let ready = Memo::new(move |_| session.state().ready().is_some());
    view! {
        <Show when=move || ready.get()>
            <button type="button" class="button quiet" on:click=move |_| open.set(true)>
                {text::others_on_court()}
            </button>
        </Show>
        <Drawer open title=Signal::stored(text::others_on_court().to_owned())>
            <Form open />
        </Drawer>
    }
}

#[component]
fn Form(open: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    let team = RwSignal::new(None::<Team>);
    let out = RwSignal::new(None::<Shirt>);
    let into = RwSignal::new(None::<Shirt>);
    Effect::new(move |_| {
        team.track();
        out.set(None);
        into.set(None);
    });
    let line_up = Signal::derive(move || {
        let given = team
            .get()
            .and_then(|team| session.state().line_up_given(team).map(<[_]>::to_vec));
        given.unwrap_or_default()
    });
    let others = Signal::derive(move || {
        let Some(team) = team.get() else {
            return Vec::new();
        };
        let line_up = line_up.get();
        let state = session.state();
        let listed = state.team(team).listed();
        let mut others: Vec<Shirt> = listed.filter(|n| !line_up.contains(n)).collect();
        others.sort_unstable();
        others
    });
    let one_player = move || {
        Some(vec![Change {
            out: out.get()?,
            into: into.get()?,
        }])
    };
    let known = Memo::new(move |_| one_player().is_some());
    let record = move |changes: Option<Vec<Change>>, kept: bool| {
        let found = team.get_untracked().zip(changes);
        let kind = found.map(|(team, changes)| Kind::Discrepancy {
            team,
            changes,
            kept,
        });
        if kind.is_some_and(|kind| session.submit(kind)) {
            open.set(false);
        }
    };
    view! {
        <p>{text::others_more()}</p>
        {asked(text::whose_players(), teams(team))}
        <Show when=move || !line_up.read().is_empty()>
            {asked(text::who_is_missing(), numbers(line_up, out, text::is_missing))}
            <Show when=move || out.get().is_none()>
                <button type="button" class="button" on:click=move |_| record(Some(Vec::new()), false)>
                    {text::places_put_right()}
                </button>
            </Show>
        </Show>
        <Show when=move || out.get().is_some()>
            {asked(text::who_stands_there(), numbers(others, into, text::stands_there))}
        </Show>
        <Show when=move || known.get()>
            <div class="stack">
                <button type="button" class="button primary" on:click=move |_| record(untrack(one_player), false)>
                    {text::put_right()}
                </button>
                <button type="button" class="button" on:click=move |_| record(untrack(one_player), true)>
                    {text::kept()}
                </button>
            </div>
        </Show>
    }
}

/// Numbers of which one is chosen; `label` names each for those who do not see it.
fn numbers(
    of: Signal<Vec<Shirt>>,
    chosen: RwSignal<Option<Shirt>>,
    label: fn(Shirt) -> String,
) -> AnyView {
    let choices = Signal::derive(move || {
        of.read()
            .iter()
            .map(|&shirt| Choice::number(shirt, label(shirt)))
            .collect()
    });
    let is = Callback::new(move |i: usize| {
        chosen.get().is_some() && chosen.get() == of.read().get(i).copied()
    });
    let tap =
        Callback::new(move |i: usize| chosen.set(of.with_untracked(|all| all.get(i).copied())));
    buttons(Layout::Numbers, choices, Some(is), tap)
}
