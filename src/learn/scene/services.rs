//! Scenes at the service.

use super::body::{OUTER, TOE};
use super::serving::{Before, Serves, ORDINARY};
use super::stage::Stage;
use super::standing::HALF_BODY;
use super::Act;
use crate::court::{Foot, Spot, BALL_RADIUS, HALF_LENGTH, HALF_WIDTH};
use crate::positions::Pair;
use crate::service::ServiceExecution;

pub(super) fn time(stage: &mut Stage, fault: bool, margin: f64) {
    let allowed = stage.scene.service_seconds;
    let right = stage.between(-0.5, 3.0);
    stage.serves_so(Serves {
        right,
        after: allowed + if fault { margin } else { -margin },
        ..Serves::default()
    });
    stage.received();
}

pub(super) fn foot(stage: &mut Stage, fault: bool, margin: f64) {
    if stage.rng.u8(0..3) == 0 {
        // Beside the service zone.
        let edge = HALF_WIDTH - OUTER + if fault { margin } else { -margin };
        let right = if stage.rng.bool() { edge } else { -edge };
        stage.serves_so(Serves {
            behind: 0.6,
            right,
            ..Serves::default()
        });
    } else {
        stage.serves(if fault { -margin } else { margin });
    }
    stage.received();
}

/// Wrongly: tossed twice, hit with both hands, not let go of, from above or from below. Rightly: bounced before
/// it, or let go of and hit from below.
pub(super) fn toss(stage: &mut Stage, fault: bool) {
    let held = ServiceExecution {
        released: false,
        ..ORDINARY
    };
    let twice = ServiceExecution {
        tosses: 2,
        ..ORDINARY
    };
    let both = ServiceExecution {
        one_hand: false,
        ..ORDINARY
    };
    let (holds, bounces) = (Before::Holds, Before::Bounces);
    let (how, underhand, before) = if fault {
        stage.one_of(&[
            (twice, false, holds),
            (both, false, holds),
            (held, false, holds),
            (held, true, holds),
        ])
    } else {
        stage.one_of(&[(ORDINARY, false, bounces), (ORDINARY, true, holds)])
    };
    let right = stage.between(-0.5, 3.0);
    let after = stage.between(2.6, 3.2);
    stage.serves_so(Serves {
        right,
        after,
        how,
        underhand,
        before,
        ..Serves::default()
    });
    stage.received();
}

pub(super) fn into_net(stage: &mut Stage, fault: bool) {
    stage.serves(0.4);
    let (us, them) = (stage.us, stage.them());
    let right = us.spot(stage.ball).right * 0.6;
    let height = stage.scene.net_top;
    if fault {
        // Its surface comes to the plane.
        let net = Spot {
            depth: BALL_RADIUS,
            right,
        };
        let aim = us.point(net, height - stage.between(0.1, 0.4));
        stage.service_flies(aim);
        stage.event(stage.now, Act::Net);
        let down = Spot {
            depth: 0.7,
            right: right + 0.1,
        };
        stage.fly(us.point(down, BALL_RADIUS), 0.65);
        let patch = stage.patch();
        stage.lands(patch);
    } else {
        let net = Spot { depth: 0.06, right };
        let aim = us.point(net, height + BALL_RADIUS * 0.8);
        stage.service_flies(aim);
        stage.event(stage.now, Act::Net);
        let at = Spot {
            depth: stage.between(2.8, 3.6),
            right: -right + stage.between(-0.4, 0.4),
        };
        stage.saved(them, at, 0.6, 0.85, &[]);
    }
}

pub(super) fn out(stage: &mut Stage, fault: bool, margin: f64) {
    stage.serves(0.4);
    let them = stage.them();
    if fault {
        let patch = stage.patch();
        let aim = stage.near_a_line(them, patch + margin);
        stage.service_flies(aim);
        stage.lands(patch);
    } else {
        let at = Spot {
            depth: HALF_LENGTH + stage.between(0.3, 0.8),
            right: stage.between(-2.5, 2.5),
        };
        stage.received_at(at, BALL_RADIUS + margin);
    }
}

pub(super) fn winner(stage: &mut Stage, fault: bool, margin: f64) {
    stage.serves(0.4);
    let them = stage.them();
    if fault {
        let patch = stage.patch();
        let aim = stage.near_a_line(them, patch - margin);
        stage.service_flies(aim);
        stage.lands(patch);
    } else {
        let at = Spot {
            depth: stage.between(5.5, 8.0),
            right: stage.between(-2.8, 2.8),
        };
        stage.received_at(at, BALL_RADIUS + margin);
    }
}

/// Two of the server's team-mates jump in the line of sight, their hands high; the service is flat.
pub(super) fn screened(stage: &mut Stage, fault: bool, margin: f64) {
    let (us, them) = (stage.us, stage.them());
    let right = stage.between(0.5, 2.5);
    stage.serves_so(Serves {
        right,
        ..Serves::default()
    });
    let hit = stage.now;
    let line = us.spot(stage.ball).right;
    let receiver = stage.who(them, if line > 1.2 { 5 } else { 6 });
    let depth = stage.between(6.0, 6.6);
    // The receiver, the mate and the server in one line along the court.
    for at in [0.0, hit] {
        stage.moves(
            receiver,
            at,
            Spot {
                depth: depth + 0.5,
                right: -line,
            },
        );
    }
    let aside = HALF_BODY + if fault { -margin } else { margin };
    let aside = if stage.rng.bool() { aside } else { -aside };
    for (position, by) in [(3, aside), (2, aside + aside.signum() * 0.55)] {
        let mate = stage.who(us, position);
        let spot = Spot {
            depth: 0.9,
            right: line + by,
        };
        stage.moves(mate, 0.0, spot);
        let hands = us.point(spot, 3.3);
        stage.jumps_to_block(mate, hit, hands);
        // A jump on the spot, not at the net.
        for time in [hit - 0.26, hit, hit + 0.3] {
            let mut stance = stage.scene.players[mate].stance(time);
            let moved = stage.ready(mate, time, spot, 0.0);
            stance.feet = moved.feet;
            stage.scene.players[mate].at(stance);
        }
    }
    stage.received_at(
        Spot {
            depth,
            right: -line,
        },
        0.9,
    );
}

/// The receivers stand wrongly, or just rightly, in one pair.
pub(super) fn positions(stage: &mut Stage, fault: bool, margin: f64) {
    stage.serves(0.4);
    stand_in_a_pair(stage, fault, margin);
    stage.received();
}

/// Moves one of the receivers so that a pair stands rightly by so much, or wrongly.
pub(super) fn stand_in_a_pair(stage: &mut Stage, fault: bool, margin: f64) {
    let them = stage.them();
    let hit = stage.now;
    let slack = if fault { -margin } else { margin };
    let pair = stage.one_of(&[
        Pair::Depth { front: 2, back: 1 },
        Pair::Depth { front: 3, back: 6 },
        Pair::Depth { front: 4, back: 5 },
        Pair::Lateral { left: 4, right: 3 },
        Pair::Lateral { left: 3, right: 2 },
        Pair::Lateral { left: 5, right: 6 },
        Pair::Lateral { left: 6, right: 1 },
    ]);
    let extreme = |stage: &Stage, position: u8, of: fn(&Foot) -> f64| {
        let player = stage.who(them, position);
        let feet = stage.scene.players[player].planted(hit);
        [of(&feet[0]), of(&feet[1])]
    };
    let (moved, spot) = match pair {
        Pair::Depth { front, back } => {
            // Who is behind comes forward to beside the one before.
            let [a, b] = extreme(stage, front, Foot::nearest);
            let farthest = a.min(b) + slack;
            let before =
                super::body::middle(&stage.scene.players[stage.who(them, front)].stance(hit));
            let aside = if before.right > 0.5 { -0.9 } else { 0.9 };
            let spot = Spot {
                depth: farthest - TOE,
                right: before.right + aside,
            };
            (back, spot)
        }
        Pair::Lateral { left, right } => {
            let [a, b] = extreme(stage, left, Foot::leftmost);
            let rightmost = a.min(b) + slack;
            let here =
                super::body::middle(&stage.scene.players[stage.who(them, right)].stance(hit));
            let spot = Spot {
                depth: here.depth,
                right: rightmost - OUTER,
            };
            (right, spot)
        }
    };
    let player = stage.who(them, moved);
    for at in [0.0, hit] {
        stage.moves(player, at, spot);
    }
}

pub(super) fn rotation(stage: &mut Stage, fault: bool) {
    if !fault && stage.rng.u8(0..3) > 0 {
        // Somebody else stood there with the ball, and gives it to the right one (casebook 3.29).
        let from = stage.one_of(&[2, 6]);
        let right = stage.between(0.5, 3.0);
        let after = stage.between(4.2, 5.5);
        stage.serves_so(Serves {
            right,
            after,
            before: Before::Gets { from },
            ..Serves::default()
        });
        stage.received();
        return;
    }
    stage.serves(0.4);
    if fault {
        // It was somebody else's turn.
        let position = stage.one_of(&[2, 6]);
        let other = stage.who(stage.us, position);
        stage.scene.due = stage.scene.players[other].number;
    }
    stage.received();
}

pub(super) fn outside_court(stage: &mut Stage, fault: bool, margin: f64) {
    stage.serves(0.4);
    let hit = stage.now;
    let side = if stage.rng.bool() {
        stage.us
    } else {
        stage.them()
    };
    let beyond = if fault { margin } else { -margin };
    let (position, spot) = if stage.rng.bool() {
        // A foot over the side line.
        let aside = HALF_WIDTH - OUTER + beyond;
        let depth = stage.between(5.6, 6.4);
        if stage.rng.bool() || side == stage.us {
            (
                5,
                Spot {
                    depth,
                    right: -aside,
                },
            )
        } else {
            (
                1,
                Spot {
                    depth,
                    right: aside,
                },
            )
        }
    } else {
        let depth = HALF_LENGTH - TOE + beyond;
        (
            6,
            Spot {
                depth,
                right: stage.between(-0.6, 0.6),
            },
        )
    };
    let player = stage.who(side, position);
    for at in [0.0, hit] {
        stage.moves(player, at, spot);
    }
    stage.received();
}
