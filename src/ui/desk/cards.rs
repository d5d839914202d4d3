//! The matches as cards, by their pools.

use std::sync::Arc;

use leptos::prelude::*;

use super::items::{kind_of, title_of};
use super::matches::{checkbox, key_of};
use super::work::{row_id, Done, Work};
use super::{button, way, Place};
use crate::memo::Memo;
use crate::shell::Screen;
use crate::widgets::deferred::render_in_batches;
use app::desk::{in_groups, Row, RowKind};
use reports::standings::Doubt;
use text::desk as words;

/// So many cards are built between two frames.
const AT_A_TIME: usize = 8;

/// The cards of a pool, and how many stand before them.
#[derive(Clone, PartialEq)]
struct Group {
    name: String,
    before: usize,
    rows: Vec<Arc<Row>>,
}

/// The cards.
pub fn cards(work: Work) -> AnyView {
    let desk = work.desk;
    let groups = Memo::new(move |_| {
        let mut before = 0;
        let groups = in_groups(&desk.shown()).into_iter().map(|rows| {
            let group = Group {
                name: rows[0].group.clone(),
                before,
                rows,
            };
            before += group.rows.len();
            group
        });
        groups.collect::<Vec<Group>>()
    });
    let all = move || groups.read().iter().map(|group| group.rows.len()).sum();
    let built = render_in_batches(all, AT_A_TIME);
    let names = move || {
        let built = built.get();
        let groups = groups.read();
        let begun = groups.iter().filter(|group| group.before < built);
        begun.map(|group| group.name.clone()).collect::<Vec<_>>()
    };
    let one_group = move |name: String| {
        let of = name.clone();
        let rows = move || {
            let groups = groups.read();
            let group = groups.iter().find(|group| group.name == of);
            let left = group.map_or(0, |group| built.get().saturating_sub(group.before));
            let rows = group.map(|group| group.rows.clone()).unwrap_or_default();
            rows.into_iter().take(left).collect::<Vec<_>>()
        };
        let shown = match name.as_str() {
            "" => words::no_competition().to_owned(),
            name => name.to_owned(),
        };
        view! {
            <section class="stack">
                <div class="desk-group">
                    <h2>{shown.clone()}</h2>
                    {choose_pool(work, name, &shown)}
                </div>
                <ul class="desk-items" data-list="">
                    <For each=rows key=key_of children=move |row| card(work, &row) />
                </ul>
            </section>
        }
    };
    view! {
        <div class="desk-cards stack" class:archived=move || desk.filter.read().show == app::desk::Show::Archived>
            <For each=names key=Clone::clone children=one_group />
        </div>
    }
    .into_any()
}

/// Chooses the matches of a pool that count in its table.
fn choose_pool(work: Work, pool: String, name: &str) -> AnyView {
    let desk = work.desk;
    let label = words::choose_all(name);
    let of = pool.clone();
    let counts = Memo::new(move |_| {
        let rows = desk.rows().unwrap_or_default();
        rows.iter()
            .any(|row| row.group == of && row.counts() && !row.archived)
    });
    let pool = StoredValue::new(pool);
    let tap = move |_| {
        let rows = desk.rows_now();
        desk.choose(|chosen| pool.with_value(|pool| chosen.choose_pool(&rows, pool)));
    };
    (move || {
        counts.get().then(|| {
            view! {
                <button
                    type="button"
                    class="button quiet"
                    aria-label=label.clone()
                    on:click=tap
                >
                    {words::choose_all_label()}
                </button>
            }
        })
    })
    .into_any()
}

fn card(work: Work, row: &Row) -> AnyView {
    let id = row.id.clone();
    let title = title_of(row);
    let on_way = match row.kind {
        RowKind::Record => view! {
            {way(words::review(), Screen::Review { id: id.clone() })}
            {way(text::sheet(), Screen::Sheet { id: id.clone() })}
        }
        .into_any(),
        RowKind::Paper | RowKind::Pool(_) => delete(work, row),
    };
    let count = row.findings();
    let (say, label) = match row.kind {
        RowKind::Pool(_) => (
            words::table().to_owned(),
            text::of_teams(words::table(), &title),
        ),
        RowKind::Record | RowKind::Paper => {
            (words::to_check(count), words::findings_of(count, &title))
        }
    };
    let place = Place::of_row(row);
    let open = move |_| work.shell.go(Screen::Desk(place.clone()));
    let at = id.clone();
    let to = row_id(&id);
    let is_at = move || work.desk.at.read().as_ref() == Some(&at);
    view! {
        <li class="card desk-item" class:at=is_at>
            {what(work, row, title)}
            <div class="row">
                <button
                    type="button"
                    class="button"
                    id=to
                    class:found=count != 0
                    aria-label=label
                    on:click=open
                    on:focus=move |_| work.desk.at.set(Some(id.clone()))
                >
                    {say}
                </button>
                {on_way}
            </div>
        </li>
    }
    .into_any()
}

/// The words of a row, with which it can be chosen.
fn what(work: Work, row: &Row, title: String) -> AnyView {
    let said = match &row.line {
        None => view! { <span class="muted">{words::pool_file()}</span> }.into_any(),
        Some(line) => {
            // A seal that does not fit is what is in doubt.
            let shows_seal = !line.on_paper && line.doubt != Some(Doubt::Seal);
            let seal = shows_seal.then(|| words::seal_state(line.seal));
            let doubt = words::in_doubt(line);
            view! {
                <span class="tabular">{words::result_of(line)}</span>
                <span class="muted">{kind_of(line)}</span>
                {doubt.map(|doubt| view! { <span class="sentence warn">{doubt}</span> })}
                {row.again.then(|| view! { <span>{words::again()}</span> })}
                {seal.map(|seal| view! { <span class="muted">{seal}</span> })}
            }
            .into_any()
        }
    };
    view! {
        <label class="desk-choose">
            {checkbox(work, row.id.clone(), None)}
            <span class="desk-words">
                <strong>{title}</strong>
                {said}
            </span>
        </label>
    }
    .into_any()
}

/// Deletes what is no record, and keeps it at hand to be given back.
fn delete(work: Work, row: &Row) -> AnyView {
    let (id, kind, title) = (row.id.clone(), row.kind, title_of(row));
    let label = text::of_teams(text::delete(), &title);
    let tap = move || {
        let Some(store) = device::settings().desk_store(kind) else {
            return;
        };
        let text = store.get(&id).unwrap_or_default();
        store.forget(&id);
        work.has_done(Done::Deleted {
            kind,
            id: id.clone(),
            title: title.clone(),
            text,
        });
        work.library.refresh();
    };
    button(label, "button quiet", Box::new(tap))
}
