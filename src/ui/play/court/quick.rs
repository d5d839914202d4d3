//! Two taps where no rally can have been: the second is held back and asked about.

use leptos::prelude::*;

use super::Court;
use app::setting::Setting;
use game::{Kind, NO_RALLY_MS};

impl Court {
    /// Gives a point. One that comes sooner than a rally can be played is held back; `at` is when the finger
    /// came, in milliseconds of the page's clock, for a busy phone may hear of it much later.
    pub fn point(self, number: u32, rally: Kind, at: f64) -> bool {
        let last = self.session.with_untracked(|r| r.last_rally().map(|e| e.n));
        let too_soon = self.tapped.get_value().is_some_and(|(entry, before)| {
            Some(entry) == last && (0.0..NO_RALLY_MS as f64).contains(&(at - before))
        });
        if !too_soon || untrack(|| self.counts_quick_taps()) {
            let made = self.submit_at(number, rally);
            if made {
                self.tapped.set_value(Some((number, at)));
            }
            return made;
        }
        let made = self.session.hold_at(number, rally);
        if made {
            self.tapped.set_value(last.map(|entry| (entry, at)));
            if untrack(|| self.held_since()).is_none() {
                self.ask_since(number - 1);
            }
            self.shell.news(text::held_news().to_owned());
        }
        made
    }

    /// Behind which entry points that were held back are asked about.
    #[must_use]
    pub fn held_since(self) -> Option<u32> {
        let id = self.session.id()?;
        let held = self.held.read();
        held.as_ref().filter(|(of, _)| *of == id).map(|(_, n)| *n)
    }

    /// The question about them is answered.
    pub fn held_answered(self) {
        self.ask_since(self.session.next_now() - 1);
    }

    fn ask_since(self, entry: u32) {
        let Some(id) = untrack(|| self.session.id()) else {
            return;
        };
        // Kept for a page that dies meanwhile. Without storage the log still tells of the last tap.
        device::settings().set(Setting::HeldPoint, &format!("{id} {entry}"));
        self.held.set(Some((id, entry)));
    }

    /// Whether taps count at once, however quick they are.
    #[must_use]
    pub fn counts_quick_taps(self) -> bool {
        let told = self.quick.get();
        told.unwrap_or_else(|| device::settings().is_on(Setting::QuickTaps))
    }

    /// Counts quick taps at once, or asks; kept on this phone.
    pub fn set_quick_taps(self, at_once: bool) {
        device::settings().switch(Setting::QuickTaps, at_once);
        self.quick.set(Some(at_once));
    }
}
