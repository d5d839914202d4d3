//! Six players of the left team at the service hit.

use super::net::{shoe, SHOE_LENGTH};
use super::{Decided, Dial, Reading, Values};
use crate::court::{End, Foot};
use crate::positions::{inside_own_court, positions, Formation};
use rules::Edition;

/// Half as far as two feet stand apart, in metres: our own choice.
const STANCE: f64 = 0.15;

/// The feet of a player who stands at a place and looks at the net.
#[must_use]
pub fn feet_at(depth: f64, right: f64) -> [Foot; 2] {
    let heel = depth + SHOE_LENGTH / 2.0;
    [shoe(heel, right - STANCE), shoe(heel, right + STANCE)]
}

/// Where position 1 to position 6 stand at first: a usual shape to receive a service, with position 3 at the
/// net to set.
const PLACES: [(f64, f64); 6] = [
    (6.6, 3.0),
    (4.4, 2.6),
    (1.2, 1.0),
    (4.6, -2.8),
    (6.6, -3.0),
    (7.0, 0.0),
];

pub(super) fn start() -> Values {
    let mut all = Vec::new();
    for (position, (depth, right)) in (1..).zip(PLACES) {
        all.push((Dial::PlayerDepth(position), depth));
        all.push((Dial::PlayerRight(position), right));
    }
    all.push((Dial::Serves, 0.0));
    all.push((Dial::Edition, 0.0));
    Values::of(&all)
}

/// The feet of the usual shape, with position 6 and position 5 in each other's place where that is wanted.
pub(super) fn usual(swapped: bool) -> Formation {
    let mut places = PLACES;
    if swapped {
        places.swap(4, 5);
    }
    Formation(places.map(|(depth, right)| feet_at(depth, right)))
}

/// The feet of all six as they are set.
#[must_use]
pub fn formation(set: &Values) -> Formation {
    Formation([1, 2, 3, 4, 5, 6].map(|position| {
        feet_at(
            set.get(Dial::PlayerDepth(position)),
            set.get(Dial::PlayerRight(position)),
        )
    }))
}

/// The edition that a situation is set to.
#[must_use]
pub fn edition_of(set: &Values) -> Edition {
    [Edition::E2025, Edition::E2021][set.choice(Dial::Edition)]
}

pub(super) fn decide(set: &Values) -> Vec<Decided> {
    let formation = formation(set);
    let serves = set.is(Dial::Serves);
    let order = positions(End::Left, &formation, serves, edition_of(set));
    // Of those who must be inside, the one who is least so. The server may stand outside.
    let inside = formation.0[usize::from(serves)..]
        .iter()
        .map(|feet| inside_own_court(End::Left, feet))
        .reduce(|worst, one| {
            let out = |ruling: &crate::Ruling| {
                let by = ruling.margin.metres().unwrap_or(0.0);
                if ruling.is_fault() {
                    by
                } else {
                    -by
                }
            };
            if out(&one) > out(&worst) {
                one
            } else {
                worst
            }
        });
    let mut decided = vec![Decided {
        reading: Reading::Order,
        ruling: order,
    }];
    decided.extend(inside.map(|ruling| Decided {
        reading: Reading::InsideCourt,
        ruling,
    }));
    decided
}
