//! A scene in perspective, from the places where officials stand.

use super::{Act, Scene};
use crate::court::{End, Point, Spot, HALF_LENGTH, HALF_WIDTH};

/// Where the eye is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// The first referee's, on the stand at one end of the net.
    Stand,
    /// The second referee's, on the floor at the other end.
    SecondReferee,
    /// A line judge's: at the corner nearest the right hand of the first referee (29.1).
    LineJudge,
}

/// The eyes of the first referee are so far above the net, in metres (23.1).
const ABOVE_NET: f64 = 0.5;
/// From the side line to the eye of a referee beside the post, in metres. The post is 0.5 to 1 m outside
/// (2.5); the rest is our own choice.
const BESIDE: f64 = 1.6;
/// How high the eyes of somebody who stands on the floor are, in metres. Our own choice.
const STANDING: f64 = 1.65;
/// A line judge stands 1 to 2 m from the corner, diagonally (29.1).
const FROM_CORNER: f64 = 1.5;
/// What is nearer to the eye than this is not drawn, in metres.
const NEAR: f64 = 0.25;

impl Place {
    /// All of them.
    pub const ALL: [Place; 3] = [Place::Stand, Place::SecondReferee, Place::LineJudge];

    /// Whether the court of a team lies on the right, as it is seen from here: the second referee stands opposite the
    /// first (24.1), and a line judge behind the right corner looks along the court, where neither does.
    #[must_use]
    pub const fn sees_on_the_right(self, end: End) -> bool {
        match (self, end) {
            (Place::Stand | Place::LineJudge, End::Right) | (Place::SecondReferee, End::Left) => {
                true
            }
            (Place::Stand | Place::LineJudge, End::Left) | (Place::SecondReferee, End::Right) => {
                false
            }
        }
    }

    /// The eye.
    #[must_use]
    pub fn eye(self, net_top: f64) -> Point {
        match self {
            Place::Stand => Point {
                x: 0.0,
                y: -HALF_WIDTH - BESIDE,
                z: net_top + ABOVE_NET,
            },
            Place::SecondReferee => Point {
                x: 0.0,
                y: HALF_WIDTH + BESIDE,
                z: STANDING,
            },
            Place::LineJudge => {
                let aside = FROM_CORNER / std::f64::consts::SQRT_2;
                Point {
                    x: HALF_LENGTH + aside,
                    y: -HALF_WIDTH - aside,
                    z: STANDING,
                }
            }
        }
    }
}

/// A point in the picture. The middle of the picture is 0, 0; 1 is half its width; up is positive.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seen {
    /// To the right.
    pub right: f64,
    /// Up.
    pub up: f64,
    /// How far in front of the eye, along the direction of view, in metres.
    pub depth: f64,
    /// How large a metre is there, in halves of the picture's width.
    pub metre: f64,
}

/// An eye with a direction.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct View {
    eye: Point,
    forward: [f64; 3],
    right: [f64; 3],
    up: [f64; 3],
    focal: f64,
}

fn dot(a: [f64; 3], b: [f64; 3]) -> f64 {
    a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

fn unit(a: [f64; 3]) -> [f64; 3] {
    let length = dot(a, a).sqrt();
    a.map(|part| part / length)
}

fn cross(a: [f64; 3], b: [f64; 3]) -> [f64; 3] {
    [
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    ]
}

impl View {
    /// Looks from an eye to a point that is not straight above or below it; `width` is how much is seen from
    /// the left edge of the picture to the right one, in degrees.
    #[must_use]
    pub fn new(eye: Point, to: Point, width: f64) -> View {
        let forward = unit([to.x - eye.x, to.y - eye.y, to.z - eye.z]);
        let right = unit(cross(forward, [0.0, 0.0, 1.0]));
        View {
            eye,
            forward,
            right,
            up: cross(right, forward),
            focal: 1.0 / (width.to_radians() / 2.0).tan(),
        }
    }

    /// How far in front of the eye a point is, in metres; below 0 behind it.
    #[must_use]
    pub fn depth(&self, point: Point) -> f64 {
        dot(self.forward, self.way_to(point))
    }

    fn way_to(&self, point: Point) -> [f64; 3] {
        [
            point.x - self.eye.x,
            point.y - self.eye.y,
            point.z - self.eye.z,
        ]
    }

    /// Where a point is in the picture; none where it is not in front of the eye.
    #[must_use]
    pub fn point(&self, point: Point) -> Option<Seen> {
        let way = self.way_to(point);
        let depth = dot(self.forward, way);
        (depth >= NEAR * 0.999).then(|| {
            let metre = self.focal / depth;
            Seen {
                right: dot(self.right, way) * metre,
                up: dot(self.up, way) * metre,
                depth,
                metre,
            }
        })
    }

    /// The part of a straight line that is in front of the eye; none where nothing of it is.
    #[must_use]
    pub fn line(&self, a: Point, b: Point) -> Option<[Seen; 2]> {
        let (from, to) = (self.depth(a), self.depth(b));
        if from < NEAR && to < NEAR {
            return None;
        }
        // The end behind the eye is moved to where the line comes into view.
        let cut = |behind: Point, other: Point, d: f64, e: f64| {
            behind.on_the_way(other, (NEAR - d) / (e - d))
        };
        let (a, b) = if from < NEAR {
            (cut(a, b, from, to), b)
        } else if to < NEAR {
            (a, cut(b, a, to, from))
        } else {
            (a, b)
        };
        Some([self.point(a)?, self.point(b)?])
    }

    /// A plane surface: the part of its outline that is in front of the eye, cut off where it goes behind it.
    #[must_use]
    pub fn surface(&self, corners: &[Point]) -> Vec<Seen> {
        let mut seen = Vec::new();
        for (i, corner) in corners.iter().enumerate() {
            let next = corners[(i + 1) % corners.len()];
            let (d, e) = (self.depth(*corner), self.depth(next));
            if d >= NEAR {
                seen.extend(self.point(*corner));
            }
            if (d >= NEAR) != (e >= NEAR) {
                seen.extend(self.point(corner.on_the_way(next, (NEAR - d) / (e - d))));
            }
        }
        seen
    }

    /// How high the horizon is in the picture.
    #[must_use]
    pub fn horizon(&self) -> f64 {
        // A level direction, straight on.
        let level = unit([self.forward[0], self.forward[1], 0.0]);
        dot(self.up, level) / dot(self.forward, level) * self.focal
    }
}

/// Where an official looks at a moment: at the middle of the court, drawn towards the ball. The eye follows
/// smoothly: the mean of where the ball is a little before and after. Before a service the referees look over the
/// receivers, then to the server; and what happens at the net holds their eye while the ball flies on.
#[must_use]
pub fn gaze(scene: &Scene, place: Place, time: f64) -> Point {
    const LOOKS: i8 = 6;
    let mut sum = [0.0; 3];
    for look in -LOOKS..=LOOKS {
        let ball = scene.ball_at((time + f64::from(look) * 0.06).clamp(0.0, scene.until()));
        sum = [sum[0] + ball.x, sum[1] + ball.y, sum[2] + ball.z];
    }
    let [x, y, z] = sum.map(|part| part / f64::from(2 * LOOKS + 1));
    let ball = Point { x, y, z };
    let (follow, rest) = match place {
        Place::Stand => (
            0.8,
            Point {
                x: 0.0,
                y: 1.0,
                z: 1.0,
            },
        ),
        Place::SecondReferee => (
            0.8,
            Point {
                x: 0.0,
                y: -1.0,
                z: 1.3,
            },
        ),
        Place::LineJudge => (
            0.25,
            Point {
                x: 3.0,
                y: 0.5,
                z: 1.0,
            },
        ),
    };
    // A ball that passes close by is looked up to.
    let near = 1.0 - ((place.eye(scene.net_top).distance(ball) - 2.0) / 6.0).clamp(0.0, 1.0);
    let at_ball = Point {
        x: rest.x + (x - rest.x) * follow,
        y: rest.y + (y - rest.y) * follow,
        z: rest.z + (z - rest.z) * (0.25 + 0.55 * near),
    };
    if place == Place::LineJudge {
        return at_ball;
    }
    let receivers = scene.serving.other().point(RECEIVERS, 1.0);
    let before = at_ball.on_the_way(receivers, looks_over_receivers(scene, time));
    match held_at_the_net(scene, time) {
        Some((player, share)) => before.on_the_way(player, share),
        None => before,
    }
}

/// The middle of the receivers, as they see it.
const RECEIVERS: Spot = Spot {
    depth: 4.5,
    right: 0.0,
};
/// How long an eye takes from the receivers to the server, in seconds. Our own choice.
const TURNS: f64 = 1.0;
/// So long something at the net holds the eye, before and after, in seconds, and how much of it. Our own choice.
const HOLDS: f64 = 0.45;
const HELD: f64 = 0.6;

/// How much of the eye is on the receivers: all of it at first, none once the ball is tossed, bounced or handed
/// over.
fn looks_over_receivers(scene: &Scene, time: f64) -> f64 {
    let hit = scene.events.iter().find_map(|event| match event.act {
        Act::ServiceHit { .. } => Some(event.at),
        _ => None,
    });
    let Some(hit) = hit else { return 0.0 };
    let moves = scene
        .ball
        .iter()
        .find(|leg| leg.begin().at.distance(leg.end().at) > 0.05);
    let moves = moves.map_or(hit, |leg| leg.from).min(hit - 0.75);
    let gone = ((time - (moves - 0.1 - TURNS)) / TURNS).clamp(0.0, 1.0);
    1.0 - gone * gone * (3.0 - 2.0 * gone)
}

/// The player at the net who holds the eye at a moment, and how much of it.
fn held_at_the_net(scene: &Scene, time: f64) -> Option<(Point, f64)> {
    let held = scene.events.iter().filter_map(|event| {
        let player = match event.act {
            Act::NetTouch { player, .. }
            | Act::FootDown { player, .. }
            | Act::BodyDown { player, .. }
            | Act::Contact { player, .. }
            | Act::HeldBack { player, .. } => player,
            _ => return None,
        };
        let share = HELD * (1.0 - (time - event.at).abs() / HOLDS);
        let who = scene.players.get(player)?;
        (share > 0.0).then(|| (who.figure(time).hips, share))
    });
    held.max_by(|a, b| a.1.total_cmp(&b.1))
}
