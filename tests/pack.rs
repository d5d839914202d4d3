//! The compact form: the same log back to the byte, small, and safe against anything.

mod support;

use std::fmt::Write;
use std::path::PathBuf;

use dutystand::game;
use dutystand::record::{self, Log};
use dutystand::rules::Preset;
use proptest::prelude::*;
use support::random;

fn round_trip(log: &Log) -> usize {
    let packed = record::pack(log).expect("a whole log packs");
    let back = record::unpack(&packed).expect("it unpacks");
    assert_eq!(record::write(&back), record::write(log));
    packed.len()
}

#[test]
fn rehearsed_matches_come_back_to_the_byte() {
    for preset in Preset::ALL {
        for seed in 0..12 {
            let entries = game::rehearse(preset, seed);
            round_trip(&Log {
                id: format!("rehearsal {seed}"),
                entries,
            });
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_log_comes_back_to_the_byte(rules in random::rules(), drawn in random::entries(40), id in "\\PC{0,40}") {
        round_trip(&Log { id, entries: random::log(rules, drawn) });
    }

    #[test]
    fn random_bytes_never_panic(bytes in proptest::collection::vec(any::<u8>(), 0..400)) {
        let mut bytes = bytes;
        // The version of this program, or nothing behind it would be looked at.
        if let Some(first) = bytes.first_mut() {
            *first = record::pack(&Log::default()).expect("an empty log packs")[0];
        }
        prop_assert!(record::unpack(&bytes).is_err());
    }

    #[test]
    fn one_changed_byte_is_found_or_changes_nothing(seed in 0u64..5, at in any::<prop::sample::Index>(), with in 1u8..=255) {
        let log = Log { id: "x".into(), entries: game::rehearse(Preset::SchoolJunior, seed) };
        let mut packed = record::pack(&log).expect("packs");
        let at = at.index(packed.len());
        packed[at] ^= with;
        // The last bits of a coder may say nothing.
        if let Ok(back) = record::unpack(&packed) {
            prop_assert!(at + 4 >= packed.len());
            prop_assert_eq!(back, log);
        }
    }
}

#[test]
fn a_log_with_a_gap_is_refused_with_the_way_out() {
    let mut entries = game::rehearse(Preset::SchoolJunior, 1);
    entries.remove(3);
    let why = record::pack(&Log {
        id: "gap".into(),
        entries,
    })
    .expect_err("a gap");
    assert!(why.contains("Hand over the file"), "{why}");
}

/// Invented matches of five sets with causes, numbers and times to the second, as the rehearsals give
/// them: how often what is usual happens in them is as much from memory as in the model, though not from
/// the same table. Most go into one code.
#[test]
fn most_matches_of_five_sets_go_into_one_code() {
    let mut sizes = Vec::new();
    for seed in 0..160 {
        let entries = game::rehearse(Preset::International, seed);
        let replay = game::Replay::of(entries.clone());
        if replay.state().sets().count() == 5 {
            let id = "0f8fad5b-d9cb-469f-a165-70867728950e".to_owned();
            sizes.push(round_trip(&Log { id, entries }));
        }
    }
    sizes.sort_unstable();
    let of = sizes.len();
    let one = |size: &&usize| {
        let packed = vec![0; **size];
        record::frames(&packed, record::DIGITS_LARGE).is_ok_and(|f| f.len() == 1)
    };
    let fit = sizes.iter().filter(one).count();
    println!(
        "{of} matches of five sets: {} to {} bytes, median {}; {fit} of them in one code",
        sizes[0],
        sizes[of - 1],
        sizes[of / 2]
    );
    assert!(of > 20);
    assert!(fit * 10 > of * 8, "{fit} of {of}: {sizes:?}");
}

/// Where matches lie that were packed by the program as it was.
fn packed_before() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/packed.txt")
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

fn bytes(hex: &str) -> Vec<u8> {
    let pairs = hex.as_bytes().chunks(2);
    let byte = |pair: &[u8]| u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok();
    pairs.map(|pair| byte(pair).expect("two digits")).collect()
}

/// Matches that are packed anew when the coding has changed: every preset, and every worked case.
fn matches() -> Vec<Log> {
    let rehearsed = Preset::ALL.into_iter().flat_map(|preset| {
        (0..5).map(move |seed| Log {
            id: format!("{}-{seed}", preset.code()),
            entries: game::rehearse(preset, seed),
        })
    });
    let files = std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases"))
        .expect("the cases")
        .filter_map(|file| Some(file.ok()?.path().file_stem()?.to_str()?.to_owned()));
    let mut topics: Vec<String> = files.collect();
    topics.sort();
    let cases = topics.iter().flat_map(|topic| {
        let logs = support::case::cases(topic).into_iter();
        logs.map(|case| record::read(&case.input.to_string()).without_gaps().0)
    });
    rehearsed
        .chain(cases.filter(|log| log.entries.len() > 1))
        .collect()
}

/// What the coder writes hangs on every rule of play, so whoever changes a rule changes the coding, and
/// may not notice. Here it is noticed: matches that were packed before must be read as they were.
#[test]
fn what_was_packed_before_is_read_the_same_or_the_version_has_risen() {
    let kept = std::fs::read_to_string(packed_before()).expect("tests/packed.txt");
    let packed: Vec<&str> = kept.lines().filter(|line| !line.starts_with('#')).collect();
    let version = bytes(packed[0])[0];
    let same = |line: &&str| {
        let bytes = bytes(line);
        let log = record::unpack(&bytes);
        log.is_ok_and(|log| record::pack(&log).as_ref() == Ok(&bytes))
    };
    let changed = packed.iter().filter(|line| !same(line)).count();
    if std::env::var_os("PACK_ANEW").is_some() {
        assert!(
            changed == 0 || record::PACKED_VERSION > version,
            "Raise PACKED_VERSION in src/record/pack/mod.rs first: it is {version} in tests/packed.txt too."
        );
        let mut text =
            "# Matches as they were packed, one a line. Written by PACK_ANEW=1 cargo test --test \
                        pack; never by hand.\n"
                .to_owned();
        for log in matches() {
            text += &hex(&record::pack(&log).expect("it packs"));
            text.push('\n');
        }
        std::fs::write(packed_before(), text).expect("room for them");
        return;
    }
    assert_eq!(
        changed,
        0,
        "{changed} of {} matches that were packed before are not read as they were: the model of the \
         coder, or a rule of play, has changed. If that was meant, raise PACKED_VERSION in \
         src/record/pack/mod.rs, so that an older phone says it should update instead of calling the code \
         damaged; then write the matches anew: PACK_ANEW=1 cargo test --test pack",
        packed.len()
    );
    assert!(packed.len() > 60, "{} matches", packed.len());
}

#[test]
fn an_older_and_a_newer_version_are_told_with_the_way_out() {
    let log = Log {
        id: "x".into(),
        entries: game::rehearse(Preset::Tally, 1),
    };
    let packed = record::pack(&log).expect("packs");
    for version in [packed[0] - 1, packed[0] + 1] {
        let mut other = packed.clone();
        other[0] = version;
        let why = record::unpack(&other).expect_err("another version");
        assert!(
            why.contains("another version") && why.contains("ask for the file"),
            "{why}"
        );
    }
}
