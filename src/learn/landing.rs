//! Ball in or out by its contact with the floor (8.3, 8.4.1).

use super::court::{End, Point, HALF_LENGTH, HALF_WIDTH};
use super::ruling::{Margin, Ruling};
use rules::Cause;

/// How a ball touched the floor.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FloorContact {
    /// The middle of what touched.
    pub at: Point,
    /// The radius of the largest area that touched at any moment, in metres: a ball is pressed flat,
    /// and that counts (8.3).
    pub patch: f64,
}

/// Who touched the ball last before it touched the floor, and how.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LastTouch {
    /// Whose player.
    pub by: End,
    /// How.
    pub kind: LastTouchKind,
}

/// How the ball was touched last.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LastTouchKind {
    /// By the server.
    Service,
    /// Sent to the opponents.
    Attack,
    /// By a block.
    Block,
    /// By a player who received or defended.
    Defence,
}

/// Decides where a ball has landed. It does not decide whether something else ended the rally before.
///
/// In, the rally is lost by the side on whose court it lies. Out, by the side that touched it last; shown
/// as touched where a block or a defender let it fly out on their own side, as out otherwise (FIVB
/// Refereeing Guidelines 2024, rule 28, point 11).
#[must_use]
pub fn landing(contact: FloorContact, last: LastTouch) -> Ruling {
    let beyond = [
        contact.at.x.abs() - HALF_LENGTH,
        contact.at.y.abs() - HALF_WIDTH,
    ];
    let outside = beyond[0].max(0.0).hypot(beyond[1].max(0.0));
    let landed = End::of(contact.at.x);
    if outside <= contact.patch {
        // From the edge of what touched to the outer edge of the line.
        let depth = if outside > 0.0 {
            -outside
        } else {
            -beyond[0].max(beyond[1])
        };
        return Ruling::fault(
            landed,
            if last.kind == LastTouchKind::Service && last.by != landed {
                Cause::ServiceWinner
            } else {
                Cause::BallIn
            },
            "8.3",
            Margin::Metres(contact.patch + depth),
        );
    }
    let cause = match last.kind {
        LastTouchKind::Service => Cause::ServiceOut,
        LastTouchKind::Attack => Cause::BallOut,
        LastTouchKind::Block | LastTouchKind::Defence if last.by == landed => Cause::BallTouched,
        LastTouchKind::Block | LastTouchKind::Defence => Cause::BallOut,
    };
    Ruling::fault(
        last.by,
        cause,
        "8.4.1",
        Margin::Metres(outside - contact.patch),
    )
}

/// Decides on a ball that is played so close to the floor: in play until it touches it (8.3, 8.4.1). `gap` is
/// from its lowest part to the floor at the touch, in metres; where it touches the floor [`landing`] decides.
#[must_use]
pub fn above_the_floor(gap: f64) -> Ruling {
    Ruling::play_on("8.3", Margin::Metres(gap.max(0.0)))
}
