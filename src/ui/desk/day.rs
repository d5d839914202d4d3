//! The invented day: brought with one tap, taken away with one.

use leptos::prelude::*;

use super::{button, papers, words};
use crate::record::LineWriter;
use crate::sheet::demo;
use crate::sheet::paper::Draft;
use crate::ui::session::use_session;
use crate::ui::shell::{use_shell, Screen};
use crate::ui::start::Library;

/// The button that brings the invented day, or takes it away.
#[component]
pub fn DemoDay(
    /// The matches on this phone.
    library: Library,
) -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let busy = RwSignal::new(false);
    let journal = session.journal();
    let bring = move || {
        let journal = journal.clone();
        if busy.get_untracked() {
            return;
        }
        busy.set(true);
        leptos::task::spawn_local(async move {
            let day = demo::day();
            let mut kept = papers::put(&day.paper_id, &Draft::of(&day.paper));
            for log in day.logs {
                let mut writer = LineWriter::default();
                let lines: Vec<_> = log.entries.iter().map(|e| (e.n, writer.line(e))).collect();
                kept &= journal.repair(&log.id, &lines).await.is_ok();
            }
            busy.try_set(false);
            shell.news(
                if kept {
                    words::DAY_IS_HERE
                } else {
                    words::DAY_NOT_KEPT
                }
                .to_owned(),
            );
            library.refresh();
            shell.go(Screen::Desk(super::Place::List));
        });
    };
    let take_away = move || {
        papers::ids()
            .iter()
            .filter(|id| demo::is_invented(id))
            .for_each(|id| papers::forget(id));
        let here = untrack(|| library.all()).into_iter().flatten();
        for kept in here.filter(|kept| demo::is_invented(&kept.id)) {
            library.delete(kept.id);
        }
        shell.news(words::DAY_IS_GONE.to_owned());
    };
    let bring = StoredValue::new_local(bring);
    let is_here = move || {
        library
            .all()
            .is_some_and(|all| all.iter().any(|k| demo::is_invented(&k.id)))
    };
    move || {
        if busy.get() {
            view! { <p class="muted" role="status">{words::DAY_COMES}</p> }.into_any()
        } else if is_here() {
            button(words::DAY_TAKE_AWAY, "button", Box::new(take_away))
        } else {
            view! {
                <div class="stack">
                    {button(words::DAY_BRING, "button", Box::new(move || bring.with_value(|b| b())))}
                    <p class="muted">{words::DAY_MORE}</p>
                </div>
            }
            .into_any()
        }
    }
}
