//! Screening: players of the serving team who hide the service (12.5).

use super::court::{End, Point};
use super::ruling::{Margin, Ruling};
use rules::{Cause, Edition};

/// A player who stands, as an upright cylinder.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Where, on the floor.
    pub at: Point,
    /// Half as wide as the player, in metres.
    pub radius: f64,
    /// As high as the highest part of the player, in metres.
    pub height: f64,
    /// Whether a hand is above the head.
    pub hands_up: bool,
}

/// What a receiver sees of a service.
#[derive(Clone, Debug, PartialEq)]
pub struct Screen {
    /// The eyes of the receiver.
    pub eye: Point,
    /// The middle of the ball when it is hit.
    pub hit: Point,
    /// Places of its middle from there to the plane of the net.
    pub path: Vec<Point>,
    /// Everybody of the serving team but the server.
    pub players: Vec<Body>,
}

impl Screen {
    /// By how many metres the line from the eye to a point passes all players; below 0 one hides it.
    #[must_use]
    pub fn clearance(&self, point: Point) -> f64 {
        self.players
            .iter()
            .map(|body| passes(self.eye, point, body))
            .fold(f64::INFINITY, f64::min)
    }
}

/// By how much a line of sight passes a body: beside it, or above it.
fn passes(eye: Point, point: Point, body: &Body) -> f64 {
    let (dx, dy) = (point.x - eye.x, point.y - eye.y);
    let length = dx.hypot(dy);
    if length == 0.0 {
        return f64::INFINITY;
    }
    let along = ((body.at.x - eye.x) * dx + (body.at.y - eye.y) * dy) / length;
    let nearest = along.clamp(0.0, length);
    let (x, y) = (eye.x + dx * nearest / length, eye.y + dy * nearest / length);
    let beside = (body.at.x - x).hypot(body.at.y - y) - body.radius;
    let above = eye.z + (point.z - eye.z) * nearest / length - body.height;
    beside.max(above)
}

/// Decides whether the serving team screens: both the hit and the whole path of the ball to the net are
/// hidden from a receiver; where either is seen there is no screen (12.5.2). It decides for one receiver.
///
/// Since the edition of 2025 nobody of the serving team may hold a hand above the head until the ball has
/// passed the net (12.5.3). What follows from hands alone the text does not say, so that a hand hides what
/// it hides and no more.
#[must_use]
pub fn screen(serving: End, seen: &Screen) -> Ruling {
    let best_of_path = seen
        .path
        .iter()
        .map(|point| seen.clearance(*point))
        .fold(f64::NEG_INFINITY, f64::max);
    let best = seen.clearance(seen.hit).max(best_of_path);
    let margin = Margin::Metres(best.abs());
    if best < 0.0 {
        Ruling::fault(serving, Cause::Screen, "12.5.2", margin)
    } else {
        Ruling::play_on("12.5.2", margin)
    }
}

impl Screen {
    /// Whether somebody is to be told to take the hands down (12.5.3).
    #[must_use]
    pub fn has_hands_up(&self, edition: Edition) -> bool {
        edition == Edition::E2025 && self.players.iter().any(|body| body.hands_up)
    }
}
