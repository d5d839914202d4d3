//! Two things that count, and which of them does.

use super::{about, deciding, events, told};
use learn::{Act, Call, Drawn, Kind, AT_ONCE};
use rules::{Cause, Signal};

#[test]
fn f6_1_2_2_opponents_at_the_same_moment() {
    for drawn in told(Kind::DoubleFault) {
        let ruling = drawn.verdict.ruling;
        assert_eq!((ruling.call, ruling.rule), (Call::Replay, "6.1.2.2"));
        assert_eq!(ruling.signal(), Some(Signal::Replay));
        let net = events(&drawn, |act| matches!(act, Act::NetTouch { .. }));
        let sides: Vec<_> = net
            .iter()
            .map(|e| match e.act {
                Act::NetTouch { player, .. } => drawn.scene.players[player].side,
                _ => unreachable!(),
            })
            .collect();
        assert_eq!(sides.len(), 2);
        assert_ne!(sides[0], sides[1]);
        assert!(net[1].at - net[0].at <= AT_ONCE);
    }
}

#[test]
fn f3_07_of_two_faults_the_first_counts() {
    for drawn in told(Kind::FirstOfTwo) {
        assert_eq!(drawn.verdict.ruling.rule, "6.1.2.1");
        let Call::Fault { by, cause, .. } = drawn.verdict.ruling.call else {
            panic!()
        };
        assert_eq!(cause, Cause::NetTouch);
        let net = events(&drawn, |act| matches!(act, Act::NetTouch { .. }))[0].at;
        let floor = events(&drawn, |act| matches!(act, Act::Floor { .. }))[0].at;
        assert!(net < floor);
        // The ball that went out was the opponents', who win the rally all the same.
        let out = drawn.verdict.all.last().unwrap();
        assert_eq!(out.ruling.won_by(), Some(by));
    }
}

/// Whether a scene holds such a fault, whether it counts or not.
fn holds_fault(drawn: &Drawn, cause: Cause) -> bool {
    about(drawn, cause).iter().any(|j| j.ruling.is_fault())
}

#[test]
fn f5_38_a_fault_of_the_server_comes_before_the_receivers() {
    for drawn in told(Kind::ServerBeforeReceivers) {
        assert!(holds_fault(&drawn, Cause::PositionFault));
        assert_eq!(deciding(&drawn).about, Cause::ServiceFoot);
        assert_eq!(
            drawn.verdict.ruling.won_by(),
            Some(drawn.scene.serving.other())
        );
    }
}

#[test]
fn f5_38_the_receivers_come_before_a_service_that_goes_out() {
    for drawn in told(Kind::ReceiversBeforeService) {
        assert!(holds_fault(&drawn, Cause::ServiceOut));
        assert_eq!(deciding(&drawn).about, Cause::PositionFault);
        assert_eq!(drawn.verdict.ruling.won_by(), Some(drawn.scene.serving));
    }
}

#[test]
fn f9_07_before_the_whistle_it_is_made_again() {
    for drawn in told(Kind::BeforeTheWhistle) {
        assert_eq!(drawn.verdict.ruling.call, Call::Replay);
        let hit = events(&drawn, |act| matches!(act, Act::ServiceHit { .. }))[0].at;
        assert!(hit < events(&drawn, |act| *act == Act::Whistle)[0].at);
    }
}
