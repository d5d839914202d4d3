//! A match in this phone's storage, as far as the start screen shows it.

use std::sync::Arc;

use crate::setup::drawn;
use app::store::Found;
use app::summary::Summary;
use game::{Entry, State, Timeline};
use record::{KeptMatch, Log};
use text::setup::library as words;

/// A match that has begun counts as being played for so long after its last entry, in milliseconds:
/// half a day, because one that somebody forgot to finish must not keep an old version of the program
/// for ever. Our own choice.
pub const RUNS_MS: i64 = 12 * 3_600_000;

/// One match as a list shows it: nothing of it was folded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Listed {
    /// Its id.
    pub id: String,
    /// What a list says of it.
    pub summary: Summary,
    /// What of it is damaged, in words.
    pub problems: Vec<String>,
    /// Whether it was put away.
    pub archived: bool,
}

impl Listed {
    /// Of its summary.
    #[must_use]
    pub fn of_summary(id: String, summary: Summary) -> Listed {
        let archived = is_put_away(&id);
        let unreadable = match summary.unreadable {
            0 => None,
            count => Some(text::unreadable_lines(count)),
        };
        let problems = changed(&summary).into_iter().chain(unreadable).collect();
        Listed {
            id,
            summary,
            problems,
            archived,
        }
    }

    /// Of what both stores hold; it is folded once for this.
    #[must_use]
    pub fn of_found(id: &str, found: &Found) -> Listed {
        let timeline = Timeline::of(found.merged.entries.clone());
        let listed = Listed::of_summary(id.to_owned(), found.summary(&timeline));
        let damage = found.merged.damage.iter().map(text::line_damage);
        Listed {
            problems: changed(&listed.summary).into_iter().chain(damage).collect(),
            ..listed
        }
    }

    /// Whether it is being played at this moment, as far as the phone can tell.
    #[must_use]
    pub fn is_under_way(&self, now: i64) -> bool {
        let until = self
            .summary
            .last_at
            .map(|last| last.saturating_add(RUNS_MS));
        self.summary.is_under_way() && until.is_some_and(|until| until > now)
    }

    /// Whether somebody may want to go on with it.
    #[must_use]
    pub fn is_running(&self) -> bool {
        self.summary.may_go_on() && !self.archived
    }
}

/// That a record was changed after it was written.
fn changed(summary: &Summary) -> Option<String> {
    summary
        .is_changed
        .then(|| text::record_changed().to_owned())
}

/// One match, read and folded.
#[derive(Clone, Debug)]
pub struct Kept {
    /// Its id.
    pub id: String,
    /// When the last entry was made.
    pub last_at: Option<i64>,
    /// What of it is damaged, in words.
    pub problems: Vec<String>,
    /// Whether it was put away.
    pub archived: bool,
    /// Whether the file that it came from lacked a part.
    lacks_a_part: bool,
    unread: Vec<String>,
    timeline: Arc<Timeline>,
}

/// Under this name stays that a match was put away.
fn archived_key(id: &str) -> String {
    format!("archived/{id}")
}

/// Whether a match, or what else lies on the desk, was put away.
pub fn is_put_away(id: &str) -> bool {
    device::setting(&archived_key(id)).is_some()
}

/// Puts a match away, or brings it back. Where storage is full it stays as it was.
pub fn put_away(id: &str, away: bool) {
    if away {
        let _ = device::set_setting(&archived_key(id), "");
    } else {
        device::forget_setting(&archived_key(id));
    }
}

/// Under this name stays that a match came from a file of which a part was missing or could not be read: in
/// storage it looks whole.
fn came_damaged_key(id: &str) -> String {
    format!("came-damaged/{id}")
}

/// Notes whether the file that a match came from lacked a part. Where storage is full it stays as it was.
pub fn came_damaged(id: &str, damaged: bool) {
    if damaged {
        let _ = device::set_setting(&came_damaged_key(id), "");
    } else {
        device::forget_setting(&came_damaged_key(id));
    }
}

// Two of the same id and length are the same: a log only grows.
impl PartialEq for Kept {
    fn eq(&self, other: &Kept) -> bool {
        let same = self.id == other.id && self.entries().len() == other.entries().len();
        same && self.archived == other.archived && self.problems == other.problems
    }
}

impl Kept {
    /// From what both stores hold.
    #[must_use]
    pub fn of(id: String, found: &Found) -> Kept {
        let mut timeline = Timeline::of(found.merged.entries.clone());
        timeline.begin_at(found.merged.next);
        let lacks_a_part = device::setting(&came_damaged_key(&id)).is_some();
        let came_damaged = lacks_a_part.then(|| words::came_damaged().to_owned());
        let damage = found.merged.damage.iter().map(text::line_damage);
        Kept {
            last_at: timeline.entries().iter().rev().find_map(|e| e.at),
            problems: came_damaged.into_iter().chain(damage).collect(),
            archived: is_put_away(&id),
            lacks_a_part,
            unread: found.merged.unread(),
            timeline: Arc::new(timeline),
            id,
        }
    }

    /// Lines of it that could not be read.
    #[must_use]
    pub fn unread(&self) -> &[String] {
        &self.unread
    }

    /// The log, folded.
    #[must_use]
    pub fn timeline(&self) -> &Timeline {
        &self.timeline
    }

    /// Where it stands.
    #[must_use]
    pub fn state(&self) -> &State {
        self.timeline.state()
    }

    /// Its entries.
    #[must_use]
    pub fn entries(&self) -> &[Entry] {
        self.timeline.entries()
    }

    /// The log, as a file would hold it.
    #[must_use]
    pub fn log(&self) -> Log {
        Log {
            id: self.id.clone(),
            entries: self.entries().to_vec(),
        }
    }

    /// The same with everything that is kept beside it, for a backup.
    #[must_use]
    pub fn whole(&self) -> KeptMatch {
        KeptMatch {
            log: self.log(),
            archived: self.archived,
            drawn: drawn(&self.id),
            unread: self.unread.clone(),
            lacks_a_part: self.lacks_a_part,
        }
    }
}
