//! One entry as a line in storage, chained to the one before it by a check.

use super::chain::Link;
use super::file;
use game::Entry;

/// Writes the lines of one match in order.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct LineWriter {
    last: Link,
}

impl LineWriter {
    /// Goes on behind the line of this link.
    #[must_use]
    pub fn after(last: Link) -> LineWriter {
        LineWriter { last }
    }

    /// The line of the next entry: its link, a space, its JSON.
    pub fn line(&mut self, entry: &Entry) -> String {
        let json = file::write_kept(entry);
        self.last = self.last.next(&json);
        format!("{} {json}", self.last.digits())
    }

    /// The last link.
    #[must_use]
    pub fn link(&self) -> &Link {
        &self.last
    }
}
