//! The pressure of the ball, in whatever unit the gauge has.
//!
//! FIVB Official Volleyball Rules 2025-2028, 3.1: 0.30 to 0.325 kgf/cm², printed there as 4.26 to
//! 4.61 psi and as 294.3 to 318.82 mbar (the same number of hPa). The three do not agree in the third
//! digit, so each unit has its own limits here, rounded to what a gauge shows.

use super::decimal::decimal;

/// What a gauge reads in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    /// Kilopascal.
    KiloPascal,
    /// Hectopascal, the same number as millibar.
    HectoPascal,
    /// Bar.
    Bar,
    /// Pound-force per square inch.
    Psi,
    /// Kilogram-force per square centimetre.
    KgfPerCm2,
}

impl Unit {
    /// All of them.
    pub const ALL: [Unit; 5] = [
        Unit::KiloPascal,
        Unit::HectoPascal,
        Unit::Bar,
        Unit::Psi,
        Unit::KgfPerCm2,
    ];

    /// How it is written.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Unit::KiloPascal => "kPa",
            Unit::HectoPascal => "hPa",
            Unit::Bar => "bar",
            Unit::Psi => "psi",
            Unit::KgfPerCm2 => "kgf/cm\u{b2}",
        }
    }

    /// The unit of that symbol.
    #[must_use]
    pub fn from_symbol(symbol: &str) -> Option<Unit> {
        Unit::ALL.into_iter().find(|u| u.symbol() == symbol)
    }

    /// The lowest and the highest pressure of a match ball (3.1).
    #[must_use]
    pub fn limits(self) -> (Pressure, Pressure) {
        let (low, high) = match self {
            Unit::KiloPascal => (29_400, 31_900),
            Unit::HectoPascal => (294_000, 319_000),
            Unit::Bar => (294, 319),
            Unit::Psi => (4_260, 4_610),
            Unit::KgfPerCm2 => (300, 325),
        };
        let of = |thousandths| Pressure {
            thousandths,
            unit: self,
        };
        (of(low), of(high))
    }

    /// Thousandths of a pascal in one of these (SI; the pound-force per square inch and the
    /// kilogram-force as NIST Special Publication 811 gives them, from memory).
    const fn millipascals(self) -> u64 {
        match self {
            Unit::KiloPascal => 1_000_000,
            Unit::HectoPascal => 100_000,
            Unit::Bar => 100_000_000,
            Unit::Psi => 6_894_757,
            Unit::KgfPerCm2 => 98_066_500,
        }
    }
}

/// A pressure above that of the air around, as a gauge shows it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Pressure {
    /// How many thousandths of the unit.
    pub thousandths: u32,
    /// The unit.
    pub unit: Unit,
}

/// What a reading means for the match ball.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Judged {
    /// Within the limits.
    Within,
    /// Too soft.
    Below,
    /// Too hard.
    Above,
}

impl Pressure {
    /// A reading as somebody types it: `4.4`, `0,31`, `.3` or `305`.
    #[must_use]
    pub fn read(typed: &str, unit: Unit) -> Option<Pressure> {
        let thousandths = decimal(typed, 3)?;
        Some(Pressure { thousandths, unit })
    }

    /// Against the limits of its unit (3.1).
    #[must_use]
    pub fn judge(self) -> Judged {
        let (low, high) = self.unit.limits();
        if self.thousandths < low.thousandths {
            Judged::Below
        } else if self.thousandths > high.thousandths {
            Judged::Above
        } else {
            Judged::Within
        }
    }

    /// The same pressure in another unit, rounded to its thousandths.
    #[must_use]
    pub fn to(self, unit: Unit) -> Pressure {
        let millipascals = u64::from(self.thousandths) * self.unit.millipascals();
        let of = unit.millipascals();
        let thousandths = (millipascals + of / 2) / of;
        Pressure {
            thousandths: u32::try_from(thousandths).unwrap_or(u32::MAX),
            unit,
        }
    }

    /// The unit in which that number would be within the limits, where it is not as it stands: the
    /// gauge may read in another unit than was thought.
    #[must_use]
    pub fn meant(self) -> Option<Unit> {
        if self.judge() == Judged::Within {
            return None;
        }
        Unit::ALL
            .into_iter()
            .find(|&unit| Pressure { unit, ..self }.judge() == Judged::Within)
    }

    /// The number with as many digits as gauges of that unit show.
    #[must_use]
    pub fn number(self) -> String {
        let digits = match self.unit {
            Unit::KiloPascal => 1,
            Unit::HectoPascal => 0,
            Unit::Psi => 2,
            Unit::Bar | Unit::KgfPerCm2 => 3,
        };
        let step = 10_u32.pow(3 - digits);
        let rounded = self.thousandths.saturating_add(step / 2) / step;
        let (whole, rest) = (rounded / 10_u32.pow(digits), rounded % 10_u32.pow(digits));
        match digits {
            0 => whole.to_string(),
            digits => format!("{whole}.{rest:0width$}", width = digits as usize),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn judged(typed: &str, unit: Unit) -> Judged {
        Pressure::read(typed, unit).expect("a number").judge()
    }

    #[test]
    fn the_limits_are_those_of_the_rule_in_every_unit() {
        // 3.1 in kgf/cm², psi and hPa.
        for (low, high, unit) in [
            ("0.30", "0.325", Unit::KgfPerCm2),
            ("4.26", "4.61", Unit::Psi),
            ("294.3", "318.82", Unit::HectoPascal),
            ("29.43", "31.882", Unit::KiloPascal),
            ("0.2943", "0.31882", Unit::Bar),
        ] {
            let unit_is = |typed: &str| judged(typed.get(..5).unwrap_or(typed), unit);
            assert_eq!(unit_is(low), Judged::Within, "{low} {unit:?}");
            assert_eq!(unit_is(high), Judged::Within, "{high} {unit:?}");
        }
        assert_eq!(judged("4.25", Unit::Psi), Judged::Below);
        assert_eq!(judged("4.62", Unit::Psi), Judged::Above);
        assert_eq!(judged("0.299", Unit::KgfPerCm2), Judged::Below);
        assert_eq!(judged("0.326", Unit::KgfPerCm2), Judged::Above);
        assert_eq!(judged("293", Unit::HectoPascal), Judged::Below);
        assert_eq!(judged("320", Unit::HectoPascal), Judged::Above);
        assert_eq!(judged("0", Unit::Bar), Judged::Below);
    }

    #[test]
    fn the_limits_of_all_units_are_one_pressure() {
        let (low, high) = Unit::HectoPascal.limits();
        for unit in Unit::ALL {
            let (l, h) = unit.limits();
            // As printed they part by a good hectopascal, at the upper limit in psi.
            for (a, b) in [(l, low), (h, high)] {
                let apart = a.to(Unit::HectoPascal).thousandths.abs_diff(b.thousandths);
                assert!(apart <= 1_200, "{unit:?}: {apart}");
            }
        }
    }

    #[test]
    fn a_reading_is_converted() {
        let psi = Pressure::read("4.4", Unit::Psi).expect("a number");
        assert_eq!(psi.to(Unit::HectoPascal).number(), "303");
        assert_eq!(psi.to(Unit::KiloPascal).number(), "30.3");
        assert_eq!(psi.to(Unit::Bar).number(), "0.303");
        assert_eq!(psi.to(Unit::KgfPerCm2).number(), "0.309");
        assert_eq!(psi.to(Unit::Psi), psi);
        assert_eq!(psi.number(), "4.40");
        let huge = Pressure::read("9999", Unit::Bar).expect("a number");
        assert_eq!(huge.to(Unit::HectoPascal).number(), "4294967");
    }

    #[test]
    fn a_number_in_the_wrong_unit_is_guessed() {
        let read = |typed, unit| Pressure::read(typed, unit).expect("a number").meant();
        assert_eq!(read("4.4", Unit::Bar), Some(Unit::Psi));
        assert_eq!(read("305", Unit::KiloPascal), Some(Unit::HectoPascal));
        assert_eq!(read("0.32", Unit::Psi), Some(Unit::KgfPerCm2));
        assert_eq!(read("4.4", Unit::Psi), None);
        assert_eq!(read("12", Unit::Psi), None);
    }

    #[test]
    fn what_is_no_number_is_not_read() {
        for typed in ["", ".", "abc", "-1", "1.2.3", "12345", "1e3", "\u{663}"] {
            assert_eq!(Pressure::read(typed, Unit::Psi), None, "{typed}");
        }
        assert_eq!(
            Pressure::read(" 0,31 ", Unit::Bar).map(|p| p.thousandths),
            Some(310)
        );
        for unit in Unit::ALL {
            assert_eq!(Unit::from_symbol(unit.symbol()), Some(unit));
        }
    }
}
