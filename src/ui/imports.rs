//! The files that come in, as the screens see it: `app::importer` in signals. There is one for the page: what was
//! begun outlives its screen, is said on the next one that lists matches, and is stopped from there.

use std::cell::OnceCell;

use leptos::prelude::*;

use super::session::Session;
use app::importer::{ImportEvent, ImportOutcome, Importer, OtherFiles, Progress};
use app::ports::PickedFile;

thread_local! {
    // One for the page, from the first file on. Whatever the shell holds loads with the start, so it is not there.
    static IMPORTER: OnceCell<Importer> = const { OnceCell::new() };
}

/// What comes in, how far it is, and what came of the last. Copies are the same.
#[derive(Clone, Copy)]
pub struct Imports {
    session: Session,
    progress: RwSignal<Option<String>>,
    came: RwSignal<Vec<String>>,
    said: RwSignal<Vec<String>>,
}

impl Imports {
    /// Nothing comes in yet.
    #[must_use]
    pub fn begin(session: Session) -> Imports {
        Imports {
            session,
            progress: RwSignal::new(None),
            came: RwSignal::default(),
            said: RwSignal::default(),
        }
    }

    /// What takes in files and records.
    #[must_use]
    pub fn importer(self) -> Importer {
        let begin = || {
            let library = self.session.library(|_| {});
            Importer::new(library, move |event| self.hear(event))
        };
        IMPORTER.with(|importer| importer.get_or_init(begin).clone())
    }

    fn hear(self, event: ImportEvent) {
        match event {
            ImportEvent::Progress(far) => {
                self.progress.set(Some(text::import_progress(far)));
                if far == Progress::Reading {
                    self.forget_last();
                }
            }
            ImportEvent::Over(ImportOutcome { came, notes }) => {
                self.progress.set(None);
                self.said.set(text::import_notes(&notes));
                self.came.set(came);
            }
        }
    }

    /// Takes in files, behind those that are taken in already.
    pub fn take_files(self, files: Vec<device::PickedFile>, others: Option<OtherFiles>) {
        let boxed = |file| Box::new(file) as Box<dyn PickedFile>;
        let files = files.into_iter().map(boxed).collect();
        self.importer().take_files(files, others);
    }

    /// How far it is, in words; none where nothing comes in.
    #[must_use]
    pub fn progress(self) -> Option<String> {
        self.progress.get()
    }

    /// The ids of the matches that came with the last files; none once that was seen.
    #[must_use]
    pub fn came(self) -> RwSignal<Vec<String>> {
        self.came
    }

    /// What is to be said of the last files.
    #[must_use]
    pub fn said(self) -> Vec<String> {
        self.said.get()
    }

    /// What came of the last files was seen.
    pub fn forget_last(self) {
        for all in [self.came, self.said] {
            if !all.read_untracked().is_empty() {
                all.set(Vec::new());
            }
        }
    }
}
