//! The matches on this phone, as the screens see them: `app::library` in signals.

use std::sync::Arc;

use leptos::prelude::*;

use crate::session::{use_session, Session};
use crate::shell::use_shell;
use app::library;
use app::stored_match::{ListedMatch, StoredMatch};

/// All of them, once they are read. Copies are the same.
#[derive(Clone, Copy)]
pub struct Library {
    session: Session,
    library: StoredValue<library::Library, LocalStorage>,
    listed: RwSignal<Option<library::List>>,
    not_deleted: RwSignal<usize>,
}

impl Library {
    /// Begins to read the storage for a list, as long as the screen is there that shows it.
    #[must_use]
    pub fn begin() -> Library {
        let session = use_session();
        let listed = RwSignal::new(None);
        let app = session.library(move |all| {
            // The screen may be gone by now.
            listed.try_set(Some(all.clone()));
        });
        let library = Library {
            session,
            library: StoredValue::new_local(app),
            listed,
            not_deleted: RwSignal::new(0),
        };
        library.refresh();
        let imports = use_shell().imports;
        Effect::new(move |before: Option<()>| {
            imports.came().track();
            if before.is_some() {
                library.refresh();
            }
        });
        on_cleanup(move || {
            library.library.try_with_value(library::Library::close);
        });
        library
    }

    /// What decides and reads. Tasks hold it themselves: it outlives the screen.
    #[must_use]
    pub fn app(self) -> library::Library {
        self.library.get_value()
    }

    /// Reads the storage again; nothing where the screen is gone.
    pub fn refresh(self) {
        self.library.try_with_value(library::Library::refresh);
    }

    /// All matches, the latest first; none while they are being read.
    #[must_use]
    pub fn listed(self) -> Option<library::List> {
        self.listed.get()
    }

    /// Whether the list has been read.
    #[must_use]
    pub fn is_read(self) -> bool {
        self.listed.read().is_some()
    }

    /// The latest match that is not over.
    #[must_use]
    pub fn running(self) -> Option<Arc<ListedMatch>> {
        library::running(self.listed.read().as_ref()?).cloned()
    }

    /// The ids of the matches that are being played at this moment; none while the list is being read.
    #[must_use]
    pub fn under_way(self) -> Option<Vec<String>> {
        let all = self.listed.read();
        Some(library::under_way(all.as_ref()?, self.session.time_now()))
    }

    /// Reads and folds one match.
    pub async fn read(self, id: &str) -> StoredMatch {
        StoredMatch::read(&self.session.store(), &device::settings(), id).await
    }

    /// How many of the matches that were to be deleted last are still here.
    #[must_use]
    pub fn not_deleted(self) -> usize {
        self.not_deleted.get()
    }

    /// Archives matches, or brings them back.
    pub fn archive(self, ids: &[String], archived: bool) {
        self.app().archive(ids, archived);
    }

    /// Deletes everything from this phone for good. `done` hears whether all of it went.
    pub fn delete_all(self, done: Callback<bool>) {
        let app = self.app();
        device::spawn(async move {
            done.try_run(app.delete_all().await);
        });
    }

    /// Deletes matches from this phone for good. `done` hears how many stay.
    pub fn delete(self, ids: Vec<String>, done: impl FnOnce(usize) + 'static) {
        let app = self.app();
        device::spawn(async move {
            let stay = app.delete(&ids).await;
            // The screen may be gone by now.
            self.not_deleted.try_set(stay);
            done(stay);
        });
    }
}
