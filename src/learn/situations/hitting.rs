//! Attack hits of the left team, and blocks of the right one.

use super::{Dial, Values};
use crate::attack::{attack, Attack, Attacked, Row};
use crate::block::{block, Block, Blocked, Blocker};
use crate::court::{End, Point, Zone};
use crate::ruling::Ruling;

const ROWS: [Row; 3] = [Row::Front, Row::Back, Row::Libero];

pub(super) fn attack_start() -> Values {
    Values::of(&[
        (Dial::TakeOff, 2.9),
        (Dial::BallDepth, 1.4),
        (Dial::BallHeight, 2.75),
        (Dial::NetTop, 2.24),
        (Dial::Row(1), 1.0),
        (Dial::AttackedBall, 0.0),
        (Dial::Completed, 1.0),
    ])
}

pub(super) fn attack_of(set: &Values) -> Ruling {
    attack(Attack {
        by: End::Left,
        row: ROWS[set.choice(Dial::Row(1))],
        ball: [Attacked::Other, Attacked::Service][set.choice(Dial::AttackedBall)],
        take_off: set.get(Dial::TakeOff),
        ball_depth: set.get(Dial::BallDepth),
        ball_height: set.get(Dial::BallHeight),
        net_top: set.get(Dial::NetTop),
        completed: set.is(Dial::Completed),
    })
}

pub(super) fn libero_attack_start() -> Values {
    Values::of(&[
        (Dial::BallDepth, 3.6),
        (Dial::BallHeight, 2.3),
        (Dial::NetTop, 2.24),
        (Dial::Completed, 1.0),
    ])
}

/// The libero takes off where the ball is: for a libero that decides nothing (13.3.5).
pub(super) fn libero_attack(set: &Values) -> Ruling {
    attack(Attack {
        by: End::Left,
        row: Row::Libero,
        ball: Attacked::Other,
        take_off: set.get(Dial::BallDepth),
        ball_depth: set.get(Dial::BallDepth),
        ball_height: set.get(Dial::BallHeight),
        net_top: set.get(Dial::NetTop),
        completed: set.is(Dial::Completed),
    })
}

pub(super) fn libero_pass_start() -> Values {
    Values::of(&[
        (Dial::LiberoDepth, 2.7),
        (Dial::BallHeight, 2.6),
        (Dial::NetTop, 2.24),
        (Dial::LiberoPass, 1.0),
    ])
}

/// A player of the front row hits what the libero has passed.
pub(super) fn libero_pass(set: &Values) -> Ruling {
    let libero = Point {
        x: -set.get(Dial::LiberoDepth),
        y: 0.0,
        z: 0.0,
    };
    let in_front = Zone::of(libero) == Zone::Front(End::Left);
    attack(Attack {
        by: End::Left,
        row: Row::Front,
        ball: if in_front && set.is(Dial::LiberoPass) {
            Attacked::LiberoFingerPass
        } else {
            Attacked::Other
        },
        take_off: 1.0,
        ball_depth: 0.6,
        ball_height: set.get(Dial::BallHeight),
        net_top: set.get(Dial::NetTop),
        completed: true,
    })
}

fn block_with(second: Row, reach: f64) -> Values {
    let row = ROWS.iter().position(|row| *row == second).unwrap_or(0);
    Values::of(&[
        (Dial::Reach(1), 2.7),
        (Dial::Reach(2), reach),
        (Dial::NetTop, 2.24),
        (Dial::Row(1), 0.0),
        (Dial::Row(2), row as f64),
        (Dial::BlockTouches, 1.0),
        (Dial::BlockedBall, 0.0),
    ])
}

pub(super) fn block_start() -> Values {
    block_with(Row::Back, 2.5)
}

pub(super) fn libero_block_start() -> Values {
    let mut set = block_with(Row::Libero, 2.2);
    set.set(Dial::BlockTouches, 0.0);
    set
}

pub(super) fn block_of(set: &Values) -> Ruling {
    let player = |n| Blocker {
        row: ROWS[set.choice(Dial::Row(n))],
        reach: set.get(Dial::Reach(n)),
    };
    block(&Block {
        by: End::Right,
        players: vec![player(1), player(2)],
        touched: set.is(Dial::BlockTouches),
        ball: [Blocked::Other, Blocked::Service][set.choice(Dial::BlockedBall)],
        net_top: set.get(Dial::NetTop),
    })
}
