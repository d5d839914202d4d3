//! Under the net (11.2, 11.4.2, 11.4.3).

use super::court::{End, Foot, CENTRE_LINE_HALF};
use super::ruling::{Margin, Ruling};
use rules::{Cause, UnderNet};

/// A part of the body above the feet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BodyPart {
    /// A hand.
    Hand,
    /// Anything else.
    Other,
}

/// Decides on a foot that touches the opponents' court. It may, while some part of it touches the centre
/// line or is straight above it, and nobody is hindered (11.2.2.1); completely beyond it is a fault even
/// where nobody is hindered (11.4.3). Whether somebody was hindered is for the referee to see.
#[must_use]
pub fn foot_over_centre_line(own: End, foot: Foot, hinders: bool) -> Ruling {
    // Of the foot, what has come least far across.
    let past = -foot.farthest() - CENTRE_LINE_HALF;
    let margin = Margin::Metres(past.abs());
    if past > 0.0 {
        Ruling::fault(own, Cause::UnderNet, "11.4.3", margin)
    } else if hinders && foot.nearest() < -CENTRE_LINE_HALF {
        Ruling::fault(own, Cause::UnderNet, "11.2.2.1", Margin::Seen)
    } else {
        Ruling::play_on("11.2.2.1", margin)
    }
}

/// Decides on another part of the body that touches the opponents' court. It may where nobody is hindered
/// (11.2.2.2). The stricter form for juniors lets only feet and hands touch it: summaries of school
/// regulations, no published text of the federation.
#[must_use]
pub fn body_on_opponents_court(
    own: End,
    part: BodyPart,
    hinders: bool,
    under_net: UnderNet,
) -> Ruling {
    match (hinders, under_net, part) {
        (true, _, _) => Ruling::fault(own, Cause::UnderNet, "11.2.2.2", Margin::Seen),
        (false, UnderNet::Junior, BodyPart::Other) => {
            Ruling::fault(own, Cause::UnderNet, "school", Margin::Seen)
        }
        (false, UnderNet::Junior, BodyPart::Hand) | (false, UnderNet::Standard, _) => {
            Ruling::play_on("11.2.2.2", Margin::Seen)
        }
    }
}
