//! What is asked of the database within a transaction, and how its answers are awaited.

use js_sys::{Array, Promise};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbObjectStore, IdbRequest};

use super::keys::{range, split};
use app::ports::Lines;

/// The next answer to a request; a cursor answers the same request again and again.
pub(super) async fn answer(request: &IdbRequest) -> Result<JsValue, JsValue> {
    let answered = JsFuture::from(Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    }))
    .await;
    match answered {
        Ok(_) => request.result(),
        Err(event) => Err(request.error()?.map_or(event, JsValue::from)),
    }
}

/// The value under a key; undefined where there is none.
pub(super) async fn get(store: &IdbObjectStore, key: &JsValue) -> Result<JsValue, JsValue> {
    let request = store.get(key)?;
    answer(&request).await
}

/// Keys and values of a range.
pub(super) async fn records(
    store: &IdbObjectStore,
    range: &JsValue,
) -> Result<Vec<(JsValue, JsValue)>, JsValue> {
    // Both are asked for before the first answer is awaited; they come in the same order.
    let keys = store.get_all_keys_with_key(range)?;
    let values = store.get_all_with_key(range)?;
    let keys: Array = answer(&keys).await?.unchecked_into();
    let values: Array = answer(&values).await?.unchecked_into();
    Ok(keys.iter().zip(values.iter()).collect())
}

/// Every line of one match, by number.
pub(super) async fn lines_of(store: &IdbObjectStore, id: &str) -> Result<Lines, JsValue> {
    let found = records(store, &JsValue::from(range(id)?)).await?;
    let found = found.into_iter();
    Ok(rules::gather(found.filter_map(|(key, value)| {
        Some((split(&key)?.1, value.as_string()?))
    })))
}
