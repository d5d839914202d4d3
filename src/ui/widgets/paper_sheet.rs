//! The paper of a match on the screen, part by part; each box can be gone to by its name.

use leptos::prelude::*;

use super::deferred::render_in_batches;
use crate::memo::Memo;
use device::offset_minutes;
use game::Timeline;
use render::PaperPart;
use reports::{SheetBox, WallClock};

/// The id of a box of the sheet in the page.
pub fn box_id(of: SheetBox) -> String {
    format!("box-{}", of.code())
}

/// The paper; the box that somebody looks for is marked.
pub fn paper_sheet(all: Memo<Vec<PaperPart>>, looked_for: Signal<Option<SheetBox>>) -> AnyView {
    let built = render_in_batches(move || all.read().len(), 1);
    let shown = Memo::new(move |_| built.get().min(all.read().len()));
    let one = move |place: usize| {
        let holds = Memo::new(move |_| all.read().get(place).map(|part| part.holds));
        let html = Memo::new(move |_| {
            let all = all.read();
            all.get(place)
                .map(|part| part.html.clone())
                .unwrap_or_default()
        });
        view! {
            <div
                class="paper-part"
                class:looked-for=move || holds.get().is_some() && looked_for.get() == holds.get()
                id=move || holds.get().map(box_id)
                tabindex="-1"
                inner_html=move || html.get()
            ></div>
        }
    };
    view! {
        <article class="paper" aria-busy=move || (shown.get() < all.read().len()).then_some("true")>
            <For
                each=move || 0..shown.get()
                key=|place| *place
                children=one
            />
        </article>
    }
    .into_any()
}

/// The clock of the hall: this phone's, on the day of the match.
pub fn wall_clock(timeline: &Timeline) -> WallClock {
    let at = timeline.entries().iter().find_map(|e| e.at);
    WallClock(at.map_or(0, offset_minutes))
}
