//! What is wrong with a file, a packed record or its codes: the words behind *file:* or *entry n:*, without
//! a capital and an end where they go on a sentence.

use crate::problem::*;
use record::{spaced, Broken, EntryProblem, Foreign, PackProblem, Problem, ProblemKind, Wanted};
use record::{MAX_ENTRIES, MAX_MATCHES};

/// In English.
pub static WORDS: ProblemWords = ProblemWords {
    problem,
    kind,
    broken,
    entry,
    foreign,
    packed,
};

fn problem(problem: &Problem) -> String {
    let words = kind(&problem.kind);
    match problem.of_match {
        Some(place) => format!("match {place}: {words}"),
        None => words,
    }
}

fn kind(kind: &ProblemKind) -> String {
    use ProblemKind as P;
    match kind {
        P::TooLong { bytes } => format!(
            "The file has {} MB; a match has far less than {MOST_MB}. Choose another file.",
            bytes.div_ceil(MB)
        ),
        P::Foreign(foreign) => self::foreign(foreign),
        P::NoRecord { line } => format!(
            "This is not a match record, or it is damaged (line {line}). Ask for the file again."
        ),
        P::NoMatch => "The file is not a match record. Choose another file.".to_owned(),
        P::OtherLog => "The file is not a match record of this app. Choose another file.".to_owned(),
        P::NewerVersion(newer) => format!(
            "The file was written by a newer version ({newer}) of this program. Update and open it again."
        ),
        P::NoVersion => "The file does not say which version it has. Ask for the file again.".to_owned(),
        P::NoEntries => "The record has no list of entries. Ask for the file again.".to_owned(),
        P::CutOff => {
            "the file is cut off at its end. All entries before the cut were read. Nobody knows how many are \
             missing"
                .to_owned()
        }
        P::Damaged => "the file is damaged; what is whole was read".to_owned(),
        P::EndUnreadable => {
            "the file is damaged and cannot be read to its end. What is whole before that was read. Nobody knows \
             how many entries are missing"
                .to_owned()
        }
        P::MoreBehind => {
            "something else stands behind the record in this file, perhaps another record. It was left out"
                .to_owned()
        }
        P::UnknownField(field) => format!("unknown field `{field}`, left out"),
        P::UnreadLines(lines) => format!(
            "{lines} lines were damaged, or newer than the program, when the file was written. They are kept as \
             they were"
        ),
        P::NoId => "the record has no id".to_owned(),
        P::IdChanged => "the id of the record was changed, or the link beside it".to_owned(),
        P::TooManyEntries(entries) => {
            format!("{entries} entries; only the first {MAX_ENTRIES} were read")
        }
        P::EntryDamaged => "the entry is damaged".to_owned(),
        P::NoNumber => "the entry has no number, or one that no entry can have".to_owned(),
        P::Renumbered(n) => format!("the number of the entry was changed to {n}"),
        P::NumberTwice(n) => format!("number {n} stands again, the later one is left out"),
        P::Gap { first, last } => format!("entries {first} to {last} are missing"),
        P::Entry(problem) => entry(problem),
        P::UnknownEntryField(field) => format!("unknown field `{field}`, kept and not understood"),
        P::Broken(broken) => self::broken(broken),
        P::NoMatches => "The backup has no list of matches. Ask for it again.".to_owned(),
        P::BackupEmpty => {
            "The backup is damaged or cut off before its first match. Ask for it again.".to_owned()
        }
        P::BackupDamaged => {
            "the backup is damaged or cut off. What is whole was read, the rest is missing"
                .to_owned()
        }
        P::NewerBackup(newer) => format!(
            "The backup was written by a newer version ({newer}) of this program. Update and open it again."
        ),
        P::BackupNoVersion => "The backup does not say which version it has. Ask for it again.".to_owned(),
        P::TooManyMatches(matches) => {
            format!("{matches} matches; only the first {MAX_MATCHES} were read")
        }
        P::OnDesk { field, count } => format!("{count} of its {field} cannot be read, left out"),
        P::Learner => "what was practised cannot be read, left out".to_owned(),
        P::Logbook => "the logbook cannot be read, left out".to_owned(),
        P::MatchMissing => "there is no match in it".to_owned(),
        P::Drawn => "a drawn signature cannot be read, left out".to_owned(),
        P::More => "there is more wrong than is listed here".to_owned(),
    }
}

fn broken(broken: &Broken) -> String {
    match broken {
        Broken::Link { .. } => "the entry or its link was changed after it was written, or an entry before it was removed"
            .to_owned(),
        Broken::Seal(seal) => format!(
            "what stands before the seal is not what was sealed: the seal says {}, the record gives {}",
            spaced(&seal.code),
            spaced(&seal.found)
        ),
    }
}

fn entry(problem: &EntryProblem) -> String {
    use EntryProblem as P;
    match problem {
        P::Damaged => "the entry is damaged".to_owned(),
        P::EntryNoObject => "the entry is not an object".to_owned(),
        P::Missing(field) => format!("the field `{field}` is missing"),
        P::Not { field, wanted } => match wanted {
            Wanted::Text => format!("`{field}` is not a text"),
            Wanted::Flag => format!("`{field}` is neither true nor false"),
            Wanted::Whole(most) => format!("`{field}` is not a whole number from 0 to {most}"),
            Wanted::Time => format!("`{field}` is not a time in milliseconds"),
            Wanted::List => format!("`{field}` is not a list"),
            Wanted::Object => format!("`{field}` is not an object"),
        },
        P::UnknownWord {
            field,
            given,
            known,
        } => {
            let known = match &known[..] {
                [before @ .., last] if !before.is_empty() => {
                    format!("`{}` or `{last}`", before.join("`, `"))
                }
                _ => known.concat(),
            };
            format!("`{field}` says `{given}`; it can say {known}")
        }
        P::ItemNoObject(field) => format!("an item of `{field}` is not an object"),
        P::UnknownKind(kind) => format!("the kind `{kind}` is not known"),
        P::UnknownCause(code) => format!("the cause `{code}` is not known"),
        P::NobodyNamed => "`who` names one `player` or one of the `staff`".to_owned(),
        P::UnknownPreset(code) => format!("unknown preset `{code}`"),
        P::PresetNoName => "the preset is not a name".to_owned(),
        P::UnknownRule(rule) => format!("unknown rule `{rule}`"),
        P::OneNumber { rule, of: [a, b] } => format!("`{rule}` has one number, `{a}` or `{b}`"),
        P::InRules(problem) => format!("rules: {}", entry(problem)),
    }
}

fn foreign(foreign: &Foreign) -> String {
    match foreign {
        Foreign::Empty => "There is nothing in this file. Ask for it again.",
        Foreign::Archive => {
            "This is a compressed file. Unpack it first, then choose the file inside it."
        }
        Foreign::Picture => {
            "This is a picture, not a record. Ask for the file of the record; if the picture shows codes, \
             scan them."
        }
        Foreign::Pdf => "This is a PDF, which is made for printing. Ask for the file of the record.",
        Foreign::Letters => {
            "This file is damaged, or an editor saved it in another encoding. Ask for it again, or save it \
             there as UTF-8."
        }
        Foreign::Binary => "This is not one of our files. Choose another one.",
        Foreign::Packed(why) => return packed(why),
    }
    .to_owned()
}

fn packed(why: &PackProblem) -> String {
    use PackProblem as P;
    match why {
        P::Gaps => "Entries are missing in this record, so it cannot be packed. Share the file.",
        P::TooManyEntries(most) => {
            return format!(
                "The record has more than {most} entries and cannot be packed. Share the file."
            )
        }
        P::TextTooLong => "A text in the record is too long to be packed. Share the file.",
        P::TooLong => "This is too long for a packed record. Ask for the file.",
        P::Empty => "There is nothing to unpack.",
        P::Newer => {
            "A newer version of the app has packed this record. Update the app here, or ask for the file."
        }
        P::Older => {
            "An older version of the app has packed this record in a form that is not read any more. Update \
             the app there and show the codes again, or ask for the file."
        }
        P::Damaged => "The packed record is damaged. Share it again.",
        P::UnknownEntries => {
            "The record has entries that this version of the app does not know. Update the app here, or ask \
             for the file."
        }
        P::TooManyCodes(codes) => {
            return format!("The record would be {codes} codes. Share the file instead.")
        }
        P::NoDigits => "Only digits are made into a code here.",
        P::TooManyDigits => "This is too long for one code.",
        P::ForeignCode => {
            "This is not a code of a match record. Use the code on the other phone's screen."
        }
        P::NewerCode => "This code was made by a newer version. Update, or ask for the file.",
        P::MixedCodes => {
            "These are codes of different records. Put each record into a file of its own."
        }
        P::CodesOfNotes => {
            "These codes hold the notes of an observer. Scan them on the phone of the referee."
        }
        P::NotesUnreadable => {
            "These notes are damaged, or a newer version made them. Scan the code again, or update."
        }
        P::MissingCodes(missing) => {
            let missing: Vec<String> = missing.iter().map(usize::to_string).collect();
            return format!(
                "Codes are missing: {}. Put the digits of all codes into the file, one code a line.",
                missing.join(", ")
            );
        }
    }
    .to_owned()
}
