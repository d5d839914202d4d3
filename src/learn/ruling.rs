//! What a decision comes to.

use super::court::End;
use rules::{Cause, Signal};

/// A decision with its reason.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ruling {
    /// What is decided.
    pub call: Call,
    /// The rule that decides it.
    pub rule: &'static str,
    /// How far the other answer was away.
    pub margin: Margin,
}

/// What is decided.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Call {
    /// No fault: play goes on.
    PlayOn,
    /// A fault, so that the opponents win the rally.
    Fault {
        /// Whose.
        by: End,
        /// Which.
        cause: Cause,
        /// What announces it; none where the team to serve says all.
        signal: Option<Signal>,
    },
    /// The rally does not count and is played again.
    Replay,
}

/// How far the other answer was away; never below 0.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Margin {
    /// So many metres.
    Metres(f64),
    /// So many seconds.
    Seconds(f64),
    /// Nothing was measured: somebody saw it, or did not.
    Seen,
}

impl Margin {
    /// The length, where it is one.
    #[must_use]
    pub const fn metres(self) -> Option<f64> {
        match self {
            Margin::Metres(metres) => Some(metres),
            Margin::Seconds(_) | Margin::Seen => None,
        }
    }

    /// The time, where it is one.
    #[must_use]
    pub const fn seconds(self) -> Option<f64> {
        match self {
            Margin::Seconds(seconds) => Some(seconds),
            Margin::Metres(_) | Margin::Seen => None,
        }
    }
}

impl Ruling {
    pub(super) const fn play_on(rule: &'static str, margin: Margin) -> Ruling {
        Ruling {
            call: Call::PlayOn,
            rule,
            margin,
        }
    }

    pub(super) const fn fault(by: End, cause: Cause, rule: &'static str, margin: Margin) -> Ruling {
        Ruling {
            call: Call::Fault {
                by,
                cause,
                signal: cause.signal(),
            },
            rule,
            margin,
        }
    }

    /// A fault that another signal announces than its cause does by custom.
    pub(super) const fn shown_by(mut self, shown: Signal) -> Ruling {
        if let Call::Fault { by, cause, .. } = self.call {
            self.call = Call::Fault {
                by,
                cause,
                signal: Some(shown),
            };
        }
        self
    }

    pub(super) const fn replay(rule: &'static str, margin: Margin) -> Ruling {
        Ruling {
            call: Call::Replay,
            rule,
            margin,
        }
    }

    /// Whether it is a fault.
    #[must_use]
    pub const fn is_fault(&self) -> bool {
        matches!(self.call, Call::Fault { .. })
    }

    /// The signal that announces it (diagram 11).
    #[must_use]
    pub const fn signal(&self) -> Option<Signal> {
        match self.call {
            Call::PlayOn => None,
            Call::Fault { signal, .. } => signal,
            Call::Replay => Some(Signal::Replay),
        }
    }

    /// Who wins the rally by it.
    #[must_use]
    pub const fn won_by(&self) -> Option<End> {
        match self.call {
            Call::Fault { by, .. } => Some(by.other()),
            Call::PlayOn | Call::Replay => None,
        }
    }
}
