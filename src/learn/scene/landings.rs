//! Scenes about where the ball comes down and where it crosses the net.

use super::rally::From;
use super::stage::{Meet, Stage};
use super::Act;
use crate::court::{End, Point, Spot, BALL_RADIUS, HALF_LENGTH, HALF_WIDTH};
use crate::flight::Velocity;
use crate::hits::TouchKind;

impl Stage {
    /// A place on the floor of a side near one of its lines, its middle so far beyond the outer edge.
    pub fn near_a_line(&mut self, side: End, beyond: f64) -> Point {
        let spot = if self.rng.bool() {
            Spot {
                depth: HALF_LENGTH + beyond,
                right: self.between(-3.4, 3.4),
            }
        } else {
            let edge = HALF_WIDTH + beyond;
            Spot {
                depth: self.between(4.0, 8.0),
                right: if self.rng.bool() { edge } else { -edge },
            }
        };
        side.point(spot, BALL_RADIUS)
    }

    /// A place inside a side's court where somebody is not far.
    fn inside(&mut self) -> Spot {
        Spot {
            depth: self.between(4.5, 7.5),
            right: self.between(-3.5, 3.5),
        }
    }

    fn any(&mut self) -> From {
        self.one_of(&[From::Left, From::Middle, From::Right])
    }
}

pub(super) fn ball_in(stage: &mut Stage, fault: bool, margin: f64) {
    let from = stage.any();
    let attacker = stage.brings_to_attack(stage.us, from);
    stage.attacks(attacker);
    let them = stage.them();
    if fault {
        let patch = stage.patch();
        let aim = stage.near_a_line(them, patch - margin);
        let time = stage.attack_time(aim);
        stage.fly(aim, time);
        stage.lands(patch);
    } else {
        let at = stage.inside();
        let time = stage.attack_time(them.point(at, 0.0));
        stage.saved(them, at, BALL_RADIUS + margin, time, &[]);
    }
}

pub(super) fn ball_out(stage: &mut Stage, fault: bool, margin: f64) {
    let from = stage.any();
    let attacker = stage.brings_to_attack(stage.us, from);
    stage.attacks(attacker);
    let them = stage.them();
    if fault {
        let patch = stage.patch();
        let aim = stage.near_a_line(them, patch + margin);
        let time = stage.attack_time(aim);
        stage.fly(aim, time);
        stage.lands(patch);
    } else {
        let at = Spot {
            depth: HALF_LENGTH + stage.between(0.4, 1.0),
            right: stage.between(-3.0, 3.0),
        };
        let time = stage.attack_time(them.point(at, 0.0));
        stage.saved(them, at, BALL_RADIUS + margin, time, &[]);
    }
}

/// The ball comes to a block of theirs, close above the net, and is touched. Gives the blocker.
pub(super) fn blocked(stage: &mut Stage, from: From) -> usize {
    let attacker = stage.brings_to_attack(stage.us, from);
    stage.attacks(attacker);
    let them = stage.them();
    let position = match from {
        From::Left => 2,
        From::Middle => 3,
        From::Right => 4,
    };
    let blocker = stage.who(them, position);
    let ball = stage.us.spot(stage.ball);
    let meets = Spot {
        depth: -0.14,
        right: ball.right,
    };
    let aim = stage.us.point(meets, stage.scene.net_top + 0.3);
    let time = stage.ball.distance(aim) / 11.0;
    stage.fly(aim, time);
    let hands = stage.behind_the_ball(them);
    stage.jumps_to_block(blocker, stage.now, hands);
    stage.touch(blocker, TouchKind::Block);
    blocker
}

pub(super) fn ball_touched(stage: &mut Stage, fault: bool, margin: f64) {
    let from = stage.any();
    let blocker = blocked(stage, from);
    let them = stage.them();
    if fault {
        let patch = stage.patch();
        let aim = stage.near_a_line(them, patch + margin);
        let time = stage.ball.distance(aim) / 7.0;
        stage.fly(aim, time);
        stage.lands(patch);
    } else {
        let here = them.spot(stage.ball);
        let at = Spot {
            depth: stage.between(4.5, 7.0),
            right: here.right.signum() * (HALF_WIDTH + stage.between(0.3, 0.9)),
        };
        let time = stage.ball.distance(them.point(at, 0.0)) / 6.5;
        stage.saved(them, at, BALL_RADIUS + margin, time, &[blocker]);
    }
}

pub(super) fn antenna(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    let left = stage.rng.bool();
    let side = if left { -1.0 } else { 1.0 };
    stage.passed();
    let from = if left { From::Left } else { From::Right };
    let setter = stage.setter(from);
    stage.set_by(setter);
    let them = stage.them();
    let depth = stage.between(0.6, 0.9);
    let plane = if fault {
        HALF_WIDTH + stage.between(-0.06, 0.06)
    } else {
        HALF_WIDTH - BALL_RADIUS - margin
    };
    // Back from where it is to get to.
    let end = Spot {
        depth: -stage.between(4.5, 6.5),
        right: side * stage.between(2.8, 4.2),
    };
    let share = depth / (depth - end.depth);
    let right = (side * plane - end.right * share) / (1.0 - share);
    let height = stage.attack_height();
    let attacker = stage.who(us, if left { 4 } else { 2 });
    let run_up = Spot {
        depth: 2.9,
        right: right * 0.85,
    };
    let begin = stage.now;
    stage.fly(us.point(Spot { depth, right }, height), 1.05);
    stage.moves(attacker, begin, run_up);
    stage.attacks(attacker);
    if fault {
        let net = Spot {
            depth: 0.0,
            right: side * plane,
        };
        let aim = us.point(net, stage.scene.net_top + stage.between(0.3, 0.5));
        let time = stage.ball.distance(aim) / 9.0;
        stage.fly(aim, time);
        stage.event(stage.now, Act::Plane);
        // The antenna gives way and takes most of the speed.
        let Some(before) = stage.scene.ball.last().map(|leg| leg.end().velocity) else {
            return;
        };
        let after = Velocity {
            x: before.x * 0.3,
            y: side * us_sign(us) * 1.2,
            z: before.z * 0.5,
        };
        stage.drift(after, 0.55);
    } else {
        let at = Spot {
            depth: -end.depth,
            right: -end.right,
        };
        let time = stage.attack_time(them.point(at, 0.0));
        stage.saved(them, at, 0.8, time, &[]);
    }
}

/// The direction of a side's right hand along [`Point::y`].
fn us_sign(us: End) -> f64 {
    us.point(
        Spot {
            depth: 0.0,
            right: 1.0,
        },
        0.0,
    )
    .y
}

pub(super) fn outside_crossing(stage: &mut Stage, fault: bool, margin: f64) {
    let us = stage.us;
    let them = stage.them();
    let side = if stage.rng.bool() { -1.0 } else { 1.0 };
    let passer = stage.passed();
    let setter = stage.setter(From::Left);
    // A set that goes wrong, far from the net, so that the third hit is a high one.
    let plane = HALF_WIDTH - BALL_RADIUS + if fault { margin } else { -margin };
    let depth = stage.between(3.4, 4.4);
    let end = Spot {
        depth: -stage.between(4.0, 6.0),
        right: side * stage.between(3.2, 4.2),
    };
    let share = depth / (depth - end.depth);
    let right = (side * plane - end.right * share) / (1.0 - share);
    stage.set_by(setter);
    let third = stage.nearest(us, Spot { depth, right }, &[passer, setter]);
    stage.fly(us.point(Spot { depth, right }, 1.0), 1.1);
    stage.meets(third, Meet::Dig);
    stage.touch(third, TouchKind::Hit);
    let at = Spot {
        depth: -end.depth,
        right: -end.right,
    };
    let high = stage.between(1.65, 1.85);
    if fault {
        stage.fly(them.point(at, BALL_RADIUS), high);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        stage.saved(them, at, 0.8, high, &[]);
    }
}
