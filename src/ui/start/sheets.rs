//! The matches on this phone: found by words and days, put away, deleted one by one.

use std::sync::Arc;

use leptos::prelude::*;

use super::library::Library;
use super::{export, screen_of};
use crate::memo::Memo;
use crate::shell::{use_shell, Screen};
use crate::widgets::dialog::Confirm;
use crate::widgets::icon::{icon, Icon};
use crate::widgets::text_field::{named, text_field, FieldOptions, InputKind};
use app::stored_match::ListedMatch;
use reports::fits;
use text::setup::library as words;

/// Fewer are found by looking.
const WORTH_FINDING: usize = 4;
/// So many are shown unless more are asked for.
const AT_FIRST: usize = 8;

/// Every match on this phone.
#[component]
pub(super) fn Sheets(library: Library) -> impl IntoView {
    let came = use_shell().imports.came();
    let just_came = move |id: &String| came.read().contains(id);
    let typed = RwSignal::new(String::new());
    let with_archived = RwSignal::new(false);
    let whole = RwSignal::new(false);
    let asked = move || typed.with(|t| !t.trim().is_empty());
    let fit = move |kept: &Arc<ListedMatch>| {
        let of = &kept.summary;
        // The day is asked of the browser only where somebody looks for something.
        let found = !asked() || {
            let day = text::when(of.last_at.map(device::local_time));
            typed.with(|t| {
                fits(
                    &of.words,
                    of.scheduled.as_deref(),
                    &day,
                    t,
                    words::date_words(),
                )
            })
        };
        // What came from outside just now is to be seen, whatever is looked for.
        just_came(&kept.id) || found && (with_archived.get() || !kept.archived)
    };
    let list = move || {
        let Some(all) = library.listed() else {
            return view! { <p class="muted">{text::reading()}</p> }.into_any();
        };
        if all.is_empty() {
            return view! { <p class="muted">{text::no_sheets()}</p> }.into_any();
        }
        let mut fitting: Vec<Arc<ListedMatch>> = all.into_iter().filter(fit).collect();
        if fitting.is_empty() {
            let none = if asked() {
                words::nothing_fits()
            } else {
                words::all_archived()
            };
            return view! { <p class="muted" role="status">{none}</p> }.into_any();
        }
        let count = fitting.len();
        let cut = count > AT_FIRST && !whole.get() && !asked();
        if cut {
            // A few that came stand out wherever they are; a whole backup is looked through as ever.
            let few_came = came.read().len() <= AT_FIRST;
            let mut place = 0;
            fitting.retain(|kept| {
                place += 1;
                place <= AT_FIRST || few_came && just_came(&kept.id)
            });
        }
        view! {
            <ul class="sheets">
                {fitting
                    .into_iter()
                    .map(|kept| {
                        let came = just_came(&kept.id);
                        view! { <SheetLine kept library came /> }
                    })
                    .collect_view()}
            </ul>
            {cut.then(|| view! {
                <button type="button" class="button" on:click=move |_| whole.set(true)>
                    {words::show_all(count)}
                </button>
            })}
        }
        .into_any()
    };
    let count = Memo::new(move |_| library.listed().map_or(0, |all| all.len()));
    let any_archived = Memo::new(move |_| {
        library
            .listed()
            .is_some_and(|all| all.iter().any(|k| k.archived))
    });
    view! {
        <section class="stack" aria-labelledby="sheets">
            <h2 id="sheets">{text::sheets()}</h2>
            {move || (count.get() >= WORTH_FINDING).then(|| {
                text_field("find", named(words::find()), InputKind::Search, typed, FieldOptions::default())
            })}
            {move || any_archived.get().then(|| view! {
                <button
                    type="button"
                    class="button"
                    aria-pressed=move || with_archived.get().to_string()
                    on:click=move |_| with_archived.update(|w| *w = !*w)
                >
                    {words::show_archived()}
                </button>
            })}
            {list}
        </section>
    }
}

/// One match: a tap opens it, everything else is behind a second button.
#[component]
fn SheetLine(
    kept: Arc<ListedMatch>,
    library: Library,
    /// It came from outside just now.
    came: bool,
) -> impl IntoView {
    let shell = use_shell();
    let more = RwSignal::new(false);
    let teams = text::listed_teams(&kept.summary);
    let standing = text::listed_standing(&kept.summary);
    let readable = kept.summary.is_readable;
    let mut about = vec![text::when(kept.summary.last_at.map(device::local_time))];
    if kept.archived {
        about.push(words::is_archived().to_owned());
    }
    if came {
        about.push(words::just_came().to_owned());
    }
    about.retain(|part| !part.is_empty());
    let inside = view! {
        <strong>{teams.clone()}</strong>
        <span class="tabular">{standing}</span>
        <span class="muted">{about.join(", ")}</span>
    };
    let screen = screen_of(&kept.id, &kept.summary);
    let line = if readable {
        view! {
            <button type="button" class="sheet-open" on:click=move |_| shell.go(screen.clone())>
                {inside}
            </button>
        }
        .into_any()
    } else {
        view! { <div class="sheet-open">{inside}</div> }.into_any()
    };
    let problems = kept
        .problems
        .iter()
        .map(|problem| view! { <p class="sentence bad">{text::stored_problem(problem)}</p> })
        .collect_view();
    let kept = StoredValue::new(kept);
    view! {
        <li class="sheet-line">
            <div class="sheet-line-row">
                {line}
                <button
                    type="button"
                    class="bar-button"
                    aria-label=text::of_teams(words::more_of(), &teams)
                    aria-expanded=move || more.get().to_string()
                    on:click=move |_| more.update(|m| *m = !*m)
                >
                    {icon(Icon::More)}
                </button>
            </div>
            {problems}
            {move || more.get().then(|| kept.with_value(|kept| what_else(kept, library)))}
        </li>
    }
}

/// Everything else that can be done with a match.
fn what_else(kept: &ListedMatch, library: Library) -> AnyView {
    let shell = use_shell();
    let asking = RwSignal::new(false);
    let teams = text::listed_teams(&kept.summary);
    let question = words::delete_question(
        &teams,
        &text::listed_standing(&kept.summary),
        kept.summary.last,
    );
    let button = move |what: &'static str, act: Box<dyn Fn()>| {
        view! {
            <button
                type="button"
                class="button"
                aria-label=text::of_teams(what, &teams)
                on:click=move |_| act()
            >
                {what}
            </button>
        }
        .into_any()
    };
    let away = kept.archived;
    let id = StoredValue::new(kept.id.clone());
    let readable = kept.summary.is_readable;
    let over = kept.summary.is_over();
    let export = readable.then(|| {
        let act = move || {
            device::spawn(async move {
                let kept = library.read(&id.get_value()).await;
                export(&kept.log(), kept.state(), kept.unread());
            });
        };
        button(text::export(), Box::new(act))
    });
    let review = over.then(|| {
        let act = move || shell.go(Screen::Review { id: id.get_value() });
        button(words::review(), Box::new(act))
    });
    let away_words = if away {
        words::unarchive()
    } else {
        words::archive()
    };
    let archive = move || library.archive(&[id.get_value()], !away);
    let delete = Callback::new(move |()| library.delete(vec![id.get_value()], |_| ()));
    view! {
        <div class="row">
            {export}
            {review}
            {button(away_words, Box::new(archive))}
            {button(text::delete(), Box::new(move || asking.set(true)))}
        </div>
        <Confirm
            open=asking
            question=Signal::stored(question)
            yes=Signal::stored(text::delete().to_owned())
            on_yes=delete
        />
    }
    .into_any()
}
