//! A request that could not be granted, or a delay: what it becomes stands there before it is recorded
//! (Official Volleyball Rules 2025-2028, 15.11 and chapter 16).

use leptos::prelude::*;

use super::consequence::Consequence;
use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::session::use_session;
use crate::text;
use game::Kind;
use rules::Team;

/// What happened.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Delaying {
    /// A request that could not be granted and held nobody up.
    Improper,
    /// A request that held play up.
    Request,
    /// Any other delay.
    Other,
    /// A libero replacement after the whistle and before the service hit (19.3.2.5, 19.3.2.6).
    LateReplacement,
}

impl Delaying {
    /// The entry.
    fn kind(self, team: Team) -> Kind {
        match self {
            Delaying::Improper => Kind::ImproperRequest { team },
            Delaying::Request => Kind::Delay {
                team,
                request: true,
            },
            Delaying::Other => Kind::Delay {
                team,
                request: false,
            },
            Delaying::LateReplacement => Kind::LateReplacement { team },
        }
    }

    /// The other half of the judgement: whether a request held play up.
    const fn instead(self) -> Option<Delaying> {
        match self {
            Delaying::Improper => Some(Delaying::Request),
            Delaying::Request => Some(Delaying::Improper),
            Delaying::Other | Delaying::LateReplacement => None,
        }
    }
}

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
            <Consequence kind yes=Signal::stored(text::NOTE_IT.to_owned()) />
            <p class="muted">{text::delay_means(what)}</p>
            {instead}
        </Frame>
    }
}
