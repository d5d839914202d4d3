//! What belongs to the learner on this phone: what was practised, the logbook, and notes of observers. What a
//! newer version of the program wrote is not written over by this one, which cannot read it.

use super::learner::Learner;
use super::settings::Settings;
use record::{Logbook, LogbookReading, Observed, ObservedReading};

/// What was practised stands under this name.
const LEARNER: &str = "learner";

/// The logbook stands under this name.
pub const LOGBOOK: &str = "logbook";

/// What came of a logbook or of notes that came from elsewhere.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LearnerImport {
    /// So many matches and goals were new, and so many could not be read.
    Logbook {
        /// Matches.
        matches: usize,
        /// Goals.
        goals: usize,
        /// What could not be read.
        left_out: usize,
    },
    /// Notes are here; so many of their events could not be read.
    Notes {
        /// What could not be read.
        left_out: usize,
    },
    /// They were written by a newer version.
    Newer,
    /// They cannot be read.
    Foreign,
    /// The phone did not keep them.
    NotKept,
}

impl LearnerImport {
    /// Whether any of it is on this phone now.
    #[must_use]
    pub fn is_here(self) -> bool {
        match self {
            LearnerImport::Logbook { .. } | LearnerImport::Notes { .. } => true,
            LearnerImport::Newer | LearnerImport::Foreign | LearnerImport::NotKept => false,
        }
    }
}

/// Under this name it stands that the sides of a watched match were swapped by hand.
fn swapped(id: &str) -> String {
    format!("watch-swapped/{id}")
}

impl Settings {
    // ---- What was practised.

    /// What was practised; nothing where there is none, or where it cannot be read.
    #[must_use]
    pub fn learner(&self) -> Learner {
        self.learner_text()
            .and_then(|text| Learner::read(&text))
            .unwrap_or_default()
    }

    /// The same as the text that is kept.
    #[must_use]
    pub fn learner_text(&self) -> Option<String> {
        self.text(LEARNER)
    }

    /// Keeps it; false where the phone did not.
    #[must_use]
    pub fn keep_learner(&self, learner: &Learner) -> bool {
        let is_newer = self
            .learner_text()
            .is_some_and(|text| Learner::is_newer(&text));
        !is_newer && self.keep_text(LEARNER, &learner.write())
    }

    /// Puts what another phone kept beside it; false where that cannot be read or kept.
    #[must_use]
    pub fn merge_learner(&self, text: &str) -> bool {
        let Some(other) = Learner::read(text) else {
            return false;
        };
        let mut learner = self.learner();
        learner.merge(other);
        self.keep_learner(&learner)
    }

    /// Forgets it.
    pub fn forget_learner(&self) {
        self.forget_text(LEARNER);
    }

    // ---- The logbook.

    /// The logbook; an empty one where there is none, or where it cannot be read.
    #[must_use]
    pub fn logbook(&self) -> Logbook {
        match self.logbook_reading() {
            Some(LogbookReading::Logbook(logbook, _)) => logbook,
            Some(LogbookReading::Newer | LogbookReading::Foreign) | None => Logbook::default(),
        }
    }

    /// The same as the text that is kept.
    #[must_use]
    pub fn logbook_text(&self) -> Option<String> {
        self.text(LOGBOOK)
    }

    fn logbook_reading(&self) -> Option<LogbookReading> {
        self.logbook_text().as_deref().map(Logbook::read)
    }

    /// Keeps it; false where the phone did not.
    #[must_use]
    pub fn keep_logbook(&self, logbook: &Logbook) -> bool {
        if matches!(self.logbook_reading(), Some(LogbookReading::Newer)) {
            return false;
        }
        if logbook.is_empty() {
            self.forget_text(LOGBOOK);
            return true;
        }
        self.keep_text(LOGBOOK, &logbook.write())
    }

    /// Puts a logbook, or goals, beside what is here.
    #[must_use]
    pub fn merge_logbook(&self, text: &str) -> LearnerImport {
        match Logbook::read(text) {
            LogbookReading::Newer => LearnerImport::Newer,
            LogbookReading::Foreign => LearnerImport::Foreign,
            LogbookReading::Logbook(other, left_out) => {
                let mut here = self.logbook();
                let (matches, goals) = here.merge(other);
                if self.keep_logbook(&here) {
                    LearnerImport::Logbook {
                        matches,
                        goals,
                        left_out,
                    }
                } else {
                    LearnerImport::NotKept
                }
            }
        }
    }

    // ---- Notes of observers.

    /// All notes, the latest first.
    #[must_use]
    pub fn all_notes(&self) -> Vec<Observed> {
        let texts = self.notes_texts().into_iter();
        let read = texts.filter_map(|text| match Observed::read(&text) {
            ObservedReading::Notes(observed, _) => Some(*observed),
            ObservedReading::Newer | ObservedReading::Foreign => None,
        });
        let mut all: Vec<Observed> = read.collect();
        rules::sort_by_key(&mut all, |observed| std::cmp::Reverse(observed.began));
        all
    }

    /// All notes as the texts that are kept.
    #[must_use]
    pub fn notes_texts(&self) -> Vec<String> {
        self.observed().texts()
    }

    /// The notes of this id.
    #[must_use]
    pub fn notes(&self, id: &str) -> Option<Observed> {
        match self.notes_reading(id)? {
            ObservedReading::Notes(observed, _) => Some(*observed),
            ObservedReading::Newer | ObservedReading::Foreign => None,
        }
    }

    fn notes_reading(&self, id: &str) -> Option<ObservedReading> {
        self.observed().get(id).as_deref().map(Observed::read)
    }

    /// Keeps notes; false where the phone did not.
    #[must_use]
    pub fn keep_notes(&self, observed: &Observed) -> bool {
        let there = self.notes_reading(&observed.id);
        !matches!(there, Some(ObservedReading::Newer))
            && self.observed().put(&observed.id, &observed.write())
    }

    /// Whether whoever watches a match sees its teams on the other sides than at its beginning.
    #[must_use]
    pub fn sides_are_swapped(&self, id: &str) -> bool {
        self.has(&swapped(id))
    }

    /// Keeps it. Where storage is full it holds as long as the page.
    pub fn keep_sides_swapped(&self, id: &str, is_swapped: bool) {
        self.mark(&swapped(id), is_swapped);
    }

    /// Forgets notes, and on which sides their teams stood.
    pub fn forget_notes(&self, id: &str) {
        self.keep_sides_swapped(id, false);
        self.observed().forget(id);
    }

    /// Takes notes in that came from elsewhere, under a new id where they have none. The same ones that are here
    /// already are put beside them.
    #[must_use]
    pub fn take_notes(&self, mut came: Observed, left_out: usize, new_id: &str) -> LearnerImport {
        if came.id.is_empty() {
            new_id.clone_into(&mut came.id);
        }
        let notes = match self.notes(&came.id) {
            Some(mut here) => {
                here.merge(came);
                here
            }
            None => came,
        };
        if self.keep_notes(&notes) {
            LearnerImport::Notes { left_out }
        } else {
            LearnerImport::NotKept
        }
    }

    /// The same for their file.
    #[must_use]
    pub fn take_notes_file(&self, text: &str, new_id: &str) -> LearnerImport {
        match Observed::read(text) {
            ObservedReading::Notes(observed, left_out) => {
                self.take_notes(*observed, left_out, new_id)
            }
            ObservedReading::Newer => LearnerImport::Newer,
            ObservedReading::Foreign => LearnerImport::Foreign,
        }
    }
}
