//! Situations of the FIVB Casebook 2024 by their numbers, told in our own words. It was written to the text
//! before 2025; where the rules of 2025-2028 differ, they count.

use super::{goes_on, is_fault, stands};
use learn::{
    below_the_net, body_on_opponents_court, crossing, foot_over_centre_line, hand_over_net, hits,
    inside_own_court, net_contact, server_in_order, service_execution, BodyPart, Crossing, End,
    Foot, HandOver, Manner, NetContact, ServiceExecution, Spot, TeamHit, Touch, TouchKind,
    BALL_RADIUS,
};
use rules::{Cause, Edition, Signal, UnderNet};

/// A clean hit.
pub fn hit(by: End, player: u8) -> Touch {
    Touch {
        by,
        player,
        kind: TouchKind::Hit,
        manner: Manner::Rebounds,
        with_last: false,
        same_action: false,
    }
}

/// A touch of a block.
pub fn blocks(by: End, player: u8) -> Touch {
    Touch {
        kind: TouchKind::Block,
        ..hit(by, player)
    }
}

#[test]
fn case_2_2_a_receiver_waits_in_the_free_zone() {
    is_fault(
        inside_own_court(End::Left, &stands(8.0, 5.0)),
        End::Left,
        Cause::OutsideCourt,
        "7.4",
        Signal::LineOrUnder,
    );
}

#[test]
fn case_2_6_a_foot_across_the_centre_line_at_the_hit() {
    goes_on(inside_own_court(End::Left, &stands(-0.05, 1.0)), "7.4");
}

#[test]
fn case_3_3_the_reception_goes_from_arm_to_chest_in_one_action() {
    let chest = Touch {
        same_action: true,
        ..hit(End::Right, 6)
    };
    let reception = [hit(End::Right, 6), chest, hit(End::Right, 2)];
    goes_on(hits(&reception), "9.1");
    let held = Touch {
        manner: Manner::Caught,
        ..hit(End::Right, 6)
    };
    is_fault(
        hits(&[held]),
        End::Right,
        Cause::Catch,
        "9.2.2",
        Signal::Catch,
    );
}

#[test]
fn case_3_12_above_the_net_the_hand_below_it_the_ball() {
    // The fingers are on the own side, though most of the ball is not.
    let fingers = HandOver {
        by: End::Right,
        beyond: -0.02,
        after_attack: Some(-1.0),
        blocks: false,
    };
    goes_on(hand_over_net(fingers), "11.1.2");
    // Below it a part of the ball in the plane keeps it in play.
    goes_on(below_the_net(End::Right, BALL_RADIUS - 0.001), "10.1.3");
    assert!(below_the_net(End::Right, BALL_RADIUS + 0.001).is_fault());
}

#[test]
fn case_3_13_2_only_the_side_band_is_touched() {
    let band = Crossing {
        from: End::Right,
        aside: 4.5 - BALL_RADIUS,
        hit: TeamHit::Third,
        touches_antenna: false,
        towards_free_zone: false,
    };
    goes_on(crossing(band, Edition::E2025), "10.1.1");
    // 3.13.3: the antenna as well.
    is_fault(
        crossing(
            Crossing {
                touches_antenna: true,
                ..band
            },
            Edition::E2025,
        ),
        End::Right,
        Cause::Antenna,
        "8.4.3",
        Signal::BallOut,
    );
}

#[test]
fn case_3_16_a_player_slides_below_the_net_and_hinders_nobody() {
    for part in [BodyPart::Hand, BodyPart::Other] {
        goes_on(
            body_on_opponents_court(End::Right, part, false, UnderNet::Standard),
            "11.2.2.2",
        );
    }
}

#[test]
fn case_3_18_a_foot_all_of_it_beyond_hinders_nobody() {
    let beyond = Foot {
        heel: Spot {
            depth: -0.08,
            right: 2.0,
        },
        toe: Spot {
            depth: -0.28,
            right: 2.0,
        },
        half_width: 0.05,
    };
    is_fault(
        foot_over_centre_line(End::Right, beyond, false),
        End::Right,
        Cause::UnderNet,
        "11.4.3",
        Signal::LineOrUnder,
    );
}

#[test]
fn case_3_19_two_opponents_at_once_after_three_hits() {
    let with = Touch {
        with_last: true,
        ..hit(End::Right, 4)
    };
    let three = [
        hit(End::Left, 1),
        hit(End::Left, 2),
        hit(End::Left, 3),
        with,
        hit(End::Right, 5),
        hit(End::Right, 6),
        hit(End::Right, 4),
    ];
    goes_on(hits(&three), "9.1");
    let fourth: Vec<Touch> = three.into_iter().chain([hit(End::Right, 2)]).collect();
    assert!(hits(&fourth).is_fault());
}

/// A blocker of the left side brushes the net in the action.
const BRUSHES: NetContact = NetContact {
    by: End::Left,
    aside: 3.0,
    in_action: true,
    driven_by_ball: false,
    interferes: false,
    hair_only: false,
};

#[test]
fn case_3_20_the_ball_drives_the_net_into_the_blockers() {
    assert!(net_contact(BRUSHES).is_fault());
    goes_on(
        net_contact(NetContact {
            driven_by_ball: true,
            ..BRUSHES
        }),
        "11.3.3",
    );
}

#[test]
fn case_3_21_landed_turned_round_and_then_against_the_net() {
    goes_on(
        net_contact(NetContact {
            in_action: false,
            ..BRUSHES
        }),
        "11.3.1",
    );
}

#[test]
fn case_3_25_the_net_keeps_a_player_from_falling() {
    is_fault(
        net_contact(NetContact {
            in_action: false,
            interferes: true,
            ..BRUSHES
        }),
        End::Left,
        Cause::NetTouch,
        "11.4.4",
        Signal::NetTouch,
    );
}

#[test]
fn case_3_27_long_hair_in_the_net() {
    let hair = NetContact {
        hair_only: true,
        ..BRUSHES
    };
    goes_on(net_contact(hair), "11.3.1");
    // It stops the rally: then it is one.
    assert!(net_contact(NetContact {
        interferes: true,
        ..hair
    })
    .is_fault());
}

#[test]
fn case_3_28_the_wrong_player_serves() {
    is_fault(
        server_in_order(End::Right, 4, 11),
        End::Right,
        Cause::RotationFault,
        "7.7.1",
        Signal::Position,
    );
}

#[test]
fn case_3_31_both_hands_hit_the_service() {
    let both = ServiceExecution {
        released: true,
        tosses: 1,
        one_hand: false,
    };
    assert!(service_execution(End::Right, both).is_fault());
    goes_on(
        service_execution(
            End::Right,
            ServiceExecution {
                one_hand: true,
                ..both
            },
        ),
        "12.4",
    );
}
