//! Keeping the screen on while a match runs (W3C Screen Wake Lock API). The browser takes the
//! lock back whenever the page leaves the screen, so it is asked for again when the page comes
//! back, and on the next tap where a browser wants one.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::Promise;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{spawn_local, JsFuture};
use web_sys::EventTarget;

use super::listen::{is_visible, on_resume, Listener, Listeners};
use super::reach::{method, of_navigator, window};

/// The page's wish to keep the screen on. Clones are the same wish; dropping the last one ends
/// it.
#[derive(Clone)]
pub struct Wake {
    inner: Rc<Inner>,
}

struct Inner {
    wanted: Cell<bool>,
    asking: Cell<bool>,
    lock: RefCell<Option<Lock>>,
    listeners: RefCell<Option<(Listeners, Option<Listener>)>>,
}

struct Lock {
    sentinel: JsValue,
    // Held for its drop alone.
    _released: Listener,
}

impl Wake {
    /// Wants nothing yet.
    pub fn new() -> Wake {
        let inner = Rc::new(Inner {
            wanted: Cell::new(false),
            asking: Cell::new(false),
            lock: RefCell::default(),
            listeners: RefCell::default(),
        });
        // A browser without this lock is not asked: the phone's own setting decides there.
        if of_navigator("wakeLock").is_some() {
            let (back, tapped) = (Rc::downgrade(&inner), Rc::downgrade(&inner));
            let resumed = on_resume(move || {
                if let Some(inner) = back.upgrade() {
                    inner.ask();
                }
            });
            let taps = window()
                .and_then(|window| window.document())
                .map(|document| {
                    Listener::new(&document, "pointerup", move |_| {
                        if let Some(inner) = tapped.upgrade() {
                            inner.ask();
                        }
                    })
                });
            *inner.listeners.borrow_mut() = Some((resumed, taps));
        }
        Wake { inner }
    }

    /// Wants the screen on, or no more.
    pub fn want(&self, wanted: bool) {
        self.inner.wanted.set(wanted);
        if wanted {
            self.inner.ask();
        } else {
            self.inner.let_go();
        }
    }
}

impl Inner {
    /// Asks for the lock where it is wanted, not held and not being asked for already.
    fn ask(self: &Rc<Self>) {
        if !self.wanted.get() || self.asking.get() || self.lock.borrow().is_some() || !is_visible()
        {
            return;
        }
        let Some(promise) = request() else {
            return;
        };
        self.asking.set(true);
        let weak = Rc::downgrade(self);
        spawn_local(async move {
            let answer = JsFuture::from(promise).await;
            let Some(inner) = weak.upgrade() else {
                // Nobody wants it any more; the lock itself ends with its page.
                if let Ok(sentinel) = answer {
                    release(&sentinel);
                }
                return;
            };
            inner.asking.set(false);
            if let Ok(sentinel) = answer {
                inner.take(sentinel);
            }
        });
    }

    fn take(self: &Rc<Self>, sentinel: JsValue) {
        let weak = Rc::downgrade(self);
        let released = Listener::new(
            sentinel.unchecked_ref::<EventTarget>(),
            "release",
            move |_| {
                if let Some(inner) = weak.upgrade() {
                    inner.lock.borrow_mut().take();
                }
            },
        );
        *self.lock.borrow_mut() = Some(Lock {
            sentinel,
            _released: released,
        });
        if !self.wanted.get() {
            self.let_go();
        }
    }

    fn let_go(&self) {
        let lock = self.lock.borrow_mut().take();
        if let Some(lock) = lock {
            release(&lock.sentinel);
        }
    }
}

impl Drop for Inner {
    fn drop(&mut self) {
        self.let_go();
    }
}

fn request() -> Option<Promise> {
    let wake_lock = of_navigator("wakeLock")?;
    method(&wake_lock, "request")?
        .call1(&wake_lock, &JsValue::from_str("screen"))
        .ok()?
        .dyn_into()
        .ok()
}

fn release(sentinel: &JsValue) {
    if let Some(function) = method(sentinel, "release") {
        // Its promise only says when; there is nothing to be done about a failure.
        let _ = function.call0(sentinel);
    }
}
