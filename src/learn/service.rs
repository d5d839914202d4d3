//! How a service is made (12.4).

use super::court::{End, Foot, HALF_LENGTH, HALF_WIDTH};
use super::ruling::{Margin, Ruling};
use rules::Cause;

/// How the ball was put into play.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct ServiceExecution {
    /// Whether it left the hand or hands before it was hit.
    pub released: bool,
    /// How often it was tossed or released for this service.
    pub tosses: u8,
    /// Whether it was hit with one hand or a part of one arm.
    pub one_hand: bool,
}

/// Decides whether a service is hit in time. `after` is the time from the referee's whistle to the hit, in
/// seconds; below 0 the ball was hit before the whistle, and the service is made again (12.4.5). `allowed`
/// is what the rules of the match give, in seconds, 8 in the international text (12.4.4).
#[must_use]
pub fn service_time(team: End, after: f64, allowed: f64) -> Ruling {
    if after < 0.0 {
        return Ruling::replay("12.4.5", Margin::Seconds(-after));
    }
    if after > allowed {
        Ruling::fault(
            team,
            Cause::ServiceTime,
            "12.4.4",
            Margin::Seconds(after - allowed),
        )
    } else {
        Ruling::play_on("12.4.4", Margin::Seconds(after.min(allowed - after)))
    }
}

/// Decides on the server's feet at the hit, or at the take-off for it: they touch neither the court with
/// its end line nor the floor beside the service zone, which reaches back as far as the free zone does
/// (12.4.3, 1.4.2). Afterwards the server may land anywhere.
#[must_use]
pub fn service_foot(team: End, feet: &[Foot; 2]) -> Ruling {
    let inside = |foot: &Foot| {
        (foot.nearest() - HALF_LENGTH)
            .min(HALF_WIDTH - foot.rightmost())
            .min(HALF_WIDTH + foot.leftmost())
    };
    let inside = inside(&feet[0]).min(inside(&feet[1]));
    let margin = Margin::Metres(inside.abs());
    if inside < 0.0 {
        Ruling::fault(team, Cause::ServiceFoot, "12.4.3", margin)
    } else {
        Ruling::play_on("12.4.3", margin)
    }
}

/// Decides whether the ball is hit as it has to be: released, once, and with one hand or any part of the
/// arm (12.4.1, 12.4.2). Dribbling before is free.
#[must_use]
pub fn service_execution(team: End, service: ServiceExecution) -> Ruling {
    let fault = |rule| Ruling::fault(team, Cause::ServiceToss, rule, Margin::Seen);
    if !service.one_hand || !service.released {
        fault("12.4.1")
    } else if service.tosses > 1 {
        fault("12.4.2")
    } else {
        Ruling::play_on("12.4", Margin::Seen)
    }
}

/// Decides whether the player serves whose turn it is in the rotational order; numbers are shirts (7.7.1).
/// The fault is made when the ball is hit, not before.
#[must_use]
pub fn server_in_order(team: End, server: u8, due: u8) -> Ruling {
    if server == due {
        Ruling::play_on("7.7.1", Margin::Seen)
    } else {
        Ruling::fault(team, Cause::RotationFault, "7.7.1", Margin::Seen)
    }
}

/// Decides on a service that touches the net: it goes on if the ball crosses (10.2), else it is a fault as
/// soon as that is clear (12.6.2). Where it crosses, [`super::crossing`] decides.
#[must_use]
pub fn service_at_the_net(team: End, crosses: bool) -> Ruling {
    if crosses {
        Ruling::play_on("10.2", Margin::Seen)
    } else {
        Ruling::fault(team, Cause::ServiceNet, "12.6.2", Margin::Seen)
    }
}
