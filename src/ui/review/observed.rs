//! What an observer noted, each note beside its point, and the way into the logbook.

use leptos::prelude::*;

use super::{part, sentence};
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use game::Timeline;
use record::Observed;
use reports::observed::{lay, Beside, Laid};
use text::learn as words;

/// Notes that are here, laid beside the open match.
pub fn observed() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let anyway = RwSignal::new(false);
    let shown = move || {
        let all = device::settings().all_notes();
        session.with_timeline(|timeline| {
            let laid = all.into_iter().filter(|observed| !observed.is_empty());
            let laid: Vec<(Observed, Beside)> = laid
                .map(|observed| {
                    let beside = lay(&observed, timeline);
                    (observed, beside)
                })
                .collect();
            let (here, other): (Vec<_>, Vec<_>) =
                laid.into_iter().partition(|(_, beside)| beside.fits());
            let others = !other.is_empty();
            let shows_other = anyway.get();
            let mut shown: Vec<AnyView> = Vec::new();
            if here.is_empty() {
                shown.push(sentence(words::observed_none()));
            }
            let wanted = here
                .into_iter()
                .chain(other.into_iter().filter(|_| shows_other));
            shown.extend(wanted.map(|(observed, beside)| notes(&observed, &beside, timeline)));
            shown.push(
                view! {
                    <button
                        type="button"
                        class="button"
                        id="scan-notes"
                        on:click=move |_| shell.go(Screen::Receive)
                    >
                        {words::observed_scan()}
                    </button>
                }
                .into_any(),
            );
            if others && !shows_other {
                shown.push(
                    view! {
                        <p>{words::observed_other()}</p>
                        <button
                            type="button"
                            class="button quiet"
                            on:click=move |_| anyway.set(true)
                        >
                            {words::observed_anyway()}
                        </button>
                    }
                    .into_any(),
                );
            }
            part(words::observed(), "", shown)
        })
    };
    shown.into_any()
}

/// The notes of one observer.
fn notes(observed: &Observed, beside: &Beside, timeline: &Timeline) -> AnyView {
    let shell = use_shell();
    let began = device::local_time(observed.began);
    let count = beside.notes.len();
    let place = format!("observer/notes/{}", observed.id);
    let all = beside.notes.iter().map(|note| one(note, timeline));
    view! {
        <h3>{words::notes_of(began, &observed.teams, count)}</h3>
        <p class="muted">{words::laid_by(beside)}</p>
        <ol class="lines observed-notes">{all.collect_view()}</ol>
        <button
            type="button"
            class="button quiet"
            on:click=move |_| shell.go(Screen::Learn { place: place.clone() })
        >
            {words::observed_open()}
        </button>
    }
    .into_any()
}

fn one(note: &Laid, timeline: &Timeline) -> AnyView {
    let place = match note.at {
        Some((at, by)) => words::laid_at(at, by),
        None => words::no_place().to_owned(),
    };
    // What the record says of that point.
    let point = note.at.and_then(|(at, _)| {
        let state = timeline.state();
        let entry = timeline.entry(at.entry)?;
        let cause = state
            .said(at.entry)
            .map(|said| text::cause(said.cause, state.rules()));
        let point = text::entered(&entry.kind, state);
        Some(cause.map_or(point.clone(), |cause| format!("{point}: {cause}")))
    });
    let said = note.words.clone();
    view! {
        <li>
            <strong>{words::note(note.kind)}</strong>
            " "
            <span class="tabular">{place}</span>
            {point.map(|point| view! { <span class="muted">" " {point}</span> })}
            {(!said.is_empty()).then(|| view! { <p>{said}</p> })}
        </li>
    }
    .into_any()
}

/// Into the logbook, or to its page there.
pub fn to_logbook() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let id = untrack(|| session.id()).unwrap_or_default();
    let is_there = device::settings().logbook().of_id(&id).is_some();
    let name = if is_there {
        words::log_this_again()
    } else {
        words::log_this()
    };
    let place = format!("logbook/match/{id}");
    view! {
        <button
            type="button"
            class="button"
            id="log-this"
            on:click=move |_| shell.go(Screen::Learn { place: place.clone() })
        >
            {name}
        </button>
    }
    .into_any()
}
