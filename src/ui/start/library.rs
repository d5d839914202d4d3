//! The matches on this phone.

use std::collections::BTreeMap;
use std::sync::Arc;

use leptos::prelude::*;

use super::kept::{came_damaged, put_away, Kept, Listed};
use crate::session::{use_session, Session};
use crate::setup::forget_drafts;
use app::store::Store;
use game::Entry;
use record::{LineWriter, Log, MergeDecision};
use text::setup::library as words;

/// Lists that were made meanwhile are shown together with so many others.
const SHOWN_TOGETHER: usize = 8;

/// All of them, once they are read. Copies are the same.
#[derive(Clone, Copy)]
pub struct Library {
    session: Session,
    listed: RwSignal<Option<Vec<Arc<Listed>>>>,
    /// Grows with each reading, so that an older one ends.
    reading: RwSignal<u32>,
    came: RwSignal<Vec<String>>,
    said: RwSignal<Vec<String>>,
}

impl Library {
    /// Begins to read the storage for a list.
    #[must_use]
    pub fn begin() -> Library {
        let library = Library {
            session: use_session(),
            listed: RwSignal::new(None),
            reading: RwSignal::new(0),
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

    /// The same; the list is there once it is through. Between two matches the browser may draw.
    pub async fn reread(self) {
        let Some(mine) = self.reading.try_update(|r| {
            *r += 1;
            *r
        }) else {
            return;
        };
        // The screen may be gone by now, or somebody reads anew.
        let stale = move || self.reading.try_get_untracked() != Some(mine);
        let store = self.session.store();
        let mut all: BTreeMap<String, Arc<Listed>> = BTreeMap::new();
        let listing = store.list().await;
        for (id, summary) in listing.summaries {
            all.insert(id.clone(), Arc::new(Listed::of_summary(id, summary)));
        }
        let mut over = Vec::new();
        for (count, id) in listing.unread.iter().enumerate() {
            if count > 0 {
                device::pause(0).await;
            }
            if stale() {
                return;
            }
            let listed = Listed::of_found(id, &store.read(id).await);
            if listed.summary.is_over() {
                over.push(id.clone());
            }
            all.insert(id.clone(), Arc::new(listed));
            if count % SHOWN_TOGETHER == SHOWN_TOGETHER - 1 {
                self.show(&all);
            }
        }
        if stale() {
            return;
        }
        self.show(&all);
        self.rest(&store, &mut all, &over, stale).await;
    }

    /// What can wait until the list shows: matches without a summary, or with an old one, and those that
    /// are over and still stand in local storage.
    async fn rest(
        self,
        store: &Store,
        all: &mut BTreeMap<String, Arc<Listed>>,
        over: &[String],
        stale: impl Fn() -> bool,
    ) {
        let known = |id: &str| all.get(id).map(|listed| listed.summary.last);
        // A database that does not answer is in the store's health.
        let more = store.not_summarized(known).await.unwrap_or_default();
        let mut news = false;
        for (count, id) in more.iter().enumerate() {
            device::pause(0).await;
            if stale() {
                return;
            }
            let found = store.read(id).await;
            let listed = Listed::of_found(id, &found);
            if found.is_whole && listed.summary.is_over() {
                store.summarize(id, &listed.summary).await;
            }
            all.insert(id.clone(), Arc::new(listed));
            news = true;
            if count % SHOWN_TOGETHER == SHOWN_TOGETHER - 1 {
                self.show(all);
            }
        }
        if news && !stale() {
            self.show(all);
        }
        for id in over {
            device::pause(0).await;
            if stale() {
                return;
            }
            self.session.tidy(id).await;
        }
    }

    fn show(self, all: &BTreeMap<String, Arc<Listed>>) {
        let mut all: Vec<Arc<Listed>> = all.values().cloned().collect();
        rules::sort_by_key(&mut all, |listed| std::cmp::Reverse(listed.summary.last_at));
        // The screen may be gone by now.
        self.listed.try_set(Some(all));
    }

    /// All matches, the latest first; none while they are being read.
    #[must_use]
    pub fn listed(self) -> Option<Vec<Arc<Listed>>> {
        self.listed.get()
    }

    /// Whether the list has been read.
    #[must_use]
    pub fn is_read(self) -> bool {
        self.listed.read().is_some()
    }

    /// The latest match that is not over.
    #[must_use]
    pub fn running(self) -> Option<Arc<Listed>> {
        self.listed
            .read()
            .as_ref()?
            .iter()
            .find(|k| k.is_running())
            .cloned()
    }

    /// The ids of the matches that are being played at this moment; none while the list is being read.
    #[must_use]
    pub fn under_way(self) -> Option<Vec<String>> {
        let now = self.session.time_now();
        let all = self.listed.read();
        let under_way = all.as_ref()?.iter().filter(|kept| kept.is_under_way(now));
        Some(under_way.map(|kept| kept.id.clone()).collect())
    }

    /// Reads and folds one match.
    pub async fn read(self, id: &str) -> Kept {
        Kept::of(id.to_owned(), &self.session.store().read(id).await)
    }

    /// What to do with a record that comes from outside. Only matches that may be the same are read.
    pub async fn take_in(self, log: &Log) -> MergeDecision {
        let mut writer = LineWriter::default();
        for entry in &log.entries {
            writer.line(entry);
        }
        let link = writer.link().digits();
        let maybe: Vec<String> = self
            .listed
            .read_untracked()
            .iter()
            .flatten()
            .filter(|l| l.summary.link == link || record::is_of_record(&l.id, &log.id))
            .map(|l| l.id.clone())
            .collect();
        let mut here: Vec<(String, Vec<Entry>)> = Vec::new();
        for id in maybe {
            let found = self.session.store().read(&id).await;
            here.push((id, found.merged.entries));
        }
        record::take_in(log, here.iter().map(|(id, all)| (id.as_str(), &all[..])))
    }

    /// Keeps a record that comes from outside under this id; false where the phone did not.
    pub async fn keep(self, id: &str, entries: &[Entry]) -> bool {
        let mut writer = LineWriter::default();
        let lines = rules::gather(entries.iter().map(|e| (e.n, writer.line(e))));
        let store = self.session.store();
        let Ok(Some(summary)) = store.take_in(id, &lines).await else {
            return false;
        };
        // Counted among those here. The list is drawn anew once all have come, when it is read again; the screen
        // may be gone by now.
        let listed = Arc::new(Listed::of_summary(id.to_owned(), summary));
        if let Some(mut all) = self.listed.try_write() {
            all.untrack();
            let all = all.get_or_insert_default();
            all.retain(|here| here.id != listed.id);
            all.push(listed);
        }
        true
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

    /// Puts matches away, or brings them back.
    pub fn put_away(self, ids: &[String], away: bool) {
        ids.iter().for_each(|id| put_away(id, away));
        self.refresh();
    }

    /// Removes everything from this phone for good, settings too. `done` hears whether all of it went;
    /// what another tab has open stays.
    pub fn wipe(self, done: Callback<bool>) {
        let session = self.session;
        device::spawn(async move {
            session.close();
            let ids = session.store().ids().await;
            let mut whole = ids.is_ok();
            for id in ids.unwrap_or_default() {
                whole &= self.forget(&id).await;
            }
            if whole {
                whole = device::forget_settings();
            }
            self.refresh();
            done.try_run(whole);
        });
    }

    /// Removes matches from this phone for good, and says so where one did not go.
    pub fn delete(self, ids: Vec<String>) {
        let session = self.session;
        let open = untrack(|| session.id());
        device::spawn(async move {
            if open.is_some_and(|open| ids.contains(&open)) {
                session.close();
            }
            let mut gone = true;
            for id in ids {
                gone &= self.forget(&id).await;
            }
            self.refresh();
            if !gone {
                self.arrived(Vec::new(), vec![words::not_deleted().to_owned()]);
            }
        });
    }

    /// Under the lock of the match, so that nothing is taken away from under a tab that has it open.
    async fn forget(self, id: &str) -> bool {
        let Some(_lock) = self.session.machine().lock_at_once(id).await else {
            return false;
        };
        let gone = self.session.store().forget(id).await.is_ok();
        if gone {
            forget_drafts(id);
            put_away(id, false);
            came_damaged(id, false);
        }
        gone
    }
}
