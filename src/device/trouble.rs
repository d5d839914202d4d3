//! What can be wrong with a browser's storage, sorted into the kinds that call for different words.

use wasm_bindgen::JsValue;

use super::reach::{error_name, error_words};
use app::ports::StorageTrouble;

/// Sorts what the browser threw. Names as in the Web IDL standard's table of DOM exceptions; the two
/// with NS_ERROR are older Firefox (from memory).
pub(super) fn of_thrown(thrown: &JsValue) -> StorageTrouble {
    match error_name(thrown).as_str() {
        "QuotaExceededError" | "NS_ERROR_DOM_QUOTA_REACHED" | "NS_ERROR_FILE_NO_DEVICE_SPACE" => {
            StorageTrouble::Full
        }
        "SecurityError" | "NotAllowedError" => StorageTrouble::Refused,
        "InvalidStateError"
        | "AbortError"
        | "TransactionInactiveError"
        | "UnknownError"
        | "TimeoutError" => StorageTrouble::Lost,
        _ => StorageTrouble::Unknown(error_words(thrown)),
    }
}
