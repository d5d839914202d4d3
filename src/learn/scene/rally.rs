//! The parts that most rallies are staged from: a pass, a set, an attack, a block, a save.

use super::body::{feet, share, Stance};
use super::stage::{Meet, Stage};
use super::Act;
use crate::court::{End, Point, Spot, BALL_RADIUS};
use crate::flight::{Flight, Velocity};
use crate::hits::TouchKind;

/// From where a ball is attacked, as the attackers see it.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum From {
    /// Near the left antenna.
    Left,
    /// In the middle.
    Middle,
    /// Near the right antenna.
    Right,
}

impl From {
    /// How far from the middle of the net to the right.
    const fn right(self) -> f64 {
        match self {
            From::Left => -3.4,
            From::Middle => 0.2,
            From::Right => 3.3,
        }
    }

    /// Whose attack it is.
    const fn position(self) -> u8 {
        match self {
            From::Left => 4,
            From::Middle => 3,
            From::Right => 2,
        }
    }
}

impl Stage {
    /// The height at which a ball is attacked.
    pub fn attack_height(&self) -> f64 {
        self.scene.net_top + 0.5
    }

    /// A ball comes over the net to us and is passed to the net: the first hit. Gives who passed.
    pub fn passed(&mut self) -> usize {
        let right = self.between(-2.6, 2.6);
        let start = Spot {
            depth: 1.4,
            right: right * 0.3,
        };
        self.ball_from(self.us, start, self.scene.net_top + 0.8);
        let aim = Spot {
            depth: self.between(5.6, 6.4),
            right,
        };
        let passer = self.nearest(self.us, aim, &[]);
        self.fly(self.us.point(aim, 0.85), 0.8);
        self.meets(passer, Meet::Dig);
        self.touch(passer, TouchKind::Hit);
        passer
    }

    /// The ball flies to the setter, who is not some others, and is set: the second hit. Gives who set.
    pub fn set_by(&mut self, setter: usize) {
        let height = self.scene.players[setter].height * share::REACH - 0.05;
        let aim = Spot {
            depth: 0.95,
            right: 0.9,
        };
        let time = self.between(1.1, 1.25);
        self.fly(self.us.point(aim, height), time);
        self.meets(setter, Meet::Fingers);
        self.touch(setter, TouchKind::Hit);
    }

    /// The setter of an attack from there: who does not attack.
    pub fn setter(&self, from: From) -> usize {
        let position = if from == From::Right { 3 } else { 2 };
        self.who(self.us, position)
    }

    /// The set is in the air from the beginning, on the side of the attackers, and comes to this place.
    pub fn set_in_the_air(&mut self, side: End, aim: Spot, height: f64) {
        let start = Spot {
            depth: 0.8,
            right: if aim.right.abs() < 1.0 { 2.2 } else { 0.6 },
        };
        self.ball_from(side, start, 2.4);
        let time = self.between(1.0, 1.15);
        self.fly(side.point(aim, height), time);
    }

    /// The ball comes to an attacker of a side, at an ordinary place; either after a pass and a set or, for a
    /// shorter scene, with the set in the air. Gives the attacker; the ball is where it will be hit.
    pub fn brings_to_attack(&mut self, side: End, from: From) -> usize {
        let attacker = self.who(side, from.position());
        let aim = Spot {
            depth: self.between(0.6, 0.9),
            right: from.right() + self.between(-0.2, 0.2),
        };
        let run_up = Spot {
            depth: 2.9,
            right: aim.right * 0.9,
        };
        let height = self.attack_height();
        if side == self.us && self.rng.bool() {
            self.passed();
            let setter = self.setter(from);
            self.set_by(setter);
            let time = self.between(0.95, 1.1);
            let begin = self.now;
            self.fly(side.point(aim, height), time);
            self.moves(attacker, begin, run_up);
        } else {
            self.stands(attacker, run_up);
            self.set_in_the_air(side, aim, height);
        }
        attacker
    }

    /// Somebody attacks the ball here and now from an ordinary take-off.
    pub fn attacks(&mut self, attacker: usize) {
        let side = self.scene.players[attacker].side;
        let depth = side.spot(self.ball).depth;
        let take_off = depth + 0.55;
        self.attacks_from(attacker, take_off);
    }

    /// Somebody attacks the ball here and now, the nearest part of the feet so far from the centre line.
    pub fn attacks_from(&mut self, attacker: usize, take_off: f64) {
        self.meets(attacker, Meet::Attack { take_off });
        self.touch(attacker, TouchKind::Hit);
    }

    /// The time that a ball needs to a place at an ordinary speed of attack.
    pub fn attack_time(&mut self, aim: Point) -> f64 {
        let speed = self.between(10.5, 14.0);
        self.ball.distance(aim) / speed
    }

    /// A side saves the ball that comes to this place of its court, so high above the floor, and it flies up
    /// again inside the court. Gives who saved.
    pub fn saved(
        &mut self,
        side: End,
        at: Spot,
        height: f64,
        seconds: f64,
        but: &[usize],
    ) -> usize {
        let saver = self.nearest(side, at, but);
        // Near enough to be there.
        let here = Spot {
            depth: at.depth + self.between(0.6, 1.2),
            right: at.right + self.between(-0.8, 0.8),
        };
        self.fly(side.point(at, height), seconds);
        let begin = self.scene.players[saver].stance(0.0).at;
        if self
            .scene
            .events
            .iter()
            .all(|e| !matches!(e.act, Act::ServiceHit { .. }))
        {
            let stance = self.ready(saver, begin, here, 0.4);
            self.scene.players[saver].at(stance);
        }
        self.meets(saver, Meet::Dig);
        self.touch(saver, TouchKind::Hit);
        self.up_again(side);
        saver
    }

    /// The ball flies up from here to the middle of a side's court: play goes on.
    pub fn up_again(&mut self, side: End) {
        let aim = Spot {
            depth: self.between(2.4, 3.2),
            right: self.between(-0.8, 1.2),
        };
        self.fly(side.point(aim, 2.6), 1.05);
    }

    /// Somebody jumps at the net for a block, the hands there at this moment.
    pub fn jumps_to_block(&mut self, player: usize, at: f64, hands: Point) {
        let side = self.scene.players[player].side;
        let spot = Spot {
            depth: 0.5,
            right: side.spot(hands).right,
        };
        let reach = self.scene.players[player].height * share::REACH;
        let hand = |aside: f64| {
            let there = side.spot(hands);
            side.point(
                Spot {
                    right: there.right + aside,
                    ..there
                },
                hands.z,
            )
        };
        let before = self.ready(player, at - 0.26, spot, 0.6);
        let after = self.ready(player, at + 0.3, spot, 0.4);
        let top = Stance {
            at,
            feet: feet(spot),
            lift: (hands.z - reach).max(0.0),
            crouch: 0.0,
            hands: [hand(-0.12), hand(0.12)],
        };
        for stance in [before, top, after] {
            self.scene.players[player].at(stance);
        }
    }

    /// The hands of a blocker behind the ball, as the blocker sees it.
    pub fn behind_the_ball(&self, blockers: End) -> Point {
        let ball = blockers.spot(self.ball);
        blockers.point(
            Spot {
                depth: ball.depth + BALL_RADIUS * 0.8,
                ..ball
            },
            self.ball.z - 0.02,
        )
    }

    /// A hand of a player is at a place at a moment; all else is as it was going to be.
    pub fn hand_at(&mut self, player: usize, at: f64, hand: usize, place: Point) {
        let mut stance = self.scene.players[player].stance(at);
        stance.hands[hand] = place;
        self.scene.players[player].at(stance);
    }

    /// The ball flies on the way that would bring it to a place in so long, but only for a part of that time.
    pub fn fly_part(&mut self, aim: Point, whole: f64, part: f64) {
        let launch = Flight::towards(self.ball, aim, whole);
        let Velocity { x, y, z } = launch.velocity;
        self.drift(Velocity { x, y, z }, part);
    }
}
