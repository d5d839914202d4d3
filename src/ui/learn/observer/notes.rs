//! What was noted: words to each note, the code and the file for the referee, and the end of it.

use leptos::prelude::*;

use super::{not_here, team_fields, Open};
use crate::hand_over::Codes;
use crate::learn::place::Place;
use crate::learn::OneGoes;
use crate::memo::Memo;
use crate::shell::{use_shell, Screen};
use crate::widgets::dialog::Confirm;
use crate::widgets::give::hand_over;
use device::{local_time, ExportFile};
use record::{note_frames, NoteKind, NOTE_LETTERS};
use rules::{ByTeam, Team};
use text::learn as words;

/// The page.
pub fn notes(id: &str) -> AnyView {
    let Some(open) = Open::of(id) else {
        return not_here();
    };
    let names = ByTeam::new(|team| {
        RwSignal::new(
            open.observed
                .with_untracked(|observed| observed.teams[team].clone()),
        )
    });
    let renamed = Callback::new(move |()| {
        open.change(|observed| {
            for team in Team::BOTH {
                observed.call(team, &names[team].get_untracked());
            }
        });
    });
    // The list is built anew where a note goes, not where words come.
    let places = Memo::new(move |_| {
        let observed = open.observed.read();
        observed
            .notes()
            .map(|(place, kind, _)| (place, kind))
            .collect::<Vec<_>>()
    });
    let going = OneGoes::new();
    let list = move || {
        let all = places.get();
        if all.is_empty() {
            return view! { <p>{words::nothing_noted()}</p> }.into_any();
        }
        let all = all
            .into_iter()
            .map(|(place, kind)| note(open, going, place, kind));
        view! { <ol class="noted">{all.collect_view()}</ol> }.into_any()
    };
    let count = move || words::note_count(places.read().len());
    let shell = use_shell();
    let go_on = Place::Watch(id.to_owned()).code();
    view! {
        <button
            type="button"
            class="button"
            on:click=move |_| shell.go(Screen::Learn { place: go_on.clone() })
        >
            {words::observer_go_on()}
        </button>
        <section class="card stack">
            <h2>{count}</h2>
            {list}
            {open.trouble()}
        </section>
        {given(open)}
        <section class="card stack">
            <h2>{words::observer_teams()}</h2>
            {team_fields(names, Some(renamed))}
        </section>
        {end(open)}
        {going.question(
            words::note_remove_ask(),
            words::note_remove(),
            Callback::new(move |place| open.change(|observed| observed.remove(place))),
        )}
    }
    .into_any()
}

/// One of them.
fn note(open: Open, going: OneGoes, place: usize, kind: NoteKind) -> AnyView {
    let (standing, at, said) = open.observed.with_untracked(|observed| {
        let event = &observed.events[place];
        let said = observed.notes().find(|(of, ..)| *of == place);
        (
            observed.standing(place),
            observed.began + i64::from(event.at) * 1000,
            said.map_or_else(String::new, |(.., said)| said.to_owned()),
        )
    });
    let id = format!("note-{place}");
    // Who listens hears which note a field or a button is of.
    let about = format!("noted-{place}");
    let typed = move |event| {
        let said = event_target_value(&event);
        open.change(|observed| observed.say(place, &said));
    };
    view! {
        <li class="noted-one" class:good=kind.is_good()>
            <p id=about.clone()>
                <strong>{words::note(kind)}</strong>
                <span class="muted tabular">{words::noted_at(standing, local_time(at))}</span>
            </p>
            <div class="field">
                <label for=id.clone()>{words::note_words()}</label>
                <input
                    id=id
                    aria-describedby=about.clone()
                    type="text"
                    autocomplete="off"
                    maxlength=NOTE_LETTERS.to_string()
                    prop:value=said
                    on:input=typed
                />
            </div>
            <button
                type="button"
                class="button quiet"
                aria-describedby=about
                on:click=move |_| going.ask(place)
            >
                {words::note_remove()}
            </button>
        </li>
    }
    .into_any()
}

/// To the phone of the referee.
fn given(open: Open) -> AnyView {
    let texts = Callback::new(move |digits| {
        let packed = open.observed.with_untracked(record::Observed::pack);
        // What the fields take always packs.
        note_frames(&packed.unwrap_or_default(), digits)
    });
    let file = move |_| {
        let observed = open.observed.get_untracked();
        hand_over(ExportFile {
            name: words::notes_file(&text::day_of(local_time(observed.began))),
            mime: "application/json".into(),
            bytes: observed.write().into_bytes(),
        });
    };
    // Whatever changes in the notes makes a code that is shown an old one.
    let shown = move || {
        (!open.observed.read().is_empty()).then(|| {
            view! {
                <section class="card stack">
                    <h2>{words::notes_hand_over()}</h2>
                    <p>{words::notes_hand_over_more()}</p>
                    <Codes texts />
                    <button type="button" class="button" id="notes-file" on:click=file>
                        {words::notes_file_label()}
                    </button>
                </section>
            }
        })
    };
    shown.into_any()
}

/// Forgets them after a question.
fn end(open: Open) -> AnyView {
    let shell = use_shell();
    let asking = RwSignal::new(false);
    let forget = move |()| {
        open.observed
            .with_untracked(|observed| device::settings().forget_notes(&observed.id));
        shell.replace(Screen::Learn {
            place: Place::Observer.code(),
        });
    };
    view! {
        <button type="button" class="button quiet" on:click=move |_| asking.set(true)>
            {words::notes_delete()}
        </button>
        <Confirm
            open=asking
            question=Signal::stored(words::notes_delete_ask().to_owned())
            yes=Signal::stored(words::notes_delete().to_owned())
            on_yes=Callback::new(forget)
        />
    }
    .into_any()
}
