//! How far the phone's wall clock has been moved while it was watched: arithmetic on readings
//! of two clocks, without touching either.
//!
//! The wall clock goes on while a phone sleeps but jumps when somebody, or the network, sets
//! it. The monotonic clock never jumps but stops while most phones sleep (W3C High Resolution
//! Time, its note on suspended systems; measured reports for Android, iOS and Linux). So:
//!
//! * while the page is on screen, time passes as the monotonic clock says, and a wall clock
//!   that leaves it by more than [`TOLERANCE_MS`] between two readings was set: the difference goes into the skew;
//! * over a gap, time passes as the wall clock says, less the skew, but never less than the
//!   monotonic clock ran: a wall clock behind that was set back meanwhile.
//!
//! A clock that is set forward during a gap cannot be told from a long gap. Nothing here pretends to.

/// The wall clock may leave the monotonic one by this much between two readings without having
/// been set. Our own choice: slewing by the network's time and rounding stay far below it, and
/// two seconds of a count-down are what a referee would forgive.
pub const TOLERANCE_MS: i64 = 2_000;

/// Both clocks, read at one moment.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Reading {
    /// Milliseconds since 1970 as the phone believes.
    pub wall: i64,
    /// Milliseconds since some fixed moment of this visit.
    pub mono: i64,
    /// Whether the page was off screen at any time since the reading before, so that the
    /// monotonic clock may have stopped.
    pub gap: bool,
}

/// Steady time: the wall clock, less every jump it was seen to make.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Skew {
    skew: i64,
    steady: i64,
    last: Reading,
}

impl Skew {
    /// Starts from the first reading of a visit and the skew that was kept from the one before.
    pub fn start(first: Reading, kept: i64) -> Skew {
        Skew {
            skew: kept,
            steady: first.wall.saturating_sub(kept),
            last: first,
        }
    }

    /// Takes the next reading. Returns by how much the wall clock was set since the last one,
    /// when it was.
    pub fn read(&mut self, now: Reading) -> Option<i64> {
        let ran = now.mono.saturating_sub(self.last.mono).max(0);
        let at_least = self.steady.saturating_add(ran);
        // Ahead of what the monotonic clock says: sleep over a gap, else a clock set forward.
        let ahead = if now.gap {
            now.wall.saturating_sub(self.skew).saturating_sub(at_least)
        } else {
            now.wall.saturating_sub(self.last.wall).saturating_sub(ran)
        };
        self.last = now;
        let set = if now.gap {
            ahead < -TOLERANCE_MS
        } else {
            ahead.abs() > TOLERANCE_MS
        };
        if set {
            self.skew = self.skew.saturating_add(ahead);
        }
        self.steady = if now.gap {
            at_least.max(now.wall.saturating_sub(self.skew))
        } else {
            at_least
        };
        set.then_some(ahead)
    }

    /// Steady milliseconds since 1970 at the last reading.
    pub fn steady(&self) -> i64 {
        self.steady
    }

    /// How far the wall clock is ahead of steady time because it was set. To be kept, so that
    /// the next visit starts right.
    pub fn skew(&self) -> i64 {
        self.skew
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Noon of some day.
    const NOON: i64 = 1_764_072_000_000;

    fn reading(wall: i64, mono: i64, gap: bool) -> Reading {
        Reading {
            wall: NOON + wall,
            mono,
            gap,
        }
    }

    fn started() -> Skew {
        Skew::start(reading(0, 500, false), 0)
    }

    #[test]
    fn time_passes_by_the_monotonic_clock_while_on_screen() {
        let mut skew = started();
        assert_eq!(skew.read(reading(1_003, 1_500, false)), None);
        assert_eq!(skew.steady(), NOON + 1_000);
        assert_eq!(skew.skew(), 0);
    }

    #[test]
    fn a_clock_set_forward_on_screen_moves_the_skew_and_not_the_time() {
        let mut skew = started();
        assert_eq!(skew.read(reading(3_601_000, 1_500, false)), Some(3_600_000));
        assert_eq!(skew.steady(), NOON + 1_000);
        assert_eq!(skew.skew(), 3_600_000);
        // And on: the jump is not counted a second time.
        assert_eq!(skew.read(reading(3_602_000, 2_500, false)), None);
        assert_eq!(skew.steady(), NOON + 2_000);
    }

    #[test]
    fn a_clock_set_back_on_screen_moves_the_skew_and_not_the_time() {
        let mut skew = started();
        assert_eq!(skew.read(reading(-599_000, 1_500, false)), Some(-600_000));
        assert_eq!(skew.steady(), NOON + 1_000);
    }

    #[test]
    fn the_tolerance_is_two_seconds_to_the_millisecond() {
        let mut skew = started();
        assert_eq!(skew.read(reading(1_000 + 2_000, 1_500, false)), None);
        let mut skew = started();
        assert_eq!(skew.read(reading(1_000 + 2_001, 1_500, false)), Some(2_001));
        let mut skew = started();
        assert_eq!(skew.read(reading(1_000 - 2_000, 1_500, false)), None);
        let mut skew = started();
        assert_eq!(
            skew.read(reading(1_000 - 2_001, 1_500, false)),
            Some(-2_001)
        );
    }

    #[test]
    fn sleep_counts_by_the_wall_clock() {
        let mut skew = started();
        // Ten minutes locked; the monotonic clock ran for two seconds of them.
        assert_eq!(skew.read(reading(600_000, 2_500, true)), None);
        assert_eq!(skew.steady(), NOON + 600_000);
        assert_eq!(skew.skew(), 0);
    }

    #[test]
    fn sleep_after_a_changed_clock_still_counts_right() {
        let mut skew = started();
        skew.read(reading(3_601_000, 1_500, false));
        assert_eq!(skew.read(reading(3_601_000 + 60_000, 1_600, true)), None);
        assert_eq!(skew.steady(), NOON + 61_000);
    }

    #[test]
    fn a_clock_set_back_during_a_gap_never_takes_time_back() {
        let mut skew = started();
        // Off screen for five minutes awake; meanwhile set back by an hour.
        assert_eq!(
            skew.read(reading(300_000 - 3_600_000, 300_500, true)),
            Some(-3_600_000)
        );
        assert_eq!(skew.steady(), NOON + 300_000);
    }

    #[test]
    fn a_small_disagreement_over_a_gap_never_takes_time_back() {
        let mut skew = started();
        assert_eq!(skew.read(reading(9_000, 10_500, true)), None);
        assert_eq!(skew.steady(), NOON + 10_000);
    }

    #[test]
    fn a_reload_goes_on_with_the_skew_that_was_kept() {
        let mut before = started();
        before.read(reading(3_601_000, 1_500, false));
        let after = Skew::start(reading(3_605_000, 20, false), before.skew());
        assert_eq!(after.steady(), NOON + 5_000);
    }

    #[test]
    fn steady_time_never_goes_back_whatever_the_clocks_say() {
        // A small mixer, so that the readings are absurd but the same on every run.
        let mut state: u64 = 7;
        let mut next = move || {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            (state >> 33) as i64
        };
        let mut skew = started();
        let mut before = skew.steady();
        for _ in 0..10_000 {
            let wall = next() - (1 << 30);
            let mono = next() % 100_000;
            skew.read(reading(wall, mono, next() % 2 == 0));
            assert!(skew.steady() >= before);
            before = skew.steady();
        }
    }
}
