//! The compact form: the same log back to the byte, small, and safe against anything.

mod support;

use proptest::prelude::*;
use record::{Log, PackProblem};
use rules::Preset;
use std::path::PathBuf;
use support::random;

fn round_trip(log: &Log) -> usize {
    let packed = record::pack(log).expect("a whole log packs");
    let back = record::unpack(&packed).expect("it unpacks");
    assert_eq!(record::write(&back), record::write(log));
    packed.len()
}

#[test]
fn simulated_matches_come_back_to_the_byte() {
    for preset in Preset::ALL {
        for seed in 0..12 {
            let entries = game::simulate(preset, seed);
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
        let log = Log { id: "x".into(), entries: game::simulate(Preset::SchoolJunior, seed) };
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
    let mut entries = game::simulate(Preset::SchoolJunior, 1);
    entries.remove(3);
    let why = record::pack(&Log {
        id: "gap".into(),
        entries,
    })
    .expect_err("a gap");
    assert_eq!(why, PackProblem::Gaps);
    assert!(text::problem::packed(&why).contains("Share the file"));
}

/// Invented matches of five sets with causes, numbers and times to the second, as the simulated matches give
/// them. At most two codes for nineteen of twenty are asked for.
#[test]
fn nineteen_of_twenty_matches_of_five_sets_go_into_two_codes() {
    let mut sizes = Vec::new();
    for seed in 0..160 {
        let entries = game::simulate(Preset::International, seed);
        let timeline = game::Timeline::of(entries.clone());
        if timeline.state().sets().count() == 5 {
            let id = "1b4e28ba-2fa1-41d2-883f-0016d3cca427".to_owned();
            sizes.push(round_trip(&Log { id, entries }));
        }
    }
    sizes.sort_unstable();
    let of = sizes.len();
    let codes = |size: &usize| {
        let packed = vec![0; *size];
        record::frames(&packed, record::DIGITS_LARGE).map_or(usize::MAX, |f| f.len())
    };
    let one = sizes.iter().filter(|size| codes(size) == 1).count();
    let two = sizes.iter().filter(|size| codes(size) <= 2).count();
    println!(
        "{of} matches of five sets: {} to {} bytes, median {}; {one} of them in one code, {two} in one or two",
        sizes[0],
        sizes[of - 1],
        sizes[of / 2]
    );
    assert!(of > 20);
    assert!(two * 20 >= of * 19, "{two} of {of}: {sizes:?}");
}

/// Where matches lie that were packed by a release, a folder for each version of the form.
fn golden(path: &str) -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR"))
        .join("tests/golden")
        .join(path)
}

fn bytes(hex: &str) -> Vec<u8> {
    let pairs = hex.as_bytes().chunks(2);
    let byte = |pair: &[u8]| u8::from_str_radix(std::str::from_utf8(pair).ok()?, 16).ok();
    pairs.map(|pair| byte(pair).expect("two digits")).collect()
}

/// What a release packed, every later one unpacks to the same file, whatever became of the rules. The
/// files were written when the codes were, and neither is ever written anew.
#[test]
fn what_a_release_packed_is_unpacked_for_ever() {
    for name in [
        "international",
        "own_rules",
        "school_junior",
        "tally",
        "newer",
    ] {
        let hex = std::fs::read_to_string(golden(&format!("packed-4/{name}.hex")));
        let log = record::unpack(&bytes(hex.expect("a golden code").trim())).expect("it unpacks");
        let file = std::fs::read_to_string(golden(&format!("packed-4/{name}.json")));
        assert_eq!(record::write(&log), file.expect("its file"), "{name}");
    }
}

#[test]
fn an_older_and_a_newer_form_are_told_with_the_way_out() {
    let log = Log {
        id: "x".into(),
        entries: game::simulate(Preset::Tally, 1),
    };
    let packed = record::pack(&log).expect("packs");
    for (version, problem) in [
        (packed[0] - 1, PackProblem::Older),
        (packed[0] + 1, PackProblem::Newer),
    ] {
        let mut other = packed.clone();
        other[0] = version;
        let why = record::unpack(&other).expect_err("another version");
        assert_eq!(why, problem);
        assert!(text::problem::packed(&why).contains("ask for the file"));
    }
}

/// The coder knows no kind of entry: one of a later day goes through it as well. Only whoever reads it has
/// to know the kind, and says so before anything is lost.
#[test]
fn entries_of_a_later_day_are_packed_and_asked_for() {
    let mut log = Log {
        id: "later".into(),
        entries: game::simulate(Preset::Tally, 1),
    };
    let mut later = log.entries[10].clone();
    later.written = Some("{\"n\":11,\"kind\":\"of_a_later_day\",\"x\":[1,{\"y\":null}]}".into());
    log.entries[10] = later;
    let packed = record::pack(&log).expect("it packs");
    let why = record::unpack(&packed).expect_err("an unknown kind");
    assert_eq!(why, PackProblem::UnknownEntries);
    assert!(text::problem::packed(&why).contains("Update the app"));
}
