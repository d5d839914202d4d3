//! What can be wrong with a browser's storage, in the four kinds that call for different words.

use std::fmt;

use wasm_bindgen::JsValue;

use super::reach::{error_name, error_words};

/// Why a line could not be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StorageTrouble {
    /// The browser forbids storage here: blocked by its settings, or by a private window.
    Refused,
    /// There is no room left.
    Full,
    /// The connection to the store broke, and opening it again did not help yet.
    Lost,
    /// Anything else, in the browser's own words.
    Unknown(String),
}

impl StorageTrouble {
    /// Sorts what the browser threw. Names as in the Web IDL standard's table of DOM exceptions; the
    /// two with NS_ERROR are older Firefox (from memory).
    pub(super) fn from_thrown(thrown: &JsValue) -> StorageTrouble {
        match error_name(thrown).as_str() {
            "QuotaExceededError"
            | "NS_ERROR_DOM_QUOTA_REACHED"
            | "NS_ERROR_FILE_NO_DEVICE_SPACE" => StorageTrouble::Full,
            "SecurityError" | "NotAllowedError" => StorageTrouble::Refused,
            "InvalidStateError"
            | "AbortError"
            | "TransactionInactiveError"
            | "UnknownError"
            | "TimeoutError" => StorageTrouble::Lost,
            _ => StorageTrouble::Unknown(error_words(thrown)),
        }
    }
}

impl fmt::Display for StorageTrouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            StorageTrouble::Refused => {
                f.write_str("This browser does not allow this page to store anything.")
            }
            StorageTrouble::Full => f.write_str("The storage of this browser is full."),
            StorageTrouble::Lost => {
                f.write_str("The browser lost its storage for a moment; it is being tried again.")
            }
            StorageTrouble::Unknown(words) => {
                write!(f, "The browser could not store the entry ({words}).")
            }
        }
    }
}
