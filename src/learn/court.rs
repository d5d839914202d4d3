//! The court by its published measurements, and places on it.
//!
//! FIVB Official Volleyball Rules 2025-2028, 1.1 to 1.4 and 3.1. All lengths are metres.

/// Half the length of the court (1.1). Lines lie inside it (1.3.2).
pub const HALF_LENGTH: f64 = 9.0;
/// Half its width (1.1).
pub const HALF_WIDTH: f64 = 4.5;
/// The width of every line (1.3.1).
pub const LINE_WIDTH: f64 = 0.05;
/// Half the width of the centre line, which belongs to both courts (1.3.3).
pub const CENTRE_LINE_HALF: f64 = LINE_WIDTH / 2.0;
/// From the axis of the centre line to the rear edge of the attack line; the line is part of the front
/// zone (1.3.4, 1.4.1).
pub const ATTACK_LINE: f64 = 3.0;
/// The least width of the free zone on every side (1.1).
pub const FREE_ZONE: f64 = 3.0;
/// The radius of a ball whose circumference is in the middle of what is allowed, 66 cm (3.1).
pub const BALL_RADIUS: f64 = 0.66 / std::f64::consts::TAU;

/// One of the two courts, as the first referee on the stand sees them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum End {
    /// The left one.
    Left,
    /// The right one.
    Right,
}

impl End {
    /// Both, the left one first.
    pub const BOTH: [End; 2] = [End::Left, End::Right];

    /// The opponents' court.
    #[must_use]
    pub const fn other(self) -> End {
        match self {
            End::Left => End::Right,
            End::Right => End::Left,
        }
    }

    /// The side of the net that a place is on; the plane itself counts as right.
    #[must_use]
    pub fn of(x: f64) -> End {
        if x < 0.0 {
            End::Left
        } else {
            End::Right
        }
    }

    /// The direction of this court along [`Point::x`].
    #[must_use]
    pub(super) const fn sign(self) -> f64 {
        match self {
            End::Left => -1.0,
            End::Right => 1.0,
        }
    }

    /// The place of a spot of this court at a height.
    #[must_use]
    pub fn point(self, spot: Spot, height: f64) -> Point {
        Point {
            x: spot.depth * self.sign(),
            y: spot.right * self.sign(),
            z: height,
        }
    }

    /// A point as a player of this court sees it.
    #[must_use]
    pub fn spot(self, point: Point) -> Spot {
        Spot {
            depth: point.x * self.sign(),
            right: point.y * self.sign(),
        }
    }
}

impl Point {
    /// How far another place is away.
    #[must_use]
    pub fn distance(self, other: Point) -> f64 {
        (self.x - other.x)
            .hypot(self.y - other.y)
            .hypot(self.z - other.z)
    }

    /// The place so far on the way to another one: 0 here, 1 there.
    #[must_use]
    pub fn on_the_way(self, other: Point, share: f64) -> Point {
        Point {
            x: self.x + (other.x - self.x) * share,
            y: self.y + (other.y - self.y) * share,
            z: self.z + (other.z - self.z) * share,
        }
    }
}

/// A place in the hall, in metres from the floor below the middle of the net.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Point {
    /// Along the court, to the right of the first referee on the stand.
    pub x: f64,
    /// Along the net, away from the first referee.
    pub y: f64,
    /// Up.
    pub z: f64,
}

/// A place on the floor as a player who faces the net sees it, in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spot {
    /// From the axis of the centre line into the own court; below 0 beyond the net.
    pub depth: f64,
    /// From the middle of the court to the player's right.
    pub right: f64,
}

/// What touches the floor of one foot: all that lies within `half_width` of the line from heel to toe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Foot {
    /// Where the heel is.
    pub heel: Spot,
    /// Where the toe is.
    pub toe: Spot,
    /// Half the width of the shoe, in metres.
    pub half_width: f64,
}

impl Foot {
    /// Its middle.
    #[must_use]
    pub fn middle(&self) -> Spot {
        Spot {
            depth: (self.heel.depth + self.toe.depth) / 2.0,
            right: (self.heel.right + self.toe.right) / 2.0,
        }
    }

    /// The depth of its part that is nearest to the net.
    #[must_use]
    pub fn nearest(&self) -> f64 {
        self.heel.depth.min(self.toe.depth) - self.half_width
    }

    /// The depth of its part that is farthest from the net.
    #[must_use]
    pub fn farthest(&self) -> f64 {
        self.heel.depth.max(self.toe.depth) + self.half_width
    }

    /// Its part farthest to the player's left.
    #[must_use]
    pub fn leftmost(&self) -> f64 {
        self.heel.right.min(self.toe.right) - self.half_width
    }

    /// Its part farthest to the player's right.
    #[must_use]
    pub fn rightmost(&self) -> f64 {
        self.heel.right.max(self.toe.right) + self.half_width
    }
}

/// A part of the playing area (1.4).
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Zone {
    /// From the centre line to the attack line, that line with it (1.4.1).
    Front(End),
    /// The rest of a court.
    Back(End),
    /// Behind the end line, as wide as the court (1.4.2).
    Service(End),
    /// The rest around the court.
    Free(End),
    /// Beyond the least free zone.
    Beyond,
}

impl Zone {
    /// The zone of a place on the floor. The service zone and the free zone reach as far as the least
    /// free zone does; a hall may have more.
    #[must_use]
    pub fn of(point: Point) -> Zone {
        let end = End::of(point.x);
        let (depth, aside) = (point.x.abs(), point.y.abs());
        if depth > HALF_LENGTH + FREE_ZONE || aside > HALF_WIDTH + FREE_ZONE {
            Zone::Beyond
        } else if depth > HALF_LENGTH && aside <= HALF_WIDTH {
            Zone::Service(end)
        } else if depth > HALF_LENGTH || aside > HALF_WIDTH {
            Zone::Free(end)
        } else if depth <= ATTACK_LINE {
            Zone::Front(end)
        } else {
            Zone::Back(end)
        }
    }
}
