//! The compact form: the same log back to the byte, small, and safe against anything.

mod support;

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
        if let Some(first) = bytes.first_mut() {
            *first = 1;
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
