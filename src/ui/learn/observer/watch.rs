//! While somebody watches: two halves for the score, a button a note, the last tap with its way back.

use leptos::prelude::*;

use super::{not_here, Open};
use crate::learn::place::Place;
use crate::memo::Memo;
use crate::shell::{use_shell, Screen};
use app::thumb::Thumb;
use record::{NoteKind, Observation, MAX_EVENTS};
use rules::Team;
use text::learn as words;

/// The screen.
pub fn watch(id: &str) -> AnyView {
    let Some(open) = Open::of(id) else {
        return not_here();
    };
    // Nobody wants to wake the phone between two rallies.
    let session = open.session;
    session.keep_awake(true);
    on_cleanup(move || {
        // A match that is open here wants it as well.
        let plays = session.state_now().phase().is_under_way();
        session.keep_awake(plays);
    });
    let turned = RwSignal::new(device::settings().sides_are_swapped(id));
    let thumb = StoredValue::new(Thumb::default());
    let standing = Memo::new(move |_| {
        let observed = open.observed.read();
        observed.standing(observed.events.len())
    });
    // The teams change courts after each set (18.2.1).
    let is_turned = Memo::new(move |_| turned.get() != (standing.get().set % 2 == 0));
    let add = move |seen: Observation| {
        let now = open.session.time_now();
        if thumb.try_update_value(|thumb| thumb.counts(&seen, now)) == Some(true) {
            open.change(|observed| {
                observed.add(seen, now);
            });
        }
    };
    let of = id.to_owned();
    let swap = move || {
        turned.update(|turned| *turned = !*turned);
        device::settings().keep_sides_swapped(&of, turned.get_untracked());
    };
    let half = move |side: usize| {
        let team = move || Team::BOTH[usize::from(is_turned.get() != (side == 1))];
        let name = Memo::new(move |_| {
            let team = team();
            open.observed
                .with(|observed| words::observed_team(&observed.teams, team))
        });
        let points = Memo::new(move |_| standing.get().score[team()]);
        let label = move || words::wins_rally(&name.get(), points.get());
        view! {
            <button
                type="button"
                class=move || match team() {
                    Team::A => "watch-half team-a",
                    Team::B => "watch-half team-b",
                }
                id=["watch-left", "watch-right"][side]
                aria-label=label
                on:click=move |_| add(Observation::Rally { won_by: untrack(team) })
            >
                <span>{move || name.get()}</span>
                <strong class="tabular">{move || points.get()}</strong>
            </button>
        }
        .into_any()
    };
    let note = move |kind: NoteKind| {
        let tap = move |_| {
            add(Observation::Note {
                kind,
                words: String::new(),
            });
        };
        view! {
            <button type="button" class="button watch-note" class:good=kind.is_good() on:click=tap>
                {words::note(kind)}
            </button>
        }
        .into_any()
    };
    let last = Memo::new(move |_| {
        let observed = open.observed.read();
        let last = observed.events.last()?;
        Some(words::last_tap(&last.seen, standing.get(), &observed.teams))
    });
    let is_full = Memo::new(move |_| open.observed.read().events.len() >= MAX_EVENTS);
    let undo = move |_| {
        thumb.update_value(Thumb::forget);
        open.change(|observed| {
            observed.undo();
        });
    };
    let shell = use_shell();
    let place = Place::Notes(id.to_owned()).code();
    view! {
        <div class="watch stack">
            <div class="watch-court">{half(0)} {half(1)}</div>
            <div class="watch-line">
                <strong>{move || words::watched_set(standing.get().set)}</strong>
                <button type="button" class="button quiet" on:click=move |_| add(Observation::NewSet)>
                    {words::next_set()}
                </button>
                <button
                    type="button"
                    class="button quiet"
                    on:click=move |_| swap()
                >
                    {words::swap_sides()}
                </button>
            </div>
            <div class="watch-notes">{NoteKind::ALL.map(note).into_iter().collect_view()}</div>
            <div class="watch-last">
                <p role="status">
                    {move || last.get().unwrap_or_else(|| words::nothing_noted().to_owned())}
                </p>
                <button
                    type="button"
                    class="button"
                    id="watch-undo"
                    disabled=move || last.with(Option::is_none)
                    on:click=undo
                >
                    {text::undo()}
                </button>
            </div>
            {move || is_full.get().then(|| view! { <p class="sentence bad" role="alert">{words::notes_full()}</p> })}
            {open.trouble()}
            <button
                type="button"
                class="button"
                id="watch-stop"
                on:click=move |_| shell.go(Screen::Learn { place: place.clone() })
            >
                {words::observer_stop()}
            </button>
        </div>
    }
    .into_any()
}
