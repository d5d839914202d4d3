//! Working without a network: the service worker that keeps every file of the program, and a new
//! version that waits until somebody wants it.
//!
//! Nothing here takes a new version by itself: in the middle of a match that would put new code
//! beside an old page.

use app::machine::Offline;
use std::cell::{Cell, RefCell};
use std::rc::Rc;

use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{spawn_local, JsFuture};
use web_sys::{
    MessageEvent, RegistrationOptions, ServiceWorker, ServiceWorkerContainer,
    ServiceWorkerRegistration, ServiceWorkerState, ServiceWorkerUpdateViaCache,
};

use super::listen::{after, on_resume, Listener, Listeners, Ticker};
use super::reach::{error_words, of_navigator, options, property, window};
use super::screen::reload;

/// Installed apps on iOS have been seen not to tell when the new worker took over; then the
/// page is loaded again after this long.
const TAKE_OVER_MS: u32 = 2_000;

/// The page's dealings with its service worker. Clones are the same; lives as long as the page,
/// in the ordinary course.
#[derive(Clone)]
pub struct Worker {
    inner: Rc<Inner>,
}

struct Inner {
    state: RefCell<Offline>,
    registration: RefCell<Option<ServiceWorkerRegistration>>,
    on_change: Box<dyn Fn(&Offline)>,
    // On the container, the registration and the page.
    listeners: RefCell<Vec<Listener>>,
    resumed: RefCell<Option<Listeners>>,
    // On the worker being installed or activated, replaced with each one.
    under_way: RefCell<Option<Listener>>,
    // Whether the worker in office answers with an older version than its own, as it does while a
    // match runs.
    answers_with_older: Cell<bool>,
    // Whether a worker stands behind this page; another one after it is of a newer version.
    is_controlled: Cell<bool>,
    taken_elsewhere: Cell<bool>,
    taking_over: Cell<bool>,
    reload: RefCell<Option<Ticker>>,
}

impl Worker {
    /// Registers the script (a relative address). `on_change` hears of every change of
    /// [`Worker::state`].
    pub fn register(script: &str, on_change: impl Fn(&Offline) + 'static) -> Worker {
        let container =
            of_navigator("serviceWorker").map(JsCast::unchecked_into::<ServiceWorkerContainer>);
        let worker = Worker {
            inner: Rc::new(Inner {
                state: RefCell::new(match container {
                    Some(_) => Offline::Installing,
                    None if !is_secure() => Offline::Insecure,
                    None => Offline::NotSupported,
                }),
                registration: RefCell::default(),
                on_change: Box::new(on_change),
                listeners: RefCell::default(),
                resumed: RefCell::default(),
                under_way: RefCell::default(),
                answers_with_older: Cell::new(false),
                is_controlled: Cell::new(
                    container
                        .as_ref()
                        .is_some_and(|container| container.controller().is_some()),
                ),
                taken_elsewhere: Cell::new(false),
                taking_over: Cell::new(false),
                reload: RefCell::default(),
            }),
        };
        if let Some(container) = container {
            worker.inner.hear(&container);
            let weak = Rc::downgrade(&worker.inner);
            *worker.inner.resumed.borrow_mut() = Some(on_resume(move || {
                if let Some(inner) = weak.upgrade() {
                    inner.check();
                }
            }));
            // Without this the browser may answer from its own cache for a day.
            let fresh = RegistrationOptions::new();
            fresh.set_update_via_cache(ServiceWorkerUpdateViaCache::None);
            let asked = container.register_with_options(script, &fresh);
            let weak = Rc::downgrade(&worker.inner);
            spawn_local(async move {
                let answer = JsFuture::from(asked).await;
                let Some(inner) = weak.upgrade() else {
                    return;
                };
                match answer {
                    Ok(registration) => inner.registered(registration.unchecked_into()),
                    Err(thrown) => inner.not_registered(&container, &thrown).await,
                }
            });
        }
        worker
    }

    /// How far things are now.
    pub fn state(&self) -> Offline {
        self.inner.state.borrow().clone()
    }

    /// Looks for a new version. Also done whenever the page comes back. Without a network
    /// nothing happens.
    pub fn check(&self) {
        self.inner.check();
    }

    /// Lets the newer version take over and loads the page again. For the start screen alone,
    /// because somebody asked for it. Where a match runs on this phone the worker refuses, and
    /// nothing changes.
    pub fn take_over(&self) {
        let registration = self.inner.registration.borrow().clone();
        let Some(worker) = registration.and_then(|r| r.waiting().or_else(|| r.active())) else {
            return;
        };
        self.inner.taking_over.set(true);
        post(&worker, "take-over", &[]);
        *self.inner.reload.borrow_mut() = Some(after(TAKE_OVER_MS, reload));
    }

    /// This match runs: until the moment given, milliseconds since 1970, no newer version answers on
    /// this phone, in no tab, and not after a kill.
    pub fn match_runs(&self, id: &str, until: i64) {
        // Exact: a moment in milliseconds has far less than 53 bits.
        #[allow(clippy::cast_precision_loss)]
        let until = JsValue::from_f64(until as f64);
        self.tell("runs", &[("id", JsValue::from_str(id)), ("until", until)]);
    }

    /// This match runs no more.
    pub fn match_over(&self, id: &str) {
        self.tell("over", &[("id", JsValue::from_str(id))]);
    }

    /// Of all matches on this phone only these run; what was said of others was overtaken.
    pub fn only_these_run<'a>(&self, ids: impl Iterator<Item = &'a str>) {
        let ids: js_sys::Array = ids.map(JsValue::from_str).collect();
        self.tell("running", &[("ids", ids.into())]);
    }

    /// Tells the worker in office. On a first visit there is none yet, and no older version either.
    fn tell(&self, what: &str, more: &[(&str, JsValue)]) {
        let active = self
            .inner
            .registration
            .borrow()
            .as_ref()
            .and_then(ServiceWorkerRegistration::active);
        if let Some(worker) = active {
            post(&worker, what, more);
        }
    }
}

/// Whether the browser calls the connection secure (W3C Secure Contexts).
fn is_secure() -> bool {
    window()
        .and_then(|window| property(&window, "isSecureContext"))
        .and_then(|value| value.as_bool())
        .unwrap_or(true)
}

/// Sends a worker a message; one that is gone hears nothing, and its successor is told anew.
fn post(worker: &ServiceWorker, what: &str, more: &[(&str, JsValue)]) {
    let mut message = vec![("type", JsValue::from_str(what))];
    message.extend_from_slice(more);
    let _ = worker.post_message(&options(&message));
}

impl Inner {
    /// Listens to what the browser and the worker say of themselves.
    fn hear(self: &Rc<Self>, container: &ServiceWorkerContainer) {
        let (said, changed) = (Rc::downgrade(self), Rc::downgrade(self));
        // Typed messages only arrive once they are asked for.
        if let Some(start) = super::reach::method(container, "startMessages") {
            let _ = start.call0(container);
        }
        self.listeners.borrow_mut().extend([
            Listener::new(container, "message", move |event| {
                if let Some(inner) = said.upgrade() {
                    inner.was_told(&event);
                }
            }),
            Listener::new(container, "controllerchange", move |_| {
                if let Some(inner) = changed.upgrade() {
                    if inner.taking_over.get() {
                        inner.load_again();
                    } else {
                        inner.taken_elsewhere.set(inner.is_controlled.replace(true));
                        inner.look();
                    }
                }
            }),
        ]);
    }

    /// What the worker says of the version that answers; everything else the registration shows.
    fn was_told(self: &Rc<Self>, event: &web_sys::Event) {
        let data = event
            .dyn_ref::<MessageEvent>()
            .map(MessageEvent::data)
            .unwrap_or_default();
        let text = property(&data, "type").and_then(|value| value.as_string());
        match text.as_deref() {
            Some("release") => {
                let newer = property(&data, "newer").and_then(|value| value.as_bool());
                self.answers_with_older.set(newer == Some(true));
                if self.taking_over.get() && newer == Some(false) && self.no_worker_waits() {
                    self.load_again();
                }
            }
            Some("held") => {
                self.taking_over.set(false);
                self.reload.borrow_mut().take();
            }
            _ => {}
        }
        self.look();
    }

    /// Whether the newer version needs no change of the worker, which the browser tells of by itself.
    fn no_worker_waits(&self) -> bool {
        self.registration
            .borrow()
            .as_ref()
            .is_some_and(|registration| registration.waiting().is_none())
    }

    fn load_again(&self) {
        self.reload.borrow_mut().take();
        reload();
    }

    fn registered(self: &Rc<Self>, registration: ServiceWorkerRegistration) {
        if let Some(worker) = registration.active() {
            post(&worker, "look", &[]);
        }
        let weak = Rc::downgrade(self);
        let found = Listener::new(&registration, "updatefound", move |_| {
            if let Some(inner) = weak.upgrade() {
                inner.look();
            }
        });
        self.listeners.borrow_mut().push(found);
        *self.registration.borrow_mut() = Some(registration);
        self.look();
    }

    /// Registering fails without a network too, while an earlier visit's worker still serves.
    async fn not_registered(self: &Rc<Self>, container: &ServiceWorkerContainer, thrown: &JsValue) {
        match JsFuture::from(container.get_registration()).await {
            Ok(found) if found.is_instance_of::<ServiceWorkerRegistration>() => {
                self.registered(found.unchecked_into());
            }
            _ => self.turn(Offline::Failed(error_words(thrown))),
        }
    }

    /// Reads the registration and listens to the worker that is on its way, if any.
    fn look(self: &Rc<Self>) {
        let Some(registration) = self.registration.borrow().clone() else {
            return;
        };
        // One that is just being activated still has to be heard when it is done: its own
        // message comes a moment before.
        let under_way = registration.installing().or_else(|| {
            registration
                .active()
                .filter(|worker| worker.state() != ServiceWorkerState::Activated)
        });
        if let Some(worker) = under_way {
            let weak = Rc::downgrade(self);
            let watched = worker.clone();
            let listener = Listener::new(&worker, "statechange", move |_| {
                let Some(inner) = weak.upgrade() else {
                    return;
                };
                if watched.state() == ServiceWorkerState::Redundant && inner.is_first() {
                    inner.turn(Offline::Incomplete);
                } else {
                    inner.look_at_state();
                }
            });
            *self.under_way.borrow_mut() = Some(listener);
        }
        self.look_at_state();
    }

    /// Whether no version has been kept before.
    fn is_first(&self) -> bool {
        self.registration
            .borrow()
            .as_ref()
            .is_some_and(|registration| {
                registration.active().is_none() && registration.waiting().is_none()
            })
    }

    fn look_at_state(&self) {
        let state = match &*self.registration.borrow() {
            Some(registration) => {
                let active = registration
                    .active()
                    .is_some_and(|worker| worker.state() == ServiceWorkerState::Activated);
                let newer = registration.waiting().is_some() || self.answers_with_older.get();
                match (active, newer) {
                    (true, true) => Offline::NewVersionWaiting,
                    (true, false) if self.taken_elsewhere.get() => Offline::NewVersionElsewhere,
                    (true, false) => Offline::ReadyOffline,
                    (false, _) => Offline::Installing,
                }
            }
            None => return,
        };
        self.turn(state);
    }

    fn turn(&self, state: Offline) {
        let before = self.state.replace(state.clone());
        if before != state {
            (self.on_change)(&state);
        }
    }

    fn check(&self) {
        if let Some(registration) = &*self.registration.borrow() {
            if let Ok(looking) = registration.update() {
                spawn_local(async move {
                    // Fails without a network, which is the ordinary case in a hall.
                    let _ = JsFuture::from(looking).await;
                });
            }
        }
    }
}
