//! Scenes about who may attack and block: back row, libero.

use super::landings::blocked;
use super::rally::From;
use super::stage::{Meet, Stage};
use super::Act;
use crate::attack::Row;
use crate::court::{Point, Spot, ATTACK_LINE, BALL_RADIUS};
use crate::hits::TouchKind;

pub(super) fn back_row(stage: &mut Stage, fault: bool, margin: f64) {
    if stage.rng.u8(0..4) == 0 {
        attack_on_service(stage, fault, margin);
        return;
    }
    let us = stage.us;
    let passer = stage.passed();
    let position = stage.one_of(&[6, 1]);
    let attacker = stage.who(us, position);
    let setter = stage.setter(From::Left);
    stage.set_by(setter);
    let take_off = ATTACK_LINE + if fault { -margin } else { margin };
    let right = if position == 6 { 0.0 } else { 2.4 };
    let aim = Spot {
        depth: take_off - 0.35,
        right: right + stage.between(-0.3, 0.3),
    };
    let begin = stage.now;
    let height = stage.attack_height();
    stage.fly(us.point(aim, height), 1.15);
    // Who passed has a way to run and does not attack.
    let attacker = if attacker == passer {
        stage.who(us, if position == 6 { 1 } else { 6 })
    } else {
        attacker
    };
    stage.moves(
        attacker,
        begin + 0.1,
        Spot {
            depth: 5.2,
            right: aim.right,
        },
    );
    stage.attacks_from(attacker, take_off);
    stage.they_save(&[]);
}

/// The service is hit across the net at once by a receiver who jumps.
fn attack_on_service(stage: &mut Stage, fault: bool, margin: f64) {
    let them = stage.them();
    stage.serves(0.35);
    let depth = ATTACK_LINE + if fault { -margin } else { margin };
    let attacker = stage.who(them, 2);
    let aim = Spot { depth, right: 2.2 };
    let height = stage.scene.net_top + BALL_RADIUS + 0.35;
    stage.stays(attacker, 0.0, stage.now);
    stage.fly(them.point(aim, height), 0.95);
    let take_off = depth + 0.5;
    stage.attacks_from(attacker, take_off);
    let us = stage.us;
    let at = Spot {
        depth: stage.between(5.0, 6.5),
        right: stage.between(-2.0, 2.0),
    };
    let time = stage.attack_time(us.point(at, 0.0)) * 1.1;
    stage.saved(us, at, 0.8, time, &[stage.who(us, 1)]);
}

pub(super) fn block_fault(stage: &mut Stage, fault: bool, margin: f64) {
    let from = stage.one_of(&[From::Left, From::Right]);
    // Their player of the back row who is on that side comes to the net.
    let position = if from == From::Left { 1 } else { 5 };
    let (us, them) = (stage.us, stage.them());
    let helper = stage.who(them, position);
    let blocker = blocked(stage, from);
    let here = them.spot(stage.ball).right;
    let beside = here - here.signum() * 0.75;
    stage.stands(
        helper,
        Spot {
            depth: 1.6,
            right: beside,
        },
    );
    let height = stage.scene.net_top + if fault { margin } else { -margin };
    let hands = them.point(
        Spot {
            depth: 0.12,
            right: beside,
        },
        height,
    );
    stage.jumps_to_block(helper, stage.now, hands);
    // The ball comes back to us.
    let at = Spot {
        depth: stage.between(2.6, 3.6),
        right: -here + stage.between(-0.5, 0.5),
    };
    let attacker = stage.who(us, if from == From::Left { 4 } else { 2 });
    let time = stage.between(0.6, 0.75);
    stage.saved(us, at, 0.7, time, &[attacker, blocker]);
}

pub(super) fn libero(stage: &mut Stage, fault: bool, margin: f64) {
    match stage.rng.u8(0..3) {
        0 => libero_attacks(stage, fault, margin),
        1 => libero_sets(stage, fault, margin),
        _ => libero_blocks(stage, fault, margin),
    }
}

/// Makes the player in a position of the back row the libero.
fn as_libero(stage: &mut Stage, side: crate::court::End, position: u8) -> usize {
    let who = stage.who(side, position);
    stage.scene.players[who].row = Row::Libero;
    who
}

/// The lowest part of the ball is so far above the top of the net.
fn height_above(stage: &Stage, above: f64) -> f64 {
    stage.scene.net_top + BALL_RADIUS + above
}

fn libero_attacks(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    let libero = as_libero(stage, us, 6);
    let passer = stage.passed();
    let setter = stage.setter(From::Left);
    stage.set_by(setter);
    let height = height_above(stage, if fault { margin } else { -margin });
    let aim = Spot {
        depth: stage.between(3.8, 4.6),
        right: stage.between(-0.6, 0.6),
    };
    let begin = stage.now;
    stage.fly(us.point(aim, height), 1.1);
    if passer != libero {
        stage.moves(
            libero,
            begin,
            Spot {
                depth: 6.0,
                right: aim.right,
            },
        );
    }
    stage.attacks_from(libero, aim.depth + 0.5);
    let them = stage.them();
    let at = Spot {
        depth: stage.between(5.0, 7.0),
        right: stage.between(-2.5, 2.5),
    };
    let time = stage.between(1.05, 1.25);
    stage.saved(them, at, 0.8, time, &[]);
}

fn libero_sets(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    let libero = as_libero(stage, us, 5);
    let passer = stage.passed();
    // With the fingers of raised hands: inside the front zone, or well behind it.
    let behind = !fault && stage.rng.bool();
    let depth = if behind {
        ATTACK_LINE + stage.between(0.5, 0.9)
    } else {
        stage.between(1.7, 2.3)
    };
    let aim = Spot { depth, right: -0.6 };
    if passer == libero {
        // Nobody hits twice; another one is drawn.
        stage.event(stage.now, Act::Swing { player: libero });
    }
    stage.moves(
        libero,
        0.4,
        Spot {
            depth: 5.0,
            right: -1.6,
        },
    );
    let height = stage.scene.players[libero].height * super::body::share::REACH - 0.05;
    stage.fly(us.point(aim, height), 1.2);
    stage.meets(libero, Meet::Fingers);
    stage.event(
        stage.now,
        Act::Touch {
            player: libero,
            kind: TouchKind::Hit,
            contact: 0.0,
            same_action: false,
            fingers: true,
            helped_by: None,
        },
    );
    let attacker = stage.who(us, 4);
    let above = if fault || behind { margin } else { -margin };
    let to = Spot {
        depth: stage.between(0.8, 1.0),
        right: -3.2,
    };
    let begin = stage.now;
    let place = us.point(to, height_above(stage, above));
    stage.fly(place, 0.95);
    stage.moves(
        attacker,
        begin,
        Spot {
            depth: 2.9,
            right: -3.0,
        },
    );
    stage.attacks(attacker);
    let them = stage.them();
    let at = Spot {
        depth: stage.between(4.5, 6.5),
        right: stage.between(-2.0, 2.0),
    };
    let time = stage.between(0.95, 1.15);
    stage.saved(them, at, 0.8, time, &[]);
}

fn libero_blocks(stage: &mut Stage, fault: bool, margin: f64) {
    let them = stage.them();
    let libero = as_libero(stage, them, 1);
    let us = stage.us;
    let attacker = stage.brings_to_attack(us, From::Left);
    let hit = stage.now;
    let here = them.spot(stage.ball).right;
    // Beside the way of the ball.
    let right = here - 1.1;
    stage.stands(libero, Spot { depth: 1.5, right });
    let hands: Point = them.point(
        Spot { depth: 0.15, right },
        stage.scene.net_top + if fault { margin } else { -margin },
    );
    stage.jumps_to_block(libero, hit + 0.06, hands);
    stage.attacks(attacker);
    stage.event(hit + 0.06, Act::BlockAttempt { player: libero });
    let at = Spot {
        depth: stage.between(5.0, 7.0),
        right: here.signum() * stage.between(1.8, 3.0),
    };
    let time = stage.attack_time(them.point(at, 0.0));
    stage.saved(them, at, 0.8, time, &[libero]);
}
