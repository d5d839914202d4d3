//! A rally that does not count.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::game::entry::ReplayWhy;
use crate::game::Kind;
use crate::ui::session::use_session;
use crate::ui::text;

const WHYS: [ReplayWhy; 4] = [
    ReplayWhy::DoubleFault,
    ReplayWhy::Interference,
    ReplayWhy::Injury,
    ReplayWhy::Other,
];

/// Why it does not.
#[component]
pub fn Replayed() -> impl IntoView {
    let session = use_session();
    let court = use_court();
    let choose = move |why: ReplayWhy| {
        // A person comes before the entry.
        if why == ReplayWhy::Injury {
            return court.panel.set(Panel::Hurt {
                rally: true,
                team: None,
            });
        }
        if session.tell(Kind::Replay { why, hurt: None }) {
            court.close_panel();
        }
    };
    view! {
        <Frame title=text::REPLAY_TITLE.to_owned()>
            <p class="muted">{text::REPLAY_MORE}</p>
            <div class="causes">
                {WHYS
                    .into_iter()
                    .map(|why| {
                        view! {
                            <button
                                type="button"
                                class="button cause"
                                on:click=move |_| choose(why)
                            >
                                {text::replay_button(why)}
                            </button>
                        }
                    })
                    .collect_view()}
            </div>
        </Frame>
    }
}
