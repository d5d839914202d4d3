//! One writer for a match: of all tabs that have it open, one may write, and another may take
//! over from it.
//!
//! The browser keeps the lock (W3C Web Locks API) and gives it back when a tab dies, so there are
//! no stale ones.

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

use js_sys::{Function, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{spawn_local, JsFuture};

use super::reach::{error_name, method, of_navigator, options};

/// What this tab may do with the match.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// The browser has not answered yet; nothing may be written.
    Asking,
    /// This tab writes, and no other.
    Writer,
    /// This tab writes; the browser has no locks, so nothing keeps another one from it.
    Unguarded,
    /// Another tab writes.
    ReadOnly {
        /// Whether this tab was the writer until another one took over.
        robbed: bool,
    },
}

impl Standing {
    /// Whether lines may be written.
    pub fn may_write(self) -> bool {
        matches!(self, Standing::Writer | Standing::Unguarded)
    }
}

/// A tab's claim to write a match. Clones are the same claim; dropping the last one gives it
/// up.
#[derive(Clone)]
pub struct WriterLock {
    inner: Rc<Inner>,
}

/// Takes the lock or null, gives what the lock is held for.
type Granted = dyn FnMut(JsValue) -> JsValue;

struct Inner {
    name: String,
    standing: Cell<Standing>,
    // Gives the lock back when called.
    release: RefCell<Option<Function>>,
    // What the browser calls with the lock; replaced by each new request.
    granted: RefCell<Option<Closure<Granted>>>,
    on_change: Box<dyn Fn(Standing)>,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Manner {
    IfFree,
    Steal,
}

impl WriterLock {
    /// Asks to write this match. `on_change` hears of every change of [`WriterLock::standing`],
    /// the first answer included.
    pub fn request(id: &str, on_change: impl Fn(Standing) + 'static) -> WriterLock {
        let lock = WriterLock {
            inner: Rc::new(Inner {
                name: format!("dutystand/{id}"),
                standing: Cell::new(Standing::Asking),
                release: RefCell::default(),
                granted: RefCell::default(),
                on_change: Box::new(on_change),
            }),
        };
        lock.ask(Manner::IfFree);
        lock
    }

    /// The same for a moment's work: the claim once the browser has answered, or none where another
    /// tab writes.
    pub async fn at_once(id: &str) -> Option<WriterLock> {
        let answer: Rc<RefCell<Option<Function>>> = Rc::default();
        let to_come = answer.clone();
        let answered = Promise::new(&mut |done, _| {
            *to_come.borrow_mut() = Some(done);
        });
        let lock = WriterLock::request(id, move |_| {
            if let Some(done) = answer.borrow_mut().take() {
                // A resolving function takes anything and cannot fail.
                let _ = done.call0(&JsValue::UNDEFINED);
            }
        });
        // Only ever fulfilled.
        let _ = JsFuture::from(answered).await;
        lock.standing().may_write().then_some(lock)
    }

    /// What this tab may do now.
    pub fn standing(&self) -> Standing {
        self.inner.standing.get()
    }

    /// Takes the match over from whichever tab writes it; that one is told and only reads from
    /// then on. Once `on_change` says writer, the match is to be read again before the first
    /// line is written.
    pub fn take_over(&self) {
        if matches!(self.standing(), Standing::ReadOnly { .. }) {
            self.ask(Manner::Steal);
        }
    }

    fn ask(&self, manner: Manner) {
        let Some(manager) = of_navigator("locks") else {
            return self.inner.turn(Standing::Unguarded);
        };
        let Some(request) = method(&manager, "request") else {
            return self.inner.turn(Standing::Unguarded);
        };
        let weak = Rc::downgrade(&self.inner);
        let granted = Closure::<Granted>::new(move |lock: JsValue| held_while_wanted(&weak, &lock));
        let how = match manner {
            Manner::IfFree => "ifAvailable",
            Manner::Steal => "steal",
        };
        let asked = request.call3(
            &manager,
            &JsValue::from_str(&self.inner.name),
            &options(&[(how, JsValue::TRUE)]),
            granted.as_ref().unchecked_ref(),
        );
        *self.inner.granted.borrow_mut() = Some(granted);
        match asked.map(JsCast::unchecked_into::<Promise>) {
            Ok(over) => {
                let weak = Rc::downgrade(&self.inner);
                spawn_local(async move {
                    // Settles when the lock is given back, was not to be had, or was stolen.
                    if let Err(thrown) = JsFuture::from(over).await {
                        if let Some(inner) = weak.upgrade() {
                            inner.lost(&thrown);
                        }
                    }
                });
            }
            Err(thrown) => self.inner.lost(&thrown),
        }
    }
}

/// The browser's call with the lock, or with null where another tab has it. It holds the lock until
/// the returned promise is fulfilled.
fn held_while_wanted(claim: &Weak<Inner>, lock: &JsValue) -> JsValue {
    let Some(inner) = claim.upgrade() else {
        return JsValue::UNDEFINED;
    };
    if lock.is_null() || lock.is_undefined() {
        inner.turn(Standing::ReadOnly { robbed: false });
        return JsValue::UNDEFINED;
    }
    let held = Promise::new(&mut |resolve, _| {
        *inner.release.borrow_mut() = Some(resolve);
    });
    inner.turn(Standing::Writer);
    held.into()
}

impl Inner {
    fn turn(&self, standing: Standing) {
        if self.standing.replace(standing) != standing {
            (self.on_change)(standing);
        }
    }

    fn lost(&self, thrown: &JsValue) {
        // Whoever steals makes the request of the robbed one fail with this name; anything else is
        // a browser that has locks but gives none here.
        if error_name(thrown) == "AbortError" {
            self.release.borrow_mut().take();
            self.turn(Standing::ReadOnly { robbed: true });
        } else {
            self.turn(Standing::Unguarded);
        }
    }
}

impl Drop for Inner {
    fn drop(&mut self) {
        if let Some(release) = self.release.borrow_mut().take() {
            // A resolving function takes anything and cannot fail.
            let _ = release.call0(&JsValue::UNDEFINED);
        }
    }
}
