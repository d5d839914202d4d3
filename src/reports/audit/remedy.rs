//! Where a finding is put right before the record is sealed.

use super::{Field, Finding, What};
use game::Signer;
use rules::Team;

/// The way to put a finding right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Remedy {
    /// The heading of the match is completed.
    Details,
    /// Somebody signs.
    Sign(Signer),
    /// The question that an entry raised is answered.
    Answer(u32),
    /// Somebody says that the check is in order now.
    Clear {
        /// What was checked.
        item: String,
    },
    /// The protest that was announced is written on the sheet, if the captain wants it.
    Protest {
        /// The entry that announced it.
        entry: u32,
        /// Whose it is.
        team: Team,
    },
    /// The match is played on, or ended as what it is.
    Play,
    /// The entry is looked at, and taken back where it is wrong.
    Log,
    /// Nothing can be entered any more: a remark on the sheet tells it.
    Remark,
    /// Somebody decided so, and it stands on the sheet.
    Stands,
}

impl Finding {
    /// The way to put it right.
    #[must_use]
    pub fn remedy(&self) -> Remedy {
        match &self.what {
            What::Insisted { .. }
            | What::TakenBack { .. }
            | What::TakenOver { .. }
            | What::ScoreCorrected { .. }
            | What::WrongInformation { .. } => Remedy::Stands,
            What::Missing(field) => field.remedy(),
            What::OpenQuestion(_) => self.entry.map_or(Remedy::Remark, Remedy::Answer),
            What::CheckFailed { item, .. } => Remedy::Clear { item: item.clone() },
            What::ProtestNotWritten { team } => self.entry.map_or(Remedy::Remark, |entry| {
                Remedy::Protest { entry, team: *team }
            }),
            What::Unfinished => Remedy::Play,
            What::Form { .. } | What::Refused(_) | What::ChangedAfterSigning => Remedy::Log,
            What::Broken(_)
            | What::NotListed { .. }
            | What::OverTimeOuts { .. }
            | What::OverSubstitutions { .. }
            | What::HadToLeave { .. }
            | What::CourtsNotChanged { .. }
            | What::BeganUnsafe { .. }
            | What::NoTimes { .. }
            | What::TimeBackwards { .. }
            | What::TimeForward { .. }
            | What::SetsOverlap { .. }
            | What::ImplausibleTime { .. } => Remedy::Remark,
        }
    }

    /// Whether it was left undone by whoever seals the record: a signature under the result, an answer, a
    /// check, the end of the match. The sheet says so beside the seal; all else shows by itself there.
    #[must_use]
    pub fn is_left_open(&self) -> bool {
        match self.remedy() {
            Remedy::Sign(_) | Remedy::Answer(_) | Remedy::Clear { .. } | Remedy::Play => true,
            // The captain may let it rest, and the remark of the announcement says that nothing was written.
            Remedy::Details
            | Remedy::Log
            | Remedy::Remark
            | Remedy::Protest { .. }
            | Remedy::Stands => false,
        }
    }
}

impl Field {
    /// Lists, tosses and the signatures under the lists belong before the match and are closed after it
    /// (4.1.3, 7.1).
    fn remedy(self) -> Remedy {
        match self {
            Field::Name(_) | Field::Competition | Field::Venue | Field::Scheduled => {
                Remedy::Details
            }
            Field::CaptainAfter(team) => Remedy::Sign(Signer::Captain(team)),
            Field::Scorer => Remedy::Sign(Signer::Scorer),
            Field::SecondReferee => Remedy::Sign(Signer::SecondReferee),
            Field::FirstReferee => Remedy::Sign(Signer::FirstReferee),
            Field::List(_)
            | Field::Captain(_)
            | Field::Coach(_)
            | Field::Toss(_)
            | Field::CaptainBefore(_)
            | Field::CoachBefore(_) => Remedy::Remark,
        }
    }
}
