//! What is told of a scene beside what decides it.

use super::told;
use learn::{Call, Case, Kind};
use rules::Cause;
use text::learn::fact;

/// FIVB Rules 2025-2028, 6.1.2.2: where both teams are at fault at once, the answer names both faults.
#[test]
fn of_two_faults_both_are_told() {
    for kind in [Kind::DoubleFault, Kind::FirstOfTwo] {
        for drawn in told(kind) {
            let others: Vec<_> = drawn.other_faults().collect();
            assert!(!others.is_empty(), "{kind:?}: {:?}", drawn.verdict);
            for one in others {
                assert!(fact(&drawn.scene, one).is_some(), "{kind:?}: {one:?}");
            }
        }
    }
}

/// 9.1.3, 9.2.2, 9.3: who plays the ball after a fault does nothing wrong by that, so one fault is told once.
#[test]
fn a_fault_with_the_ball_is_told_once() {
    for cause in [
        Cause::AssistedHit,
        Cause::Catch,
        Cause::DoubleContact,
        Cause::FourHits,
    ] {
        for drawn in told(Kind::Ends(cause)) {
            let others: Vec<_> = drawn.other_faults().collect();
            assert!(others.is_empty(), "{cause:?}: {others:?}");
        }
    }
}

/// 11.2.1: a foot that hinders an opponent was on the line before it did; that it was allowed there is not told.
#[test]
fn what_hinders_is_not_told_to_hinder_nobody() {
    for drawn in told(Kind::CaseEnds(Case::Hindrance)) {
        let one = drawn.about().expect("something decides it");
        assert!(matches!(one.ruling.call, Call::Fault { .. }));
        let same = |other: &&learn::Judged| other.about == one.about && other.player == one.player;
        assert_eq!(drawn.near_misses().filter(same).count(), 0);
    }
}
