//! What a finding of an audit may touch.

use super::{Finding, What};
use crate::Weight;

impl Finding {
    /// What it may touch: result, play or form.
    #[must_use]
    pub const fn weight(&self) -> Weight {
        match &self.what {
            What::Form {
                unreadable: true, ..
            }
            | What::Broken(_)
            | What::Refused(_)
            | What::ChangedAfterSigning
            | What::ScoreCorrected { .. }
            | What::Unfinished => Weight::Result,
            What::Insisted { .. }
            | What::TakenBack { .. }
            | What::NotListed { .. }
            | What::OverTimeOuts { .. }
            | What::OverSubstitutions { .. }
            | What::HadToLeave { .. }
            | What::CourtsNotChanged { .. }
            | What::BeganUnsafe { .. }
            | What::CheckFailed { .. }
            | What::OpenQuestion(_)
            | What::ProtestNotWritten { .. }
            | What::TakenOver { .. }
            | What::WrongInformation { .. } => Weight::Play,
            What::Form {
                unreadable: false, ..
            }
            | What::Missing(_)
            | What::NoTimes { .. }
            | What::TimeBackwards { .. }
            | What::TimeForward { .. }
            | What::SetsOverlap { .. }
            | What::ImplausibleTime { .. } => Weight::Form,
        }
    }
}
