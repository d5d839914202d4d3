//! The height of the net.
//!
//! FIVB Official Volleyball Rules 2025-2028, 2.1 to 2.5. The international text has two heights; those
//! of age groups are fixed by national bodies and by the competition itself, so they are typed.

use super::decimal::decimal;

/// A height in millimetres above the floor.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Height(u16);

/// Men: 2.43 m (2.1.1).
pub const MEN: Height = Height(2430);
/// Women: 2.24 m (2.1.1).
pub const WOMEN: Height = Height(2240);
/// Over the side lines the net is at most so much higher than it has to be, in millimetres (2.1.2).
pub const SIDE_MORE: u16 = 20;
/// What a rod or a tape can tell, in millimetres: common practice, no source.
pub const READABLE: u16 = 5;

/// Lower or higher is no net for a match of any age: this project's own choice, so that a slip of the
/// finger is seen.
const SENSIBLE: std::ops::RangeInclusive<u16> = 1000..=3000;

/// The height of the net for an age group.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct AgeHeight {
    /// Players under this age, in years.
    pub under: u8,
    /// For boys.
    pub boys: Height,
    /// For girls.
    pub girls: Height,
}

const fn age(under: u8, boys: u16, girls: u16) -> AgeHeight {
    AgeHeight {
        under,
        boys: Height(boys),
        girls: Height(girls),
    }
}

/// One example of heights for the young: a regional youth table in Central Europe, which is public. The
/// international text has none, and others differ: a junior school league plays at 2.18 m and 2.12 m, another
/// at 2.35 m for boys under 16.
pub const AGE_HEIGHTS: [AgeHeight; 8] = [
    age(20, 2430, 2240),
    age(18, 2350, 2240),
    age(16, 2240, 2200),
    age(15, 2150, 2150),
    age(14, 2150, 2150),
    age(13, 2100, 2100),
    age(12, 2050, 2050),
    age(11, 2050, 2050),
];

impl Height {
    /// A height as somebody types it: metres (`2.24`, `2,24`) or centimetres (`224`, `224.5`).
    #[must_use]
    pub fn read(typed: &str) -> Option<Height> {
        let thousandths = decimal(typed, 3)?;
        let millimetres = if thousandths < 10_000 {
            thousandths
        } else {
            thousandths / 100
        };
        u16::try_from(millimetres)
            .ok()
            .filter(|mm| SENSIBLE.contains(mm))
            .map(Height)
    }

    /// In metres, with millimetres only where there are some.
    #[must_use]
    pub fn metres(self) -> String {
        let (whole, rest) = (self.0 / 1000, self.0 % 1000);
        if rest % 10 == 0 {
            format!("{whole}.{:02}", rest / 10)
        } else {
            format!("{whole}.{rest:03}")
        }
    }
}

/// What was measured.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Measured {
    /// In the middle of the court.
    pub middle: Option<Height>,
    /// Over the two side lines, left and right of the stand.
    pub sides: [Option<Height>; 2],
}

/// What is wrong with a net.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NetFault {
    /// Too low in the middle, by so many millimetres (2.1.1).
    MiddleLow(u16),
    /// Too high in the middle (2.1.1).
    MiddleHigh(u16),
    /// The two sides differ (2.1.2).
    SidesDiffer(u16),
    /// A side is more than 2 cm higher than the net has to be, by so many millimetres in all (2.1.2).
    SideHigh(u16),
    /// A side is lower than the net has to be (2.1.1 with 2.1.2).
    SideLow(u16),
}

impl Measured {
    /// Everything wrong with what was measured; what was not measured is not judged.
    #[must_use]
    pub fn judge(&self, wanted: Height) -> Vec<NetFault> {
        let mut wrong = Vec::new();
        if let Some(middle) = self.middle {
            let off = middle.0.abs_diff(wanted.0);
            if off > READABLE {
                wrong.push(if middle < wanted {
                    NetFault::MiddleLow(off)
                } else {
                    NetFault::MiddleHigh(off)
                });
            }
        }
        if let [Some(left), Some(right)] = self.sides {
            let apart = left.0.abs_diff(right.0);
            if apart > READABLE {
                wrong.push(NetFault::SidesDiffer(apart));
            }
        }
        let sides = || self.sides.into_iter().flatten();
        if let Some(high) = sides().max().filter(|s| s.0 > wanted.0 + SIDE_MORE) {
            wrong.push(NetFault::SideHigh(high.0 - wanted.0));
        }
        if let Some(low) = sides().min().filter(|s| s.0 + READABLE < wanted.0) {
            wrong.push(NetFault::SideLow(wanted.0 - low.0));
        }
        wrong
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(typed: &str) -> Height {
        Height::read(typed).expect("a height")
    }

    fn measured(middle: &str, left: &str, right: &str) -> Measured {
        Measured {
            middle: Height::read(middle),
            sides: [Height::read(left), Height::read(right)],
        }
    }

    #[test]
    fn heights_are_read_in_metres_and_centimetres() {
        assert_eq!(at("2.43"), MEN);
        assert_eq!(at("2,24"), WOMEN);
        assert_eq!(at("224"), WOMEN);
        assert_eq!(at("224.5").metres(), "2.245");
        assert_eq!(at(" 2.1 ").metres(), "2.10");
        for typed in ["", "2.4.3", "24", "9", "0.5", "305", "3.01", "high"] {
            assert_eq!(Height::read(typed), None, "{typed}");
        }
    }

    #[test]
    fn the_younger_the_lower() {
        for pair in AGE_HEIGHTS.windows(2) {
            assert!(pair[0].under > pair[1].under);
            assert!(pair[0].boys >= pair[1].boys && pair[0].girls >= pair[1].girls);
        }
        assert!(AGE_HEIGHTS.iter().all(|one| one.boys >= one.girls));
        assert_eq!((AGE_HEIGHTS[0].boys, AGE_HEIGHTS[0].girls), (MEN, WOMEN));
    }

    #[test]
    fn a_net_in_order_has_no_fault() {
        assert_eq!(measured("2.43", "2.44", "2.44").judge(MEN), []);
        // Two centimetres more at both sides are the most (2.1.2).
        assert_eq!(measured("2.24", "2.26", "2.26").judge(WOMEN), []);
        assert_eq!(Measured::default().judge(MEN), []);
    }

    #[test]
    fn every_fault_is_found() {
        assert_eq!(
            measured("2.40", "", "").judge(MEN),
            [NetFault::MiddleLow(30)]
        );
        assert_eq!(
            measured("2.45", "", "").judge(MEN),
            [NetFault::MiddleHigh(20)]
        );
        assert_eq!(
            measured("2.43", "2.43", "2.45").judge(MEN),
            [NetFault::SidesDiffer(20)]
        );
        assert_eq!(
            measured("2.43", "2.46", "2.46").judge(MEN),
            [NetFault::SideHigh(30)]
        );
        assert_eq!(
            measured("2.43", "2.46", "").judge(MEN),
            [NetFault::SideHigh(30)]
        );
        assert_eq!(
            measured("2.43", "2.40", "2.40").judge(MEN),
            [NetFault::SideLow(30)]
        );
        assert_eq!(measured("2.10", "2.10", "2.16").judge(at("2.15")).len(), 3);
    }
}
