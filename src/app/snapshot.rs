//! What is wanted of the open match, and what is shown of it.

use std::sync::Arc;

use super::keeper::{Saved, StorageNotice};
use super::merge::Damage;
use super::ports::Standing;
use game::{Kind, Refusal, State};

/// Why an entry was not made. Nothing is kept then.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NotEntered {
    /// The rules object.
    Refused(Refusal),
    /// Another tab writes this match.
    ReadOnly,
    /// The tap came from a picture that is gone: the same tap fired twice.
    Stale,
    /// No match is open.
    NoMatch,
}

/// Something about the open match that has to be said once.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SessionNotice {
    /// A line cannot be read or proved.
    Damaged(Damage),
    /// The record of a match that is still played was changed after it was written. Once the match is over,
    /// its list and its sheet say so.
    RecordChanged,
    /// Something happened to the storage.
    Storage(StorageNotice),
}

/// Everything that is shown of the open match.
#[derive(Clone, Debug)]
pub struct Snapshot {
    /// Its id; none where no match is open, or where it has not been read yet.
    pub id: Option<String>,
    /// The state after the last entry.
    pub state: Arc<State>,
    /// What this tab may do.
    pub standing: Standing,
    /// How well the last entry is kept.
    pub saved: Saved,
    /// Lines that cannot be read or proved.
    pub damage: Vec<Damage>,
    /// What has not been read yet of what had to be said.
    pub notices: Vec<SessionNotice>,
}

impl Snapshot {
    /// Where no match is open.
    #[must_use]
    pub fn closed() -> Snapshot {
        Snapshot {
            id: None,
            state: Arc::new(State::new()),
            standing: Standing::Asking,
            saved: Saved::Saving,
            damage: Vec::new(),
            notices: Vec::new(),
        }
    }
}

/// An entry as somebody wants it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wish {
    /// What is to be entered.
    pub kind: Kind,
    /// The number that the next entry had in the picture that was tapped.
    pub expected: Option<u32>,
    /// Why it is to count against the advice of the rules.
    pub insist: Option<String>,
}

impl From<Kind> for Wish {
    fn from(kind: Kind) -> Wish {
        Wish {
            kind,
            expected: None,
            insist: None,
        }
    }
}
