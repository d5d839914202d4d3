//! The matches as a table, and as a narrow list beside what is open.

use std::sync::Arc;

use leptos::prelude::*;

use super::items::title_of;
use super::work::{row_id, Work};
use crate::memo::Memo;
use crate::widgets::deferred::render_in_batches;
use app::desk::{Column, Row, RowKind};
use reports::list::Line;
use reports::{Weight, Weights};
use rules::Team;
use text::desk as words;
use text::desk_work as more;

/// So many rows are built between two frames.
const AT_A_TIME: usize = 16;

/// A row that is the same is drawn no second time.
pub fn key_of(row: &Arc<Row>) -> usize {
    Arc::as_ptr(row).addr()
}

/// Whether a row is chosen; a name of its own where no label stands around it.
pub fn checkbox(work: Work, id: String, label: Option<String>) -> AnyView {
    let desk = work.desk;
    let of = id.clone();
    view! {
        <input
            type="checkbox"
            aria-label=label
            prop:checked=move || desk.chosen.read().has(&of)
            on:change=move |_| desk.choose(|chosen| chosen.toggle(&id))
        />
    }
    .into_any()
}

/// The table. It is laid out as a grid, so that rows out of sight cost nothing; the roles say again what it is, since
/// some browsers forget that with another layout.
pub fn matches(work: Work) -> AnyView {
    let desk = work.desk;
    let shown = Memo::new(move |_| desk.shown());
    let built = render_in_batches(move || shown.read().len(), AT_A_TIME);
    let rows = move || {
        let shown = shown.read();
        shown.iter().take(built.get()).cloned().collect::<Vec<_>>()
    };
    let heads = Column::ALL.map(|by| head(work, by)).collect_view();
    view! {
        <div class="wide matches-frame" tabindex="0" role="region" aria-label=more::matches()>
            <table class="matches" id="matches" role="table" aria-rowcount=move || (shown.read().len() + 1).to_string()>
                <thead role="rowgroup">
                    <tr role="row">
                        <th role="columnheader" scope="col" class="choose">
                            <span class="visually-hidden">{more::select()}</span>
                        </th>
                        {heads}
                    </tr>
                </thead>
                <tbody role="rowgroup" data-list="">
                    <For each=rows key=key_of children=move |row| one(work, &row) />
                </tbody>
            </table>
        </div>
    }
    .into_any()
}

fn head(work: Work, by: Column) -> AnyView {
    let desk = work.desk;
    let backwards = Memo::new(move |_| {
        let order = desk.order.get();
        (order.by == by).then_some(order.backwards)
    });
    let sorted = move || {
        backwards.get().map(|backwards| match backwards {
            true => "descending",
            false => "ascending",
        })
    };
    view! {
        <th role="columnheader" scope="col" class=by.code() aria-sort=sorted>
            <button
                type="button"
                class="sorts"
                id=format!("sort-{}", by.code())
                on:click=move |_| desk.sort(desk.order.get_untracked().pressed(by))
            >
                {more::column(by)}
                <span aria-hidden="true">{move || backwards.get().map(more::arrow)}</span>
            </button>
            <span class="on-paper" aria-hidden="true">{more::column(by)}</span>
        </th>
    }
    .into_any()
}

fn one(work: Work, row: &Row) -> AnyView {
    let title = title_of(row);
    let id = row.id.clone();
    let (at, to) = (id.clone(), row_id(&id));
    let is_at = move || work.desk.at.read().as_ref() == Some(&at);
    let of = id.clone();
    let is_chosen = move || work.desk.chosen.read().has(&of);
    let opens = row.clone();
    let line = row.line.as_ref();
    let result = line.map(|line| {
        view! {
            <b class="tabular">{more::sets(line)}</b>
            <span class="muted tabular">{more::points(line)}</span>
        }
    });
    let pool = match (row.group.as_str(), row.kind) {
        (_, RowKind::Pool(_)) => words::pool_file().to_owned(),
        ("", _) => words::no_competition().to_owned(),
        (group, _) => group.to_owned(),
    };
    let number = line.filter(|line| !line.number.is_empty());
    let number = number.map(|line| more::match_no(&line.number));
    let day = row.day.clone();
    let seal = line.map(|line| {
        view! { <span class=format!("seal {}", line.seal.code())>{more::seal(line.seal)}</span> }
    });
    let again = row
        .again
        .then(|| view! { <span class="muted">{words::again()}</span> });
    let doubt = line.and_then(words::in_doubt);
    let doubt = doubt.map(|doubt| view! { <span class="sentence warn">{doubt}</span> });
    view! {
        <tr role="row" class:at=is_at class:ticked=is_chosen>
            <td role="cell" class="choose">
                <label>{checkbox(work, id.clone(), Some(more::select_one(&title)))}</label>
            </td>
            <th role="rowheader" scope="row" class="teams">
                <button
                    type="button"
                    class="row-open"
                    id=to
                    on:click=move |_| work.open(&opens)
                    on:focus=move |_| work.desk.at.set(Some(id.clone()))
                >
                    {title.clone()}
                </button>
                <span class="on-paper" aria-hidden="true">{title}</span>
                {again}
                {doubt}
            </th>
            <td role="cell" class="result">{result}</td>
            <td role="cell" class="day tabular">{day}</td>
            <td role="cell" class="pool">
                <span>{pool}</span>
                <span class="muted">{number}</span>
            </td>
            <td role="cell" class="signed">{line.map(more::signed)}</td>
            <td role="cell" class="seal-cell">{seal}</td>
            <td role="cell" class="findings">{line.map(|line| weighed(line.findings))}</td>
        </tr>
    }
    .into_any()
}

/// How many findings there are of each weight: a word, a number and a shape for each.
fn weighed(weights: Weights) -> AnyView {
    if weights.all() == 0 {
        return view! { <span class="muted">{more::weights(weights)}</span> }.into_any();
    }
    let each = weights.counted().map(|(of, count)| {
        view! {
            <span class=format!("weight {}", of.code())>
                {more::weight(of)} " " <b class="tabular">{count}</b>
            </span>
        }
    });
    view! { <span class="weights">{each.collect_view()}</span> }.into_any()
}

/// A mark for the weight of a finding.
pub fn weight_mark(of: Weight) -> AnyView {
    view! {
        <span class=format!("weight {}", of.code()) title=more::weight_more(of)>
            {more::weight(of)}
        </span>
    }
    .into_any()
}

/// The matches in a narrow list.
pub fn beside(work: Work) -> AnyView {
    let desk = work.desk;
    let shown = Memo::new(move |_| desk.shown());
    let built = render_in_batches(move || shown.read().len(), AT_A_TIME);
    let rows = move || {
        let shown = shown.read();
        shown.iter().take(built.get()).cloned().collect::<Vec<_>>()
    };
    let count = move || {
        let all = desk.rows().map_or(0, |rows| rows.len());
        more::how_many(shown.read().len(), all)
    };
    view! {
        <p class="muted" role="status">{count}</p>
        <ul data-list="">
            <For each=rows key=key_of children=move |row| short(work, &row) />
        </ul>
    }
    .into_any()
}

fn short(work: Work, row: &Row) -> AnyView {
    let of = row.id.clone();
    let is_open = move || (work.desk.at.read().as_ref() == Some(&of)).then_some("true");
    let opens = row.clone();
    let line = row.line.as_ref();
    let name = move |line: &Line, team: Team| match line.teams[team].as_str() {
        "" => team.letter().to_owned(),
        name => name.to_owned(),
    };
    let said = match line {
        None => view! { <span>{title_of(row)}</span> }.into_any(),
        Some(line) => {
            let sides = Team::BOTH.map(|team| {
                let sets = line.sets.map(|sets| sets[team]);
                view! {
                    <span class="side">
                        <span class="side-name">{name(line, team)}</span>
                        <b class="tabular">{sets}</b>
                    </span>
                }
            });
            sides.collect_view().into_any()
        }
    };
    view! {
        <li>
            <button
                type="button"
                class="row-beside"
                id=row_id(&row.id)
                aria-current=is_open
                on:click=move |_| work.open(&opens)
            >
                {said}
                {line.map(|line| weighed(line.findings))}
            </button>
        </li>
    }
    .into_any()
}
