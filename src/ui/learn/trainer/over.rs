//! The end of a session, and what has been practised on this phone.

use app::learner::Learner;
use learn::Topic;
use leptos::prelude::*;

use super::{Shows, Trainer};
use crate::memo::Memo;
use crate::shell::{use_shell, Screen};
use text::learn as words;

/// More lines than this of what to try are not told: what one remembers.
const TRY: usize = 3;

/// What was measured, and what to try next.
pub fn over(trainer: Trainer) -> AnyView {
    device::scroll_to(0.0);
    let sitting = trainer.sitting.get_untracked();
    let shell = use_shell();
    let to_try = sitting.to_try();
    let nothing = to_try.is_empty();
    let tries = to_try.into_iter().take(TRY).map(|kind| {
        let cause = kind.cause().filter(|cause| Topic::of(*cause).is_some());
        let read = cause.map(|cause| {
            view! {
                <button
                    type="button"
                    class="button"
                    on:click=move |_| shell.go(Screen::decision(cause))
                >
                    {words::read_about()}
                </button>
            }
        });
        view! {
            <li class="trainer-try">
                <span>{words::kind(kind)}</span>
                {read}
            </li>
        }
    });
    view! {
        <h2>{words::done()}</h2>
        <p>{words::went(sitting.scenes.len(), sitting.right())}</p>
        {sitting.median().map(|ms| view! { <p>{words::median(ms)}</p> })}
        <section class="stack">
            <h3>{words::try_next()}</h3>
            {nothing.then(|| view! { <p>{words::nothing_to_try()}</p> })}
            <ul class="stack">{tries.collect_view()}</ul>
        </section>
        <button type="button" class="button primary" on:click=move |_| trainer.begin()>
            {words::once_more()}
        </button>
        {practised(trainer)}
    }
    .into_any()
}

/// Right decisions by kind, and the way to forget it all.
pub fn practised(trainer: Trainer) -> AnyView {
    // What was forgotten with one tap comes back with one, as long as the page is here.
    let forgotten = RwSignal::new(None::<Learner>);
    let forget = move |_| {
        device::settings().forget_learner();
        forgotten.set(Some(trainer.learner.get_untracked()));
        trainer.learner.set(Learner::default());
        request_animation_frame(|| device::focus_if_lost("forgotten"));
    };
    let bring_back = move |_| {
        if let Some(learner) = forgotten.get_untracked() {
            trainer.kept.set(device::settings().keep_learner(&learner));
            trainer.learner.set(learner);
            forgotten.set(None);
        }
    };
    let some = Memo::new(move |_| !trainer.learner.read().is_empty());
    let table = move || {
        let learner = trainer.learner.read();
        let rows = learner.kinds().map(|(kind, known)| {
            view! {
                <tr>
                    <td>{words::kind(kind)}</td>
                    <td class="tabular">{words::right_of(known.right, known.shown)}</td>
                    <td>{words::level(known.level())}</td>
                </tr>
            }
        });
        let rows = rows.collect_view();
        view! {
            <section class="card stack" id="practised">
                <h2>{words::practised()}</h2>
                {learner.median().map(|ms| view! { <p>{words::median(ms)}</p> })}
                <table class="trainer-table">
                    <thead>
                        <tr>
                            <th scope="col">{words::rally()}</th>
                            <th scope="col">{words::right()}</th>
                            <th scope="col">{words::how_close()}</th>
                        </tr>
                    </thead>
                    <tbody>{rows}</tbody>
                </table>
                <p class="muted">{words::practised_stays()}</p>
                <button type="button" class="button quiet" on:click=forget>
                    {words::forget()}
                </button>
            </section>
        }
    };
    view! {
        {move || some.get().then(table)}
        <div role="status" class="row" id="forgotten" tabindex="-1">
            {move || {
                forgotten.read().is_some().then(|| {
                    view! {
                        <span>{words::forgotten()}</span>
                        <button type="button" class="button" on:click=bring_back>
                            {text::undo()}
                        </button>
                    }
                })
            }}
        </div>
    }
    .into_any()
}

impl Trainer {
    /// Ends the session before its time.
    pub fn stops(self) {
        self.shows.set(Shows::Over);
    }
}
