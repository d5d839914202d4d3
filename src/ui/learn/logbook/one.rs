//! One match of the logbook. Everything is kept as it is typed; a record of this phone is written into it when it
//! is opened here first.

use leptos::prelude::*;

use super::{of_record, on_logbook_changed, to, Open};
use crate::learn::place::Place;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::dialog::Confirm;
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use game::Timeline;
use record::{Day, Officiated, SHORT_LETTERS, TALK_LETTERS};
use rules::Duty;
use text::learn as words;

/// What the page shows.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Shows {
    /// It is looked for among the records.
    Looking,
    /// The form.
    Form,
    /// There is no such match.
    Nothing,
}

/// The page.
pub fn one(id: &str) -> AnyView {
    let open = Open::begin();
    let shell = use_shell();
    let id = StoredValue::new(id.to_owned());
    let is_known = move || {
        let id = id.get_value();
        open.logbook
            .with_untracked(|logbook| logbook.of_id(&id).is_some())
    };
    let shows = RwSignal::new(if is_known() {
        Shows::Form
    } else {
        Shows::Looking
    });
    if !is_known() {
        let store = use_session().store();
        device::spawn(async move {
            let of = id.get_value();
            let found = store.read(&of).await;
            let timeline = Timeline::of(found.merged.entries);
            // The screen may be gone by now.
            if shows.try_get_untracked().is_none() {
                return;
            }
            let is_match = timeline.state().heading().is_some();
            if !is_match {
                shows.set(Shows::Nothing);
            } else if open.change(|logbook| logbook.put(of_record(&of, &timeline))) {
                shows.set(Shows::Form);
            } else {
                shell.news(words::logbook_full().to_owned());
                shows.set(Shows::Nothing);
            }
        });
    }
    // What another tab has written comes into the form.
    let elsewhere = RwSignal::new(());
    on_logbook_changed(move || {
        elsewhere.try_set(());
    });
    let shown = move || match shows.get() {
        Shows::Looking => view! { <p class="card">{text::loading()}</p> }.into_any(),
        Shows::Form => {
            elsewhere.track();
            form(open, id)
        }
        Shows::Nothing => nothing(),
    };
    view! { <div class="logbook stack">{shown}</div> }.into_any()
}

fn nothing() -> AnyView {
    let shell = use_shell();
    view! {
        <section class="card stack">
            <p>{words::not_logged()}</p>
            <button
                type="button"
                class="button primary"
                on:click=move |_| to(shell, &Place::Logbook)
            >
                {words::to_logbook()}
            </button>
        </section>
    }
    .into_any()
}

/// How many letters a field takes.
fn letters(most: usize) -> u8 {
    u8::try_from(most).unwrap_or(u8::MAX)
}

/// The form.
fn form(open: Open, id: StoredValue<String>) -> AnyView {
    let id = id.get_value();
    let Some(one) = open
        .logbook
        .with_untracked(|logbook| logbook.of_id(&id).cloned())
    else {
        return nothing();
    };
    let one = StoredValue::new(one);
    let change = move |change: &dyn Fn(&mut Officiated)| {
        open.change(|logbook| one.try_update_value(|one| logbook.change(one, change)));
    };
    let day = RwSignal::new(one.with_value(|one| one.day.as_str().to_owned()));
    let day_wrong = Signal::derive(move || {
        Day::read(&day.read())
            .is_none()
            .then(|| words::logged_day_wrong().to_owned())
    });
    let day_typed = Callback::new(move |()| {
        if let Some(day) = Day::read(&day.read_untracked()) {
            change(&|one| one.day = day.clone());
        }
    });
    let minutes = RwSignal::new(one.with_value(|one| {
        one.minutes
            .map_or_else(String::new, |minutes| minutes.to_string())
    }));
    let read_minutes = |typed: &str| match typed.trim() {
        "" => Some(None),
        typed => typed.parse::<u16>().ok().map(Some),
    };
    let minutes_wrong = Signal::derive(move || {
        read_minutes(&minutes.read())
            .is_none()
            .then(|| words::logged_minutes_wrong().to_owned())
    });
    let minutes_typed = Callback::new(move |()| {
        if let Some(minutes) = read_minutes(&minutes.read_untracked()) {
            change(&|one| one.minutes = minutes);
        }
    });
    let short = move |id: &str, label: &str, of: fn(&mut Officiated) -> &mut String| {
        let value = RwSignal::new(one.with_value(|one| of(&mut one.clone()).clone()));
        let typed = Callback::new(move |()| {
            change(&|one| *of(one) = value.get_untracked());
        });
        let changed = Some(typed);
        text_field(
            id,
            named(label),
            InputKind::Words(letters(SHORT_LETTERS)),
            value,
            FieldOptions {
                changed,
                ..FieldOptions::default()
            },
        )
    };
    let long = move |id: &'static str,
                     label: &'static str,
                     of: fn(&mut Officiated) -> &mut String| {
        let value = one.with_value(|one| of(&mut one.clone()).clone());
        let typed = move |event| {
            let typed: String = event_target_value(&event);
            change(&|one| *of(one) = typed.clone());
        };
        view! {
            <div class="field">
                <label for=id>{label}</label>
                <textarea id=id rows="3" maxlength=TALK_LETTERS.to_string() prop:value=value on:input=typed>
                </textarea>
            </div>
        }
        .into_any()
    };
    let duty = RwSignal::new(one.with_value(|one| one.duty));
    let is = Callback::new(move |i: usize| duty.get() == Duty::ALL[i]);
    let tap = Callback::new(move |i: usize| {
        duty.set(Duty::ALL[i]);
        change(&|one| one.duty = Duty::ALL[i]);
    });
    let duties = fixed(Duty::ALL.map(words::duty));
    view! {
        <section class="card stack">
            <p class="muted">{words::logged_kept()}</p>
            {open.trouble()}
            {text_field(
                "logged-day",
                named(words::logged_day()),
                InputKind::Day,
                day,
                FieldOptions { changed: Some(day_typed), wrong: Some(day_wrong), hint: None },
            )}
            {asked(words::logged_duty(), buttons(Layout::Grid, duties, Some(is), tap))}
            {short("logged-teams", words::logged_teams(), |one| &mut one.teams)}
            {short("logged-level", words::logged_level(), |one| &mut one.level)}
            {text_field(
                "logged-minutes",
                named(words::logged_minutes()),
                InputKind::Whole,
                minutes,
                FieldOptions { changed: Some(minutes_typed), wrong: Some(minutes_wrong), hint: None },
            )}
            {long("logged-talk", words::logged_talk(), |one| &mut one.talk)}
            {long("logged-next", words::logged_next(), |one| &mut one.next)}
        </section>
        {end(open, one.with_value(|one| one.id.clone()))}
    }
    .into_any()
}

/// Back to all of them, and the end of this one.
fn end(open: Open, id: String) -> AnyView {
    let shell = use_shell();
    let asking = RwSignal::new(false);
    let forget = Callback::new(move |()| {
        open.change(|logbook| logbook.remove(&id));
        shell.replace(Screen::Learn {
            place: Place::Logbook.code(),
        });
    });
    view! {
        <button
            type="button"
            class="button primary"
            id="to-logbook"
            on:click=move |_| to(shell, &Place::Logbook)
        >
            {words::to_logbook()}
        </button>
        <button type="button" class="button quiet" on:click=move |_| asking.set(true)>
            {words::logged_delete()}
        </button>
        <Confirm
            open=asking
            question=Signal::stored(words::logged_delete_ask().to_owned())
            yes=Signal::stored(words::logged_delete().to_owned())
            on_yes=forget
        />
    }
    .into_any()
}
