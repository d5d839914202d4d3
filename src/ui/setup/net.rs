//! The height of the net: what it must be, and what was measured.

use leptos::prelude::*;

use app::last_used::LastUsed;

use super::check::Found;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use rules::{Height, Measured, MEN, WOMEN};
use text::setup as words;

/// The height for the age group, and the measures against it.
#[component]
pub(super) fn NetHeight(measured: RwSignal<Found>) -> impl IntoView {
    let typed = RwSignal::new(device::settings().last_used(LastUsed::Net));
    let own = RwSignal::new(typed.with_untracked(|t| {
        let height = Height::read(t);
        height.is_some() && height != Some(MEN) && height != Some(WOMEN)
    }));
    let wanted = move || typed.with(|t| Height::read(t));
    let places = [(); 3].map(|()| RwSignal::new(String::new()));
    let heights = move || places.map(|p| p.with(|t| Height::read(t)));
    let faults = move || {
        let [middle, left, right] = heights();
        let measured = Measured {
            middle,
            sides: [left, right],
        };
        Some(measured.judge(wanted()?))
    };
    let changed = move || {
        let found = untrack(|| {
            let any = heights().iter().any(Option::is_some);
            let (wanted, faults) = (wanted()?, faults()?);
            any.then(|| {
                (
                    faults.is_empty(),
                    words::net_note(wanted, heights(), &faults),
                )
            })
        });
        measured.set(found);
    };
    let take = move || {
        typed.with_untracked(|text| {
            if Height::read(text).is_some() {
                device::settings().set_last_used(LastUsed::Net, text);
            }
        });
        changed();
    };
    let class = move |words: String, height: Option<Height>| {
        let chosen = move || match height {
            Some(_) => !own.get() && wanted() == height,
            None => own.get(),
        };
        view! {
            <label class="choice" class:picked=chosen>
                <input
                    type="radio"
                    name="net-class"
                    prop:checked=chosen
                    on:change=move |_| {
                        own.set(height.is_none());
                        typed.set(height.map(Height::metres).unwrap_or_default());
                        take();
                    }
                />
                <span class="choice-name">{words}</span>
            </label>
        }
    };
    let field = |id: &str, label, value: RwSignal<String>, changed: Callback<()>| {
        let wrong = Signal::derive(move || {
            let unread = value.with(|v| !v.trim().is_empty() && Height::read(v).is_none());
            unread.then(|| words::net_form().to_owned())
        });
        let beside = FieldOptions {
            changed: Some(changed),
            wrong: Some(wrong),
            ..FieldOptions::default()
        };
        text_field(id, named(label), InputKind::Decimal, value, beside)
    };
    let measure = move |place: usize| {
        let changed = Callback::new(move |()| changed());
        field(
            &format!("net-{place}"),
            words::net_places()[place],
            places[place],
            changed,
        )
    };
    let verdict = move || match faults() {
        Some(faults) if faults.is_empty() && heights()[0].is_some() => {
            ("sentence good", words::net_right().to_owned())
        }
        Some(faults) if !faults.is_empty() => ("sentence bad", words::net_faults(&faults) + "."),
        _ => ("", String::new()),
    };
    view! {
        <fieldset class="stack">
            <legend>{words::net_height()}</legend>
            <div class="heights">
                {class(words::net_class("Men", MEN), Some(MEN))}
                {class(words::net_class("Women", WOMEN), Some(WOMEN))}
                {class(words::net_own().to_owned(), None)}
            </div>
            <p class="muted">{words::net_ages()}</p>
            {move || own.get().then(|| {
                field("net-own", words::net_own_height(), typed, Callback::new(move |()| take()))
            })}
        </fieldset>
        <fieldset>
            <legend>{words::net_measured()}</legend>
            <div class="thirds">
                {[0, 1, 2].map(measure)}
            </div>
        </fieldset>
        <p id="net-says" class=move || verdict().0 role="status">{move || verdict().1}</p>
    }
}
