//! Every entry in words, the latest first; each can be taken back, none disappears.

use leptos::html;
use leptos::prelude::*;

use super::last::take_back;
use super::reasons::of_entry;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::deferred::render_in_batches;
use crate::widgets::dialog::Drawer;
use crate::widgets::log_lines::{log_lines, LogLine};
use game::Kind;

/// So many lines are built between two frames; the first of them fill a screen.
const AT_A_TIME: usize = 16;

/// The list.
#[component]
pub fn LogList() -> impl IntoView {
    let session = use_session();
    let lines = Memo::new(move |_| {
        session.with_timeline(|replay| {
            let mut lines = log_lines(replay);
            // What cannot be read stands in its place; of what counts unproved the entry says so.
            for damage in session.damage() {
                let words = text::line_damage(&damage);
                match lines.iter_mut().find(|line| line.n == damage.n) {
                    Some(line) => line.doubt = Some(words),
                    None => lines.push(LogLine {
                        n: damage.n,
                        words,
                        became: None,
                        time: String::new(),
                        score: None,
                        standing: false,
                        can_go: false,
                        rally: false,
                        quiet: false,
                        doubt: None,
                    }),
                }
            }
            rules::sort_by_key(&mut lines, |line| std::cmp::Reverse(line.n));
            lines
        })
    });
    let asked = RwSignal::new(None::<LogLine>);
    let open = RwSignal::new(false);
    let question = Signal::derive(move || {
        asked
            .read()
            .as_ref()
            .map_or_else(String::new, |line| text::undo_question(line.n, &line.words))
    });
    let why = RwSignal::new(false);
    let button =
        move |words: &'static str, label: String, line: &LogLine, opens: RwSignal<bool>| {
            let line = line.clone();
            view! {
                <button
                    type="button"
                    class="button small"
                    aria-label=label
                    on:click=move |_| {
                        asked.set(Some(line.clone()));
                        opens.set(true);
                    }
                >
                    {words}
                </button>
            }
            .into_any()
        };
    let which = Signal::derive(move || {
        asked
            .read()
            .as_ref()
            .map_or_else(String::new, |line| text::reason_of(line.n, &line.words))
    });
    let may_write = Memo::new(move |_| session.may_write());
    let built = render_in_batches(move || lines.read().len(), AT_A_TIME);
    view! {
        <p class="muted">{text::log_more()}</p>
        <ol class="log" reversed=true>
            <For each=move || lines.get().into_iter().take(built.get()) key=|line| (line.n, line.became.clone()) let:line>
                <li class="log-line" class:gone=!line.standing class:quiet=line.quiet>
                    <span class="log-n tabular">{line.n}</span>
                    <span class="log-words">
                        <span class="log-what">{line.words.clone()}</span>
                        {line.became.clone().map(|words| view! { <span class="muted">{words}</span> })}
                        <span class="muted tabular">
                            {line.time.clone()} " " {line.score.clone()}
                        </span>
                        {line.doubt.clone().map(|words| view! { <span class="log-doubt">{words}</span> })}
                    </span>
                    {(may_write.get() && line.can_go).then(|| {
                        let rally = line.rally.then(|| {
                            let label = text::reason_of(line.n, &line.words);
                            button(text::reason(), label, &line, why)
                        });
                        let label = text::undo_label(line.n, &line.words);
                        let back = button(text::undo(), label, &line, open);
                        view! { <span class="log-buttons">{rally} {back}</span> }
                    })}
                </li>
            </For>
        </ol>
        <Drawer open title=question>
            {move || asked.get().map(|line| view! { <TakingBack entry=line.n open /> })}
        </Drawer>
        <Drawer open=why title=which>
            {move || asked.get().map(|line| of_entry(line.n))}
        </Drawer>
    }
}

/// What changes when an entry is taken back, and why it is, where somebody says so.
#[component]
fn TakingBack(entry: u32, open: RwSignal<bool>) -> impl IntoView {
    let session = use_session();
    let field = NodeRef::<html::Input>::new();
    let follows = Memo::new(move |_| {
        session.with_timeline(|_| ());
        let strike = Kind::Strike { entry, why: None };
        match session.preview(&strike) {
            Ok(after) => session
                .with_untracked(|before| text::changes(before, &after, text::ScoreOrder::Marked)),
            Err(why) => vec![text::refusal(&why, (&*session.state_now()).into())],
        }
    });
    let go = move || {
        let why = field.get_untracked().map(|input| input.value());
        let why = why.map(|w| w.trim().to_owned()).filter(|w| !w.is_empty());
        open.set(false);
        take_back(session, entry, why);
    };
    view! {
        <h3>{text::what_follows()}</h3>
        <ul class="follows" id="follows">
            {move || follows.get().into_iter().map(|line| view! { <li>{line}</li> }).collect_view()}
        </ul>
        <form
            class="stack"
            on:submit=move |event| {
                event.prevent_default();
                go();
            }
        >
            <label class="field">
                <span>{text::strike_why()}</span>
                <input type="text" id="strike-why" maxlength="200" node_ref=field />
            </label>
            <div class="row">
                <button type="submit" class="button primary">
                    {text::undo()}
                </button>
                <button type="button" class="button" on:click=move |_| open.set(false)>
                    {text::leave_it()}
                </button>
            </div>
        </form>
    }
}
