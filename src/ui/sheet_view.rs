//! The sheet of the match: to read on the phone, to sign and to seal, to print, to hand over.

mod closing;
mod open_things;

use leptos::prelude::*;

use self::closing::Closing;
use super::session::{use_session, Session};
use super::setup::drawn;
use super::shell::{use_shell, Screen};
use super::start::hand_over;
use crate::memo::Memo;
use crate::widgets::deferred::{defer_render, render_in_batches};
use device::{offset_minutes, print_page, ExportFile};
use game::Timeline;
use render::{document, parts, points_csv};
use reports::{Sheet, WallClock};
use text::sheet as words;

/// The sheet of the match, to read, sign, seal, print and hand over.
#[component]
pub fn SheetScreen() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let cannot_print = RwSignal::new(false);
    // Computed once for the card, the paper and the file; with each entry anew.
    let sheet = Memo::without_comparing(move |_| {
        session.with_timeline(|timeline| drawn_on(session, timeline))
    });
    let page = move |_| {
        let clock = session.with_untracked(wall_clock);
        let html = sheet.with_untracked(|sheet| document(sheet, clock));
        give(session, "html", "text/html", html);
    };
    let points = move |_| {
        let id = untrack(|| session.id()).unwrap_or_default();
        let table = session.with_untracked(|timeline| {
            points_csv(&[(id.as_str(), timeline)], wall_clock(timeline))
        });
        give(session, "csv", "text/csv", table);
    };
    let go = move |to: fn(String) -> Screen| {
        if let Some(id) = untrack(|| session.id()) {
            shell.go(to(id));
        }
    };
    view! {
        <div class="sheet stack">
            <div class="row sheet-tools">
                <button id="print-sheet" type="button" class="button" on:click=move |_| cannot_print.set(!print_page())>
                    {words::print()}
                </button>
                <button id="sheet-page" type="button" class="button" on:click=page>
                    {words::page()}
                </button>
                <button id="sheet-points" type="button" class="button" on:click=points>
                    {words::points()}
                </button>
                <button id="sheet-talk" type="button" class="button"
                    on:click=move |_| go(|id| Screen::Review { id })
                >
                    {words::talk()}
                </button>
                <button id="export-sheet" type="button" class="button primary"
                    on:click=move |_| go(|id| Screen::HandOver { id })
                >
                    {words::hand_over()}
                </button>
            </div>
            {move || cannot_print.get().then(|| view! {
                <p class="sentence bad" role="alert">{words::cannot_print()}</p>
            })}
            <Closing sheet />
            {defer_render(move || view! { <Paper sheet /> }.into_any())}
        </div>
    }
}

/// The paper, part by part.
#[component]
fn Paper(sheet: Memo<Sheet>) -> impl IntoView {
    let session = use_session();
    let all = Memo::new(move |_| {
        let clock = session.with_timeline(wall_clock);
        sheet.with(|sheet| parts(sheet, clock))
    });
    let built = render_in_batches(move || all.read().len(), 1);
    let shown = Memo::new(move |_| built.get().min(all.read().len()));
    let one = move |place: usize| {
        let html = Memo::new(move |_| all.read().get(place).cloned().unwrap_or_default());
        view! { <div class="paper-part" inner_html=move || html.get()></div> }
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
}

/// The sheet with the signatures that were drawn on this phone.
fn drawn_on(session: Session, timeline: &Timeline) -> Sheet {
    let drawn = session.id().map(|id| drawn(&id)).unwrap_or_default();
    Sheet::of(timeline).with_drawn(&drawn)
}

/// The clock of the hall: this phone's, on the day of the match.
fn wall_clock(timeline: &Timeline) -> WallClock {
    let at = timeline.entries().iter().find_map(|e| e.at);
    WallClock(at.map_or(0, offset_minutes))
}

/// Gives a file that was computed from the match out of hand.
fn give(session: Session, ending: &str, mime: &str, content: String) {
    hand_over(ExportFile {
        name: text::file_name(&session.state_now(), ending),
        mime: mime.to_owned(),
        bytes: content.into_bytes(),
    });
}
