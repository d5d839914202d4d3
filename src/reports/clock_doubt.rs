//! Times that the phone's clock cannot have told rightly: it was set while the app was closed. Entries
//! keep their order whatever the clock says, and a time keeps what the clock said; the doubt stands
//! beside it.

use game::{Outcome, Phase, Timeline};

/// The clock may be behind the last entry by this much without having been set, in milliseconds. Our
/// own choice, the same as for a clock that is watched: the network's time corrects by far less.
const TOLERANCE_MS: i64 = 2_000;

/// A running set does not stand still for so long without being suspended, in milliseconds: two hours.
/// Our own choice. A shorter step forward cannot be told from a pause.
const STILL_MS: i64 = 2 * 3_600_000;

/// What is doubtful about a time.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClockDoubt {
    /// It is earlier than the one before, by so many seconds, rounded up: the clock was set back.
    Back {
        /// The seconds.
        seconds: i64,
    },
    /// A set was running, and the clock says that it stood still for so many seconds: the match lay
    /// open for long, or the clock was set forward.
    Forward {
        /// The seconds.
        seconds: i64,
    },
}

impl ClockDoubt {
    /// The doubt about a moment after an entry; both in milliseconds since 1970.
    fn between(phase: Phase, last: i64, next: i64, tolerance: i64) -> Option<ClockDoubt> {
        let passed = next.saturating_sub(last);
        let seconds = (passed.saturating_abs().saturating_add(999)) / 1000;
        if passed < -tolerance {
            Some(ClockDoubt::Back { seconds })
        } else if phase == Phase::Playing && passed > STILL_MS {
            Some(ClockDoubt::Forward { seconds })
        } else {
            None
        }
    }

    /// The doubt about the clock itself, read when a match is opened again. One that is sealed is only looked at.
    #[must_use]
    pub fn on_opening(timeline: &Timeline, now: i64) -> Option<ClockDoubt> {
        if timeline.state().sealed().is_some() {
            return None;
        }
        let last = timeline.entries().iter().rev().find_map(|e| e.at)?;
        ClockDoubt::between(timeline.state().phase(), last, now, TOLERANCE_MS)
    }
}

/// The entries of a log whose times are doubtful. Each jump of the clock is named once, not for all the
/// entries after it; what was taken back was entered too.
#[must_use]
pub fn clock_doubts(timeline: &Timeline) -> Vec<(u32, ClockDoubt)> {
    let mut latest: Option<i64> = None;
    let mut doubts = Vec::new();
    timeline.walk(|before, entry, outcome, _| {
        let Some(at) = entry.at else { return };
        if matches!(outcome, Outcome::Refused(_)) {
            return;
        }
        let doubt = latest.and_then(|last| ClockDoubt::between(before.phase(), last, at, 0));
        doubts.extend(doubt.map(|doubt| (entry.n, doubt)));
        latest = Some(at);
    });
    doubts
}

#[cfg(test)]
mod tests {
    use super::*;
    use game::simulate;
    use rules::Preset;

    const MINUTE: i64 = 60_000;

    /// A match whose clock was moved between two entries of its first set.
    fn moved(by: i64) -> (Timeline, u32) {
        let mut entries = simulate(Preset::SchoolSenior, 5);
        for entry in entries.iter_mut().skip(60) {
            entry.at = entry.at.map(|at| at + by);
        }
        let n = entries[60].n;
        (Timeline::of(entries), n)
    }

    #[test]
    fn a_clock_that_was_not_touched_leaves_no_doubt() {
        let (timeline, _) = moved(0);
        assert_eq!(clock_doubts(&timeline), []);
    }

    #[test]
    fn a_clock_set_back_is_named_once_and_the_order_stays() {
        let (timeline, n) = moved(-58 * MINUTE);
        let [(entry, ClockDoubt::Back { seconds })] = clock_doubts(&timeline)[..] else {
            panic!("one doubt: {:?}", clock_doubts(&timeline));
        };
        assert_eq!(entry, n);
        assert!((56 * 60..=58 * 60).contains(&seconds), "{seconds}");
        assert!(timeline.entries().windows(2).all(|two| two[0].n < two[1].n));
    }

    #[test]
    fn a_clock_set_far_forward_in_a_running_set_is_doubted() {
        let (timeline, n) = moved(5 * 60 * MINUTE);
        assert!(matches!(
            clock_doubts(&timeline)[..],
            [(entry, ClockDoubt::Forward { .. })] if entry == n
        ));
    }

    #[test]
    fn on_opening_the_clock_is_held_against_the_last_entry() {
        let all = simulate(Preset::SchoolSenior, 5);
        let timeline = Timeline::of(all[..60].to_vec());
        let last = timeline.entries().iter().rev().find_map(|e| e.at).unwrap();
        let doubt = |passed| ClockDoubt::on_opening(&timeline, last + passed);
        assert_eq!(timeline.state().phase(), Phase::Playing);
        assert_eq!(doubt(0), None);
        assert_eq!(doubt(-TOLERANCE_MS), None);
        assert_eq!(
            doubt(-TOLERANCE_MS - 1),
            Some(ClockDoubt::Back { seconds: 3 })
        );
        assert_eq!(doubt(STILL_MS), None);
        assert_eq!(
            doubt(STILL_MS + 1),
            Some(ClockDoubt::Forward { seconds: 7_201 })
        );
        // A match that is over may be looked at whenever somebody likes.
        let over = Timeline::of(all);
        assert_eq!(ClockDoubt::on_opening(&over, i64::MAX), None);
        // So may one that was broken off and sealed.
        let mut sealed = timeline;
        let code = record::seal_code(sealed.entries());
        sealed.push(game::Entry::new(61, game::Kind::Seal { code }));
        assert!(sealed.state().sealed().is_some());
        assert_eq!(sealed.state().phase(), Phase::Playing);
        assert_eq!(ClockDoubt::on_opening(&sealed, i64::MAX), None);
    }
}
