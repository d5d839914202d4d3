//! What is kept on this phone as a whole: the room it takes, whether the browser keeps it, the backup,
//! the way into the installed app, and the end of it all.

use leptos::prelude::*;

use super::library::Library;
use crate::memo::Memo;
use crate::session::use_session;
use crate::widgets::dialog::Confirm;
use crate::widgets::give::give;
use app::machine::{StoragePromise, StorageRoom};
use device::{ExportFile, Handed};
use text::day_of;
use text::setup::library as words;

/// Backup, room, promise, move, wipe.
#[component]
pub(super) fn Storage(library: Library) -> impl IntoView {
    let room = RwSignal::new(None::<StorageRoom>);
    let promise = RwSignal::new(None::<StoragePromise>);
    let says = RwSignal::new(String::new());
    let asking = RwSignal::new(false);
    let look = move || {
        device::spawn(async move {
            let (used, kept) = (device::room().await, device::is_kept().await);
            // The screen may be gone by now.
            room.try_set(used);
            promise.try_set(Some(kept));
        });
    };
    // Whenever the list of matches has changed, so has the room.
    Effect::new(move |_| {
        if library.listed().is_some() {
            look();
        }
    });
    let ask = move |_| {
        device::spawn(async move {
            let answer = device::ask_to_keep().await;
            promise.try_set(Some(answer));
        });
    };
    let count = Memo::new(move |_| library.listed().map_or(0, |all| all.len()));
    let wiped = Callback::new(move |whole: bool| {
        says.set(
            if whole {
                words::wiped()
            } else {
                words::not_wiped()
            }
            .to_owned(),
        );
    });
    view! {
        <section class="stack" aria-labelledby="storage">
            <h2 id="storage">{words::backup()}</h2>
            <p class="muted">{words::backup_is()}</p>
            <button
                type="button"
                class="button"
                disabled=move || count.get() == 0 && library.app().on_desk().is_empty()
                on:click=move |_| back_up(library, says)
            >
                {words::make_backup()}
            </button>
            <p class="sentence" role="status">{says}</p>
            <p id="room">{move || words::room(room.get())}</p>
            <p id="promise">{move || promise.get().map(words::kept)}</p>
            {move || (promise.get() == Some(StoragePromise::No)).then(|| view! {
                <button type="button" class="button" on:click=ask>
                    {words::ask_to_keep()}
                </button>
            })}
            <details>
                <summary class="button quiet">{words::move_title()}</summary>
                <ol class="ways">
                    {moving().iter().map(|line| view! { <li>{*line}</li> }).collect_view()}
                </ol>
            </details>
            <button type="button" class="button quiet" on:click=move |_| asking.set(true)>
                {words::wipe()}
            </button>
            <Confirm
                open=asking
                question=Signal::derive(move || words::wipe_question(count.get()))
                yes=Signal::stored(words::wipe().to_owned())
                on_yes=Callback::new(move |()| library.delete_all(wiped))
            />
        </section>
    }
}

/// The way from a tab to the installed app, seen from here.
fn moving() -> &'static [&'static str] {
    if device::is_installed() {
        words::move_installed()
    } else {
        words::move_in_tab()
    }
}

/// Everything in one file.
fn back_up(library: Library, says: RwSignal<String>) {
    let now = use_session().time_now();
    let app = library.app();
    says.set(words::backing_up().to_owned());
    device::spawn(async move {
        let made = match app.backup(now).await {
            Ok(text) => {
                let file = ExportFile {
                    name: words::backup_name(&day_of(device::local_time(now))),
                    mime: "application/json".into(),
                    bytes: text.into_bytes(),
                };
                give(&file).await.map(|handed| (handed, file.name))
            }
            Err(_) => None,
        };
        says.try_set(match made {
            Some((Handed::Shared, _)) => words::backup_made().to_owned(),
            Some((Handed::Downloaded, name)) => text::hand_over::downloaded(&name),
            Some((Handed::Cancelled, _)) | None => words::backup_not_made().to_owned(),
        });
    });
}
