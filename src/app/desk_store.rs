//! Texts of one kind, each under its id: paper sheets that are being keyed in, kept with every key, results of
//! pools, kept as they came, and notes of observers.

use super::desk::RowKind;
use super::settings::Settings;

/// What came of a text that was to be kept among others.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InsertOutcome {
    /// It is kept now.
    New,
    /// The same text was there already.
    Here,
    /// The phone did not keep it.
    Refused,
}

/// Texts of one kind.
#[derive(Clone)]
pub struct DeskStore {
    settings: Settings,
    // Under this name stand the ids of all of them.
    all: &'static str,
    // With this the name of each begins.
    one: &'static str,
}

impl Settings {
    /// Paper sheets.
    #[must_use]
    pub fn papers(&self) -> DeskStore {
        self.store_of("papers", "paper/")
    }

    /// Results of pools.
    #[must_use]
    pub fn pools(&self) -> DeskStore {
        self.store_of("pools", "pool/")
    }

    /// Where what lies on the desk is kept; none for a record.
    #[must_use]
    pub fn desk_store(&self, kind: RowKind) -> Option<DeskStore> {
        match kind {
            RowKind::Record => None,
            RowKind::Paper => Some(self.papers()),
            RowKind::Pool(_) => Some(self.pools()),
        }
    }

    /// Notes of observers, made here or come from another phone.
    #[must_use]
    pub(super) fn observed(&self) -> DeskStore {
        self.store_of("observed", "notes/")
    }

    fn store_of(&self, all: &'static str, one: &'static str) -> DeskStore {
        DeskStore {
            settings: self.clone(),
            all,
            one,
        }
    }
}

impl DeskStore {
    fn key(&self, id: &str) -> String {
        format!("{}{id}", self.one)
    }

    /// The ids of all of them, the oldest first.
    #[must_use]
    pub fn ids(&self) -> Vec<String> {
        let kept = self.settings.text(self.all).unwrap_or_default();
        kept.lines().map(str::to_owned).collect()
    }

    /// The text of one.
    #[must_use]
    pub fn get(&self, id: &str) -> Option<String> {
        self.settings.text(&self.key(id))
    }

    /// Keeps one; false where the phone did not, and then it is as it was before.
    #[must_use]
    pub fn put(&self, id: &str, text: &str) -> bool {
        let mut all = self.ids();
        let is_listed = all.iter().any(|listed| listed == id);
        if !self.settings.keep_text(&self.key(id), text) {
            return false;
        }
        if is_listed {
            return true;
        }
        all.push(id.to_owned());
        let listed = self.settings.keep_text(self.all, &all.join("\n"));
        if !listed {
            // Nobody would find it again.
            self.settings.forget_text(&self.key(id));
        }
        listed
    }

    /// Takes one away.
    pub fn forget(&self, id: &str) {
        let mut all = self.ids();
        all.retain(|listed| listed != id);
        // Where storage is refused there is nothing to forget.
        self.settings.keep_text(self.all, &all.join("\n"));
        self.settings.forget_text(&self.key(id));
    }

    /// The texts of all of them, the oldest first.
    #[must_use]
    pub fn texts(&self) -> Vec<String> {
        self.ids().iter().filter_map(|id| self.get(id)).collect()
    }

    /// Keeps a text that came from elsewhere under a new id, unless the same one is there already.
    #[must_use]
    pub fn insert(&self, new_id: &str, text: &str) -> InsertOutcome {
        if self.texts().iter().any(|here| here == text) {
            InsertOutcome::Here
        } else if self.put(new_id, text) {
            InsertOutcome::New
        } else {
            InsertOutcome::Refused
        }
    }
}
