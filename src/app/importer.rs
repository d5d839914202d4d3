//! Takes matches in from files, one or a whole backup. What cannot be read is said, what is here is
//! never lost.

use std::cell::{Cell, RefCell};
use std::collections::VecDeque;
use std::rc::Rc;

use super::backup_scan::{BackupScan, Step};
use super::import_note::{BackupCounts, DeskCounts, FileNote, ImportNote};
use super::learner_data::LearnerImport;
use super::library::Library;
use super::ports::PickedFile;
use super::settings::Settings;
use super::store::Store;
use record::{
    BackupReading, Handed, Log, MergeDecision, OnDesk, Opened, ReadMatch, MAX_BACKUP_BYTES,
    MAX_MATCHES,
};
use reports::FileKind;

/// So many bytes of a backup are walked through in one task; what a slow phone does in a few milliseconds.
const STRETCH: usize = 256 * 1024;

/// So many problems of one record are said one by one.
const MAX_PROBLEMS: usize = 5;

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

struct Inner {
    library: Library,
    others: Option<OtherFiles>,
    is_under_way: Cell<bool>,
    // Files that were chosen and not taken in yet.
    waiting: RefCell<VecDeque<Box<dyn PickedFile>>>,
    is_stopped: Cell<bool>,
    publish: Box<Publish>,
}

/// Takes in files. Clones are the same.
#[derive(Clone)]
pub struct Importer {
    inner: Rc<Inner>,
}

impl Importer {
    /// Into this library. `publish` hears how far it is, and what came of it.
    #[must_use]
    pub fn new(
        library: Library,
        others: Option<OtherFiles>,
        publish: impl Fn(ImportEvent) + 'static,
    ) -> Importer {
        Importer {
            inner: Rc::new(Inner {
                library,
                others,
                is_under_way: Cell::new(false),
                waiting: RefCell::default(),
                is_stopped: Cell::new(false),
                publish: Box::new(publish),
            }),
        }
    }

    fn publish_progress(&self, progress: Progress) {
        (self.inner.publish)(ImportEvent::Progress(progress));
    }

    /// No more is taken in of the files that are; what is here by then stays.
    pub fn stop(&self) {
        self.inner.is_stopped.set(true);
    }

    /// Takes in files one after the other, by and by, and says what became of them once all are through; behind those
    /// that are taken in already. What was begun is brought to its end even where nobody looks any more.
    pub fn take_files(&self, files: Vec<Box<dyn PickedFile>>) {
        let inner = &self.inner;
        inner.waiting.borrow_mut().extend(files);
        if inner.is_under_way.replace(true) {
            return;
        }
        inner.library.begin_import();
        inner.is_stopped.set(false);
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
            while let Some(file) = self.next_file() {
                all += 1;
                taken += usize::from(import.file(&*file).await);
            }
            all += inner.waiting.take().len();
            inner.library.read_list().await;
        }
        inner.library.end_import();
        let Import {
            mut notes, came, ..
        } = import;
        if all > 1 {
            notes.insert(0, ImportNote::FilesTaken { taken, all });
        }
        inner.is_under_way.set(false);
        (inner.publish)(ImportEvent::Over(ImportOutcome { came, notes }));
    }

    /// The next file; none where somebody wants no more.
    fn next_file(&self) -> Option<Box<dyn PickedFile>> {
        let mut waiting = self.inner.waiting.borrow_mut();
        let is_stopped = self.inner.is_stopped.get();
        (!is_stopped).then(|| waiting.pop_front()).flatten()
    }

    /// Takes in a record that did not come as a file; what is said of it, and the id under which it is here.
    pub async fn take_record(&self, name: &str, log: &Log) -> (Vec<ImportNote>, Option<String>) {
        let library = &self.inner.library;
        library.begin_import();
        let mut import = Import::new(self);
        library.read_list().await;
        let decision = import.record(name, log).await;
        library.end_import();
        library.read_list().await;
        let id = decision.map(|decision| decision.id().to_owned());
        (import.notes, id)
    }
}

/// One import: gathers what is to be said.
struct Import<'a> {
    importer: &'a Importer,
    notes: Vec<ImportNote>,
    came: Vec<String>,
}

impl Import<'_> {
    fn new(importer: &Importer) -> Import<'_> {
        Import {
            importer,
            notes: Vec::new(),
            came: Vec::new(),
        }
    }

    fn library(&self) -> &Library {
        &self.importer.inner.library
    }

    fn store(&self) -> &Store {
        self.library().store()
    }

    fn settings(&self) -> &Settings {
        self.library().settings()
    }

    async fn pause(&self) {
        self.store().pause(0).await;
    }

    fn say(&mut self, name: &str, note: FileNote) {
        let name = name.to_owned();
        self.notes.push(ImportNote::OfFile { name, note });
    }

    /// Takes in a file of any kind; says whether anything of it is here now.
    async fn file(&mut self, file: &dyn PickedFile) -> bool {
        let name = file.name();
        let bytes = match file.read(MAX_BACKUP_BYTES as u64).await {
            Ok(bytes) => bytes,
            Err(trouble) => {
                self.say(&name, FileNote::Unreadable(trouble));
                return false;
            }
        };
        let handed = record::handed(&bytes);
        // A backup is large, and stands in what was read of it.
        drop(bytes);
        match handed {
            Ok(Handed::Text(content)) => self.text(&name, &content).await,
            Ok(Handed::Record(log)) => self.record(&name, &log).await.is_some(),
            Err(foreign) => {
                self.say(&name, FileNote::Foreign(foreign));
                false
            }
        }
    }

    /// Takes in a record that did not come as a text.
    async fn record(&mut self, name: &str, log: &Log) -> Option<MergeDecision> {
        let reading = record::read(&record::write(log));
        self.one(name, reading.into()).await
    }

    async fn text(&mut self, name: &str, content: &str) -> bool {
        if content.len() > STRETCH {
            // Only a backup is as long as that, and it is not read in one go.
            if let Some(is_here) = self.long_backup(name, content).await {
                return is_here;
            }
        }
        let new_id = self.store().new_id();
        let others = self.importer.inner.others;
        if let Some((note, is_here)) =
            others.and_then(|take_in| take_in(self.settings(), &new_id, content))
        {
            self.say(name, note);
            return is_here;
        }
        match FileKind::of(content) {
            Some(kind @ (FileKind::Paper | FileKind::Pool)) => {
                self.say(name, FileNote::OfTheDesk(kind));
                return false;
            }
            Some(FileKind::Observer) => {
                let import = self.settings().take_notes_file(content, &new_id);
                return self.learner(name, import);
            }
            Some(FileKind::Logbook) => {
                let import = self.settings().merge_logbook(content);
                return self.learner(name, import);
            }
            Some(FileKind::Match | FileKind::Backup) | None => {}
        }
        match record::open(content) {
            Opened::Match(reading) => self.one(name, reading.into()).await.is_some(),
            Opened::Backup(backup) => self.backup(name, backup).await,
        }
    }

    /// Says what became of a logbook or of notes, and whether any of it is here now.
    fn learner(&mut self, name: &str, import: LearnerImport) -> bool {
        self.say(name, FileNote::Learner(import));
        import.is_here()
    }

    // ---- Backups.

    /// Takes in a backup match by match; none where it is not a whole one.
    async fn long_backup(&mut self, name: &str, content: &str) -> Option<bool> {
        let mut scan = BackupScan::default();
        let mut found = Vec::new();
        let (head, tail) = loop {
            match scan.step(content, STRETCH) {
                Step::Further => self.pause().await,
                Step::Part(part) => found.push(part),
                Step::End { head, tail } => break (head, tail),
                Step::Broken => return None,
            }
        };
        let Opened::Backup(around) = record::open(&[&content[..head], &content[tail..]].concat())
        else {
            return None;
        };
        if around.problems.iter().any(|p| p.is_fatal()) || found.len() > MAX_MATCHES {
            return None;
        }
        for problem in around.problems {
            self.say(name, FileNote::BackupProblem(problem));
        }
        let all = found.len();
        let mut counts = BackupCounts::default();
        let mut is_here = false;
        for (place, part) in (1..).zip(found) {
            self.importer
                .publish_progress(Progress::Match { place, all });
            self.pause().await;
            if self.importer.inner.is_stopped.get() {
                let taken = place - 1;
                self.say(name, FileNote::Stopped { taken, all });
                break;
            }
            let one = record::open_part(&content[part], place);
            if one.reading.is_nothing() {
                for problem in one.reading.problems {
                    self.say(name, FileNote::BackupProblem(problem));
                }
                continue;
            }
            self.pause().await;
            is_here |= self.one_of_many(name, one, &mut counts).await;
        }
        self.say(name, FileNote::BackupTaken(counts));
        Some(self.beside_matches(name, around.desk) || is_here)
    }

    /// Takes in a backup that is small, or damaged.
    async fn backup(&mut self, name: &str, backup: BackupReading) -> bool {
        let is_fatal = backup.problems.iter().any(|p| p.is_fatal()) && backup.matches.is_empty();
        for problem in backup.problems {
            self.say(name, FileNote::BackupProblem(problem));
        }
        if is_fatal {
            return false;
        }
        let mut counts = BackupCounts::default();
        let mut is_here = false;
        for one in backup.matches {
            is_here |= self.one_of_many(name, one, &mut counts).await;
        }
        self.say(name, FileNote::BackupTaken(counts));
        self.beside_matches(name, backup.desk) || is_here
    }

    async fn one_of_many(&mut self, name: &str, one: ReadMatch, counts: &mut BackupCounts) -> bool {
        let archived = one.archived;
        let Some(decision) = self.merge(name, one).await else {
            return false;
        };
        counts.count(&decision);
        if let MergeDecision::New(id) = &decision {
            self.settings().set_archived(id, archived);
        }
        true
    }

    /// Takes in what a backup holds beside matches; says whether any of it is here now.
    fn beside_matches(&mut self, name: &str, desk: OnDesk) -> bool {
        let settings = self.settings().clone();
        let mut is_here = false;
        if let Some(text) = desk.learner {
            let taken = settings.merge_learner(&text);
            self.say(name, FileNote::LearnerTaken(taken));
            is_here |= taken;
        }
        let notes = desk.observed.iter();
        let notes = notes.map(|text| settings.take_notes_file(text, &self.store().new_id()));
        let logbook = desk.logbook.map(|text| settings.merge_logbook(&text));
        // Of many notes the same is said once.
        let mut of_learner: Vec<LearnerImport> = notes.chain(logbook).collect();
        of_learner.dedup();
        for import in of_learner {
            is_here |= self.learner(name, import);
        }
        let mut counts = DeskCounts::default();
        for (store, texts) in [
            (settings.papers(), desk.papers),
            (settings.pools(), desk.pools),
        ] {
            for text in texts {
                counts.count(store.insert(&self.store().new_id(), &text));
            }
        }
        if counts.all() > 0 {
            self.say(name, FileNote::DeskTaken(counts));
        }
        is_here || counts.new + counts.here > 0
    }

    // ---- One match.

    /// Takes in one match and says what became of it; none where nothing of it is here now.
    async fn one(&mut self, name: &str, one: ReadMatch) -> Option<MergeDecision> {
        let decision = self.merge(name, one).await?;
        self.say(name, FileNote::Taken(decision.clone()));
        Some(decision)
    }

    /// Puts one match beside those that are here; none where nothing of it is here now, which is said.
    async fn merge(&mut self, name: &str, one: ReadMatch) -> Option<MergeDecision> {
        let ReadMatch {
            mut reading,
            drawn,
            lacks_a_part,
            ..
        } = one;
        let is_nothing = reading.is_nothing();
        let lacks_a_part = lacks_a_part || reading.lacks_a_part();
        self.say_problems(name, std::mem::take(&mut reading.problems));
        if is_nothing {
            return None;
        }
        let (log, left_out) = reading.without_gaps();
        if left_out > 0 {
            self.say(name, FileNote::LeftOut(left_out));
        }
        let library = self.library().clone();
        let settings = library.settings();
        let decision = library.decide(&log).await;
        let id = decision.id().to_owned();
        if decision.writes() {
            self.pause().await;
            // A match that is open here is read anew when it is opened again; one that another tab
            // writes is left alone.
            let session = library.session();
            if session.id().as_ref() == Some(&id) {
                session.close();
            }
            let Some(_lock) = session.machine().lock_at_once(&id).await else {
                self.say(name, FileNote::OpenElsewhere);
                return None;
            };
            if !library.keep(&id, &log.entries).await {
                self.say(name, FileNote::NotSaved);
                return None;
            }
            settings.set_lacks_a_part(&id, lacks_a_part || left_out > 0);
        }
        if !drawn.is_empty() {
            // What was drawn here stays as it is.
            let drafts = settings.drafts(&id);
            let mut all = drawn;
            all.extend(drafts.drawn());
            drafts.keep_drawn(&all);
        }
        if decision.writes() {
            self.came.push(id);
        }
        Some(decision)
    }

    fn say_problems(&mut self, name: &str, problems: Vec<record::Problem>) {
        let more = problems.len().saturating_sub(MAX_PROBLEMS);
        for problem in problems.into_iter().take(MAX_PROBLEMS) {
            self.say(name, FileNote::Problem(problem));
        }
        if more > 0 {
            self.say(name, FileNote::MoreProblems(more));
        }
    }
}
