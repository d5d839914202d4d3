//! Asking the browser not to clear what is kept when it wants room, and how much room there is
//! (WHATWG Storage Standard).

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageEstimate;

use js_sys::Promise;

use super::reach::{method, of_navigator};

/// Whether the browser promised to keep this page's storage.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kept {
    /// It did; only a person clears it.
    Yes,
    /// It may clear it: when it wants room, or after a while without a visit.
    No,
    /// It does not say.
    Unknown,
}

/// How much of the room for this page is used, in bytes. Browsers round both on purpose.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Room {
    /// In use.
    pub used: u64,
    /// What there is in all.
    pub quota: u64,
}

/// Asks for that promise. From a tap, because a browser may put the question to the person.
pub async fn ask_to_keep() -> Kept {
    kept(ask("persist").await)
}

/// Whether the promise was given.
pub async fn is_kept() -> Kept {
    kept(ask("persisted").await)
}

/// The room, where the browser says.
pub async fn room() -> Option<Room> {
    let estimate: StorageEstimate = ask("estimate").await?.unchecked_into();
    // Sizes in bytes are whole and far below what a u64 holds.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    Some(Room {
        used: estimate.get_usage()? as u64,
        quota: estimate.get_quota()? as u64,
    })
}

async fn ask(question: &str) -> Option<JsValue> {
    let manager = of_navigator("storage")?;
    let promise: Promise = method(&manager, question)?
        .call0(&manager)
        .ok()?
        .dyn_into()
        .ok()?;
    JsFuture::from(promise).await.ok()
}

fn kept(answer: Option<JsValue>) -> Kept {
    match answer.and_then(|answer| answer.as_bool()) {
        Some(true) => Kept::Yes,
        Some(false) => Kept::No,
        None => Kept::Unknown,
    }
}
