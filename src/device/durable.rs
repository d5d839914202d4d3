//! The second copy, in IndexedDB: slower, but what it says is on disk survives the death of the
//! browser, which local storage does not promise. One record an entry, under the key
//! `[id, n]`.
//!
//! The standard's own words are used for its parts (W3C Indexed Database API 3.0): a request
//! succeeds before a transaction completes, and only the latter means safe.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::{Array, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    IdbCursor, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore, IdbOpenDbRequest, IdbRequest,
    IdbTransaction,
};

use super::listen::after;
use super::reach::{method, options, property, window};
use super::trouble::StorageTrouble;

const DATABASE: &str = "dutystand";
const VERSION: u32 = 1;
const LINES: &str = "lines";

/// How long opening may take before it counts as lost: WebKit is known to leave a request
/// without any answer after the page was in the background, and the start must not hang on
/// that. Our own choice, far above the milliseconds that an ordinary opening takes.
const OPENING_MS: u32 = 4_000;

/// The database, opened when first needed and again whenever it was lost.
#[derive(Clone, Default)]
pub(super) struct Durable {
    // The promise of the open database, shared by all who wait for it.
    opening: Rc<RefCell<Option<Promise>>>,
    opened: Rc<Cell<bool>>,
    made: Rc<Cell<u32>>,
}

impl Durable {
    /// Whether no opening has succeeded during this visit.
    pub(super) fn never_opened(&self) -> bool {
        !self.opened.get()
    }

    /// How often an empty store had to be made during this visit. A second one means that
    /// somebody cleared the browser's storage under the open page.
    pub(super) fn times_made(&self) -> u32 {
        self.made.get()
    }

    /// Keeps these lines, all or none. Returns once they are on disk as far as the browser
    /// can tell.
    pub(super) async fn put(&self, lines: &[(String, u32, String)]) -> Result<(), StorageTrouble> {
        self.write(|store| put_all(store, lines)).await
    }

    /// Every line of one match, ascending.
    pub(super) async fn lines(&self, id: &str) -> Result<Vec<(u32, String)>, StorageTrouble> {
        let found = self.records(&range(id)?).await?;
        Ok(found.into_iter().map(|((_, n), line)| (n, line)).collect())
    }

    /// Every line of every match, in the order of ids and numbers.
    pub(super) async fn every_line(&self) -> Result<Vec<((String, u32), String)>, StorageTrouble> {
        self.records(&JsValue::UNDEFINED).await
    }

    async fn records(
        &self,
        range: &JsValue,
    ) -> Result<Vec<((String, u32), String)>, StorageTrouble> {
        self.read(async |store: IdbObjectStore| {
            // Both are asked for before the first answer is awaited, so that the transaction
            // stays open for both; they come in the same order.
            let keys = store.get_all_keys_with_key(range)?;
            let values = store.get_all_with_key(range)?;
            let keys: Array = answer(&keys).await?.unchecked_into();
            let values: Array = answer(&values).await?.unchecked_into();
            Ok(keys
                .iter()
                .zip(values.iter())
                .filter_map(|(key, value)| Some((split(&key)?, value.as_string()?)))
                .collect())
        })
        .await
    }

    /// The id of every match, found by leaping from one to the next.
    pub(super) async fn ids(&self) -> Result<Vec<String>, StorageTrouble> {
        self.read(async |store: IdbObjectStore| {
            let request = store.open_key_cursor()?;
            let mut ids: Vec<String> = Vec::new();
            while let Ok(cursor) = answer(&request).await?.dyn_into::<IdbCursor>() {
                let key = cursor.key()?;
                let Some((id, _)) = split(&key) else {
                    // Not one of ours; step over it.
                    cursor.continue_()?;
                    continue;
                };
                cursor.continue_with_key(&last_key(&id))?;
                if ids.last() != Some(&id) {
                    ids.push(id);
                }
            }
            Ok(ids)
        })
        .await
    }

    /// Makes these the only lines of a match, all or none, so that nothing written before or
    /// after it is mixed with them.
    pub(super) async fn replace(
        &self,
        id: &str,
        lines: &[(String, u32, String)],
    ) -> Result<(), StorageTrouble> {
        let range = range(id)?;
        self.write(|store| {
            store.delete(&range)?;
            put_all(store, lines)
        })
        .await
    }

    /// Forgets a match.
    pub(super) async fn forget(&self, id: &str) -> Result<(), StorageTrouble> {
        let range = range(id)?;
        self.write(|store| store.delete(&range).map(drop)).await
    }

    /// Forgets every match.
    pub(super) async fn forget_all(&self) -> Result<(), StorageTrouble> {
        self.write(|store| store.clear().map(drop)).await
    }

    /// One transaction that writes, tried a second time on a fresh connection when the first
    /// one was lost.
    async fn write(
        &self,
        work: impl Fn(&IdbObjectStore) -> Result<(), JsValue>,
    ) -> Result<(), StorageTrouble> {
        match self.write_once(&work).await {
            Err(StorageTrouble::Lost) => {
                self.let_go();
                self.write_once(&work).await
            }
            done => done,
        }
    }

    async fn write_once(
        &self,
        work: &impl Fn(&IdbObjectStore) -> Result<(), JsValue>,
    ) -> Result<(), StorageTrouble> {
        let database = self.database().await?;
        let outcome = async {
            let transaction = begin(&database, "readwrite")?;
            let done = completion(&transaction);
            if let Err(thrown) = work(&transaction.object_store(LINES)?) {
                // Half of a batch must not be kept. It may have ended already by itself.
                let _ = transaction.abort();
                let _ = done.await;
                return Err(thrown);
            }
            done.await.map(drop).map_err(|event| {
                // An abort says why in the transaction; without a reason the browser did it.
                transaction.error().map_or(event, JsValue::from)
            })
        };
        outcome.await.map_err(|thrown| sort(&thrown))
    }

    async fn read<T>(
        &self,
        work: impl AsyncFn(IdbObjectStore) -> Result<T, JsValue>,
    ) -> Result<T, StorageTrouble> {
        let mut last = StorageTrouble::Lost;
        for _ in 0..2 {
            let database = self.database().await?;
            let outcome = async {
                let transaction = begin(&database, "readonly")?;
                work(transaction.object_store(LINES)?).await
            };
            match outcome.await {
                Ok(found) => return Ok(found),
                Err(thrown) => last = sort(&thrown),
            }
            if last != StorageTrouble::Lost {
                break;
            }
            self.let_go();
        }
        Err(last)
    }

    /// Forgets the connection, so that the next use opens a new one.
    fn let_go(&self) {
        self.opening.borrow_mut().take();
    }

    async fn database(&self) -> Result<IdbDatabase, StorageTrouble> {
        let known = self.opening.borrow().clone();
        let opening = match known {
            Some(opening) => opening,
            None => {
                let opening = open(self.clone())?;
                *self.opening.borrow_mut() = Some(opening.clone());
                opening
            }
        };
        match JsFuture::from(opening).await {
            Ok(database) => {
                self.opened.set(true);
                Ok(database.unchecked_into())
            }
            Err(thrown) => {
                self.let_go();
                Err(sort(&thrown))
            }
        }
    }
}

/// Begins opening the database. The promise gives it, or an error, or after a while a
/// `TimeoutError`.
fn open(durable: Durable) -> Result<Promise, StorageTrouble> {
    let request = factory()?
        .open_with_u32(DATABASE, VERSION)
        .map_err(|thrown| StorageTrouble::from_thrown(&thrown))?;
    let made = {
        let request = request.clone();
        let times = Rc::clone(&durable.made);
        Closure::<dyn FnMut()>::new(move || {
            times.set(times.get().saturating_add(1));
            // A failure here aborts the opening, which then says so by itself.
            if let Ok(database) = request.result() {
                let _ = database
                    .unchecked_into::<IdbDatabase>()
                    .create_object_store(LINES);
            }
        })
    };
    request.set_onupgradeneeded(Some(made.as_ref().unchecked_ref()));
    let mut timer = None;
    let first = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
        timer = Some(after(OPENING_MS, move || {
            let late = web_sys::DomException::new_with_message_and_name(
                "the database did not open",
                "TimeoutError",
            );
            let _ = reject.call1(
                &JsValue::UNDEFINED,
                &late.map_or_else(|thrown| thrown, JsValue::from),
            );
        }));
    });
    let request: IdbOpenDbRequest = request;
    Ok(wasm_bindgen_futures::future_to_promise(async move {
        let outcome = JsFuture::from(first).await;
        drop((made, timer));
        match outcome {
            Ok(_) => {
                let database: IdbDatabase = request.result()?.unchecked_into();
                keep_open(&database, durable);
                Ok(database.into())
            }
            Err(reason) => Err(match request.error() {
                Ok(Some(error)) => error.into(),
                _ => reason,
            }),
        }
    }))
}

/// Lets go of the connection when the browser closes it, or when another version of this
/// program wants to change the store.
fn keep_open(database: &IdbDatabase, durable: Durable) {
    let held = database.clone();
    let gone = Closure::<dyn FnMut()>::new(move || {
        held.close();
        durable.let_go();
    });
    let function = gone.as_ref().unchecked_ref();
    database.set_onclose(Some(function));
    database.set_onversionchange(Some(function));
    // Lives as long as the connection does, which is as long as the page in the ordinary
    // course; a lost connection is rare enough that its few bytes do not matter.
    gone.forget();
}

/// The browser's factory of databases, found by name because the typed accessor takes a
/// missing one for an object.
fn factory() -> Result<IdbFactory, StorageTrouble> {
    window()
        .and_then(|window| property(&window, "indexedDB"))
        .map(JsCast::unchecked_into)
        .ok_or(StorageTrouble::Refused)
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

/// The next answer to a request; a cursor answers the same request again and again.
async fn answer(request: &IdbRequest) -> Result<JsValue, JsValue> {
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

fn sort(thrown: &JsValue) -> StorageTrouble {
    // An event without an error is an abort without a reason: the browser ended it.
    if thrown.is_instance_of::<web_sys::Event>() {
        return StorageTrouble::Lost;
    }
    StorageTrouble::from_thrown(thrown)
}

fn put_all(store: &IdbObjectStore, lines: &[(String, u32, String)]) -> Result<(), JsValue> {
    for (id, n, line) in lines {
        store.put_with_key(&JsValue::from_str(line), &key(id, *n))?;
    }
    Ok(())
}

fn key(id: &str, n: u32) -> JsValue {
    Array::of2(&JsValue::from_str(id), &JsValue::from_f64(f64::from(n))).into()
}

/// Above every key of the match: an array is greater than any number.
fn last_key(id: &str) -> JsValue {
    Array::of2(&JsValue::from_str(id), &Array::new()).into()
}

fn range(id: &str) -> Result<JsValue, StorageTrouble> {
    IdbKeyRange::bound(&Array::of1(&JsValue::from_str(id)), &last_key(id))
        .map(JsValue::from)
        .map_err(|thrown| sort(&thrown))
}

fn split(key: &JsValue) -> Option<(String, u32)> {
    let parts = key.dyn_ref::<Array>()?;
    let n = parts.get(1).as_f64()?;
    let whole = n.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&n);
    // The check before makes the cast exact.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    whole.then_some((parts.get(0).as_string()?, n as u32))
}
