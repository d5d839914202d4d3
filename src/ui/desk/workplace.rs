//! Everything on the desk, and what of it is open: beside each other where there is room, else one after the other.

use leptos::prelude::*;

use super::cards::cards;
use super::filter_bar::{filter_bar, search_field};
use super::key_list::key_list;
use super::matches::{beside, matches};
use super::record::opened;
use super::state::View;
use super::tools::tools;
use super::work::{Done, Work};
use super::{button, day, DemoDay, Place};
use crate::macrotask_executor::once_drawn;
use crate::memo::Memo;
use crate::shell::Screen;
use crate::start::Import;
use crate::widgets::dialog::Confirm;
use reports::paper::Draft;
use rules::Preset;
use text::desk as words;
use text::desk_work as more;

/// How the matches are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Layout {
    /// They are all that shows.
    Whole(View),
    /// Beside what is open.
    Beside,
    /// Only what is open shows.
    Hidden,
}

/// The screen.
pub fn workplace() -> AnyView {
    let work = Work::begin();
    let Work {
        desk, shell, place, ..
    } = work;
    let open = Memo::new(move |_| place.read().open_id().map(str::to_owned));
    Effect::new(move |_| {
        if let Some(id) = open.get() {
            desk.at.set(Some(id));
        }
    });
    Effect::new(move |_| {
        desk.chosen.track();
        work.refused.set(None);
    });
    // The page itself scrolls back where it draws another screen.
    Effect::new(move |before: Option<()>| {
        place.track();
        if before.is_some() {
            once_drawn(move || shell.scroll_back());
        }
    });
    let keys = StoredValue::new_local(device::on_key(move |press| work.key(&press)));
    on_cleanup(move || {
        keys.try_update_value(|keys| *keys = device::Listeners::default());
    });
    let layout = Memo::new(move |_| match (open.read().is_some(), shell.is_wide()) {
        (false, _) => Layout::Whole(desk.view()),
        (true, true) => Layout::Beside,
        (true, false) => Layout::Hidden,
    });
    view! {
        <div
            class="desk"
            class:stack=move || layout.get() != Layout::Beside
            class:panes=move || layout.get() == Layout::Beside
        >
            {move || match layout.get() {
                Layout::Whole(view) => whole(work, view),
                Layout::Beside => view! {
                    <nav class="desk-beside stack" aria-label=more::matches()>
                        {search_field(desk)}
                        {beside(work)}
                    </nav>
                }
                .into_any(),
                Layout::Hidden => ().into_any(),
            }}
            {opened(work, open)}
        </div>
        <Confirm
            open=work.asked
            question=Signal::derive(move || work.delete_question())
            yes=Signal::stored(more::delete().to_owned())
            on_yes=Callback::new(move |()| work.delete())
        />
        {key_list(work)}
    }
    .into_any()
}

/// The matches alone, with all that can be done with them.
fn whole(work: Work, view: View) -> AnyView {
    let Work { desk, library, .. } = work;
    let key_in = move || {
        let id = device::new_id();
        if desk.put_paper(&id, &Draft::new(Preset::SchoolJunior)) {
            work.shell.go(Screen::Desk(Place::Paper(id)));
        } else {
            work.shell.news(words::sheet_not_begun().to_owned());
        }
    };
    let has_any = Memo::new(move |_| desk.has_any());
    let list = move || match has_any.get() {
        None => {
            let reading = move || match desk.progress.get() {
                Some((read, all)) => more::reading(read, all),
                None => text::reading().to_owned(),
            };
            view! { <p class="muted" role="status">{reading}</p> }.into_any()
        }
        Some(false) => view! { <p class="card">{words::nothing_here()}</p> }.into_any(),
        Some(true) => view! {
            {move || desk.rows().and_then(|rows| day::tour(desk, &rows))}
            {filter_bar(work, view)}
            {match view {
                View::Cards => cards(work),
                View::Table => matches(work),
            }}
            {tools(work)}
        }
        .into_any(),
    };
    view! {
        <div class="desk-in">
            <Import library others=app::desk::take_in />
            <section class="stack">
                <h2>{words::from_paper()}</h2>
                {button(words::key_in(), "button", Box::new(key_in))}
                <p class="muted">{words::key_in_more()}</p>
            </section>
            <section class="stack">
                <h2>{words::look_around()}</h2>
                <DemoDay library />
            </section>
        </div>
        {move || done(work)}
        {list}
    }
    .into_any()
}

/// What was done last, with the way back.
fn done(work: Work) -> Option<AnyView> {
    let done = work.done.get()?;
    let can_undo = !matches!(done, Done::ForGood(_));
    let said = match done {
        Done::Deleted { title, .. } => words::deleted(&title),
        Done::Archived { ids, away: true } => more::archived(ids.len()),
        Done::Archived { ids, away: false } => more::restored(ids.len()),
        Done::ForGood(said) => said,
    };
    Some(
        view! {
            <div class="sentence row" role="status" id="desk-done" tabindex="-1">
                <p>{said}</p>
                {can_undo.then(|| button(words::give_back(), "button", Box::new(move || work.undo())))}
            </div>
        }
        .into_any(),
    )
}
