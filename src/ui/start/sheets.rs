//! The matches on this phone: found by words, put away, deleted one by one.

use leptos::prelude::*;

use super::kept::Kept;
use super::library::Library;
use super::{export, screen_of};
use crate::sheet::fits;
use crate::ui::part::dialog::Confirm;
use crate::ui::shell::use_shell;
use crate::ui::text;
use crate::ui::text_before::library as words;

/// Fewer are found by looking.
const WORTH_FINDING: usize = 4;

/// Every match on this phone.
#[component]
pub(super) fn Sheets(library: Library) -> impl IntoView {
    let typed = RwSignal::new(String::new());
    let with_archived = RwSignal::new(false);
    let shown = move |kept: &Kept| {
        let found = typed.with(|t| fits(kept.state(), &text::when(kept.last_at), t));
        found && (with_archived.get() || !kept.archived)
    };
    let list = move || {
        let Some(all) = library.all() else {
            return view! { <p class="muted">{text::READING}</p> }.into_any();
        };
        if all.is_empty() {
            return view! { <p class="muted">{text::NO_SHEETS}</p> }.into_any();
        }
        let none = if typed.with(|t| t.trim().is_empty()) {
            words::ALL_ARCHIVED
        } else {
            words::NOTHING_FITS
        };
        let lines: Vec<_> = all
            .into_iter()
            .filter(shown)
            .map(|kept| view! { <SheetLine kept library /> })
            .collect();
        if lines.is_empty() {
            view! { <p class="muted" role="status">{none}</p> }.into_any()
        } else {
            view! { <ul class="sheets">{lines}</ul> }.into_any()
        }
    };
    let count = Memo::new(move |_| library.all().map_or(0, |all| all.len()));
    let any_archived = Memo::new(move |_| {
        library
            .all()
            .is_some_and(|all| all.iter().any(|k| k.archived))
    });
    view! {
        <section class="stack" aria-labelledby="sheets">
            <h2 id="sheets">{text::SHEETS}</h2>
            {move || (count.get() >= WORTH_FINDING).then(|| view! {
                <div class="field">
                    <label for="find">{words::FIND}</label>
                    <input
                        id="find"
                        type="search"
                        maxlength="80"
                        autocomplete="off"
                        prop:value=move || typed.get()
                        on:input:target=move |ev| typed.set(ev.target().value())
                    />
                </div>
            })}
            {move || any_archived.get().then(|| view! {
                <button
                    type="button"
                    class="button"
                    aria-pressed=move || with_archived.get().to_string()
                    on:click=move |_| with_archived.update(|w| *w = !*w)
                >
                    {words::SHOW_ARCHIVED}
                </button>
            })}
            {list}
        </section>
    }
}

#[component]
fn SheetLine(kept: Kept, library: Library) -> impl IntoView {
    let shell = use_shell();
    let asking = RwSignal::new(false);
    let teams = text::teams(kept.state());
    let standing = text::standing(kept.state());
    let question = words::delete_question(&teams, &standing, kept.entries().len());
    let away = kept.archived;
    let readable = kept.state().heading().is_some();
    let label = |what: &str| text::of_teams(what, &teams);
    let problems = kept
        .problems
        .iter()
        .map(|problem| view! { <p class="sentence bad">{text::problem(problem)}</p> })
        .collect_view();
    let about = view! {
        <div class="sheet-line-words">
            <strong>{teams.clone()}</strong>
            <span class="tabular">{standing}</span>
            <span class="muted">
                {text::when(kept.last_at)}
                {away.then(|| format!(", {}", words::IS_ARCHIVED))}
            </span>
        </div>
    };
    let away_words = if away {
        words::UNARCHIVE
    } else {
        words::ARCHIVE
    };
    let (label_open, label_export) = (label(text::OPEN), label(text::EXPORT));
    let (label_away, label_delete) = (label(away_words), label(text::DELETE));
    let kept = StoredValue::new(kept);
    let open = move |_| shell.go(kept.with_value(screen_of));
    let hand_over = move |_| kept.with_value(|kept| export(&kept.log(), kept.state()));
    let delete = Callback::new(move |()| library.delete(kept.with_value(|k| k.id.clone())));
    let put_away = move |_| kept.with_value(|k| library.put_away(&k.id, !away));
    view! {
        <li class="card sheet-line">
            {about}
            {problems}
            <div class="row">
                {readable.then(|| view! {
                    <button type="button" class="button" aria-label=label_open on:click=open>
                        {text::OPEN}
                    </button>
                    <button type="button" class="button" aria-label=label_export on:click=hand_over>
                        {text::EXPORT}
                    </button>
                })}
                <button type="button" class="button quiet" aria-label=label_away on:click=put_away>
                    {away_words}
                </button>
                <button
                    type="button"
                    class="button quiet"
                    aria-label=label_delete
                    on:click=move |_| asking.set(true)
                >
                    {text::DELETE}
                </button>
            </div>
            <Confirm
                open=asking
                question=Signal::stored(question)
                yes=Signal::stored(text::DELETE.to_owned())
                on_yes=delete
            />
        </li>
    }
}
