//! A match as a file, handed over only by somebody's tap.

use leptos::prelude::*;

use crate::session::use_session;
use crate::widgets::give::hand_over;
use device::ExportFile;
use game::State;
use record::Log;

/// The file of a match, with the lines of it that could not be read.
#[must_use]
pub fn parcel(log: &Log, state: &State, unread: &[String]) -> ExportFile {
    ExportFile {
        name: text::file_name(state, "json"),
        mime: "application/json".into(),
        bytes: record::with_unread(record::write(log), unread).into_bytes(),
    }
}

/// Hands a match over: by the phone's own way to share where it has one, else as a download.
pub fn export(log: &Log, state: &State, unread: &[String]) {
    hand_over(parcel(log, state, unread));
}

/// The button that hands the open match over.
pub fn export_open_match() -> AnyView {
    let session = use_session();
    let tap = move |_| export(&session.log(), &session.state_now(), &session.unread());
    view! {
        <button type="button" class="button" on:click=tap>
            {text::export()}
        </button>
    }
    .into_any()
}
