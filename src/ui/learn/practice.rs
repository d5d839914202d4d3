//! A practice match: how it goes, what is told on the court while it is kept, and the comparison afterwards.

use std::cell::RefCell;

use leptos::prelude::*;

use super::lines;
use super::place::Place;
use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::start::Library;
use app::library::Kept;
use app::practice::{Found, LastFound, Practice};
use game::Timeline;
use reports::compare::Comparison;
use text::learn as words;

thread_local! {
    static LAST: RefCell<LastFound> = RefCell::default();
}

/// The practice match of an id.
fn of_id(id: &str) -> Found {
    LAST.with_borrow_mut(|last| last.of_id(id))
}

/// How it goes, and the beginning.
pub fn page() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let library = Library::begin();
    // A second tap, made because storage is slow, begins no second match.
    let begun = RwSignal::new(false);
    let begin = move |_| {
        if begun.get_untracked() {
            return;
        }
        let now = session.time_now();
        // The seed stands in an address, so it is kept short.
        let seed = now.unsigned_abs() / 1000 % 1_000_000;
        let Some(practice) = Practice::from_seed(seed) else {
            shell.news(words::practice_not_kept().to_owned());
            return;
        };
        let id = practice.id(seed, &device::new_id());
        let mut opening = practice.opening;
        for entry in &mut opening {
            entry.at = Some(now);
        }
        begun.set(true);
        let app = library.app();
        device::spawn(async move {
            if app.keep(&id, &opening).await == Kept::Here {
                shell.go(Screen::Play { id });
            } else {
                // The screen may be gone by now.
                begun.try_set(false);
                shell.news(words::practice_not_kept().to_owned());
            }
        });
    };
    view! {
        {lines(words::practice_how().map(str::to_owned).into())}
        <p class="muted">{words::practice_marked()}</p>
        <button type="button" class="button primary" id="practice-begin" on:click=begin>
            {words::practice_begin()}
        </button>
    }
    .into_any()
}

/// Said where this version of the program would tell another set than the one that was begun.
fn changed() -> impl IntoView {
    view! {
        <p class="card" id="practice-changed">
            {words::practice_changed()}
        </p>
    }
}

/// What is told on the court's screen.
pub fn told() -> AnyView {
    let session = use_session();
    let shell = use_shell();
    let Some(id) = untrack(|| session.id()) else {
        return ().into_any();
    };
    let practice = match of_id(&id) {
        Found::Practice(practice) => practice,
        Found::OtherVersion => return changed().into_any(),
        Found::Foreign => return ().into_any(),
    };
    let count = practice.steps.len();
    let step = RwSignal::new(device::settings().drafts(&id).practice_step().min(count));
    let compare_id = id.clone();
    let to = move |next: usize| {
        device::settings().drafts(&id).keep_practice_step(next);
        step.set(next);
    };
    let to = StoredValue::new(to);
    let go = move |next: usize| to.with_value(|to| to(next));
    let said = Memo::new(move |_| {
        let step = step.get();
        let state = session.state();
        match practice.steps.get(step) {
            Some(told) => words::practice_told(told, &state),
            None => words::practice_over().to_owned(),
        }
    });
    let is_over = move || step.get() >= count;
    let place = Place::Compared(compare_id).code();
    view! {
        <section class="practice-told card" id="practice-told">
            <p role="status">
                <span class="muted tabular">
                    {move || words::practice_step((step.get() + 1).min(count), count)}
                </span>
                " "
                {move || said.get()}
            </p>
            <div class="row">
                <button
                    type="button"
                    class="button quiet"
                    disabled=move || step.get() == 0
                    on:click=move |_| go(step.get_untracked().saturating_sub(1))
                >
                    {words::practice_before()}
                </button>
                <button
                    type="button"
                    class="button"
                    id="practice-next"
                    disabled=is_over
                    on:click=move |_| go(step.get_untracked() + 1)
                >
                    {words::practice_next()}
                </button>
                <button
                    type="button"
                    class="button quiet"
                    id="practice-compare"
                    on:click=move |_| shell.go(Screen::Learn { place: place.clone() })
                >
                    {words::practice_compare()}
                </button>
            </div>
        </section>
    }
    .into_any()
}

/// What happened beside what was entered.
pub fn compared(id: &str) -> AnyView {
    let store = use_session().store();
    let shell = use_shell();
    let id = id.to_owned();
    let practice = match of_id(&id) {
        Found::Practice(practice) => practice,
        Found::OtherVersion => return changed().into_any(),
        Found::Foreign => return view! { <p class="card">{words::practice_gone()}</p> }.into_any(),
    };
    let kept = RwSignal::new(None::<Timeline>);
    let of = id.clone();
    device::spawn(async move {
        let found = store.read(&of).await;
        // The screen may be gone by now.
        kept.try_set(Some(Timeline::of(found.merged.entries)));
    });
    // What was told last has been entered by whoever comes here.
    let told = device::settings().drafts(&id).practice_step();
    let shown = move || {
        let Some(timeline) = kept.get() else {
            return view! { <p class="card">{text::loading()}</p> }.into_any();
        };
        if timeline.state().heading().is_none() {
            return view! { <p class="card">{words::practice_gone()}</p> }.into_any();
        }
        result(&practice.compared(told, &timeline))
    };
    let back = move |_| shell.go(Screen::Play { id: id.clone() });
    view! {
        {shown}
        <button type="button" class="button" on:click=back>
            {words::practice_back()}
        </button>
    }
    .into_any()
}

/// What differs, in the order of the match.
fn result(found: &Comparison) -> AnyView {
    let all: Vec<String> = found
        .within()
        .map(|one| words::practice_difference(one, found))
        .collect();
    if all.is_empty() {
        return view! { <p class="card" id="practice-result">{words::practice_same()}</p> }
            .into_any();
    }
    view! {
        <section class="card stack" id="practice-result">
            <p>{words::practice_differs(all.len())}</p>
            {lines(all)}
        </section>
    }
    .into_any()
}
