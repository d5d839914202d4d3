//! A question with its buttons: numbers, words or whole sentences to choose from. One part for all of
//! them, so that they look, sound and weigh the same.

use leptos::prelude::*;

use crate::memo::Memo;
use crate::session::use_session;
use rules::{Shirt, Team};

/// One button.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// What it shows.
    pub words: String,
    /// What it says to those who do not see it, where that is more.
    pub label: Option<String>,
    /// Why it cannot be chosen now; it is said below before anybody taps it.
    pub why_not: Option<String>,
    /// The place in the order that it stands for.
    pub place: Option<usize>,
    /// A few more words below, on the one that is recommended.
    pub advice: Option<&'static str>,
}

impl Choice {
    /// A button with these words.
    #[must_use]
    pub fn new(words: impl Into<String>) -> Choice {
        Choice {
            words: words.into(),
            label: None,
            why_not: None,
            place: None,
            advice: None,
        }
    }

    /// A shirt number, and what tapping it says.
    #[must_use]
    pub fn number(number: Shirt, label: String) -> Choice {
        Choice {
            label: Some(label),
            ..Choice::new(number.to_string())
        }
    }

    /// The same, unless there is something against it.
    #[must_use]
    pub fn unless(self, why_not: Option<String>) -> Choice {
        Choice { why_not, ..self }
    }
}

/// How the buttons lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layout {
    /// Large numbers in a grid.
    Numbers,
    /// Words, one after the other.
    Row,
    /// Words in a grid.
    Grid,
    /// Longer words, two beside each other where there is room.
    Lines,
}

/// Which of them is chosen; none of them shows that where a tap is all there is to it.
pub type Chosen = Option<Callback<usize, bool>>;

/// The buttons.
pub fn buttons(
    lie: Layout,
    choices: Signal<Vec<Choice>>,
    chosen: Chosen,
    tap: Callback<usize>,
) -> AnyView {
    let (class, each) = match lie {
        Layout::Numbers => ("numbers", "button number tabular"),
        Layout::Row => ("row", "button"),
        Layout::Grid => ("causes", "button cause"),
        Layout::Lines => ("two-abreast", "button"),
    };
    let one = move |(i, choice): (usize, Choice)| {
        view! {
            <button
                type="button"
                class=each
                class:advised=choice.advice.is_some()
                aria-label=choice.label
                aria-pressed=chosen.map(|chosen| move || chosen.run(i).to_string())
                class:barred=choice.why_not.is_some()
                aria-description=choice.why_not
                on:click=move |_| tap.run(i)
            >
                {choice
                    .place
                    .map(|place| {
                        view! {
                            <span class="order-place" aria-hidden="true">
                                {place}
                            </span>
                        }
                    })}
                {choice.words}
                {choice.advice.map(|words| view! { <span class="advice">{words}</span> })}
            </button>
        }
        .into_any()
    };
    let why_not = Memo::new(move |_| choices.with(|choices| reasons(choices)));
    view! {
        <div class=class class:long-words=move || choices.with(|choices| has_long_words(choices))>
            {move || choices.get().into_iter().enumerate().map(one).collect_view()}
        </div>
        {move || {
            let lines = why_not.get();
            (!lines.is_empty()).then(|| lines.into_iter().map(|line| view! { <p class="why-not">{line}</p> }).collect_view())
        }}
    }
    .into_any()
}

/// Longer ones do not fit into a third of a narrow phone.
const LONG_WORD: usize = 11;

fn has_long_words(choices: &[Choice]) -> bool {
    let long = |word: &str| word.chars().count() > LONG_WORD;
    choices
        .iter()
        .any(|choice| choice.words.split([' ', '-']).any(long))
}

/// Each reason once, behind those that it is against; alone where it is against all of them.
fn reasons(choices: &[Choice]) -> Vec<String> {
    let mut said: Vec<(&str, Vec<&str>)> = Vec::new();
    for choice in choices {
        let Some(why) = choice.why_not.as_deref() else {
            continue;
        };
        match said.iter_mut().find(|(known, _)| *known == why) {
            Some((_, words)) => words.push(&choice.words),
            None => said.push((why, vec![&choice.words])),
        }
    }
    let line = |(why, words): (&str, Vec<&str>)| {
        if words.len() == choices.len() {
            why.to_owned()
        } else {
            format!("{}: {why}", words.join(", "))
        }
    };
    said.into_iter().map(line).collect()
}

/// A question, and what it is answered with.
pub fn question(legend: Signal<String>, answers: AnyView) -> AnyView {
    view! {
        <fieldset class="asked">
            <legend>{legend}</legend>
            {answers}
        </fieldset>
    }
    .into_any()
}

/// A question that is always the same.
pub fn asked(legend: &'static str, answers: AnyView) -> AnyView {
    question(Signal::stored(legend.to_owned()), answers)
}

/// Buttons that stay as they are.
pub fn fixed(words: impl IntoIterator<Item = impl Into<String>>) -> Signal<Vec<Choice>> {
    Signal::stored(words.into_iter().map(Choice::new).collect())
}

/// Which team.
pub fn teams(chosen: RwSignal<Option<Team>>) -> AnyView {
    let session = use_session();
    let names = Signal::derive(move || {
        let state = session.state();
        Team::BOTH
            .map(|team| Choice::new(text::team_name(&state, team)))
            .to_vec()
    });
    let is = Callback::new(move |i: usize| chosen.get() == Some(Team::BOTH[i]));
    let tap = Callback::new(move |i: usize| chosen.set(Some(Team::BOTH[i])));
    buttons(Layout::Row, names, Some(is), tap)
}
