//! How long a set can have taken, so that a slip of the pen or of the clock is seen.

use std::ops::RangeInclusive;

/// Whole minutes that a set of so many points can have taken. Eight seconds for a rally and the way
/// back to the service at least, two minutes at most, and half an hour for whatever held it up: common
/// practice, no source. A minute is left for times that were cut to the minute.
pub(super) fn set_minutes(points: u32) -> RangeInclusive<i64> {
    let points = i64::from(points);
    (points * 8 / 60 - 1).max(0)..=points * 2 + 30
}
