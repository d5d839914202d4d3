//! What time it is, and how long ago something was: right over a locked phone, a reload and a
//! wall clock that somebody sets.
//!
//! A count-down keeps the stamp of its start and compares it with [`Clock::stamp`]; it never counts
//! ticks. Nothing can sound or show while the page is off screen.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use super::listen::{is_visible, on_resume, on_visibility, Listeners};
use super::reach::window;
use super::settings::settings;
use app::setting::Setting;
use app::skew::{Reading, Skew};

/// The page's clock. Clones are the same clock.
#[derive(Clone)]
pub struct Clock {
    inner: Rc<Inner>,
}

struct Inner {
    skew: RefCell<Skew>,
    // Whether the page was off screen at any time since the last reading.
    gap: Cell<bool>,
    listeners: RefCell<Vec<Listeners>>,
}

impl Clock {
    /// Starts the clock with the skew kept by the last visit. One for a page.
    pub fn start() -> Clock {
        let kept = settings()
            .get(Setting::ClockSkew)
            .and_then(|text| text.parse().ok())
            .unwrap_or(0);
        let inner = Rc::new(Inner {
            skew: RefCell::new(Skew::start(both_clocks(false), kept)),
            gap: Cell::new(false),
            listeners: RefCell::new(Vec::new()),
        });
        let (left, back) = (Rc::downgrade(&inner), Rc::downgrade(&inner));
        *inner.listeners.borrow_mut() = vec![
            on_visibility(move |visible| {
                if let (Some(inner), false) = (left.upgrade(), visible) {
                    // The last reading on screen: what comes after it is the gap.
                    inner.read_over(inner.gap.get());
                    inner.gap.set(true);
                }
            }),
            on_resume(move || {
                if let Some(inner) = back.upgrade() {
                    inner.gap.set(true);
                    inner.read();
                }
            }),
        ];
        Clock { inner }
    }

    /// Milliseconds since 1970, to be written beside an entry. Does not jump when the phone's
    /// clock is set during a match, so that two stamps always differ by the time between them.
    pub fn stamp(&self) -> i64 {
        self.inner.read()
    }

    /// Trusts the wall clock again as it stands. To be called when nothing is being timed: a
    /// phone whose wrong clock was put right must not stamp wrong times for ever.
    pub fn settle(&self) {
        settings().forget(Setting::ClockSkew);
        *self.inner.skew.borrow_mut() = Skew::start(both_clocks(false), 0);
    }
}

impl Inner {
    fn read(&self) -> i64 {
        // Off screen the monotonic clock may be standing still at this very moment.
        let hidden = !is_visible();
        let gap = self.gap.replace(hidden) || hidden;
        self.read_over(gap)
    }

    fn read_over(&self, gap: bool) -> i64 {
        let mut skew = self.skew.borrow_mut();
        let set = skew.read(both_clocks(gap));
        let (steady, total) = (skew.steady(), skew.skew());
        drop(skew);
        if set.is_some() {
            // Where it cannot be kept, this visit is right all the same.
            settings().set(Setting::ClockSkew, &total.to_string());
        }
        steady
    }
}

/// Whole milliseconds are enough, and both clocks stay far below what they can hold.
#[allow(clippy::cast_possible_truncation)]
fn both_clocks(gap: bool) -> Reading {
    let wall = js_sys::Date::now() as i64;
    let mono = window()
        .and_then(|window| window.performance())
        // Without a monotonic clock every reading counts as one after a gap.
        .map(|performance| performance.now() as i64);
    Reading {
        wall,
        mono: mono.unwrap_or(0),
        gap: gap || mono.is_none(),
    }
}
