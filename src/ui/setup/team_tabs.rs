//! One of two teams is looked at, or said.

use leptos::prelude::*;

use crate::session::use_session;
use crate::widgets::team_mark::TeamMark;
use rules::Team;
use text::setup as words;
use text::team_name;

/// Both teams to choose from, with a tick on the one that is through.
#[component]
pub(super) fn TeamTabs(
    /// Whose turn it is.
    team: RwSignal<Team>,
    /// Whether a team's part is done.
    #[prop(into)]
    done: Callback<Team, bool>,
    /// What the choice is about.
    label: &'static str,
) -> impl IntoView {
    let session = use_session();
    let one = move |own: Team| {
        view! {
            <button
                type="button"
                class="button team-tab"
                aria-pressed=move || (team.get() == own).to_string()
                on:click=move |_| team.set(own)
            >
                <TeamMark team=own />
                <span class="team-tab-name">{move || team_name(&session.state(), own)}</span>
                {move || done.run(own).then(|| view! {
                    <span class="mark-ok">
                        <span aria-hidden="true">"\u{2713}"</span>
                        <span class="visually-hidden">{words::is_done()}</span>
                    </span>
                })}
            </button>
        }
    };
    view! {
        <div class="pair" role="group" aria-label=label>
            {Team::BOTH.map(one).collect_view()}
        </div>
    }
}

/// From a team that is through to the one that is not.
#[component]
pub(super) fn OtherTeam(
    /// Whose turn it is.
    team: RwSignal<Team>,
    /// Whether a team's part is done.
    #[prop(into)]
    done: Callback<Team, bool>,
) -> impl IntoView {
    let session = use_session();
    move || {
        let (own, other) = (team.get(), team.get().other());
        (done.run(own) && !done.run(other)).then(|| {
            let words = words::now_team(&team_name(&session.state(), other));
            view! {
                <button type="button" class="button primary" on:click=move |_| team.set(other)>
                    {words}
                </button>
            }
        })
    }
}

/// Both teams in large, one of them to be said.
pub(super) fn choose_team(answer: RwSignal<Option<Team>>) -> AnyView {
    let session = use_session();
    let one = move |team: Team| {
        view! {
            <button
                type="button"
                class="button big-choice"
                aria-pressed=move || (answer.get() == Some(team)).to_string()
                on:click=move |_| answer.set(Some(team))
            >
                <TeamMark team />
                <span>{move || team_name(&session.state(), team)}</span>
            </button>
        }
    };
    view! { <div class="pair">{Team::BOTH.map(one)}</div> }.into_any()
}
