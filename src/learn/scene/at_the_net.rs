//! Scenes at and under the net: touching it, crossing the centre line, reaching over.

use super::body::{foot, Stance, TOE};
use super::rally::From;
use super::stage::{Meet, Stage};
use super::Act;
use crate::centre_line::BodyPart;
use crate::court::{Spot, BALL_RADIUS, CENTRE_LINE_HALF, HALF_WIDTH};
use crate::hits::TouchKind;

/// How long after the hit an attacker's hand comes down into the net, in seconds.
const HAND_DOWN: f64 = 0.14;
/// How long after the hit an attacker has landed, in seconds; as the stage moves one.
pub(super) const LANDED: f64 = 0.32;
/// The foot that comes over the line: the right one.
pub(super) const OVER: usize = 1;

impl Stage {
    /// The attack goes on: they save it.
    pub fn they_save(&mut self, but: &[usize]) {
        let them = self.them();
        let at = Spot {
            depth: self.between(5.0, 7.0),
            right: self.between(-2.5, 2.5),
        };
        let time = self.attack_time(them.point(at, 0.0));
        self.saved(them, at, 0.8, time, but);
    }

    /// A hand of a player comes to the net at a moment, so far to the right as its side sees it, and touches it.
    pub fn touches_net(&mut self, player: usize, at: f64, right: f64, in_action: bool, hair: bool) {
        let side = self.scene.players[player].side;
        let stance = self.scene.players[player].stance(at);
        let hand = usize::from(side.spot(stance.hands[1]).depth < side.spot(stance.hands[0]).depth);
        let height = self.scene.net_top - self.between(0.03, 0.2);
        let place = side.point(Spot { depth: 0.0, right }, height);
        self.hand_at(player, at, hand, place);
        self.event(
            at,
            Act::NetTouch {
                player,
                hand,
                in_action,
                hair_only: hair,
            },
        );
    }
}

impl Stage {
    /// An attacker lands at a moment with a foot over the centre line, so much of its heel still on the line or
    /// before it; below 0 it is so far beyond. Gives when the foot is drawn back.
    pub fn lands_over_line(&mut self, attacker: usize, at: f64, right: f64, still_on: f64) -> f64 {
        let here = Spot { depth: 0.25, right };
        let mut stance = self.ready(attacker, at, here, 0.6);
        // The heel is the part that has come least far.
        stance.feet[OVER] = foot(Spot {
            depth: still_on - CENTRE_LINE_HALF - TOE,
            right: right + 0.2,
        });
        let until = at + 0.25;
        self.scene.players[attacker].at(stance);
        self.scene.players[attacker].at(Stance {
            at: until,
            ..stance
        });
        self.moves(attacker, at + 0.7, Spot { depth: 0.7, right });
        let (player, foot) = (attacker, OVER);
        self.event(at, Act::FootDown { player, foot });
        until
    }

    /// An attacker who hit the ball at a moment comes down on the opponents' court with a hand, or falls on a
    /// knee there; nobody is hindered.
    pub fn comes_down(&mut self, attacker: usize, hit: f64, right: f64, part: BodyPart) {
        let side = self.scene.players[attacker].side;
        let down = hit + LANDED + 0.25;
        let depth = match part {
            BodyPart::Hand => 0.4,
            BodyPart::Other => 0.15,
        };
        let here = Spot { depth, right };
        let mut stance = self.ready(attacker, down, here, 1.0);
        match part {
            BodyPart::Hand => {
                stance.hands[1] = side.point(Spot { depth: -0.3, right }, 0.05);
            }
            BodyPart::Other => {}
        }
        self.scene.players[attacker].at(stance);
        self.moves(attacker, down + 0.5, Spot { depth: 0.4, right });
        let player = attacker;
        self.event(down, Act::BodyDown { player, part });
    }
}

pub(super) fn net_touch(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    let from = stage.one_of(&[From::Left, From::Right]);
    let attacker = stage.brings_to_attack(us, from);
    let hit = stage.now;
    let side = us.spot(stage.ball).right.signum();
    stage.attacks(attacker);
    let seen_only = !fault && stage.rng.bool();
    if seen_only {
        // After the landing, already on the way back; or nothing but hair.
        let hair = stage.rng.bool();
        let at = if hair { hit + HAND_DOWN } else { hit + 0.75 };
        let right = side * stage.between(2.6, 3.4);
        if !hair {
            let here = Spot {
                depth: 0.6,
                right: right + 0.2,
            };
            stage.moves(attacker, at, here);
        }
        stage.touches_net(attacker, at, right, hair, hair);
    } else {
        // Near the antenna, on this side of it or beyond.
        let right = side * (HALF_WIDTH - if fault { margin } else { -margin });
        stage.touches_net(attacker, hit + HAND_DOWN, right, true, false);
    }
    stage.they_save(&[]);
}

pub(super) fn under_net(stage: &mut Stage, fault: bool, margin: f64) {
    // A ball that is only partly through cannot be far from being so.
    let of_ball = stage.rng.u8(0..3) == 0 && (fault || margin < BALL_RADIUS - 0.01);
    if of_ball {
        ball_under(stage, fault, margin);
        return;
    }
    let us = stage.us;
    let attacker = stage.brings_to_attack(us, From::Left);
    let hit = stage.now;
    stage.attacks(attacker);
    let right = us.spot(stage.ball).right;
    if !fault && stage.rng.u8(0..4) == 0 {
        let part = stage.one_of(&[BodyPart::Hand, BodyPart::Other]);
        stage.comes_down(attacker, hit, right, part);
    } else {
        stage.lands_over_line(
            attacker,
            hit + LANDED,
            right,
            if fault { -margin } else { margin },
        );
    }
    stage.they_save(&[]);
}

/// A second hit that flies under the net.
fn ball_under(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    stage.passed();
    let second = stage.who(us, 3);
    let right = stage.between(-0.5, 1.2);
    let at = Spot { depth: 1.6, right };
    stage.moves(second, 0.3, Spot { depth: 2.4, right });
    stage.fly(us.point(at, 0.9), 1.1);
    stage.meets(second, Meet::Dig);
    stage.touch(second, TouchKind::Hit);
    if fault {
        let aim = Spot {
            depth: -BALL_RADIUS - margin,
            right: right + 0.2,
        };
        stage.fly(us.point(aim, BALL_RADIUS), 0.5);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        let aim = Spot {
            depth: -BALL_RADIUS + margin,
            right: right + 0.3,
        };
        let third = stage.who(us, 2);
        stage.moves(
            third,
            0.3,
            Spot {
                depth: 1.4,
                right: right + 1.6,
            },
        );
        stage.fly(us.point(aim, 0.5), 0.45);
        stage.meets(third, Meet::Dig);
        stage.touch(third, TouchKind::Hit);
        stage.up_again(us);
    }
}

pub(super) fn over_net(stage: &mut Stage, fault: bool, margin: f64) {
    let (us, them) = (stage.us, stage.them());
    let attacker = stage.who(us, 4);
    let blocker = stage.who(them, 2);
    let height = stage.attack_height();
    let aim = Spot {
        depth: if fault { 0.32 } else { 0.75 },
        right: -3.2,
    };
    stage.stands(
        attacker,
        Spot {
            depth: 2.8,
            right: -2.9,
        },
    );
    let start = Spot {
        depth: 0.6,
        right: -0.6,
    };
    stage.ball_from(us, start, 2.35);
    let place = us.point(aim, height);
    if fault {
        // The blocker is there before the attacker's swing.
        stage.fly_part(place, 0.85, 0.85 - margin);
        let touched = stage.now;
        let hands = stage.behind_the_ball(them);
        stage.jumps_to_block(blocker, touched, hands);
        stage.touch(blocker, TouchKind::Block);
        let (ball, now) = (stage.ball, stage.now);
        (stage.ball, stage.now) = (place, touched + margin);
        stage.meets(attacker, Meet::Attack { take_off: 0.9 });
        (stage.ball, stage.now) = (ball, now);
        let floor = Spot {
            depth: 2.2,
            right: us.spot(ball).right + 0.6,
        };
        stage.fly(us.point(floor, BALL_RADIUS), 0.7);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        // A soft attack; the block reaches over the net after it.
        stage.fly(place, 0.95);
        stage.attacks(attacker);
        let over = Spot {
            depth: stage.between(0.22, 0.3),
            right: -3.1,
        };
        stage.fly(us.point(over, stage.scene.net_top + 0.35), margin);
        let hands = stage.behind_the_ball(them);
        stage.jumps_to_block(blocker, stage.now, hands);
        stage.touch(blocker, TouchKind::Block);
        let at = Spot {
            depth: stage.between(2.6, 3.4),
            right: stage.between(-2.4, -1.6),
        };
        stage.saved(us, at, 0.7, 0.75, &[attacker]);
    }
}
