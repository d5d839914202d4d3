//! What a place in the hall is, for whoever points at it on a drawing.

use super::court::{Point, ATTACK_LINE, FREE_ZONE, HALF_LENGTH, HALF_WIDTH};

/// A zone, a line or a thing of the playing area and around it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// Between the centre line and the attack line (1.4.1).
    FrontZone,
    /// The rest of a court.
    BackZone,
    /// Behind an end line, as wide as the court (1.4.2).
    ServiceZone,
    /// Around the court (1.1).
    FreeZone,
    /// Between the extensions of the attack lines, up to the table (1.4.3).
    SubstitutionZone,
    /// On the side of the benches, from the attack line to the end line (1.4.4).
    LiberoZone,
    /// A line behind a court (1.3.2).
    EndLine,
    /// A line beside both courts (1.3.2).
    SideLine,
    /// The line under the net (1.3.3).
    CentreLine,
    /// The line that ends a front zone (1.3.4).
    AttackLine,
    /// The net with its antennae and posts (2).
    Net,
    /// Where the first referee stands (23.1).
    Stand,
    /// Where the second referee stands (24.1).
    SecondReferee,
    /// The scorer's table (27.1).
    Table,
    /// The benches of the teams (4.2.1).
    Bench,
    /// Where a line judge stands, if there are two (29.1).
    LineJudge,
}

/// So far from a line it is still meant, in metres: a line of 5 cm is narrower than any finger on a phone. Our
/// own choice; it leaves the greater part of each zone to the zone.
const NEAR: f64 = 0.4;
/// How far a bench and the table reach along the court, in metres from the middle: our own choice.
const TABLE_HALF: f64 = 1.6;
const BENCH: (f64, f64) = (3.4, 8.4);
/// How deep they are behind the free zone, in metres: our own choice.
const DEEP: f64 = 1.2;
/// How far the line judges stand from their corner, along both lines, in metres: 1 to 2 m diagonally (29.1).
const JUDGE: f64 = 1.0;

impl Mark {
    /// All of them.
    pub const ALL: [Mark; 16] = [
        Mark::FrontZone,
        Mark::BackZone,
        Mark::ServiceZone,
        Mark::FreeZone,
        Mark::SubstitutionZone,
        Mark::LiberoZone,
        Mark::EndLine,
        Mark::SideLine,
        Mark::CentreLine,
        Mark::AttackLine,
        Mark::Net,
        Mark::Stand,
        Mark::SecondReferee,
        Mark::Table,
        Mark::Bench,
        Mark::LineJudge,
    ];

    /// What is at a place; none beyond everything that is drawn. People come before lines, and lines before
    /// zones.
    #[must_use]
    pub fn at(point: Point) -> Option<Mark> {
        let (x, y) = (point.x, point.y);
        let (along, aside) = (x.abs(), y.abs());
        let near = |value: f64, line: f64| (value - line).abs() <= NEAR;
        let on = |place: Point| (x - place.x).hypot(y - place.y) <= 2.0 * NEAR;
        if LINE_JUDGES.into_iter().any(on) {
            return Some(Mark::LineJudge);
        }
        let beyond = HALF_WIDTH + FREE_ZONE;
        if y > beyond {
            return if y > beyond + DEEP {
                None
            } else if along <= TABLE_HALF {
                Some(Mark::Table)
            } else if (BENCH.0..=BENCH.1).contains(&along) {
                Some(Mark::Bench)
            } else {
                None
            };
        }
        if aside > beyond || along > HALF_LENGTH + FREE_ZONE {
            return None;
        }
        if on(STAND) {
            return Some(Mark::Stand);
        }
        if on(SECOND_REFEREE) {
            return Some(Mark::SecondReferee);
        }
        if along <= NEAR && aside > HALF_WIDTH - NEAR && aside <= HALF_WIDTH + 1.0 {
            return Some(Mark::Net);
        }
        if aside <= HALF_WIDTH && near(along, HALF_LENGTH) {
            return Some(Mark::EndLine);
        }
        if along <= HALF_LENGTH {
            if near(aside, HALF_WIDTH) {
                return Some(Mark::SideLine);
            }
            if aside <= HALF_WIDTH {
                return Some(if along <= NEAR {
                    Mark::CentreLine
                } else if near(along, ATTACK_LINE) {
                    Mark::AttackLine
                } else if along <= ATTACK_LINE {
                    Mark::FrontZone
                } else {
                    Mark::BackZone
                });
            }
            if y > HALF_WIDTH {
                return Some(if along <= ATTACK_LINE {
                    Mark::SubstitutionZone
                } else {
                    Mark::LiberoZone
                });
            }
            return Some(Mark::FreeZone);
        }
        Some(if aside <= HALF_WIDTH {
            Mark::ServiceZone
        } else {
            Mark::FreeZone
        })
    }
}

/// Where the first referee stands: at the end of the net opposite the table (23.1).
pub const STAND: Point = Point {
    x: 0.0,
    y: -(HALF_WIDTH + 1.6),
    z: 0.0,
};
/// Where the second referee stands: outside the court near the post, facing the first (24.1).
pub const SECOND_REFEREE: Point = Point {
    x: 0.6,
    y: HALF_WIDTH + 1.6,
    z: 0.0,
};
/// Two line judges stand at the corners nearest to the right hand of each referee (29.1).
pub const LINE_JUDGES: [Point; 2] = [
    Point {
        x: HALF_LENGTH + JUDGE,
        y: -(HALF_WIDTH + JUDGE),
        z: 0.0,
    },
    Point {
        x: -(HALF_LENGTH + JUDGE),
        y: HALF_WIDTH + JUDGE,
        z: 0.0,
    },
];
