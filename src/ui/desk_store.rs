//! What lies on the desk and is no match record: paper sheets that are being keyed in, kept with every
//! key, and the results of pools, kept as they came.

/// Things of one kind, kept each under its id.
pub struct DeskStore {
    /// Under this name stand the ids of all of them.
    pub all: &'static str,
    /// With this the name of each begins.
    pub one: &'static str,
}

/// Paper sheets.
pub const PAPERS: DeskStore = DeskStore {
    all: "papers",
    one: "paper/",
};

/// Results of pools.
pub const POOLS: DeskStore = DeskStore {
    all: "pools",
    one: "pool/",
};

/// What became of a text that was to be laid on a shelf.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InsertOutcome {
    /// It lies there now.
    New,
    /// The same text lay there already.
    Here,
    /// The phone did not keep it.
    Refused,
}

impl DeskStore {
    fn key(&self, id: &str) -> String {
        format!("{}{id}", self.one)
    }

    /// The ids of all of them, the oldest first.
    pub fn ids(&self) -> Vec<String> {
        let kept = device::setting(self.all).unwrap_or_default();
        kept.lines().map(str::to_owned).collect()
    }

    /// The text of one.
    pub fn get(&self, id: &str) -> Option<String> {
        device::setting(&self.key(id))
    }

    /// Keeps one; false where the phone did not.
    pub fn put(&self, id: &str, text: &str) -> bool {
        let mut all = self.ids();
        let known = all.iter().any(|known| known == id);
        let kept = device::set_setting(&self.key(id), text).is_ok();
        if known {
            return kept;
        }
        all.push(id.to_owned());
        kept && device::set_setting(self.all, &all.join("\n")).is_ok()
    }

    /// Takes one away.
    pub fn forget(&self, id: &str) {
        let mut all = self.ids();
        all.retain(|known| known != id);
        // Where storage is refused there is nothing to forget.
        let _ = device::set_setting(self.all, &all.join("\n"));
        device::forget_setting(&self.key(id));
    }

    /// The texts of all of them, the oldest first.
    pub fn texts(&self) -> Vec<String> {
        self.ids().iter().filter_map(|id| self.get(id)).collect()
    }

    /// Lays a text that came from elsewhere on it, unless the same one lies there already.
    pub fn insert(&self, text: &str) -> InsertOutcome {
        if self.texts().iter().any(|here| here == text) {
            InsertOutcome::Here
        } else if self.put(&device::new_id(), text) {
            InsertOutcome::New
        } else {
            InsertOutcome::Refused
        }
    }
}
