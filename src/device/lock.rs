//! One writer for a match: of all tabs that have it open, one may write, and another may take
//! over from it.
//!
//! The browser keeps the lock (W3C Web Locks API) and gives it back when a tab dies, so there are
//! no stale ones. A browser without locks, as each is on a page over plain http, has a lease in local
//! storage instead (`app::lease`).

use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

use js_sys::{Function, Object, Promise};
use wasm_bindgen::closure::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{spawn_local, JsFuture};

use super::coin::new_id;
use super::listen::{every, is_visible, Listener, Ticker};
use super::local::Local;
use super::reach::{error_name, method, of_navigator, options, window};
use app::lease::{self, Claim, Lease};
use app::ports::{Held, LocalStorage, Lock, OURS};

/// A tab's claim to write a match. Clones are the same claim; dropping the last one gives it
/// up.
#[derive(Clone)]
pub struct WriterLock {
    inner: Rc<Inner>,
}

/// How often a tab that only looks on asks whether the writer is gone, in milliseconds. Our own choice: a page that
/// is loaded again finds its lock taken until the page before has gone for good, and nobody should have to wait.
const LOOK_AGAIN_MS: u32 = 500;

struct Inner {
    name: String,
    held: Cell<Held>,
    // This tab's own name in a lease, what it claims there while it writes, and what looks after it.
    tab: String,
    claim: RefCell<Option<Claim>>,
    leased: RefCell<Option<(Ticker, Option<Listener>)>>,
    // Gives the lock back when called.
    release: RefCell<Option<Function>>,
    // Settles once the browser has it back.
    over: RefCell<Option<Promise>>,
    // Asks again while another tab has the lock.
    looks: RefCell<Option<Ticker>>,
    on_change: Box<dyn Fn(Held)>,
}

thread_local! {
    /// The locks that this page has given back and the browser does not have yet: its name, and what settles then.
    /// To ask meanwhile would find the lock taken by this very page.
    static ON_THE_WAY_BACK: RefCell<Vec<(String, Promise)>> = const { RefCell::new(Vec::new()) };
}

/// What settles once the lock of this name is back.
fn on_the_way_back(name: &str) -> Option<Promise> {
    ON_THE_WAY_BACK.with_borrow(|locks| {
        let its = locks.iter().find(|(of, _)| of == name);
        its.map(|(_, over)| over.clone())
    })
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Manner {
    IfFree,
    Steal,
}

impl WriterLock {
    /// Asks to write this match. `on_change` hears of every change of [`WriterLock::held`],
    /// the first answer included.
    pub fn request(id: &str, on_change: impl Fn(Held) + 'static) -> WriterLock {
        let lock = WriterLock {
            inner: Rc::new(Inner {
                name: format!("dutystand/{id}"),
                held: Cell::new(Held::Asking),
                tab: new_id(),
                claim: RefCell::default(),
                leased: RefCell::default(),
                release: RefCell::default(),
                over: RefCell::default(),
                looks: RefCell::default(),
                on_change: Box::new(on_change),
            }),
        };
        lock.inner.ask(Manner::IfFree);
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
        (lock.held() == Held::Here).then_some(lock)
    }
}

impl Lock for WriterLock {
    fn held(&self) -> Held {
        self.inner.held.get()
    }

    fn take_over(&self) {
        match self.held() {
            Held::Asking => {}
            Held::Elsewhere { .. } => self.inner.ask(Manner::Steal),
            // The mark of another tab may stand in the lease, and this tab has not looked since.
            Held::Here if self.inner.leased.borrow().is_some() => self.inner.take_lease(),
            Held::Here => {}
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
        // Whoever asks again knows it already, or has the lock by now.
        if inner.held.get() == Held::Asking {
            inner.turn(Held::Elsewhere { robbed: false });
            inner.keep_looking();
        }
        return JsValue::UNDEFINED;
    }
    inner.looks.borrow_mut().take();
    let held = Promise::new(&mut |resolve, _| {
        *inner.release.borrow_mut() = Some(resolve);
    });
    inner.turn(Held::Here);
    held.into()
}

impl Inner {
    fn turn(&self, held: Held) {
        if self.held.replace(held) != held {
            (self.on_change)(held);
        }
    }

    fn ask(self: &Rc<Self>, manner: Manner) {
        if let Some(over) = on_the_way_back(&self.name) {
            let weak = Rc::downgrade(self);
            spawn_local(async move {
                let _ = JsFuture::from(over).await;
                if let Some(inner) = weak.upgrade() {
                    inner.ask(manner);
                }
            });
            return;
        }
        let manager = of_navigator("locks");
        let request = manager.as_ref().and_then(|m| method(m, "request"));
        let (Some(manager), Some(request)) = (manager, request) else {
            return self.lease(manner);
        };
        let weak = Rc::downgrade(self);
        let granted = Closure::once_into_js(move |lock: JsValue| held_while_wanted(&weak, &lock));
        let how = match manner {
            Manner::IfFree => "ifAvailable",
            Manner::Steal => "steal",
        };
        let asked = request.call3(
            &manager,
            &JsValue::from_str(&self.name),
            &options(&[(how, JsValue::TRUE)]),
            &granted,
        );
        match asked.map(JsCast::unchecked_into::<Promise>) {
            Ok(over) => {
                *self.over.borrow_mut() = Some(over.clone());
                let weak = Rc::downgrade(self);
                spawn_local(async move {
                    // Settles when the lock is given back, was not to be had, or was stolen.
                    let settled = JsFuture::from(over.clone()).await;
                    ON_THE_WAY_BACK
                        .with_borrow_mut(|locks| locks.retain(|(_, it)| !Object::is(it, &over)));
                    if let (Err(thrown), Some(inner)) = (settled, weak.upgrade()) {
                        inner.lost(&thrown, manner);
                    }
                });
            }
            Err(thrown) => self.lost(&thrown, manner),
        }
    }

    /// Asks again until the tab that has the lock is gone. A tab that nobody looks at does not, or it would have the
    /// match whenever the one that writes is loaded again.
    fn keep_looking(self: &Rc<Self>) {
        let weak = Rc::downgrade(self);
        let ticker = every(LOOK_AGAIN_MS, move || {
            let Some(inner) = weak.upgrade() else { return };
            if inner.held.get() == (Held::Elsewhere { robbed: false }) && is_visible() {
                inner.ask(Manner::IfFree);
            }
        });
        *self.looks.borrow_mut() = Some(ticker);
    }

    fn lost(self: &Rc<Self>, thrown: &JsValue, manner: Manner) {
        // Whoever steals makes the request of the robbed one fail with this name; anything else is
        // a browser that has locks but gives none here.
        if error_name(thrown) == "AbortError" {
            self.release.borrow_mut().take();
            self.turn(Held::Elsewhere { robbed: true });
        } else if manner == Manner::Steal || self.held.get() == Held::Asking {
            self.lease(manner);
        }
    }

    // ---- Where there are no locks.

    fn lease_key(&self) -> String {
        format!("{OURS}l/{}", self.name)
    }

    /// The mark of whoever writes. Where local storage cannot be read, no other tab can see it either.
    fn mark(&self) -> Option<String> {
        Local.get(&self.lease_key()).ok().flatten()
    }

    fn lease_now(&self) -> Lease {
        lease::read(self.mark().as_deref(), self.claim.borrow().as_ref(), now())
    }

    fn take_lease(&self) {
        *self.claim.borrow_mut() = Some(Claim {
            term: lease::next_term(self.mark().as_deref()),
            tab: self.tab.clone(),
        });
        self.confirm();
    }

    fn confirm(&self) {
        if let Some(claim) = &*self.claim.borrow() {
            // Without storage there is nothing to share a match by.
            let _ = Local.set(&self.lease_key(), &lease::write(claim, now()));
        }
    }

    fn lease(self: &Rc<Self>, manner: Manner) {
        let free = manner == Manner::Steal || self.lease_now() != Lease::Held;
        if free {
            self.take_lease();
        }
        let weak = Rc::downgrade(self);
        let ticker = every(lease::CONFIRM_MS, move || {
            if let Some(inner) = weak.upgrade() {
                inner.look_at_lease();
            }
        });
        let weak = Rc::downgrade(self);
        // A page that goes gives the match back at once, or loading it again would find it taken.
        let leaving = window().map(|window| {
            Listener::new(&window, "pagehide", move |_| {
                if let Some(inner) = weak.upgrade() {
                    inner.give_lease_back();
                }
            })
        });
        *self.leased.borrow_mut() = Some((ticker, leaving));
        self.turn(if free {
            Held::Here
        } else {
            Held::Elsewhere { robbed: false }
        });
    }

    fn look_at_lease(&self) {
        match (self.held.get(), self.lease_now()) {
            (Held::Here, Lease::Held) => {
                self.claim.borrow_mut().take();
                self.turn(Held::Elsewhere { robbed: true });
            }
            (Held::Here, Lease::Mine | Lease::Free) => self.confirm(),
            // The tab that wrote is gone.
            (Held::Elsewhere { robbed: false }, Lease::Free) => {
                self.take_lease();
                self.turn(Held::Here);
            }
            (Held::Asking | Held::Elsewhere { .. }, _) => {}
        }
    }

    fn give_lease_back(&self) {
        if self.held.get() == Held::Here && self.lease_now() == Lease::Mine {
            let _ = Local.remove(&self.lease_key());
        }
    }
}

fn now() -> i64 {
    // Milliseconds since 1970 are whole and far below what an i64 holds.
    #[allow(clippy::cast_possible_truncation)]
    let now = js_sys::Date::now() as i64;
    now
}

impl Drop for Inner {
    fn drop(&mut self) {
        if let Some(release) = self.release.borrow_mut().take() {
            if let Some(over) = self.over.borrow_mut().take() {
                let name = self.name.clone();
                ON_THE_WAY_BACK.with_borrow_mut(|locks| locks.push((name, over)));
            }
            // A resolving function takes anything and cannot fail.
            let _ = release.call0(&JsValue::UNDEFINED);
        }
        if self.leased.borrow().is_some() {
            self.give_lease_back();
        }
    }
}
