//! Names, start, hall and rules: what was left for later, or has to be put right.

use leptos::prelude::*;

use super::fields::{Fields, Wrong};
use super::form::{Circumstances, Presets, RulesInDetail, Words};
use crate::session::use_session;
use crate::widgets::icon::{icon_as, Icon};
use crate::widgets::unfold::Unfold;
use app::field::Field;
use game::entry::Amendment;
use game::Kind;
use text::setup as words;

/// The heading of the open match as a form.
#[component]
pub(super) fn MatchDetails() -> impl IntoView {
    let open = RwSignal::new(false);
    view! {
        <section class="card stack match-details">
            <h2>
                <button
                    id="match-details"
                    type="button"
                    class="step-head"
                    aria-expanded=move || open.get().to_string()
                    on:click=move |_| open.update(|o| *o = !*o)
                >
                    <span class="step-name">{words::match_details()}</span>
                    <Chevron />
                </button>
            </h2>
            {move || open.get().then(|| view! { <DetailsForm done=Callback::new(move |()| open.set(false)) with_rules=true /> })}
        </section>
    }
}

/// The arrow of something that opens.
#[component]
pub(super) fn Chevron() -> impl IntoView {
    icon_as("icon chevron", Icon::Unfold)
}

/// The form; after the match without the rules, which are settled then.
#[component]
pub fn DetailsForm(
    /// When it is done.
    done: Callback<()>,
    /// Whether the rules are asked for as well.
    with_rules: bool,
) -> impl IntoView {
    let session = use_session();
    let fields = Fields::new();
    let state = session.state_now();
    let heading = StoredValue::new(state.heading().cloned());
    heading.with_value(|h| h.iter().for_each(|h| fields.take_heading(h)));
    let wrong = RwSignal::new(None::<Wrong>);
    let changed = Callback::new(move |()| wrong.set(None));
    let save = move |expected: u32| {
        let was = heading.get_value();
        match (fields.heading(session.time_now()), was) {
            (Err(trouble), _) => wrong.set(Some(trouble)),
            (Ok(is), Some(was)) => match Amendment::between(&was, &is) {
                Some(given) => {
                    if session.submit_at(expected, Kind::Heading(Box::new(given))) {
                        done.run(());
                    }
                }
                None => done.run(()),
            },
            (Ok(_), None) => done.run(()),
        }
    };
    view! {
        <form
            class="stack"
            autocomplete="off"
            on:submit=move |ev| {
                ev.prevent_default();
                save(session.next());
            }
        >
            <Words fields changed field=Field::NameA />
            <Words fields changed field=Field::NameB />
            <Words fields changed field=Field::Time />
            <Circumstances fields changed />
            {with_rules.then(|| view! {
                <p class="sentence warn">{words::rules_clear_line_ups()}</p>
                <Presets fields changed />
                <Unfold
                    words=words::rules_in_detail()
                    inside=move |()| {
                        view! { <div class="stack"><RulesInDetail fields changed /></div> }.into_any()
                    }
                />
            })}
            {move || wrong.get().map(|(field, say)| view! {
                <p class="sentence bad" role="alert">{words::field_says(field, &say)}</p>
            })}
            <button type="submit" class="button primary">{words::keep_details()}</button>
        </form>
    }
}
