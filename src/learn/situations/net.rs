//! At, over and under the net. The player of the left court does it, but over the net, where the block of
//! the right court does.

use super::{Decided, Dial, Reading, Values};
use crate::centre_line::{body_on_opponents_court, foot_over_centre_line, BodyPart};
use crate::court::{End, Foot, Spot};
use crate::crossing::below_the_net;
use crate::net_contact::{hand_over_net, net_contact, HandOver, NetContact};
use crate::ruling::Ruling;
use rules::UnderNet;

/// How long a shoe is, in metres: about size 42, our own choice.
pub const SHOE_LENGTH: f64 = 0.28;
/// Half as wide, in metres: our own choice.
pub const SHOE_HALF_WIDTH: f64 = 0.05;

/// A shoe that points to the net, its heel at a place; what touches the floor is as long as the shoe.
#[must_use]
pub fn shoe(heel_depth: f64, right: f64) -> Foot {
    let from_edge = SHOE_HALF_WIDTH;
    Foot {
        heel: Spot {
            depth: heel_depth - from_edge,
            right,
        },
        toe: Spot {
            depth: heel_depth - SHOE_LENGTH + from_edge,
            right,
        },
        half_width: SHOE_HALF_WIDTH,
    }
}

pub(super) fn touch_start() -> Values {
    Values::of(&[(Dial::AlongNet, 3.4), (Dial::NetContact, 0.0)])
}

pub(super) fn touch(set: &Values) -> Ruling {
    // Playing the ball, turned away, driven by the ball, held up or hindering, hair.
    let how = set.choice(Dial::NetContact);
    net_contact(NetContact {
        by: End::Left,
        aside: set.get(Dial::AlongNet),
        in_action: how != 1,
        driven_by_ball: how == 2,
        interferes: how == 3,
        hair_only: how == 4,
    })
}

pub(super) fn over_start() -> Values {
    Values::of(&[
        (Dial::HandBeyond, 0.25),
        (Dial::AfterAttack, -0.08),
        (Dial::HandDoes, 0.0),
        (Dial::Opponents, 0.0),
    ])
}

pub(super) fn over(set: &Values) -> Ruling {
    hand_over_net(HandOver {
        by: End::Right,
        beyond: set.get(Dial::HandBeyond),
        after_attack: (!set.is(Dial::Opponents)).then(|| set.get(Dial::AfterAttack)),
        blocks: !set.is(Dial::HandDoes),
    })
}

pub(super) fn foot_start() -> Values {
    Values::of(&[(Dial::Heel, 0.06), (Dial::Hinders, 0.0)])
}

pub(super) fn foot(set: &Values) -> Vec<Decided> {
    let foot = shoe(set.get(Dial::Heel), 0.0);
    let ruling = foot_over_centre_line(End::Left, foot, set.is(Dial::Hinders));
    // The stricter form lets feet do what the international text lets them do.
    [Reading::Standard, Reading::Junior]
        .map(|reading| Decided { reading, ruling })
        .into()
}

pub(super) fn body_start() -> Values {
    Values::of(&[(Dial::BodyPart, 1.0), (Dial::Hinders, 0.0)])
}

pub(super) fn body(set: &Values) -> Vec<Decided> {
    let part = [BodyPart::Hand, BodyPart::Other][set.choice(Dial::BodyPart)];
    let by = |under_net| body_on_opponents_court(End::Left, part, set.is(Dial::Hinders), under_net);
    vec![
        Decided {
            reading: Reading::Standard,
            ruling: by(UnderNet::Standard),
        },
        Decided {
            reading: Reading::Junior,
            ruling: by(UnderNet::Junior),
        },
    ]
}

pub(super) fn under_start() -> Values {
    Values::of(&[(Dial::BallBeyond, -0.02)])
}

pub(super) fn under(set: &Values) -> Ruling {
    below_the_net(End::Left, set.get(Dial::BallBeyond))
}
