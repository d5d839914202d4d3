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
                Ok(Handed::Shared) => words::SHARED.to_owned(),
                Ok(Handed::Cancelled) => words::CANCELLED.to_owned(),
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
                    <p>{words::NOT_SEALED}</p>
                    <div class="row">
                        <button type="button" class="button" on:click=to_sheet>{words::TO_SHEET}</button>
                    </div>
                </section>
            })}
            <p>{words::WHAT_GOES}</p>
            <section class="card stack">
                <h2>{words::FILE}</h2>
                <p>{words::file_goes(device::can_share_files(), device::is_ios_installed())}</p>
                <div class="row">
                    <button type="button" class="button primary" id="hand-over-file" on:click=file>
                        {words::FILE_GO}
                    </button>
                </div>
                <p role="status" class="sentence" hidden=move || said.read().is_none()>
                    {move || said.get()}
                </p>
            </section>
            <section class="card stack">
                <h2>{words::CODES}</h2>
                <p>{words::CODES_MORE}</p>
                <Codes texts />
            </section>
        </div>
    }
}
