//! Takes matches in from files, one or a whole backup. What cannot be read is said, what is here is
//! never lost.

use leptos::prelude::*;

use super::kept::{came_damaged, put_away};
use super::library::Library;
use crate::desk_store::{InsertOutcome, PAPERS, POOLS};
use crate::learner_data::{self, Came};
use crate::practised;
use crate::session::{use_session, Session};
use crate::setup::{drawn, keep_drawn};
use crate::shell::{use_shell, Screen};
use app::parts::{Parts, Step};
use device::PickedFile;
use record::{
    self, BackupReading, Handed, Log, MergeDecision, OnDesk, Opened, ReadMatch, MAX_BACKUP_BYTES,
    MAX_MATCHES,
};
use reports::FileKind;
use text::setup::library as words;

/// Takes in a file that is neither a match nor a backup: says what became of it, and whether it is here
/// now; none where it is of no kind that is taken in there.
pub type Also = fn(&str, &str) -> Option<(String, bool)>;

/// The field, and what came of the last files.
#[component]
pub fn Import(
    /// Where what comes is kept.
    library: Library,
    /// What else is taken in here.
    #[prop(optional)]
    also: Option<Also>,
) -> impl IntoView {
    let shell = use_shell();
    let importing = Importing::begin(library, also);
    let Importing {
        progress, stopped, ..
    } = importing;
    let take = move |event: leptos::ev::Event| importing.take(device::picked_files(&event));
    // What is dropped anywhere onto the window comes the same way.
    let held = RwSignal::new(false);
    let dropped = device::on_files_dropped(
        move |over| {
            if held.get_untracked() != over {
                held.set(over);
            }
        },
        move |files| importing.take(files),
    );
    let _listening = StoredValue::new_local(dropped);
    view! {
        <section class="stack">
            {move || held.get().then(|| view! {
                <p class="drop-here" aria-hidden="true">{text::desk_work::drop_here()}</p>
            })}
            <h2>{text::import()}</h2>
            <div class="row">
                <label class="button import">
                    <span>{text::import_choose()}</span>
                    <input type="file" id="import" multiple accept=".json,.pack,.txt,application/json,application/octet-stream,text/plain" on:change=take />
                </label>
                <button
                    type="button"
                    class="button"
                    id="receive"
                    on:click=move |_| shell.go(Screen::Receive)
                >
                    {text::receive()}
                </button>
            </div>
            {move || progress.get().map(|words| view! {
                <div class="row" id="import-progress">
                    <p role="status">{words}</p>
                    <button type="button" class="button" on:click=move |_| stopped.set(true)>
                        {words::stop()}
                    </button>
                </div>
            })}
            <div role="status" class="stack">
                <For each=move || library.said() key=Clone::clone let:sentence>
                    <p class="sentence">{sentence}</p>
                </For>
            </div>
        </section>
    }
}

/// What takes files in, one after the other. Copies are the same.
#[derive(Clone, Copy)]
struct Importing {
    session: Session,
    library: Library,
    also: Option<Also>,
    /// How far it is.
    progress: RwSignal<Option<String>>,
    /// Whether somebody wants it to stop.
    stopped: RwSignal<bool>,
}

impl Importing {
    fn begin(library: Library, also: Option<Also>) -> Importing {
        Importing {
            session: use_session(),
            library,
            also,
            progress: RwSignal::new(None),
            stopped: RwSignal::new(false),
        }
    }

    /// Takes in files, and says what became of them once all are through.
    fn take(self, files: Vec<PickedFile>) {
        let Importing {
            session,
            library,
            also,
            progress,
            stopped,
        } = self;
        device::spawn(async move {
            stopped.try_set(false);
            progress.try_set(Some(words::taking_in_label().to_owned()));
            library.arrived(Vec::new(), Vec::new());
            let mut hand = Importer::new(session, library, progress, stopped);
            // What another tab has written meanwhile counts too.
            library.reread().await;
            let all = files.len();
            let mut taken = 0;
            for file in files {
                if hand.is_stopped() {
                    break;
                }
                let name = file.name();
                let here = match file.read(MAX_BACKUP_BYTES as u64).await {
                    Err(trouble) => {
                        hand.says.push(text::unreadable_file(&name, &trouble));
                        false
                    }
                    Ok(bytes) => hand.file(&name, bytes, also).await,
                };
                taken += usize::from(here);
            }
            if all > 1 {
                hand.says.insert(0, words::files_taken(taken, all));
            }
            progress.try_set(None);
            library.reread().await;
            library.arrived(hand.came, hand.says);
        });
    }
}

/// Puts a record that came by codes beside those on this phone; says what became of it, and the id
/// under which it is here.
pub async fn take_in(
    log: Log,
    library: Library,
    session: Session,
) -> (Vec<String>, Option<String>) {
    let mut hand = Importer::new(session, library, RwSignal::new(None), RwSignal::new(false));
    library.reread().await;
    let how = hand.record(text::the_record(), &log).await;
    library.reread().await;
    (hand.says, how.map(|how| how.id().to_owned()))
}

/// Takes in one after the other and gathers what is to be said.
struct Importer {
    session: Session,
    library: Library,
    progress: RwSignal<Option<String>>,
    stopped: RwSignal<bool>,
    says: Vec<String>,
    came: Vec<String>,
}

/// So many bytes of a backup are walked through in one task; what a slow phone does in a few milliseconds.
const STRETCH: usize = 256 * 1024;

impl Importer {
    fn new(
        session: Session,
        library: Library,
        progress: RwSignal<Option<String>>,
        stopped: RwSignal<bool>,
    ) -> Importer {
        Importer {
            session,
            library,
            progress,
            stopped,
            says: Vec::new(),
            came: Vec::new(),
        }
    }

    /// Whether somebody wants no more of it; what is here by then stays.
    fn is_stopped(&self) -> bool {
        // The screen may be gone by now: what was begun there is brought to its end.
        self.stopped.try_get_untracked() == Some(true)
    }

    /// Takes in a file of any kind; says whether anything of it is here now.
    async fn file(&mut self, name: &str, bytes: Vec<u8>, also: Option<Also>) -> bool {
        let handed = record::handed(&bytes);
        // A backup is large, and stands in what was read of it.
        drop(bytes);
        match handed {
            Ok(Handed::Text(content)) => self.text(name, &content, also).await,
            Ok(Handed::Record(log)) => self.record(name, &log).await.is_some(),
            Err(foreign) => {
                self.says.push(text::foreign_file(name, &foreign));
                false
            }
        }
    }

    /// Takes in a record that did not come as a text; says what became of it.
    async fn record(&mut self, name: &str, log: &Log) -> Option<MergeDecision> {
        let reading = record::read(&record::write(log));
        let how = self.take(name, reading.into()).await;
        self.says
            .extend(how.as_ref().map(|how| words::taken(name, how)));
        how
    }

    async fn text(&mut self, name: &str, content: &str, also: Option<Also>) -> bool {
        if content.len() > STRETCH {
            // Only a backup is as long as that, and it is not read in one go.
            if let Some(here) = self.in_parts(name, content).await {
                return here;
            }
        }
        match also.and_then(|also| also(name, content)) {
            Some((say, here)) => {
                self.says.push(say);
                here
            }
            None => self.open(name, content).await,
        }
    }

    /// Takes in a backup match by match; none where it is not a whole one.
    async fn in_parts(&mut self, name: &str, content: &str) -> Option<bool> {
        let mut parts = Parts::default();
        let mut found = Vec::new();
        let (head, tail) = loop {
            match parts.step(content, STRETCH) {
                Step::Further => device::pause(0).await,
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
        for problem in &around.problems {
            self.says.push(words::backup_problem(
                name,
                &text::problem::problem(problem),
            ));
        }
        let all = found.len();
        let mut counts = [0; 4];
        let mut here = false;
        for (place, part) in (1..).zip(found) {
            self.progress.try_set(Some(words::taking_in(place, all)));
            device::pause(0).await;
            if self.is_stopped() {
                self.says.push(words::stopped_at(name, place - 1, all));
                break;
            }
            let one = record::open_part(&content[part], place);
            if one.reading.is_nothing() {
                for problem in &one.reading.problems {
                    self.says.push(words::backup_problem(
                        name,
                        &text::problem::problem(problem),
                    ));
                }
                continue;
            }
            device::pause(0).await;
            here |= self.one_of_many(name, one, &mut counts).await;
        }
        self.says.push(words::backup_taken(name, counts));
        Some(self.lay_on_desk(name, around.desk) || here)
    }

    /// Takes in one file that is small, or no whole backup.
    async fn open(&mut self, name: &str, content: &str) -> bool {
        match FileKind::of(content) {
            Some(kind @ (FileKind::Paper | FileKind::Pool)) => {
                self.says
                    .push(words::of_the_desk(name, text::desk::file_kind(kind)));
                return false;
            }
            Some(FileKind::Observer) => {
                return self.came(name, learner_data::take_notes_file(content))
            }
            Some(FileKind::Logbook) => {
                return self.came(name, learner_data::merge_logbook(content))
            }
            Some(FileKind::Match | FileKind::Backup) | None => {}
        }
        match record::open(content) {
            Opened::Match(reading) => {
                let how = self.take(name, reading.into()).await;
                self.says
                    .extend(how.as_ref().map(|how| words::taken(name, how)));
                how.is_some()
            }
            Opened::Backup(backup) => self.backup(name, backup).await,
        }
    }

    /// What became of a logbook or of notes; says whether any of it is here now.
    fn came(&mut self, name: &str, came: Came) -> bool {
        self.says.push(match came {
            Came::Logbook {
                matches,
                goals,
                left_out,
            } => words::logbook_taken(name, matches, goals, left_out),
            Came::Notes { left_out } => words::notes_taken(name, left_out),
            Came::Newer => words::newer_file(name),
            Came::Foreign => words::damaged_file(name),
            Came::NotKept => words::not_kept(name),
        });
        matches!(came, Came::Logbook { .. } | Came::Notes { .. })
    }

    async fn backup(&mut self, name: &str, backup: BackupReading) -> bool {
        let fatal = backup.problems.iter().any(|p| p.is_fatal()) && backup.matches.is_empty();
        for problem in &backup.problems {
            self.says.push(words::backup_problem(
                name,
                &text::problem::problem(problem),
            ));
        }
        if fatal {
            return false;
        }
        let mut counts = [0; 4];
        let mut here = false;
        for one in backup.matches {
            here |= self.one_of_many(name, one, &mut counts).await;
        }
        self.says.push(words::backup_taken(name, counts));
        self.lay_on_desk(name, backup.desk) || here
    }

    async fn one_of_many(&mut self, name: &str, one: ReadMatch, counts: &mut [usize; 4]) -> bool {
        let archived = one.archived;
        let Some(how) = self.take(name, one).await else {
            return false;
        };
        let kind = match &how {
            MergeDecision::New(id) => {
                put_away(id, archived);
                0
            }
            MergeDecision::Longer(_) => 1,
            MergeDecision::Beside(_) => 2,
            MergeDecision::Here(_) => 3,
        };
        counts[kind] += 1;
        true
    }

    /// What a backup holds beside matches; says whether any of it is here now.
    fn lay_on_desk(&mut self, name: &str, desk: OnDesk) -> bool {
        let practised = desk.learner.is_some_and(|text| {
            let taken = practised::merge(&text);
            self.says.push(words::practised_taken(name, taken));
            taken
        });
        let logbook = desk.logbook.map(|text| learner_data::merge_logbook(&text));
        let notes = desk.observed.iter();
        let notes = notes.map(|text| learner_data::take_notes_file(text));
        // Of many notes the same is said once.
        let mut of_learner: Vec<Came> = notes.chain(logbook).collect();
        of_learner.dedup();
        let mut learner_here = false;
        for came in of_learner {
            learner_here |= self.came(name, came);
        }
        let (mut new, mut here, mut lost) = (0, 0, 0);
        for (shelf, texts) in [(PAPERS, desk.papers), (POOLS, desk.pools)] {
            for text in texts {
                match shelf.insert(&text) {
                    InsertOutcome::New => new += 1,
                    InsertOutcome::Here => here += 1,
                    InsertOutcome::Refused => lost += 1,
                }
            }
        }
        if new + here + lost > 0 {
            self.says.push(words::desk_taken(name, [new, here, lost]));
        }
        new + here > 0 || practised || learner_here
    }

    /// One match; none where there is nothing to be taken in, which is said.
    async fn take(&mut self, name: &str, one: ReadMatch) -> Option<MergeDecision> {
        let ReadMatch {
            reading,
            drawn: signatures,
            lacks_a_part,
            ..
        } = one;
        self.says.extend(text::reading_problems(name, &reading));
        if reading.is_nothing() {
            return None;
        }
        let lacks_a_part = lacks_a_part || reading.lacks_a_part();
        let (log, left_out) = reading.without_gaps();
        if left_out > 0 {
            self.says.push(text::left_out(name, left_out));
        }
        let how = self.library.take_in(&log).await;
        let id = how.id().to_owned();
        if how.writes() {
            device::pause(0).await;
            // A match that is open here is read anew when it is opened again; one that another tab
            // writes is left alone.
            if untrack(|| self.session.id()).as_ref() == Some(&id) {
                self.session.close();
            }
            let Some(_lock) = self.session.machine().lock_at_once(&id).await else {
                self.says.push(words::open_elsewhere(name));
                return None;
            };
            if !self.library.keep(&id, &log.entries).await {
                self.says.push(text::import_not_saved(name));
            }
            came_damaged(&id, lacks_a_part || left_out > 0);
        }
        if !signatures.is_empty() {
            // What was drawn here stays as it is.
            let mut all = signatures;
            all.extend(drawn(&id));
            keep_drawn(&id, &all);
        }
        if how.writes() {
            self.came.push(id);
        }
        Some(how)
    }
}
