//! The words about files that are taken in.

use app::import_note::{BackupCounts, DeskCounts, FileNote, ImportNote};
use app::importer::Progress;
use app::learner_data::LearnerImport;
use app::machine::ReadTrouble;
use record::{Foreign, MergeDecision, Problem};
use reports::FormProblem;
use rules::ByTeam;

words! { IntakeWords in intake;
    /// A file that could not be opened.
    unreadable_file(name: &str, trouble: &ReadTrouble) -> String;
    /// A file that holds nothing of ours.
    foreign_file(name: &str, foreign: &Foreign) -> String;
    /// Something that was wrong in a record.
    record_problem(name: &str, problem: &Problem) -> String;
    /// So many problems more.
    more_problems(name: &str, count: usize) -> String;
    /// A sealed record was opened again on another phone.
    seal_opened(name: &str, before: ByTeam<u8>, now: ByTeam<u8>) -> String;
    /// The storage did not take it.
    import_not_saved(name: &str) -> String;
    /// While files are read.
    reading_files -> &'static str;
    /// How far it is.
    taking_in(place: usize, all: usize) -> String;
    /// Where it was ended.
    stopped_at(name: &str, taken: usize, all: usize) -> String;
    /// What became of many files, before each is named.
    files_taken(taken: usize, all: usize) -> String;
    /// A file that only the desk takes in.
    of_the_desk(name: &str, kind: &str) -> String;
    /// What became of a record that came.
    taken(name: &str, how: &MergeDecision) -> String;
    /// A longer record of a match that another tab has open.
    open_elsewhere(name: &str) -> String;
    /// What became of the matches of a backup.
    backup_taken(name: &str, counts: BackupCounts) -> String;
    /// What of the desk came with a backup.
    desk_taken(name: &str, counts: DeskCounts) -> String;
    /// What a logbook, or goals for one, brought.
    logbook_taken(name: &str, matches: usize, goals: usize, left_out: usize) -> String;
    /// Notes of an observer came.
    notes_taken(name: &str, left_out: usize) -> String;
    /// A file of a newer version.
    newer_file(name: &str) -> String;
    /// A file that cannot be read.
    damaged_file(name: &str) -> String;
    /// A file for which there is no room.
    not_kept(name: &str) -> String;
    /// Whether what was practised came with a backup.
    practised_taken(name: &str, taken: bool) -> String;
    /// A file of the desk came; what was left out of it follows.
    form_taken(name: &str) -> String;
    /// A file of the desk that was there already.
    form_here(name: &str) -> String;
    /// A file of the desk for which there is no room.
    form_not_kept(name: &str) -> String;
    /// A file of the desk that cannot be read; where follows.
    form_unreadable(name: &str) -> String;
    /// So many problems more of such a file.
    more_form_problems(count: usize) -> String;
}

/// How far an import is.
pub fn import_progress(progress: Progress) -> String {
    match progress {
        Progress::Reading => reading_files().to_owned(),
        Progress::Match { place, all } => taking_in(place, all),
    }
}

/// What is said after an import; of many matches in one file the same is said once.
pub fn import_notes(notes: &[ImportNote]) -> Vec<String> {
    let mut said: Vec<String> = Vec::new();
    for note in notes {
        let sentence = import_note(note);
        if !said.contains(&sentence) {
            said.push(sentence);
        }
    }
    said
}

fn import_note(note: &ImportNote) -> String {
    match note {
        ImportNote::FilesTaken { taken, all } => files_taken(*taken, *all),
        ImportNote::OfFile { name, note } => file_note(name, note),
    }
}

fn file_note(name: &str, note: &FileNote) -> String {
    match note {
        FileNote::Unreadable(trouble) => unreadable_file(name, trouble),
        FileNote::Foreign(foreign) => foreign_file(name, foreign),
        FileNote::Problem(problem) => record_problem(name, problem),
        FileNote::MoreProblems(count) => more_problems(name, *count),
        FileNote::Taken(how) => taken(name, how),
        FileNote::SealOpened { before, now } => seal_opened(name, *before, *now),
        FileNote::OpenElsewhere => open_elsewhere(name),
        FileNote::NotSaved => import_not_saved(name),
        FileNote::OfTheDesk(kind) => of_the_desk(name, crate::desk::file_kind(*kind)),
        FileNote::BackupProblem(problem) => backup_problem(name, problem),
        FileNote::Stopped { taken, all } => stopped_at(name, *taken, *all),
        FileNote::BackupTaken(counts) => backup_taken(name, *counts),
        FileNote::DeskTaken(counts) => desk_taken(name, *counts),
        FileNote::LearnerTaken(taken) => practised_taken(name, *taken),
        FileNote::Learner(import) => learner_import(name, *import),
        FileNote::FormTaken(problems) => with_places(form_taken(name), problems),
        FileNote::FormHere => form_here(name),
        FileNote::FormNotKept => form_not_kept(name),
        FileNote::FormUnreadable(problems) => with_places(form_unreadable(name), problems),
    }
}

fn learner_import(name: &str, import: LearnerImport) -> String {
    match import {
        LearnerImport::Logbook {
            matches,
            goals,
            left_out,
        } => logbook_taken(name, matches, goals, left_out),
        LearnerImport::Notes { left_out } => notes_taken(name, left_out),
        LearnerImport::Newer => newer_file(name),
        LearnerImport::Foreign => damaged_file(name),
        LearnerImport::NotKept => not_kept(name),
    }
}

/// What was wrong with the file around the matches.
fn backup_problem(name: &str, problem: &Problem) -> String {
    let sentence = crate::problem::problem(problem);
    format!("{name}: {}.", sentence.trim_end_matches('.'))
}

/// A sentence, and the first problems of a form behind it, each with its place.
fn with_places(sentence: String, problems: &[FormProblem]) -> String {
    const MOST: usize = 3;
    let mut say = vec![sentence];
    say.extend(problems.iter().take(MOST).map(|p| match p.place.as_str() {
        "" => crate::form_problem(&p.kind),
        place => format!("{place}: {}", crate::form_problem(&p.kind)),
    }));
    if problems.len() > MOST {
        say.push(more_form_problems(problems.len() - MOST));
    }
    say.join(" ")
}
