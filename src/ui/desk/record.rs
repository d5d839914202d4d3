//! What is open: of a record the sheet or the log, and beside it what is to be looked at; a paper sheet; a pool.

use std::sync::Arc;

use leptos::prelude::*;

use super::findings::findings;
use super::form::form;
use super::items::{title_of, Source};
use super::work::Work;
use super::{table, way, Place};
use crate::macrotask_executor::once_drawn;
use crate::memo::Memo;
use crate::shell::Screen;
use crate::widgets::deferred::{after_the_frame, defer_render, render_in_batches};
use crate::widgets::log_lines::{log_lines, LogLine};
use crate::widgets::paper_sheet::{box_id, paper_sheet, wall_clock};
use app::desk::{neighbours, RowKind};
use app::stored_match::StoredMatch;
use reports::Sheet;
use text::desk as words;
use text::desk_work as more;

/// What is open, as far as anything is.
pub fn opened(work: Work, open: Memo<Option<String>>) -> AnyView {
    let is_open = Memo::new(move |_| open.read().is_some());
    (move || {
        is_open.get().then(|| {
            let body = move || open.get().map(|id| of_id(work, id));
            view! {
                {steps(work, open)}
                {body}
            }
        })
    })
    .into_any()
}

/// The ways to what comes before and next; they stay while that changes.
fn steps(work: Work, open: Memo<Option<String>>) -> AnyView {
    let desk = work.desk;
    let near = Memo::new(move |_| {
        let shown = desk.shown();
        let id = open.get().unwrap_or_default();
        let (before, next) = neighbours(&shown, &id);
        [before.cloned(), next.cloned()]
    });
    let step = move |id: &'static str, say: &'static str, at: usize, label: fn(&str) -> String| {
        let row = Memo::new(move |_| near.read()[at].clone());
        let label = move || match &*row.read() {
            Some(row) => label(&title_of(row)),
            None => say.to_owned(),
        };
        view! {
            <button
                type="button"
                class="button"
                id=id
                class:barred=move || row.read().is_none()
                aria-disabled=move || row.read().is_none().then_some("true")
                aria-label=label
                on:click=move |_| {
                    if let Some(row) = row.get_untracked() {
                        work.open(&row);
                    }
                }
            >
                {say}
            </button>
        }
    };
    view! {
        <div class="row desk-steps">
            {step("desk-previous", more::previous(), 0, more::previous_is)}
            {step("desk-next", more::next(), 1, more::next_is)}
            <button type="button" class="button desk-close" id="desk-close" on:click=move |_| {
                let at = work.desk.at.get_untracked();
                work.shell.up();
                if let Some(at) = at {
                    super::work::go_to_row(&at);
                }
            }>
                {more::close()}
            </button>
        </div>
    }
    .into_any()
}

/// What of it is read.
#[derive(Clone)]
enum Reading {
    /// It is being read.
    Under,
    /// It is not on this phone.
    Nowhere,
    /// Here it is.
    Here(Arc<Source>),
}

fn of_id(work: Work, id: String) -> AnyView {
    let Work { desk, library, .. } = work;
    let read = RwSignal::new(Reading::Under);
    let of = id.clone();
    let row = Memo::new(move |_| {
        let rows = desk.rows()?;
        Some(rows.iter().find(|row| row.id == of).cloned())
    });
    let kind = Memo::new(move |_| row.read().as_ref()?.as_ref().map(|row| row.kind));
    Effect::new(move |_| match row.get() {
        None => {}
        Some(None) => read.set(Reading::Nowhere),
        Some(Some(row)) => device::spawn(async move {
            let source = Source::read(&row, library).await;
            // Something else may be open by now.
            read.try_set(match source {
                Some(source) => Reading::Here(Arc::new(source)),
                None => Reading::Nowhere,
            });
        }),
    });
    // A paper sheet is drawn once: every key changes it.
    (move || {
        if super::papers::paper(&id).is_some() || kind.get() == Some(RowKind::Paper) {
            return view! { <div class="desk-middle alone">{form(work, &id)}</div> }.into_any();
        }
        (move || match read.get() {
            Reading::Under => {
                view! { <p class="muted" role="status">{text::reading()}</p> }.into_any()
            }
            Reading::Nowhere => super::not_here(),
            Reading::Here(source) => match &*source {
                Source::Record(kept) => panes(work, kept),
                Source::Pool(pool) => {
                    view! { <div class="desk-middle alone">{table::of_pool(pool)}</div> }.into_any()
                }
                Source::Paper(_) => ().into_any(),
            },
        })
        .into_any()
    })
    .into_any()
}

/// The part of a record in the middle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Middle {
    Sheet,
    Log,
    /// On a phone the findings take its place.
    Nothing,
}

fn panes(work: Work, kept: &StoredMatch) -> AnyView {
    let Work { shell, place, .. } = work;
    let middle = Memo::new(move |_| match &*place.read() {
        Place::Log(..) => Middle::Log,
        Place::Sheet(..) => Middle::Sheet,
        _ if shell.is_wide() => Middle::Sheet,
        _ => Middle::Nothing,
    });
    let with_findings =
        Memo::new(move |_| shell.is_wide() || matches!(&*place.read(), Place::Findings(_)));
    let id = kept.id.clone();
    let title = text::teams(kept.state());
    let standing = text::standing(kept.state());
    let (for_middle, for_findings) = (
        StoredValue::new(kept.clone()),
        StoredValue::new(kept.clone()),
    );
    let part = move |say: &'static str, of: Middle, to: Place| {
        view! {
            <button
                type="button"
                class="button"
                aria-pressed=move || (middle.get() == of).to_string()
                on:click=move |_| work.show(to.clone())
            >
                {say}
            </button>
        }
    };
    let (sheet, log) = (Place::Sheet(id.clone(), None), Place::Log(id.clone(), None));
    let shown = move || match middle.get() {
        Middle::Nothing => ().into_any(),
        Middle::Sheet => for_middle.with_value(|kept| sheet_of(work, kept)),
        Middle::Log => for_middle.with_value(|kept| log_of(work, kept)),
    };
    view! {
        <section class="desk-middle stack" hidden=move || middle.get() == Middle::Nothing>
            <div class="desk-what">
                <h2>{title}</h2>
                <p class="tabular">{standing}</p>
            </div>
            <div class="row" role="group" aria-label=more::parts_of_record()>
                {part(more::sheet(), Middle::Sheet, sheet)}
                {part(more::log(), Middle::Log, log)}
                <span class="desk-ways">
                    {way(more::open_sheet(), Screen::Sheet { id: id.clone() })}
                    {way(words::review(), Screen::Review { id })}
                </span>
            </div>
            <div class="desk-shown">{shown}</div>
        </section>
        {move || {
            with_findings
                .get()
                .then(|| for_findings.with_value(|kept| findings(work, kept)))
        }}
    }
    .into_any()
}

/// The sheet, at the box that somebody looks for.
fn sheet_of(work: Work, kept: &StoredMatch) -> AnyView {
    let place = work.place;
    let sheet = Sheet::of(kept.timeline()).with_drawn(&device::settings().drafts(&kept.id).drawn());
    let clock = wall_clock(kept.timeline());
    let all = Memo::new(move |_| render::parts(&sheet, clock));
    let at = Memo::new(move |_| match &*place.read() {
        Place::Sheet(_, at) => *at,
        _ => None,
    });
    Effect::new(move |_| {
        if let Some(at) = at.get() {
            go_once_there(box_id(at));
        }
    });
    defer_render(move || paper_sheet(all, at.into()))
}

/// So many entries are built between two frames.
const AT_A_TIME: usize = 32;

/// The log, at the entry that somebody looks for.
fn log_of(work: Work, kept: &StoredMatch) -> AnyView {
    let place = work.place;
    let lines = StoredValue::new(log_lines(kept.timeline()));
    let all = lines.with_value(Vec::len);
    let built = render_in_batches(move || all, AT_A_TIME);
    let at = Memo::new(move |_| match &*place.read() {
        Place::Log(_, at) => *at,
        _ => None,
    });
    Effect::new(move |_| {
        if let Some(at) = at.get() {
            go_once_there(entry_id(at));
        }
    });
    let each = move || 0..built.get().min(all);
    let one = move |at_line: usize| lines.with_value(|lines| entry(&lines[at_line], at));
    view! {
        <ol class="log desk-log">
            <For each=each key=|place| *place children=one />
        </ol>
    }
    .into_any()
}

fn entry_id(n: u32) -> String {
    format!("entry-{n}")
}

fn entry(line: &LogLine, at: Memo<Option<u32>>) -> AnyView {
    let n = line.n;
    let became = line.became.clone();
    let doubt = line.doubt.clone();
    view! {
        <li
            class="log-line"
            class:gone=!line.standing
            class:quiet=line.quiet
            class:looked-for=move || at.get() == Some(n)
            id=entry_id(n)
            tabindex="-1"
        >
            <span class="log-n tabular">{n}</span>
            <span class="log-words">
                <span class="log-what">{line.words.clone()}</span>
                {became.map(|words| view! { <span class="muted">{words}</span> })}
                <span class="muted tabular">
                    {line.time.clone()} " " {line.score.clone()}
                </span>
                {doubt.map(|words| view! { <span class="log-doubt">{words}</span> })}
            </span>
        </li>
    }
    .into_any()
}

/// So many frames the screen has to build what is gone to.
const FRAMES: u8 = 90;

/// Goes to an element as soon as it is there.
pub fn go_once_there(id: String) {
    fn again(id: String, frames: u8) {
        after_the_frame(move || {
            if !device::focus_on(&id) && frames > 0 {
                again(id, frames - 1);
            }
        });
    }
    once_drawn(move || again(id, FRAMES));
}
