//! Takes in files, one or a whole backup, one after the other: how far it is, what came, what is said of it.

mod import;

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;

use super::import_note::{FileNote, ImportNote};
use super::library::Library;
use super::ports::PickedFile;
use super::settings::Settings;
use import::Import;
use record::Log;

/// Takes in a file that is neither a match nor a backup, under a new id: what became of it, and whether it is here
/// now; none where it is of no kind that is taken in there.
pub type OtherFiles = fn(&Settings, &str, &str) -> Option<(FileNote, bool)>;

/// How far an import is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Progress {
    /// Files are read.
    Reading,
    /// This match of so many is taken in.
    Match {
        /// Counted from 1.
        place: usize,
        /// How many there are.
        all: usize,
    },
}

/// What an import says of itself.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportEvent {
    /// It has come so far.
    Progress(Progress),
    /// All files are through.
    Over(ImportOutcome),
}

/// What an import has come to.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ImportOutcome {
    /// The matches that came with the files.
    pub came: Vec<String>,
    /// What is said of those files.
    pub notes: Vec<ImportNote>,
}

type Publish = dyn Fn(ImportEvent);

/// A file that was chosen, and what else is taken in where it was.
type Waiting = (Box<dyn PickedFile>, Option<OtherFiles>);

struct Inner {
    library: Library,
    is_under_way: Cell<bool>,
    // Files that were chosen and not taken in yet.
    waiting: RefCell<VecDeque<Waiting>>,
    is_stopped: Cell<bool>,
    // How many files somebody did not want any more.
    left_out: Cell<usize>,
    publish: Box<Publish>,
}

/// Takes in files. Clones are the same.
#[derive(Clone)]
pub struct Importer {
    inner: Rc<Inner>,
}

impl Importer {
    /// Into this library, which no screen closes. `publish` hears how far it is, and what came of it.
    #[must_use]
    pub fn new(library: Library, publish: impl Fn(ImportEvent) + 'static) -> Importer {
        Importer {
            inner: Rc::new(Inner {
                library,
                is_under_way: Cell::new(false),
                waiting: RefCell::default(),
                is_stopped: Cell::new(false),
                left_out: Cell::new(0),
                publish: Box::new(publish),
            }),
        }
    }

    fn publish_progress(&self, progress: Progress) {
        (self.inner.publish)(ImportEvent::Progress(progress));
    }

    /// No more is taken in of the files that are; what is here by then stays.
    pub fn stop(&self) {
        let inner = &self.inner;
        inner.is_stopped.set(true);
        let left_out = inner.left_out.get() + inner.waiting.take().len();
        inner.left_out.set(left_out);
    }

    /// Takes in files one after the other, by and by, and says what became of them once all are through; behind those
    /// that are taken in already. `others` takes in what is neither a match nor a backup. What was begun is brought to
    /// its end even where nobody looks any more.
    pub fn take_files(&self, files: Vec<Box<dyn PickedFile>>, others: Option<OtherFiles>) {
        let inner = &self.inner;
        let files = files.into_iter().map(|file| (file, others));
        inner.waiting.borrow_mut().extend(files);
        if inner.is_under_way.replace(true) {
            return;
        }
        self.publish_progress(Progress::Reading);
        let importer = self.clone();
        let work = async move { importer.take_waiting().await };
        inner.library.store().spawn(Box::pin(work));
    }

    async fn take_waiting(&self) {
        let inner = &self.inner;
        let mut import = Import::new(self);
        let (mut taken, mut all) = (0, 0);
        // What another tab has written meanwhile counts too.
        inner.library.read_list().await;
        while !inner.waiting.borrow().is_empty() {
            while let Some((file, others)) = self.next_file() {
                all += 1;
                taken += usize::from(import.file(&*file, others).await);
            }
            all += inner.left_out.take();
            inner.library.read_list().await;
        }
        let Import {
            mut notes, came, ..
        } = import;
        if all > 1 {
            notes.insert(0, ImportNote::FilesTaken { taken, all });
        }
        inner.is_under_way.set(false);
        (inner.publish)(ImportEvent::Over(ImportOutcome { came, notes }));
    }

    /// The next file. Whoever has stopped wants those that were chosen afterwards.
    fn next_file(&self) -> Option<Waiting> {
        self.inner.is_stopped.set(false);
        self.inner.waiting.borrow_mut().pop_front()
    }

    /// Takes in a record that did not come as a file; what is said of it, and the id under which it is here.
    pub async fn take_record(&self, name: &str, log: &Log) -> (Vec<ImportNote>, Option<String>) {
        let library = &self.inner.library;
        let mut import = Import::new(self);
        library.read_list().await;
        let decision = import.record(name, log).await;
        library.read_list().await;
        let id = decision.map(|decision| decision.id().to_owned());
        (import.notes, id)
    }
}
