//! A match as a file, handed over only by somebody's tap.

use crate::device::{self, Parcel};
use crate::game::State;
use crate::record::{self, Log};
use crate::ui::text;

/// The file of a match.
#[must_use]
pub fn parcel(log: &Log, state: &State) -> Parcel {
    Parcel {
        name: text::file_name(state, "json"),
        mime: "application/json".into(),
        bytes: record::write(log).into_bytes(),
    }
}

/// Hands a match over: by the phone's own way to share where it has one, else as a download.
pub fn export(log: &Log, state: &State) {
    hand_over(parcel(log, state));
}

/// Hands any file over in the same way.
pub fn hand_over(parcel: Parcel) {
    device::spawn(async move {
        if device::hand_over(&parcel).await.is_err() {
            // Sharing was refused or broke down; a download asks nobody.
            let _ = device::download(&parcel);
        }
    });
}
