//! The matches on this phone.

use leptos::prelude::*;

use super::kept::Kept;
use crate::game::Entry;
use crate::ui::before::forget_drafts;
use crate::ui::session::{use_session, Session};

/// All of them, once they are read. Copies are the same.
#[derive(Clone, Copy)]
pub struct Library {
    session: Session,
    all: RwSignal<Option<Vec<Kept>>>,
}

impl Library {
    /// Begins to read the storage.
    #[must_use]
    pub fn begin() -> Library {
        let library = Library {
            session: use_session(),
            all: RwSignal::new(None),
        };
        library.refresh();
        library
    }

    /// Reads the storage again.
    pub fn refresh(self) {
        let journal = self.session.journal();
        leptos::task::spawn_local(async move {
            let every = journal.read_every().await;
            let mut all: Vec<Kept> = every
                .into_iter()
                .map(|(id, copies)| Kept::of(id, &copies))
                .collect();
            all.sort_by_key(|kept| std::cmp::Reverse(kept.last_at));
            // The screen may be gone by now.
            self.all.try_set(Some(all));
        });
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

    /// The match of that id.
    #[must_use]
    pub fn find(self, id: &str) -> Option<Kept> {
        let all = self.all.read_untracked();
        all.as_ref()?.iter().find(|k| k.id == id).cloned()
    }

    /// The id under which that very log is here.
    #[must_use]
    pub fn holds(self, entries: &[Entry]) -> Option<String> {
        let all = self.all.read_untracked();
        let same = all.iter().flatten().find(|k| k.entries() == entries);
        same.map(|k| k.id.clone())
    }

    /// Removes a match from this phone for good.
    pub fn delete(self, id: String) {
        let session = self.session;
        let open = untrack(|| session.id());
        leptos::task::spawn_local(async move {
            if open.as_ref() == Some(&id) {
                session.close();
            }
            forget_drafts(&id);
            // What could not be removed shows in the list again, and in the journal's health.
            let _ = session.journal().forget(&id).await;
            self.refresh();
        });
    }
}
