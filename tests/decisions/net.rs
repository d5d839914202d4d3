//! Under the net, at the net, over the net.

use super::{by_centimetres, foot, goes_on, is_fault};
use learn::{
    body_on_opponents_court, foot_over_centre_line, hand_over_net, net_contact, BodyPart, End,
    HandOver, NetContact,
};
use rules::{Cause, Signal, UnderNet};

#[test]
fn f8_13_a_foot_that_still_touches_the_centre_line_is_no_fault() {
    // The middle 10 cm beyond the axis: 5 cm of the heel still lie before it.
    let ruling = foot_over_centre_line(End::Left, foot(-0.10, 1.0), false);
    goes_on(ruling, "11.2.2.1");
    by_centimetres(ruling, 7.5);
}

#[test]
fn f8_13_straight_above_the_line_is_enough() {
    // The heel ends 2 cm beyond the axis, above the half of the line that lies there.
    goes_on(
        foot_over_centre_line(End::Left, foot(-0.17, 1.0), false),
        "11.2.2.1",
    );
}

#[test]
fn f8_15_a_foot_all_of_it_beyond_is_a_fault_without_interference() {
    let ruling = foot_over_centre_line(End::Left, foot(-0.20, 1.0), false);
    is_fault(
        ruling,
        End::Left,
        Cause::UnderNet,
        "11.4.3",
        Signal::LineOrUnder,
    );
    by_centimetres(ruling, 2.5);
}

#[test]
fn f8_13_a_foot_on_the_line_that_hinders_is_a_fault() {
    is_fault(
        foot_over_centre_line(End::Right, foot(-0.10, 1.0), true),
        End::Right,
        Cause::UnderNet,
        "11.2.2.1",
        Signal::LineOrUnder,
    );
}

#[test]
fn f8_14_a_knee_on_the_opponents_court_is_no_fault() {
    goes_on(
        body_on_opponents_court(End::Left, BodyPart::Other, false, UnderNet::Standard),
        "11.2.2.2",
    );
}

#[test]
fn f8_14_unless_it_hinders() {
    is_fault(
        body_on_opponents_court(End::Left, BodyPart::Other, true, UnderNet::Standard),
        End::Left,
        Cause::UnderNet,
        "11.2.2.2",
        Signal::LineOrUnder,
    );
}

#[test]
fn f20_24_for_juniors_a_knee_there_is_a_fault_and_a_hand_is_none() {
    is_fault(
        body_on_opponents_court(End::Left, BodyPart::Other, false, UnderNet::Junior),
        End::Left,
        Cause::UnderNet,
        "school",
        Signal::LineOrUnder,
    );
    goes_on(
        body_on_opponents_court(End::Left, BodyPart::Hand, false, UnderNet::Junior),
        "11.2.2.2",
    );
}

/// A player of the right side touches the net in the middle, playing the ball.
const TOUCH: NetContact = NetContact {
    by: End::Right,
    aside: 0.0,
    in_action: true,
    driven_by_ball: false,
    interferes: false,
    hair_only: false,
};

#[test]
fn f8_17_touching_the_net_in_the_action_is_a_fault() {
    is_fault(
        net_contact(TOUCH),
        End::Right,
        Cause::NetTouch,
        "11.3.1",
        Signal::NetTouch,
    );
}

#[test]
fn f8_17_from_antenna_to_antenna() {
    let inside = net_contact(NetContact {
        aside: -4.48,
        ..TOUCH
    });
    is_fault(
        inside,
        End::Right,
        Cause::NetTouch,
        "11.3.1",
        Signal::NetTouch,
    );
    by_centimetres(inside, 2.0);
}

#[test]
fn f8_19_outside_the_antennae_it_is_no_fault() {
    let outside = net_contact(NetContact {
        aside: 4.70,
        ..TOUCH
    });
    goes_on(outside, "11.3.2");
    by_centimetres(outside, 20.0);
}

#[test]
fn f8_19_unless_it_gives_support() {
    is_fault(
        net_contact(NetContact {
            aside: 4.70,
            interferes: true,
            ..TOUCH
        }),
        End::Right,
        Cause::NetTouch,
        "11.4.4",
        Signal::NetTouch,
    );
}

#[test]
fn f8_20_a_net_that_the_ball_drives_into_a_player_is_no_fault() {
    goes_on(
        net_contact(NetContact {
            driven_by_ball: true,
            ..TOUCH
        }),
        "11.3.3",
    );
}

#[test]
fn f8_20_a_player_who_moves_to_change_the_rebound_is_at_fault() {
    is_fault(
        net_contact(NetContact {
            driven_by_ball: true,
            interferes: true,
            ..TOUCH
        }),
        End::Right,
        Cause::NetTouch,
        "11.4.4",
        Signal::NetTouch,
    );
}

#[test]
fn f8_24_after_a_safe_landing_it_is_no_fault() {
    goes_on(
        net_contact(NetContact {
            in_action: false,
            ..TOUCH
        }),
        "11.3.1",
    );
}

#[test]
fn f8_24_holding_on_so_as_not_to_fall_is_a_fault() {
    is_fault(
        net_contact(NetContact {
            in_action: false,
            interferes: true,
            ..TOUCH
        }),
        End::Right,
        Cause::NetTouch,
        "11.4.4",
        Signal::NetTouch,
    );
}

#[test]
fn f6_08_hair_is_left_out() {
    goes_on(
        net_contact(NetContact {
            hair_only: true,
            ..TOUCH
        }),
        "11.3.1",
    );
}

/// A block 10 cm beyond the plane.
const REACHES: HandOver = HandOver {
    by: End::Left,
    beyond: 0.10,
    after_attack: Some(0.05),
    blocks: true,
};

#[test]
fn f10_12_a_block_may_reach_over_after_the_attack() {
    goes_on(hand_over_net(REACHES), "14.3");
}

#[test]
fn f8_22_before_the_attack_it_is_a_fault() {
    let ruling = hand_over_net(HandOver {
        after_attack: Some(-0.08),
        ..REACHES
    });
    is_fault(ruling, End::Left, Cause::OverNet, "11.4.1", Signal::OverNet);
    assert_eq!(ruling.margin.seconds(), Some(0.08));
}

#[test]
fn f8_22_at_the_same_moment_it_is_none() {
    goes_on(
        hand_over_net(HandOver {
            after_attack: Some(0.0),
            ..REACHES
        }),
        "14.3",
    );
}

#[test]
fn f10_13_a_ball_that_no_attacker_can_reach_may_be_blocked() {
    goes_on(
        hand_over_net(HandOver {
            after_attack: None,
            ..REACHES
        }),
        "14.3",
    );
}

#[test]
fn f8_10_above_the_net_the_hand_decides() {
    goes_on(
        hand_over_net(HandOver {
            beyond: -0.01,
            after_attack: Some(-0.5),
            ..REACHES
        }),
        "11.1.2",
    );
}

#[test]
fn f10_08_an_attack_with_the_hand_in_the_other_space_is_a_fault() {
    is_fault(
        hand_over_net(HandOver {
            blocks: false,
            ..REACHES
        }),
        End::Left,
        Cause::OverNet,
        "13.3.1",
        Signal::OverNet,
    );
}
