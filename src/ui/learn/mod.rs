//! What there is to learn: the court, the signals, the decisions, the jobs, and care. Read from anywhere; a
//! match that is open stays as it is.

mod board;
mod care;
mod court;
mod decisions;
mod drawings;
mod logbook;
mod match_line;
mod observer;
mod place;
mod practice;
mod roles;
mod signals;
mod sketch;
mod trainer;

use leptos::prelude::*;

use crate::shell::{use_shell, Screen};
use crate::widgets::dialog::Confirm;
use place::Place;

pub use practice::told;
use text::learn as words;

/// The page of an address.
pub fn show(code: &str) -> AnyView {
    let place = Place::of_code(code);
    use_shell().name_lesson(place.name());
    let page = match place {
        Place::Book => book(),
        Place::Court => court::page(),
        Place::Roles => roles::list(),
        Place::Role(role) => roles::one(role),
        Place::ForTheTable => roles::for_the_table(),
        Place::Cares => care::list(),
        Place::Care(care) => care::one(care),
        Place::Decisions => decisions::list(),
        Place::Decision(topic) => decisions::page(topic),
        Place::Signals => signals::all(),
        Place::Signal(signal) => signals::one(signal),
        Place::Trainer => trainer::page(),
        Place::Lesson => trainer::lesson(),
        Place::Practice => practice::page(),
        Place::Compared(id) => practice::compared(&id),
        Place::Observer => observer::list(),
        Place::Watch(id) => observer::watch(&id),
        Place::Notes(id) => observer::notes(&id),
        Place::Logbook => logbook::page(),
        Place::Logged(id) => logbook::one(&id),
        Place::NewGoal => logbook::new_goal(),
    };
    view! {
        {match_line::match_line()}
        <div class="learn stack">{page}</div>
    }
    .into_any()
}

/// What there is.
fn book() -> AnyView {
    let of = vec![
        (words::court(), words::court_more(), Place::Court),
        (words::roles(), words::roles_more(), Place::Roles),
        (text::signals(), text::signals_are(), Place::Signals),
        (
            words::decisions(),
            words::decisions_more(),
            Place::Decisions,
        ),
        (words::trainer(), words::trainer_more(), Place::Trainer),
        (words::practice(), words::practice_more(), Place::Practice),
        (words::observer(), words::observer_more(), Place::Observer),
        (words::logbook(), words::logbook_more(), Place::Logbook),
        (words::care(), words::care_more(), Place::Cares),
    ];
    view! {
        <p>{words::book_more()}</p>
        <p>{words::book_order()}</p>
        {ways(of)}
    }
    .into_any()
}

/// The question before one of several things goes. Copies are the same.
#[derive(Clone, Copy)]
struct OneGoes {
    asking: RwSignal<bool>,
    which: StoredValue<usize>,
}

impl OneGoes {
    fn new() -> OneGoes {
        OneGoes {
            asking: RwSignal::new(false),
            which: StoredValue::new(0),
        }
    }

    /// Asks about the one in this place.
    fn ask(self, place: usize) {
        self.which.set_value(place);
        self.asking.set(true);
    }

    /// The question, with what happens to that one.
    fn question(self, question: &str, yes: &str, go: Callback<usize>) -> AnyView {
        view! {
            <Confirm
                open=self.asking
                question=Signal::stored(question.to_owned())
                yes=Signal::stored(yes.to_owned())
                on_yes=Callback::new(move |()| go.run(self.which.get_value()))
            />
        }
        .into_any()
    }
}

/// Sentences, one below the other.
fn lines(all: Vec<String>) -> AnyView {
    let all = all.into_iter().map(|line| view! { <li>{line}</li> });
    view! { <ul class="lines">{all.collect_view()}</ul> }.into_any()
}

/// Ways to other pages: what each is called, and what is there.
fn ways(to: Vec<(&'static str, &'static str, Place)>) -> AnyView {
    let shell = use_shell();
    let one = |(name, more, place): (&'static str, &'static str, Place)| {
        view! {
            <button
                type="button"
                class="button"
                on:click=move |_| shell.go(Screen::Learn { place: place.code() })
            >
                <strong>{name}</strong>
                {(!more.is_empty()).then(|| view! { <span>{more}</span> })}
            </button>
        }
        .into_any()
    };
    view! { <div class="learn-ways">{to.into_iter().map(one).collect_view()}</div> }.into_any()
}
