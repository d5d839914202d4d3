//! What must hold whatever a reader is given, one function a reader. Two callers: the targets of the
//! fuzzer in this folder, and `tests/hostile.rs`, which runs them over the files in `tests/hostile`.
//!
//! Every one of them may fail: by a panic, by an endless loop, and by the equations it asserts.

use app::merge::merge;
use app::ports::Lines;
use game::Timeline;
use record::{
    self, frames, pack, read_drawn, seal_code, seals, spaced, typed_code, unpack, write_drawn,
    BackupReading, Gathering, Handed, KeptMatch, LineWriter, Log, Logbook, LogbookReading,
    Observed, ObservedReading, Opened, Reading, Seen, Strokes, DIGITS_LARGE, DIGITS_SMALL,
    MAX_ENTRIES, MAX_MATCHES, MAX_PACKED,
};
use reports::{audit, paper, review, standings, Sheet, WallClock};

/// What must hold of a reader, whatever it is given.
pub type Law = fn(&[u8]);

/// The readers by the names of their targets and of their folders in `tests/hostile`.
pub const READERS: [(&str, Law); 13] = [
    ("handed", handed),
    ("file", file),
    ("storage", storage),
    ("backup", backup),
    ("packed", packed),
    ("packing", packing),
    ("codes", codes),
    ("paper_sheet", paper_sheet),
    ("typed_sheet", typed_sheet),
    ("pool", pool),
    ("small", small),
    ("observer", observer),
    ("logbook", logbook),
];

/// Problems are listed up to a limit and one line more for the rest; a broken seal may add some.
const MAX_PROBLEMS: usize = 202;

fn text(bytes: &[u8]) -> String {
    String::from_utf8_lossy(bytes).into_owned()
}

/// Whatever somebody hands over: a text that every reader takes, a record, or one sentence.
pub fn handed(bytes: &[u8]) {
    match record::handed(bytes) {
        Ok(Handed::Text(content)) => {
            assert!(!content.trim().is_empty());
            file(content.as_bytes());
        }
        Ok(Handed::Record(log)) => comes_back(&log),
        Err(foreign) => assert!(::text::problem::foreign(&foreign).ends_with('.')),
    }
}

/// A match record: what was read can be folded, shown and written, and says the same again.
pub fn file(bytes: &[u8]) {
    let reading = record::read(&text(bytes));
    is_bounded(&reading);
    if reading.is_nothing() {
        return;
    }
    let timeline = Timeline::of(reading.log.entries.clone());
    let all = Sheet::of(&timeline);
    let html = render::document(&all, WallClock(60));
    assert!(!html.contains("<script") && !html.contains("<img"));
    assert!(render::points_csv(&[("x", &timeline)], WallClock(60)).starts_with("\u{feff}match,"));
    let _ = render::sheet_text(&all, WallClock::default());
    let _ = audit::audit(&reading, &timeline);
    let _ = review::Review::of(&timeline);
    let again = record::read(&record::write(&reading.log));
    assert_eq!(again.unreadable, Vec::<u32>::new());
    // Behind a gap nobody knows whether a link fits; what is kept has none.
    if (1..)
        .zip(&reading.log.entries)
        .all(|(n, entry)| entry.n == n)
    {
        assert_eq!(again.log, reading.log);
        // What does not fit is told again, wherever the record goes.
        let told = |log: &record::Log| record::broken(&log.entries).len();
        assert_eq!(told(&again.log), told(&reading.log));
    }
    let printed = |reading: &Reading| render::fold(reading)["sets"].clone();
    assert_eq!(printed(&again), printed(&reading));
    // What can be kept has no gap, loses no entry that it counts, and is read again as it is.
    let kept = reading.without_gaps();
    assert!(kept.entries.len() <= MAX_ENTRIES);
    for (n, entry) in (1..).zip(&kept.entries) {
        assert_eq!(entry.n, n);
    }
    let once_more = record::read(&record::write(&kept));
    assert_eq!(once_more.log, kept);
}

fn is_bounded(reading: &Reading) {
    assert!(reading.log.entries.len() <= MAX_ENTRIES);
    assert!(reading.problems.len() <= MAX_PROBLEMS + seals(&reading.log.entries).len());
}

/// The lines of a store: four bytes say what is spoilt, the rest is a record to write as lines. The
/// rest is also taken for lines as it is.
pub fn storage(bytes: &[u8]) {
    let Some((&[line, at, with, number], rest)) = bytes.split_first_chunk::<4>() else {
        return;
    };
    let rest = text(rest);
    let raw: Lines = (1..).zip(rest.lines().map(str::to_owned)).collect();
    let found = merge(&[&raw]);
    for pair in found.entries.windows(2) {
        assert!(pair[0].n < pair[1].n);
    }
    assert_eq!(found.lines, raw);
    assert!(found.repairs[0].is_empty());
    let log = record::read(&rest).without_gaps();
    let mut writer = LineWriter::default();
    let good: Lines = log.entries.iter().map(|e| (e.n, writer.line(e))).collect();
    let mut spoilt = good.clone();
    let n = 1 + u32::from(line) % (good.len().max(1) as u32);
    if let Some(line) = spoilt.remove(&n) {
        let mut bytes = line.into_bytes();
        let place = usize::from(at) % bytes.len();
        bytes[place] ^= with;
        spoilt.insert(n + u32::from(number % 3), text(&bytes));
    }
    // Whichever copy weighs more, the whole one has every entry, and what cannot be proved does not touch it.
    for found in [merge(&[&good, &spoilt]), merge(&[&spoilt, &good])] {
        let unproved = |n: u32| found.damage.iter().any(|d| d.n == n);
        let proved = found.entries.iter().filter(|e| !unproved(e.n));
        assert!(proved.eq(log.entries.iter()));
        assert!(found.branches.is_empty());
    }
    // The spoilt one alone gives nothing that was not written, but what it calls unproved.
    let alone = merge(&[&spoilt]);
    for entry in &alone.entries {
        let unproved = alone.damage.iter().any(|d| d.n == entry.n);
        assert!(unproved || log.entries.contains(entry));
    }
}

/// Everything of a phone in one file.
pub fn backup(bytes: &[u8]) {
    let (backup, kept) = match record::open(&text(bytes)) {
        Opened::Match(reading) => return is_bounded(&reading),
        Opened::Backup(backup) => {
            let kept = kept_of(&backup);
            (backup, kept)
        }
    };
    assert!(backup.matches.len() <= MAX_MATCHES);
    backup.matches.iter().for_each(|m| is_bounded(&m.reading));
    match record::open(&record::write_backup(&kept, &backup.desk, Some(1))) {
        Opened::Backup(again) => {
            assert_eq!(kept_of(&again), kept);
            assert_eq!(again.desk, backup.desk);
        }
        Opened::Match(reading) => panic!("no backup any more: {:?}", reading.problems),
    }
}

fn kept_of(backup: &BackupReading) -> Vec<KeptMatch> {
    let kept = backup.matches.iter().map(|m| KeptMatch {
        log: m.reading.log.clone(),
        archived: m.archived,
        drawn: m.drawn.clone(),
        ..KeptMatch::default()
    });
    kept.collect()
}

/// A hand-over. Its first byte is put right, or nothing behind it would be looked at.
pub fn packed(bytes: &[u8]) {
    let mut bytes = bytes.to_vec();
    if let Some(first) = bytes.first_mut() {
        *first = record::PACKED_VERSION;
    }
    if let Ok(log) = unpack(&bytes) {
        assert!(bytes.len() <= MAX_PACKED);
        comes_back(&log);
    }
}

/// Whatever record can be read goes through the coder and comes back to the byte.
pub fn packing(bytes: &[u8]) {
    let log = record::read(&text(bytes)).without_gaps();
    comes_back(&log);
}

fn comes_back(log: &Log) {
    match pack(log) {
        Ok(packed) => {
            let back = unpack(&packed).expect("what was packed unpacks");
            assert_eq!(record::write(&back), record::write(log));
        }
        Err(why) => assert!(
            ::text::problem::packed(&why).contains("Share the file"),
            "{why}"
        ),
    }
}

/// What a camera reads, a text a line, all by one gathering.
pub fn codes(bytes: &[u8]) {
    let mut gathering = Gathering::default();
    for line in text(bytes).lines() {
        let seen = gathering.see(line);
        let missing = gathering.missing();
        assert!(missing.len() <= 64);
        match seen {
            Seen::Part { have, of } => assert_eq!(missing.len(), of - have),
            Seen::Record(log) => {
                for digits in [DIGITS_LARGE, DIGITS_SMALL] {
                    gathers(&log, digits);
                }
            }
            Seen::Notes(observed) => notes_come_back(&observed),
            Seen::Again | Seen::OtherRecord => assert!(!missing.is_empty()),
            Seen::Nothing(why) => assert!(!::text::problem::packed(&why).is_empty()),
        }
    }
}

/// A record's own codes, the last one first, give the record.
fn gathers(log: &Log, digits: usize) {
    let Ok(texts) = pack(log).and_then(|packed| frames(&packed, digits)) else {
        return;
    };
    let mut gathering = Gathering::default();
    let mut last = Seen::Again;
    for text in texts.iter().rev() {
        assert!(text.len() <= digits);
        last = gathering.see(text);
    }
    assert_eq!(last, Seen::Record(Box::new(log.clone())));
}

/// A score sheet keyed in as a file.
pub fn paper_sheet(bytes: &[u8]) {
    let form = paper::read(&text(bytes));
    assert!(form.problems.len() <= 100);
    assert!(form.read.is_some() || !form.problems.is_empty());
    let Some(sheet) = form.read else { return };
    let again = paper::read(&paper::write(&sheet));
    assert_eq!(again.read.as_ref(), Some(&sheet), "{:?}", again.problems);
    let checked = paper::check(&sheet);
    let _ = render::paper::text(&sheet, &checked);
    // The rebuilt record is one that can be read.
    assert_eq!(record::read(&record::write(&checked.log)).log, checked.log);
}

/// The same as it stands half typed on a phone: a box a line.
pub fn typed_sheet(bytes: &[u8]) {
    let draft = paper::Draft::of_written(&text(bytes));
    let again = paper::Draft::of_written(&draft.written());
    assert_eq!(again.written(), draft.written());
    for all in [false, true] {
        let _ = draft.check(all);
    }
}

/// The results of a pool: every team stands in the table once, and no place is skipped.
pub fn pool(bytes: &[u8]) {
    let form = standings::read(&text(bytes));
    assert!(form.problems.len() <= 100);
    let Some(pool) = form.read else { return };
    let table = standings::rank(&pool);
    let mut named: Vec<&str> = table.rows.iter().map(|row| row.team.as_str()).collect();
    let played = pool.results.iter().flat_map(|r| [&r.home, &r.away]);
    let mut teams: Vec<&str> = played.chain(&pool.teams).map(String::as_str).collect();
    teams.sort_unstable();
    teams.dedup();
    named.sort_unstable();
    assert_eq!(named, teams);
    for (above, row) in table.rows.iter().enumerate() {
        assert!((1..=above + 1).contains(&row.place));
    }
    let _ = render::standings::text(&pool, &table);
    assert!(render::standings::csv(&table).lines().count() > table.rows.len());
}

/// What is a line long: a drawn signature, a check code that was heard, the offset of a clock.
pub fn small(bytes: &[u8]) {
    let given = text(bytes);
    if let Some(strokes) = Strokes::read(&given) {
        assert_eq!(Strokes::read(&strokes.write()), Some(strokes));
    }
    let drawn = read_drawn(&given);
    assert_eq!(read_drawn(&write_drawn(&drawn)), drawn);
    if let Some(code) = typed_code(&given) {
        assert_eq!(typed_code(&spaced(&code)), Some(code));
    }
    let code = seal_code(&record::read(&given).log.entries);
    assert_eq!(typed_code(&code.to_lowercase()), Some(code));
    if let Some(clock) = WallClock::read(&given) {
        let name = clock.name();
        let named = name.strip_prefix("UTC").unwrap_or_default();
        assert!(clock.0 == 0 || WallClock::read(named) == Some(clock));
    }
}

/// The notes of an observer, as their file and, with the first byte put right, as what a code holds.
pub fn observer(bytes: &[u8]) {
    if let ObservedReading::Notes(observed, _) = Observed::read(&text(bytes)) {
        notes_come_back(&observed);
        let timeline = Timeline::of(game::simulate(rules::Preset::SchoolJunior, 1));
        let beside = reports::observed::lay(&observed, &timeline);
        assert_eq!(beside.notes.len(), observed.notes().count());
    }
    let mut bytes = bytes.to_vec();
    if let Some(first) = bytes.first_mut() {
        *first = record::OBSERVED_VERSION;
    }
    if let Some(observed) = Observed::unpack(&bytes) {
        notes_come_back(&observed);
    }
}

fn notes_come_back(observed: &Observed) {
    assert!(observed.events.len() <= record::MAX_EVENTS);
    // Read from a file they stand in the order of their times.
    let mut sorted = observed.clone();
    sorted.events.sort_by_key(|event| event.at);
    let read = Observed::read(&observed.write());
    assert_eq!(read, ObservedReading::Notes(Box::new(sorted), 0));
    let packed = observed.pack().expect("what was read packs");
    assert_eq!(Observed::unpack(&packed).as_ref(), Some(observed));
}

/// A logbook, or goals for one: what was read says the same again, and is a table.
pub fn logbook(bytes: &[u8]) {
    let LogbookReading::Logbook(logbook, _) = Logbook::read(&text(bytes)) else {
        return;
    };
    assert!(logbook.matches().len() <= record::MAX_LOGGED);
    let again = Logbook::read(&logbook.write());
    assert_eq!(again, LogbookReading::Logbook(logbook.clone(), 0));
    let table = render::logbook_csv(&logbook);
    assert!(table.lines().count() > logbook.matches().len());
    let mut twice = logbook.clone();
    assert_eq!(twice.merge(logbook.clone()), (0, 0));
    assert_eq!(twice, logbook);
}
