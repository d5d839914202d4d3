//! The pressure of the ball, from whatever gauge there is.

use leptos::prelude::*;

use app::last_used::LastUsed;

use super::check::Found;
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use rules::{Judged, Pressure, Unit};
use text::setup as words;

/// A reading, what it means, and what it is in the other units.
#[component]
pub(super) fn BallPressure(measured: RwSignal<Found>) -> impl IntoView {
    let typed = RwSignal::new(String::new());
    let kept = Unit::from_symbol(&device::settings().last_used(LastUsed::Gauge));
    let unit = RwSignal::new(kept.unwrap_or(Unit::KgfPerCm2));
    let read = move || typed.with(|t| Pressure::read(t, unit.get()));
    let changed = move || {
        let found = untrack(read);
        // A number in the wrong unit says nothing of the ball.
        let found = found.filter(|p| p.meant().is_none());
        measured.set(found.map(|p| (p.judge() == Judged::Within, words::ball_note(p))));
    };
    let choose = move |chosen: Unit| {
        unit.set(chosen);
        device::settings().set_last_used(LastUsed::Gauge, chosen.symbol());
        changed();
    };
    let one = move |own: Unit| {
        let here = move || {
            let found = read().filter(|p| p.unit != own)?;
            Some(format!("= {}", found.to(own).number()))
        };
        view! {
            <button
                type="button"
                class="button gauge-unit"
                aria-pressed=move || (unit.get() == own).to_string()
                on:click=move |_| choose(own)
            >
                <strong>{own.symbol()}</strong>
                <span class="tabular">{words::limits(own)}</span>
                <span class="tabular gauge-is">{here}</span>
            </button>
        }
    };
    let wrong = Signal::derive(move || {
        let unread = typed.with(|t| !t.trim().is_empty()) && read().is_none();
        unread.then(|| words::gauge_form().to_owned())
    });
    let verdict = move || match read() {
        None => ("", String::new()),
        Some(found) => {
            if let Some(unit) = found.meant() {
                return ("sentence warn", words::meant(unit));
            }
            let judged = found.judge();
            let class = match judged {
                Judged::Within => "sentence good",
                Judged::Below | Judged::Above => "sentence bad",
            };
            (class, words::judged(judged).to_owned())
        }
    };
    view! {
        <div class="gauge" role="group" aria-label=words::gauge_unit()>
            {Unit::ALL.map(one).collect_view()}
        </div>
        {text_field(
            "gauge",
            named(words::gauge()),
            InputKind::Decimal,
            typed,
            FieldOptions {
                changed: Some(Callback::new(move |()| changed())),
                wrong: Some(wrong),
                ..FieldOptions::default()
            },
        )}
        <p id="gauge-says" class=move || verdict().0 role="status">{move || verdict().1}</p>
        <details>
            <summary class="button quiet">{words::no_gauge()}</summary>
            <ul class="look-at">
                {words::without_gauge().map(|line| view! { <li>{line}</li> })}
            </ul>
        </details>
    }
}
