//! Opening a match: as little as possible is asked, and every field can be left for later.

use leptos::prelude::*;

use super::draft;
use super::fields::{all_sets, day_of, sets_code, Field, Fields, Wrong};
use crate::game::entry::Heading;
use crate::game::Kind;
use crate::rules::{ByTeam, Preset, Rules};
use crate::ui::session::use_session;
use crate::ui::shell::{use_shell, Screen};
use crate::ui::text_before as text;

/// Under this name the half-filled form is kept.
const NEW: &str = "new";
/// Under this name the rules of the last match are kept, in the words of the match file.
const LAST_RULES: &str = "last-rules";

/// The presets on offer; a tally is opened on the start screen.
const OFFERED: [Preset; 3] = [
    Preset::SchoolJunior,
    Preset::SchoolSenior,
    Preset::International,
];

fn last_rules() -> Option<Rules> {
    match draft::unwritten(&draft::kept(NEW, LAST_RULES)?)? {
        Kind::Match(heading) => Some(heading.rules),
        _ => None,
    }
}

fn remember_rules(rules: Rules) {
    let nameless = Heading {
        competition: None,
        division: None,
        venue: None,
        court: None,
        match_no: None,
        scheduled: None,
        names: ByTeam::default(),
        rules,
    };
    draft::keep_entry(NEW, LAST_RULES, Kind::Match(Box::new(nameless)));
}

/// Opens a new match.
#[component]
pub fn NewMatch() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let fields = Fields::new();
    let today = day_of(session.clock().stamp());
    fields.take_rules(&last_rules().unwrap_or(Preset::SchoolJunior.rules()));
    if let Some(lines) = draft::kept(NEW, "form") {
        fields.take_written(&lines);
    }
    // Nobody means a day that is over; written so, days sort as text.
    if fields.at(Field::Day).with_untracked(|day| *day < today) {
        fields.at(Field::Day).set(today);
    }
    let more = RwSignal::new(false);
    let wrong = RwSignal::new(None::<Wrong>);
    let not_saved = RwSignal::new(false);
    let changed = Callback::new(move |()| {
        draft::keep(NEW, "form", &fields.written());
        wrong.set(None);
    });

    let open = move || match fields.heading() {
        Err(trouble) => {
            more.set(true);
            wrong.set(Some(trouble));
        }
        Ok(heading) => {
            let rules = heading.rules;
            match session.create(heading) {
                Ok(id) => {
                    remember_rules(rules);
                    draft::drop(NEW, "form");
                    shell.replace(Screen::Before { id });
                }
                Err(_) => not_saved.set(true),
            }
        }
    };

    let preset = move |preset: Preset| {
        let chosen = Signal::derive(move || fields.at(Field::Preset).with(|p| p == preset.code()));
        let choose = move |_| {
            fields.take_rules(&preset.rules());
            changed.run(());
        };
        view! {
            <label class="choice" class:chosen=chosen>
                <input type="radio" name="preset" prop:checked=chosen on:change=choose />
                <span class="choice-name">{text::preset(preset)}</span>
                <span class="muted">{text::preset_is_for(preset)}</span>
            </label>
        }
    };
    let summary = move || match fields.rules() {
        Ok(rules) => text::rules_in_short(&rules),
        Err(_) => text::RULES_NOT_USABLE.to_owned(),
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
            <p class="muted">{text::ALL_CAN_WAIT}</p>
            <fieldset class="stack">
                <legend>{text::RULES}</legend>
                {OFFERED.map(preset).collect_view()}
                <p class="muted" id="rules-in-short">{summary}</p>
            </fieldset>
            <fieldset class="stack">
                <legend>{text::TEAMS}</legend>
                <Words fields changed field=Field::NameA />
                <Words fields changed field=Field::NameB />
            </fieldset>
            <Words fields changed field=Field::Time kind="time" />
            <details prop:open=move || more.get()>
                <summary class="button">{text::MORE}</summary>
                <div class="stack">
                    <Words fields changed field=Field::Day kind="date" />
                    <Words fields changed field=Field::Competition />
                    <Words fields changed field=Field::Division />
                    <Words fields changed field=Field::Hall />
                    <Words fields changed field=Field::Court />
                    <Words fields changed field=Field::MatchNumber />
                    <h2>{text::RULES_IN_DETAIL}</h2>
                    <Details fields changed />
                </div>
            </details>
            {move || wrong.get().map(|(field, say)| view! {
                <p class="sentence bad" role="alert">{text::field_says(field, &say)}</p>
            })}
            {move || not_saved.get().then(|| view! {
                <p class="sentence bad" role="alert">{text::NOT_OPENED}</p>
            })}
            <button id="open-match" type="submit" class="button primary">{text::OPEN_MATCH}</button>
        </form>
    }
}

/// A field for words, a number, a day or a time, with what is wrong with it beside it.
#[component]
fn Words(
    fields: Fields,
    changed: Callback<()>,
    field: Field,
    #[prop(default = "text")] kind: &'static str,
    /// Digits are wanted.
    #[prop(optional)]
    number: bool,
) -> impl IntoView {
    let value = fields.at(field);
    let trouble = Memo::new(move |_| fields.trouble(field));
    let id = format!("field-{}", text::field_id(field));
    let says = format!("{id}-says");
    view! {
        <div class="field">
            <label for=id.clone()>{text::field(field)}</label>
            <input
                id=id
                type=kind
                inputmode=number.then_some("numeric")
                maxlength="80"
                aria-invalid=move || trouble.with(Option::is_some).then_some("true")
                aria-describedby=says.clone()
                prop:value=move || value.get()
                on:input:target=move |ev| {
                    value.set(ev.target().value());
                    changed.run(());
                }
            />
            <p id=says class="sentence bad" hidden=move || trouble.with(Option::is_none)>
                {move || trouble.get()}
            </p>
        </div>
    }
}

/// A field with fixed choices.
#[component]
fn Choice(
    fields: Fields,
    changed: Callback<()>,
    field: Field,
    /// Value and words of each.
    choices: Vec<(String, String)>,
) -> impl IntoView {
    let value = fields.at(field);
    let id = format!("field-{}", text::field_id(field));
    let options = choices
        .into_iter()
        .map(|(code, words)| {
            let own = code.clone();
            view! {
                <option value=code prop:selected=move || value.with(|v| *v == own)>{words}</option>
            }
        })
        .collect_view();
    view! {
        <div class="field">
            <label for=id.clone()>{text::field(field)}</label>
            <select
                id=id
                on:change:target=move |ev| {
                    value.set(ev.target().value());
                    changed.run(());
                }
            >
                {options}
            </select>
        </div>
    }
}

/// Every rule that a competition may set for itself.
#[component]
fn Details(fields: Fields, changed: Callback<()>) -> impl IntoView {
    let sets = all_sets()
        .map(|s| (sets_code(s), text::sets(s)))
        .collect::<Vec<_>>();
    let words = |codes: &[&str], say: fn(&str) -> String| {
        codes
            .iter()
            .map(|code| ((*code).to_owned(), say(code)))
            .collect::<Vec<_>>()
    };
    let number = move |field| view! { <Words fields changed field number=true /> };
    view! {
        <Choice fields changed field=Field::Sets choices=sets />
        {[Field::Target, Field::Lead, Field::Cap].map(number).collect_view()}
        {[
            Field::DeciderTarget,
            Field::DeciderLead,
            Field::DeciderCap,
            Field::ChangeCourts,
            Field::TimeOuts,
            Field::TimeOutSeconds,
        ]
            .map(number)
            .collect_view()}
        <Choice
            fields
            changed
            field=Field::Policy
            choices=words(&["same-place", "paired", "free"], text::policy)
        />
        {[Field::Substitutions, Field::Entries].map(number).collect_view()}
        <Choice
            fields
            changed
            field=Field::Liberos
            choices=words(&["0", "1", "2"], text::liberos)
        />
        <Choice
            fields
            changed
            field=Field::OnCourt
            choices=words(&["6", "5", "4", "0"], text::on_court)
        />
        {[Field::ListMost, Field::LowestNumber, Field::HighestNumber].map(number).collect_view()}
        <Choice
            fields
            changed
            field=Field::WarmUp
            choices=words(&["separate", "shared"], text::warm_up_style)
        />
        {[Field::WarmUpMinutes, Field::Interval, Field::ServiceSeconds].map(number).collect_view()}
        <Choice
            fields
            changed
            field=Field::UnderNet
            choices=words(&["standard", "junior"], text::under_net)
        />
        <Choice
            fields
            changed
            field=Field::Edition
            choices=words(&["2025", "2021"], text::edition)
        />
    }
}
