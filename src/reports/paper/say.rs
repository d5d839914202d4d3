//! The words of every finding on a paper sheet, in one place. What the rules say against a box comes in
//! the reducer's own words.
//!
//! A second language is a second file like this one.

use super::{Fault, Finding, InAll, PaperSheet};
use game::SanctionKind;
use rules::Team;

/// The remark that ends a rebuilt record.
pub(super) const REBUILT: &str =
    "Rebuilt from a paper sheet: times and causes of rallies, sides and libero replacements are not on \
     it.";
/// The remark where a record cannot be rebuilt further.
pub(super) const REBUILT_SO_FAR: &str =
    "Rebuilt from a paper sheet up to here; what follows on it cannot be rebuilt.";
/// Why the record goes on against the advice of the rules.
pub(super) const ON_THE_SHEET: &str = "So it stands on the paper sheet.";

/// What is wrong, in one sentence or two.
#[must_use]
pub fn say(finding: &Finding, sheet: &PaperSheet) -> String {
    let name = |team: Team| match sheet.teams[team].name.as_str() {
        "" => team.letter().to_owned(),
        name => name.to_owned(),
    };
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
        Fault::Against { say, .. } => say.clone(),
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
