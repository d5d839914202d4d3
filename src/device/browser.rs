//! The browser's stores as the program asks for them: it carries out and decides nothing.

use std::collections::BTreeMap;
use std::rc::Rc;

use js_sys::Promise;
use wasm_bindgen::JsValue;
use wasm_bindgen_futures::{spawn_local, JsFuture};

use super::coin::new_id;
use super::durable::Durable;
use super::listen::after;
use super::local::{self, Local};
use app::ports::{
    Claimed, Index, Lines, LocalStorage, Pending, Put, Storage, StorageTrouble, Written,
};
use app::store::Store;

/// The stores of this browser.
#[derive(Default)]
struct Browser {
    durable: Durable,
}

/// Opens them. Never fails: what is wrong with them is in the store's health.
#[must_use]
pub fn open_store() -> Store {
    Store::new(Rc::new(Browser::default()), local::probe())
}

impl LocalStorage for Browser {
    fn get(&self, key: &str) -> Result<Option<String>, StorageTrouble> {
        Local.get(key)
    }

    fn set(&self, key: &str, value: &str) -> Result<(), StorageTrouble> {
        Local.set(key, value)
    }

    fn remove(&self, key: &str) -> Result<(), StorageTrouble> {
        Local.remove(key)
    }

    fn keys(&self, prefix: &str) -> Result<Vec<String>, StorageTrouble> {
        Local.keys(prefix)
    }
}

impl Storage for Browser {
    fn claim(&self, id: &str, writer: &str) -> Pending<Result<Claimed, StorageTrouble>> {
        let (durable, id, writer) = (self.durable.clone(), id.to_owned(), writer.to_owned());
        Box::pin(async move { durable.claim(&id, &writer).await })
    }

    fn lines(&self, id: &str) -> Pending<Result<Lines, StorageTrouble>> {
        let (durable, id) = (self.durable.clone(), id.to_owned());
        Box::pin(async move { durable.lines(&id).await })
    }

    fn write(
        &self,
        id: &str,
        writer: &str,
        puts: Vec<Put>,
    ) -> Pending<Result<Written, StorageTrouble>> {
        let (durable, id, writer) = (self.durable.clone(), id.to_owned(), writer.to_owned());
        Box::pin(async move { durable.write(&id, &writer, &puts).await })
    }

    fn insert(
        &self,
        id: &str,
        lines: Lines,
        summary: String,
    ) -> Pending<Result<bool, StorageTrouble>> {
        let (durable, id) = (self.durable.clone(), id.to_owned());
        Box::pin(async move { durable.insert(&id, &lines, &summary).await })
    }

    fn summaries(&self) -> Pending<Result<BTreeMap<String, String>, StorageTrouble>> {
        let durable = self.durable.clone();
        Box::pin(async move { durable.summaries().await })
    }

    fn summarize(&self, id: &str, summary: String) -> Pending<Result<(), StorageTrouble>> {
        let (durable, id) = (self.durable.clone(), id.to_owned());
        Box::pin(async move { durable.summarize(&id, &summary).await })
    }

    fn index(&self) -> Pending<Result<Index, StorageTrouble>> {
        let durable = self.durable.clone();
        Box::pin(async move { durable.index().await })
    }

    fn forget(&self, id: &str) -> Pending<Result<(), StorageTrouble>> {
        let (durable, id) = (self.durable.clone(), id.to_owned());
        Box::pin(async move { durable.forget(&id).await })
    }

    fn spawn(&self, work: Pending<()>) {
        spawn_local(work);
    }

    fn wait(&self, ms: u32) -> Pending<()> {
        Box::pin(pause(ms))
    }

    fn unique(&self) -> String {
        new_id()
    }
}

/// Waits, so that the browser can do something else meanwhile.
pub async fn pause(ms: u32) {
    let mut timer = None;
    let passed = Promise::new(&mut |done, _| {
        timer = Some(after(ms, move || {
            // A resolving function takes anything and cannot fail.
            let _ = done.call0(&JsValue::UNDEFINED);
        }));
    });
    // Only ever fulfilled.
    let _ = JsFuture::from(passed).await;
    drop(timer);
}
