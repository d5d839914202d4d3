//! Every entry in words, the latest first; each can be taken back, none disappears.

use leptos::prelude::*;

use super::last::take_back;
use crate::game::{Kind, Outcome};
use crate::ui::part::dialog::Confirm;
use crate::ui::session::use_session;
use crate::ui::text;

/// One line.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Line {
    n: u32,
    time: String,
    words: String,
    /// The score after it, where it is one of a set.
    score: Option<String>,
    /// What became of it, where that is not plain.
    became: Option<String>,
    standing: bool,
    can_go: bool,
}

/// The list.
#[component]
pub fn LogList() -> impl IntoView {
    let session = use_session();
    let lines = Memo::new(move |_| {
        session.with_replay(|replay| {
            let state = replay.state();
            let mut lines = Vec::new();
            replay.walk(|_, entry, outcome, after| {
                let standing = matches!(outcome, Outcome::Taken | Outcome::Insisted(_));
                lines.push(Line {
                    n: entry.n,
                    time: text::clock_time(entry.at),
                    words: text::entry(&entry.kind, state),
                    score: after
                        .play()
                        .filter(|_| standing)
                        .map(|p| text::score(p.score)),
                    became: text::outcome(outcome, state),
                    standing,
                    can_go: entry.n > 1 && standing && !matches!(entry.kind, Kind::Timer(_)),
                });
            });
            lines.reverse();
            lines
        })
    });
    let asked = RwSignal::new(None::<Line>);
    let open = RwSignal::new(false);
    let question = Signal::derive(move || {
        asked.read().as_ref().map_or_else(String::new, |line| {
            text::take_back_question(line.n, &line.words)
        })
    });
    let go = Callback::new(move |()| {
        if let Some(line) = asked.get_untracked() {
            take_back(session, line.n);
        }
    });
    let may_write = Memo::new(move |_| session.may_write());
    view! {
        <p class="muted">{text::LOG_MORE}</p>
        <ol class="log" reversed=true>
            <For each=move || lines.get() key=|line| (line.n, line.became.clone()) let:line>
                <li class="log-line" class:gone=!line.standing>
                    <span class="log-n tabular">{line.n}</span>
                    <span class="log-words">
                        <span class="log-what">{line.words.clone()}</span>
                        {line.became.clone().map(|words| view! { <span class="muted">{words}</span> })}
                        <span class="muted tabular">
                            {line.time.clone()} " " {line.score.clone()}
                        </span>
                    </span>
                    {(line.can_go && may_write.get())
                        .then(|| {
                            let label = text::take_back_label(line.n, &line.words);
                            let line = line.clone();
                            view! {
                                <button
                                    type="button"
                                    class="button small"
                                    aria-label=label
                                    on:click=move |_| {
                                        asked.set(Some(line.clone()));
                                        open.set(true);
                                    }
                                >
                                    {text::TAKE_BACK}
                                </button>
                            }
                        })}
                </li>
            </For>
        </ol>
        <Confirm open question yes=Signal::stored(text::TAKE_BACK.to_owned()) on_yes=go />
    }
}
