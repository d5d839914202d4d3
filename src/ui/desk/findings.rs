//! What is to be looked at in one record, in words, with the way to the entry or the box that it is about.

use leptos::prelude::*;

use super::matches::weight_mark;
use super::record::go_once_there;
use super::state::reading;
use super::work::Work;
use super::{way, Place};
use crate::shell::Screen;
use crate::widgets::paper_sheet::box_id;
use app::stored_match::StoredMatch;
use game::{Entry, Timeline};
use reports::audit::{self, Finding, Spot};
use reports::Weight;
use text::desk as words;
use text::desk_work as more;

/// The findings, beside the record or alone.
pub fn findings(work: Work, kept: &StoredMatch) -> AnyView {
    let shell = work.shell;
    let timeline = kept.timeline();
    let mut found = audit::audit(&reading(kept), timeline);
    // The heaviest first; what weighs the same stays in the order of the log.
    rules::sort_by_key(&mut found, Finding::weight);
    let count = found.len() + kept.problems.len();
    let damaged = kept.problems.iter().map(|problem| {
        view! {
            <li class="card finding">
                {weight_mark(Weight::Result)}
                <p>{text::stored_problem(problem)}</p>
            </li>
        }
    });
    let damaged = damaged.collect_view();
    let each = found.iter().map(|found| one(work, kept, found));
    let each = each.collect_view();
    let id = StoredValue::new(kept.id.clone());
    let (title, standing) = (text::teams(kept.state()), text::standing(kept.state()));
    let head = move || {
        if shell.is_wide() {
            return view! { <h2 id="desk-found" tabindex="-1">{words::findings()}</h2> }.into_any();
        }
        let id = id.get_value();
        view! {
            <h2 id="desk-found" tabindex="-1">{title.clone()}</h2>
            <p class="tabular">{standing.clone()}</p>
            <div class="row">
                {way(text::sheet(), Screen::Sheet { id: id.clone() })}
                {way(text::log(), Screen::Log { id: id.clone() })}
                {way(words::review(), Screen::Review { id })}
            </div>
        }
        .into_any()
    };
    view! {
        <aside class="desk-found stack" aria-labelledby="desk-found">
            <section class="card stack">
                {head}
                <p>{more::found(count)}</p>
            </section>
            <ol class="desk-findings">
                {damaged}
                {each}
            </ol>
        </aside>
    }
    .into_any()
}

fn one(work: Work, kept: &StoredMatch, finding: &Finding) -> AnyView {
    let timeline: &Timeline = kept.timeline();
    let state = timeline.state();
    let entry = finding.entry.and_then(|n| timeline.entry(n));
    let about = entry.map(|entry: &Entry| {
        words::about_entry(
            entry.n,
            &text::entry(entry, state),
            &text::clock_time(entry.at.map(device::local_time)),
        )
    });
    let to = finding.spot(timeline).map(|spot| {
        let id = kept.id.clone();
        let (say, place, target) = match spot {
            Spot::Entry(n) => (
                more::show_entry(n),
                Place::Log(id, Some(n)),
                format!("entry-{n}"),
            ),
            Spot::Box(of) => (more::show_box(of), Place::Sheet(id, Some(of)), box_id(of)),
        };
        let tap = move |_| {
            work.show(place.clone());
            // It may be looked at already.
            go_once_there(target.clone());
        };
        view! {
            <button type="button" class="button quiet" on:click=tap>
                {say}
            </button>
        }
    });
    view! {
        <li class="card finding">
            {weight_mark(finding.weight())}
            <p>{text::audit::finding(finding, state.into())}</p>
            {about.map(|about| view! { <p class="muted">{about}</p> })}
            {finding.what.rule().map(|rule| view! { <p class="muted">{words::rule(rule)}</p> })}
            {to}
        </li>
    }
    .into_any()
}
