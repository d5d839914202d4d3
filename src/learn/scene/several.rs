//! Scenes in which more than one thing counts: double faults, one fault before another, what prevails at the
//! service.

use super::rally::From;
use super::services::stand_in_a_pair;
use super::serving::Serves;
use super::stage::Stage;
use crate::court::Spot;
use crate::order::AT_ONCE;

impl Stage {
    /// Their blocker jumps beside the way of an attack from the left and touches the net at a moment.
    fn blocker_in_net(&mut self, at: f64, right: f64) {
        let them = self.them();
        let blocker = self.who(them, 2);
        let hands = them.point(Spot { depth: 0.1, right }, self.scene.net_top + 0.15);
        self.jumps_to_block(blocker, at - 0.12, hands);
        self.touches_net(blocker, at, right, true, false);
    }
}

pub(super) fn double_fault(stage: &mut Stage) {
    let us = stage.us;
    let attacker = stage.brings_to_attack(us, From::Left);
    let hit = stage.now;
    let right = us.spot(stage.ball).right;
    stage.attacks(attacker);
    let first = hit + 0.14;
    stage.touches_net(attacker, first, right - 0.3, true, false);
    let apart = stage.between(-0.8, 0.8) * AT_ONCE;
    let beside = stage.between(0.8, 1.0);
    stage.blocker_in_net(first + apart, -right + beside);
    stage.they_save(&[stage.who(stage.them(), 2)]);
}

pub(super) fn first_of_two(stage: &mut Stage, margin: f64) {
    let us = stage.us;
    let them = stage.them();
    let attacker = stage.brings_to_attack(us, From::Left);
    let right = us.spot(stage.ball).right;
    stage.attacks(attacker);
    let patch = stage.patch();
    let beyond = stage.between(0.15, 0.5);
    let aim = stage.near_a_line(them, patch + beyond);
    let time = stage.attack_time(aim);
    stage.fly(aim, time);
    let landed = stage.now;
    stage.lands(patch);
    // The blocker is in the net before the ball is out.
    let beside = stage.between(0.8, 1.0);
    stage.blocker_in_net(landed - AT_ONCE - margin, -right + beside);
}

pub(super) fn server_before_receivers(stage: &mut Stage, margin: f64) {
    stage.serves(-margin);
    stand_in_a_pair(stage, true, margin);
    stage.received();
}

pub(super) fn receivers_before_service(stage: &mut Stage, margin: f64) {
    stage.serves(0.4);
    stand_in_a_pair(stage, true, margin);
    let them = stage.them();
    let patch = stage.patch();
    let beyond = stage.between(0.15, 0.5);
    let aim = stage.near_a_line(them, patch + beyond);
    stage.service_flies(aim);
    stage.lands(patch);
}

pub(super) fn before_the_whistle(stage: &mut Stage, margin: f64) {
    let right = stage.between(-0.5, 3.0);
    stage.serves_so(Serves {
        right,
        whistle: 1.6,
        after: -margin,
        ..Serves::default()
    });
    stage.received();
}
