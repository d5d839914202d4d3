//! What is said of files that were taken in, as values; the words for it stand in `text`.

use super::desk_store::InsertOutcome;
use super::learner_data::LearnerImport;
use super::machine::ReadTrouble;
use record::{Foreign, MergeDecision, Problem};
use reports::{FileKind, FormProblem};
use rules::ByTeam;

/// Something that is said after an import.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ImportNote {
    /// So many of so many files are on this phone now.
    FilesTaken {
        /// Those that are.
        taken: usize,
        /// All that were chosen.
        all: usize,
    },
    /// Of one file.
    OfFile {
        /// Its name.
        name: String,
        /// What is said of it.
        note: FileNote,
    },
}

/// What is said of one file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileNote {
    /// It could not be opened.
    Unreadable(ReadTrouble),
    /// It holds nothing of ours.
    Foreign(Foreign),
    /// Something in its record was wrong.
    Problem(Problem),
    /// So many problems more like those before.
    MoreProblems(usize),
    /// What became of its record.
    Taken(MergeDecision),
    /// The record that it goes on with was sealed here and was opened again since: sets won then and now.
    SealOpened {
        /// Under the seal.
        before: ByTeam<u8>,
        /// In what is here now.
        now: ByTeam<u8>,
    },
    /// Its match is open in another tab.
    OpenElsewhere,
    /// Not all of it could be saved.
    NotSaved,
    /// Only the desk takes it in.
    OfTheDesk(FileKind),
    /// Something around the matches of a backup was wrong.
    BackupProblem(Problem),
    /// Somebody stopped the import of a backup.
    Stopped {
        /// After so many matches.
        taken: usize,
        /// Of so many.
        all: usize,
    },
    /// What became of the matches of a backup.
    BackupTaken(BackupCounts),
    /// What became of what a backup had from the desk.
    DeskTaken(DeskCounts),
    /// Whether what was practised is on this phone now.
    LearnerTaken(bool),
    /// What became of a logbook or of notes.
    Learner(LearnerImport),
    /// It is on the desk now; these fields of it were left out.
    FormTaken(Vec<FormProblem>),
    /// It was on the desk already.
    FormHere,
    /// There was no room for it on the desk.
    FormNotKept,
    /// It cannot be read.
    FormUnreadable(Vec<FormProblem>),
}

/// How many matches of a backup came in which way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct BackupCounts {
    /// They were not here.
    pub new: usize,
    /// They go on where what was here ended.
    pub longer: usize,
    /// They are kept beside another record of the same match.
    pub beside: usize,
    /// They were here.
    pub here: usize,
}

impl BackupCounts {
    pub(super) fn count(&mut self, decision: &MergeDecision) {
        match decision {
            MergeDecision::New(_) => self.new += 1,
            MergeDecision::Longer(_) => self.longer += 1,
            MergeDecision::Beside(_) => self.beside += 1,
            MergeDecision::Here(_) => self.here += 1,
        }
    }
}

/// How many paper sheets and pools of a backup came in which way.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct DeskCounts {
    /// They were not here.
    pub new: usize,
    /// They were.
    pub here: usize,
    /// There was no room for them.
    pub refused: usize,
}

impl DeskCounts {
    pub(super) fn count(&mut self, outcome: InsertOutcome) {
        match outcome {
            InsertOutcome::New => self.new += 1,
            InsertOutcome::Here => self.here += 1,
            InsertOutcome::Refused => self.refused += 1,
        }
    }

    pub(super) fn all(self) -> usize {
        self.new + self.here + self.refused
    }
}
