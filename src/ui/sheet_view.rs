//! The sheet of the match: to read on the phone, to sign and to seal, to print, to hand over.

mod closing;
mod open_things;

use leptos::prelude::*;

use self::closing::Closing;
use super::session::{use_session, Session};
use super::shell::{use_shell, Screen};
use super::widgets::give::hand_over;
use crate::memo::Memo;
use crate::widgets::deferred::defer_render;
use crate::widgets::paper_sheet::{paper_sheet, wall_clock};
use device::{print_page, ExportFile};
use game::Timeline;
use render::{document, parts, points_csv};
use reports::Sheet;
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
            {defer_render(move || paper(sheet))}
        </div>
    }
}

/// The paper of the open match.
fn paper(sheet: Memo<Sheet>) -> AnyView {
    let session = use_session();
    let all = Memo::new(move |_| {
        let clock = session.with_timeline(wall_clock);
        sheet.with(|sheet| parts(sheet, clock))
    });
    paper_sheet(all, Signal::stored(None))
}

/// The sheet with the signatures that were drawn on this phone.
fn drawn_on(session: Session, timeline: &Timeline) -> Sheet {
    let drawn = session
        .id()
        .map(|id| device::settings().drafts(&id).drawn())
        .unwrap_or_default();
    Sheet::of(timeline).with_drawn(&drawn)
}

/// Gives a file that was computed from the match out of hand.
fn give(session: Session, ending: &str, mime: &str, content: String) {
    hand_over(ExportFile {
        name: text::file_name(&session.state_now(), ending),
        mime: mime.to_owned(),
        bytes: content.into_bytes(),
    });
}
