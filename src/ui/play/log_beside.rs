//! The latest entries in words, beside the court where there is room for them.

use std::collections::BTreeMap;

use leptos::prelude::*;

use super::court::use_court;
use crate::memo::Memo;
use crate::session::use_session;
use crate::shell::{use_shell, Screen};
use game::{Kind, Outcome};

/// So many entries: more than any screen shows at once, and few enough for every tap.
const LATEST: usize = 24;

/// One line.
#[derive(Clone, PartialEq, Eq, Hash)]
struct Line {
    n: u32,
    words: String,
    /// The score that it led to.
    score: Option<String>,
    struck: bool,
}

/// The lines, the latest first.
#[component]
pub(super) fn LogBeside() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let court = use_court();
    let lines = Memo::new(move |_| {
        // As the halves stand, like the score above.
        let left = court.team_at(true);
        session.with_timeline(|replay| {
            let state = replay.state();
            let play = state.shown();
            let scores: BTreeMap<u32, _> =
                rules::gather(play.into_iter().flat_map(|p| p.scores_by_entry()));
            let entries = replay.entries();
            let latest = replay.outcomes().skip(entries.len().saturating_sub(LATEST));
            let mut lines: Vec<Line> = latest
                .filter(|(entry, _)| !matches!(entry.kind, Kind::Timer(_)))
                .map(|(entry, outcome)| Line {
                    n: entry.n,
                    words: text::entry(entry, state),
                    score: scores.get(&entry.n).map(|score| score.from_left(left)),
                    struck: matches!(outcome, Outcome::Struck(_) | Outcome::Refused(_)),
                })
                .collect();
            lines.reverse();
            lines
        })
    });
    let to_log = move |_| {
        if let Some(id) = session.id() {
            shell.go(Screen::Log { id });
        }
    };
    view! {
        <section class="log-beside" aria-labelledby="log-beside">
            <div class="log-beside-head">
                <h2 id="log-beside">{text::log()}</h2>
                <button type="button" class="button quiet" on:click=to_log>
                    {text::whole_log()}
                </button>
            </div>
            <ol class="log-lines" reversed=true>
                <For each=move || lines.get() key=Clone::clone let:line>
                    <li class="log-beside-line" class:gone=line.struck>
                        <span class="log-what">{line.words}</span>
                        {line.score.map(|score| view! { <b class="tabular">{score}</b> })}
                    </li>
                </For>
            </ol>
        </section>
    }
}
