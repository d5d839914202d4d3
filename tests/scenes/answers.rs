//! An answer laid beside the truth: whistle, side, nature.

use super::told;
use learn::{mark, serves_next, whistle_from, Answer, Call, Kind, Nature, Timing};
use rules::Cause;

#[test]
fn f16_03_the_whistle_waits_until_there_is_a_fault() {
    for drawn in told(Kind::Ends(Cause::NetTouch)) {
        let (scene, verdict) = (&drawn.scene, &drawn.verdict);
        let from = whistle_from(verdict).unwrap();
        let whistle = |at| {
            let answer = Answer {
                whistle: at,
                ..Answer::default()
            };
            mark(scene, verdict, &answer)
        };
        assert_eq!(whistle(Some(from - 0.05)).timing, Timing::Early);
        let prompt = whistle(Some(from + 0.5));
        assert_eq!(prompt.timing, Timing::InTime);
        assert!((prompt.reaction.unwrap() - 0.5).abs() < 1e-9);
        assert_eq!(prompt.in_steps().reaction, None);
        assert_eq!(whistle(Some(from + 1.5)).timing, Timing::Late);
        assert_eq!(whistle(None).timing, Timing::Missed);
        assert_eq!(whistle(None).reaction, None);
    }
}

#[test]
fn where_play_goes_on_the_right_whistle_is_none() {
    for drawn in told(Kind::GoesOn(Cause::UnderNet)) {
        let of = |whistle| {
            mark(
                &drawn.scene,
                &drawn.verdict,
                &Answer {
                    whistle,
                    ..Answer::default()
                },
            )
        };
        assert!(of(None).is_right());
        assert_eq!(of(Some(1.0)).timing, Timing::Needless);
        assert!(!of(Some(1.0)).is_right());
        assert_eq!(serves_next(&drawn.scene, &drawn.verdict), None);
    }
}

#[test]
fn all_three_beats_have_to_be_right() {
    for drawn in told(Kind::Ends(Cause::ServiceFoot)) {
        let (scene, verdict) = (&drawn.scene, &drawn.verdict);
        let right = Answer {
            whistle: Some(whistle_from(verdict).unwrap() + 0.4),
            side: Some(scene.serving.other()),
            nature: Some(Nature::Fault(Cause::ServiceFoot)),
        };
        assert!(mark(scene, verdict, &right).is_right());
        let wrong_arm = Answer {
            side: Some(scene.serving),
            ..right
        };
        assert!(!mark(scene, verdict, &wrong_arm).side);
        // 22 is also the signal of what happens under the net, and still another fault.
        let other = Answer {
            nature: Some(Nature::Fault(Cause::UnderNet)),
            ..right
        };
        assert!(!mark(scene, verdict, &other).nature);
        let nothing = Answer {
            side: None,
            nature: None,
            ..right
        };
        assert!(!mark(scene, verdict, &nothing).is_right());
    }
}

#[test]
fn a_service_out_is_a_ball_out_as_well() {
    for (cause, said) in [
        (Cause::ServiceOut, Cause::BallOut),
        (Cause::ServiceWinner, Cause::BallIn),
    ] {
        for drawn in told(Kind::Ends(cause)) {
            let named = |cause| Answer {
                whistle: whistle_from(&drawn.verdict),
                side: serves_next(&drawn.scene, &drawn.verdict),
                nature: Some(Nature::Fault(cause)),
            };
            assert!(mark(&drawn.scene, &drawn.verdict, &named(said)).is_right());
            assert!(!mark(&drawn.scene, &drawn.verdict, &named(Cause::NetTouch)).is_right());
        }
    }
}

#[test]
fn after_a_double_fault_the_same_side_serves() {
    for drawn in told(Kind::DoubleFault) {
        assert_eq!(drawn.verdict.ruling.call, Call::Replay);
        assert_eq!(
            serves_next(&drawn.scene, &drawn.verdict),
            Some(drawn.scene.serving)
        );
        let answer = Answer {
            whistle: whistle_from(&drawn.verdict).map(|at| at + 0.3),
            side: Some(drawn.scene.serving),
            nature: Some(Nature::Replay),
        };
        assert!(mark(&drawn.scene, &drawn.verdict, &answer).is_right());
    }
}
