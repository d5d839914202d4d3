//! All chosen sheets one after the other, each on pages of its own.

use leptos::prelude::*;

use super::print_button;
use super::state::use_desk;
use crate::start::Library;
use crate::widgets::paper_sheet::wall_clock;
use app::desk::RowKind;
use app::stored_match::StoredMatch;
use reports::Sheet;
use text::desk_work as more;

/// The screen.
pub fn sheets() -> AnyView {
    let (desk, library) = (use_desk(), Library::begin());
    desk.follow(library);
    let papers = RwSignal::new(Vec::<String>::new());
    let is_whole = RwSignal::new(false);
    let left_out = RwSignal::new(0);
    let is_gone = StoredValue::new(());
    let begun = StoredValue::new(false);
    Effect::new(move |_| {
        let Some(rows) = desk.rows() else {
            return;
        };
        if begun.get_value() {
            return;
        }
        begun.set_value(true);
        let chosen = desk.chosen.with_untracked(|chosen| chosen.rows(&rows));
        let of = |kind| chosen.iter().filter(move |row| row.kind == kind);
        let ids: Vec<String> = of(RowKind::Record).map(|row| row.id.clone()).collect();
        left_out.set(of(RowKind::Paper).count());
        device::spawn(async move {
            for id in ids {
                // The screen may be gone by now.
                if is_gone.try_get_value().is_none() {
                    return;
                }
                let kept = library.read(&id).await;
                papers.try_update(|papers| papers.push(paper(&kept)));
                device::pause(0).await;
            }
            is_whole.try_set(true);
        });
    });
    let one = move |place: usize| {
        let html = move || papers.with(|papers| papers.get(place).cloned());
        view! { <article class="paper" inner_html=move || html().unwrap_or_default()></article> }
    };
    view! {
        <div class="desk stack" aria-busy=move || (!is_whole.get()).then_some("true")>
            <div class="row no-print">{print_button()}</div>
            <p class="no-print" role="status" id="sheets-count">
                {move || match (is_whole.get(), papers.read().len()) {
                    (false, _) => text::reading().to_owned(),
                    (true, 0) => more::no_sheets().to_owned(),
                    (true, count) => more::sheets_of(count),
                }}
            </p>
            {move || (left_out.get() > 0).then(|| view! {
                <p class="no-print">{more::papers_left_out(left_out.get())}</p>
            })}
            <div class="all-sheets">
                <For each=move || 0..papers.read().len() key=|place| *place children=one />
            </div>
        </div>
    }
    .into_any()
}

fn paper(kept: &StoredMatch) -> String {
    let sheet = Sheet::of(kept.timeline()).with_drawn(&device::settings().drafts(&kept.id).drawn());
    let parts = render::parts(&sheet, wall_clock(kept.timeline()));
    parts.into_iter().map(|part| part.html).collect()
}
