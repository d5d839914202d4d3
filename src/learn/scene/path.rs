//! The way of the ball in pieces, each from one touch to the next.

use crate::court::Point;
use crate::flight::{Flight, Velocity};

/// How far apart the places are that a piece remembers, in seconds. Between them a cubic curve is laid; by its
/// error formula and what the air does at 30 metres a second it is off by less than a thousandth of a
/// millimetre.
const STEP: f64 = 0.02;

/// A piece of the way of the ball.
#[derive(Clone, Debug, PartialEq)]
pub struct Leg {
    /// When it begins, in seconds.
    pub from: f64,
    /// When it ends.
    pub until: f64,
    /// The ball at equal steps of time, both ends among them.
    samples: Vec<Flight>,
}

impl Leg {
    /// A flight.
    #[must_use]
    pub fn flies(from: f64, until: f64, launch: Flight) -> Leg {
        let steps = ((until - from) / STEP).ceil().max(1.0);
        let step = (until - from) / steps;
        let mut samples = vec![launch];
        let mut done = 0.0;
        let mut ball = launch;
        while done < steps {
            ball = ball.coarsely_after(step);
            samples.push(ball);
            done += 1.0;
        }
        Leg {
            from,
            until,
            samples,
        }
    }

    /// A ball that somebody carries from one place to another, evenly.
    #[must_use]
    pub fn carried(from: f64, until: f64, begin: Point, end: Point) -> Leg {
        let time = (until - from).max(STEP);
        let velocity = Velocity {
            x: (end.x - begin.x) / time,
            y: (end.y - begin.y) / time,
            z: (end.z - begin.z) / time,
        };
        let there = |at| Flight {
            at,
            velocity,
            drag: 0.0,
        };
        Leg {
            from,
            until,
            samples: vec![there(begin), there(end)],
        }
    }

    /// The ball where it begins.
    #[must_use]
    pub fn begin(&self) -> &Flight {
        &self.samples[0]
    }

    /// The ball where it ends.
    #[must_use]
    pub fn end(&self) -> &Flight {
        &self.samples[self.samples.len() - 1]
    }

    /// Where its middle is; before the beginning and after the end where it is then.
    #[must_use]
    pub fn at(&self, time: f64) -> Point {
        let pieces = self.samples.len() - 1;
        let step = (self.until - self.from) / f64::from(u32::try_from(pieces).unwrap_or(u32::MAX));
        if step <= 0.0 || time <= self.from {
            return self.begin().at;
        }
        if time >= self.until {
            return self.end().at;
        }
        let way = (time - self.from) / step;
        // Not negative, and far below what the type holds.
        #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)]
        let before = (way as usize).min(pieces - 1);
        #[allow(clippy::cast_precision_loss)]
        let share = way - before as f64;
        let (a, b) = (&self.samples[before], &self.samples[before + 1]);
        let blend = |p: f64, v: f64, q: f64, w: f64| hermite(p, v * step, q, w * step, share);
        Point {
            x: blend(a.at.x, a.velocity.x, b.at.x, b.velocity.x),
            y: blend(a.at.y, a.velocity.y, b.at.y, b.velocity.y),
            z: blend(a.at.z, a.velocity.z, b.at.z, b.velocity.z),
        }
    }

    /// The first moment, found to a millionth of a second, at which its middle is on the other side of the
    /// plane of the net than where it begins.
    #[must_use]
    pub fn passes_plane(&self) -> Option<f64> {
        let from_left = self.begin().at.x < 0.0;
        let crossed = |time: f64| (self.at(time).x < 0.0) != from_left;
        let mut before = self.from;
        loop {
            let next = (before + STEP).min(self.until);
            if crossed(next) {
                let (mut not_yet, mut already) = (before, next);
                while already - not_yet > 1e-6 {
                    let middle = (not_yet + already) / 2.0;
                    if crossed(middle) {
                        already = middle;
                    } else {
                        not_yet = middle;
                    }
                }
                return Some(already);
            }
            if next >= self.until {
                return None;
            }
            before = next;
        }
    }
}

/// The cubic curve that has these ends and these changes there.
fn hermite(p: f64, v: f64, q: f64, w: f64, t: f64) -> f64 {
    let (t2, t3) = (t * t, t * t * t);
    (2.0 * t3 - 3.0 * t2 + 1.0) * p
        + (t3 - 2.0 * t2 + t) * v
        + (-2.0 * t3 + 3.0 * t2) * q
        + (t3 - t2) * w
}
