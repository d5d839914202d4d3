//! A match in this phone's storage: as a list shows it, and whole.

use std::sync::Arc;

use super::merge::Damage;
use super::settings::Settings;
use super::store::{Found, Store};
use super::summary::Summary;
use game::{Entry, State, Timeline};
use record::{KeptMatch, Log};

/// A match that has begun counts as being played for so long after its last entry, in milliseconds:
/// half a day, because one that somebody forgot to finish must not keep an old version of the program
/// for ever. Our own choice.
pub const RUNS_MS: i64 = 12 * 3_600_000;

/// What is wrong with a record.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum RecordProblem {
    /// It was changed after it was written.
    Changed,
    /// A part of the file that it came from was missing or could not be read.
    LacksAPart,
    /// So many lines of it cannot be read or proved.
    Unreadable(usize),
    /// One line of it.
    Line(Damage),
}

/// One match as a list shows it: nothing of it was folded.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ListedMatch {
    /// Its id.
    pub id: String,
    /// What a list says of it.
    pub summary: Summary,
    /// What is wrong with it.
    pub problems: Vec<RecordProblem>,
    /// Whether it was archived.
    pub archived: bool,
}

impl ListedMatch {
    /// Of its summary.
    #[must_use]
    pub fn of_summary(id: &str, summary: Summary, settings: &Settings) -> ListedMatch {
        let unreadable = match summary.unreadable {
            0 => None,
            count => Some(RecordProblem::Unreadable(count)),
        };
        ListedMatch::with_problems(id, summary, unreadable, settings)
    }

    /// Of what both stores hold; it is folded once for this.
    #[must_use]
    pub fn of_found(id: &str, found: &Found, settings: &Settings) -> ListedMatch {
        let timeline = Timeline::of(found.merged.entries.clone());
        let summary = found.summary(&timeline);
        ListedMatch::with_problems(id, summary, lines(found), settings)
    }

    /// With these problems of its lines.
    fn with_problems(
        id: &str,
        summary: Summary,
        of_lines: impl IntoIterator<Item = RecordProblem>,
        settings: &Settings,
    ) -> ListedMatch {
        ListedMatch {
            id: id.to_owned(),
            problems: changed(&summary).into_iter().chain(of_lines).collect(),
            summary,
            archived: settings.is_archived(id),
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

fn changed(summary: &Summary) -> Option<RecordProblem> {
    summary.is_changed.then_some(RecordProblem::Changed)
}

fn lines(found: &Found) -> impl Iterator<Item = RecordProblem> + '_ {
    found.merged.damage.iter().cloned().map(RecordProblem::Line)
}

/// One match, read and folded.
#[derive(Clone, Debug)]
pub struct StoredMatch {
    /// Its id.
    pub id: String,
    /// When the last entry was made.
    pub last_at: Option<i64>,
    /// What is wrong with it.
    pub problems: Vec<RecordProblem>,
    /// Whether it was archived.
    pub archived: bool,
    lacks_a_part: bool,
    unread: Vec<String>,
    timeline: Arc<Timeline>,
}

// Two of the same id and length are the same: a log only grows.
impl PartialEq for StoredMatch {
    fn eq(&self, other: &StoredMatch) -> bool {
        let same = self.id == other.id && self.entries().len() == other.entries().len();
        same && self.archived == other.archived && self.problems == other.problems
    }
}

impl StoredMatch {
    /// Reads and folds one match.
    pub async fn read(store: &Store, settings: &Settings, id: &str) -> StoredMatch {
        StoredMatch::of_found(id, &store.read(id).await, settings)
    }

    /// Of what both stores hold.
    #[must_use]
    pub fn of_found(id: &str, found: &Found, settings: &Settings) -> StoredMatch {
        let mut timeline = Timeline::of(found.merged.entries.clone());
        timeline.begin_at(found.merged.next);
        let lacks_a_part = settings.lacks_a_part(id);
        let came_so = lacks_a_part.then_some(RecordProblem::LacksAPart);
        StoredMatch {
            id: id.to_owned(),
            last_at: timeline.entries().iter().rev().find_map(|e| e.at),
            problems: came_so.into_iter().chain(lines(found)).collect(),
            archived: settings.is_archived(id),
            lacks_a_part,
            unread: found.merged.unread(),
            timeline: Arc::new(timeline),
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
    pub fn whole(&self, settings: &Settings) -> KeptMatch {
        KeptMatch {
            log: self.log(),
            archived: self.archived,
            drawn: settings.drafts(&self.id).drawn(),
            unread: self.unread.clone(),
            lacks_a_part: self.lacks_a_part,
        }
    }
}
