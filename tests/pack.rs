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
