//! What an audit can find.

use game::{Question, Refusal};
use record::{Broken, ProblemKind};
use rules::{Score, Shirt, Team};

/// Something to look at.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The entry it is about; none for the whole record.
    pub entry: Option<u32>,
    /// What.
    pub what: What,
}

/// What there is to look at.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are what the sentence names.
pub enum What {
    /// An entry that cannot be read, a gap, an unknown field.
    Form {
        unreadable: bool,
        problem: ProblemKind,
    },
    /// A link or a seal that does not fit: the record was changed after it was written.
    Broken(Broken),
    /// An entry that does not count.
    Refused(Refusal),
    /// An entry against the advice of the rules.
    Insisted { refusal: Refusal, why: String },
    /// A decision that was taken back.
    TakenBack { by: u32, why: Option<String> },
    /// Something changed after the match had been signed.
    ChangedAfterSigning,
    /// A field or a signature that is missing.
    Missing(Field),
    /// Somebody played who is not on the list as it stood in the end.
    NotListed { team: Team, set: u8, number: Shirt },
    /// More time-outs than allowed.
    OverTimeOuts {
        team: Team,
        set: u8,
        taken: u8,
        most: u8,
    },
    /// More substitutions than allowed.
    OverSubstitutions {
        team: Team,
        set: u8,
        made: u8,
        most: u8,
    },
    /// A rally was played with a player who had to leave.
    HadToLeave {
        team: Team,
        set: u8,
        number: Shirt,
        libero: bool,
    },
    /// The change of courts of the deciding set is not entered.
    CourtsNotChanged { set: u8 },
    /// The match began although a safety check had failed.
    BeganUnsafe { item: String },
    /// A check failed and nobody cleared it.
    CheckFailed { item: String, note: Option<String> },
    /// A question that the rules leave open was never answered.
    OpenQuestion(Question),
    /// A protest was announced and nothing was written after the match.
    ProtestNotWritten { team: Team },
    /// The record was begun while the match was being played.
    TakenOver { set: u8, score: Option<Score> },
    /// A score that was put right as miscounted.
    ScoreCorrected { score: Score, why: String },
    /// Play went back for wrong information by the officials.
    WrongInformation { score: Score, why: String },
    /// The match is not over.
    Unfinished,
    /// Entries without a time.
    NoTimes { entries: usize },
    /// An entry earlier than the one before it.
    TimeBackwards { seconds: i64 },
    /// A set stood still for so long by the clock that it may have been set forward.
    TimeForward { seconds: i64 },
    /// A set that begins before the last one ended.
    SetsOverlap { set: u8 },
    /// A set much too short or too long for its points.
    ImplausibleTime { set: u8, minutes: i64, points: u32 },
}

/// A field or a signature.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Field {
    /// Name of a team.
    Name(Team),
    /// Name of the competition.
    Competition,
    /// Hall.
    Venue,
    /// Date and scheduled time.
    Scheduled,
    /// A team's list.
    List(Team),
    /// Who of the list is captain.
    Captain(Team),
    /// Who is coach.
    Coach(Team),
    /// The toss before a set.
    Toss(u8),
    /// The captain's signature before the match.
    CaptainBefore(Team),
    /// The coach's signature before the match.
    CoachBefore(Team),
    /// The captain's signature after the match.
    CaptainAfter(Team),
    /// The scorer's signature.
    Scorer,
    /// The second referee's signature.
    SecondReferee,
    /// The first referee's signature.
    FirstReferee,
}

impl What {
    /// The name in an output.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            What::Form {
                unreadable: true, ..
            } => "unreadable",
            What::Form { .. } => "form",
            What::Broken(Broken::Link { .. }) => "broken_link",
            What::Broken(Broken::Seal(_)) => "broken_seal",
            What::Refused(_) => "refused",
            What::Insisted { .. } => "insist",
            What::TakenBack { .. } => "taken_back",
            What::ChangedAfterSigning => "changed_after_signing",
            What::Missing(field) => field.code(),
            What::NotListed { .. } => "not_listed",
            What::OverTimeOuts { .. } => "too_many_time_outs",
            What::OverSubstitutions { .. } => "too_many_substitutions",
            What::HadToLeave { libero: false, .. } => "must_substitute",
            What::HadToLeave { .. } => "libero_must_leave",
            What::CourtsNotChanged { .. } => "change_courts",
            What::BeganUnsafe { .. } => "began_unsafe",
            What::CheckFailed { .. } => "check_failed",
            What::OpenQuestion(_) => "open_question",
            What::ProtestNotWritten { .. } => "protest_not_written",
            What::TakenOver { .. } => "joined",
            What::ScoreCorrected { .. } => "score_correction",
            What::WrongInformation { .. } => "wrong_information",
            What::Unfinished => "unfinished",
            What::NoTimes { .. } => "no_times",
            What::TimeBackwards { .. } => "time_backwards",
            What::TimeForward { .. } => "time_forward",
            What::SetsOverlap { .. } => "times_overlap",
            What::ImplausibleTime { .. } => "implausible_time",
        }
    }

    /// The number of the rule (FIVB Official Volleyball Rules 2025-2028), where one is met.
    #[must_use]
    pub fn rule(&self) -> Option<&'static str> {
        Some(match self {
            What::Refused(refusal) | What::Insisted { refusal, .. } => refusal.rule(),
            What::Missing(field) => return field.rule(),
            What::NotListed { .. } => "7.3.5.4",
            What::OverTimeOuts { .. } | What::OverSubstitutions { .. } => "15.1",
            What::HadToLeave { libero: false, .. } => "15.8",
            What::HadToLeave { .. } => "19.3.1",
            What::CourtsNotChanged { .. } => "18.2.2",
            What::ProtestNotWritten { .. } => "5.1.3",
            What::Unfinished => "6.3.1",
            _ => return None,
        })
    }
}

impl Field {
    const fn code(self) -> &'static str {
        match self {
            Field::List(_) => "no_team_list",
            Field::Captain(_) => "no_captain",
            Field::Toss(_) => "no_toss",
            Field::CaptainBefore(_)
            | Field::CoachBefore(_)
            | Field::CaptainAfter(_)
            | Field::Scorer
            | Field::SecondReferee
            | Field::FirstReferee => "not_signed",
            _ => "missing_field",
        }
    }

    fn rule(self) -> Option<&'static str> {
        Some(match self {
            Field::List(_) => "4.1.3",
            Field::Captain(_) => "4.1.2",
            Field::Toss(_) => "7.1",
            Field::CaptainBefore(_) => "5.1.1",
            Field::CoachBefore(_) => "5.2",
            Field::CaptainAfter(_) => "5.1.3",
            Field::Scorer | Field::SecondReferee | Field::FirstReferee => "27.2.3.3",
            _ => return None,
        })
    }
}
