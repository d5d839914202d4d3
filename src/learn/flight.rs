//! How a ball flies: gravity and the drag of the air, no spin and no wind.
//!
//! The drag of the air grows with the square of the speed. Spin, and the flutter of a service without
//! spin, are left out: a scene needs a ball that looks right, and no decision depends on how it came where
//! it is.

use super::court::{Point, BALL_RADIUS};

/// The fall of things, in metres a second squared: the standard value (9.80665, International System of
/// Units).
pub const GRAVITY: f64 = 9.806_65;
/// The mass of a ball in the middle of what is allowed, 260 to 280 g (3.1), in kilograms.
pub const BALL_MASS: f64 = 0.270;
/// The density of air in a hall at 20 degrees near sea level, in kilograms a cubic metre: from memory.
pub const AIR: f64 = 1.2;
/// How strongly the air holds a sphere up, without a unit: from memory, for a smooth sphere at the lower
/// speeds of a rally. A hard service is held up less.
pub const DRAG: f64 = 0.44;

/// How often a flight is computed, in times a second. Our own choice: at 30 metres a second the ball then
/// moves 3 cm from one place to the next, and the error of the method is far below a millimetre.
const STEPS_A_SECOND: f64 = 1000.0;

/// How often a throw is aimed anew. Our own choice: each time the miss is at least three times smaller.
const AIM_TRIES: u8 = 24;

/// Metres a second along [`Point`]'s three directions.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Velocity {
    /// To the right of the first referee.
    pub x: f64,
    /// Away from the first referee.
    pub y: f64,
    /// Up.
    pub z: f64,
}

/// What the air does to a ball: by how much its speed falls a metre, for each metre a second that it has.
/// In one over metres.
#[must_use]
pub fn ball_drag() -> f64 {
    let area = std::f64::consts::PI * BALL_RADIUS * BALL_RADIUS;
    0.5 * AIR * DRAG * area / BALL_MASS
}

/// A ball in flight at one moment.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Flight {
    /// Its middle.
    pub at: Point,
    /// Its velocity.
    pub velocity: Velocity,
    /// What the air does to it, see [`ball_drag`]; 0 where there is no air.
    pub drag: f64,
}

/// Where, and how fast: what the method of Runge and Kutta goes by.
type Six = [f64; 6];

impl Flight {
    /// A match ball that is hit here, so fast.
    #[must_use]
    pub fn of_ball(at: Point, velocity: Velocity) -> Flight {
        Flight {
            at,
            velocity,
            drag: ball_drag(),
        }
    }

    /// A match ball that is hit here and whose middle comes to a place after so many seconds: aimed by trying,
    /// each time corrected by what it missed by, until that is less than a hundredth of a millimetre.
    #[must_use]
    pub fn towards(at: Point, aim: Point, seconds: f64) -> Flight {
        let mut velocity = Velocity {
            x: (aim.x - at.x) / seconds,
            y: (aim.y - at.y) / seconds,
            z: (aim.z - at.z) / seconds + GRAVITY * seconds / 2.0,
        };
        for _ in 0..AIM_TRIES {
            let there = Flight::of_ball(at, velocity).coarsely_after(seconds).at;
            let missed = [aim.x - there.x, aim.y - there.y, aim.z - there.z];
            if missed.iter().all(|by| by.abs() < 1e-5) {
                break;
            }
            velocity.x += missed[0] / seconds;
            velocity.y += missed[1] / seconds;
            velocity.z += missed[2] / seconds;
        }
        Flight::of_ball(at, velocity)
    }

    /// As [`Flight::after`], in a tenth of the steps: of a flight in a hall it is exact to a thousandth of a
    /// millimetre, and quick enough for a picture.
    #[must_use]
    pub fn coarsely_after(self, seconds: f64) -> Flight {
        self.in_steps(seconds, STEPS_A_SECOND / 10.0)
    }

    /// The same ball so many seconds later; nothing is in its way, not even the floor.
    #[must_use]
    pub fn after(self, seconds: f64) -> Flight {
        self.in_steps(seconds, STEPS_A_SECOND)
    }

    fn in_steps(self, seconds: f64, a_second: f64) -> Flight {
        let steps = (seconds * a_second).ceil().max(1.0);
        let step = seconds / steps;
        let mut flight = self;
        let mut done = 0.0;
        while done < steps {
            flight = flight.step(step);
            done += 1.0;
        }
        flight
    }

    /// The moment at which something begins to be so, in seconds from now, and the ball then; none where it
    /// is not so within the given time. It has to stay so for at least a thousandth of a second to be seen,
    /// and is then found to a millionth.
    #[must_use]
    pub fn first(self, within: f64, is_so: impl Fn(&Flight) -> bool) -> Option<(f64, Flight)> {
        let step = 1.0 / STEPS_A_SECOND;
        let (mut time, mut before) = (0.0, self);
        if is_so(&before) {
            return Some((0.0, before));
        }
        while time < within {
            let next = before.step(step);
            if is_so(&next) {
                let (mut not_yet, mut already) = (0.0, step);
                while already - not_yet > 1e-6 {
                    let middle = (not_yet + already) / 2.0;
                    if is_so(&before.step(middle)) {
                        already = middle;
                    } else {
                        not_yet = middle;
                    }
                }
                let found = time + already;
                return (found <= within).then(|| (found, before.step(already)));
            }
            (time, before) = (time + step, next);
        }
        None
    }

    /// When and how the ball touches the floor, as [`Flight::first`].
    #[must_use]
    pub fn to_floor(self, within: f64) -> Option<(f64, Flight)> {
        self.first(within, |flight| flight.at.z <= BALL_RADIUS)
    }

    /// When and where its middle passes the plane of the net, as [`Flight::first`].
    #[must_use]
    pub fn to_net(self, within: f64) -> Option<(f64, Flight)> {
        let from_left = self.at.x < 0.0;
        self.first(within, |flight| (flight.at.x < 0.0) != from_left)
    }

    /// One step of the method of Runge and Kutta of the fourth order.
    fn step(self, seconds: f64) -> Flight {
        let now = [
            self.at.x,
            self.at.y,
            self.at.z,
            self.velocity.x,
            self.velocity.y,
            self.velocity.z,
        ];
        let k1 = change(&now, self.drag);
        let k2 = change(&moved(&now, &k1, seconds / 2.0), self.drag);
        let k3 = change(&moved(&now, &k2, seconds / 2.0), self.drag);
        let k4 = change(&moved(&now, &k3, seconds), self.drag);
        let mean: Six = std::array::from_fn(|i| (k1[i] + 2.0 * k2[i] + 2.0 * k3[i] + k4[i]) / 6.0);
        let [x, y, z, vx, vy, vz] = moved(&now, &mean, seconds);
        Flight {
            at: Point { x, y, z },
            velocity: Velocity {
                x: vx,
                y: vy,
                z: vz,
            },
            drag: self.drag,
        }
    }
}

fn moved(from: &Six, change: &Six, seconds: f64) -> Six {
    std::array::from_fn(|i| from[i] + change[i] * seconds)
}

/// How place and velocity change a second.
fn change(now: &Six, drag: f64) -> Six {
    let [_, _, _, x, y, z] = *now;
    let speed = (x * x + y * y + z * z).sqrt();
    [
        x,
        y,
        z,
        -drag * speed * x,
        -drag * speed * y,
        -drag * speed * z - GRAVITY,
    ]
}
