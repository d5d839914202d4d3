//! The words of every finding on a paper sheet.

use crate::paper::*;
use crate::{refusal, Teams};
use game::SanctionKind;
use reports::paper::{BoxProblem, Fault, Finding, InAll, Mark, MarkKind};
use rules::Team;

/// In English.
pub static WORDS: PaperWords = PaperWords {
    all_agrees: "Every box agrees.",
    finding,
    mark,
};

fn finding(finding: &Finding, teams: Teams) -> String {
    let name = |team: Team| teams.name(team);
    match &finding.fault {
        Fault::RoundsDecrease { total, before } => format!(
            "The total {total} comes after {before}, but totals only grow. One of the two is wrong."
        ),
        Fault::RoundsImpossible { total, least } => format!(
            "This turn cannot end with {total}: the point that won the service already made it {least}."
        ),
        Fault::RoundsAlternate { total } => format!(
            "There is no turn of the other team before the total {total}. A box is missing there, or this \
             one is too many."
        ),
        Fault::FinalMismatch {
            team,
            written,
            rounds,
        } => format!(
            "The result gives {} {written} points, but the service rounds end with {rounds}.",
            name(*team)
        ),
        Fault::NotFinished { score: s } => {
            format!("The set is not over at {}. Points are missing.", s.marked())
        }
        Fault::PlayedOn { over_at } => format!(
            "The set was over at {}. What comes after it cannot have been played.",
            over_at.marked()
        ),
        Fault::ScoreNeverStood { score: s, nearest } => format!(
            "The score was never {} in this set. The nearest score is {}.",
            s.marked(),
            nearest.marked()
        ),
        Fault::AfterTheEnd { score: s } => {
            format!(
                "At {} the set was over, so no request was possible.",
                s.marked()
            )
        }
        Fault::Against { refusal: why, .. } => refusal(why, teams),
        Fault::NotExceptional => {
            "It is marked as exceptional, but a regular substitution was possible.".to_owned()
        }
        Fault::OtherSanction { written, by_rule } => match by_rule {
            Some(by_rule) => format!(
                "The sheet has a {} here. After what came before, it should be a {}.",
                sanction(*written),
                sanction(*by_rule)
            ),
            None => format!("The sheet has a {} that counts nowhere.", sanction(*written)),
        },
        Fault::PointMissing { to } => format!(
            "The penalty gives {} a point, but the next point on the sheet is not theirs.",
            name(*to)
        ),
        Fault::FirstServiceOrder { due } => {
            format!("{} were due to serve first in this set.", name(*due))
        }
        Fault::WrongWinner { counted: Some(team) } => {
            format!("By sets, {} have won the match.", name(*team))
        }
        Fault::WrongWinner { counted: None } => {
            "By sets, nobody has won the match.".to_owned()
        }
        Fault::WrongSetCount { team, counted } => {
            format!("{} have won {counted} sets.", name(*team))
        }
        Fault::SetTooMany => "The match was decided before this set.".to_owned(),
        Fault::MatchNotFinished => {
            "The sets on the sheet do not decide the match. One is missing, or the match was not finished."
                .to_owned()
        }
        Fault::TimesOverlap { start, last_end } => format!(
            "The set begins at {start}, before the last one ended at {last_end}. One time is wrong."
        ),
        Fault::TimeBackwards { start, end } => {
            format!("The set ends at {end}, before it began at {start}. One time is wrong.")
        }
        Fault::ImplausibleTime { minutes, points } => format!(
            "{minutes} minutes for {points} points is hardly possible. Check both times."
        ),
        Fault::WrongMinutes { written, by_clock } => format!(
            "The sheet says {written} minutes, but by its times it was {by_clock}."
        ),
        Fault::WrongInAll {
            of,
            team,
            written,
            counted,
        } => {
            let of = match of {
                InAll::Points => "points",
                InAll::TimeOuts => "time-outs",
                InAll::Substitutions => "substitutions",
            };
            format!(
                "The result gives {} {written} {of}, but the sets add up to {counted}.",
                name(*team)
            )
        }
        Fault::Missing => "This box is empty.".to_owned(),
    }
}

fn sanction(kind: SanctionKind) -> String {
    kind.code().replace('_', " ")
}

fn mark(mark: &Mark, teams: Teams) -> String {
    match &mark.kind {
        MarkKind::Box(problem) => box_problem(*problem).to_owned(),
        MarkKind::Finding(of) => finding(of, teams),
    }
}

fn box_problem(problem: BoxProblem) -> &'static str {
    match problem {
        BoxProblem::OtherIsFilled => {
            "Only the other team's box is filled in. Fill in this one, or empty both."
        }
        BoxProblem::NoFirstService => "Who served first is missing: key in A or B.",
        BoxProblem::SanctionUnclear => {
            "W, P, E or D needs a person: a number, C, AC, T or M. For a delay, D goes with W or P. I stands \
             alone."
        }
        BoxProblem::NoTime => "This is not a time of day. Key in hour and minute, such as 1805.",
        BoxProblem::NoDay => "This is not a day. Key in year, month and day, such as 20260509.",
        BoxProblem::Gap => "This box is empty and one after it is not. Fill it in.",
        BoxProblem::LineIncomplete => {
            "This line is not complete. Fill in its boxes, or empty them."
        }
    }
}
