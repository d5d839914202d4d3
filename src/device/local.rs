//! Local storage as it is: text under a name, written before the call returns. Fast, but the
//! browser may hold it back from the disk for a minute, so it is never the only copy.

use gloo_storage::{LocalStorage, Storage};
use wasm_bindgen::JsValue;

use super::reach::window;
use super::trouble::of_thrown;
use app::ports::{LocalStorage as Port, StorageTrouble};

/// The store itself. Looking at it throws where storage is forbidden, and the library's own
/// accessor would then panic, so it is looked at first.
fn store() -> Result<web_sys::Storage, StorageTrouble> {
    match window().map(|window| window.local_storage()) {
        Some(Ok(Some(_))) => Ok(LocalStorage::raw()),
        Some(Err(thrown)) => Err(of_thrown(&thrown)),
        Some(Ok(None)) | None => Err(StorageTrouble::Refused),
    }
}

fn sorted(thrown: JsValue) -> StorageTrouble {
    of_thrown(&thrown)
}

/// Local storage as the program asks for it.
#[derive(Clone, Copy, Default)]
pub(super) struct Local;

impl Port for Local {
    fn get(&self, key: &str) -> Result<Option<String>, StorageTrouble> {
        store()?.get_item(key).map_err(sorted)
    }

    fn set(&self, key: &str, value: &str) -> Result<(), StorageTrouble> {
        store()?.set_item(key, value).map_err(sorted)
    }

    fn remove(&self, key: &str) -> Result<(), StorageTrouble> {
        store()?.remove_item(key).map_err(sorted)
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageTrouble> {
        let store = store()?;
        let count = store.length().map_err(sorted)?;
        let mut found = Vec::new();
        for index in 0..count {
            if let Some(key) = store.key(index).map_err(sorted)? {
                if key.starts_with(prefix) {
                    found.push(key);
                }
            }
        }
        Ok(found)
    }
}

/// Whether a line could be kept now, found out by keeping one.
pub(super) fn probe() -> Result<(), StorageTrouble> {
    const KEY: &str = "dutystand/probe";
    // As long as an ordinary line, so that a store with room for a few characters only is
    // found out before the match and not in it.
    Local.set(KEY, &"-".repeat(256))?;
    Local.remove(KEY)
}
