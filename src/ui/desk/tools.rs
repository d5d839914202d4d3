//! What can be done with the chosen matches.

use leptos::prelude::*;

use super::work::Work;
use super::{save, Place};
use crate::shell::Screen;
use crate::widgets::dialog::Drawer;
use app::desk::Show;
use render::list::csv;
use reports::list::Line;
use reports::WallClock;
use text::desk as words;
use text::desk_work as more;

/// The bar at the foot of the desk, and the list as a file.
pub fn tools(work: Work) -> AnyView {
    let Work {
        desk,
        shell,
        refused,
        ..
    } = work;
    let count = move || desk.chosen.read().ids().len();
    let spreadsheet = move |_| {
        let rows = desk.rows_now();
        let lines = rows
            .iter()
            .filter_map(|row| Some((row.id.clone(), row.line.clone()?)));
        let lines: Vec<(String, Line)> = lines.collect();
        let hall_at = |at| WallClock(device::offset_minutes(at));
        save("desk.csv", csv(&lines, hall_at));
    };
    let opened = RwSignal::new(false);
    let others = move || {
        if shell.is_wide() {
            others(work, None)
        } else {
            view! {
                <button
                    type="button"
                    class="button"
                    id="desk-more"
                    aria-haspopup="dialog"
                    on:click=move |_| opened.set(true)
                >
                    {more::more()}
                </button>
            }
            .into_any()
        }
    };
    view! {
        <div class="row">
            <button type="button" class="button" id="desk-csv" on:click=spreadsheet>
                {words::list_csv()}
            </button>
            <button
                type="button"
                class="button"
                id="desk-report"
                on:click=move |_| shell.go(Screen::Desk(Place::Report))
            >
                {more::report()}
            </button>
        </div>
        <div
            class="desk-tools"
            class:idle=move || count() == 0
            role="group"
            aria-label=words::chosen()
        >
            <p role="status" class="desk-refused" id="desk-refused">
                {move || {
                    let needs = match count() {
                        0 => Some(words::choose_some()),
                        1 => Some(words::choose_two()),
                        _ => None,
                    };
                    refused.get().or(needs)
                }}
            </p>
            <p id="desk-chosen">{move || words::how_many_chosen(count())}</p>
            <button
                type="button"
                class="button"
                id="desk-compare"
                class:barred=move || count() != 2
                on:click=move |_| work.compare()
            >
                {words::compare_them()}
            </button>
            <button
                type="button"
                class="button"
                id="desk-table"
                class:barred=move || count() == 0
                on:click=move |_| work.rank()
            >
                {words::table_of_them()}
            </button>
            {others}
        </div>
        <Drawer open=opened title=Signal::derive(move || words::how_many_chosen(count()))>
            {move || others_in(work, opened)}
        </Drawer>
    }
    .into_any()
}

/// The same in a sheet of choices, which closes with each of them.
fn others_in(work: Work, opened: RwSignal<bool>) -> AnyView {
    view! { <div class="stack">{others(work, Some(opened))}</div> }.into_any()
}

/// What is done more seldom.
fn others(work: Work, opened: Option<RwSignal<bool>>) -> AnyView {
    let desk = work.desk;
    let one = move |id: &'static str, say: Signal<String>, act: Box<dyn Fn()>| {
        let tap = move |_| {
            if let Some(opened) = opened {
                opened.set(false);
            }
            act();
        };
        view! {
            <button type="button" class="button" id=id on:click=tap>
                {say}
            </button>
        }
        .into_any()
    };
    let said = |words: &'static str| Signal::stored(words.to_owned());
    let all = move || {
        let shown = untrack(|| desk.shown());
        desk.choose(|chosen| chosen.choose_all(&shown));
    };
    let archive = Signal::derive(move || {
        let archived = desk.filter.read().show == Show::Archived;
        let say = if archived {
            more::restore()
        } else {
            more::archive()
        };
        say.to_owned()
    });
    view! {
        {one("desk-all", said(more::select_all()), Box::new(all))}
        {one("desk-none", said(more::select_none()), Box::new(move || desk.choose(|c| c.clear())))}
        {one("desk-sheets", said(more::print_sheets()), Box::new(move || work.sheets()))}
        {one("desk-archive", archive, Box::new(move || work.archive()))}
        {one("desk-delete", said(more::delete()), Box::new(move || work.ask_to_delete()))}
    }
    .into_any()
}
