//! What can be wrong with a file, a packed record and its codes. The words for it stand in `text`.

use std::fmt;

use super::{Broken, EntryProblem, Foreign};

/// Something that is wrong with a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// The match of a backup that it is about, from 1; none in the file of one match.
    pub of_match: Option<usize>,
    /// The entry it is about.
    pub entry: Option<u32>,
    /// How much is wrong.
    pub extent: Extent,
    /// What is wrong.
    pub kind: ProblemKind,
}

impl Problem {
    /// A problem of the file as a whole.
    pub(super) const fn of_file(extent: Extent, kind: ProblemKind) -> Problem {
        Problem {
            of_match: None,
            entry: None,
            extent,
            kind,
        }
    }

    /// Whether nothing at all could be read.
    #[must_use]
    pub fn is_fatal(&self) -> bool {
        self.extent == Extent::Whole
    }
}

/// How much of a file a problem concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Nothing at all could be read.
    Whole,
    /// A part could not be read, or was left out.
    Part,
    /// Everything was read, and the log itself shows the problem wherever it goes: see [`super::broken`].
    Traced,
}

/// What is wrong with a file.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum ProblemKind {
    /// It has more bytes than any match.
    TooLong {
        /// So many.
        bytes: usize,
    },
    /// It is something else.
    Foreign(Foreign),
    /// Its text is no JSON, and not even its head can be read.
    NoRecord {
        /// The line of the damage, from 1.
        line: usize,
    },
    /// It is JSON, and neither a match record nor anything else of ours.
    NoMatch,
    /// It says that it is something else than a match record.
    OtherLog,
    /// A newer version wrote it.
    NewerVersion(u64),
    /// It does not say its version.
    NoVersion,
    /// It has no list of entries.
    NoEntries,
    /// Its end is missing.
    CutOff,
    /// It is damaged in the middle.
    Damaged,
    /// It is damaged, and nothing can be read from there on, or its end is missing as well.
    EndUnreadable,
    /// Something else stands behind the record, such as another one. It is left out.
    MoreBehind,
    /// A field of the file that this program does not know. It is left out.
    UnknownField(String),
    /// It carries lines of storage that could not be read when it was written.
    UnreadLines(usize),
    /// It has no id.
    NoId,
    /// The id and the link beside it do not fit.
    IdChanged,
    /// It has more entries than are read.
    TooManyEntries(usize),
    /// The entry is no object.
    EntryDamaged,
    /// The entry has no number.
    NoNumber,
    /// The entry was given this number after it was written.
    Renumbered(u32),
    /// A number that an entry has already. The later entry is left out.
    NumberTwice(u32),
    /// These entries are missing.
    Gap {
        /// The first of them.
        first: u32,
        /// The last of them.
        last: u32,
    },
    /// The entry cannot be read.
    Entry(EntryProblem),
    /// A field of the entry that this program does not know. It is kept.
    UnknownEntryField(String),
    /// A link or a seal does not fit.
    Broken(Broken),
    /// A backup without a list of matches.
    NoMatches,
    /// A backup that ends before its first match.
    BackupEmpty,
    /// A backup that is damaged or cut off behind its first match.
    BackupDamaged,
    /// A backup of a newer version.
    NewerBackup(u64),
    /// A backup that does not say its version.
    BackupNoVersion,
    /// A backup of more matches than are read.
    TooManyMatches(usize),
    /// Paper sheets or pools of a backup that cannot be read. They are left out.
    OnDesk {
        /// The field of the file.
        field: &'static str,
        /// So many.
        count: usize,
    },
    /// What was practised cannot be read. It is left out.
    Learner,
    /// The logbook cannot be read. It is left out.
    Logbook,
    /// A match of a backup is missing in its place.
    MatchMissing,
    /// A drawn signature cannot be read. It is left out.
    Drawn,
    /// More is wrong than is listed.
    More,
}

impl ProblemKind {
    /// Whether a part of the match is missing with it. The log does not show that: its entries are only fewer.
    pub(super) const fn lacks_a_part(&self) -> bool {
        match self {
            ProblemKind::CutOff
            | ProblemKind::EndUnreadable
            | ProblemKind::UnreadLines(_)
            | ProblemKind::TooManyEntries(_)
            | ProblemKind::EntryDamaged
            | ProblemKind::NoNumber
            | ProblemKind::NumberTwice(_)
            | ProblemKind::Gap { .. }
            | ProblemKind::Entry(_)
            | ProblemKind::Drawn => true,
            // Nothing of it can be read, or the entries that are damaged are problems of their own.
            ProblemKind::TooLong { .. }
            | ProblemKind::Foreign(_)
            | ProblemKind::NoRecord { .. }
            | ProblemKind::NoMatch
            | ProblemKind::OtherLog
            | ProblemKind::NewerVersion(_)
            | ProblemKind::NoVersion
            | ProblemKind::NoEntries
            | ProblemKind::MatchMissing
            | ProblemKind::Damaged => false,
            // Every entry is there.
            ProblemKind::MoreBehind
            | ProblemKind::UnknownField(_)
            | ProblemKind::NoId
            | ProblemKind::IdChanged
            | ProblemKind::Renumbered(_)
            | ProblemKind::UnknownEntryField(_)
            | ProblemKind::Broken(_) => false,
            // The file around the matches.
            ProblemKind::NoMatches
            | ProblemKind::BackupEmpty
            | ProblemKind::BackupDamaged
            | ProblemKind::NewerBackup(_)
            | ProblemKind::BackupNoVersion
            | ProblemKind::TooManyMatches(_)
            | ProblemKind::OnDesk { .. }
            | ProblemKind::Learner
            | ProblemKind::Logbook
            | ProblemKind::More => false,
        }
    }
}

/// Why a record cannot be packed, or a packed one cannot be read.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum PackProblem {
    /// Entries are missing in the record.
    Gaps,
    /// The record has more entries than this.
    TooManyEntries(usize),
    /// A text in the record is too long.
    TextTooLong,
    /// The packed record is longer than any.
    TooLong,
    /// There is nothing.
    Empty,
    /// A newer version packed it.
    Newer,
    /// A version packed it whose form is not read any more.
    Older,
    /// It is not as it was packed.
    Damaged,
    /// It has entries that this version does not know.
    UnknownEntries,
    /// It would need so many codes.
    TooManyCodes(usize),
    /// A text with something else than digits.
    NoDigits,
    /// More digits than one code holds.
    TooManyDigits,
    /// A code that is none of a match record.
    ForeignCode,
    /// A code of a newer version.
    NewerCode,
    /// Codes of different records in one file.
    MixedCodes,
    /// Codes with the notes of an observer, where a record is wanted.
    CodesOfNotes,
    /// The notes of an observer that cannot be unpacked: damaged, or of a newer version.
    NotesUnreadable,
    /// The codes with these numbers, from 1, are missing.
    MissingCodes(Vec<usize>),
}

impl fmt::Display for PackProblem {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Debug::fmt(self, f)
    }
}

impl std::error::Error for PackProblem {}
