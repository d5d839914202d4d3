//! Players and the net: touching it (11.3, 11.4.4) and reaching over it (11.1, 11.4.1).

use super::court::{End, HALF_WIDTH};
use super::ruling::{Margin, Ruling};
use rules::Cause;

/// A player touches the net, an antenna or a post.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct NetContact {
    /// Whose player.
    pub by: End,
    /// Where along the net, from its middle, in metres.
    pub aside: f64,
    /// Whether the player was playing the ball, trying to, or taking off or landing for it (11.3.1).
    pub in_action: bool,
    /// Whether only the ball drove the net against the player (11.3.3).
    pub driven_by_ball: bool,
    /// Whether the net held the player up, gave an advantage, or hindered an opponent (11.4.4).
    pub interferes: bool,
    /// Whether nothing but hair touched it (FIVB Casebook 2024, 3.27).
    pub hair_only: bool,
}

/// Decides on a touch of the net: between the antennae, in the action of playing the ball, it is a fault
/// (11.3.1); elsewhere and otherwise only where it interferes with play (11.3.2, 11.4.4).
#[must_use]
pub fn net_contact(touch: NetContact) -> Ruling {
    if touch.interferes {
        return Ruling::fault(touch.by, Cause::NetTouch, "11.4.4", Margin::Seen);
    }
    if touch.driven_by_ball {
        return Ruling::play_on("11.3.3", Margin::Seen);
    }
    if touch.hair_only || !touch.in_action {
        return Ruling::play_on("11.3.1", Margin::Seen);
    }
    // The antennae stand at the outer edges of the side bands, above the outer edges of the side lines.
    let inside = HALF_WIDTH - touch.aside.abs();
    let margin = Margin::Metres(inside.abs());
    if inside >= 0.0 {
        Ruling::fault(touch.by, Cause::NetTouch, "11.3.1", margin)
    } else {
        Ruling::play_on("11.3.2", margin)
    }
}

/// A hand touches the ball near the plane of the net.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HandOver {
    /// Whose hand.
    pub by: End,
    /// How far the hand is beyond the plane of the net at the touch, in metres; below 0 on the own side.
    pub beyond: f64,
    /// How long after the opponents' attack hit it touches the ball, in seconds; below 0 before it. None
    /// where they make none, and could not have reached the ball either.
    pub after_attack: Option<f64>,
    /// Whether it is a block; only blocking hands may be there at all (11.1.1, 14.3).
    pub blocks: bool,
}

/// Decides on a ball that is touched above the opponents' court: not before their attack hit, at the same
/// moment is no fault (11.4.1, 14.3; FIVB Casebook 2024, 3.37). A hand that follows through after an own
/// hit on the own side is no touch (11.1.2).
#[must_use]
pub fn hand_over_net(hand: HandOver) -> Ruling {
    if hand.beyond <= 0.0 {
        return Ruling::play_on("11.1.2", Margin::Metres(-hand.beyond));
    }
    if !hand.blocks {
        return Ruling::fault(
            hand.by,
            Cause::OverNet,
            "13.3.1",
            Margin::Metres(hand.beyond),
        );
    }
    match hand.after_attack {
        Some(after) if after < 0.0 => {
            Ruling::fault(hand.by, Cause::OverNet, "11.4.1", Margin::Seconds(-after))
        }
        Some(after) => Ruling::play_on("14.3", Margin::Seconds(after)),
        None => Ruling::play_on("14.3", Margin::Seen),
    }
}
