//! Hits of the left team.

use super::{Dial, Values};
use crate::court::End;
use crate::hits::{hits, Manner, Touch, TouchKind};
use crate::ruling::Ruling;

/// So many players can be given the ball; one choice more sends it across the net.
pub const PLAYERS: usize = 4;

const FIRST: Touch = Touch {
    by: End::Left,
    player: 0,
    kind: TouchKind::Hit,
    manner: Manner::Rebounds,
    with_last: false,
    same_action: false,
};

pub(super) fn catch_start() -> Values {
    Values::of(&[(Dial::Contact, 0.0)])
}

pub(super) fn seen(set: &Values) -> Ruling {
    let with = |manner| Touch { manner, ..FIRST };
    match set.choice(Dial::Contact) {
        0 => hits(&[with(Manner::Rebounds)]),
        1 => hits(&[with(Manner::Caught)]),
        // Both hold it above the net at the same moment.
        2 => hits(&[
            FIRST,
            Touch {
                by: End::Right,
                with_last: true,
                manner: Manner::Caught,
                ..FIRST
            },
        ]),
        _ => hits(&[with(Manner::Helped)]),
    }
}

fn row_start(hitters: [f64; 4]) -> Values {
    let [first, second, third, fourth] = hitters;
    Values::of(&[
        (Dial::Hitter(1), first),
        (Dial::Hitter(2), second),
        (Dial::Hitter(3), third),
        (Dial::Hitter(4), fourth),
        (Dial::OneAction, 0.0),
        (Dial::OwnBlock, 0.0),
    ])
}

const ACROSS: f64 = PLAYERS as f64;

pub(super) fn double_start() -> Values {
    row_start([0.0, 1.0, 1.0, ACROSS])
}

pub(super) fn four_start() -> Values {
    row_start([0.0, 1.0, 2.0, 3.0])
}

pub(super) fn row(set: &Values) -> Ruling {
    let mut touches = Vec::new();
    if set.is(Dial::OwnBlock) {
        // The player at the net, who may be the first to hit as well.
        touches.push(Touch {
            kind: TouchKind::Block,
            player: 2,
            ..FIRST
        });
    }
    for contact in 1..=4 {
        let player = set.choice(Dial::Hitter(contact));
        if player >= PLAYERS {
            break;
        }
        touches.push(Touch {
            player: player as u8,
            same_action: contact == 2 && set.is(Dial::OneAction),
            ..FIRST
        });
    }
    hits(&touches)
}
