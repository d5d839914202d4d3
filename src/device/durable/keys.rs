//! Under which keys a match stands in the database: its lines, the mark of its writer and its summary.

use js_sys::Array;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::IdbKeyRange;

/// With this the name of each summary begins.
pub(super) const SUMMARIES: &str = "s/";

/// The key of the mark of a match.
pub(super) fn mark(id: &str) -> JsValue {
    JsValue::from_str(&format!("w/{id}"))
}

/// The key of its summary.
pub(super) fn summary_key(id: &str) -> JsValue {
    JsValue::from_str(&format!("{SUMMARIES}{id}"))
}

/// The key of one of its lines.
pub(super) fn key(id: &str, n: u32) -> JsValue {
    Array::of2(&JsValue::from_str(id), &JsValue::from_f64(f64::from(n))).into()
}

/// Every key of a match: an array is greater than any number.
pub(super) fn range(id: &str) -> Result<IdbKeyRange, JsValue> {
    let id = JsValue::from_str(id);
    IdbKeyRange::bound(&Array::of1(&id), &Array::of2(&id, &Array::new()))
}

/// The match and the number of a line, by its key; none for a key of another kind.
pub(super) fn split(key: &JsValue) -> Option<(String, u32)> {
    let parts = key.dyn_ref::<Array>()?;
    let n = parts.get(1).as_f64()?;
    let whole = n.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&n);
    // The check before makes the cast exact.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    whole.then_some((parts.get(0).as_string()?, n as u32))
}
