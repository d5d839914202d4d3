//! Attack hits and blocks.

use super::{by_centimetres, goes_on, is_fault};
use learn::{
    attack, block, first_fault, Attack, Attacked, Block, Blocked, Blocker, Call, End, Row, Timed,
    BALL_RADIUS,
};
use rules::{Cause, Signal};

/// The net of women (2.1.1).
const NET: f64 = 2.24;

/// A player of the back row who takes off 2.80 m from the centre line and hits a ball whose lowest part is
/// 20 cm above the net; it crosses.
const FROM_BACK: Attack = Attack {
    by: End::Left,
    row: Row::Back,
    ball: Attacked::Other,
    take_off: 2.80,
    ball_depth: 1.5,
    ball_height: NET + 0.20 + BALL_RADIUS,
    net_top: NET,
    completed: true,
};

#[test]
fn f10_02_a_front_row_player_attacks_at_any_height() {
    goes_on(
        attack(Attack {
            row: Row::Front,
            ..FROM_BACK
        }),
        "13.2.1",
    );
}

#[test]
fn f10_04_from_the_front_zone_above_the_net_it_is_a_fault() {
    let ruling = attack(FROM_BACK);
    is_fault(
        ruling,
        End::Left,
        Cause::AttackFault,
        "13.3.3",
        Signal::AttackFault,
    );
    // Either 20 cm lower or 20 cm farther back would have made it right.
    by_centimetres(ruling, 20.0);
}

#[test]
fn f1_12_the_attack_line_belongs_to_the_front_zone() {
    let on_the_line = attack(Attack {
        take_off: 2.97,
        ..FROM_BACK
    });
    assert!(on_the_line.is_fault());
    by_centimetres(on_the_line, 3.0);
}

#[test]
fn f10_03_taking_off_behind_the_line_is_right_wherever_one_lands() {
    let ruling = attack(Attack {
        take_off: 3.01,
        ..FROM_BACK
    });
    goes_on(ruling, "13.3.3");
    by_centimetres(ruling, 1.0);
}

#[test]
fn f10_03_a_part_of_the_ball_below_the_top_is_right() {
    goes_on(
        attack(Attack {
            ball_height: NET + BALL_RADIUS - 0.01,
            ..FROM_BACK
        }),
        "13.3.3",
    );
}

#[test]
fn f10_04_a_hit_that_is_not_completed_is_no_fault() {
    goes_on(
        attack(Attack {
            completed: false,
            ..FROM_BACK
        }),
        "13.1.3",
    );
}

#[test]
fn f10_05_a_service_must_not_be_attacked_in_the_front_zone() {
    let service = Attack {
        row: Row::Front,
        ball: Attacked::Service,
        ..FROM_BACK
    };
    is_fault(
        attack(service),
        End::Left,
        Cause::AttackFault,
        "13.3.4",
        Signal::AttackFault,
    );
    // Where the ball is decides, not the feet.
    goes_on(
        attack(Attack {
            ball_depth: 3.2,
            take_off: 2.0,
            ..service
        }),
        "13.3.4",
    );
    goes_on(
        attack(Attack {
            ball_height: NET,
            ..service
        }),
        "13.3.4",
    );
}

#[test]
fn f10_06_a_libero_attacks_no_ball_above_the_net_from_anywhere() {
    let libero = Attack {
        row: Row::Libero,
        take_off: 6.0,
        ball_depth: 5.0,
        ..FROM_BACK
    };
    is_fault(
        attack(libero),
        End::Left,
        Cause::LiberoFault,
        "13.3.5",
        Signal::AttackFault,
    );
    goes_on(
        attack(Attack {
            ball_height: NET,
            ..libero
        }),
        "13.3.5",
    );
}

#[test]
fn f10_07_a_finger_pass_of_the_libero_in_the_front_zone_is_not_attacked_above_the_net() {
    let set = Attack {
        row: Row::Front,
        ball: Attacked::LiberoFingerPass,
        ..FROM_BACK
    };
    is_fault(
        attack(set),
        End::Left,
        Cause::LiberoFault,
        "13.3.6",
        Signal::AttackFault,
    );
    goes_on(
        attack(Attack {
            ball_height: NET + BALL_RADIUS,
            ..set
        }),
        "13.3.6",
    );
}

#[test]
fn f10_08_a_ball_in_the_other_space_is_not_attacked() {
    let ruling = attack(Attack {
        row: Row::Front,
        ball_depth: -BALL_RADIUS - 0.05,
        ..FROM_BACK
    });
    is_fault(ruling, End::Left, Cause::OverNet, "13.3.1", Signal::OverNet);
    by_centimetres(ruling, 5.0);
}

fn blocks(rows: &[(Row, f64)], touched: bool) -> Block {
    Block {
        by: End::Right,
        players: rows
            .iter()
            .map(|&(row, above)| Blocker {
                row,
                reach: NET + above,
            })
            .collect(),
        touched,
        ball: Blocked::Other,
        net_top: NET,
    }
}

#[test]
fn f10_09_the_front_row_blocks() {
    goes_on(
        block(&blocks(&[(Row::Front, 0.3), (Row::Front, 0.2)], true)),
        "14.1",
    );
}

#[test]
fn f10_16_a_back_row_player_in_a_completed_block_is_a_fault() {
    let ruling = block(&blocks(&[(Row::Front, 0.3), (Row::Back, 0.1)], true));
    is_fault(
        ruling,
        End::Right,
        Cause::BlockFault,
        "14.6.2",
        Signal::BlockOrScreen,
    );
    by_centimetres(ruling, 10.0);
}

#[test]
fn f10_17_an_attempt_without_contact_is_none() {
    goes_on(
        block(&blocks(&[(Row::Front, 0.3), (Row::Back, 0.1)], false)),
        "14.1",
    );
}

#[test]
fn f10_18_below_the_height_of_the_net_nobody_blocks() {
    let ruling = block(&blocks(&[(Row::Back, -0.05)], true));
    goes_on(ruling, "14.1");
    by_centimetres(ruling, 5.0);
}

#[test]
fn f10_17_a_libero_must_not_even_try() {
    is_fault(
        block(&blocks(&[(Row::Libero, 0.05)], false)),
        End::Right,
        Cause::LiberoFault,
        "14.6.6",
        Signal::BlockOrScreen,
    );
    goes_on(block(&blocks(&[(Row::Libero, -0.3)], false)), "14.1");
}

#[test]
fn f10_15_a_service_is_not_blocked() {
    let service = Block {
        ball: Blocked::Service,
        ..blocks(&[(Row::Front, 0.3)], true)
    };
    is_fault(
        block(&service),
        End::Right,
        Cause::BlockFault,
        "14.5",
        Signal::BlockOrScreen,
    );
    goes_on(
        block(&Block {
            touched: false,
            ..service
        }),
        "14.1.2",
    );
}

#[test]
fn f10_19_illegal_attack_and_illegal_block_at_once_are_played_again() {
    let happened = [
        Timed {
            at: 2.0,
            ruling: attack(FROM_BACK),
        },
        Timed {
            at: 2.0,
            ruling: block(&blocks(&[(Row::Back, 0.1)], true)),
        },
    ];
    assert_eq!(first_fault(&happened).call, Call::Replay);
}

#[test]
fn f10_20_a_libero_who_tries_to_block_is_earlier_than_the_attack() {
    let happened = [
        Timed {
            at: 2.00,
            ruling: attack(FROM_BACK),
        },
        Timed {
            at: 1.90,
            ruling: block(&blocks(&[(Row::Libero, 0.1)], false)),
        },
    ];
    assert_eq!(first_fault(&happened).won_by(), Some(End::Left));
}
