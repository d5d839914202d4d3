//! Which official signal announces an entry that is no rally (chapter 30, diagram 11).

use super::entry::{Kind, Level};
use crate::rules::{Signal, Team};

impl Kind {
    /// The signal that goes with it, and the team that it concerns where there is one. A rally is
    /// announced by its cause.
    #[must_use]
    pub const fn signal(&self) -> Option<(Signal, Option<Team>)> {
        Some(match self {
            Kind::TimeOut { team } => (Signal::TimeOut, Some(*team)),
            Kind::Substitution { team, .. } => (Signal::Substitution, Some(*team)),
            Kind::Delay { team, .. } => (Signal::Delay, Some(*team)),
            Kind::Misconduct { team, sanction, .. } => {
                let signal = match sanction {
                    Level::Warning => Signal::Warning,
                    Level::Penalty => Signal::Penalty,
                    Level::Expulsion => Signal::Expulsion,
                    Level::Disqualification => Signal::Disqualification,
                };
                (signal, Some(*team))
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

    #[test]
    fn what_a_team_asks_for_is_shown_on_its_side() {
        for team in Team::BOTH {
            let asked = Kind::TimeOut { team };
            assert_eq!(asked.signal(), Some((Signal::TimeOut, Some(team))));
        }
        assert_eq!(
            Kind::ChangeCourts.signal(),
            Some((Signal::ChangeOfCourts, None))
        );
        assert_eq!(Kind::BeginSet.signal(), None);
    }
}
