//! Players: where their feet and hands are at each moment.

use crate::attack::Row;
use crate::court::{End, Foot, Point, Spot};

/// A player of a scene.
#[derive(Clone, Debug, PartialEq)]
pub struct Player {
    /// The side of the net.
    pub side: End,
    /// The position in the rotational order, 1 to 6 (7.4.1).
    pub position: u8,
    /// The number on the shirt.
    pub number: u8,
    /// What the player is at this moment.
    pub row: Row,
    /// How tall, in metres.
    pub height: f64,
    /// Moments at which the body is known, in the order of time; never none.
    pub(super) stances: Vec<Stance>,
}

/// A body at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Stance {
    /// When, in seconds.
    pub at: f64,
    /// The feet, the left one first; in the air what they would touch straight below.
    pub feet: [Foot; 2],
    /// How high above the floor they are, in metres.
    pub lift: f64,
    /// How low the player crouches: 0 upright, 1 as low as can be.
    pub crouch: f64,
    /// Where the hands are, the left one first.
    pub hands: [Point; 2],
}

/// How far apart the middles of the feet are, in metres. Our own choice.
const STRIDE: f64 = 0.34;
/// Half the length of a shoe, in metres. Our own choice.
const HALF_SHOE: f64 = 0.14;
/// Half the width of a shoe, in metres. Our own choice.
const HALF_WIDTH: f64 = 0.05;
/// From the middle of a foot that points to the net to its part nearest to the net, in metres.
pub(super) const TOE: f64 = HALF_SHOE + HALF_WIDTH;
/// From the middle of a player to the outer edge of a foot, in metres.
pub(super) const OUTER: f64 = STRIDE / 2.0 + HALF_WIDTH;

/// A foot that points to the net, with its middle there.
pub(super) fn foot(middle: Spot) -> Foot {
    let along = |by: f64| Spot {
        depth: middle.depth + by,
        right: middle.right,
    };
    Foot {
        heel: along(HALF_SHOE),
        toe: along(-HALF_SHOE),
        half_width: HALF_WIDTH,
    }
}

/// Two feet that point to the net, the player's middle there.
pub(super) fn feet(middle: Spot) -> [Foot; 2] {
    [-STRIDE / 2.0, STRIDE / 2.0].map(|aside| {
        foot(Spot {
            depth: middle.depth,
            right: middle.right + aside,
        })
    })
}

/// Shares of a height, as common proportions of a body: from memory.
pub(super) mod share {
    /// The hips of somebody who stands upright.
    pub const HIPS: f64 = 0.50;
    /// The shoulders.
    pub const SHOULDERS: f64 = 0.82;
    /// The middle of the head.
    pub const HEAD: f64 = 0.93;
    /// Half the height of the head.
    pub const HEAD_RADIUS: f64 = 0.07;
    /// As high as the hand of a stretched arm.
    pub const REACH: f64 = 1.28;
    /// By how much of the height the deepest crouch lowers the hips and all that is above them.
    pub const CROUCH: f64 = 0.30;
}

impl Player {
    /// The body at a moment, between two known ones on a smooth way; a jump is a parabola.
    #[must_use]
    pub fn stance(&self, time: f64) -> Stance {
        let known = &self.stances;
        let next = known.partition_point(|stance| stance.at <= time);
        if next == 0 {
            return known[0];
        }
        let (a, Some(b)) = (&known[next - 1], known.get(next)) else {
            return known[next - 1];
        };
        let t = (time - a.at) / (b.at - a.at);
        let smooth = t * t * (3.0 - 2.0 * t);
        // Up it slows down, down it gets faster.
        let flown = if b.lift > a.lift {
            t * (2.0 - t)
        } else {
            t * t
        };
        let mix = |a: f64, b: f64| a + (b - a) * smooth;
        let spot = |a: Spot, b: Spot| Spot {
            depth: mix(a.depth, b.depth),
            right: mix(a.right, b.right),
        };
        Stance {
            at: time,
            feet: std::array::from_fn(|i| Foot {
                heel: spot(a.feet[i].heel, b.feet[i].heel),
                toe: spot(a.feet[i].toe, b.feet[i].toe),
                half_width: a.feet[i].half_width,
            }),
            lift: a.lift + (b.lift - a.lift) * flown,
            crouch: mix(a.crouch, b.crouch),
            hands: std::array::from_fn(|i| a.hands[i].on_the_way(b.hands[i], smooth)),
        }
    }

    /// The feet where they touch the floor, or where they last touched it before this moment (7.4.3).
    #[must_use]
    pub fn planted(&self, time: f64) -> [Foot; 2] {
        let now = self.stance(time);
        if now.lift <= 0.0 {
            return now.feet;
        }
        let before = self.stances.iter().rev();
        let mut on_the_floor = before.filter(|s| s.at <= time && s.lift <= 0.0);
        on_the_floor.next().unwrap_or(&self.stances[0]).feet
    }

    /// How high the highest part of the body is at a moment, in metres.
    #[must_use]
    pub fn highest(&self, time: f64) -> f64 {
        let stance = self.stance(time);
        let head = self.top_of_head(&stance);
        stance.hands.iter().map(|hand| hand.z).fold(head, f64::max)
    }

    pub(super) fn top_of_head(&self, stance: &Stance) -> f64 {
        stance.lift + self.height * (1.0 - share::CROUCH * stance.crouch)
    }

    /// Where the eyes are.
    #[must_use]
    pub fn eyes(&self, time: f64) -> Point {
        let stance = self.stance(time);
        let spot = middle(&stance);
        self.side.point(
            spot,
            self.top_of_head(&stance) - self.height * share::HEAD_RADIUS,
        )
    }

    /// Takes a known moment in, at its place in the order of time; one at the same time is replaced.
    pub(super) fn at(&mut self, stance: Stance) {
        let place = self.stances.partition_point(|s| s.at < stance.at);
        match self.stances.get_mut(place) {
            Some(same) if (same.at - stance.at).abs() < 1e-9 => *same = stance,
            _ => self.stances.insert(place, stance),
        }
    }

    pub(super) fn stances(&self) -> &[Stance] {
        &self.stances
    }
}

/// The middle of a player on the floor.
pub(super) fn middle(stance: &Stance) -> Spot {
    let [a, b] = stance.feet.map(|foot| foot.middle());
    Spot {
        depth: (a.depth + b.depth) / 2.0,
        right: (a.right + b.right) / 2.0,
    }
}
