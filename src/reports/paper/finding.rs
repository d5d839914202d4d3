//! What can be wrong with a box of a paper sheet.

use super::Minute;
use crate::Weight;
use game::{Refusal, SanctionKind};
use rules::{Score, Team};

/// A box that does not agree with the others or with the rules.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Finding {
    /// The set, from 1; none for what concerns the match.
    pub set: Option<u8>,
    /// The box, as in the file, counted from 0.
    pub place: String,
    /// What is wrong.
    pub fault: Fault,
}

/// What is wrong.
#[derive(Clone, Debug, PartialEq, Eq)]
#[allow(missing_docs)] // The fields are the numbers that the sentence names.
pub enum Fault {
    /// A service total smaller than the one before it.
    RoundsDecrease { total: u16, before: u16 },
    /// A turn that ends with fewer points than it began with.
    RoundsImpossible { total: u16, least: u16 },
    /// A turn without one of the other team before it.
    RoundsAlternate { total: u16 },
    /// The final points are not the last totals.
    FinalMismatch {
        team: Team,
        written: u16,
        rounds: u16,
    },
    /// The set was not over.
    NotFinished { score: Score },
    /// The set had been over before.
    PlayedOn { over_at: Score },
    /// A score that is not on the way.
    ScoreNeverStood { score: Score, nearest: Score },
    /// Something asked when the set was over.
    AfterTheEnd { score: Score },
    /// What the rules say against a box.
    Against { about: BoxKind, refusal: Refusal },
    /// Marked as exceptional and a regular one.
    NotExceptional,
    /// Another level than the rules give.
    OtherSanction {
        written: SanctionKind,
        by_rule: Option<SanctionKind>,
    },
    /// A penalty without the opponent's point.
    PointMissing { to: Team },
    /// The wrong team opens the set.
    FirstServiceOrder { due: Team },
    /// The result names another winner than the sets.
    WrongWinner { counted: Option<Team> },
    /// The result counts the sets wrongly.
    WrongSetCount { team: Team, counted: u8 },
    /// A set after the match was decided.
    SetTooMany,
    /// The sets do not decide the match.
    MatchNotFinished,
    /// A set that begins before the last one ended.
    TimesOverlap { start: Minute, last_end: Minute },
    /// A set that ends before it began.
    TimeBackwards { start: Minute, end: Minute },
    /// A set much too short or too long for its points.
    ImplausibleTime { minutes: i64, points: u32 },
    /// Another number of minutes than the clock gives.
    WrongMinutes { written: i64, by_clock: i64 },
    /// A total of the result that is not the sum of the sets.
    WrongInAll {
        of: InAll,
        team: Team,
        written: u16,
        counted: u16,
    },
    /// An empty box.
    Missing,
}

/// What is added up in the result.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum InAll {
    /// Points.
    Points,
    /// Time-outs.
    TimeOuts,
    /// Substitutions, exceptional ones included.
    Substitutions,
}

/// What a refusal of the reducer is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum BoxKind {
    /// A team list.
    List,
    /// A line-up.
    LineUp,
    /// A time-out.
    TimeOut,
    /// A substitution.
    Substitution,
    /// A sanction.
    Sanction,
}

impl Fault {
    /// Whether it leaves open by which points, or by whom, the match was won.
    #[must_use]
    pub fn is_of_result(&self) -> bool {
        matches!(
            self,
            Fault::FinalMismatch { .. }
                | Fault::NotFinished { .. }
                | Fault::PlayedOn { .. }
                | Fault::WrongWinner { .. }
                | Fault::WrongSetCount { .. }
                | Fault::SetTooMany
                | Fault::WrongInAll {
                    of: InAll::Points,
                    ..
                }
        )
    }

    /// What it may touch: result, play or form.
    #[must_use]
    pub fn weight(&self) -> Weight {
        match self {
            fault if fault.is_of_result() => Weight::Result,
            Fault::FinalMismatch { .. }
            | Fault::NotFinished { .. }
            | Fault::PlayedOn { .. }
            | Fault::WrongWinner { .. }
            | Fault::WrongSetCount { .. }
            | Fault::SetTooMany
            | Fault::MatchNotFinished => Weight::Result,
            Fault::RoundsDecrease { .. }
            | Fault::RoundsImpossible { .. }
            | Fault::RoundsAlternate { .. }
            | Fault::ScoreNeverStood { .. }
            | Fault::AfterTheEnd { .. }
            | Fault::Against { .. }
            | Fault::NotExceptional
            | Fault::OtherSanction { .. }
            | Fault::PointMissing { .. }
            | Fault::FirstServiceOrder { .. } => Weight::Play,
            Fault::TimesOverlap { .. }
            | Fault::TimeBackwards { .. }
            | Fault::ImplausibleTime { .. }
            | Fault::WrongMinutes { .. }
            | Fault::WrongInAll { .. }
            | Fault::Missing => Weight::Form,
        }
    }

    /// The name in an output.
    #[must_use]
    pub fn code(&self) -> &'static str {
        match self {
            Fault::RoundsDecrease { .. } => "rounds_decrease",
            Fault::RoundsImpossible { .. } | Fault::RoundsAlternate { .. } => "rounds_impossible",
            Fault::FinalMismatch { .. } => "final_mismatch",
            Fault::NotFinished { .. } => "not_finished",
            Fault::PlayedOn { .. } => "played_on",
            Fault::ScoreNeverStood { .. } => "score_never_stood",
            Fault::AfterTheEnd { .. } => "after_the_end",
            Fault::Against { about, refusal, .. } => against(*about, refusal),
            Fault::NotExceptional => "not_exceptional",
            Fault::OtherSanction { .. } => "other_sanction",
            Fault::PointMissing { .. } => "point_missing",
            Fault::FirstServiceOrder { .. } => "first_service_order",
            Fault::WrongWinner { .. } => "wrong_winner",
            Fault::WrongSetCount { .. } | Fault::SetTooMany => "wrong_set_count",
            Fault::MatchNotFinished => "match_not_finished",
            Fault::TimesOverlap { .. } => "times_overlap",
            Fault::TimeBackwards { .. } => "time_backwards",
            Fault::ImplausibleTime { .. } => "implausible_time",
            Fault::WrongMinutes { .. } => "wrong_minutes",
            Fault::WrongInAll { of, .. } => match of {
                InAll::Points => "wrong_points",
                InAll::TimeOuts => "wrong_time_outs",
                InAll::Substitutions => "wrong_substitutions",
            },
            Fault::Missing => "missing",
        }
    }

    /// The number of the rule (FIVB Official Volleyball Rules 2025-2028), where a rule is met.
    #[must_use]
    pub fn rule(&self) -> Option<&'static str> {
        Some(match self {
            Fault::NotFinished { .. } | Fault::PlayedOn { .. } => "6.2",
            Fault::Against { refusal, .. } => refusal.rule(),
            Fault::NotExceptional => "15.7",
            Fault::OtherSanction { .. } => "16.2",
            Fault::PointMissing { .. } => "6.1.3",
            Fault::FirstServiceOrder { .. } => "12.1.2",
            Fault::WrongWinner { .. }
            | Fault::WrongSetCount { .. }
            | Fault::SetTooMany
            | Fault::MatchNotFinished => "6.3.1",
            _ => return None,
        })
    }
}

fn against(about: BoxKind, refusal: &Refusal) -> &'static str {
    match (about, refusal) {
        (_, Refusal::NotListed { .. } | Refusal::UnlistedSubstitute { .. }) => "unknown_player",
        (BoxKind::LineUp, Refusal::TwiceInLineUp { .. }) => "line_up_repeats",
        (BoxKind::LineUp, _) => "illegal_line_up",
        (BoxKind::TimeOut, Refusal::NoTimeOutLeft { .. }) => "too_many_time_outs",
        (BoxKind::TimeOut, _) => "illegal_time_out",
        (BoxKind::Substitution, Refusal::NoSubstitutionLeft { .. }) => "too_many_substitutions",
        (BoxKind::Substitution, _) => "illegal_substitution",
        (BoxKind::List, _) => "illegal_team_list",
        (BoxKind::Sanction, _) => "illegal_sanction",
    }
}
