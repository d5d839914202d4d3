//! What no scene may show: a ball that flies through something, a touch from afar, a player who runs too fast.

use super::body::{middle, Player};
use super::{Act, Scene};
use crate::court::{Point, BALL_RADIUS};

/// How finely the way of the ball is looked at, in seconds: at 30 metres a second that is 15 cm, less than the
/// ball.
const STEP: f64 = 0.005;
/// From the top of the net to its lower edge, in metres (2.2).
const NET_DEPTH: f64 = 1.0;
/// Half the length of a net of the least length (2.2), in metres.
const NET_HALF: f64 = 4.75;
/// Half as thick as a trunk and as an arm, in metres: our own choice, thinner than real ones, so that only
/// what would be seen counts.
const TRUNK: f64 = 0.12;
const ARM: f64 = 0.03;
/// How long before and after a touch the ball may be near whoever touches it, in seconds. Our own choice.
const NEAR_TOUCH: f64 = 0.35;
/// From the surface of the ball to a hand or the trunk that touches it, in metres. Our own choice.
const TOUCHING: f64 = 0.15;
/// Faster nobody runs on nine metres, in metres a second. Our own choice.
const FASTEST: f64 = 7.0;

/// Why a scene cannot have been.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unsound {
    /// The ball flies through the net.
    Net,
    /// Through the floor.
    Floor,
    /// Through a player.
    Player,
    /// A touch by somebody who is not at the ball.
    FarTouch,
    /// A player runs too fast.
    TooFast,
    /// The pieces of the ball's way do not join.
    Gap,
}

/// The first thing that cannot have been; none in a good scene.
#[must_use]
pub fn unsound(scene: &Scene) -> Option<Unsound> {
    gap(scene)
        .or_else(|| scene.players.iter().find_map(too_fast))
        .or_else(|| far_touch(scene))
        .or_else(|| flies_through(scene))
}

fn gap(scene: &Scene) -> Option<Unsound> {
    let joined = |pair: &[super::Leg]| {
        pair[0].end().at.distance(pair[1].begin().at) < 1e-3
            && (pair[0].until - pair[1].from).abs() < 1e-6
    };
    let known = scene.ball.iter().all(|leg| {
        let at = leg.end().at;
        at.x.is_finite() && at.y.is_finite() && at.z.is_finite()
    });
    let whole = known && scene.ball.windows(2).all(joined);
    (!whole).then_some(Unsound::Gap)
}

fn too_fast(player: &Player) -> Option<Unsound> {
    player.stances().windows(2).find_map(|pair| {
        let (a, b) = (middle(&pair[0]), middle(&pair[1]));
        let way = (a.depth - b.depth).hypot(a.right - b.right);
        // A step takes no time worth speaking of.
        (way > 0.6 && way > FASTEST * (pair[1].at - pair[0].at)).then_some(Unsound::TooFast)
    })
}

/// Who touches the ball, and when.
fn touches(scene: &Scene) -> Vec<(f64, usize)> {
    let of = |event: &super::Event| match event.act {
        Act::Touch {
            player, contact, ..
        } => Some((event.at + contact / 2.0, player)),
        Act::ServiceHit { player, .. } | Act::HandOver { player, .. } => Some((event.at, player)),
        _ => None,
    };
    scene.events.iter().filter_map(of).collect()
}

fn far_touch(scene: &Scene) -> Option<Unsound> {
    touches(scene).into_iter().find_map(|(at, player)| {
        let body = scene.players[player].figure(at);
        let ball = scene.ball_at(at);
        let trunk = from_segment(ball, body.hips, body.head);
        let away = body.hands.iter().map(|hand| hand.distance(ball));
        let nearest = away.fold(trunk, f64::min);
        (nearest > BALL_RADIUS + TOUCHING).then_some(Unsound::FarTouch)
    })
}

fn flies_through(scene: &Scene) -> Option<Unsound> {
    let touches = touches(scene);
    let net_at = |time: f64| {
        scene
            .events
            .iter()
            .any(|e| e.act == Act::Net && (e.at - time).abs() < 0.1)
    };
    let mut time = 0.0;
    while time < scene.until() {
        let ball = scene.ball_at(time);
        if ball.z < BALL_RADIUS - 0.002 {
            return Some(Unsound::Floor);
        }
        let beside = ball.y.abs() > NET_HALF + BALL_RADIUS;
        let above = ball.z > scene.net_top + BALL_RADIUS - 0.01;
        let below = ball.z < scene.net_top - NET_DEPTH - BALL_RADIUS;
        if ball.x.abs() < BALL_RADIUS * 0.9 && !beside && !above && !below && !net_at(time) {
            return Some(Unsound::Net);
        }
        for (index, player) in scene.players.iter().enumerate() {
            let near_touch =
                |(at, who): &(f64, usize)| *who == index && (at - time).abs() < NEAR_TOUCH;
            if holds(scene, time) == Some(index) || touches.iter().any(near_touch) {
                continue;
            }
            if meets(player, time, ball) {
                return Some(Unsound::Player);
            }
        }
        time += STEP;
    }
    None
}

/// Who holds the ball before the service hit, or plays with it: the server, or who gives it to the server.
fn holds(scene: &Scene, time: f64) -> Option<usize> {
    let later = scene.events.iter().filter(|e| e.at > time);
    let mut next = later.filter_map(|e| match e.act {
        Act::ServiceHit { player, .. } | Act::HandOver { player, .. } => Some(player),
        _ => None,
    });
    next.next()
}

/// Whether the ball is inside a body.
fn meets(player: &Player, time: f64, ball: Point) -> bool {
    let here = player.side.point(middle(&player.stance(time)), 0.0);
    if (here.x - ball.x).abs() > 1.2 || (here.y - ball.y).abs() > 1.2 {
        return false;
    }
    let body = player.figure(time);
    let feet = body.feet[0].on_the_way(body.feet[1], 0.5);
    let neck = body.shoulders[0].on_the_way(body.shoulders[1], 0.5);
    let thick = |a, b, radius: f64| from_segment(ball, a, b) < BALL_RADIUS + radius;
    let arm = |i: usize| {
        thick(body.shoulders[i], body.elbows[i], ARM) || thick(body.elbows[i], body.hands[i], ARM)
    };
    thick(feet, body.hips, TRUNK)
        || thick(body.hips, neck, TRUNK)
        || thick(neck, body.head, TRUNK)
        || arm(0)
        || arm(1)
}

/// How far a point is from the straight piece between two others.
pub(super) fn from_segment(point: Point, a: Point, b: Point) -> f64 {
    let (dx, dy, dz) = (b.x - a.x, b.y - a.y, b.z - a.z);
    let square = dx * dx + dy * dy + dz * dz;
    let along = (point.x - a.x) * dx + (point.y - a.y) * dy + (point.z - a.z) * dz;
    let share = if square > 0.0 {
        (along / square).clamp(0.0, 1.0)
    } else {
        0.0
    };
    point.distance(a.on_the_way(b, share))
}
