//! Every reader against damaged and hostile input: good input is cut, doubled, stirred and overgrown by a
//! fixed chance, so that a run can be repeated. (A coverage-guided fuzzer wants a compiler that the
//! project does not ask for.) `TIMES=100 cargo test --test hostile` for a long run.

use dutystand::game::{rehearse, Entry, Kind, Replay};
use dutystand::record::{
    self, frames, pack, recover, seal_code, unpack, Gathering, LineWriter, Log, DIGITS_SMALL,
    MOST_BYTES, MOST_ENTRIES,
};
use dutystand::rules::Preset;
use dutystand::sheet::{paper, standings, Sheet, WallClock};
use fastrand::Rng;

/// How often more than usual.
fn times() -> usize {
    std::env::var("TIMES")
        .ok()
        .and_then(|t| t.parse().ok())
        .unwrap_or(1)
}

fn log(seed: u64) -> Log {
    let mut entries = rehearse(Preset::SchoolJunior, seed);
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
const BARBS: [&str; 14] = [
    "null",
    "-1",
    "1e999",
    "18446744073709551616",
    "4294967295",
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

/// Good input, ever more damaged.
fn stir(seed: u64, good: &[&[u8]], rounds: usize, mut read: impl FnMut(&[u8])) {
    let mut rng = Rng::with_seed(seed);
    for _ in 0..rounds * times() {
        let mut bytes = good[rng.usize(0..good.len())].to_vec();
        for _ in 0..rng.usize(1..6) {
            damage(&mut rng, &mut bytes);
        }
        read(&bytes);
    }
}

/// What was read can be folded, shown and written, and says the same again.
fn is_sound(text: &str) {
    let reading = record::read(text);
    assert!(reading.log.entries.len() <= MOST_ENTRIES);
    assert!(
        reading.problems.len() <= 202,
        "{} problems",
        reading.problems.len()
    );
    if reading.is_nothing() {
        return;
    }
    let replay = Replay::of(reading.log.entries.clone());
    let html = dutystand::sheet::document(&Sheet::of(&replay), WallClock(60));
    assert!(!html.contains("<script"));
    assert!(dutystand::sheet::csv(&replay).starts_with("entry,"));
    let again = record::read(&record::write(&reading.log));
    assert_eq!(again.log, reading.log);
}

#[test]
fn the_reader_of_files_takes_anything() {
    let files = [record::write(&log(1)), record::write(&log(2))];
    let good: Vec<&[u8]> = files.iter().map(String::as_bytes).collect();
    stir(1, &good, 250, |bytes| {
        is_sound(&String::from_utf8_lossy(bytes))
    });
}

#[test]
fn depth_and_size_have_an_end() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let deep = format!("{}1{}", open.repeat(100_000), close.repeat(100_000));
        let inside =
            record::write(&log(1)).replacen("\"kind\"", &format!("\"x\":{deep},\"kind\""), 1);
        for text in [&deep, &inside] {
            is_sound(text);
            assert!(!record::read(text).problems.is_empty());
            assert!(paper::read(text).read.is_none());
            assert!(standings::read(text).read.is_none());
        }
    }
    let long = " ".repeat(MOST_BYTES + 1);
    assert!(record::read(&long).is_nothing());
    let many = format!(
        "{{\"log\":\"volleyball-match\",\"version\":1,\"id\":\"x\",\"entries\":[{}]}}",
        vec!["{}"; MOST_ENTRIES + 50].join(",")
    );
    is_sound(&many);
    assert_eq!(record::read(&many).unreadable.len(), MOST_ENTRIES);
}

/// What is newer and what is foreign are two different sentences.
#[test]
fn a_newer_version_is_told_from_a_foreign_file() {
    let file = record::write(&log(1));
    let say = |text: String| record::read(&text).problems[0].say.clone();
    assert!(say(file.replacen("\"version\":1", "\"version\":2", 1)).contains("newer version"));
    assert!(
        say(file.replacen("volleyball-match", "volleyball-pool", 1)).contains("not a match record")
    );
    let mut packed = pack(&log(1)).expect("it packs");
    packed[0] += 1;
    assert!(unpack(&packed)
        .expect_err("newer")
        .contains("another version"));
    let newer = format!("{}", 3u64 << 40);
    let seen = format!("{:?}", Gathering::default().see(&newer));
    assert!(seen.contains("newer version"), "{seen}");
}

#[test]
fn the_reader_of_storage_takes_anything() {
    let log = log(3);
    let mut writer = LineWriter::default();
    let lines: Vec<(u32, String)> = log.entries.iter().map(|e| (e.n, writer.line(e))).collect();
    let mut rng = Rng::with_seed(3);
    for _ in 0..120 * times() {
        let mut spoilt = lines.clone();
        for _ in 0..rng.usize(1..4) {
            let at = rng.usize(0..spoilt.len());
            let mut bytes = spoilt[at].1.clone().into_bytes();
            damage(&mut rng, &mut bytes);
            spoilt[at].1 = String::from_utf8_lossy(&bytes).into_owned();
            if rng.u8(0..4) == 0 {
                let n = rng.u32(0..200);
                spoilt[at].0 = n;
            }
        }
        // The whole copy always wins; the spoilt one alone gives a true beginning.
        let found = recover(&spoilt, &lines);
        assert_eq!(found.entries, log.entries);
        let found = recover(&spoilt, &[]);
        assert_eq!(found.entries[..], log.entries[..found.entries.len()]);
    }
}

#[test]
fn the_reader_of_packed_records_takes_anything() {
    let packed = [
        pack(&log(1)).expect("it packs"),
        pack(&log(2)).expect("it packs"),
    ];
    let good: Vec<&[u8]> = packed.iter().map(Vec::as_slice).collect();
    stir(5, &good, 400, |bytes| {
        // The version stays, or nothing behind it would be looked at.
        let mut bytes = bytes.to_vec();
        if let Some(first) = bytes.first_mut() {
            *first = packed[0][0];
        }
        if let Ok(found) = unpack(&bytes) {
            assert!(
                found == log(1) || found == log(2),
                "another record came out"
            );
        }
    });
}

#[test]
fn the_reader_of_codes_takes_anything() {
    let texts = frames(&pack(&log(1)).expect("it packs"), DIGITS_SMALL / 2).expect("short");
    let good: Vec<&[u8]> = texts.iter().map(String::as_bytes).collect();
    let mut gathering = Gathering::default();
    stir(6, &good, 600, |bytes| {
        gathering.see(&String::from_utf8_lossy(bytes));
        assert!(gathering.missing().len() <= 64);
    });
}

#[test]
fn the_readers_of_forms_take_anything() {
    let sheet = br#"{"log":"volleyball-paper-sheet","version":1,"rules":{"preset":"international"},"teams":{"A":{"name":"Otters","players":[1,2,3,4,5,6]},"B":{"name":"Herons","players":[1,2,3,4,5,6]}},"sets":[{"first_service":"A","line_up":{"A":[1,2,3,4,5,6],"B":[1,2,3,4,5,6]},"rounds":{"A":[3,7,25],"B":[2,6]},"final":{"A":25,"B":6},"substitutions":[],"time_outs":[{"team":"B","score":{"A":5,"B":3}}],"start":"18:05","end":"18:27"}],"result":{"winner":"A","sets":{"A":3,"B":1}}}"#;
    stir(7, &[sheet], 400, |bytes| {
        if let Some(sheet) = paper::read(&String::from_utf8_lossy(bytes)).read {
            let _ = paper::check(&sheet);
        }
    });
    let pool = br#"{"log":"volleyball-pool","version":1,"rank_by":["wins","match_points","set_ratio","point_ratio","head_to_head"],"match_points":{"3-0":[3,0],"3-1":[3,0],"3-2":[2,1]},"results":[{"home":"Otters","away":"Herons","sets":[[25,20],[25,22],[25,18]]},{"home":"Newts","away":"Otters","sets":[[25,20],[20,25],[25,18],[25,9]]}]}"#;
    stir(8, &[pool], 600, |bytes| {
        if let Some(pool) = standings::read(&String::from_utf8_lossy(bytes)).read {
            let _ = standings::rank(&pool);
        }
    });
}
