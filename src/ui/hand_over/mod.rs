//! Handing a record over, and taking one in from another screen: a file, or codes before a camera.

mod show;
mod take;

use leptos::prelude::*;

use super::session::use_session;
use super::shell::{use_shell, Screen};
use super::start::parcel;
use device::Handed;
use record::{frames, pack};
use text::hand_over as words;

pub use show::Codes;
pub use take::Receive;

/// The screen on which a record leaves the phone.
#[component]
pub fn HandOver() -> impl IntoView {
    let session = use_session();
    let shell = use_shell();
    let said = RwSignal::new(None::<String>);
    let file = move |_| {
        let parcel = parcel(&session.log(), &session.state_now(), &session.unread());
        device::spawn(async move {
            let words = match device::hand_over(&parcel).await {
                Ok(Handed::Shared) => words::shared().to_owned(),
                Ok(Handed::Cancelled) => words::cancelled().to_owned(),
                Ok(Handed::Downloaded) => words::downloaded(&parcel.name),
                Err(trouble) => text::machine::hand_over(&trouble),
            };
            said.set(Some(words));
        });
    };
    let to_sheet = move |_| {
        if let Some(id) = untrack(|| session.id()) {
            shell.go(Screen::Sheet { id });
        }
    };
    let texts = Callback::new(move |digits| {
        pack(&session.log()).and_then(|packed| frames(&packed, digits))
    });
    let sealed = move || session.state().sealed().is_some();
    view! {
        <div class="hand-over stack">
            {move || (!sealed()).then(|| view! {
                <section class="card stack">
                    <p>{words::not_sealed()}</p>
                    <div class="row">
                        <button type="button" class="button" on:click=to_sheet>{words::to_sheet()}</button>
                    </div>
                </section>
            })}
            <p>{words::what_goes()}</p>
            <section class="card stack">
                <h2>{words::file()}</h2>
                <p>{words::file_goes(device::can_share_files(), device::is_ios_installed())}</p>
                <div class="row">
                    <button type="button" class="button primary" id="hand-over-file" on:click=file>
                        {words::file_go()}
                    </button>
                </div>
                <p role="status" class="sentence" hidden=move || said.read().is_none()>
                    {move || said.get()}
                </p>
            </section>
            <section class="card stack">
                <h2>{words::codes()}</h2>
                <p>{words::codes_more()}</p>
                <Codes texts />
            </section>
        </div>
    }
}
