//! Where a finding can be looked at: at an entry of the log, or in a box of the sheet.

use super::{Field, Finding, What};
use crate::SheetBox;
use game::Timeline;

/// The place that a finding speaks of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Spot {
    /// An entry of the log.
    Entry(u32),
    /// A box of the sheet.
    Box(SheetBox),
}

impl Finding {
    /// The place; an entry that could not be read is none.
    #[must_use]
    pub fn spot(&self, timeline: &Timeline) -> Option<Spot> {
        match self.entry {
            Some(n) => timeline.entry(n).map(|_| Spot::Entry(n)),
            None => Some(Spot::Box(self.what.sheet_box())),
        }
    }
}

impl What {
    /// The box of the sheet in which what concerns no single entry shows.
    const fn sheet_box(&self) -> SheetBox {
        match self {
            What::Missing(field) => field.sheet_box(),
            What::NotListed { set, .. }
            | What::OverTimeOuts { set, .. }
            | What::OverSubstitutions { set, .. }
            | What::HadToLeave { set, .. }
            | What::CourtsNotChanged { set }
            | What::TakenOver { set, .. }
            | What::SetsOverlap { set }
            | What::ImplausibleTime { set, .. } => SheetBox::Set(*set),
            What::ChangedAfterSigning => SheetBox::Signatures,
            What::CheckFailed { .. }
            | What::BeganUnsafe { .. }
            | What::OpenQuestion(_)
            | What::ProtestNotWritten { .. }
            | What::Insisted { .. }
            | What::TakenBack { .. }
            | What::ScoreCorrected { .. }
            | What::WrongInformation { .. } => SheetBox::Remarks,
            What::Form { .. }
            | What::Broken(_)
            | What::Refused(_)
            | What::Unfinished
            | What::NoTimes { .. }
            | What::TimeBackwards { .. }
            | What::TimeForward { .. } => SheetBox::Heading,
        }
    }
}

impl Field {
    const fn sheet_box(self) -> SheetBox {
        match self {
            Field::Name(_) | Field::Competition | Field::Venue | Field::Scheduled => {
                SheetBox::Heading
            }
            Field::List(_) | Field::Captain(_) | Field::Coach(_) => SheetBox::Teams,
            Field::Toss(set) => SheetBox::Set(set),
            Field::CaptainBefore(_)
            | Field::CoachBefore(_)
            | Field::CaptainAfter(_)
            | Field::Scorer
            | Field::SecondReferee
            | Field::FirstReferee => SheetBox::Signatures,
        }
    }
}
