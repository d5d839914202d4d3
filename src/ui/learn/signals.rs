//! Every official signal, to look through, to find and to learn: a list, a page for each, and one drawing
//! after the other whose meaning is asked first. Nobody counts what was known.

use super::place::Place;
use super::ways;
use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use crate::widgets::deferred::render_in_batches;
use crate::widgets::picker::{asked, buttons, fixed, Layout};
use crate::widgets::signal_figure::{figure_of, Seen, SignalFigure};
use learn::Topic;
use leptos::prelude::*;
use rules::{FlagSignal, Signal as Sign, Team};
use text::learn as words;

/// From one drawing to the next, so that neighbours of the list do not follow each other; it has no
/// divisor with their number in common, so each comes once.
const STRIDE: usize = 11;

/// So many are drawn between two frames; the first of them fill a screen.
const AT_A_TIME: usize = 8;

/// The list, with a field to find one.
pub fn all() -> AnyView {
    let session = use_session();
    let quizzed = RwSignal::new(None::<usize>);
    let typed = RwSignal::new(String::new());
    let list = move || {
        view! {
            <p>{text::signals_more()}</p>
            {search(typed)}
            {results(typed)}
            <button
                type="button"
                class="button primary"
                id="learn"
                // Each time another one to begin with.
                on:click=move |_| {
                    let at = session.time_now().unsigned_abs() % Sign::ALL.len() as u64;
                    quizzed.set(Some(at as usize));
                }
            >
                {text::learn_one_by_one()}
            </button>
            {flags()}
        }
        .into_any()
    };
    view! {
        <div class="stack signals">
            {move || match quizzed.get() {
                Some(first) => one_by_one(first, quizzed),
                None => list(),
            }}
        </div>
    }
    .into_any()
}

/// The field, and examples of what can be typed.
fn search(typed: RwSignal<String>) -> AnyView {
    let example = |words: &'static str| {
        view! {
            <button type="button" class="button small" on:click=move |_| typed.set(words.to_owned())>
                {words}
            </button>
        }
        .into_any()
    };
    view! {
        <label class="field" for="find-signal">
            {words::find()}
            <input
                id="find-signal"
                type="search"
                autocomplete="off"
                placeholder=words::find_hint()
                prop:value=typed
                on:input=move |event| typed.set(event_target_value(&event))
            />
        </label>
        <div class="row examples">{words::find_examples().map(example).into_iter().collect_view()}</div>
    }
    .into_any()
}

/// What was found, the likeliest first; all of them while nothing is typed.
fn results(typed: RwSignal<String>) -> AnyView {
    let found = Memo::new(move |_| words::find_signals(&typed.read()));
    let built = render_in_batches(|| Sign::ALL.len(), AT_A_TIME);
    view! {
        <p role="status" class="muted" id="found">
            {move || found.read().is_empty().then_some(words::find_nothing())}
        </p>
        <ul class="signal-list">
            <For
                each=move || found.get().into_iter().take(built.get())
                key=|sign| *sign
                children=line
            />
        </ul>
    }
    .into_any()
}

/// One of the list.
fn line(sign: Sign) -> AnyView {
    let shell = use_shell();
    view! {
        <li>
            <button
                type="button"
                class="signal-line"
                on:click=move |_| shell.go(Screen::Learn { place: Place::Signal(sign).code() })
            >
                <SignalFigure signal=sign mirrored=false moves=false />
                <span>
                    <span class="muted tabular">{sign.number()}</span>
                    " "
                    {text::signal(sign)}
                </span>
            </button>
        </li>
    }
    .into_any()
}

/// The flags; each says all about itself.
fn flags() -> AnyView {
    view! {
        <h2>{words::flags()}</h2>
        {list_of_flags(&FlagSignal::ALL)}
    }
    .into_any()
}

/// Some flags, each with its drawing.
pub fn list_of_flags(flags: &[FlagSignal]) -> AnyView {
    let one = |flag: &FlagSignal| {
        let seen = Seen {
            mirrored: false,
            behind: false,
        };
        view! {
            <li class="card flag">
                {figure_of(flag.movement(), seen, true)}
                <div>
                    <h3>
                        <span class="tabular">{flag.number()}</span>
                        " "
                        {words::flag(*flag)}
                    </h3>
                    <p>{words::flag_how(*flag)}</p>
                </div>
            </li>
        }
        .into_any()
    };
    view! { <ul class="flags">{flags.iter().map(one).collect_view()}</ul> }.into_any()
}

/// Some signals, each with its drawing and the way to its page.
pub fn list_of(signals: &[Sign]) -> AnyView {
    let lines = signals.iter().copied().map(line);
    view! { <ul class="signal-list">{lines.collect_view()}</ul> }.into_any()
}

/// How a signal is looked at.
#[derive(Clone, Copy)]
struct Looked {
    /// In a mirror, from the front, from behind.
    view: RwSignal<usize>,
    /// Whether it is about the team on the referee's right.
    right: RwSignal<bool>,
    again: RwSignal<()>,
}

impl Looked {
    fn begin() -> Looked {
        Looked {
            view: RwSignal::new(0),
            right: RwSignal::new(false),
            again: RwSignal::new(()),
        }
    }

    /// The drawings have the side concerned on the left, as in a mirror; whoever stands in front of the
    /// referee has it on the other side.
    fn drawing(self, sign: Sign) -> AnyView {
        self.again.track();
        let view = self.view.get();
        let seen = Seen {
            mirrored: self.right.get() != (view == 1),
            behind: view == 2,
        };
        figure_of(sign.movement(), seen, true)
    }

    fn meaning(self, sign: Sign) -> AnyView {
        // Team A stands for the side concerned.
        let left = if self.right.get() { Team::B } else { Team::A };
        view! {
            <h2>
                <span class="tabular">{sign.number()}</span>
                " "
                {text::signal(sign)}
            </h2>
            <p>{text::signal_how(sign)}</p>
            {text::signal_for(sign).map(|words| view! { <p>{words}</p> })}
            {words::mistake(sign)
                .map(|words| {
                    view! {
                        <p>
                            <strong>{words::mistake_label()}</strong>
                            " "
                            {words}
                        </p>
                    }
                })}
            <p class="muted">{text::arm(sign.arm(Team::A, left))} " · " {text::signal_by(sign)}</p>
        }
        .into_any()
    }

    fn tools(self) -> AnyView {
        let Looked { view, right, again } = self;
        let seen = Callback::new(move |i: usize| view.get() == i);
        let look = Callback::new(move |i: usize| view.set(i));
        let side = Callback::new(move |i: usize| right.get() == (i == 1));
        let about = Callback::new(move |i: usize| right.set(i == 1));
        view! {
            {asked(words::seen_from(), buttons(Layout::Grid, fixed(words::views()), Some(seen), look))}
            {asked(words::at_fault(), buttons(Layout::Grid, fixed(words::sides()), Some(side), about))}
            <div class="row">
                <button type="button" class="button" on:click=move |_| again.set(())>
                    {text::again()}
                </button>
            </div>
        }
        .into_any()
    }
}

/// The page of one.
pub fn one(sign: Sign) -> AnyView {
    let looked = Looked::begin();
    let to: Vec<_> = Topic::of_signal(sign)
        .map(|topic| {
            (
                words::topic(topic),
                words::topic_more(topic),
                Place::Decision(topic),
            )
        })
        .collect();
    let decided = (!to.is_empty()).then(|| {
        view! {
            <h3>{words::decided_by()}</h3>
            {ways(to)}
        }
    });
    view! {
        <div class="stack signals">
            <div class="signal-look">
                {move || looked.drawing(sign)}
                <div class="signal-meaning">{move || looked.meaning(sign)}</div>
            </div>
            {looked.tools()}
            {decided}
        </div>
    }
    .into_any()
}

/// One drawing after the other, large, its name hidden at first.
fn one_by_one(first: usize, quizzed: RwSignal<Option<usize>>) -> AnyView {
    use_shell().opened.while_here(move || {
        quizzed.set(None);
        true
    });
    device::scroll_to(0.0);
    let index = RwSignal::new(first);
    let named = RwSignal::new(false);
    let looked = Looked::begin();
    let sign = move || Sign::ALL[index.get()];
    let on = move |_| {
        if named.get_untracked() {
            named.set(false);
            index.update(|i| *i = (*i + STRIDE) % Sign::ALL.len());
        } else {
            named.set(true);
        }
    };
    view! {
        <div class="signal-look">
            {move || looked.drawing(sign())}
            <div class="signal-meaning" role="status">
                {move || {
                    if named.get() {
                        looked.meaning(sign())
                    } else {
                        view! { <h2>{text::hidden_signal()}</h2> }.into_any()
                    }
                }}
            </div>
        </div>
        <button type="button" class="button primary" id="on" on:click=on>
            {move || if named.get() { text::next_signal() } else { text::show_name() }}
        </button>
        {looked.tools()}
        <button type="button" class="button" on:click=move |_| quizzed.set(None)>
            {text::all_signals()}
        </button>
    }
    .into_any()
}
