//! The second copy, in IndexedDB: slower, but what it says is on disk survives the death of the
//! browser, which local storage does not promise. One record an entry, under the key `[id, n]`; beside
//! them, under names that are plain text, the mark of each match's writer and its summary. Earlier
//! versions of the program step over plain names.
//!
//! The standard's own words are used for its parts (W3C Indexed Database API 3.0): a request
//! succeeds before a transaction completes, and only the latter means safe.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use js_sys::{Array, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{
    IdbCursor, IdbCursorDirection, IdbDatabase, IdbFactory, IdbKeyRange, IdbObjectStore,
    IdbOpenDbRequest, IdbRequest, IdbTransaction,
};

use super::listen::after;
use super::reach::{error_name, method, options, property, window};
use super::trouble::of_thrown;
use app::ports::{Claimed, Index, Lines, Put, StorageTrouble, Written};

const DATABASE: &str = "dutystand";
const VERSION: u32 = 1;
const LINES: &str = "lines";

/// How long a question may wait for the database to open before it is answered with
/// [`StorageTrouble::Lost`]. The opening itself goes on, and the next question waits for it again. Our
/// own choice, far above the milliseconds that an ordinary opening takes.
const OPENING_MS: u32 = 4_000;

/// How long one opening may take before another is begun beside it, in milliseconds: WebKit is known to
/// leave a request without any answer after the page was in the background.
const REOPEN_MS: f64 = 20_000.0;

/// The name of our own error where an opening is late.
const LATE: &str = "TimeoutError";

/// So many lines are put in one task; a whole match would keep a slow phone busy for too long.
const AT_ONCE: usize = 64;

/// So many lines are looked at one by one before a write; more are read in one go.
const FEW: usize = 8;

/// The database, opened when first needed and again whenever it was lost.
#[derive(Clone, Default)]
pub(super) struct Durable {
    // The promise of the open database, shared by all who wait for it, and when it was asked for.
    opening: Rc<RefCell<Option<Promise>>>,
    asked_at: Rc<Cell<f64>>,
}

impl Durable {
    /// Puts the writer's mark on a match and reads all its lines.
    pub(super) async fn claim(&self, id: &str, writer: &str) -> Result<Claimed, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            let was_marked = !get(store, &mark(id)).await?.is_undefined();
            let lines = lines_of(store, id).await?;
            store.put_with_key(&JsValue::from_str(writer), &mark(id))?;
            Ok(Claimed { lines, was_marked })
        })
        .await
    }

    /// Every line of one match.
    pub(super) async fn lines(&self, id: &str) -> Result<Lines, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| lines_of(store, id).await)
            .await
    }

    /// Makes all changes or none.
    pub(super) async fn write(
        &self,
        id: &str,
        writer: &str,
        puts: &[Put],
    ) -> Result<Written, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            match get(store, &mark(id)).await?.as_string() {
                None => return Ok(Written::Gone),
                Some(mark) if mark != writer => return Ok(Written::Robbed),
                Some(_) => {}
            }
            let mut there = Lines::new();
            if puts.len() > FEW {
                there = lines_of(store, id).await?;
            } else {
                for put in puts {
                    if let Some(line) = get(store, &key(id, put.n)).await?.as_string() {
                        there.insert(put.n, line);
                    }
                }
            }
            let fits = |put: &Put| {
                let line = there.get(&put.n);
                line == put.found.as_ref() || line == put.line.as_ref()
            };
            if !puts.iter().all(fits) {
                return Ok(Written::Differs);
            }
            let new = puts
                .iter()
                .filter(|put| there.get(&put.n) != put.line.as_ref());
            for (count, put) in (1..).zip(new) {
                let asked = match &put.line {
                    Some(line) => store.put_with_key(&JsValue::from_str(line), &key(id, put.n))?,
                    None => store.delete(&key(id, put.n))?,
                };
                // A whole match is asked for in several tasks; the transaction lives on in the answer.
                if count % AT_ONCE == 0 {
                    answer(&asked).await?;
                }
            }
            Ok(Written::Done)
        })
        .await
    }

    /// Keeps a whole match with its summary; false where other lines stand under that id.
    pub(super) async fn insert(
        &self,
        id: &str,
        lines: &Lines,
        summary: &str,
    ) -> Result<bool, StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            let there = lines_of(store, id).await?;
            if !there.is_empty() {
                return Ok(lines.iter().all(|(n, line)| there.get(n) == Some(line)));
            }
            for (n, line) in lines {
                store.put_with_key(&JsValue::from_str(line), &key(id, *n))?;
            }
            store.put_with_key(&JsValue::from_str(summary), &summary_key(id))?;
            Ok(true)
        })
        .await
    }

    /// The summaries, by id.
    pub(super) async fn summaries(&self) -> Result<BTreeMap<String, String>, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| {
            let range = IdbKeyRange::bound(
                &JsValue::from_str(SUMMARIES),
                &JsValue::from_str(&format!("{SUMMARIES}\u{ffff}")),
            )?;
            let found = records(store, &range).await?;
            let found = found.into_iter();
            Ok(rules::gather(found.filter_map(|(key, value)| {
                let id = key.as_string()?.strip_prefix(SUMMARIES)?.to_owned();
                Some((id, value.as_string()?))
            })))
        })
        .await
    }

    /// Writes the summary of a match.
    pub(super) async fn summarize(&self, id: &str, summary: &str) -> Result<(), StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            store.put_with_key(&JsValue::from_str(summary), &summary_key(id))?;
            Ok(())
        })
        .await
    }

    /// The last line of every match, found by leaping from one to the next, backwards.
    pub(super) async fn index(&self) -> Result<Index, StorageTrouble> {
        self.read(async |store: &IdbObjectStore| {
            let all = IdbKeyRange::lower_bound(&Array::new())?;
            let request =
                store.open_key_cursor_with_range_and_direction(&all, IdbCursorDirection::Prev)?;
            let mut index = Index::default();
            while let Ok(cursor) = answer(&request).await?.dyn_into::<IdbCursor>() {
                let Some((id, n)) = split(&cursor.key()?) else {
                    // Not one of ours; step over it.
                    cursor.continue_()?;
                    continue;
                };
                // Below every key of this match.
                cursor.continue_with_key(&Array::of1(&JsValue::from_str(&id)))?;
                index.last.insert(id, n);
            }
            Ok(index)
        })
        .await
    }

    /// Forgets a match.
    pub(super) async fn forget(&self, id: &str) -> Result<(), StorageTrouble> {
        self.change(async |store: &IdbObjectStore| {
            store.delete(&JsValue::from(range(id)?))?;
            store.delete(&mark(id))?;
            store.delete(&summary_key(id))?;
            Ok(())
        })
        .await
    }

    /// One transaction that writes, tried a second time on a fresh connection when the first one was
    /// lost. Returns once it is on disk as far as the browser can tell.
    async fn change<T>(
        &self,
        work: impl AsyncFn(&IdbObjectStore) -> Result<T, JsValue>,
    ) -> Result<T, StorageTrouble> {
        self.in_transaction("readwrite", &work).await
    }

    async fn read<T>(
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
                self.asked_at.set(js_sys::Date::now());
                *self.opening.borrow_mut() = Some(opening.clone());
                opening
            }
        };
        match JsFuture::from(in_time(&opening)).await {
            Ok(database) => Ok(database.unchecked_into()),
            Err(thrown) if error_name(&thrown) == LATE => {
                if js_sys::Date::now() - self.asked_at.get() > REOPEN_MS {
                    self.let_go();
                }
                Err(StorageTrouble::Lost)
            }
            Err(thrown) => {
                self.let_go();
                Err(sort(&thrown))
            }
        }
    }
}

/// Whatever comes first: the opening, or the end of patience. The opening goes on in any case.
fn in_time(opening: &Promise) -> Promise {
    let late = wasm_bindgen_futures::future_to_promise(async {
        let mut timer = None;
        let passed = Promise::new(&mut |done, _| {
            timer = Some(after(OPENING_MS, move || {
                // A resolving function takes anything and cannot fail.
                let _ = done.call0(&JsValue::UNDEFINED);
            }));
        });
        let _ = JsFuture::from(passed).await;
        drop(timer);
        let late = web_sys::DomException::new_with_message_and_name("", LATE);
        Err(late.map_or_else(|thrown| thrown, JsValue::from))
    });
    Promise::race(&Array::of2(opening, &late))
}

/// Begins opening the database. The promise gives it, or an error, whenever the browser answers.
fn open(durable: Durable) -> Result<Promise, StorageTrouble> {
    let request = factory()?
        .open_with_u32(DATABASE, VERSION)
        .map_err(|thrown| of_thrown(&thrown))?;
    let made = {
        let request = request.clone();
        Closure::<dyn FnMut()>::new(move || {
            // A failure here aborts the opening, which then says so by itself.
            if let Ok(database) = request.result() {
                let _ = database
                    .unchecked_into::<IdbDatabase>()
                    .create_object_store(LINES);
            }
        })
    };
    request.set_onupgradeneeded(Some(made.as_ref().unchecked_ref()));
    let first = Promise::new(&mut |resolve, reject| {
        request.set_onsuccess(Some(&resolve));
        request.set_onerror(Some(&reject));
    });
    let request: IdbOpenDbRequest = request;
    Ok(wasm_bindgen_futures::future_to_promise(async move {
        let outcome = JsFuture::from(first).await;
        drop(made);
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

async fn get(store: &IdbObjectStore, key: &JsValue) -> Result<JsValue, JsValue> {
    let request = store.get(key)?;
    answer(&request).await
}

/// Keys and values of a range.
async fn records(
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

async fn lines_of(store: &IdbObjectStore, id: &str) -> Result<Lines, JsValue> {
    let found = records(store, &JsValue::from(range(id)?)).await?;
    let found = found.into_iter();
    Ok(rules::gather(found.filter_map(|(key, value)| {
        Some((split(&key)?.1, value.as_string()?))
    })))
}

fn sort(thrown: &JsValue) -> StorageTrouble {
    // An event without an error is an abort without a reason: the browser ended it.
    if thrown.is_instance_of::<web_sys::Event>() {
        return StorageTrouble::Lost;
    }
    of_thrown(thrown)
}

/// With this the name of each summary begins.
const SUMMARIES: &str = "s/";

fn mark(id: &str) -> JsValue {
    JsValue::from_str(&format!("w/{id}"))
}

fn summary_key(id: &str) -> JsValue {
    JsValue::from_str(&format!("{SUMMARIES}{id}"))
}

fn key(id: &str, n: u32) -> JsValue {
    Array::of2(&JsValue::from_str(id), &JsValue::from_f64(f64::from(n))).into()
}

/// Every key of a match: an array is greater than any number.
fn range(id: &str) -> Result<IdbKeyRange, JsValue> {
    let id = JsValue::from_str(id);
    IdbKeyRange::bound(&Array::of1(&id), &Array::of2(&id, &Array::new()))
}

fn split(key: &JsValue) -> Option<(String, u32)> {
    let parts = key.dyn_ref::<Array>()?;
    let n = parts.get(1).as_f64()?;
    let whole = n.fract() == 0.0 && (0.0..=f64::from(u32::MAX)).contains(&n);
    // The check before makes the cast exact.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
    whole.then_some((parts.get(0).as_string()?, n as u32))
}
