//! The time that an entry gets.

use game::Kind;

/// Milliseconds of a second.
const SECOND: i64 = 1000;

/// The time of an entry that is made `now`, behind one of the time `last`; in milliseconds since 1970.
///
/// Whole seconds, so that a log is small to hand over; a count-down is read to the quarter of a second and keeps
/// its milliseconds. What is made after a count-down in the same second is not stamped before it.
#[must_use]
pub fn stamp(kind: &Kind, now: i64, last: Option<i64>) -> i64 {
    let exact = matches!(kind, Kind::Timer(_));
    let at = if exact {
        now
    } else {
        now - now.rem_euclid(SECOND)
    };
    match last {
        Some(last) if at < last && last - at < SECOND && exact => last,
        Some(last) if at < last && last - at < SECOND => last + (-last).rem_euclid(SECOND),
        _ => at,
    }
}
