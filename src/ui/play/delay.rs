//! A request that could not be granted, or a delay: what it becomes stands there before it is recorded
//! (Official Volleyball Rules 2025-2028, 15.11 and chapter 16).

use leptos::prelude::*;

use super::consequence::Consequence;
use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::session::use_session;
use app::delaying::Delaying;
use rules::Team;

/// The panel.
#[component]
pub fn Delay(
    /// Whose.
    team: Team,
    /// What.
    what: Delaying,
) -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let name = text::team_name(&session.state_now(), team);
    let kind = Signal::stored(Some(what.kind(team)));
    let instead = what.instead().map(|instead| {
        view! {
            <button
                type="button"
                class="button quiet"
                on:click=move |_| court.open(Panel::Delay { team, what: instead })
            >
                {text::delay_instead(instead)}
            </button>
        }
    });
    view! {
        <Frame title=text::panel_title(text::delaying(what), &name)>
            <Consequence kind yes=Signal::stored(text::note_it().to_owned()) />
            <p class="muted">{text::delay_means(what)}</p>
            {instead}
        </Frame>
    }
}
