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

/// Whether the screen is being kept on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WakeState {
    /// This browser cannot; the phone's own setting decides.
    NotSupported,
    /// Nobody wants it.
    Off,
    /// Wanted but not held: off screen, or refused (a low battery may do that). It is asked
    /// for again by itself.
    Asked,
    /// The screen stays on.
    Held,
}

/// The page's wish to keep the screen on. Clones are the same wish; dropping the last one ends
/// it.
#[derive(Clone)]
pub struct Wake {
    inner: Rc<Inner>,
}

struct Inner {
    wanted: Cell<bool>,
    asking: Cell<bool>,
    told: Cell<WakeState>,
    lock: RefCell<Option<Lock>>,
    on_change: Box<dyn Fn(WakeState)>,
    listeners: RefCell<Option<(Listeners, Option<Listener>)>>,
}

struct Lock {
    sentinel: JsValue,
    // Held for its drop alone.
    _released: Listener,
}

impl Wake {
    /// Wants nothing yet. `on_change` hears of every change of [`Wake::state`].
    pub fn new(on_change: impl Fn(WakeState) + 'static) -> Wake {
        let start = match of_navigator("wakeLock") {
            Some(_) => WakeState::Off,
            None => WakeState::NotSupported,
        };
        let inner = Rc::new(Inner {
            wanted: Cell::new(false),
            asking: Cell::new(false),
            told: Cell::new(start),
            lock: RefCell::default(),
            on_change: Box::new(on_change),
            listeners: RefCell::default(),
        });
        if start != WakeState::NotSupported {
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
        self.inner.tell();
    }

    /// Whether the screen is being kept on now.
    pub fn state(&self) -> WakeState {
        self.inner.state()
    }
}

impl Inner {
    fn state(&self) -> WakeState {
        if self.told.get() == WakeState::NotSupported {
            WakeState::NotSupported
        } else if self.lock.borrow().is_some() {
            WakeState::Held
        } else if self.wanted.get() {
            WakeState::Asked
        } else {
            WakeState::Off
        }
    }

    fn tell(&self) {
        let state = self.state();
        if self.told.replace(state) != state {
            (self.on_change)(state);
        }
    }

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
            inner.tell();
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
                    inner.tell();
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
