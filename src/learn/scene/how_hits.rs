//! Scenes about how the ball is played: four hits, double contact, catch, assisted hit.

use super::landings::blocked;
use super::rally::From;
use super::stage::{Meet, Stage};
use super::Act;
use crate::court::{Point, Spot};
use crate::hits::TouchKind;

impl Stage {
    /// A hit in the same action as the player's one before.
    fn once_more(&mut self, player: usize) {
        self.event(
            self.now,
            Act::Touch {
                player,
                kind: TouchKind::Hit,
                contact: 0.0,
                same_action: true,
                fingers: false,
                helped_by: None,
            },
        );
    }

    /// The ball is attacked from the left and saved by them: an ordinary end of a scene that goes on.
    pub fn attacked_and_saved(&mut self, attacker: usize) {
        self.attacks(attacker);
        let them = self.them();
        let at = Spot {
            depth: self.between(5.0, 7.0),
            right: self.between(-2.5, 2.5),
        };
        let time = self.attack_time(them.point(at, 0.0));
        self.saved(them, at, 0.8, time, &[]);
    }

    /// The set flies to the attacker on the left, who comes running. Gives the attacker.
    pub fn set_to_the_left(&mut self) -> usize {
        let us = self.us;
        let attacker = self.who(us, 4);
        let aim = Spot {
            depth: self.between(0.6, 0.9),
            right: -3.4,
        };
        let begin = self.now;
        let height = self.attack_height();
        self.fly(us.point(aim, height), 1.05);
        self.moves(
            attacker,
            begin,
            Spot {
                depth: 2.9,
                right: -3.0,
            },
        );
        attacker
    }

    /// Somebody who is not some others plays the ball with the forearms, in the middle of our court.
    fn played_on_by(&mut self, but: &[usize]) {
        let us = self.us;
        let aim = Spot {
            depth: self.between(3.4, 4.4),
            right: self.between(-2.5, -1.0),
        };
        let player = self.nearest(us, aim, but);
        self.fly(us.point(aim, 0.95), 1.15);
        self.meets(player, Meet::Dig);
        self.touch(player, TouchKind::Hit);
    }
}

pub(super) fn four_hits(stage: &mut Stage, fault: bool) {
    if fault {
        let passer = stage.passed();
        let setter = stage.setter(From::Left);
        stage.set_by(setter);
        let attacker = stage.who(stage.us, 4);
        stage.played_on_by(&[passer, setter, attacker]);
        let attacker = stage.set_to_the_left();
        stage.attacked_and_saved(attacker);
        return;
    }
    // A block, which is no hit, and three hits.
    let blocker = blocked(stage, From::Left);
    let them = stage.them();
    let at = Spot {
        depth: stage.between(4.0, 5.0),
        right: stage.between(-1.0, 1.0),
    };
    let first = stage.nearest(them, at, &[blocker]);
    let here = Spot {
        depth: at.depth + 0.8,
        ..at
    };
    stage.stands(first, here);
    stage.fly(them.point(at, 0.8), 0.75);
    stage.meets(first, Meet::Dig);
    stage.touch(first, TouchKind::Hit);
    let setter = stage.who(them, 3);
    let hands = Spot {
        depth: 1.0,
        right: 0.5,
    };
    stage.fly(them.point(hands, 2.2), 1.15);
    stage.meets(setter, Meet::Fingers);
    stage.touch(setter, TouchKind::Hit);
    let attacker = stage.who(them, 4);
    let aim = Spot {
        depth: 0.75,
        right: -3.3,
    };
    let height = stage.attack_height();
    let begin = stage.now;
    stage.fly(them.point(aim, height), 1.0);
    stage.moves(
        attacker,
        begin,
        Spot {
            depth: 2.8,
            right: -3.0,
        },
    );
    stage.attacks(attacker);
    let us = stage.us;
    let at = Spot {
        depth: stage.between(5.5, 7.0),
        right: stage.between(-2.0, 2.0),
    };
    let time = stage.attack_time(us.point(at, 0.0));
    stage.saved(us, at, 0.8, time, &[]);
}

/// The ball hops a little on somebody's hands or arms.
fn hop(stage: &mut Stage) {
    let to = Point {
        x: stage.ball.x + stage.between(-0.05, 0.05),
        y: stage.ball.y + stage.between(-0.12, 0.12),
        z: stage.ball.z + stage.between(0.06, 0.14),
    };
    let time = stage.between(0.14, 0.2);
    stage.fly(to, time);
}

pub(super) fn double_contact(stage: &mut Stage, fault: bool) {
    let passer = stage.passed();
    let setter = stage.setter(From::Left);
    if !fault {
        // Twice in one action, at the first hit of the team.
        hop(stage);
        stage.meets(passer, Meet::Dig);
        stage.once_more(passer);
    }
    stage.set_by(setter);
    if fault {
        hop(stage);
        stage.meets(setter, Meet::Fingers);
        stage.once_more(setter);
    }
    let attacker = stage.set_to_the_left();
    stage.attacked_and_saved(attacker);
}

pub(super) fn catch(stage: &mut Stage, fault: bool) {
    stage.passed();
    let setter = stage.setter(From::Left);
    let us = stage.us;
    let height = stage.scene.players[setter].height * super::body::share::REACH - 0.05;
    let aim = Spot {
        depth: 0.95,
        right: 0.9,
    };
    stage.fly(us.point(aim, height), 1.15);
    stage.meets(setter, Meet::Fingers);
    let contact = if fault {
        stage.between(0.28, 0.4)
    } else {
        stage.between(0.07, 0.1)
    };
    stage.touch_for(setter, TouchKind::Hit, contact);
    // A caught ball sinks before it is thrown.
    let to = us.point(aim, height - contact * 0.6);
    stage.carry(to, contact);
    stage.meets(setter, Meet::Fingers);
    let attacker = stage.set_to_the_left();
    stage.attacked_and_saved(attacker);
}

pub(super) fn assisted(stage: &mut Stage, fault: bool) {
    let us = stage.us;
    if !fault {
        // A team-mate holds the attacker back from the net.
        let attacker = stage.brings_to_attack(us, From::Left);
        stage.attacks(attacker);
        let mate = stage.who(us, 3);
        let hit = stage.now;
        let spot = us.spot(stage.ball);
        let beside = Spot {
            depth: 0.9,
            right: spot.right + 0.7,
        };
        stage.stands(mate, beside);
        let held = hit + 0.3;
        let trunk = Spot {
            depth: 0.55,
            right: spot.right + 0.1,
        };
        let place = us.point(trunk, 1.1);
        stage.hand_at(mate, held, 0, place);
        stage.event(
            held,
            Act::HeldBack {
                player: attacker,
                by: mate,
            },
        );
        let them = stage.them();
        let at = Spot {
            depth: stage.between(5.0, 7.0),
            right: stage.between(-2.5, 2.5),
        };
        let time = stage.attack_time(them.point(at, 0.0));
        stage.saved(them, at, 0.8, time, &[]);
        return;
    }
    stage.passed();
    let setter = stage.setter(From::Left);
    stage.set_by(setter);
    // The set is too high for the attacker, whom a team-mate lifts.
    let attacker = stage.who(us, 4);
    let mate = stage.who(us, 5);
    let aim = Spot {
        depth: 1.4,
        right: -2.8,
    };
    let height = stage.attack_height();
    let begin = stage.now;
    stage.fly(us.point(aim, height), 1.1);
    stage.moves(
        attacker,
        begin,
        Spot {
            depth: 2.6,
            right: -2.8,
        },
    );
    let take_off = 1.7;
    let at = stage.now;
    stage.meets(attacker, Meet::Attack { take_off });
    let behind = Spot {
        depth: 2.3,
        right: -2.9,
    };
    stage.moves(mate, at - 0.35, behind);
    stage.moves(mate, at + 0.4, behind);
    let hips = stage.scene.players[attacker].figure(at).hips;
    let hands = us.spot(hips);
    for (hand, aside) in [(0, -0.15), (1, 0.15)] {
        let place = us.point(
            Spot {
                depth: hands.depth + 0.1,
                right: hands.right + aside,
            },
            hips.z - 0.05,
        );
        stage.hand_at(mate, at, hand, place);
    }
    stage.event(
        at,
        Act::Touch {
            player: attacker,
            kind: TouchKind::Hit,
            contact: 0.0,
            same_action: false,
            fingers: false,
            helped_by: Some(mate),
        },
    );
    let them = stage.them();
    let to = Spot {
        depth: stage.between(5.0, 7.0),
        right: stage.between(-2.5, 2.5),
    };
    let time = stage.attack_time(them.point(to, 0.0));
    stage.saved(them, to, 0.8, time, &[]);
}
