//! What is open on a screen, so that the phone's back button closes it before it leaves the screen.
//!
//! Each thing that opens adds an entry to the browser's history, within the tap that opened it: browsers skip
//! entries that nobody asked for. What is closed by its own button leaves its entry behind; that one is used
//! again, and stepped over on the way back.

use leptos::prelude::*;

/// Closes it; false where it has to stay.
type Close = Callback<(), bool>;

/// Where in the history this page is: at which screen of it, and how many entries above that one.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
struct Place {
    screen: String,
    above: usize,
}

impl Place {
    fn here() -> Place {
        let mark = device::history_mark();
        let mut words = mark.split(' ');
        let screen = words.next().unwrap_or_default().to_owned();
        let above = words.next().and_then(|word| word.parse().ok());
        Place {
            screen,
            above: above.unwrap_or(0),
        }
    }

    fn mark(&self) -> String {
        format!("{} {}", self.screen, self.above)
    }
}

/// What a step in the history came to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Step {
    /// It has closed something, or is on its way over what was closed already.
    Within,
    /// It leads to another screen.
    Away,
}

/// Everything that is open. Copies are the same.
#[derive(Clone, Copy)]
pub struct Opened {
    open: RwSignal<Vec<(u32, Close)>>,
    next: StoredValue<u32>,
    place: StoredValue<Place>,
}

impl Opened {
    /// Nothing is open in a page that was just loaded; what it had open before may have left entries.
    pub fn begin() -> Opened {
        Opened {
            open: RwSignal::new(Vec::new()),
            next: StoredValue::new(0),
            place: StoredValue::new(Place::here()),
        }
    }

    /// Whether anything is open.
    #[must_use]
    pub fn any(self) -> bool {
        !self.open.read().is_empty()
    }

    /// Whether anything is open, without listening.
    #[must_use]
    pub fn any_now(self) -> bool {
        !self.open.read_untracked().is_empty()
    }

    /// Something opens, until the component that says so is gone.
    pub fn while_here(self, close: impl Fn() -> bool + Send + Sync + 'static) {
        let id = self.next.get_value();
        self.next.set_value(id.wrapping_add(1));
        self.open
            .update(|open| open.push((id, Callback::new(move |()| close()))));
        self.reserve();
        on_cleanup(move || {
            // The page itself may be going.
            self.open
                .try_update(|open| open.retain(|(of, _)| *of != id));
        });
    }

    /// An entry of the history for each thing that is open.
    fn reserve(self) {
        let wanted = self.open.read_untracked().len();
        let mut place = self.place.get_value();
        if place.above >= wanted {
            return;
        }
        if place.screen.is_empty() {
            place.screen = device::new_id();
            device::mark_history(&place.mark());
        }
        while place.above < wanted {
            place.above += 1;
            device::push_history(&place.mark());
        }
        self.place.set_value(place);
    }

    /// The person went through the history.
    pub fn came(self) -> Step {
        let now = Place::here();
        let before = self.place.get_value();
        self.place.set_value(now.clone());
        if now.screen.is_empty() || now.screen != before.screen {
            self.open.set(Vec::new());
            return Step::Away;
        }
        // Forward again, to where something was open once.
        if now.above >= before.above {
            return Step::Within;
        }
        let mut closed = false;
        while self.open.read_untracked().len() > now.above {
            let Some((id, close)) = self.open.with_untracked(|open| open.last().copied()) else {
                break;
            };
            if !close.run(()) {
                device::go_in_history(1);
                return Step::Within;
            }
            self.open.update(|open| open.retain(|(of, _)| *of != id));
            closed = true;
        }
        if !closed {
            device::go_in_history(-1);
        }
        Step::Within
    }

    /// The screen goes, and another takes its place in the history. Whether the entry on top is one of its
    /// own, which the new screen may have.
    pub fn leave(self) -> bool {
        let left = self.place.get_value();
        self.open.set(Vec::new());
        self.place.set_value(Place::default());
        left.above > 0
    }

    /// The address of this entry was changed, which takes its mark off.
    pub fn mark_again(self) {
        let place = self.place.get_value();
        if !place.screen.is_empty() {
            device::mark_history(&place.mark());
        }
    }

    /// So many entries lie between this one and the screen before.
    pub fn steps_back(self) -> i32 {
        let above = self.place.with_value(|place| place.above);
        i32::try_from(above).unwrap_or(0) + 1
    }
}
