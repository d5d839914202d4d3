//! Opening a match: as little as possible is asked, and every field can be left for later.

use leptos::prelude::*;

use super::fields::{Fields, Wrong};
use super::form::{Circumstances, Presets, RulesInDetail, Words};
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::deferred::defer_render;
use crate::widgets::unfold::Unfold;
use app::field::Field;
use rules::Preset;
use text::day_of;
use text::setup as words;

/// Opens a new match.
#[component]
pub fn NewMatch() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let fields = Fields::new();
    fields.take_rules(
        &device::settings()
            .last_rules()
            .unwrap_or(Preset::SchoolJunior.rules()),
    );
    if let Some(lines) = device::settings().new_match_form() {
        fields.take_written(&lines);
    }
    // Nobody means a day that is over; written so, days sort as text.
    let now = session.time_now();
    if fields
        .at(Field::Day)
        .with_untracked(|day| *day < day_of(device::local_time(now)))
    {
        fields.at(Field::Day).set(String::new());
    }
    let more = RwSignal::new(false);
    let wrong = RwSignal::new(None::<Wrong>);
    let not_saved = RwSignal::new(false);
    let changed = Callback::new(move |()| {
        device::settings().keep_new_match_form(&fields.written());
        wrong.set(None);
    });

    let open = move || match fields.heading(session.time_now()) {
        Err(trouble) => {
            more.set(true);
            wrong.set(Some(trouble));
        }
        Ok(heading) => {
            let rules = heading.rules;
            match session.create(heading) {
                Ok(id) => {
                    device::settings().set_last_rules(rules);
                    device::settings().forget_new_match_form();
                    shell.replace(Screen::Before { id });
                }
                Err(_) => not_saved.set(true),
            }
        }
    };

    view! {
        <form
            id="new-match"
            class="new-match stack"
            autocomplete="off"
            on:submit=move |ev| {
                ev.prevent_default();
                open();
            }
        >
            <p class="muted">{words::all_can_wait()}</p>
            <Presets fields changed />
            {defer_render(move || {
                view! {
                    <fieldset class="stack">
                        <legend>{words::teams()}</legend>
                        <Words fields changed field=Field::NameA />
                        <Words fields changed field=Field::NameB />
                    </fieldset>
                    <Words fields changed field=Field::Time />
                    <p class="muted" id="starts" role="status">
                        {move || {
                            let (tomorrow, _) = fields.day_meant(now)?;
                            Some(fields.at(Field::Time).with(|time| words::starts(tomorrow, time)))
                        }}
                    </p>
                    <Unfold
                        words=words::more()
                        open=more
                        inside=move |()| {
                            view! {
                                <div class="stack">
                                    <Circumstances fields changed />
                                    <h2>{words::rules_in_detail()}</h2>
                                    <RulesInDetail fields changed />
                                </div>
                            }
                                .into_any()
                        }
                    />
                    {move || wrong.get().map(|(field, say)| view! {
                        <p class="sentence bad" role="alert">{words::field_says(field, &say)}</p>
                    })}
                    {move || not_saved.get().then(|| view! {
                        <p class="sentence bad" role="alert">{words::not_opened()}</p>
                    })}
                    <button id="open-match" type="submit" class="button primary">{words::open_match()}</button>
                }
                    .into_any()
            })}
        </form>
    }
}
