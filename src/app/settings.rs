//! Small texts that this phone remembers between visits, in local storage alone. Losing one is a nuisance and
//! no more, so nothing here is kept twice.

use std::rc::Rc;

use super::ports::{LocalStorage, LINES, OURS};

/// What this phone remembers. Clones are the same.
#[derive(Clone)]
pub struct Settings {
    local: Rc<dyn LocalStorage>,
}

/// The key in local storage for what is remembered under a name.
#[must_use]
pub fn key(name: &str) -> String {
    format!("{OURS}s/{name}")
}

impl Settings {
    /// Over this storage.
    #[must_use]
    pub fn new(local: Rc<dyn LocalStorage>) -> Settings {
        Settings { local }
    }

    /// The text under a name, if there is one and storage can be read.
    #[must_use]
    pub(crate) fn text(&self, name: &str) -> Option<String> {
        self.local.get(&key(name)).ok().flatten()
    }

    /// Keeps a text under a name. False where storage is refused or full: it then holds for this visit only.
    pub(crate) fn keep_text(&self, name: &str, value: &str) -> bool {
        self.local.set(&key(name), value).is_ok()
    }

    /// Forgets a name. Where storage is refused there is nothing to forget.
    pub(crate) fn forget_text(&self, name: &str) {
        let _ = self.local.remove(&key(name));
    }

    /// Forgets every name that begins like this.
    pub(crate) fn forget_below(&self, beginning: &str) {
        for key in self.local.keys(&key(beginning)).unwrap_or_default() {
            let _ = self.local.remove(&key);
        }
    }

    /// Forgets every name of this program that is no line of a match; whether all went.
    #[must_use]
    pub fn forget_all(&self) -> bool {
        let gone = self.local.keys(OURS).and_then(|keys| {
            keys.iter()
                .filter(|key| !key.starts_with(LINES))
                .try_for_each(|key| self.local.remove(key))
        });
        gone.is_ok()
    }

    /// Whether a name stands there, whatever text it has.
    #[must_use]
    pub(crate) fn has(&self, name: &str) -> bool {
        self.text(name).is_some()
    }

    /// Lets a name stand there without a text, or takes it away.
    pub(crate) fn mark(&self, name: &str, marked: bool) {
        if marked {
            self.keep_text(name, "");
        } else {
            self.forget_text(name);
        }
    }

    // ---- What is remembered of one match, a paper sheet or a pool.

    /// Whether it was archived.
    #[must_use]
    pub fn is_archived(&self, id: &str) -> bool {
        self.has(&format!("archived/{id}"))
    }

    /// Archives it, or brings it back. Where storage is full it stays as it was.
    pub fn set_archived(&self, id: &str, archived: bool) {
        self.mark(&format!("archived/{id}"), archived);
    }

    /// Whether the file that a match came from lacked a part: in storage it looks whole.
    #[must_use]
    pub fn lacks_a_part(&self, id: &str) -> bool {
        self.has(&format!("came-damaged/{id}"))
    }

    /// Remembers whether it did. Where storage is full it stays as it was.
    pub fn set_lacks_a_part(&self, id: &str, lacks_a_part: bool) {
        self.mark(&format!("came-damaged/{id}"), lacks_a_part);
    }
}
