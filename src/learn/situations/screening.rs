//! The left team serves; one player of the right team wants to see it.

use super::{Dial, Values};
use crate::court::{End, Point};
use crate::flight::{Flight, Velocity};
use crate::ruling::Ruling;
use crate::screen::{screen, Body, Screen};

/// How far from the axis of the centre line the service is hit, in metres: our own choice.
pub const HIT_DEPTH: f64 = 9.2;
/// How high, in metres: our own choice.
pub const HIT_HEIGHT: f64 = 2.4;
/// A player's half width, and the height of eyes that wait for a service, in metres: our own choice.
const BROAD: f64 = 0.25;
const EYES: f64 = 1.35;
/// How far a hand reaches above the head, in metres: our own choice.
const HAND: f64 = 0.5;

/// A flat and a high service, in metres a second: fast enough to come over the net (a test says so).
const FLAT: Velocity = Velocity {
    x: 17.0,
    y: 0.0,
    z: 3.2,
};
const HIGH: Velocity = Velocity {
    x: 11.0,
    y: 0.0,
    z: 7.0,
};

pub(super) fn start() -> Values {
    Values::of(&[
        (Dial::PlayerDepth(1), 1.0),
        (Dial::PlayerRight(1), 0.35),
        (Dial::PlayerDepth(2), 2.8),
        (Dial::PlayerRight(2), -0.3),
        (Dial::PlayerDepth(3), 6.5),
        (Dial::PlayerRight(3), 0.0),
        (Dial::Tall, 1.8),
        (Dial::HandsUp, 0.0),
        (Dial::ServiceFlight, 0.0),
    ])
}

fn at(set: &Values, end: End, player: u8) -> Point {
    let sign = end.sign();
    Point {
        x: sign * set.get(Dial::PlayerDepth(player)),
        y: sign * set.get(Dial::PlayerRight(player)),
        z: 0.0,
    }
}

/// Places of the ball on its way from the hit, up to shortly before the plane of the net.
#[must_use]
pub fn service_path(set: &Values) -> Vec<Point> {
    let hit = Point {
        x: -HIT_DEPTH,
        y: 0.0,
        z: HIT_HEIGHT,
    };
    let flies = Flight::of_ball(
        hit,
        if set.is(Dial::ServiceFlight) {
            HIGH
        } else {
            FLAT
        },
    );
    let until = flies.to_net(3.0).map_or(1.0, |(time, _)| time);
    let points = 12;
    let mut flight = flies;
    (1..points)
        .map(|_| {
            flight = flight.after(until / f64::from(points));
            flight.at
        })
        .collect()
}

/// What the receiver sees as it is set: players 1 and 2 are of the serving team, player 3 receives.
#[must_use]
pub fn receiver_view(set: &Values) -> Screen {
    let hands_up = set.is(Dial::HandsUp);
    let body = |player| Body {
        at: at(set, End::Left, player),
        radius: BROAD,
        height: set.get(Dial::Tall) + if hands_up { HAND } else { 0.0 },
        hands_up,
    };
    Screen {
        eye: Point {
            z: EYES,
            ..at(set, End::Right, 3)
        },
        hit: Point {
            x: -HIT_DEPTH,
            y: 0.0,
            z: HIT_HEIGHT,
        },
        path: service_path(set),
        players: vec![body(1), body(2)],
    }
}

pub(super) fn decide(set: &Values) -> Ruling {
    screen(End::Left, &receiver_view(set))
}
