//! Every reader against damaged and hostile input. What must hold stands in `fuzz/readers.rs`, where the
//! fuzzer calls it too. Here it is run over the files in `tests/hostile`, a folder a reader: good ones,
//! and every one that ever broke something. The same files are then cut, doubled, stirred and overgrown
//! by a fixed chance, so that a run can be repeated. `TIMES=100 cargo test --test hostile` for a long run.

#[path = "../fuzz/readers.rs"]
mod readers;

use std::path::PathBuf;

use fastrand::Rng;
use game::{simulate, Entry, Kind};
use readers::READERS;
use record::{
    self, frames, pack, seal_code, unpack, Gathering, Log, PackProblem, ProblemKind, Seen,
    DIGITS_SMALL, MAX_BYTES, MAX_ENTRIES,
};
use reports::{paper, standings};
use rules::Preset;

/// How often more than usual.
fn times() -> usize {
    std::env::var("TIMES")
        .ok()
        .and_then(|t| t.parse().ok())
        .unwrap_or(1)
}

fn log(seed: u64) -> Log {
    let mut entries = simulate(Preset::SchoolJunior, seed);
    entries.truncate(90);
    let code = seal_code(&entries);
    let n = entries.len() as u32 + 1;
    entries.push(Entry::new(n, Kind::Seal { code }));
    Log {
        id: format!("hostile-{seed}"),
        entries,
    }
}

/// Pieces that hurt readers of text.
const BARBS: [&str; 16] = [
    "null",
    "-1",
    "1e999",
    "18446744073709551616",
    "4294967295",
    "9223372036854775807",
    "-9223372036854775808",
    "\"\\u0000\"",
    "[[[[[[[[",
    "{\"a\":",
    "\"",
    "\\",
    "}",
    ",,",
    "\u{202e}\u{feff}",
    "0000000000000000",
];

/// One more damage.
fn damage(rng: &mut Rng, bytes: &mut Vec<u8>) {
    let at = rng.usize(0..bytes.len().max(1)).min(bytes.len());
    let long = rng.usize(1..40).min(bytes.len() - at);
    match rng.u8(0..8) {
        0 => bytes.truncate(at),
        1 => drop(bytes.drain(at..at + long)),
        2 => {
            let piece = bytes[at..at + long].to_vec();
            bytes.splice(at..at, piece);
        }
        3 if at < bytes.len() => bytes[at] = rng.u8(..),
        4 if at < bytes.len() => bytes[at] ^= 1 << rng.u8(0..8),
        5 => {
            let barb = BARBS[rng.usize(0..BARBS.len())];
            bytes.splice(at..at + long, barb.bytes());
        }
        6 => {
            let to = rng.usize(0..bytes.len().max(1)).min(bytes.len());
            let piece = bytes[at..at + long].to_vec();
            bytes.splice(to..to, piece);
        }
        // A digit more, a digit less.
        _ => {
            if let Some(digit) = bytes.iter().skip(at).position(u8::is_ascii_digit) {
                bytes[at + digit] = b'0' + rng.u8(0..10);
            }
        }
    }
}

/// The kept files of a reader, by their names.
fn kept(reader: &str) -> Vec<(String, Vec<u8>)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/hostile");
    let mut files: Vec<(String, Vec<u8>)> = std::fs::read_dir(folder.join(reader))
        .unwrap_or_else(|e| panic!("tests/hostile/{reader}: {e}"))
        .map(|entry| entry.expect("a file").path())
        .map(|path| {
            let name = path.file_name().expect("a name").to_string_lossy().into();
            (name, std::fs::read(&path).expect("it can be read"))
        })
        .collect();
    files.sort();
    files
}

/// What this program itself writes for a reader, always of its own version.
fn written(reader: &str) -> Vec<Vec<u8>> {
    let packed = |seed| pack(&log(seed)).expect("it packs");
    match reader {
        "file" | "packing" => vec![record::write(&log(1)).into()],
        "packed" => vec![packed(1), packed(2)],
        "handed" => {
            let wide = record::write(&log(1));
            let wide = wide.encode_utf16().flat_map(u16::to_be_bytes);
            vec![packed(1), wide.collect()]
        }
        "codes" => {
            let texts = frames(&packed(1), DIGITS_SMALL / 2).expect("it is short");
            vec![texts.join("\n").into()]
        }
        _ => Vec::new(),
    }
}

/// So many damaged ones of each kept file, so that a run takes seconds.
fn rounds(bytes: usize) -> usize {
    (400_000 / (bytes + 1_000)).clamp(8, 200) * times()
}

/// All kept files of a reader as they are, then each of them damaged.
fn takes_anything(reader: &str) {
    let (_, read) = READERS.iter().find(|r| r.0 == reader).expect("a reader");
    let files = kept(reader);
    assert!(!files.is_empty(), "tests/hostile/{reader} is empty");
    let made = written(reader).into_iter();
    let made = made.map(|bytes| ("what is written".to_owned(), bytes));
    let mut rng = Rng::with_seed(1);
    for (name, good) in files.into_iter().chain(made) {
        println!("{reader}: {name}");
        read(&good);
        for _ in 0..rounds(good.len()) {
            let mut bytes = good.clone();
            for _ in 0..rng.usize(1..6) {
                damage(&mut rng, &mut bytes);
            }
            read(&bytes);
        }
    }
}

macro_rules! readers_take_anything {
    ($($reader:ident)*) => {
        /// Every reader has its test here, and its target for the fuzzer.
        #[test]
        fn every_reader_is_tried() {
            let names = READERS.map(|r| r.0);
            assert_eq!(names, [$(stringify!($reader)),*]);
            let targets = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("fuzz/targets");
            for name in names {
                let target = targets.join(format!("{name}.rs"));
                let text = std::fs::read_to_string(target).expect("a target");
                assert!(text.contains(&format!("readers::{name}(bytes)")), "{name}");
            }
        }
        $(
            #[test]
            fn $reader() {
                takes_anything(stringify!($reader));
            }
        )*
    };
}

readers_take_anything!(handed file storage backup packed packing codes paper_sheet typed_sheet pool small observer logbook);

#[test]
fn depth_and_size_have_an_end() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let deep = format!("{}1{}", open.repeat(100_000), close.repeat(100_000));
        let inside =
            record::write(&log(1)).replacen("\"kind\"", &format!("\"x\":{deep},\"kind\""), 1);
        for text in [&deep, &inside] {
            readers::file(text.as_bytes());
            assert!(!record::read(text).problems.is_empty());
            assert!(paper::read(text).read.is_none());
            assert!(standings::read(text).read.is_none());
        }
    }
    let long = " ".repeat(MAX_BYTES + 1);
    assert!(record::read(&long).is_nothing());
    let many = format!(
        "{{\"log\":\"volleyball-match\",\"version\":1,\"id\":\"x\",\"entries\":[{}]}}",
        vec!["{}"; MAX_ENTRIES + 50].join(",")
    );
    readers::file(many.as_bytes());
    assert_eq!(record::read(&many).unreadable.len(), MAX_ENTRIES);
}

/// What is newer and what is foreign are two different sentences.
#[test]
fn a_newer_version_is_told_from_a_foreign_file() {
    let file = record::write(&log(1));
    let kind = |text: String| record::read(&text).problems[0].kind.clone();
    assert_eq!(
        kind(file.replacen("\"version\":2", "\"version\":3", 1)),
        ProblemKind::NewerVersion(3)
    );
    assert_eq!(
        kind(file.replacen("volleyball-match", "volleyball-pool", 1)),
        ProblemKind::OtherLog
    );
    let mut packed = pack(&log(1)).expect("it packs");
    packed[0] += 1;
    assert_eq!(unpack(&packed), Err(PackProblem::Newer));
    let newer = format!("{}", 5u64 << 40);
    let seen = Gathering::default().see(&newer);
    assert_eq!(seen, Seen::Nothing(PackProblem::NewerCode));
}

/// A file may be laid out as this program writes it, on one line, or as somebody's editor has put it.
#[test]
fn a_file_that_is_cut_off_gives_what_stands_before_the_cut() {
    let log = log(3);
    let lines = record::write(&log);
    let spread = lines.replace(",\"", ",\n    \"").replace(':', ": ");
    for (name, text) in [
        ("lines", lines.clone()),
        ("one line", lines.replace('\n', "")),
        ("spread", spread),
    ] {
        assert!(!record::read(&text).cut_off, "{name}");
        let list = text.find("\"entries\"").expect("it has a list") + 20;
        for cut in (list..text.len() - 5).step_by(601) {
            let reading = record::read(&text[..cut]);
            assert!(reading.cut_off, "{name} at {cut}");
            // An entry whose own link stands before the cut is whole.
            let begun = text[..cut].matches("\"kind\"").count();
            let whole = begun.saturating_sub(1);
            let read: Vec<u32> = reading.log.entries.iter().map(|e| e.n).collect();
            let first: Vec<u32> = (1..).take(read.len()).collect();
            assert_eq!(read, first, "{name} at {cut}");
            assert!(read.len() >= whole, "{name} at {cut}: {}", read.len());
        }
    }
}

/// The list of matches warns of a record that lacks a part, long after the words about its file are gone. Here
/// more is wrong than is listed, so that the flag cannot come from the list.
#[test]
fn a_file_that_lacks_a_part_says_so_whatever_it_lacks() {
    let file = record::write(&log(3));
    let entry = |n: u32| format!("{{\"n\":{n},");
    let line = |n: u32| {
        let found = file.lines().find(|line| line.starts_with(&entry(n)));
        found.expect("an entry stands on its line").to_owned()
    };
    let without = |n: u32| file.replace(&format!("{}\n", line(n)), "");
    let unread = file.replacen("\"entries\":", "\"unread\":[\"a line\"],\"entries\":", 1);
    let odd = file.replace(&entry(1), "{\"n\":1,\"odd\":true,");
    let fields = |text: &str| text.replace("\"kind\":", "\"x\":1,\"y\":1,\"z\":1,\"kind\":");
    for (name, text, lacks) in [
        ("whole", &file, false),
        ("an unknown field", &odd, false),
        ("many unknown fields", &fields(&file), false),
        ("a gap", &without(7), true),
        (
            "a number twice",
            &file.replace(
                &line(7),
                &format!("{},{}", line(7).trim_end_matches(','), line(7)),
            ),
            true,
        ),
        ("lines of storage that were not read", &unread, true),
        (
            "many unknown fields before a gap",
            &fields(&without(89)),
            true,
        ),
        ("no end", &file[..file.len() - 40].to_owned(), true),
    ] {
        let reading = record::read(text);
        assert!(!reading.is_nothing(), "{name}");
        assert_eq!(
            reading.lacks_a_part,
            lacks,
            "{name}: {:?}",
            reading.problems.first()
        );
    }
}
