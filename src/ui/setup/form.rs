//! The parts of the forms for a match: fields with what is wrong beside them.

use leptos::prelude::*;

use super::fields::{all_sets, sets_code, Fields};
use crate::memo::Memo;
use crate::widgets::deferred::render_in_batches;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use app::field::Field;
use rules::Preset;
use text::setup as words;

/// The presets on offer; a tally is opened on the start screen.
const OFFERED: [Preset; 3] = [
    Preset::SchoolJunior,
    Preset::SchoolSenior,
    Preset::International,
];

/// The presets, and the rules in short as they stand in the fields.
#[component]
pub(super) fn Presets(fields: Fields, changed: Callback<()>) -> impl IntoView {
    let preset = move |preset: Preset| {
        let chosen = Signal::derive(move || fields.at(Field::Preset).with(|p| p == preset.code()));
        let choose = move |_| {
            fields.take_rules(&preset.rules());
            changed.run(());
        };
        view! {
            <label class="choice" class:picked=chosen>
                <input type="radio" name="preset" prop:checked=chosen on:change=choose />
                <span class="choice-name">{words::preset(preset)}</span>
                <span class="muted">{words::preset_is_for(preset)}</span>
            </label>
        }
    };
    let summary = move || match fields.rules() {
        Ok(rules) => words::rules_in_short(&rules),
        Err(_) => words::rules_not_usable().to_owned(),
    };
    // The rules of the last match are the next one's, also where somebody had changed them: under the name of the
    // preset alone nobody would see that.
    let differs = Memo::new(move |_| {
        let rules = fields.rules().ok()?;
        (rules != rules.preset.rules()).then_some(rules.preset)
    });
    let changed_rules = move || {
        differs.get().map(|preset| {
            let restore = move |_| {
                fields.take_rules(&preset.rules());
                changed.run(());
            };
            view! {
                <div class="sentence warn row" id="rules-differ">
                    <span>{words::rules_differ(preset)}</span>
                    <button type="button" class="button" on:click=restore>
                        {words::standard_rules()}
                    </button>
                </div>
            }
        })
    };
    view! {
        <fieldset class="stack">
            <legend>{words::rules()}</legend>
            {OFFERED.map(preset).collect_view()}
            {changed_rules}
            <p class="muted" id="rules-in-short">{summary}</p>
        </fieldset>
    }
}

/// Everything about the match that is not a rule, but for the names and the time.
#[component]
pub(super) fn Circumstances(fields: Fields, changed: Callback<()>) -> impl IntoView {
    view! {
        <Words fields changed field=Field::Day />
        <Words fields changed field=Field::Competition />
        <Words fields changed field=Field::Division />
        <Words fields changed field=Field::Hall />
        <Words fields changed field=Field::Court />
        <Words fields changed field=Field::MatchNumber />
    }
}

/// A field for words, a number, a day or a time, with what is wrong with it below it.
#[component]
pub(super) fn Words(fields: Fields, changed: Callback<()>, field: Field) -> impl IntoView {
    let takes = match field {
        Field::Day => InputKind::Day,
        Field::Time => InputKind::Time,
        _ if field.is_number() => InputKind::Whole,
        _ => InputKind::Words(80),
    };
    let wrong = field
        .is_number()
        .then(|| Signal::derive(move || fields.trouble(field)));
    text_field(
        &format!("field-{}", words::field_id(field)),
        named(words::field(field)),
        takes,
        fields.at(field),
        FieldOptions {
            changed: Some(changed),
            wrong,
            hint: match field {
                Field::Day => Some(words::day_empty()),
                _ => words::source(field),
            }
            .map(named),
        },
    )
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
    let id = format!("field-{}", words::field_id(field));
    let about = format!("{id}-about");
    let source = words::source(field);
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
            <label for=id.clone()>{words::field(field)}</label>
            <select
                id=id
                aria-describedby=source.map(|_| about.clone())
                on:change:target=move |ev| {
                    value.set(ev.target().value());
                    changed.run(());
                }
            >
                {options}
            </select>
            {source.map(|source| view! { <p id=about class="muted">{source}</p> })}
        </div>
    }
}

/// So many rules are built between two frames.
const AT_A_TIME: usize = 6;

/// The values of a rule that has only a few, each with its words.
fn choices(rule: Field) -> Option<Vec<(String, String)>> {
    let worded = |codes: &[&str], say: fn(&str) -> String| {
        let one = |code: &&str| ((*code).to_owned(), say(code));
        Some(codes.iter().map(one).collect())
    };
    match rule {
        Field::Sets => Some(all_sets().map(|s| (sets_code(s), words::sets(s))).collect()),
        Field::Policy => worded(&["same-place", "paired", "free"], words::policy),
        Field::Liberos => worded(&["0", "1", "2"], words::liberos),
        Field::OnCourt => worded(&["6", "5", "4", "0"], words::on_court),
        Field::WarmUp => worded(&["separate", "shared"], words::warm_up_style),
        Field::UnderNet => worded(&["standard", "junior"], words::under_net),
        Field::Edition => worded(&["2025", "2021"], words::edition),
        _ => None,
    }
}

/// Every rule that a competition may set for itself.
#[component]
pub(super) fn RulesInDetail(fields: Fields, changed: Callback<()>) -> impl IntoView {
    Effect::new(move |last: Option<Option<u16>>| fields.halve(last.flatten()));
    let built = render_in_batches(|| Field::rules().count(), AT_A_TIME);
    let one = move |field: Field| match choices(field) {
        Some(choices) => view! { <Choice fields changed field choices /> }.into_any(),
        None => view! { <Words fields changed field /> }.into_any(),
    };
    view! {
        <For
            each=move || Field::rules().take(built.get())
            key=|field| words::field_id(*field)
            children=one
        />
    }
}
