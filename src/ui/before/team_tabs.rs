//! One of two teams is looked at.

use leptos::prelude::*;

use crate::rules::Team;
use crate::ui::part::team_mark::{team_name, TeamMark};
use crate::ui::session::use_session;
use crate::ui::text_before as text;

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
                        <span class="visually-hidden">{text::IS_DONE}</span>
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
