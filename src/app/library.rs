//! The matches on this phone: listed, read, taken in, archived and deleted.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;
use std::sync::Arc;

use super::ports::{Lock, Pending, StorageTrouble};
use super::session::Session;
use super::settings::Settings;
use super::store::Store;
use super::stored_match::{ListedMatch, StoredMatch};
use game::Entry;
use record::{write_backup, KeptMatch, LineWriter, Log, MergeDecision, OnDesk};

/// Matches that were read meanwhile are published together with so many others.
const PUBLISHED_TOGETHER: usize = 8;

/// What became of a record that was to be kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[must_use]
pub enum Kept {
    /// It is on this phone.
    Here,
    /// Another tab has the match open, and writes it.
    OpenElsewhere,
    /// The phone did not take it.
    NotSaved,
}

/// All matches, the latest first.
pub type List = Vec<Arc<ListedMatch>>;

type Publish = dyn Fn(&List);

struct Inner {
    session: Session,
    settings: Settings,
    // None until some of it has been read.
    listed: RefCell<Option<List>>,
    // Whether all of it has been.
    is_whole: Cell<bool>,
    // Grows with each reading, so that an older one ends.
    reading: Cell<u32>,
    is_closed: Cell<bool>,
    publish: Box<Publish>,
}

/// The matches on this phone, as one screen lists them. Clones are the same.
#[derive(Clone)]
pub struct Library {
    inner: Rc<Inner>,
}

/// The latest match that somebody may want to go on with. One that a slip of the thumb opened, and into which
/// nothing was entered, stands behind the one that is played.
#[must_use]
pub fn running(all: &[Arc<ListedMatch>]) -> Option<&Arc<ListedMatch>> {
    let running = || all.iter().filter(|listed| listed.is_running());
    let is_begun = |listed: &&Arc<ListedMatch>| listed.summary.last > 1;
    running().find(is_begun).or_else(|| running().next())
}

/// The ids of the matches that are being played at this moment.
#[must_use]
pub fn under_way(all: &[Arc<ListedMatch>], now: i64) -> Vec<String> {
    let under_way = all.iter().filter(|listed| listed.is_under_way(now));
    under_way.map(|listed| listed.id.clone()).collect()
}

impl Library {
    /// Nothing is read yet. `publish` gets the list whenever more of it is known.
    #[must_use]
    pub fn new(session: Session, settings: Settings, publish: impl Fn(&List) + 'static) -> Library {
        Library {
            inner: Rc::new(Inner {
                session,
                settings,
                listed: RefCell::default(),
                is_whole: Cell::new(false),
                reading: Cell::new(0),
                is_closed: Cell::new(false),
                publish: Box::new(publish),
            }),
        }
    }

    pub(super) fn session(&self) -> &Session {
        &self.inner.session
    }

    pub(super) fn store(&self) -> &Store {
        self.inner.session.store()
    }

    pub(super) fn settings(&self) -> &Settings {
        &self.inner.settings
    }

    // ---- The list.

    /// Reads the storage again, by and by.
    pub fn refresh(&self) {
        if self.inner.is_closed.get() {
            return;
        }
        let reading = self.read_anew();
        self.store().spawn(reading);
    }

    /// Nobody looks at the list any more: it is read no further.
    pub fn close(&self) {
        self.inner.is_closed.set(true);
        self.begin_reading();
    }

    /// Reads the storage again; the list is whole once this is through, unless somebody has begun to read it anew
    /// meanwhile. Between two matches the machine may do something else.
    pub async fn read_list(&self) {
        self.read_anew().await;
    }

    /// Ends the reading that is under way, and gives the number of the next one.
    fn begin_reading(&self) -> u32 {
        let next = self.inner.reading.get() + 1;
        self.inner.reading.set(next);
        next
    }

    fn read_anew(&self) -> Pending<()> {
        let (library, mine) = (self.clone(), self.begin_reading());
        Box::pin(async move { library.read_all(mine).await })
    }

    async fn read_all(&self, mine: u32) {
        let inner = &self.inner;
        let is_stale = || inner.reading.get() != mine;
        inner.is_whole.set(false);
        let store = self.store();
        let mut all: BTreeMap<String, Arc<ListedMatch>> = BTreeMap::new();
        let listing = store.list().await;
        for (id, summary) in listing.summaries {
            let listed = ListedMatch::of_summary(&id, summary, &inner.settings);
            all.insert(id, Arc::new(listed));
        }
        let mut over = Vec::new();
        for (count, id) in listing.unread.iter().enumerate() {
            if count > 0 {
                store.pause(0).await;
            }
            if is_stale() {
                return;
            }
            let found = store.read(id).await;
            let listed = ListedMatch::of_found(id, &found, &inner.settings);
            if listed.summary.is_over() {
                over.push(id.clone());
            }
            all.insert(id.clone(), Arc::new(listed));
            if count % PUBLISHED_TOGETHER == PUBLISHED_TOGETHER - 1 {
                self.publish(&all);
            }
        }
        if is_stale() {
            return;
        }
        self.publish(&all);
        self.read_rest(&mut all, &over, is_stale).await;
    }

    /// What can wait until the list shows: matches without a summary, or with an old one, and those that
    /// are over and still stand in local storage.
    async fn read_rest(
        &self,
        all: &mut BTreeMap<String, Arc<ListedMatch>>,
        over: &[String],
        is_stale: impl Fn() -> bool,
    ) {
        let store = self.store();
        let known = |id: &str| all.get(id).map(|listed| listed.summary.last);
        // A database that does not answer is in the store's health.
        let more = store.not_summarized(known).await.unwrap_or_default();
        let mut is_news = false;
        for (count, id) in more.iter().enumerate() {
            store.pause(0).await;
            if is_stale() {
                return;
            }
            let found = store.read(id).await;
            let listed = ListedMatch::of_found(id, &found, &self.inner.settings);
            if found.is_whole && listed.summary.is_over() {
                store.summarize(id, &listed.summary).await;
            }
            all.insert(id.clone(), Arc::new(listed));
            is_news = true;
            if count % PUBLISHED_TOGETHER == PUBLISHED_TOGETHER - 1 {
                self.publish(all);
            }
        }
        if is_stale() {
            return;
        }
        if is_news {
            self.publish(all);
        }
        self.inner.is_whole.set(true);
        for id in over {
            store.pause(0).await;
            if is_stale() {
                return;
            }
            self.session().tidy(id).await;
        }
    }

    fn publish(&self, all: &BTreeMap<String, Arc<ListedMatch>>) {
        let mut all: List = all.values().cloned().collect();
        rules::sort_by_key(&mut all, |listed| std::cmp::Reverse(listed.summary.last_at));
        self.inner.listed.replace(Some(all.clone()));
        (self.inner.publish)(&all);
    }

    // ---- What comes in, and what is archived.

    /// What to do with a record that comes from outside. Only matches that may be the same are read.
    pub(super) async fn decide(&self, log: &Log) -> MergeDecision {
        let mut writer = LineWriter::default();
        for entry in &log.entries {
            writer.line(entry);
        }
        let link = writer.link().digits();
        // Without the list nothing would be known to be here. Somebody may have begun to read it anew meanwhile.
        while !self.inner.is_whole.get() {
            self.read_list().await;
        }
        let maybe: Vec<String> = self
            .inner
            .listed
            .borrow()
            .iter()
            .flatten()
            .filter(|l| l.summary.link == link || record::is_of_record(&l.id, &log.id))
            .map(|l| l.id.clone())
            .collect();
        let mut here: Vec<(String, Vec<Entry>)> = Vec::new();
        for id in maybe {
            let found = self.store().read(&id).await;
            here.push((id, found.merged.entries));
        }
        record::take_in(log, here.iter().map(|(id, all)| (id.as_str(), &all[..])))
    }

    /// What the list says of a match; none where it is not here.
    pub(super) fn listed(&self, id: &str) -> Option<Arc<ListedMatch>> {
        let listed = self.inner.listed.borrow();
        listed.iter().flatten().find(|one| one.id == id).cloned()
    }

    /// Keeps a record that comes from outside under this id.
    pub async fn keep(&self, id: &str, entries: &[Entry]) -> Kept {
        let Some(_lock) = self.lock(id).await else {
            return Kept::OpenElsewhere;
        };
        let mut writer = LineWriter::default();
        let lines = rules::gather(entries.iter().map(|e| (e.n, writer.line(e))));
        let Ok(Some(summary)) = self.store().take_in(id, &lines).await else {
            return Kept::NotSaved;
        };
        // Counted among those here. It is published once all have come, when the list is read again.
        let listed = Arc::new(ListedMatch::of_summary(id, summary, &self.inner.settings));
        if let Some(all) = self.inner.listed.borrow_mut().as_mut() {
            all.retain(|here| here.id != listed.id);
            all.push(listed);
        }
        Kept::Here
    }

    /// The lock of a match, so that nothing is written or taken away under a tab that has it open; none where
    /// another tab has. One that is open here is closed: it is read anew when it is opened again.
    async fn lock(&self, id: &str) -> Option<Rc<dyn Lock>> {
        let session = self.session();
        if session.id().as_deref() == Some(id) {
            session.close();
        }
        session.machine().lock_at_once(id).await
    }

    /// Archives matches, or brings them back.
    pub fn archive(&self, ids: &[String], archived: bool) {
        for id in ids {
            self.inner.settings.set_archived(id, archived);
        }
        self.refresh();
    }

    // ---- Deleting.

    /// Deletes matches from this phone for good. Gives how many stay, because another tab has them open or a store
    /// did not answer.
    pub async fn delete(&self, ids: &[String]) -> usize {
        let mut stay = 0;
        for id in ids {
            stay += usize::from(!self.forget(id).await);
        }
        self.refresh();
        stay
    }

    /// Deletes everything from this phone for good, settings too; false where not all of it went. What another
    /// tab has open stays, and with it all settings.
    pub async fn delete_all(&self) -> bool {
        self.session().close();
        let ids = self.store().ids().await;
        let mut gone = ids.is_ok();
        for id in ids.unwrap_or_default() {
            gone &= self.forget(&id).await;
        }
        gone = gone && self.inner.settings.forget_all();
        self.refresh();
        gone
    }

    async fn forget(&self, id: &str) -> bool {
        let Some(_lock) = self.lock(id).await else {
            return false;
        };
        let gone = self.store().forget(id).await.is_ok();
        if gone {
            let settings = &self.inner.settings;
            settings.drafts(id).forget_all();
            settings.set_archived(id, false);
            settings.set_lacks_a_part(id, false);
        }
        gone
    }

    // ---- Everything in one file.

    /// What goes into a backup beside the matches: what lies on the desk, and what belongs to the learner.
    #[must_use]
    pub fn on_desk(&self) -> OnDesk {
        let settings = &self.inner.settings;
        OnDesk {
            papers: settings.papers().texts(),
            pools: settings.pools().texts(),
            learner: settings.learner_text(),
            logbook: settings.logbook_text(),
            observed: settings.notes_texts(),
        }
    }

    /// The text of a backup made at this time. Each match is read by itself, so that the page stays quick meanwhile.
    ///
    /// # Errors
    /// Where the database does not answer: a backup that lacks matches would be taken for a whole one.
    pub async fn backup(&self, now: i64) -> Result<String, StorageTrouble> {
        let store = self.store();
        let mut all = Vec::new();
        for id in store.ids().await? {
            let found = store.read(&id).await;
            if !found.is_whole {
                return Err(StorageTrouble::Lost);
            }
            let stored = StoredMatch::of_found(&id, &found, &self.inner.settings);
            all.push((stored.last_at, stored.whole(&self.inner.settings)));
            store.pause(0).await;
        }
        // As the list shows them.
        rules::sort_by_key(&mut all, |(last_at, _)| std::cmp::Reverse(*last_at));
        let all: Vec<KeptMatch> = all.into_iter().map(|(_, whole)| whole).collect();
        Ok(write_backup(&all, &self.on_desk(), Some(now)))
    }
}
