//! The whole page: what is begun once, and the screen between the bar and what lies over it.

use leptos::prelude::*;

use super::bar::{heading, Bar};
use super::warnings::{go_on, Warnings};
use super::{use_shell, Screen, Shell, ROOMY, WIDE};
use crate::desk::Desk;
use crate::language::Languages;
use crate::memo::Memo;
use crate::parts::Parts;
use crate::play::Court;
use crate::screens;
use crate::session::{use_session, Saved, Session};
use crate::start::remember_open_match;
use crate::widgets::deferred::after_the_frame;
use crate::widgets::dialog::Confirm;
use crate::widgets::refusal::RefusalSheet;

/// Puts the page into the document. Called once.
pub fn mount(languages: Languages) {
    leptos::mount::mount_to_body(move || view! { <Frame languages /> });
}

/// The whole page.
#[component]
fn Frame(languages: Languages) -> impl IntoView {
    provide_context(languages);
    let session = Session::begin();
    let shell = Shell::begin(session);
    provide_context(session);
    provide_context(shell);
    shell.hold_version();
    remember_open_match(session);
    provide_context(Court::begin());
    provide_context(Desk::begin());
    let parts = Parts::begin();
    provide_context(parts);
    parts.load_all_soon();

    let screen = shell.screen;
    // What another page has written meanwhile is not in the memory of one that comes back from it.
    let restored = device::on_restored(move || {
        if untrack(|| session.saved()) != Saved::MemoryOnly {
            device::reload();
        }
    });
    let listening = device::on_hash_change(move |hash| shell.came_to(Screen::of_hash(&hash)));
    let room = device::on_media_change(ROOMY, move |roomy| shell.roomy.set(roomy));
    let more_room = device::on_media_change(WIDE, move |wide| shell.wide.set(wide));
    let presses = device::drop_stray_presses();
    let _listening = StoredValue::new_local((restored, listening, room, more_room, presses));

    // Outward only: the storage is asked for what the address names, the window is named.
    Effect::new(move |_| {
        let screen = screen.read();
        if let Some(id) = screen.match_id() {
            session.open(id);
        }
    });
    let title = Memo::new(move |_| {
        languages.track();
        text::page_title(&heading(session, shell, &screen.read()))
    });
    // After the frame: a browser computes the style of everything new before it takes a title.
    Effect::new(move |_| {
        let title = title.get();
        after_the_frame(move || device::set_title(&title));
    });
    // Another language draws everything anew: words are no signals.
    (move || {
        languages.track();
        untrack(|| {
            // What was told before was told in another language.
            shell.news(String::new());
            let page = view! { <Page session shell /> };
            languages.drawn();
            page
        })
    })
    .into_any()
}

/// The bar, the screen, and what may lie over them.
#[component]
fn Page(session: Session, shell: Shell) -> impl IntoView {
    let screen = shell.screen;
    let code = Memo::new(move |_| screen.read().code());
    let drawn = Memo::new(move |_| screen.read().drawn_as());
    view! {
        <div class="page" data-screen=move || code.get()>
            <Bar />
            <main id="main">
                {move || {
                    let view = show(session, &drawn.read());
                    shell.scroll_back();
                    view
                }}
            </main>
            <Warnings />
            <RefusalSheet />
            <Confirm
                open=session.looking_on()
                question=Signal::derive(move || {
                    text::stands_still(session.standing()).unwrap_or_default().to_owned()
                })
                yes=Signal::derive(move || text::go_on(session.standing()).to_owned())
                on_yes=Callback::new(move |()| go_on(session))
            />
            <p id="news" class="visually-hidden" role="status" aria-live="polite">
                {move || shell.news.get()}
            </p>
        </div>
    }
}

/// One screen; those of a match once that match is open.
fn show(session: Session, screen: &Screen) -> AnyView {
    let opening = || view! { <p class="card">{text::opening()}</p> }.into_any();
    let Some(id) = screen.match_id() else {
        return screens::show(screen);
    };
    let screen = screen.clone();
    // Only whether it is there, or every entry would draw the screen anew.
    let of = id.to_owned();
    let open = Memo::new(move |_| session.id().as_ref() == Some(&of));
    let known = Memo::new(move |_| session.state().heading().is_some());
    (move || match (open.get(), known.get()) {
        (false, _) => opening(),
        (true, false) => view! { <NotHere /> }.into_any(),
        (true, true) => screens::show(&screen),
    })
    .into_any()
}

/// A match that is not in this phone's storage.
#[component]
fn NotHere() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    view! {
        <section class="card stack">
            <h2>{text::not_here()}</h2>
            <p>{text::not_here_more()}</p>
            <For each=move || session.notices() key=text::session_notice let:notice>
                <p class="sentence bad">{text::session_notice(&notice)}</p>
            </For>
            <button type="button" class="button primary" on:click=move |_| shell.go(Screen::Start)>
                {text::to_start()}
            </button>
        </section>
    }
}
