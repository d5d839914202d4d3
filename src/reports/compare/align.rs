//! Aligning two orders of points with as few causes as suffice: a point given to the other team, a point
//! missing, a point too many.
//!
//! A set that is over in one record and goes on in the other goes on because of what differs before; its
//! further points have no cause of their own.

use rules::Team;

/// One step through both orders.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Step {
    /// How many points of each lie before it.
    pub at: (usize, usize),
    /// Whether it takes a point of the first, of the second, of both.
    pub takes: (bool, bool),
    /// Whether only one of them has anything from here on.
    pub tail: bool,
}

/// Above this size nobody's set is aligned; the orders are taken point for point.
const MAX_CELLS: usize = 16_000_000;

/// The steps through both orders. `over` says whether each set is over, so that the other may go on.
pub(crate) fn align(a: &[Team], b: &[Team], over: [bool; 2]) -> Vec<Step> {
    let same = a.iter().zip(b).take_while(|(x, y)| x == y).count();
    let mut steps: Vec<Step> = (0..same).map(|i| both((i, i))).collect();
    let (rest_a, rest_b) = (&a[same..], &b[same..]);
    let small = (rest_a.len() + 1).saturating_mul(rest_b.len() + 1) <= MAX_CELLS;
    let costs = small.then(|| Costs::of(rest_a, rest_b, over));
    let (mut i, mut j) = (0, 0);
    while i < rest_a.len() || j < rest_b.len() {
        let at = (same + i, same + j);
        let takes = match (i < rest_a.len(), j < rest_b.len()) {
            (true, true) => costs
                .as_ref()
                .map_or((true, true), |c| c.next(rest_a, rest_b, i, j)),
            left => left,
        };
        let tail = i == rest_a.len() || j == rest_b.len();
        steps.push(Step { at, takes, tail });
        i += usize::from(takes.0);
        j += usize::from(takes.1);
    }
    steps
}

fn both(at: (usize, usize)) -> Step {
    Step {
        at,
        takes: (true, true),
        tail: false,
    }
}

/// Whether so many points of the first record and so many of the second are the same moment.
pub(super) fn meets(steps: &[Step], moment: (usize, usize)) -> bool {
    let end = steps.last().map_or((0, 0), |s| {
        (
            s.at.0 + usize::from(s.takes.0),
            s.at.1 + usize::from(s.takes.1),
        )
    });
    moment == end || steps.iter().any(|s| s.at == moment)
}

/// Causes needed from each pair of places on.
struct Costs {
    width: usize,
    cells: Vec<u16>,
}

impl Costs {
    fn of(a: &[Team], b: &[Team], over: [bool; 2]) -> Costs {
        let width = b.len() + 1;
        let mut costs = Costs {
            width,
            cells: vec![0; (a.len() + 1) * width],
        };
        for i in (0..=a.len()).rev() {
            for j in (0..=b.len()).rev() {
                let cost = match (i == a.len(), j == b.len()) {
                    (true, true) => 0,
                    // The rest of one: free where the other's set is over, else one cause.
                    (true, false) => u16::from(!over[0]),
                    (false, true) => u16::from(!over[1]),
                    (false, false) => {
                        let paired = costs.at(i + 1, j + 1) + u16::from(a[i] != b[j]);
                        let alone = costs.at(i + 1, j).min(costs.at(i, j + 1)) + 1;
                        paired.min(alone)
                    }
                };
                costs.cells[i * width + j] = cost;
            }
        }
        costs
    }

    fn at(&self, i: usize, j: usize) -> u16 {
        self.cells[i * self.width + j]
    }

    /// The cheapest step; of equal ones the same point first, then a point given to the other team,
    /// then one that the second record lacks.
    fn next(&self, a: &[Team], b: &[Team], i: usize, j: usize) -> (bool, bool) {
        let here = self.at(i, j);
        if here == self.at(i + 1, j + 1) + u16::from(a[i] != b[j]) {
            (true, true)
        } else {
            let lacking = here == self.at(i + 1, j) + 1;
            (lacking, !lacking)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn order(letters: &str) -> Vec<Team> {
        let team = |c| if c == 'A' { Team::A } else { Team::B };
        letters.chars().map(team).collect()
    }

    /// A step as its places, which records it takes from, and whether one goes on alone from here.
    type Odd = ((usize, usize), (bool, bool), bool);

    /// Steps that are not the same in both.
    fn odd(a: &str, b: &str, over: [bool; 2]) -> Vec<Odd> {
        let (a, b) = (order(a), order(b));
        let steps = align(&a, &b, over);
        let same = |s: &&Step| s.takes == (true, true) && a[s.at.0] == b[s.at.1];
        let odd = steps.iter().filter(|s| !same(s));
        odd.map(|s| (s.at, s.takes, s.tail)).collect()
    }

    #[test]
    fn one_cause_where_one_suffices() {
        let over = [true, true];
        assert_eq!(odd("AABBA", "AAABA", over), [((2, 2), (true, true), false)]);
        assert_eq!(
            odd("AABAAAB", "AAAAAB", over),
            [((2, 2), (true, false), false)]
        );
        assert_eq!(
            odd("AAAAAB", "AABAAAB", over),
            [((2, 2), (false, true), false)]
        );
        assert_eq!(odd("ABAB", "ABAB", over), []);
    }

    #[test]
    fn a_set_that_goes_on_has_its_cause_before() {
        // The third point to the other team; the second set needs three more.
        let found = odd("AAAB", "AABBBAA", [true, true]);
        assert_eq!(found[0], ((2, 2), (true, true), false));
        assert!(found[1..].iter().all(|s| s.2), "{found:?}");
    }

    #[test]
    fn a_record_that_stops_is_one_cause() {
        let found = odd("AABBA", "AA", [false, false]);
        assert!(found.iter().all(|s| s.2 && s.1 == (true, false)));
        assert_eq!(found[0].0, (2, 2));
    }
}
