//! Attack hits and blocks of the FIVB Casebook 2024 by their numbers: see `casebook.rs`.

use super::{
    casebook::{blocks, hit},
    goes_on, is_fault,
};
use learn::{
    attack, below_the_net, block, hand_over_net, hits, Attack, Attacked, Block, Blocked, Blocker,
    End, HandOver, Row, Touch,
};
use rules::{Cause, Signal};

/// The net of men (2.1.1).
const NET: f64 = 2.43;

/// A player of the right back row takes off on the attack line and hits a ball high above the net.
const HIGH: Attack = Attack {
    by: End::Right,
    row: Row::Back,
    ball: Attacked::Other,
    take_off: 2.99,
    ball_depth: 1.0,
    ball_height: NET + 0.60,
    net_top: NET,
    completed: true,
};

#[test]
fn case_3_34_from_the_back_row_it_takes_all_three() {
    is_fault(
        attack(HIGH),
        End::Right,
        Cause::AttackFault,
        "13.3.3",
        Signal::AttackFault,
    );
    for missing in [
        Attack {
            take_off: 3.0 + 1e-9,
            ..HIGH
        },
        Attack {
            ball_height: NET,
            ..HIGH
        },
        Attack {
            completed: false,
            ..HIGH
        },
    ] {
        assert!(!attack(missing).is_fault(), "{missing:?}");
    }
}

#[test]
fn case_3_35_the_service_is_hit_back_at_once() {
    let service = Attack {
        row: Row::Front,
        ball: Attacked::Service,
        ..HIGH
    };
    is_fault(
        attack(service),
        End::Right,
        Cause::AttackFault,
        "13.3.4",
        Signal::AttackFault,
    );
    goes_on(
        attack(Attack {
            ball_depth: 3.5,
            ..service
        }),
        "13.3.4",
    );
}

#[test]
fn case_3_37_blocker_and_attacker_touch_at_once() {
    let reach = |after| {
        hand_over_net(HandOver {
            by: End::Right,
            beyond: 0.20,
            after_attack: after,
            blocks: true,
        })
    };
    goes_on(reach(Some(0.0)), "14.3");
    assert!(reach(Some(-0.01)).is_fault());
    // 3.38: a ball that nobody of the attackers can reach any more.
    goes_on(reach(None), "14.3");
}

#[test]
fn case_3_39_a_blocked_ball_is_blocked_back() {
    let both = [
        blocks(End::Left, 3),
        blocks(End::Right, 2),
        blocks(End::Left, 3),
        hit(End::Left, 3),
        hit(End::Left, 1),
        hit(End::Left, 3),
    ];
    goes_on(hits(&both), "9.1");
}

/// A row of players of the left side, each so far above the net.
fn wall(players: &[(Row, f64)], touched: bool) -> Block {
    Block {
        by: End::Left,
        players: players
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
fn case_3_44_the_ball_meets_a_back_row_player_below_the_net() {
    goes_on(
        block(&wall(&[(Row::Front, 0.4), (Row::Back, -0.30)], true)),
        "14.1",
    );
    // It was no block, so it counts: two are left.
    let counted = [7, 1, 3].map(|player| hit(End::Left, player));
    goes_on(hits(&counted), "9.1");
    let one_more: Vec<Touch> = counted.into_iter().chain([hit(End::Left, 7)]).collect();
    assert!(hits(&one_more).is_fault());
}

#[test]
fn case_3_48_blocked_down_and_below_the_net_to_the_blockers() {
    let ruling = below_the_net(End::Left, 0.40);
    is_fault(
        ruling,
        End::Left,
        Cause::UnderNet,
        "8.4.5",
        Signal::LineOrUnder,
    );
    assert_eq!(ruling.won_by(), Some(End::Right));
}

#[test]
fn case_3_54_a_swing_begun_beyond_the_net_is_no_block() {
    is_fault(
        hand_over_net(HandOver {
            by: End::Left,
            beyond: 0.05,
            after_attack: Some(0.20),
            blocks: false,
        }),
        End::Left,
        Cause::OverNet,
        "13.3.1",
        Signal::OverNet,
    );
}

#[test]
fn case_5_21_a_libero_jumps_with_the_block_and_touches_nothing() {
    is_fault(
        block(&wall(&[(Row::Front, 0.3), (Row::Libero, 0.02)], false)),
        End::Left,
        Cause::LiberoFault,
        "14.6.6",
        Signal::BlockOrScreen,
    );
    // The same of the back row is none.
    goes_on(
        block(&wall(&[(Row::Front, 0.3), (Row::Back, 0.02)], false)),
        "14.1",
    );
}

#[test]
fn case_5_26_the_liberos_pass_with_fingers_in_the_front_zone() {
    let fingers = Attack {
        row: Row::Front,
        ball: Attacked::LiberoFingerPass,
        ..HIGH
    };
    is_fault(
        attack(fingers),
        End::Right,
        Cause::LiberoFault,
        "13.3.6",
        Signal::AttackFault,
    );
    // With the forearms, or from behind the line, it is any other ball.
    goes_on(
        attack(Attack {
            ball: Attacked::Other,
            ..fingers
        }),
        "13.2.1",
    );
}
