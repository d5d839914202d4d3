//! The matches on this phone.

use leptos::prelude::*;

use super::kept::{put_away, Kept};
use crate::device;
use crate::record::{self, Log, TakeIn};
use crate::ui::before::forget_drafts;
use crate::ui::session::{use_session, Session};

/// All of them, once they are read. Copies are the same.
#[derive(Clone, Copy)]
pub struct Library {
    session: Session,
    all: RwSignal<Option<Vec<Kept>>>,
    came: RwSignal<Vec<String>>,
    said: RwSignal<Vec<String>>,
}

impl Library {
    /// Begins to read the storage.
    #[must_use]
    pub fn begin() -> Library {
        let library = Library {
            session: use_session(),
            all: RwSignal::new(None),
            came: RwSignal::default(),
            said: RwSignal::default(),
        };
        library.refresh();
        library
    }

    /// Reads the storage again.
    pub fn refresh(self) {
        device::spawn(self.reread());
    }

    /// The same; the list is there once it is through.
    pub async fn reread(self) {
        let every = self.session.journal().read_every().await;
        let mut all: Vec<Kept> = every
            .into_iter()
            .map(|(id, copies)| Kept::of(id, &copies))
            .collect();
        all.sort_by_key(|kept| std::cmp::Reverse(kept.last_at));
        // The screen may be gone by now.
        self.all.try_set(Some(all));
    }

    /// All matches, the latest first; none while they are being read.
    #[must_use]
    pub fn all(self) -> Option<Vec<Kept>> {
        self.all.get()
    }

    /// The latest match that is not over.
    #[must_use]
    pub fn running(self) -> Option<Kept> {
        self.all
            .read()
            .as_ref()?
            .iter()
            .find(|k| k.is_running())
            .cloned()
    }

    /// The ids of the matches that are being played at this moment; none while the list is being read.
    #[must_use]
    pub fn under_way(self) -> Option<Vec<String>> {
        let now = self.session.clock().stamp();
        let all = self.all.read();
        let under_way = all.as_ref()?.iter().filter(|kept| kept.is_under_way(now));
        Some(under_way.map(|kept| kept.id.clone()).collect())
    }

    /// What to do with a record that comes from outside.
    #[must_use]
    pub fn take_in(self, log: &Log) -> TakeIn {
        let all = self.all.read_untracked();
        let here = all.iter().flatten().map(|k| (k.id.as_str(), k.entries()));
        record::take_in(log, here)
    }

    /// Counts a match that was just written among those here, without reading all of them again.
    pub fn hold(self, kept: Kept) {
        // The screen may be gone by now.
        self.all.try_update(|all| {
            let all = all.get_or_insert_default();
            all.retain(|here| here.id != kept.id);
            all.push(kept);
        });
    }

    /// These came from outside just now, and this is to be said of it.
    pub fn arrived(self, ids: Vec<String>, says: Vec<String>) {
        // The screen may be gone by now.
        self.came.try_set(ids);
        self.said.try_set(says);
    }

    /// What is to be said of what came last.
    #[must_use]
    pub fn said(self) -> Vec<String> {
        self.said.get()
    }

    /// Whether a match came from outside just now.
    #[must_use]
    pub fn just_came(self, id: &str) -> bool {
        self.came.read().iter().any(|came| came == id)
    }

    /// Puts a match away, or brings it back.
    pub fn put_away(self, id: &str, away: bool) {
        put_away(id, away);
        self.refresh();
    }

    /// Removes everything from this phone for good, settings too. `done` hears whether all of it
    /// went.
    pub fn wipe(self, done: Callback<bool>) {
        let session = self.session;
        device::spawn(async move {
            session.close();
            let outcome = session.journal().forget_all().await;
            self.refresh();
            done.try_run(outcome.is_ok());
        });
    }

    /// Removes a match from this phone for good.
    pub fn delete(self, id: String) {
        let session = self.session;
        let open = untrack(|| session.id());
        device::spawn(async move {
            if open.as_ref() == Some(&id) {
                session.close();
            }
            forget_drafts(&id);
            put_away(&id, false);
            // What could not be removed shows in the list again, and in the journal's health.
            let _ = session.journal().forget(&id).await;
            self.refresh();
        });
    }
}
