//! A rally that does not count.

use leptos::prelude::*;

use super::court::{use_court, Panel};
use super::panel::Frame;
use crate::game::entry::ReplayWhy;
use crate::game::Kind;
use crate::ui::part::picker::{buttons, fixed, Lie};
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
    let court = use_court();
    let choose = Callback::new(move |i: usize| {
        let why = WHYS[i];
        // A person comes before the entry.
        if why == ReplayWhy::Injury {
            return court.open(Panel::Hurt {
                rally: true,
                team: None,
            });
        }
        court.tell(Kind::Replay { why, hurt: None });
    });
    view! {
        <Frame title=text::REPLAY_TITLE.to_owned()>
            <p class="muted">{text::REPLAY_MORE}</p>
            {buttons(Lie::Grid, fixed(WHYS.map(text::replay_button)), None, choose)}
        </Frame>
    }
}
