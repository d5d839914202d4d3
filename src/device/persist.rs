//! Asking the browser not to clear what is kept when it wants room, and how much room there is
//! (WHATWG Storage Standard).

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::StorageEstimate;

use js_sys::Promise;

use app::machine::{StoragePromise, StorageRoom};

use super::reach::{method, of_navigator};

/// Asks for that promise. From a tap, because a browser may put the question to the person.
pub async fn ask_to_keep() -> StoragePromise {
    kept(ask("persist").await)
}

/// Whether the promise was given.
pub async fn is_kept() -> StoragePromise {
    kept(ask("persisted").await)
}

/// The room, where the browser says.
pub async fn room() -> Option<StorageRoom> {
    let estimate: StorageEstimate = ask("estimate").await?.unchecked_into();
    // Sizes in bytes are whole and far below what a u64 holds.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    Some(StorageRoom {
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

fn kept(answer: Option<JsValue>) -> StoragePromise {
    match answer.and_then(|answer| answer.as_bool()) {
        Some(true) => StoragePromise::Yes,
        Some(false) => StoragePromise::No,
        None => StoragePromise::Unknown,
    }
}
