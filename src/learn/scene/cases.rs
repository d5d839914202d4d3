//! Scenes of cases that are rare on a court: a service that is blocked, an opponent hindered under the net, and
//! what some school rules forbid there.

use super::at_the_net::{LANDED, OVER};
use super::rally::From;
use super::stage::{Meet, Stage};
use super::Act;
use crate::centre_line::BodyPart;
use crate::court::{Spot, BALL_RADIUS};
use crate::hits::TouchKind;
use rules::UnderNet;

/// A receiver of the front row jumps at the net against the service, and touches it or does not.
pub(super) fn service_block(stage: &mut Stage, fault: bool) {
    let (us, them) = (stage.us, stage.them());
    stage.serves(0.4);
    let hit = stage.now;
    let position = stage.one_of(&[3, 2]);
    let blocker = stage.who(them, position);
    let home = super::body::middle(&stage.scene.players[blocker].stance(hit)).right;
    let right = -home.clamp(-0.6, 1.8);
    // Nobody leaves their place before the hit.
    stage.stays(blocker, 0.0, hit);
    if fault {
        let meets = Spot {
            depth: -0.14,
            right,
        };
        let aim = us.point(meets, stage.scene.net_top + stage.between(0.3, 0.4));
        stage.service_flies(aim);
        let hands = stage.behind_the_ball(them);
        stage.jumps_to_block(blocker, stage.now, hands);
        stage.touch(blocker, TouchKind::Block);
        let down = Spot {
            depth: stage.between(1.8, 2.6),
            right: right + stage.between(-0.8, 0.8),
        };
        stage.fly(us.point(down, BALL_RADIUS), 0.7);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        let at = Spot {
            depth: stage.between(5.8, 7.0),
            right: stage.between(-2.0, 2.0),
        };
        let tried = hit + stage.between(0.55, 0.65);
        let beside = Spot {
            depth: 0.15,
            right: -right,
        };
        let hands = them.point(beside, stage.scene.net_top + stage.between(0.1, 0.2));
        stage.jumps_to_block(blocker, tried, hands);
        stage.event(tried, Act::BlockAttempt { player: blocker });
        stage.received_at(at, 0.8);
    }
}

/// An attacker tips the ball over and lands with a foot partly over the centre line. An opponent on the way to
/// the ball comes against it, and stumbles or plays on.
pub(super) fn hindrance(stage: &mut Stage, fault: bool, margin: f64) {
    let (us, them) = (stage.us, stage.them());
    let attacker = stage.brings_to_attack(us, From::Left);
    let opponent = stage.who(them, 2);
    let hit = stage.now;
    stage.attacks(attacker);
    let right = us.spot(stage.ball).right;
    let landing = hit + LANDED;
    stage.lands_over_line(attacker, landing, right, margin);
    // Beside the foot, as the opponent sees it.
    let foot = Spot {
        depth: 0.5,
        right: -right - 0.5,
    };
    let contact = landing + stage.between(0.16, 0.22);
    let start = Spot {
        depth: 1.1,
        right: foot.right - 1.0,
    };
    for at in [0.0, hit] {
        stage.moves(opponent, at, start);
    }
    stage.moves(opponent, contact, foot);
    stage.event(
        contact,
        Act::Contact {
            player: attacker,
            foot: OVER,
            with: opponent,
            hinders: fault,
        },
    );
    let falls = Spot {
        depth: stage.between(0.7, 0.9),
        right: foot.right + stage.between(1.0, 1.15),
    };
    if fault {
        // Down on the floor, and up again only when the ball is lost.
        let down = stage.ready(opponent, contact + 0.2, foot, 1.0);
        stage.scene.players[opponent].at(down);
        stage.stays(opponent, contact + 0.2, contact + 0.8);
        stage.fly(them.point(falls, BALL_RADIUS), 1.05);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        stage.fly(them.point(falls, 0.5), 1.0);
        stage.meets(opponent, Meet::Dig);
        stage.touch(opponent, TouchKind::Hit);
        stage.up_again(them);
    }
}

/// Where only feet and hands may touch the other court, an attacker falls on it with a knee, or with a hand.
pub(super) fn junior_under_net(stage: &mut Stage, fault: bool) {
    stage.scene.under_net = UnderNet::Junior;
    let us = stage.us;
    let attacker = stage.brings_to_attack(us, From::Left);
    let hit = stage.now;
    stage.attacks(attacker);
    let right = us.spot(stage.ball).right;
    let part = if fault {
        BodyPart::Other
    } else {
        BodyPart::Hand
    };
    stage.comes_down(attacker, hit, right, part);
    stage.they_save(&[]);
}
