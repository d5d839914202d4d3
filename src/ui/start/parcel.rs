//! A match as a file, handed over only by somebody's tap.

use crate::device::{self, Parcel};
use crate::game::State;
use crate::record::{self, Log};
use crate::ui::text;

/// Hands a match over: by the phone's own way to share where it has one, else as a download.
pub fn export(log: Log, state: &State) {
    let parcel = Parcel {
        name: text::file_name(state),
        mime: "application/json".into(),
        bytes: record::write(&log).into_bytes(),
    };
    leptos::task::spawn_local(async move {
        if device::hand_over(&parcel).await.is_err() {
            // Sharing was refused or broke down; a download asks nobody.
            let _ = device::download(&parcel);
        }
    });
}
