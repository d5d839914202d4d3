//! What a learner decided about a scene, laid beside what is true of it.

use super::court::End;
use super::ruling::Call;
use super::scene::{Scene, Verdict};
use rules::{Cause, Signal};

/// So long after a fault a whistle is in time, in seconds. Common practice, no source: the rules want it as
/// soon as the referee is sure (22.2.1.2).
pub const IN_TIME: f64 = 1.0;

/// What ended a rally, as a learner names it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Nature {
    /// A fault, or where the ball came down.
    Fault(Cause),
    /// The rally is played again.
    Replay,
}

/// What a learner did, beat by beat; what was not asked or not answered is none.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Answer {
    /// The whistle, in seconds of the scene.
    pub whistle: Option<f64>,
    /// The side that is to serve next.
    pub side: Option<End>,
    /// Why.
    pub nature: Option<Nature>,
}

/// What became of the whistle.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Timing {
    /// Before anything was wrong, though later something was.
    Early,
    /// In time.
    InTime,
    /// Too late.
    Late,
    /// Rightly not at all.
    RightlyNone,
    /// There was a fault, and no whistle.
    Missed,
    /// There was nothing to whistle at.
    Needless,
}

/// An answer laid beside the truth. What did not have to be asked is right.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Marked {
    /// The whistle.
    pub timing: Timing,
    /// Whether the side to serve is right.
    pub side: bool,
    /// Whether the nature of the fault is right.
    pub nature: bool,
    /// From the fault to the whistle, in seconds; none where there was no such whistle, or where the scene did
    /// not run in its own time.
    pub reaction: Option<f64>,
}

impl Timing {
    /// Whether the decision to whistle, or not to, was right; late is still right.
    #[must_use]
    pub const fn is_right(self) -> bool {
        match self {
            Timing::InTime | Timing::Late | Timing::RightlyNone => true,
            Timing::Early | Timing::Missed | Timing::Needless => false,
        }
    }
}

impl Marked {
    /// Whether all of it is right.
    #[must_use]
    pub const fn is_right(&self) -> bool {
        self.timing.is_right() && self.side && self.nature
    }

    /// The same of a scene that was told step by step, in which no time can be measured.
    #[must_use]
    pub const fn in_steps(self) -> Marked {
        Marked {
            reaction: None,
            ..self
        }
    }
}

/// From when on a scene may be whistled, in seconds; none where play goes on. Of opponents' faults at once the
/// first is enough: whoever whistles at it hears of the other.
#[must_use]
pub fn whistle_from(verdict: &Verdict) -> Option<f64> {
    verdict.decided_by().map(|one| one.at)
}

/// The side that serves after a scene; after a replay the one that served. None where play goes on.
#[must_use]
pub fn serves_next(scene: &Scene, verdict: &Verdict) -> Option<End> {
    match verdict.ruling.call {
        Call::Fault { by, .. } => Some(by.other()),
        Call::Replay => Some(scene.serving),
        Call::PlayOn => None,
    }
}

/// Lays an answer beside the truth.
#[must_use]
pub fn mark(scene: &Scene, verdict: &Verdict, answer: &Answer) -> Marked {
    let timing = match (whistle_from(verdict), answer.whistle) {
        (None, None) => Timing::RightlyNone,
        (None, Some(_)) => Timing::Needless,
        (Some(_), None) => Timing::Missed,
        (Some(from), Some(at)) if at < from => Timing::Early,
        (Some(from), Some(at)) if at - from <= IN_TIME => Timing::InTime,
        (Some(_), Some(_)) => Timing::Late,
    };
    let was_asked = matches!(timing, Timing::InTime | Timing::Late);
    let reaction = whistle_from(verdict).zip(answer.whistle);
    Marked {
        timing,
        side: !was_asked || answer.side == serves_next(scene, verdict),
        nature: !was_asked
            || answer
                .nature
                .is_some_and(|nature| names(nature, verdict.ruling.call)),
        reaction: reaction.filter(|_| was_asked).map(|(from, at)| at - from),
    }
}

/// Whether a learner's reason is that of a call. A ball in or out at the service may be named with the word for
/// any ball, and a libero's block as what it is by its signal (14.6.6).
fn names(nature: Nature, call: Call) -> bool {
    match (nature, call) {
        (Nature::Replay, Call::Replay) => true,
        (Nature::Fault(named), Call::Fault { cause, signal, .. }) => {
            let plain = |cause| match cause {
                Cause::ServiceWinner => Cause::BallIn,
                Cause::ServiceOut => Cause::BallOut,
                other => other,
            };
            let blocked = signal == Some(Signal::BlockOrScreen) && cause == Cause::LiberoFault;
            plain(named) == plain(cause) || (blocked && named == Cause::BlockFault)
        }
        (Nature::Replay | Nature::Fault(_), Call::PlayOn | Call::Fault { .. } | Call::Replay) => {
            false
        }
    }
}
