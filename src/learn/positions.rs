//! Where the players stand at the service hit (7.4, 7.5).

use super::court::{End, Foot, HALF_LENGTH, HALF_WIDTH};
use super::ruling::{Margin, Ruling};
use rules::{Cause, Edition};

/// The feet of the six players of a team, position 1 first. Of a player in the air it is where they last
/// touched the floor (7.4.3).
#[derive(Clone, Debug, PartialEq)]
pub struct Formation(pub [[Foot; 2]; 6]);

/// Two positions that are compared.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pair {
    /// A player of the front row and the one of the back row behind (7.4.3.1).
    Depth {
        /// The position in the front row.
        front: u8,
        /// The position in the back row.
        back: u8,
    },
    /// Two players of one row (7.4.3.2).
    Lateral {
        /// The position to the left.
        left: u8,
        /// The position to the right.
        right: u8,
    },
}

impl Pair {
    /// All pairs; players of different rows and different sides, such as 4 and 6, are never compared.
    pub const ALL: [Pair; 9] = [
        Pair::Depth { front: 2, back: 1 },
        Pair::Depth { front: 3, back: 6 },
        Pair::Depth { front: 4, back: 5 },
        Pair::Lateral { left: 4, right: 3 },
        Pair::Lateral { left: 3, right: 2 },
        Pair::Lateral { left: 4, right: 2 },
        Pair::Lateral { left: 5, right: 6 },
        Pair::Lateral { left: 6, right: 1 },
        Pair::Lateral { left: 5, right: 1 },
    ];
}

impl Formation {
    fn feet(&self, position: u8) -> &[Foot; 2] {
        &self.0[usize::from(position) - 1]
    }

    fn extreme(&self, position: u8, of: fn(&Foot) -> f64, pick: fn(f64, f64) -> f64) -> f64 {
        let [one, other] = self.feet(position);
        pick(of(one), of(other))
    }

    /// By how many metres a pair stands rightly; below 0 it stands wrongly, and level is right (7.4.3).
    #[must_use]
    pub fn slack(&self, pair: Pair) -> f64 {
        match pair {
            // Some part of a foot of the one behind is as far from the centre line as the front foot of
            // the one before.
            Pair::Depth { front, back } => {
                self.extreme(back, Foot::farthest, f64::max)
                    - self.extreme(front, Foot::nearest, f64::min)
            }
            // Some part of a foot of the one to the right is as far to the right as the foot of the
            // other that is farther from that side line. For the one to the left it is the same sentence.
            Pair::Lateral { left, right } => {
                self.extreme(right, Foot::rightmost, f64::max)
                    - self.extreme(left, Foot::leftmost, f64::min)
            }
        }
    }

    /// The pair that stands wrongly by the most, or rightly by the least, and by how much.
    #[must_use]
    pub fn tightest(&self) -> (Pair, f64) {
        let mut tightest = (Pair::ALL[0], self.slack(Pair::ALL[0]));
        for pair in &Pair::ALL[1..] {
            let slack = self.slack(*pair);
            if slack < tightest.1 {
                tightest = (*pair, slack);
            }
        }
        tightest
    }
}

/// Decides whether a team stands in its order at the moment of the service hit. Since the edition of 2025
/// the serving team may stand as it likes (7.4); before, all but the server had to keep the order. It
/// decides nothing about who serves ([`super::server_in_order`]), nor about players outside their court.
#[must_use]
pub fn positions(team: End, formation: &Formation, serves: bool, edition: Edition) -> Ruling {
    if serves && edition == Edition::E2025 {
        return Ruling::play_on("7.4", Margin::Seen);
    }
    let slack = if serves {
        // The server stands where the service is made from.
        let without_server = Pair::ALL.iter().filter(|pair| {
            !matches!(
                pair,
                Pair::Depth { back: 1, .. } | Pair::Lateral { right: 1, .. }
            )
        });
        without_server
            .map(|pair| formation.slack(*pair))
            .fold(f64::INFINITY, f64::min)
    } else {
        formation.tightest().1
    };
    let margin = Margin::Metres(slack.abs());
    if slack < 0.0 {
        Ruling::fault(team, Cause::PositionFault, "7.5.1", margin)
    } else {
        Ruling::play_on("7.4.3", margin)
    }
}

/// Decides whether a player other than the server is inside the own court at the service hit: no part of a
/// foot touches the floor outside its lines, which are part of it (7.4, 1.3.2). A foot over the centre line
/// is not judged here (11.2.2.1).
#[must_use]
pub fn inside_own_court(team: End, feet: &[Foot; 2]) -> Ruling {
    let beyond = |foot: &Foot| {
        (foot.farthest() - HALF_LENGTH)
            .max(foot.rightmost() - HALF_WIDTH)
            .max(-foot.leftmost() - HALF_WIDTH)
    };
    let beyond = beyond(&feet[0]).max(beyond(&feet[1]));
    let margin = Margin::Metres(beyond.abs());
    if beyond > 0.0 {
        Ruling::fault(team, Cause::OutsideCourt, "7.4", margin)
    } else {
        Ruling::play_on("7.4", margin)
    }
}
