//! What is to be looked at in one record, in words, with the entry it is about.

use leptos::prelude::*;

use super::items::{once_read, reading, Source};
use super::way;
use crate::shell::Screen;
use crate::start::Kept;
use game::{Entry, Timeline};
use reports::audit::{self, Finding};
use text::desk as words;

/// The screen.
pub fn findings(id: String) -> AnyView {
    once_read(move |items| {
        let record = items.iter().find_map(|item| match &item.source {
            Source::Record(kept) if kept.id == id => Some(kept),
            _ => None,
        });
        record.map_or_else(super::not_here, of_record)
    })
}

fn of_record(kept: &Kept) -> AnyView {
    let timeline = kept.timeline();
    let found = audit::audit(&reading(kept), timeline);
    let id = kept.id.clone();
    let damaged = kept.problems.iter().cloned();
    let damaged = damaged
        .map(|p| view! { <li class="card finding"><p>{p}</p></li> })
        .collect_view();
    let list = found.iter().map(|f| one(f, timeline)).collect_view();
    view! {
        <div class="desk stack">
            <section class="card stack">
                <h2>{text::teams(kept.state())}</h2>
                <p class="tabular">{text::standing(kept.state())}</p>
                <p>{words::found(found.len() + kept.problems.len())}</p>
                <div class="row">
                    {way(text::sheet(), Screen::Sheet { id: id.clone() })}
                    {way(text::log(), Screen::Log { id: id.clone() })}
                    {way(words::review(), Screen::Review { id })}
                </div>
            </section>
            <ol class="desk-findings">
                {damaged}
                {list}
            </ol>
        </div>
    }
    .into_any()
}

fn one(finding: &Finding, timeline: &Timeline) -> AnyView {
    let state = timeline.state();
    let about = finding
        .entry
        .and_then(|n| timeline.entry(n))
        .map(|entry: &Entry| {
            words::about_entry(
                entry.n,
                &text::entry(entry, state),
                &text::clock_time(entry.at.map(device::local_time)),
            )
        });
    view! {
        <li class="card finding">
            <p>{text::audit::finding(finding, state.into())}</p>
            {about.map(|about| view! { <p class="muted">{about}</p> })}
            {finding.what.rule().map(|rule| view! { <p class="muted">{words::rule(rule)}</p> })}
        </li>
    }
    .into_any()
}
