//! One transaction of the database: whole or not at all, and once more on a fresh connection where it was lost.

use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbObjectStore, IdbTransaction};

use super::{Durable, LINES};
use crate::reach::{method, options};
use crate::trouble::of_thrown;
use app::ports::StorageTrouble;

impl Durable {
    /// One transaction that writes, tried a second time on a fresh connection when the first one was
    /// lost. Returns once it is on disk as far as the browser can tell.
    pub(super) async fn change<T>(
        &self,
        work: impl AsyncFn(&IdbObjectStore) -> Result<T, JsValue>,
    ) -> Result<T, StorageTrouble> {
        self.in_transaction("readwrite", &work).await
    }

    /// One transaction that only looks.
    pub(super) async fn read<T>(
        &self,
        work: impl AsyncFn(&IdbObjectStore) -> Result<T, JsValue>,
    ) -> Result<T, StorageTrouble> {
        self.in_transaction("readonly", &work).await
    }

    async fn in_transaction<T>(
        &self,
        mode: &str,
        work: &impl AsyncFn(&IdbObjectStore) -> Result<T, JsValue>,
    ) -> Result<T, StorageTrouble> {
        let mut again = true;
        loop {
            let database = self.database().await?;
            let outcome = async {
                let transaction = begin(&database, mode)?;
                let done = completion(&transaction);
                match work(&transaction.object_store(LINES)?).await {
                    Ok(found) => done.await.map(|_| found).map_err(|event| {
                        // An abort says why in the transaction; without a reason the browser did it.
                        transaction.error().map_or(event, JsValue::from)
                    }),
                    Err(thrown) => {
                        // Half of a batch must not be kept. It may have ended already by itself.
                        let _ = transaction.abort();
                        let _ = done.await;
                        Err(thrown)
                    }
                }
            };
            match outcome.await.map_err(|thrown| sort(&thrown)) {
                Err(StorageTrouble::Lost) if again => {
                    self.let_go();
                    again = false;
                }
                done => return done,
            }
        }
    }
}

/// Begins a transaction that is complete only when the system was told to put it on disk. The typed
/// binding of the third argument is not stable; browsers that do not know it ignore it.
fn begin(database: &IdbDatabase, mode: &str) -> Result<IdbTransaction, JsValue> {
    let transaction = method(database, "transaction").ok_or(JsValue::UNDEFINED)?;
    transaction
        .call3(
            database,
            &JsValue::from_str(LINES),
            &JsValue::from_str(mode),
            &options(&[("durability", JsValue::from_str("strict"))]),
        )
        .map(JsCast::unchecked_into)
}

/// Fulfilled by `complete`, rejected by `abort`.
fn completion(transaction: &IdbTransaction) -> JsFuture {
    JsFuture::from(Promise::new(&mut |resolve, reject| {
        transaction.set_oncomplete(Some(&resolve));
        transaction.set_onabort(Some(&reject));
    }))
}

/// What kind of trouble ended a transaction.
pub(super) fn sort(thrown: &JsValue) -> StorageTrouble {
    // An event without an error is an abort without a reason: the browser ended it.
    if thrown.is_instance_of::<web_sys::Event>() {
        return StorageTrouble::Lost;
    }
    of_thrown(thrown)
}
