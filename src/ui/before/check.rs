//! A step that is done by looking: what to look at, what was measured, and the way to say that it is
//! not in order, which only somebody's word clears.

use leptos::prelude::*;

use super::ball::BallPressure;
use super::briefing::Briefings;
use super::net::NetHeight;
use crate::game::entry::Check;
use crate::game::{notices, Kind, Notice};
use crate::rules::Step;
use crate::ui::session::use_session;
use crate::ui::text_before as text;

/// What a measure has shown: whether it is in order, and the words for the note.
pub(super) type Found = Option<(bool, String)>;

/// What to look at.
pub(super) fn look_at(step: Step) -> AnyView {
    view! {
        <ul class="look-at">
            {text::look_at(step).iter().map(|line| view! { <li>{*line}</li> }).collect_view()}
        </ul>
    }
    .into_any()
}

/// What to look at, and what is said of it.
#[component]
pub(super) fn CheckCard(step: Step) -> impl IntoView {
    let session = use_session();
    let note = RwSignal::new(String::new());
    let measured = RwSignal::new(Found::None);
    let found = Memo::new(move |_| {
        session
            .state()
            .checks()
            .iter()
            .find(|c| c.item == step.code())
            .cloned()
    });
    let blocks = Memo::new(move |_| {
        notices(&session.state())
            .iter()
            .any(|n| matches!(n, Notice::DoNotStart { item } if item == step.code()))
    });
    let record = move |expected: u32, ok: bool, measured: Option<String>| {
        let typed = note.get_untracked().trim().to_owned();
        let parts: Vec<String> = measured
            .into_iter()
            .chain((!typed.is_empty()).then_some(typed))
            .collect();
        let entered = session.tell_as(
            expected,
            Kind::Check(Check {
                item: step.code().to_owned(),
                ok,
                note: (!parts.is_empty()).then(|| parts.join("; ")),
            }),
        );
        if entered {
            note.set(String::new());
        }
    };
    let field = move |label: &'static str| {
        let id = format!("note-{}", step.code());
        view! {
            <div class="field">
                <label for=id.clone()>{label}</label>
                <input
                    id=id
                    type="text"
                    maxlength="200"
                    autocomplete="off"
                    prop:value=move || note.get()
                    on:input:target=move |ev| note.set(ev.target().value())
                />
            </div>
        }
    };
    let failed = move |found: Check| {
        let empty = move || note.with(|n| n.trim().is_empty());
        let expected = session.next();
        let must_say = blocks.get();
        let clearer = |who: &'static str| {
            view! {
                <button
                    type="button"
                    class="button"
                    on:click=move |_| note.set(format!("{who}: "))
                >
                    {who}
                </button>
            }
        };
        view! {
            <div class="sentence bad do-not-start">
                <strong>{if must_say { text::DO_NOT_START } else { text::NOT_DONE }}</strong>
                {found.note.map(|note| view! { <p>{note}</p> })}
            </div>
            {field(if must_say { text::WHO_CLEARED_IT } else { text::NOTE_OPTIONAL })}
            {must_say.then(|| view! { <div class="row">{text::CLEARERS.map(clearer)}</div> })}
            <button
                type="button"
                class="button"
                disabled=move || must_say && empty()
                on:click=move |_| record(expected, true, None)
            >
                {text::CLEARED}
            </button>
        }
        .into_any()
    };
    let open = move |found: Option<Check>| {
        let expected = session.next();
        view! {
            {found.and_then(|c| c.note).map(|note| view! {
                <p class="mark-ok">{text::cleared_by(&note)}</p>
            })}
            {move || measured.get().map(|(ok, words)| {
                let says = text::measured(ok, &words);
                view! {
                    <button
                        type="button"
                        class="button primary"
                        on:click=move |_| record(expected, ok, Some(words.clone()))
                    >
                        {says}
                    </button>
                }
            })}
            {field(text::WHAT_IS_WRONG)}
            <button type="button" class="button" on:click=move |_| record(expected, false, None)>
                {text::NOT_IN_ORDER}
            </button>
        }
        .into_any()
    };
    let own = match step {
        Step::Ball => view! { <BallPressure measured /> }.into_any(),
        Step::Net => view! { <NetHeight measured /> }.into_any(),
        Step::Briefing => {
            let all = Callback::new(move |expected| record(expected, true, None));
            view! { <Briefings all /> }.into_any()
        }
        Step::Captains => view! {
            <p>
                <strong>{text::WE_PLAY}</strong>
                " "
                {move || text::rules_in_short(session.state().rules())}
            </p>
        }
        .into_any(),
        _ => ().into_any(),
    };
    view! {
        {look_at(step)}
        {own}
        {move || match found.get() {
            Some(check) if !check.ok => failed(check),
            found => open(found),
        }}
    }
}
