//! The links of a file's entries, each checked against the one before it.

use serde_json::Value;

use super::{as_written, write_entry, LINK};
use crate::chain::Link;
use crate::wire;
use game::Entry;

/// Follows the links of a file. Each is checked against the one given before it, so that what is wrong
/// in one place hides nothing in another.
pub(super) struct Chain {
    /// The link before; none where it cannot be known.
    pub(super) before: Option<Link>,
}

impl Default for Chain {
    fn default() -> Chain {
        Chain {
            before: Some(Link::default()),
        }
    }
}

impl Chain {
    /// Whether an entry is not what its link was made of. Nothing is said where the entry has no link.
    pub(super) fn parts_at(&mut self, entry: &Entry, value: &Value) -> bool {
        let made = self.before.as_ref().map(|b| b.next(&write_entry(entry)));
        let Some(given) = value.get(LINK) else {
            self.before = made;
            return false;
        };
        let given = given.as_str().and_then(Link::read);
        let parts = given.is_none() || (made.is_some() && made != given);
        self.before = given;
        parts
    }

    /// An entry that an editor has laid out anew. Where an older program left values of the rules out, the link
    /// says whether it had written them as they stand here.
    pub(super) fn in_its_layout(&self, entry: Entry, value: &Value) -> Entry {
        let as_given = || {
            let (before, rules) = (self.before.as_ref()?, value.get("rules")?);
            let given = Link::read(value.get(LINK)?.as_str()?)?;
            let text = wire::write_with_rules(&entry, rules);
            (before.next(&text) == given).then(|| as_written(entry.clone(), &text))
        };
        as_given().unwrap_or(entry)
    }

    /// The entry as it was before its number was changed, if the link says that this is what happened.
    pub(super) fn under_another_number(
        &mut self,
        value: &Value,
        text: Option<&str>,
        n: u32,
    ) -> Option<Entry> {
        let given = Link::read(value.get(LINK)?.as_str()?)?;
        let read = wire::read(value).ok()?;
        let entry = Entry::new(n, read.kind.clone());
        let entry = Entry {
            at: read.at,
            insist: read.insist.clone(),
            ..entry
        };
        // As this program writes it, or as it was written but for the number.
        let number = |n: u32| format!("{{\"n\":{n},");
        let renumbered = text.and_then(|text| text.strip_prefix(&number(read.n)));
        let renumbered = renumbered.map(|rest| as_written(entry.clone(), &(number(n) + rest)));
        let before = self.before.as_ref()?;
        let fits = |entry: &Entry| before.next(&write_entry(entry)) == given;
        let entry = renumbered.into_iter().chain([entry]).find(fits)?;
        self.before = Some(given);
        Some(entry)
    }

    /// Goes past an entry that cannot be read.
    pub(super) fn skip(&mut self, value: &Value) {
        self.before = value.get(LINK).and_then(Value::as_str).and_then(Link::read);
    }
}
