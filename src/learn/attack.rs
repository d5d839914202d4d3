//! Attack hits (13).

use super::court::{End, ATTACK_LINE, BALL_RADIUS};
use super::ruling::{Margin, Ruling};
use rules::Cause;

/// What a player is at this moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Row {
    /// Of the front row.
    Front,
    /// Of the back row.
    Back,
    /// The acting libero.
    Libero,
}

/// What the attacked ball was before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Attacked {
    /// The opponents' service.
    Service,
    /// A pass of the own libero with the fingers of raised hands, made inside the front zone.
    LiberoFingerPass,
    /// Any other ball.
    Other,
}

/// An attack hit at the moment of contact.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Attack {
    /// Whose.
    pub by: End,
    /// Who.
    pub row: Row,
    /// What.
    pub ball: Attacked,
    /// How far the nearest part of the take-off feet is from the axis of the centre line, in metres.
    pub take_off: f64,
    /// How far the middle of the ball is from the plane of the net, in metres; below 0 beyond it.
    pub ball_depth: f64,
    /// How high the middle of the ball is, in metres.
    pub ball_height: f64,
    /// How high the top of the net is, in metres.
    pub net_top: f64,
    /// Whether the ball has passed the net with all of itself or an opponent has touched it (13.1.3).
    pub completed: bool,
}

impl Attack {
    /// By how much all of the ball is above the top of the net, in metres.
    fn above(&self) -> f64 {
        self.ball_height - BALL_RADIUS - self.net_top
    }
}

/// Decides on an attack hit: in the opponents' space (13.3.1), on the service (13.3.4), by a libero
/// (13.3.5), on a libero's finger pass (13.3.6), from the back row (13.3.3). It does not decide whether the
/// ball was played well, nor where it lands (13.3.2).
#[must_use]
pub fn attack(hit: Attack) -> Ruling {
    // Behind the plane with all of itself the ball is in the other space.
    let beyond = -hit.ball_depth - BALL_RADIUS;
    if beyond > 0.0 {
        return Ruling::fault(hit.by, Cause::OverNet, "13.3.1", Margin::Metres(beyond));
    }
    let above = hit.above();
    // What makes it a fault: each by how many metres it is so; all of them have to be.
    let fault = |rule, cause, reasons: &[f64]| {
        let least = reasons.iter().copied().fold(f64::INFINITY, f64::min);
        let margin = Margin::Metres(least.abs());
        if least > 0.0 {
            Ruling::fault(hit.by, cause, rule, margin)
        } else {
            Ruling::play_on(rule, margin)
        }
    };
    if !hit.completed {
        return Ruling::play_on("13.1.3", Margin::Seen);
    }
    match (hit.ball, hit.row) {
        (_, Row::Libero) => fault("13.3.5", Cause::LiberoFault, &[above]),
        (Attacked::Service, Row::Front | Row::Back) => fault(
            "13.3.4",
            Cause::AttackFault,
            &[above, ATTACK_LINE - hit.ball_depth],
        ),
        (Attacked::LiberoFingerPass, Row::Front | Row::Back) => {
            fault("13.3.6", Cause::LiberoFault, &[above])
        }
        (Attacked::Other, Row::Back) => fault(
            "13.3.3",
            Cause::AttackFault,
            &[above, ATTACK_LINE - hit.take_off],
        ),
        (Attacked::Other, Row::Front) => Ruling::play_on("13.2.1", Margin::Seen),
    }
}
