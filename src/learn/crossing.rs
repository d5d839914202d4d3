//! Whether the ball crosses the net as it may (8.4.3 to 8.4.5, 10.1).

use super::court::{End, BALL_RADIUS, HALF_WIDTH};
use super::ruling::{Margin, Ruling};
use rules::{Cause, Edition};

/// Which contact sent the ball on its way.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TeamHit {
    /// The service.
    Service,
    /// The first hit of a team.
    First,
    /// The second.
    Second,
    /// The third.
    Third,
}

/// A ball at the moment when its middle is in the plane of the net, above or beside the net.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Crossing {
    /// The side that it comes from.
    pub from: End,
    /// Its middle, from the middle of the net, in metres.
    pub aside: f64,
    /// Which contact sent it.
    pub hit: TeamHit,
    /// Whether it touches an antenna; somebody has to have seen that.
    pub touches_antenna: bool,
    /// Whether it flies towards the opponents' free zone, and not above their court.
    pub towards_free_zone: bool,
}

/// Decides whether a ball crosses inside the crossing space, which ends at the inner sides of the
/// antennae (10.1.1). Outside it, only the ball of a first hit that flies towards the free zone may be
/// played back (10.1.2); before the edition of 2025 that of a second hit as well. It does not decide
/// whether the player who brings it back does so rightly.
#[must_use]
pub fn crossing(ball: Crossing, edition: Edition) -> Ruling {
    if ball.touches_antenna {
        return Ruling::fault(ball.from, Cause::Antenna, "8.4.3", Margin::Seen);
    }
    let over = ball.aside.abs() + BALL_RADIUS - HALF_WIDTH;
    let margin = Margin::Metres(over.abs());
    if over <= 0.0 {
        return Ruling::play_on("10.1.1", margin);
    }
    match ball.hit {
        TeamHit::Service => Ruling::fault(ball.from, Cause::ServiceOut, "12.6.2", margin),
        TeamHit::First if ball.towards_free_zone => Ruling::play_on("10.1.2", margin),
        TeamHit::Second if ball.towards_free_zone && edition == Edition::E2021 => {
            Ruling::play_on("10.1.2", margin)
        }
        TeamHit::Second | TeamHit::Third if edition == Edition::E2025 => {
            Ruling::fault(ball.from, Cause::OutsideCrossing, "10.1.2.3", margin)
        }
        TeamHit::First | TeamHit::Second | TeamHit::Third => {
            Ruling::fault(ball.from, Cause::OutsideCrossing, "8.4.4", margin)
        }
    }
}

/// Decides on a ball in the space under the net. It is in play until it has passed the plane of the net
/// with all of itself (8.4.5, 10.1.3). `beyond` is how far its middle is on the other side, in metres.
#[must_use]
pub fn below_the_net(from: End, beyond: f64) -> Ruling {
    let past = beyond - BALL_RADIUS;
    let margin = Margin::Metres(past.abs());
    if past > 0.0 {
        Ruling::fault(from, Cause::UnderNet, "8.4.5", margin)
    } else {
        Ruling::play_on("10.1.3", margin)
    }
}
