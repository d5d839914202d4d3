//! One import. What cannot be read is said, what is here is never lost.

use super::{Importer, OtherFiles, Progress};
use crate::backup_scan::{BackupScan, Step};
use crate::import_note::{BackupCounts, DeskCounts, FileNote, ImportNote};
use crate::learner_data::LearnerImport;
use crate::library::{Kept, Library};
use crate::ports::PickedFile;
use crate::settings::Settings;
use crate::store::Store;
use game::Timeline;
use record::{
    BackupReading, Handed, Log, MergeDecision, OnDesk, Opened, Problem, ReadMatch,
    MAX_BACKUP_BYTES, MAX_MATCHES,
};
use reports::FileKind;

/// So many bytes of a backup are walked through in one task; what a slow phone does in a few milliseconds.
const STRETCH: usize = 256 * 1024;

/// So many problems of one record are said one by one.
const MAX_PROBLEMS: usize = 5;

/// One import: gathers what is to be said.
pub(super) struct Import<'a> {
    importer: &'a Importer,
    /// What is said of it.
    pub(super) notes: Vec<ImportNote>,
    /// The matches that came.
    pub(super) came: Vec<String>,
}

impl Import<'_> {
    pub(super) fn new(importer: &Importer) -> Import<'_> {
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
    pub(super) async fn file(&mut self, file: &dyn PickedFile, others: Option<OtherFiles>) -> bool {
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
            Ok(Handed::Text(content)) => self.text(&name, &content, others).await,
            Ok(Handed::Record(log)) => self.record(&name, &log).await.is_some(),
            Err(foreign) => {
                self.say(&name, FileNote::Foreign(foreign));
                false
            }
        }
    }

    /// Takes in a record that did not come as a text.
    pub(super) async fn record(&mut self, name: &str, log: &Log) -> Option<MergeDecision> {
        let reading = record::read(&record::write(log));
        self.one(name, reading.into()).await
    }

    async fn text(&mut self, name: &str, content: &str, others: Option<OtherFiles>) -> bool {
        if content.len() > STRETCH {
            // Only a backup is as long as that, and it is not read in one go.
            if let Some(is_here) = self.long_backup(name, content).await {
                return is_here;
            }
        }
        let new_id = self.store().new_id();
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
        let lacks_a_part = lacks_a_part || reading.lacks_a_part;
        self.say_problems(name, std::mem::take(&mut reading.problems));
        if is_nothing {
            return None;
        }
        let log = reading.without_gaps();
        let library = self.library().clone();
        let settings = library.settings();
        let decision = library.decide(&log).await;
        let id = decision.id().to_owned();
        let before = library.listed(&id);
        if decision.writes() {
            self.pause().await;
            let why_not = match library.keep(&id, &log.entries).await {
                Kept::Here => None,
                Kept::OpenElsewhere => Some(FileNote::OpenElsewhere),
                Kept::NotSaved => Some(FileNote::NotSaved),
            };
            if let Some(why_not) = why_not {
                self.say(name, why_not);
                return None;
            }
            settings.set_lacks_a_part(&id, lacks_a_part);
            // What somebody sealed is not changed without a word.
            if let Some(sealed) = before.filter(|before| before.summary.is_sealed) {
                let timeline = Timeline::of(log.entries.clone());
                let (before, now) = (sealed.summary.sets_won(), timeline.state().sets_won());
                if before != now || timeline.state().sealed().is_none() {
                    self.say(name, FileNote::SealOpened { before, now });
                }
            }
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

    fn say_problems(&mut self, name: &str, problems: Vec<Problem>) {
        let more = problems.len().saturating_sub(MAX_PROBLEMS);
        for problem in problems.into_iter().take(MAX_PROBLEMS) {
            self.say(name, FileNote::Problem(problem));
        }
        if more > 0 {
            self.say(name, FileNote::MoreProblems(more));
        }
    }
}
