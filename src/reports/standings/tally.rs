//! What a team has gathered, and ratios that are compared exactly.

use std::cmp::Ordering;
use std::fmt;

/// What a team has gathered in some matches.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Tally {
    /// Matches.
    pub played: u32,
    /// Matches won.
    pub wins: u32,
    /// Matches lost.
    pub losses: u32,
    /// Matches that ended level, possible where all sets are played.
    pub draws: u32,
    /// Match points; a regulation may take some away.
    pub match_points: i64,
    /// Sets won and lost.
    pub sets: (u64, u64),
    /// Points won and lost.
    pub points: (u64, u64),
}

impl Tally {
    /// Sets won to sets lost.
    #[must_use]
    pub fn set_ratio(&self) -> Ratio {
        Ratio::new(self.sets)
    }

    /// Points won to points lost.
    #[must_use]
    pub fn point_ratio(&self) -> Ratio {
        Ratio::new(self.points)
    }

    /// Sets won less sets lost.
    #[must_use]
    pub fn set_difference(&self) -> i64 {
        difference(self.sets)
    }

    /// Points won less points lost.
    #[must_use]
    pub fn point_difference(&self) -> i64 {
        difference(self.points)
    }
}

/// At most 2,000 matches of 9 sets of 999 points: far from the ends of the type.
fn difference((won, lost): (u64, u64)) -> i64 {
    let signed = |n: u64| i64::try_from(n).unwrap_or(i64::MAX);
    signed(won) - signed(lost)
}

/// Won to lost. Compared by multiplying crosswise, never as a rounded number. Whoever lost nothing is
/// before everybody who did; who has neither won nor lost is last, which is our choice, no source.
#[derive(Clone, Copy, Debug)]
pub struct Ratio {
    won: u64,
    lost: u64,
}

impl Ratio {
    /// Of a pair of won and lost.
    #[must_use]
    pub fn new((won, lost): (u64, u64)) -> Ratio {
        // Nothing at all counts like nothing won of one.
        let lost = if won == 0 { lost.max(1) } else { lost };
        Ratio { won, lost }
    }
}

impl Ord for Ratio {
    fn cmp(&self, other: &Ratio) -> Ordering {
        match (self.lost, other.lost) {
            (0, 0) => Ordering::Equal,
            (0, _) => Ordering::Greater,
            (_, 0) => Ordering::Less,
            _ => {
                let cross = |a: u64, b: u64| u128::from(a) * u128::from(b);
                cross(self.won, other.lost).cmp(&cross(other.won, self.lost))
            }
        }
    }
}

impl PartialOrd for Ratio {
    fn partial_cmp(&self, other: &Ratio) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl PartialEq for Ratio {
    fn eq(&self, other: &Ratio) -> bool {
        self.cmp(other) == Ordering::Equal
    }
}

impl Eq for Ratio {}

/// Three decimals, cut and not rounded; `max` where nothing was lost.
impl fmt::Display for Ratio {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.lost == 0 {
            return f.write_str("max");
        }
        let thousandths = u128::from(self.won) * 1000 / u128::from(self.lost);
        write!(f, "{}.{:03}", thousandths / 1000, thousandths % 1000)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ratios_are_cut_and_compared_exactly() {
        assert_eq!(Ratio::new((5, 3)).to_string(), "1.666");
        assert_eq!(Ratio::new((3, 0)).to_string(), "max");
        assert_eq!(Ratio::new((0, 0)).to_string(), "0.000");
        // Alike in three decimals, and yet not level.
        let (a, b) = (Ratio::new((1000, 3000)), Ratio::new((1001, 3002)));
        assert_eq!(a.to_string(), b.to_string());
        assert_eq!(a.cmp(&b), Ordering::Less);
    }
}
