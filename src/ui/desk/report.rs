//! The report of the day: every match with its result, who signed, the seal and what is to be looked at, on paper as
//! on the screen.

use std::sync::Arc;

use leptos::prelude::*;

use super::items::{once_read, title_of};
use super::print_button;
use super::state::use_desk;
use app::desk::{reported, Row};
use text::desk as words;
use text::desk_work as more;
use text::setup::library::date_words;

/// The screen.
pub fn report() -> AnyView {
    let desk = use_desk();
    once_read(move |rows| {
        let chosen = desk.chosen.get_untracked();
        let filter = desk.filter.get_untracked();
        let pools = reported(&rows, &chosen, &filter, date_words());
        let matches = pools.iter().map(Vec::len).sum();
        let mut days: Vec<String> = pools
            .iter()
            .flatten()
            .filter_map(|row| day_of(row))
            .collect();
        days.sort_unstable();
        let days = days.first().zip(days.last());
        let days = days.map(|(first, last)| more::days(first, last));
        let about = more::report_of(matches, &days.unwrap_or_default());
        let each = pools.iter().map(|pool| one_pool(pool)).collect_view();
        view! {
            <div class="desk stack report">
                <div class="row no-print">{print_button()}</div>
                <header>
                    <h2 id="report">{more::report()}</h2>
                    <p>{about}</p>
                </header>
                {each}
            </div>
        }
        .into_any()
    })
}

/// The day it was played here.
fn day_of(row: &Row) -> Option<String> {
    let day = row.day.split(',').next()?;
    (!day.is_empty()).then(|| day.to_owned())
}

fn one_pool(rows: &[Arc<Row>]) -> AnyView {
    let name = rows.first().map_or("", |row| row.group.as_str());
    let name = match name {
        "" => words::no_competition().to_owned(),
        name => name.to_owned(),
    };
    let heads = [
        more::match_number(),
        more::time(),
        more::column(app::desk::Column::Teams),
        more::column(app::desk::Column::Result),
        more::set_points(),
        more::column(app::desk::Column::Signed),
        more::column(app::desk::Column::Seal),
        more::column(app::desk::Column::Findings),
    ];
    let heads = heads.map(|head| view! { <th scope="col">{head}</th> });
    let lines = rows.iter().map(|row| one(row)).collect_view();
    view! {
        <section class="stack">
            <h3>{name.clone()}</h3>
            <div class="wide" tabindex="0" role="region" aria-label=name>
                <table class="report-table tabular">
                    <thead>
                        <tr>{heads}</tr>
                    </thead>
                    <tbody>{lines}</tbody>
                </table>
            </div>
        </section>
    }
    .into_any()
}

fn one(row: &Row) -> AnyView {
    let line = row.line.as_ref();
    let doubt = line.and_then(words::in_doubt);
    let again = row.again.then_some(words::again());
    view! {
        <tr>
            <td>{line.map(|line| line.number.clone())}</td>
            <td>{row.day.clone()}</td>
            <th scope="row">
                {title_of(row)}
                {again.map(|again| view! { <span class="muted">{again}</span> })}
                {doubt.map(|doubt| view! { <span class="muted">{doubt}</span> })}
            </th>
            <td><b>{line.map(more::sets)}</b></td>
            <td>{line.map(more::points)}</td>
            <td>{line.map(more::signed)}</td>
            <td>{line.map(|line| more::seal(line.seal))}</td>
            <td>{line.map(|line| more::weights(line.findings))}</td>
        </tr>
    }
    .into_any()
}
