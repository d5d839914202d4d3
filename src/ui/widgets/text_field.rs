//! A field for a line of words, with its name above and what is wrong below.

use leptos::prelude::*;

use crate::memo::Memo;

/// What a field takes, and so which keys the phone shows for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InputKind {
    /// Words, so many letters at most.
    Words(u8),
    /// A whole number.
    Whole,
    /// A number with a point or a comma.
    Decimal,
    /// Words to look for.
    Search,
    /// A day.
    Day,
    /// A time of the day.
    Time,
}

impl InputKind {
    /// Type of the field, keys, most letters.
    fn attributes(self) -> (&'static str, Option<&'static str>, Option<u8>) {
        match self {
            InputKind::Words(most) => ("text", None, Some(most)),
            InputKind::Whole => ("text", Some("numeric"), Some(6)),
            InputKind::Decimal => ("text", Some("decimal"), Some(9)),
            InputKind::Search => ("search", None, Some(80)),
            InputKind::Day => ("date", None, None),
            InputKind::Time => ("time", None, None),
        }
    }
}

/// What else there is to a field.
#[derive(Clone, Copy, Default)]
pub struct FieldOptions {
    /// Called after each letter.
    pub changed: Option<Callback<()>>,
    /// One sentence about what cannot be used as it stands.
    pub wrong: Option<Signal<Option<String>>>,
    /// What else is to be known, below the field.
    pub hint: Option<Signal<String>>,
}

/// The field. `id` names it for the page.
pub fn text_field(
    id: &str,
    label: Signal<String>,
    takes: InputKind,
    value: RwSignal<String>,
    beside: FieldOptions,
) -> AnyView {
    let FieldOptions {
        changed,
        wrong,
        hint,
    } = beside;
    let (kind, keys, most) = takes.attributes();
    let about = format!("{id}-about");
    let trouble = move || wrong.and_then(|wrong| wrong.get());
    let is_wrong = Memo::new(move |_| wrong.is_some_and(|wrong| wrong.with(Option::is_some)));
    let below = (wrong.is_some() || hint.is_some()).then(|| {
        view! {
            <p
                id=about.clone()
                class=move || if is_wrong.get() { "sentence bad" } else { "muted" }
                hidden=move || !is_wrong.get() && hint.is_none_or(|h| h.with(String::is_empty))
            >
                {move || trouble().or_else(|| hint.map(|h| h.get()))}
            </p>
        }
        .into_any()
    });
    let described = below.is_some().then_some(about);
    view! {
        <div class="field">
            <label for=id.to_owned()>{label}</label>
            <input
                id=id.to_owned()
                type=kind
                inputmode=keys
                maxlength=most.map(|most| most.to_string())
                autocomplete="off"
                aria-invalid=move || is_wrong.get().then_some("true")
                aria-describedby=described
                prop:value=value
                on:input:target=move |ev| {
                    value.set(ev.target().value());
                    if let Some(changed) = changed {
                        changed.run(());
                    }
                }
            />
            {below}
        </div>
    }
    .into_any()
}

/// A label that stays as it is.
#[must_use]
pub fn named(label: &str) -> Signal<String> {
    Signal::stored(label.to_owned())
}
