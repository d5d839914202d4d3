//! The joints of a body, for whoever draws it and for what the ball must not fly through.

use super::body::{middle, share, Player};
use crate::court::{Point, Spot};

/// A body as points in the hall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figure {
    /// The feet, the player's left one first.
    pub feet: [Point; 2],
    /// The knees.
    pub knees: [Point; 2],
    /// The hips.
    pub hips: Point,
    /// The shoulders.
    pub shoulders: [Point; 2],
    /// The elbows.
    pub elbows: [Point; 2],
    /// The hands.
    pub hands: [Point; 2],
    /// The middle of the head.
    pub head: Point,
    /// Half the height of the head, in metres.
    pub head_radius: f64,
}

impl Player {
    /// The joints at a moment.
    #[must_use]
    pub fn figure(&self, time: f64) -> Figure {
        let stance = self.stance(time);
        let here = middle(&stance);
        let down = self.height * share::CROUCH * stance.crouch;
        let up = |share: f64| stance.lift + self.height * share - down;
        // Who crouches bends forward, to the net.
        let leaning = |by: f64| Spot {
            depth: here.depth - by * stance.crouch,
            right: here.right,
        };
        let hips = self
            .side
            .point(here, up(share::HIPS).max(stance.lift + 0.2));
        let shoulders = [-0.17, 0.17].map(|aside| {
            let at = leaning(0.25);
            let at = Spot {
                right: at.right + aside,
                ..at
            };
            self.side.point(at, up(share::SHOULDERS))
        });
        let head = self.side.point(leaning(0.30), up(share::HEAD));
        let feet = stance
            .feet
            .map(|foot| self.side.point(foot.middle(), stance.lift + 0.04));
        let forward = self.side.point(
            Spot {
                depth: -1.0,
                right: 0.0,
            },
            0.0,
        );
        let bent = |a: Point, b: Point, length: f64, to: Point| {
            let half = a.on_the_way(b, 0.5);
            let missing = (length * length - a.distance(b).powi(2)).max(0.0).sqrt() / 2.0;
            Point {
                x: half.x + to.x * missing,
                y: half.y + to.y * missing,
                z: half.z + to.z * missing,
            }
        };
        let down_and_out = Point {
            x: -forward.x * 0.5,
            y: 0.0,
            z: -0.8,
        };
        let leg = self.height * share::HIPS;
        let arm = self.height * (share::REACH - share::SHOULDERS);
        Figure {
            feet,
            knees: feet.map(|foot| bent(foot, hips, leg, forward)),
            hips,
            shoulders,
            elbows: std::array::from_fn(|i| bent(shoulders[i], stance.hands[i], arm, down_and_out)),
            hands: stance.hands,
            head,
            head_radius: self.height * share::HEAD_RADIUS,
        }
    }
}
