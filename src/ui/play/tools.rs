//! What a team may ask for, below its half.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::icon::{icon, icon_as, Icon};
use game::Kind;
use rules::Team;

/// Both teams' buttons, each below its half.
#[component]
pub fn Tools() -> impl IntoView {
    view! {
        <div class="tools">
            <OfTeam left=true />
            <OfTeam left=false />
        </div>
    }
}

#[component]
fn OfTeam(left: bool) -> impl IntoView {
    let court = use_court();
    let team = Memo::new(move |_| court.team_at(left));
    view! { {move || view! { <Buttons team=team.get() left /> }} }
}

#[component]
fn Buttons(team: Team, left: bool) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let name = Memo::new(move |_| text::team_name(&session.state(), team));
    let time_outs = Memo::new(move |_| {
        let state = session.state();
        let used = state.play().map_or(0, |play| play.sides[team].time_outs);
        (used, state.rules().time_outs.per_set)
    });
    let changes = Memo::new(move |_| {
        let state = session.state();
        let used = state
            .play()
            .map_or(0, |play| play.sides[team].substitutions);
        (used, state.rules().substitutions.per_set)
    });
    let line_ups = Memo::new(move |_| session.state().rules().line_ups);
    let why_not = Memo::new(move |_| session.check(&Kind::TimeOut { team }).err());
    let side = if left { "left" } else { "right" };
    view! {
        <div class="team-tools" class:team-a=team == Team::A class:team-b=team == Team::B>
            <button
                type="button"
                class="tool"
                id=format!("time-out-{side}")
                data-once
                aria-label=move || text::tool_label(text::time_out(), &name.get(), time_outs.get())
                class:barred=move || why_not.read().is_some()
                aria-description=move || {
                    why_not.read().as_ref().map(|why| text::refusal(why, (&*session.state()).into()))
                }
                on:click=move |_| {
                    court.submit(Kind::TimeOut { team });
                }
            >
                <svg viewBox="0 0 24 24" class="icon" aria-hidden="true">
                    <path d="M4 6 H20 M12 6 V20" />
                </svg>
                <span class="tool-word">
                    {move || why_not.read().as_ref().map_or(text::time_out(), text::no_time_out)}
                </span>
                <span class="tabular">{move || text::used(time_outs.get())}</span>
            </button>
            <Show when=move || line_ups.get()>
                <button
                    type="button"
                    class="tool"
                    id=format!("change-{side}")
                    aria-label=move || text::tool_label(text::substitution(), &name.get(), changes.get())
                    on:click=move |_| court.open(Panel::Substitution(team))
                >
                    {icon(Icon::Exchange)}
                    <span class="tool-word">{text::sub()}</span>
                    <span class="tabular">{move || text::used(changes.get())}</span>
                </button>
            </Show>
            <button
                type="button"
                class="tool"
                id=format!("more-{side}")
                aria-label=move || text::of_teams(text::more(), &name.get())
                on:click=move |_| court.open(Panel::More(team))
            >
                {icon_as("icon more-dots", Icon::More)}
                <span class="tool-word">{text::more()}</span>
            </button>
        </div>
    }
}
