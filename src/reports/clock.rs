//! The wall clock of a hall: a moment of a log as time and date, by one offset for the whole match.

/// How far the wall clock is ahead of universal time, in minutes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct WallClock(pub i32);

/// Milliseconds of a minute.
const MINUTE: i64 = 60_000;

impl WallClock {
    /// Such as `18:05`.
    #[must_use]
    pub fn time(self, ms: i64) -> String {
        let minutes = self.minutes(ms).rem_euclid(24 * 60);
        format!("{:02}:{:02}", minutes / 60, minutes % 60)
    }

    /// Such as `2026-05-09`.
    #[must_use]
    pub fn date(self, ms: i64) -> String {
        let (year, month, day) = civil(self.minutes(ms).div_euclid(24 * 60));
        format!("{year:04}-{month:02}-{day:02}")
    }

    /// Such as `2026-05-09 18:05:30`, as a spreadsheet reads a moment.
    #[must_use]
    pub fn moment(self, ms: i64) -> String {
        let seconds = ms.div_euclid(1000).rem_euclid(60);
        format!("{} {}:{seconds:02}", self.date(ms), self.time(ms))
    }

    /// Its name, such as `UTC+02:00`.
    #[must_use]
    pub fn name(self) -> String {
        let sign = if self.0 < 0 { '-' } else { '+' };
        let minutes = self.0.unsigned_abs();
        match minutes {
            0 => "UTC".to_owned(),
            _ => format!("UTC{sign}{:02}:{:02}", minutes / 60, minutes % 60),
        }
    }

    /// The offset written as `+02:00`, `-3` or `+0530`.
    #[must_use]
    pub fn read(text: &str) -> Option<WallClock> {
        let (sign, rest) = match text.split_at_checked(1)? {
            ("+", rest) => (1, rest),
            ("-", rest) => (-1, rest),
            _ => return None,
        };
        let digits: String = rest.chars().filter(|c| *c != ':').collect();
        let number: i32 = digits.parse().ok()?;
        let minutes = match digits.len() {
            1 | 2 => number * 60,
            4 => number / 100 * 60 + number % 100,
            _ => return None,
        };
        (minutes <= 14 * 60).then_some(WallClock(sign * minutes))
    }

    fn minutes(self, ms: i64) -> i64 {
        ms.div_euclid(MINUTE) + i64::from(self.0)
    }
}

/// The date of a day counted from 1970-01-01. In the calendar of today carried on backwards; a year is
/// counted from March, so that the leap day is its last.
fn civil(days: i64) -> (i64, i64, i64) {
    let days = days + 719_468; // From 0000-03-01.
    let era = days.div_euclid(146_097); // 400 years.
    let day_of_era = days.rem_euclid(146_097);
    let year_of_era =
        (day_of_era - day_of_era / 1460 + day_of_era / 36_524 - day_of_era / 146_096) / 365;
    let day_of_year = day_of_era - (365 * year_of_era + year_of_era / 4 - year_of_era / 100);
    let month_from_march = (5 * day_of_year + 2) / 153;
    let day = day_of_year - (153 * month_from_march + 2) / 5 + 1;
    let month = if month_from_march < 10 {
        month_from_march + 3
    } else {
        month_from_march - 9
    };
    let year = year_of_era + era * 400 + i64::from(month <= 2);
    (year, month, day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_moment_on_the_wall() {
        let moment = 1_764_057_600_000; // 2025-11-25 08:00 UTC
        assert_eq!(WallClock(0).time(moment), "08:00");
        assert_eq!(WallClock(0).date(moment), "2025-11-25");
        assert_eq!(WallClock(-9 * 60).date(moment), "2025-11-24");
        assert_eq!(WallClock(330).time(moment), "13:30");
        assert_eq!(WallClock(0).date(951_782_400_000), "2000-02-29");
        assert_eq!(WallClock(0).date(-1), "1969-12-31");
        assert_eq!(WallClock(0).date(4_107_542_400_000), "2100-03-01");
    }

    #[test]
    fn an_offset_is_read_as_people_write_it() {
        for (text, minutes) in [("+02:00", 120), ("-3", -180), ("+0530", 330), ("+00:00", 0)] {
            assert_eq!(WallClock::read(text), Some(WallClock(minutes)), "{text}");
        }
        for text in ["", "2", "+", "+99", "+2:0", "é"] {
            assert_eq!(WallClock::read(text), None, "{text}");
        }
        assert_eq!(WallClock(-210).name(), "UTC-03:30");
    }
}
