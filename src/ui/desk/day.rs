//! The invented day: brought with one tap, taken away with one.

use leptos::prelude::*;

use std::sync::Arc;

use super::state::{use_desk, Desk};
use super::{button, Place};
use crate::shell::{use_shell, Screen};
use crate::start::Library;
use app::desk::{Row, RowKind};
use app::library::Kept;
use reports::demo;
use reports::paper::Draft;
use text::desk as words;
use text::desk_work as more;

/// The button that brings the invented day, or takes it away.
#[component]
pub fn DemoDay(
    /// The matches on this phone.
    library: Library,
) -> impl IntoView {
    let (desk, shell) = (use_desk(), use_shell());
    let busy = RwSignal::new(false);
    let bring = move || {
        if busy.get_untracked() {
            return;
        }
        busy.set(true);
        let app = library.app();
        device::spawn(async move {
            let day = demo::day();
            let mut kept = desk.put_paper(&day.paper_id, &Draft::of(&day.paper));
            for log in day.logs {
                kept &= app.keep(&log.id, &log.entries).await == Kept::Here;
            }
            busy.try_set(false);
            shell.news(
                if kept {
                    words::day_is_here()
                } else {
                    words::day_not_kept()
                }
                .to_owned(),
            );
            library.refresh();
            shell.go(Screen::Desk(Place::List));
        });
    };
    let take_away = move || {
        device::settings()
            .papers()
            .ids()
            .iter()
            .filter(|id| demo::is_invented(id))
            .for_each(|id| desk.forget_paper(id));
        let here = desk.rows_now().into_iter();
        let records = here.filter(|row| row.kind == RowKind::Record && demo::is_invented(&row.id));
        let records = records.map(|row| row.id.clone()).collect();
        library.delete(records, move |stay| {
            shell.news(match stay {
                0 => words::day_is_gone().to_owned(),
                stay => more::not_deleted(stay),
            });
        });
    };
    let bring = StoredValue::new_local(bring);
    let is_here = move || {
        desk.rows()
            .is_some_and(|all| all.iter().any(|row| demo::is_invented(&row.id)))
    };
    move || {
        if busy.get() {
            view! { <p class="muted" role="status">{words::day_comes()}</p> }.into_any()
        } else if is_here() {
            button(words::day_take_away(), "button", Box::new(take_away))
        } else {
            view! {
                <div class="stack">
                    {button(words::day_bring(), "button", Box::new(move || bring.with_value(|b| b())))}
                    <p class="muted">{words::day_more()}</p>
                </div>
            }
            .into_any()
        }
    }
}

/// A way of the tour: its words, and where it leads.
type Step = (&'static str, Box<dyn Fn()>);

/// Where to look first, while the invented day is here.
pub fn tour(desk: Desk, rows: &[Arc<Row>]) -> Option<AnyView> {
    let here = |id: &String| rows.iter().any(|row| &row.id == id);
    let [first, second] = demo::id_of_both();
    let on_paper = demo::id_on_paper();
    let looked_back_on = demo::id_of(3);
    if ![&first, &second, &on_paper, &looked_back_on]
        .into_iter()
        .all(here)
    {
        return None;
    }
    // The pool to which the paper sheet belongs; of the match with two records the first counts.
    let group = &rows.iter().find(|row| row.id == on_paper)?.group;
    let is_over = |row: &Row| row.line.as_ref().is_some_and(|line| line.played.is_some());
    let pool = rows
        .iter()
        .filter(|row| row.group == *group && is_over(row) && row.id != second);
    let pool: Vec<String> = pool.map(|row| row.id.clone()).collect();
    // Where there is most to look at.
    let records = rows
        .iter()
        .filter(|row| demo::is_invented(&row.id) && row.kind == RowKind::Record);
    let most = records.max_by_key(|row| row.findings());
    let most = &most?.id;
    let shell = use_shell();
    let table = move || {
        desk.choose(|chosen| chosen.choose(pool.clone()));
        shell.go(Screen::Desk(Place::Table));
    };
    let to = |place: Place| -> Box<dyn Fn()> {
        let screen = Screen::Desk(place);
        Box::new(move || shell.go(screen.clone()))
    };
    let review = Screen::Review { id: looked_back_on };
    let steps: [Step; 5] = [
        (words::tour_table(), Box::new(table)),
        (words::tour_compare(), to(Place::Compare(first, second))),
        (words::tour_paper(), to(Place::Paper(on_paper))),
        (words::tour_findings(), to(Place::Findings(most.clone()))),
        (
            words::tour_review(),
            Box::new(move || shell.go(review.clone())),
        ),
    ];
    let steps = steps.map(|(say, tap)| view! { <li>{button(say, "button", tap)}</li> });
    Some(
        view! {
            <section class="card stack tour" id="tour">
                <h2>{words::tour()}</h2>
                <ol class="row">{steps}</ol>
            </section>
        }
        .into_any(),
    )
}
