//! Files that come in: what is here afterwards, and what is said of them.

use std::cell::RefCell;
use std::rc::Rc;

use app::import_note::{BackupCounts, FileNote, ImportNote};
use app::importer::{ImportEvent, ImportOutcome, Importer, Progress};
use app::machine::ReadTrouble;
use app::ports::{Pending, PickedFile};
use game::{simulate, Entry, Kind, Timeline};
use record::{seal_code, write, write_backup, KeptMatch, Log, Logbook, MergeDecision, OnDesk};
use reports::FileKind;
use rules::{Preset, Team};

use crate::hall::{tally, Hall, Screen};
use crate::library::{ids, library};

struct File(&'static str, Vec<u8>);

impl PickedFile for File {
    fn name(&self) -> String {
        self.0.to_owned()
    }

    fn read(&self, max_bytes: u64) -> Pending<Result<Vec<u8>, ReadTrouble>> {
        let (size, bytes) = (self.1.len() as u64, self.1.clone());
        Box::pin(async move {
            if size > max_bytes {
                let cap = max_bytes;
                return Err(ReadTrouble::TooBig { size, cap });
            }
            Ok(bytes)
        })
    }
}

fn files(all: &[(&'static str, String)]) -> Vec<Box<dyn PickedFile>> {
    let file = |(name, text): &(&'static str, String)| {
        Box::new(File(name, text.clone().into_bytes())) as Box<dyn PickedFile>
    };
    all.iter().map(file).collect()
}

/// An importer of a screen, and everything that it has published.
struct Import {
    importer: Importer,
    events: Rc<RefCell<Vec<ImportEvent>>>,
}

impl Import {
    /// Somebody stops while the third match of a backup of twelve is taken in.
    fn stop_at_the_third_of_12(&self, hall: &Hall) {
        let third = ImportEvent::Progress(Progress::Match { place: 3, all: 12 });
        for _ in 0..1000 {
            if self.last() != third {
                hall.step();
            }
        }
        assert_eq!(self.last(), third);
        self.importer.stop();
    }

    fn of(screen: &Screen) -> Import {
        let events: Rc<RefCell<Vec<ImportEvent>>> = Rc::default();
        let to = Rc::clone(&events);
        let (library, _) = library(screen);
        let importer = Importer::new(library, move |event| {
            to.borrow_mut().push(event);
        });
        Import { importer, events }
    }

    fn take(&self, all: &[(&'static str, String)]) {
        self.importer.take_files(files(all), None);
    }

    fn last(&self) -> ImportEvent {
        self.events.borrow().last().cloned().expect("it has begun")
    }

    /// Lets the browser work until all files are through.
    fn end(&self, hall: &Hall) -> ImportOutcome {
        for _ in 0..300 {
            hall.run(1000);
            if let ImportEvent::Over(outcome) = self.last() {
                return outcome;
            }
        }
        panic!("it does not come to an end");
    }
}

fn log(id: &str, entries: &[Entry]) -> Log {
    Log {
        id: id.to_owned(),
        entries: entries.to_vec(),
    }
}

fn of_file(name: &str, note: FileNote) -> ImportNote {
    ImportNote::OfFile {
        name: name.to_owned(),
        note,
    }
}

fn taken(name: &str, decision: MergeDecision) -> ImportNote {
    of_file(name, FileNote::Taken(decision))
}

/// So many matches in one file, which is then long enough to be read part by part.
fn backup(count: u64) -> String {
    let matches: Vec<KeptMatch> = (1..=count)
        .map(|seed| KeptMatch {
            log: log(&format!("m{seed}"), &simulate(Preset::SchoolJunior, seed)),
            archived: seed == 1,
            ..KeptMatch::default()
        })
        .collect();
    write_backup(&matches, &OnDesk::default(), Some(1))
}

/// A record that was sealed here comes back longer from another phone, opened again and with another result.
#[test]
fn a_sealed_record_does_not_change_without_a_word() {
    let hall = Hall::new();
    let screen = hall.tab();
    let mut entries = simulate(Preset::SchoolJunior, 1);
    let result = Timeline::of(entries.clone()).state().sets_won();
    let last_rally = entries
        .iter()
        .rfind(|e| matches!(e.kind, Kind::Rally { .. }));
    let last_rally = last_rally.expect("a rally").n;
    let next = |entries: &[Entry], kind| Entry::new(entries.len() as u32 + 1, kind);
    let code = seal_code(&entries);
    entries.push(next(&entries, Kind::Seal { code }));
    let sealed = entries.clone();
    entries.push(next(
        &entries,
        Kind::Reopen {
            why: Some("the last point".to_owned()),
        },
    ));
    let why = None;
    entries.push(next(
        &entries,
        Kind::Strike {
            entry: last_rally,
            why,
        },
    ));
    let now = Timeline::of(entries.clone()).state().sets_won();
    assert_ne!(result, now);
    let import = Import::of(&screen);
    import.take(&[("sealed.json", write(&log("m", &sealed)))]);
    import.end(&hall);
    let import = Import::of(&screen);
    import.take(&[("longer.json", write(&log("m", &entries)))]);
    let said = import.end(&hall).notes;
    let opened = FileNote::SealOpened {
        before: result,
        now,
    };
    let longer = MergeDecision::Longer("m".to_owned());
    assert_eq!(
        said,
        [of_file("longer.json", opened), taken("longer.json", longer)]
    );
}

#[test]
fn each_file_is_told_what_became_of_it() {
    let hall = Hall::new();
    let screen = hall.tab();
    let all = simulate(Preset::SchoolJunior, 1);
    let mut apart = all[..40].to_vec();
    apart[30].at = Some(1);
    let import = Import::of(&screen);
    import.take(&[
        ("first.json", write(&log("m", &all[..30]))),
        ("longer.json", write(&log("m", &all))),
        ("again.json", write(&log("m", &all[..20]))),
        ("other.json", write(&log("m", &apart))),
        ("picture.png", "\u{89}PNG".to_owned()),
        ("goals.json", Logbook::default().write()),
    ]);
    let state = import.end(&hall);
    let (m, beside) = ("m".to_owned(), "m_2".to_owned());
    let said = &state.notes;
    assert_eq!(said[0], ImportNote::FilesTaken { taken: 5, all: 6 });
    assert_eq!(said[1], taken("first.json", MergeDecision::New(m.clone())));
    assert_eq!(
        said[2],
        taken("longer.json", MergeDecision::Longer(m.clone()))
    );
    assert_eq!(said[3], taken("again.json", MergeDecision::Here(m.clone())));
    assert_eq!(
        said[4],
        taken("other.json", MergeDecision::Beside(beside.clone()))
    );
    assert_eq!(state.came, [m.clone(), m.clone(), beside.clone()]);
    let mut here = ids(&hall, &screen);
    here.sort();
    assert_eq!(here, [m, beside]);
}

#[test]
fn a_paper_sheet_waits_for_the_desk() {
    let hall = Hall::new();
    let screen = hall.tab();
    let day = reports::demo::day();
    let sheet = reports::paper::write(&day.paper);
    let import = Import::of(&screen);
    import.take(&[("sheet.json", sheet.clone())]);
    let paper = of_file("sheet.json", FileNote::OfTheDesk(FileKind::Paper));
    assert_eq!(import.end(&hall).notes, [paper]);
    assert!(screen.settings.papers().ids().is_empty());
    let at_desk = files(&[("sheet.json", sheet)]);
    import
        .importer
        .take_files(at_desk, Some(app::desk::take_in));
    hall.run(5000);
    assert_eq!(screen.settings.papers().ids().len(), 1);
}

#[test]
fn a_backup_comes_in_match_by_match_and_says_how_far_it_is() {
    let hall = Hall::new();
    let screen = hall.tab();
    let import = Import::of(&screen);
    import.take(&[("backup.json", backup(12))]);
    let state = import.end(&hall);
    let counts = BackupCounts {
        new: 12,
        ..BackupCounts::default()
    };
    let whole = of_file("backup.json", FileNote::BackupTaken(counts));
    assert_eq!(state.notes, [whole]);
    assert_eq!(ids(&hall, &screen).len(), 12);
    assert!(screen.settings.is_archived("m1") && !screen.settings.is_archived("m2"));
    let half = ImportEvent::Progress(Progress::Match { place: 6, all: 12 });
    assert!(import.events.borrow().contains(&half));
}

#[test]
fn what_was_taken_in_until_somebody_stopped_it_stays() {
    let hall = Hall::new();
    let screen = hall.tab();
    let import = Import::of(&screen);
    import.take(&[
        ("backup.json", backup(12)),
        (
            "more.json",
            write(&log("x", &simulate(Preset::SchoolJunior, 50))),
        ),
    ]);
    import.stop_at_the_third_of_12(&hall);
    let state = import.end(&hall);
    assert_eq!(state.notes[0], ImportNote::FilesTaken { taken: 1, all: 2 });
    let stopped = |note: &ImportNote| {
        matches!(note, ImportNote::OfFile { note: FileNote::Stopped { taken, all: 12 }, .. }
            if (2..12).contains(taken))
    };
    assert!(state.notes.iter().any(stopped), "{:?}", state.notes);
    let here = ids(&hall, &screen).len();
    assert!((2..12).contains(&here), "{here}");
    // Another file is taken in as ever.
    let one = (
        "more.json",
        write(&log("x", &simulate(Preset::SchoolJunior, 50))),
    );
    import.take(&[one]);
    assert_eq!(import.end(&hall).came, ["x"]);
}

#[test]
fn files_that_are_chosen_after_somebody_stopped_are_taken_in() {
    let hall = Hall::new();
    let screen = hall.tab();
    let import = Import::of(&screen);
    let file = |id: &str| write(&log(id, &simulate(Preset::SchoolJunior, 50)));
    import.take(&[("backup.json", backup(12)), ("not.json", file("not"))]);
    import.stop_at_the_third_of_12(&hall);
    import.take(&[("wanted.json", file("wanted"))]);
    let state = import.end(&hall);
    assert_eq!(state.notes[0], ImportNote::FilesTaken { taken: 2, all: 3 });
    let here = ids(&hall, &screen);
    assert!(here.len() < 13 && !here.contains(&"not".to_owned()));
    assert!(here.contains(&"wanted".to_owned()), "{here:?}");
}

#[test]
fn files_that_are_dropped_meanwhile_come_behind_the_others() {
    let hall = Hall::new();
    let screen = hall.tab();
    let import = Import::of(&screen);
    let first = write(&log("x", &simulate(Preset::SchoolJunior, 50)));
    import.take(&[("backup.json", backup(12))]);
    hall.step();
    import.take(&[("more.json", first)]);
    let state = import.end(&hall);
    assert_eq!(state.notes[0], ImportNote::FilesTaken { taken: 2, all: 2 });
    assert_eq!(ids(&hall, &screen).len(), 13);
}

/// The screen may be left while a backup is taken in: whoever did so believes that all of it is here.
#[test]
fn an_import_goes_on_when_its_screen_is_left() {
    let hall = Hall::new();
    let screen = hall.tab();
    let (library, _) = library(&screen);
    let importer = Importer::new(library, |_| {});
    importer.take_files(files(&[("backup.json", backup(12))]), None);
    drop(importer);
    for _ in 0..50 {
        hall.run(1000);
    }
    assert_eq!(ids(&hall, &screen).len(), 12);
}

/// Nothing is called here that the phone did not keep.
#[test]
fn a_match_for_which_there_is_no_room_is_not_called_here() {
    let hall = Hall::new();
    let screen = hall.tab();
    hall.world.borrow_mut().database_full = true;
    let import = Import::of(&screen);
    import.take(&[
        (
            "one.json",
            write(&log("x", &simulate(Preset::SchoolJunior, 50))),
        ),
        ("backup.json", backup(3)),
    ]);
    let state = import.end(&hall);
    let none = BackupCounts::default();
    let notes = [
        ImportNote::FilesTaken { taken: 0, all: 2 },
        of_file("one.json", FileNote::NotSaved),
        of_file("backup.json", FileNote::NotSaved),
        of_file("backup.json", FileNote::NotSaved),
        of_file("backup.json", FileNote::NotSaved),
        of_file("backup.json", FileNote::BackupTaken(none)),
    ];
    assert_eq!(state.notes, notes);
    // Of many matches in one file the same is said once.
    assert_eq!(text::import_notes(&state.notes).len(), 4);
    assert!(state.came.is_empty() && ids(&hall, &screen).is_empty());
}

#[test]
fn a_longer_record_of_a_match_that_another_tab_writes_is_left_alone() {
    let hall = Hall::new();
    let writer = tally(&hall);
    writer.point(Team::A);
    hall.run(1000);
    let Log { id, mut entries } = writer.session.log();
    entries.push(Entry::new(writer.next(), crate::hall::point(Team::B)));
    let other = hall.tab();
    let import = Import::of(&other);
    import.take(&[("longer.json", write(&log(&id, &entries)))]);
    let note = of_file("longer.json", FileNote::OpenElsewhere);
    assert_eq!(import.end(&hall).notes, [note]);
    assert_eq!(writer.score(), "1:0");
    // Open in this tab it is closed, and read anew when it is opened again.
    let import = Import::of(&writer);
    import.take(&[("longer.json", write(&log(&id, &entries)))]);
    let note = taken("longer.json", MergeDecision::Longer(id.clone()));
    assert_eq!(import.end(&hall).notes, [note]);
    assert_eq!(writer.session.id(), None);
    writer.session.open(&id);
    hall.run(1000);
    assert_eq!(writer.score(), "1:1");
}
