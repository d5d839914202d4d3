//! What a tally can still become: teams with names, a full match.

use leptos::html;
use leptos::prelude::*;

use super::consequence::Consequence;
use crate::session::use_session;
use crate::widgets::picker::{buttons, fixed, Layout};
use game::entry::Amendment;
use game::Kind;
use rules::{ByTeam, Preset, Team};

/// The names of the teams, at any time.
#[component]
pub fn Names(
    /// Closed once they are taken.
    open: RwSignal<bool>,
) -> impl IntoView {
    let session = use_session();
    let fields = [NodeRef::<html::Input>::new(), NodeRef::<html::Input>::new()];
    let given = move |i: usize| {
        let words = fields[i].get_untracked().map(|input| input.value());
        Some(words?.trim().to_owned())
    };
    let take = move |event: leptos::ev::SubmitEvent| {
        event.prevent_default();
        let heading = Amendment {
            names: ByTeam {
                a: given(0),
                b: given(1),
            },
            ..Amendment::default()
        };
        if session.submit(Kind::Heading(Box::new(heading))) {
            open.set(false);
        }
    };
    let state = session.state_now();
    let known = |team: Team| {
        let heading = state.heading();
        heading.map_or_else(String::new, |h| h.names[team].clone())
    };
    view! {
        <form class="stack" on:submit=take>
            {Team::BOTH
                .into_iter()
                .zip(fields)
                .map(|(team, field)| {
                    view! {
                        <label class="field">
                            <span>{text::name_of(team)}</span>
                            <input
                                type="text"
                                maxlength="60"
                                autocomplete="off"
                                id=format!("name-{}", team.letter())
                                value=known(team)
                                node_ref=field
                            />
                        </label>
                    }
                })
                .collect_view()}
            <button type="submit" class="button primary">
                {text::names_record()}
            </button>
        </form>
    }
}

/// What a match can be played by from now on.
const GROWN: [Preset; 3] = [
    Preset::SchoolJunior,
    Preset::SchoolSenior,
    Preset::International,
];

/// A tally becomes a match with lists and line-ups.
#[component]
pub fn Grow(
    /// Closed once it has.
    open: RwSignal<bool>,
) -> impl IntoView {
    let preset = RwSignal::new(None::<Preset>);
    let kind = Signal::derive(move || {
        let rules = Some(preset.get()?.rules());
        Some(Kind::Heading(Box::new(Amendment {
            rules,
            ..Amendment::default()
        })))
    });
    let yes = Signal::derive(move || {
        let preset = preset.get();
        preset.map_or_else(String::new, |p| text::grow_to(text::setup::preset(p)))
    });
    let done = Callback::new(move |()| open.set(false));
    let is = Callback::new(move |i: usize| preset.get() == Some(GROWN[i]));
    let choose = Callback::new(move |i: usize| preset.set(Some(GROWN[i])));
    view! {
        <p>{text::grow_more()}</p>
        {buttons(Layout::Lines, fixed(GROWN.map(text::setup::preset)), Some(is), choose)}
        <Consequence kind yes done />
    }
}
