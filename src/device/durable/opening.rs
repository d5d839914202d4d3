//! Opening the database, when it is first needed and again whenever it was lost.

use js_sys::{Array, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;
use web_sys::{IdbDatabase, IdbFactory, IdbOpenDbRequest};

use super::transaction::sort;
use super::{Durable, LINES};
use crate::listen::after;
use crate::reach::{error_name, property, window};
use crate::trouble::of_thrown;
use app::ports::StorageTrouble;

const DATABASE: &str = "dutystand";
const VERSION: u32 = 1;

/// How long a question may wait for the database to open before it is answered with
/// [`StorageTrouble::Lost`]. The opening itself goes on, and the next question waits for it again. Our
/// own choice, far above the milliseconds that an ordinary opening takes.
const OPENING_MS: u32 = 4_000;

/// How long one opening may take before another is begun beside it, in milliseconds: WebKit is known to
/// leave a request without any answer after the page was in the background.
const REOPEN_MS: f64 = 20_000.0;

/// The name of our own error where an opening is late.
const LATE: &str = "TimeoutError";

impl Durable {
    /// Forgets the connection, so that the next use opens a new one.
    pub(super) fn let_go(&self) {
        self.opening.borrow_mut().take();
    }

    /// The open database; one that is opening is waited for.
    pub(super) async fn database(&self) -> Result<IdbDatabase, StorageTrouble> {
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
