//! Which official signal announces an entry that is no rally (chapter 30, diagram 11).

use crate::model::entry::{Entry, Fault, Kind, Level};
use crate::model::sanction::SanctionKind;
use crate::model::state::State;
use rules::{Signal, Team};

impl SanctionKind {
    /// The signal that shows it; a first improper request is only noted (15.11.2).
    #[must_use]
    pub const fn signal(self) -> Option<Signal> {
        Some(match self {
            SanctionKind::ImproperRequest => return None,
            SanctionKind::DelayWarning => Signal::DelayWarning,
            SanctionKind::DelayPenalty => Signal::DelayPenalty,
            SanctionKind::Misconduct(Level::Warning) => Signal::Warning,
            SanctionKind::Misconduct(Level::Penalty) => Signal::Penalty,
            SanctionKind::Misconduct(Level::Expulsion) => Signal::Expulsion,
            SanctionKind::Misconduct(Level::Disqualification) => Signal::Disqualification,
        })
    }
}

impl State {
    /// The signal that goes with an entry of this state, and the team that it concerns where there is
    /// one. A rally is announced by its cause.
    #[must_use]
    pub fn signal_of(&self, entry: &Entry) -> Option<(Signal, Option<Team>)> {
        // What became of a request or a delay is what is shown, not what was asked.
        if let Some(line) = self.sanction_of(entry.n) {
            return Some((line.kind.signal()?, Some(line.team)));
        }
        Some(match &entry.kind {
            Kind::TimeOut { team } => (Signal::TimeOut, Some(*team)),
            Kind::Substitution { team, .. } => (Signal::Substitution, Some(*team)),
            Kind::LateFault(late) if late.fault == Fault::Rotation => {
                (Signal::Position, Some(late.team))
            }
            Kind::Replay { .. } => (Signal::Replay, None),
            Kind::ChangeCourts => (Signal::ChangeOfCourts, None),
            _ => return None,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn signal(kind: Kind) -> Option<(Signal, Option<Team>)> {
        State::new().signal_of(&Entry::new(1, kind))
    }

    #[test]
    fn what_a_team_asks_for_is_shown_on_its_side() {
        for team in Team::BOTH {
            assert_eq!(
                signal(Kind::TimeOut { team }),
                Some((Signal::TimeOut, Some(team)))
            );
        }
        assert_eq!(
            signal(Kind::ChangeCourts),
            Some((Signal::ChangeOfCourts, None))
        );
        assert_eq!(signal(Kind::BeginSet), None);
    }
}
