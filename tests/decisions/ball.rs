//! Where the ball lands and how it crosses the net.

use super::{by_centimetres, goes_on, is_fault};
use learn::{
    below_the_net, crossing, landing, Crossing, End, FloorContact, LastTouch, LastTouchKind, Point,
    Ruling, TeamHit, Zone, BALL_RADIUS,
};
use rules::{Cause, Edition, Signal};
use LastTouchKind::{Attack, Block, Defence, Service};

/// A ball pressed to a patch of 8 cm across lands here, touched last by the left side in this way.
fn lands(x: f64, y: f64, kind: LastTouchKind) -> Ruling {
    lands_after(x, y, End::Left, kind)
}

fn lands_after(x: f64, y: f64, by: End, kind: LastTouchKind) -> Ruling {
    let contact = FloorContact {
        at: Point { x, y, z: 0.0 },
        patch: 0.04,
    };
    landing(contact, LastTouch { by, kind })
}

#[test]
fn f6_03_a_ball_on_the_court_is_in() {
    let ruling = lands(6.0, 1.0, Attack);
    is_fault(ruling, End::Right, Cause::BallIn, "8.3", Signal::BallIn);
    by_centimetres(ruling, 304.0);
}

#[test]
fn f1_10_the_line_is_part_of_the_court() {
    // The middle of the end line is 2.5 cm inside the 9 m.
    let ruling = lands(8.975, 0.0, Attack);
    is_fault(ruling, End::Right, Cause::BallIn, "8.3", Signal::BallIn);
    by_centimetres(ruling, 6.5);
}

#[test]
fn f6_03_a_ball_that_only_brushes_the_outer_edge_is_in() {
    let ruling = lands(9.03, 0.0, Attack);
    is_fault(ruling, End::Right, Cause::BallIn, "8.3", Signal::BallIn);
    by_centimetres(ruling, 1.0);
}

#[test]
fn f6_04_completely_outside_is_out() {
    let ruling = lands(9.05, 0.0, Attack);
    is_fault(ruling, End::Left, Cause::BallOut, "8.4.1", Signal::BallOut);
    by_centimetres(ruling, 1.0);
}

#[test]
fn f6_04_beside_the_side_line_is_out() {
    let ruling = lands(4.0, -4.60, Attack);
    is_fault(ruling, End::Left, Cause::BallOut, "8.4.1", Signal::BallOut);
    by_centimetres(ruling, 6.0);
}

#[test]
fn f6_03_beside_the_corner_what_counts_is_the_distance_to_the_corner() {
    // 3 cm behind and 3 cm beside it: 4.24 cm from the corner, though 3 cm from either line.
    let ruling = lands(9.03, 4.53, Attack);
    is_fault(ruling, End::Left, Cause::BallOut, "8.4.1", Signal::BallOut);
    by_centimetres(ruling, 0.2426);
    let ruling = lands(9.02, 4.52, Attack);
    is_fault(ruling, End::Right, Cause::BallIn, "8.3", Signal::BallIn);
}

#[test]
fn f6_03_a_ball_in_the_own_court_is_the_own_fault() {
    let ruling = lands(-3.0, 0.0, Attack);
    is_fault(ruling, End::Left, Cause::BallIn, "8.3", Signal::BallIn);
}

#[test]
fn f16_28_a_service_that_nobody_touches_is_won_by_the_server() {
    let ruling = lands(5.0, 2.0, Service);
    is_fault(
        ruling,
        End::Right,
        Cause::ServiceWinner,
        "8.3",
        Signal::BallIn,
    );
}

#[test]
fn f9_12_a_service_out() {
    let ruling = lands(9.5, 0.0, Service);
    is_fault(
        ruling,
        End::Left,
        Cause::ServiceOut,
        "8.4.1",
        Signal::BallOut,
    );
}

#[test]
fn f16_28_defended_and_out_on_the_own_side_is_touched() {
    let ruling = lands_after(10.0, 0.0, End::Right, Defence);
    is_fault(
        ruling,
        End::Right,
        Cause::BallTouched,
        "8.4.1",
        Signal::BallTouched,
    );
}

#[test]
fn f16_28_off_the_block_and_out_behind_it_is_touched() {
    let ruling = lands_after(3.0, 5.5, End::Right, Block);
    is_fault(
        ruling,
        End::Right,
        Cause::BallTouched,
        "8.4.1",
        Signal::BallTouched,
    );
}

#[test]
fn f16_28_blocked_out_on_the_attackers_side_is_out() {
    let ruling = lands_after(-3.0, 5.5, End::Right, Block);
    is_fault(ruling, End::Right, Cause::BallOut, "8.4.1", Signal::BallOut);
}

#[test]
fn f1_14_and_f1_15_zones_by_their_measures() {
    let zone = |x: f64, y: f64| Zone::of(Point { x, y, z: 0.0 });
    assert_eq!(zone(2.99, 0.0), Zone::Front(End::Right));
    // The attack line is part of the front zone.
    assert_eq!(zone(-2.96, 4.0), Zone::Front(End::Left));
    assert_eq!(zone(3.01, 0.0), Zone::Back(End::Right));
    assert_eq!(zone(-9.5, 4.5), Zone::Service(End::Left));
    assert_eq!(zone(-9.5, 4.6), Zone::Free(End::Left));
    assert_eq!(zone(5.0, 5.0), Zone::Free(End::Right));
    assert_eq!(zone(5.0, 7.6), Zone::Beyond);
}

/// A ball from the left crosses the plane of the net so far aside.
fn crosses(aside: f64, hit: TeamHit) -> Crossing {
    Crossing {
        from: End::Left,
        aside,
        hit,
        touches_antenna: false,
        towards_free_zone: true,
    }
}

#[test]
fn f8_01_between_the_antennae_it_may_cross() {
    let ruling = crossing(crosses(4.0, TeamHit::Third), Edition::E2025);
    goes_on(ruling, "10.1.1");
    by_centimetres(ruling, (0.5 - BALL_RADIUS) * 100.0);
}

#[test]
fn f8_02_the_first_hit_partly_outside_may_be_played_back() {
    goes_on(
        crossing(crosses(4.45, TeamHit::First), Edition::E2025),
        "10.1.2",
    );
}

#[test]
fn f8_03_the_second_hit_outside_is_out_since_2025() {
    let second = crosses(4.8, TeamHit::Second);
    let ruling = crossing(second, Edition::E2025);
    is_fault(
        ruling,
        End::Left,
        Cause::OutsideCrossing,
        "10.1.2.3",
        Signal::BallOut,
    );
    by_centimetres(ruling, (0.3 + BALL_RADIUS) * 100.0);
    // Case 3.11 was written to the older text.
    goes_on(crossing(second, Edition::E2021), "10.1.2");
}

#[test]
fn f8_03_the_third_hit_outside_is_out() {
    let third = crosses(4.8, TeamHit::Third);
    for (edition, rule) in [(Edition::E2025, "10.1.2.3"), (Edition::E2021, "8.4.4")] {
        is_fault(
            crossing(third, edition),
            End::Left,
            Cause::OutsideCrossing,
            rule,
            Signal::BallOut,
        );
    }
}

#[test]
fn f8_04_the_first_hit_outside_and_above_the_opponents_court_is_out() {
    let ball = Crossing {
        towards_free_zone: false,
        ..crosses(4.8, TeamHit::First)
    };
    is_fault(
        crossing(ball, Edition::E2025),
        End::Left,
        Cause::OutsideCrossing,
        "8.4.4",
        Signal::BallOut,
    );
}

#[test]
fn f9_12_a_service_that_crosses_outside_is_a_fault() {
    is_fault(
        crossing(crosses(-4.6, TeamHit::Service), Edition::E2025),
        End::Left,
        Cause::ServiceOut,
        "12.6.2",
        Signal::BallOut,
    );
}

#[test]
fn f6_06_a_ball_that_touches_the_antenna_is_out() {
    let ball = Crossing {
        touches_antenna: true,
        ..crosses(4.3, TeamHit::First)
    };
    is_fault(
        crossing(ball, Edition::E2025),
        End::Left,
        Cause::Antenna,
        "8.4.3",
        Signal::BallOut,
    );
}

#[test]
fn f8_07_a_ball_partly_under_the_net_is_in_play() {
    let ruling = below_the_net(End::Left, BALL_RADIUS - 0.02);
    goes_on(ruling, "10.1.3");
    by_centimetres(ruling, 2.0);
}

#[test]
fn f8_07_a_ball_all_of_it_under_the_net_is_out() {
    let ruling = below_the_net(End::Left, BALL_RADIUS + 0.02);
    is_fault(
        ruling,
        End::Left,
        Cause::UnderNet,
        "8.4.5",
        Signal::LineOrUnder,
    );
    by_centimetres(ruling, 2.0);
}
