//! The briefings of the duty team: read aloud, ticked sentence by sentence.

use leptos::prelude::*;

use super::draft::{self, BRIEFED};
use crate::ui::session::use_session;
use crate::ui::text_before as text;
use crate::ui::text_before::briefing::BRIEFINGS;

/// One for each of the duty team, and the tap that says that all have heard theirs.
#[component]
pub(super) fn Briefings(
    /// All are briefed: called with the number of the entry that says so.
    all: Callback<u32>,
) -> impl IntoView {
    let session = use_session();
    let id = StoredValue::new(untrack(|| session.id()).unwrap_or_default());
    // A letter for each sentence that was read: `x` or `-`.
    let kept = id
        .with_value(|id| draft::kept(id, BRIEFED))
        .unwrap_or_default();
    let ticks = RwSignal::new(kept);
    let first = |role: usize| BRIEFINGS[..role].iter().map(|b| b.1.len()).sum::<usize>();
    let is_read = move |at: usize| ticks.with(|t| t.as_bytes().get(at) == Some(&b'x'));
    let through = move |role: usize| {
        let from = first(role);
        (from..from + BRIEFINGS[role].1.len()).all(is_read)
    };
    let role = RwSignal::new(
        (0..BRIEFINGS.len())
            .find(|&r| !untrack(|| through(r)))
            .unwrap_or(0),
    );
    let tick = move |at: usize, read: bool| {
        ticks.update(|ticks| {
            let end = first(BRIEFINGS.len());
            *ticks = (0..end)
                .map(|i| {
                    let was = ticks.as_bytes().get(i) == Some(&b'x');
                    if (i == at && read) || (i != at && was) {
                        'x'
                    } else {
                        '-'
                    }
                })
                .collect();
            id.with_value(|id| draft::keep(id, BRIEFED, ticks));
        });
    };
    let tab = move |own: usize| {
        view! {
            <button
                type="button"
                class="button team-tab"
                aria-pressed=move || (role.get() == own).to_string()
                on:click=move |_| role.set(own)
            >
                <span class="team-tab-name">{BRIEFINGS[own].0}</span>
                {move || through(own).then(|| view! {
                    <span class="mark-ok">
                        <span aria-hidden="true">"\u{2713}"</span>
                        <span class="visually-hidden">{text::IS_DONE}</span>
                    </span>
                })}
            </button>
        }
    };
    let sentences = move || {
        let own = role.get();
        let one = |(at, words): (usize, &&'static str)| {
            let at = first(own) + at;
            view! {
                <li>
                    <label class="check briefing-line">
                        <input
                            type="checkbox"
                            prop:checked=move || is_read(at)
                            on:change:target=move |ev| tick(at, ev.target().checked())
                        />
                        <span>{*words}</span>
                    </label>
                </li>
            }
        };
        view! {
            <ol class="briefing" aria-label=BRIEFINGS[own].0>
                {BRIEFINGS[own].1.iter().enumerate().map(one).collect_view()}
            </ol>
        }
    };
    let go_on = move || {
        let next = (0..BRIEFINGS.len()).find(|&r| !through(r));
        match next {
            Some(next) if through(role.get()) => Some(
                view! {
                    <button type="button" class="button primary" on:click=move |_| role.set(next)>
                        {text::brief_next(BRIEFINGS[next].0)}
                    </button>
                }
                .into_any(),
            ),
            Some(_) => None,
            None => {
                let expected = session.next();
                Some(
                    view! {
                        <button
                            type="button"
                            class="button primary"
                            on:click=move |_| all.run(expected)
                        >
                            {text::ALL_BRIEFED}
                        </button>
                    }
                    .into_any(),
                )
            }
        }
    };
    view! {
        <p class="muted">{text::READ_ALOUD}</p>
        <div class="pair" role="group" aria-label=text::WHOM>
            {(0..BRIEFINGS.len()).map(tab).collect_view()}
        </div>
        {sentences}
        {go_on}
    }
}
